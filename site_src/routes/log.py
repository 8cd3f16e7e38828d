"""The log: every run of a card, a diagnosis or a practice that this phone keeps."""
import flask

from site_src.content import data
from site_src.routes import json_page

routes = flask.Blueprint("log", __name__)


@routes.get("/log/")
def page():
    return flask.render_template("log.html", c=data.words("checkoff")["checkoff"], bay=data.words("bay"))


@routes.get("/log/page.json")
def page_data():
    words = data.shared_words()
    controls = {key: words["pressure"][key] for key in ("less", "more")}
    return json_page({"words": {"log": data.words("log"), "lasted": words["lasted"], "pressure": controls}})


@routes.get("/log/checkoff/")
def checkoff():
    return flask.render_template("checkoff.html", c=data.words("checkoff")["checkoff"])


@routes.get("/log/checkoff/page.json")
def checkoff_data():
    rows = data.load("checkoff")["task"]
    return json_page({
        "tasks": [{"id": row["id"], "titles": [title for language in data.languages() for title in _titles(row, language)]} for row in rows],
        "whole": ["done", "stands", *(data.words("practice", language)["practice"]["outcome_good"] for language in data.languages())],
        "words": {**data.words("checkoff"), "lasted": data.shared_words()["lasted"]},
    })


def _titles(row, language):
    """What the log calls the runs of a task in a language, whichever the phone was in."""
    cards, practice = data.shared_words(language)["card"], data.words("practice", language)["practice"]
    trained = (f"{practice['title']}{data.colon(language)} {practice[f'task_{task}']}" for task in row.get("practice", ()))
    causes = data.words("faults", language)["name"]
    return [*(cards[card]["title"] for card in row.get("cards", ())), *trained, *(causes[cause] for cause in row.get("causes", ())), *([row["test"]] if "test" in row else [])]
