"""The fleet: every rig that was baked in, each with its panel card and a way onto the phone."""
import flask

from calc.rig import panel_card
from site_src.content import catalogue, data, fleet, units
from site_src.routes import json_page

routes = flask.Blueprint("rigs", __name__)
MOST_KEPT = 50  # rigs that a phone keeps from the list


def _rigs():
    return flask.current_app.config["RIGS"]


@routes.get("/rigs/")
def index():
    return flask.render_template("rigs/index.html", rigs=_rigs(), most=MOST_KEPT, is_demo=flask.current_app.config["IS_DEMO"])


@routes.get("/rig/away/")
def away():
    """What the worker shows in place of a fleet's page that is not on the phone."""
    return flask.render_template("rigs/away.html")


@routes.get("/rigs/<name>/")
def rig(name):
    profile = _rigs()[name]
    system = profile["units"]
    family = data.by_id(units.systems())[system]["family"]
    tips = [tip for tip in catalogue.tip_choices() if tip["family"] == family]
    section = data.load("rig")["section_length"][family]
    card = panel_card.card(profile, catalogue.shelf(), units.shown_in(system), section, tips)
    unit_words = {f"u_{kind}": word for kind, word in data.words("units")["unit"][system].items()}
    return flask.render_template(
        "rigs/rig.html", name=name, profile=profile, card=card, u=unit_words, taken=fleet.packed(profile),
        is_demo=flask.current_app.config["IS_DEMO"],
    )


@routes.get("/rigs/<name>/rig.json")
def file(name):
    return json_page(_rigs()[name])
