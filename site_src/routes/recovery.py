"""The recovery card of a rig, for its cab: the shift with its proofs, and what to do when it fails."""
import flask

from site_src.content import data
from site_src.routes import json_page

routes = flask.Blueprint("recovery", __name__)
# The acts of the shift and their proofs, from the card of a rig that has just arrived; less what is not the shift's.
CARD = "scene"
LEFT_OUT = ("full_stop", "rear_place", "tank_to_pump", "circulate", "gauges", "stages_set", "prime", "retarder",
            "governor", "relief_ready", "by_hand", "relief_set", "line_told", "charge", "keep_moving")
ORDERS = ("moved", "steam", "line_lost", "dead_throttle", "grinding", "pump_fails", "road_fails", "override")
TOLD = ("act", "see", "note")


@routes.get("/rig/recovery/")
def page():
    return flask.render_template("rig/recovery.html", d=data.words("diagnose"))


@routes.get("/rig/recovery/page.json")
def page_data():
    rig = data.words("rig")
    steps = [_act(step) for step in data.card_steps(CARD) if step["id"] not in LEFT_OUT and "asks" not in step]
    return json_page({
        "orders": data.orders(*ORDERS),
        "questions": data.load("shift")["question"],
        "split": data.by_id(data.load("shift")["part"])["into_split"]["only_if"],
        "override": data.by_id(data.cards())["override"]["fits"],
        "steps": steps,
        "words": {
            "recovery": data.words("diagnose")["recovery"], "option": rig["option"], "card": rig["card"],
            "rig_answer": data.words("shift")["rig_answer"], "order": data.words("orders")["order"],
        },
    })


def _act(step):
    """One act in words, with the rigs it is for."""
    told = data.step_words()[step["id"]]
    return {
        "id": step["id"], "only_if": step.get("only_if", {}), "note_for": step.get("note_for"),
        **{key: told[key] for key in TOLD if key in told},
    }
