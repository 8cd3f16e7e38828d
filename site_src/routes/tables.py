"""The baked reference tables."""
import flask

from site_src import data, tables

routes = flask.Blueprint("tables", __name__)


def _formulas():
    return data.by_id(data.load("formulas")["formula"])


@routes.get("/tables/")
def index():
    return flask.render_template("tables/index.html")


@routes.get("/tables/friction/")
def friction():
    return flask.render_template("tables/friction.html", tables=tables.friction(), formula=_formulas()["friction"])


@routes.get("/tables/tips/")
def tips():
    return flask.render_template(
        "tables/tips.html", tables=tables.tips(), formulas=_formulas(), source=data.load("nozzles")["tips"],
    )


@routes.get("/tables/reaction/")
def reaction():
    return flask.render_template(
        "tables/reaction.html", table=tables.fog_reaction(), formula=_formulas()["fog_reaction"],
        crews=data.load("nozzles")["crew"], source=data.load("nozzles")["crews"],
    )


@routes.get("/tables/elevation/")
def elevation():
    return flask.render_template(
        "tables/elevation.html", table=tables.elevation(), formula=_formulas()["elevation"],
        height=data.load("losses")["height"],
    )


@routes.get("/tables/appliances/")
def appliances():
    return flask.render_template(
        "tables/appliances.html", table=tables.appliances(), note=data.load("losses")["appliances"]["note"],
    )
