"""The drill and the call of the shift: questions on numbers and signs, from the chosen rig's own figures."""
import flask

from site_src.content import catalogue, data, fleet, units
from site_src.routes import json_page
from site_src.routes.why import lights

routes = flask.Blueprint("drill", __name__)
SECTIONS = ("drill", "kind", "question", "option", "working", "habit")
PROVED_AT = {"engaged": "light_first", "ok": "ok_light", "gauge": "pressure", "agree": "pressure"}  # steps of the card into pump
LEADS = {  # by kind of question: the page below the site's home, and where its name stands in the words
    "pump": ("pressure/", ("site", "nav", "pressure")), "second": ("pressure/", ("site", "nav", "pressure")),
    "lines": ("water/hydrant/", ("water", "page", "hydrant", "title")), "intake": ("water/hydrant/", ("water", "page", "hydrant", "title")),
    "tank": ("water/tank/", ("water", "page", "tank", "title")), "tank_low": ("water/tank/", ("water", "page", "tank", "title")),
    "look": ("diagnose/water/", ("diagnose", "water", "title")),
}


def tables():
    """What questions of signs are made from, as calc.teaching.drill takes it."""
    return {"lights": lights(), "gauges": data.load("diagnose/water_loss")["row"]}


@routes.get("/practice/numbers/")
def page():
    return flask.render_template("why/numbers.html", d=data.words("drill")["drill"])


@routes.get("/practice/numbers/page.json")
def page_data():
    return json_page(_asked_from(*SECTIONS))


@routes.get("/practice/call/")
def call():
    return flask.render_template("why/call.html", c=data.words("drill")["call"], d=data.words("drill")["drill"])


@routes.get("/practice/call/page.json")
def call_data():
    asked, power = _asked_from("call", "dial", *SECTIONS), data.words("why")["power"]
    asked["words"].update(gauge=data.words("diagnose")["gauge"], lit={name: power[f"lamp_is_{name}"] for name in ("on", "off")})
    return json_page({**asked, "leads": _leads()})


def _leads():
    """The page that would have told, by the kind of a step; where a card's step tells it, by what was right."""
    card, short = data.words("shift")["card"]["scene"]["title"], data.words("short")["short"]
    steps = {f"proof_{right}": {"address": "shift/scene/read/", "name": f"{card}{data.colon(data.LANGUAGE.get())} {short[step][0]}"} for right, step in PROVED_AT.items()}
    return {**steps, **{kind: {"address": address, "name": data.said(place)} for kind, (address, place) in LEADS.items()}}


def _asked_from(*sections):
    """What questions are made from and how they are worded, for a page."""
    words, site, loss = data.words("drill"), data.shared_words(), data.words("diagnose")
    return {
        **tables(),
        "example": fleet.profile_of(data.FOLDER / "drill" / "practice-engine.toml"),
        "shelf": catalogue.shelf(),
        "tips": catalogue.tip_choices(),
        "systems": units.for_page(),
        "words": {
            **{section: words[section] for section in sections}, "unit": site["unit"], "engine": site["engine"], "refusal": site["refusal"],
            "gauge_answer": loss["gauge_answer"], "side": {name: side["name"] for name, side in loss["side"].items()},
            "class": data.words("water")["text"]["class"],
        },
    }
