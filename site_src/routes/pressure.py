"""The Pressure page, which opens on an answer that was baked."""
import flask

from calc import reading
from site_src import catalogue, data, units
from site_src.routes import json_page

routes = flask.Blueprint("pressure", __name__)


@routes.get("/pressure/")
def page():
    lay = catalogue.OPENING_LAY
    answer = reading.answer(lay, catalogue.shelf(), units.system("US"))
    hose = data.by_id(data.load("hoses")["hose"])[lay["lines"][0]["hose"]]["label"]
    return flask.render_template("pressure.html", answer=answer, lay=lay, hose=hose)


@routes.get("/pressure/page.json")
def page_data():
    return json_page(catalogue.page())
