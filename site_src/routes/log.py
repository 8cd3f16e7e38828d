"""The log: every run of a card, a diagnosis or a practice that this phone keeps."""
import flask

from site_src.content import data
from site_src.routes import json_page

routes = flask.Blueprint("log", __name__)


@routes.get("/log/")
def page():
    return flask.render_template("log.html")


@routes.get("/log/page.json")
def page_data():
    words = data.shared_words()
    controls = {key: words["pressure"][key] for key in ("less", "more")}
    return json_page({"words": {"log": data.words("log"), "lasted": words["lasted"], "pressure": controls}})
