"""The shift cards: their list, each as one step to a screen, and each in its short form on one page."""
import itertools

import flask

from site_src.content import data, units
from site_src.routes import json_page

routes = flask.Blueprint("shift", __name__)
DANGER = "moved"  # the order that the red key of every step leads to
ORIGIN = ("source", "basis")
# what the power line of a step says, of the words of the whole picture
OF_LINE = ("line_", "lamp_engaged", "lamp_ok", "lamp_throttle", "joined_", "pto_", "front_", "as_", "dashed", "no_change", "expected", "turns", "nothing", "engine", "shaft", "pump", "wheels")


def _choosing():
    """What a script needs to say which cards fit a rig."""
    return {
        "questions": data.load("shift")["question"],
        "cards": [{"id": card["id"], "fits": card.get("fits", {})} for card in data.cards()],
    }


@routes.get("/shift/")
def index():
    return flask.render_template("shift/index.html", groups=data.load("shift")["group"])


@routes.get("/shift/page.json")
def index_data():
    words = data.shared_words()
    return json_page({**_choosing(), "words": {key: words[key] for key in ("shift", "rig_answer")}})


@routes.get("/shift/<card>/")
def run(card):
    return flask.render_template("shift/run.html", card=data.by_id(data.cards())[card], about=data.load("shift")["about"])


@routes.get("/shift/<card>/read/")
def read(card):
    steps = data.card_steps(card)
    parts = [{"place": place, "steps": list(listed)} for place, listed in itertools.groupby(steps, lambda step: step["place"])]
    return flask.render_template(
        "shift/read.html", card=data.by_id(data.cards())[card], parts=parts, short=data.words("short")["short"],
        after=_answers_before(steps, data.step_words()), danger=DANGER,
    )


def _answers_before(steps, told):
    """By step: the answers to an earlier question after which it comes, where another answer skips it."""
    found = {}
    for step in steps:
        for ask in steps:
            skipping = [answer["id"] for answer in ask.get("answers", ()) if set(answer.get("proves", ())) & set(step.get("skip_if", ()))]
            if skipping and ask is not step:
                found[step["id"]] = [told[ask["id"]]["answer"][answer["id"]] for answer in ask["answers"] if answer["id"] not in skipping]
    return found


def _power_words():
    return {key: sentence for key, sentence in data.words("why")["power"].items() if key.startswith(OF_LINE) and not key.startswith("engine_")}


def _path(card):
    """What draws the power path of a card's steps, or None where it has no drawing."""
    drawing = data.load("why/power")
    if card not in drawing["begin"]:
        return None
    plain = {part: {name: row for name, row in drawing[part].items() if name not in ORIGIN} for part in ("families", "changes", "act_changes")}
    return {**plain, "begin": drawing["state"][drawing["begin"][card]]}


def _next(card, words):
    """What a finished card leads to: addresses below the site's home, with their titles."""
    pages = {
        "pressure": ("pressure/", words["nav"]["pressure"]), "water": ("water/", words["nav"]["water"]),
        "log": ("log/", data.words("log")["title"]), "start": ("", words["start"]["title"]),
    }
    listed = [pages.get(name) or (f"shift/{name}/", words["card"][name]["title"]) for name in data.by_id(data.cards())[card]["next"]]
    return [{"address": address, "title": title} for address, title in listed]


@routes.get("/shift/<card>/page.json")
def page_data(card):
    sequence = data.sequence(card)
    words = data.shared_words()
    steps = data.steps()
    told = data.step_words()
    names = [step["id"] for step in sequence["steps"]]
    asked = [steps[name] for name in names]
    about = {step: question for question, listed in data.load("shift")["about"]["question"].items() for step in listed}
    orders = {DANGER, *(step["order"] for step in asked if "order" in step), *(name for step in asked for key in ("warns", "reports") for name in step.get(key, ()))}
    return json_page({
        **_choosing(),
        "orders": data.orders(*sorted(orders)),
        "sequence": sequence,
        "path": _path(card),
        "into_pump": data.by_id(data.cards())[card].get("engages", False),
        "units": units.shown_in("US"),
        "steps": {name: {**told[name], "is_choice": "asks" in steps[name] or steps[name].get("choice", False), "length": len(f"{told[name]['act']} {told[name]['see']}".split()), **({"about": about[name]} if name in about else {}), **{key: steps[name][key] for key in ("place", "note_for", "order", "warns", "shows") if key in steps[name]}} for name in names},
        "words": {**{key: words[key] for key in ("shift", "place", "guard", "engine", "rig_answer", "sign", "rig_status", "rig_status_acts", "out_first")}, "order": data.words("orders")["order"], "power": _power_words(), "run_place": data.words("log")["run_place"]},
        "titles": {name: card["title"] for name, card in words["card"].items()},
        "next": _next(card, words),
    })
