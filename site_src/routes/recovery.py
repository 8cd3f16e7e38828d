"""The recovery card of a rig, for its cab: the shift with its proofs, and what to do when it fails."""
import flask

from site_src import data
from site_src.routes import json_page

routes = flask.Blueprint("recovery", __name__)
# The acts of the shift and their proofs, from the card of a rig that has just arrived.
CARD = "scene"
STEPS = (
    "idle", "neutral", "brake", "chock_scene", "zero", "centre", "pump", "light_first", "gear", "speedometer", "light_later",
    "ok_light", "throttle_ready", "pressure", "still", "raise",
)


@routes.get("/rig/recovery/")
def page():
    return flask.render_template("rig/recovery.html", d=data.words("diagnose"))


@routes.get("/rig/recovery/page.json")
def page_data():
    rig = data.words("rig")
    told = data.step_words()
    listed = [step["id"] for step in data.card_steps(CARD)]
    return json_page({
        "fits": {"drive": "midship", "shift_control": "air", "transmission": "automatic"},
        "steps": [{"id": name, "act": told[name]["act"], "see": told[name]["see"]} for name in listed if name in STEPS],
        "words": {"recovery": data.words("diagnose")["recovery"], "option": rig["option"], "card": rig["card"]},
    })
