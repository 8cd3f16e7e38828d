"""The pages that find faults: the diagnosis, the collar, the lights, loss of water and the leak hunt."""
import flask

from calc.diagnosis import interlock, water_loss
from site_src.content import data, knowledge, units
from site_src.routes import json_page

routes = flask.Blueprint("diagnose", __name__)
DOUBT = "pump_fails"  # the order where proofs or lights contradict each other


def _words():
    return data.words("diagnose")


def _picked(*sections):
    """Some sections of the words of these pages, and what every page that computes may have to say."""
    words = _words()
    return {**{key: words[key] for key in sections}, "engine": data.words("site")["engine"], "order": data.words("orders")["order"]}


@routes.get("/diagnose/")
def page():
    return flask.render_template("diagnose/page.html", d=_words(), collar_drives=data.load("diagnose/collar")["proofs"]["drives"])


@routes.get("/diagnose/page.json")
def page_data():
    file, told = data.load("faults"), data.words("faults")
    site = data.shared_words()
    orders = data.orders(*knowledge.order_names())
    words = _picked("diagnose", "end", "role", "engine_state", "at", "sense", "where", "likelihood")
    return json_page({
        "titles": {name: card["title"] for name, card in site["card"].items()},
        "knowledge": knowledge.base(),
        "signs": {row["id"]: {"begins": knowledge.begins(row),
                              **{key: row[key] for key in ("place", "at", "sense", "radio", "order", "alarm") if key in row}} for row in file["sign"]},
        "causes": {row["id"]: {key: row[key] for key in ("out", "radio", "order", "source", "basis", "likelihood") if key in row}
                   for row in file["cause"]},
        "orders": orders,
        "words": {**words, **told, "mind": knowledge.cautions(), "say": knowledge.radio_words(), "basis": site["basis"], "rig_status_acts": site["rig_status_acts"]},
    })


@routes.get("/diagnose/read/")
def read():
    return flask.render_template(
        "diagnose/read.html", d=_words(), causes=data.load("faults")["cause"], told=data.words("faults"), say=knowledge.radio_words(),
    )


@routes.get("/diagnose/collar/")
def collar():
    return flask.render_template("diagnose/collar.html", d=_words(), origin=data.load("diagnose/collar")["proofs"])


@routes.get("/diagnose/collar/page.json")
def collar_data():
    proofs = data.load("diagnose/collar")["proof"]
    named = {answer["order"] for proof in proofs for answer in proof["answers"] if "order" in answer}
    return json_page({
        "proofs": proofs,
        "orders": data.orders(*sorted(named | {DOUBT})),
        "words": _picked("collar", "collar_place", "collar_meaning", "proof", "proof_answer"),
    })


@routes.get("/diagnose/lights/")
def lights():
    tables = data.load("diagnose/interlocks")["table"]
    return flask.render_template(
        "diagnose/lights.html", d=_words(), tables=tables, rows={table["id"]: interlock.rows(table) for table in tables},
    )


@routes.get("/diagnose/lights/page.json")
def lights_data():
    kept = ("id", "drives", "inputs", "never_both", "lights")
    return json_page({
        "orders": data.orders(DOUBT),
        "tables": [{key: table[key] for key in kept} for table in data.load("diagnose/interlocks")["table"]],
        "words": _picked("lights", "lamp", "lamp_state", "input", "lights_table"),
    })


@routes.get("/diagnose/water/")
def water():
    file = data.load("diagnose/water_loss")
    return flask.render_template("diagnose/water.html", d=_words(), rows=file["row"], origin=file["rows"], lost=data.orders(file["lost"]["order"])[file["lost"]["order"]])


@routes.get("/diagnose/water/page.json")
def water_data():
    file = data.load("diagnose/water_loss")
    return json_page({
        "answers": {gauge: list(told) for gauge, told in _words()["gauge_answer"].items()},
        "rows": file["row"], "sees": {gauge: file["sees"].get(gauge, {}) for gauge in water_loss.GAUGES}, "shown": [file["lost"]["order"]], "sides": data.by_id(file["side"]),
        "orders": data.orders(*sorted({name for side in file["side"] for name in side["warns"]})),
        "words": _picked("water", "gauge", "gauge_answer", "side"),
    })


@routes.get("/diagnose/leak/")
def leak():
    return flask.render_template("diagnose/leak.html", d=_words(), origin=data.load("diagnose/water_loss")["parts"])


@routes.get("/diagnose/leak/page.json")
def leak_data():
    site = data.shared_words()
    file = data.load("diagnose/water_loss")
    order = file["plugs"]["order"]
    words = {**_picked("leak", "part", "part_how", "plug", "role"), **{key: site[key] for key in ("refusal", "unit")}}
    return json_page({
        "parts": file["part"], "plugs": file["plug"], "orders": data.orders(order), "order": order,
        "systems": units.for_page(), "words": words,
    })
