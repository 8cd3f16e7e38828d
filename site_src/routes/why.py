"""Why it works: the power path to play with, the speeds of a rig's own gearing, heat; and the practice rig."""
import functools

import flask

from calc.teaching import model_run, powertrain, practice
from site_src.content import data, units
from site_src.routes import json_page

routes = flask.Blueprint("why", __name__)
ORIGIN = ("source", "basis")


def parameters():
    """Figures of the practice rig, as calc.teaching.powertrain takes them."""
    return _plain("parameters")


def lights():
    """What each light needs, as calc.teaching.powertrain takes it."""
    return _plain("lights")


def _plain(section):
    return {name: value for name, value in data.load("practice")[section].items() if name not in ORIGIN}


def _told():
    return data.words("why")


def _words(*sections):
    """The sections of words a page's script asks for, and what its controls say."""
    shared = {**data.shared_words(), **data.words("practice"), **_told()}
    return {
        **{section: shared[section] for section in sections},
        "pressure": {key: shared["pressure"][key] for key in ("less", "more", "waiting")},
        "rig": {"unset": data.words("rig")["rig"]["unset"]},
    }


@routes.get("/why/")
def page():
    return flask.render_template("why/index.html", t=_told(), lights=lights(), p=data.words("practice")["practice"], d=data.words("drill"))


@routes.get("/why/speeds/")
def speeds():
    return flask.render_template("why/speeds.html", t=_told(), formulas=_formulas("pump_speed", "speedometer", "pressure_speed"))


@routes.get("/why/drives/")
def drives():
    return flask.render_template("why/drives.html", t=_told())


@routes.get("/why/drives/page.json")
def drives_data():
    families = data.load("why/power")["families"]
    return json_page({
        "families": {name: families[name] for name in ("split", "pto", "front")},
        "split": data.load("why/drives")["split"],
        "states": [{**state, "engine": "idle", "shaft_turning": False} for state in data.load("why/drives")["state"]],
        "words": _words("power", "drives", "engine"),
    })


@routes.get("/why/heat/")
def heat():
    return flask.render_template("why/heat.html", t=_told(), formulas=_formulas("shut_in", "circulation"))


@routes.get("/practice/", endpoint="practice")
def practice_page():
    return flask.render_template("why/practice.html", p=data.words("practice")["practice"])


def _formulas(*names):
    listed = data.by_id(data.named("formulas"))
    return [listed[name] for name in names]


@functools.cache
def models():
    """How a run of each task should go, with each fault and with none, as calc.teaching.debrief takes it."""
    rows = [(task, fault) for task in practice.TASKS for fault in (None, *powertrain.FAULT_CODES)]
    return [
        {
            "task": task, "fault": fault, "alike": model_run.alike(task, parameters(), lights(), fault) if fault else [],
            "proofs": model_run.proofs(task, parameters(), lights(), fault) if fault else [],
            **model_run.model_run(task, parameters(), lights(), [fault] if fault else []),
        }
        for task, fault in rows
    ]


def _rig_page(*sections, **more):
    return json_page({
        **more,
        "faults": powertrain.FAULT_CODES,
        "parameters": parameters(),
        "lights": lights(),
        "systems": units.for_page(),
        "words": _words("power", "practice", "note", "sound", "why", "unit", "engine", *sections),
    })


@routes.get("/why/page.json")
def page_data():
    return _rig_page()


@routes.get("/practice/page.json")
def practice_data():
    return _rig_page("caution", "lasted", "debrief", "sign", "proof", proofs=model_run.PROOFS, models=models(), sound_share=data.load("practice")["surprise"]["sound_share"])


@routes.get("/why/speeds/page.json")
def speeds_data():
    return json_page({
        "systems": units.for_page(),
        "words": _words("speeds", "refusal", "unit", "engine"),
    })


@routes.get("/why/heat/page.json")
def heat_data():
    opening = {name: text for name, text in data.load("why/heat")["opening"].items() if name not in ORIGIN}
    return json_page({
        "opening": opening,
        "systems": units.for_page(),
        "words": _words("heat", "refusal", "unit", "engine"),
    })
