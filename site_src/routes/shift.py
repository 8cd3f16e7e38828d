"""The shift cards: their list, each as one step to a screen, and each whole on one page."""
import flask

from site_src import data
from site_src.routes import json_page

routes = flask.Blueprint("shift", __name__)


def _cards():
    return data.load("sequences")["sequence"]


@routes.get("/shift/")
def index():
    return flask.render_template("shift/index.html", cards=_cards())


@routes.get("/shift/<card>/")
def run(card):
    return flask.render_template("shift/run.html", card=data.by_id(_cards())[card])


@routes.get("/shift/<card>/read/")
def read(card):
    steps = data.by_id(data.load("sequences")["step"])
    listed = data.by_id(_cards())[card]
    return flask.render_template(
        "shift/read.html", card=listed, steps=[steps[name] for name in listed["steps"]],
        told=data.load("words/en/steps"),
    )


@routes.get("/shift/<card>/page.json")
def page_data(card):
    sequence = data.sequence(card)
    words = data.load("words/en/site")
    steps = data.by_id(data.load("sequences")["step"])
    told = data.load("words/en/steps")
    names = [step["id"] for step in sequence["steps"]]
    return json_page({
        "sequence": sequence,
        "has_path": card in data.load("power")["begin"],
        "steps": {name: {**told[name], "place": steps[name]["place"]} for name in names},
        "words": {
            **{key: words[key] for key in ("shift", "place", "guard", "engine")},
            **{key: data.load("words/en/rig")[key] for key in ("field", "option", "drive_note")},
        },
        "title": words["card"][card]["title"],
    })
