"""The drill: five questions a sitting on numbers and signs, from the chosen rig's own figures."""
import flask

from site_src.content import catalogue, data, fleet, units
from site_src.routes import json_page
from site_src.routes.why import lights

routes = flask.Blueprint("drill", __name__)
SECTIONS = ("drill", "kind", "question", "option", "working", "habit")


def tables():
    """What questions of signs are made from, as calc.teaching.drill takes it."""
    return {"lights": lights(), "gauges": data.load("diagnose/water_loss")["row"]}


@routes.get("/practice/numbers/")
def page():
    return flask.render_template("why/numbers.html", d=data.words("drill")["drill"])


@routes.get("/practice/numbers/page.json")
def page_data():
    words, site, loss = data.words("drill"), data.shared_words(), data.words("diagnose")
    return json_page({
        **tables(),
        "example": fleet.profile_of(data.FOLDER / "drill" / "practice-engine.toml"),
        "shelf": catalogue.shelf(),
        "tips": catalogue.tip_choices(),
        "systems": units.for_page(),
        "words": {
            **{section: words[section] for section in SECTIONS}, "unit": site["unit"], "engine": site["engine"], "refusal": site["refusal"],
            "gauge_answer": loss["gauge_answer"], "side": {name: side["name"] for name, side in loss["side"].items()},
            "class": data.words("water")["text"]["class"],
        },
    })
