"""The Pressure page, which opens on an answer that was baked."""
import flask

from calc import entry, reading
from site_src import catalogue, data, lays, units
from site_src.routes import json_page

routes = flask.Blueprint("pressure", __name__)


@routes.get("/pressure/")
def page():
    lay = lays.ready("customary")["one"]
    [line] = lay["lines"]
    us = units.shown_in("US")
    return flask.render_template(
        "pressure.html",
        answer=reading.answer(lay, catalogue.shelf(), us),
        hose=data.by_id(data.load("hoses")["hose"])[line["hose"]]["label"],
        length=entry.shown(us, "length", line["length"]),
    )


@routes.get("/pressure/page.json")
def page_data():
    return json_page(catalogue.page())
