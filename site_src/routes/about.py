"""Where every number comes from, and what the tool does not do."""
import flask

from site_src.content import citing, data, evidence
from site_src.routes import json_page

routes = flask.Blueprint("about", __name__)
routes.app_template_filter("percent")(evidence.percent)


@routes.get("/sources/")
def sources():
    nozzles = data.load("nozzles")
    losses = {**data.load("losses"), "appliance": data.named("losses")}
    return flask.render_template(
        "sources.html",
        evidence=data.words("evidence"),
        formulas=data.named("formulas"),
        hoses={**data.load("hoses"), "hose": data.named("hoses")},
        nozzles=nozzles,
        losses=losses,
        steps=data.steps().values(),
        told=data.step_words(),
        bibliography=citing.listed(),
        vendored=data.load("vendor")["package"],
    )


@routes.get("/evidence/")
def proof():
    parts = evidence.found()
    told = evidence.told_from_memory()
    counted = evidence.counted_from_memory()
    return flask.render_template(
        "evidence.html",
        e=data.words("evidence"),
        parts=parts,
        groups=evidence.groups(parts["published"]["cpython"]),
        whole=evidence.whole_pressures(parts["published"]["cpython"]),
        topics=evidence.by_topic(parts["published"]["cpython"]),
        apart=evidence.apart(parts["published"]),
        told=told,
        counted=counted,
        recalled=sum(map(len, told.values())) + sum(counted.values()),
    )


@routes.get("/all/phone/")
def phone():
    return flask.render_template("phone.html", t=data.words("phone")["phone"])


@routes.get("/all/phone/page.json")
def phone_data():
    shared = data.shared_words()
    return json_page({
        "examples": evidence.examples(),
        "words": {**data.words("phone"), "topic": data.words("evidence")["topic"], "units": shared["units"]},
    })


@routes.get("/cautions/")
def cautions():
    return flask.render_template("cautions.html")
