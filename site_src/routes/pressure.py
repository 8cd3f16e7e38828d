"""The Pressure page, which opens on an answer that was baked."""
import flask

from calc import entry, reading
from site_src import catalogue, data, lays, units
from site_src.routes import json_page

routes = flask.Blueprint("pressure", __name__)


@routes.get("/pressure/")
def page():
    system = data.opening_system()
    lay = lays.ready(units.family(system))["one"]
    [line] = lay["lines"]
    shown = units.shown_in(system)
    return flask.render_template(
        "pressure.html",
        answer=reading.answer(lay, catalogue.shelf(), shown),
        hose=data.by_id(data.named("hoses"))[line["hose"]]["label"],
        length=entry.shown(shown, "length", line["length"]),
    )


@routes.get("/pressure/page.json")
def page_data():
    return json_page(catalogue.page())
