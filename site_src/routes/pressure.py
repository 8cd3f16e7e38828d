"""The Pressure page, which opens on an answer that was baked."""
import flask

from calc import reading
from site_src import catalogue, units
from site_src.routes import json_page

routes = flask.Blueprint("pressure", __name__)


@routes.get("/pressure/")
def page():
    lay = catalogue.OPENING_LAY
    answer = reading.answer(lay, catalogue.shelf(), units.system("US"))
    return flask.render_template("pressure.html", answer=answer, lay=lay)


@routes.get("/pressure/page.json")
def page_data():
    return json_page(catalogue.page())
