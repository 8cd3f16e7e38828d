"""The baked reference tables, in each system of units."""
import flask

from site_src.content import data, units
from site_src.content.tables import Tables

routes = flask.Blueprint("tables", __name__)
PAGES = ("friction", "tips", "reaction", "elevation", "appliances", "draft", "supply")


def _formulas():
    return data.by_id(data.named("formulas"))


@routes.get("/tables/")
def index():
    return flask.render_template("tables/index.html", pages=PAGES, systems=units.systems())


@routes.get("/tables/<system>/<page>/")
def table(system, page):
    row = data.by_id(units.systems())[system]
    return flask.render_template(
        f"tables/{page}.html",
        page=page,
        system=row,
        systems=units.systems(),
        tables=Tables(row),
        formulas=_formulas(),
        nozzles=data.load("nozzles"),
        losses=data.load("losses"),
        water=data.load("water"),
        told=data.words("water"),
        u=data.words("units")["unit"][system],
    )
