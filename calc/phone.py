"""The one door of calc for the phone: a name and JSON text in, JSON text out."""
import json

from calc.errors import CalcError

MOST_CHARACTERS = 200000

# What may be called, as module.function, and its arguments. A module is imported when it is first asked for,
# so that a page waits only for what it uses.
DOORS = {
    "hose.friction_loss_psi": ("coefficient", "flow_gpm", "length_ft"),
    "at_pump.answer": ("lay", "shelf", "units", "profile"),
    "away.slept": ("wall_s", "steady_s"),
    "bounds.answer": ("lay", "shelf", "units", "line", "reach"),
    "flowing.now": ("lay", "shelf", "units"),
    "draft_reading.answer": ("entries", "shelf", "units"),
    "entry.bound": ("units", "kind", "amount", "side"),
    "entry.added": ("units", "kind", "text", "other", "sign"),
    "entry.shown": ("units", "kind", "text"),
    "entry.stepped": ("text", "kind", "decimal", "step", "direction", "least"),
    "foam_reading.answer": ("entries", "shelf", "units"),
    "heights.converted": ("lay", "units"),
    "hydrant_reading.answer": ("entries", "shelf", "units"),
    "collar.places": ("proofs", "given"),
    "fault.entered": ("knowledge", "facts", "missing"),
    "fault.for_rig": ("knowledge", "rig"),
    "fault.next_check": ("knowledge", "signs", "role", "engine", "questions"),
    "fault.without_shifts": ("knowledge",),
    "fault.rank": ("knowledge", "signs"),
    "gauges.side": ("rows", "seen"),
    "interlock.behind": ("table", "lights"),
    "leak.hunt": ("parts", "runs", "role", "units"),
    "leak.restore": ("plugs", "listed", "opened"),
    "leak.vacuum_inhg": ("field", "text", "units"),
    "joint_reading.answer": ("entries", "shelf", "units"),
    "measure.read": ("readings", "handbook", "units"),
    "nozzle.smooth_bore_flow_gpm": ("tip_in", "nozzle_psi"),
    "reading.answer": ("lay", "shelf", "units"),
    "practice.begin": ("task", "parameters", "lights", "faults"),
    "practice.advance": ("run", "event"),
    "practice.gauges": ("run", "units"),
    "primer.size": ("rated", "units"),
    "pace.too_quick": ("records", "words"),
    "panel_card.card": ("profile", "shelf", "units", "section", "tips"),
    "relay_reading.answer": ("entries", "shelf", "units"),
    "rig.at_hand": ("profile", "shelf", "units"),
    "rig.lay_of": ("bed",),
    "rig_figures.beside_handbook": ("profile", "shelf", "units"),
    "rig.missing": ("profile",),
    "rig.problems": ("profile", "shelf", "units"),
    "rounding.rounded": ("value", "places"),
    "service_bay.answer": ("baseline", "readings", "quick", "accuracy", "units"),
    "service_curve.curve": ("plan", "summary", "earlier", "units"),
    "service_due.standing": ("results", "on_ms", "interval_days"),
    "service_entry.shown": ("units", "kind", "text"),
    "service_file.baseline": ("given", "units"),
    "service_file.judged": ("record", "units"),
    "service_history.history": ("results", "speed_accuracy_rpm", "units"),
    "service_page.answer": ("record", "units"),
    "service_test.plan": ("rig", "conditions"),
    "service_test.verdict": ("plan", "readings"),
    "shift.start": ("sequence", "rig"),
    "shift.advance": ("state", "event"),
    "shift.offer": ("state",),
    "shuttle_reading.answer": ("entries", "shelf", "units"),
    "tank_reading.answer": ("entries", "shelf", "units"),
    "speeds.answer": ("entries", "gears", "units"),
    "warming.answer": ("entries", "units"),
    "water.elevation_psi": ("rise_ft",),
}


def call(name, arguments_json):
    """Call a function of calc by name.

    name: one of DOORS, such as "hose.friction_loss_psi"
    arguments_json: its arguments, as the text of a JSON object, up to 200,000 characters

    Returns the text of a JSON object: `{"ok": answer}`, or `{"error": {"field", "code", ...facts}}` for an
    input that cannot be used. Raises nothing but a bug of ours, as it is.
    Source: common practice.
    """
    try:
        answer = _answer(name, arguments_json)
        try:
            return json.dumps({"ok": answer})
        except RuntimeError:  # pragma: no cover - CPython's reader has stopped by then; only MicroPython reads so deep
            raise CalcError("arguments", "too_deep")
    except CalcError as error:
        told = dict(error.facts)
        told["field"] = error.field
        told["code"] = error.code
        return json.dumps({"error": told})


def _answer(name, arguments_json):
    if name not in DOORS:
        raise CalcError("name", "unknown")
    expected = DOORS[name]
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
    module, function = name.split(".")
    return getattr(__import__("calc." + module, None, None, (function,)), function)(**arguments)
