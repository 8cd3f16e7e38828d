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
    short, words = data.words("short")["short"], data.words("checkoff")
    return json_page({
        "see": {row["id"]: [f"{data.colon(data.LANGUAGE.get())} ".join(short[step]) for step in row["see"]] if "see" in row else data.orders(row["order"])[row["order"]]["do"] if "order" in row
                else words["checkoff"]["see"][row["id"]] for row in rows},
        "tasks": [{"id": row["id"], "titles": [title for language in data.languages() for title in _titles(row, language)]} for row in rows],
        "whole": ["done", "stands", *(data.words("practice", language)["practice"]["outcome_good"] for language in data.languages())],
        "words": {**words, "lasted": data.shared_words()["lasted"]},
    })


def _titles(row, language):
    """What the log calls the runs of a task in a language, whichever the phone was in."""
    cards, practice = data.shared_words(language)["card"], data.words("practice", language)["practice"]
    trained = (f"{practice['title']}{data.colon(language)} {practice[f'task_{task}']}" for task in row.get("practice", ()))
    causes = data.words("faults", language)["name"]
    return [*(cards[card]["title"] for card in row.get("cards", ())), *trained, *(causes[cause] for cause in row.get("causes", ())), *([row["test"]] if "test" in row else [])]
