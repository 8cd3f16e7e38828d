"""The one door of calc for the phone: a name and JSON text in, JSON text out."""
import json

from calc import hose, nozzle, reading, rounding, shift, water
from calc.errors import CalcError

MOST_CHARACTERS = 200000

# what may be called: name, function, its arguments in order
_DOORS = (
    ("hose.friction_loss_psi", hose.friction_loss_psi, ("coefficient", "flow_gpm", "length_ft")),
    ("nozzle.smooth_bore_flow_gpm", nozzle.smooth_bore_flow_gpm, ("tip_in", "nozzle_psi")),
    ("reading.answer", reading.answer, ("lay", "shelf", "units")),
    ("rounding.rounded", rounding.rounded, ("value", "places")),
    ("shift.start", shift.start, ("sequence", "rig")),
    ("shift.advance", shift.advance, ("state", "event")),
    ("shift.offer", shift.offer, ("state",)),
    ("water.elevation_psi", water.elevation_psi, ("rise_ft",)),
)
DOORS = {name: (function, arguments) for name, function, arguments in _DOORS}


def call(name, arguments_json):
    """Call a function of calc by name.

    name: one of DOORS, such as "hose.friction_loss_psi"
    arguments_json: its arguments, as the text of a JSON object, up to 200,000 characters

    Returns the text of a JSON object: `{"ok": answer}`, or `{"error": {"field", "code", ...facts}}` for an
    input that cannot be used. Anything else that goes wrong is a bug of ours and is raised as it is.
    Source: common practice.
    """
    try:
        return json.dumps({"ok": _answer(name, arguments_json)})
    except CalcError as error:
        told = dict(error.facts)
        told["field"] = error.field
        told["code"] = error.code
        return json.dumps({"error": told})


def _answer(name, arguments_json):
    if name not in DOORS:
        raise CalcError("name", "unknown")
    function, expected = DOORS[name]
    if len(arguments_json) > MOST_CHARACTERS:
        raise CalcError("arguments", "too_large", most=MOST_CHARACTERS)
    try:
        arguments = json.loads(arguments_json)
    except ValueError:
        raise CalcError("arguments", "not_json")
    except RuntimeError:
        raise CalcError("arguments", "too_deep")
    if not isinstance(arguments, dict):
        raise CalcError("arguments", "not_an_object")
    for argument in arguments:
        if argument not in expected:
            raise CalcError(argument, "unknown_argument")
    for argument in expected:
        if argument not in arguments:
            raise CalcError(argument, "missing")
    return function(**arguments)
