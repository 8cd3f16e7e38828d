"""The shift cards: their list, each as one step to a screen, and each whole on one page."""
import flask

from site_src.content import data, units
from site_src.routes import json_page

routes = flask.Blueprint("shift", __name__)
DANGER = "moved"  # the order that the red key of every step leads to
SPLIT_BY_AIR = {"drive": ["midship", "rear_shaft"], "shift_control": ["air"]}  # the rigs whose power path is drawn


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
    return flask.render_template("shift/run.html", card=data.by_id(data.cards())[card])


@routes.get("/shift/<card>/read/")
def read(card):
    steps, told = data.card_steps(card), data.step_words()
    row = data.by_id(data.cards())[card]
    return flask.render_template(
        "shift/read.html", card=row, steps=steps, told=told, after=_answers_before(steps, told), order_at=_orders_at(steps, row),
        danger=DANGER,
    )


def _orders_at(steps, card):
    """By step: the order of its hazard, as it is told to the rigs that the step is for."""
    drives = {step["id"]: {**card.get("fits", {}), **step.get("only_if", {})}.get("drive", [None]) for step in steps}
    orders = data.orders()
    return {step["id"]: data.order_for(orders[step["order"]], drives[step["id"]][0]) for step in steps if "order" in step}


def _answers_before(steps, told):
    """By step: the answers to an earlier question after which it comes, where another answer skips it."""
    found = {}
    for step in steps:
        for ask in steps:
            skipping = [answer["id"] for answer in ask.get("answers", ()) if set(answer.get("proves", ())) & set(step.get("skip_if", ()))]
            if skipping and ask is not step:
                found[step["id"]] = [told[ask["id"]]["answer"][answer["id"]] for answer in ask["answers"] if answer["id"] not in skipping]
    return found


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
    orders = {DANGER, *(step["order"] for step in asked if "order" in step), *(name for step in asked for key in ("warns", "reports") for name in step.get(key, ()))}
    return json_page({
        **_choosing(),
        "orders": data.orders(*sorted(orders)),
        "sequence": sequence,
        "path": SPLIT_BY_AIR if card in data.load("why/power")["begin"] else None,
        "units": units.shown_in("US"),
        "steps": {name: {**told[name], "length": len(f"{told[name]['act']} {told[name]['see']}".split()), **{key: steps[name][key] for key in ("place", "note_for", "order", "warns") if key in steps[name]}} for name in names},
        "words": {**{key: words[key] for key in ("shift", "place", "guard", "engine", "rig_answer")}, "order": data.words("orders")["order"]},
        "titles": {name: card["title"] for name, card in words["card"].items()},
        "next": _next(card, words),
    })
