"""The baked reference tables, in each system of units."""
import re

import flask

from site_src.content import data, units
from site_src.content.tables import Tables

routes = flask.Blueprint("tables", __name__)


@routes.app_template_filter("padding")
def padding(text, column):
    """The decimals that a figure lacks beside the others of its column, such as ".0": room for them, so that the marks stand in line."""
    marks = [re.fullmatch(r"-?\d+(?:([.,])(\d+))?", each) for each in (text, *column)]
    most = max((mark for mark in marks if mark and mark[2]), key=lambda mark: len(mark[2]), default=None)
    if marks[0] is None or most is None:
        return ""
    own = marks[0][2] or ""
    return ("" if own else most[1]) + "0" * (len(most[2]) - len(own))

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
        shown=row,
        systems=units.systems(),
        tables=Tables(row),
        formulas=_formulas(),
        nozzles=data.load("nozzles"),
        losses=data.load("losses"),
        water=data.load("water"),
        told=data.words("water"),
        u=data.words("units")["unit"][system],
    )
