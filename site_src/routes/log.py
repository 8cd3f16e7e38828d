"""The log: every run of a card, a diagnosis or a practice that this phone keeps."""
import flask

from site_src import data
from site_src.routes import json_page

routes = flask.Blueprint("log", __name__)


@routes.get("/log/")
def page():
    return flask.render_template("log.html")


@routes.get("/log/page.json")
def page_data():
    steps = data.words("site")["pressure"]  # the controls' own words
    return json_page({"words": {"log": data.words("log"), "pressure": {key: steps[key] for key in ("less", "more")}}})
