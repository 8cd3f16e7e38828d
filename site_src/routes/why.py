"""Why it works: the power path to play with, the speeds of a rig's own gearing, heat; and the practice rig."""
import flask

from site_src import catalogue, data
from site_src.routes import json_page

routes = flask.Blueprint("why", __name__)
ORIGIN = ("source", "basis")


def parameters():
    """Figures of the practice rig, as calc.powertrain takes them."""
    return _plain("parameters")


def lights():
    """What each light needs, as calc.powertrain takes it."""
    return _plain("lights")


def _plain(section):
    return {name: value for name, value in data.load("practice")[section].items() if name not in ORIGIN}
