"""Where every number comes from, and what the tool does not do."""
import flask

from site_src import data

routes = flask.Blueprint("about", __name__)


@routes.get("/sources/")
def sources():
    nozzles = data.load("nozzles")
    losses = data.load("losses")
    return flask.render_template(
        "sources.html",
        formulas=data.load("formulas")["formula"],
        hoses=data.load("hoses"),
        nozzles=nozzles,
        losses=losses,
        steps=data.steps().values(),
        told=data.step_words(),
        vendored=data.load("vendor")["package"],
    )


@routes.get("/cautions/")
def cautions():
    return flask.render_template("cautions.html")
