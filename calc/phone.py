"""The one door of calc for the phone: a name and JSON text in, JSON text out. What does not change is held, and then named."""
import json

from calc.base.errors import CalcError

MOST_CHARACTERS = 1000000  # what a log of ten thousand records says of a rig's status is 320,000
MOST_HELD = 32

# What may be called, as topic.function: the module that holds the function, and its arguments. tests/contracts has the shape of each.
# A module is imported when it is first asked for, so that a page waits only for what it uses.
DOORS = {
    "away.slept": ("shift.away", ("wall_s", "steady_s")),
    "bench.advance": ("teaching.bench", ("run", "event", "units")),
    "bench.begin": ("teaching.bench", ("task", "parameters", "lights", "faults", "units")),
    "board.due": ("bay.board", ("rows", "records", "on_ms", "offset_min")),
    "board.until": ("bay.until", ("dates", "on_ms", "offset_min")),
    "board.done_at": ("bay.board", ("date", "on_ms", "offset_min")),
    "checkoff.entered": ("bay.checkoff", ("before", "row", "last_ms")),
    "checkoff.merged": ("bay.checkoff", ("one", "other")),
    "checkoff.standing": ("bay.checkoff", ("records", "trainee")),
    "checkoff.times": ("bay.checkoff", ("runs", "titles")),
    "collar.places": ("diagnosis.collar", ("proofs", "seen")),
    "debrief.begin": ("teaching.debrief", ("code", "parameters", "lights", "units")),
    "debrief.debrief": ("teaching.debrief", ("code", "models", "units")),
    "debrief.kind": ("teaching.debrief", ("code",)),
    "department.applied": ("bay.department", ("rows", "due", "lists", "checks", "units")),
    "call.call": ("teaching.call", ("ground", "seed", "replies", "units")),
    "call.shift_seed": ("teaching.call", ("on_ms", "offset_min")),
    "drill.judged": ("teaching.drill", ("question", "reply", "boxes", "card", "on_ms", "offset_min", "units")),
    "drill.sitting": ("teaching.drill", ("ground", "boxes", "on_ms", "offset_min", "seed", "units")),
    "drill.standing": ("teaching.drill", ("ground", "boxes", "on_ms", "offset_min", "units")),
    "entry.added": ("base.entry", ("units", "kind", "text", "other", "sign")),
    "entry.all_shown": ("base.entry", ("units", "entries")),
    "entry.near": ("base.neighbors", ("rows", "decimal", "below", "above")),
    "entry.stepped": ("base.entry", ("text", "kind", "decimal", "step", "direction", "least")),
    "examples.compared": ("layout.examples", ("examples",)),
    "fault.entered": ("diagnosis.fault", ("knowledge", "facts", "missing")),
    "fault.for_rig": ("diagnosis.fault", ("knowledge", "rig")),
    "fault.next_check": ("diagnosis.fault", ("knowledge", "signs", "role", "engine", "questions")),
    "fault.rank": ("diagnosis.fault", ("knowledge", "signs")),
    "gear_table.answer": ("teaching.gear_table", ("entries", "gears", "units")),
    "handed.plant": ("teaching.handed", ("task", "fault", "salt")),
    "handed.sent_back": ("teaching.handed", ("run", "named", "proof", "salt")),
    "heights.converted": ("layout.heights", ("layout", "units")),
    "hose.friction_loss_psi": ("hydraulics.hose", ("coefficient", "flow_gpm", "length_ft")),
    "interlock.behind": ("diagnosis.interlock", ("table", "lights")),
    "layout_page.answer": ("layout.page", ("layout", "shelf", "units", "profile", "parts", "texts")),
    "leak.hunt": ("diagnosis.leak", ("parts", "runs", "role", "units")),
    "leak.vacuum_inhg": ("diagnosis.leak", ("field", "text", "units")),
    "leak_page.answer": ("diagnosis.leak_page", ("parts", "plugs", "runs", "last", "listed", "opened", "role", "texts", "units")),
    "beds_page.answer": ("rig.beds_page", ("profile", "shelf", "units")),
    "panel_card.card": ("rig.panel_card", ("profile", "shelf", "units", "section", "tips")),
    "limits.judged": ("bay.limits", ("limit", "text", "own", "earlier", "units")),
    "limits.shown": ("bay.limits", ("limit", "own", "units")),
    "look.after": ("diagnosis.look", ("knowledge", "signs", "began", "again", "role", "engine", "questions", "may_shift")),
    "pause.ticked": ("shift.pause", ("kind", "whole_s", "hold", "at_s")),
    "pump_size.size": ("pump.pump_size", ("rated", "units")),
    "quick.answer": ("service.quick_answer", ("baseline", "readings", "quick", "accuracy", "units")),
    "records.fields": ("bay.records", ()),
    "records.taken": ("bay.records", ("arriving", "standing")),
    "release.lacks": ("bay.release", ("table", "entered")),
    "release.proofs": ("bay.release", ("table", "opened", "defects")),
    "rig.at_hand": ("rig.profile", ("profile", "shelf", "units")),
    "rig_page.answer": ("rig.page", ("profile", "shelf", "units", "parts", "texts")),
    "rounds.hurried": ("bay.rounds", ("answers", "words")),
    "rounds.items": ("bay.rounds", ("rows", "name", "profile", "settings", "after")),
    "rounds.progress": ("bay.rounds", ("records", "id")),
    "rounds.settings": ("bay.rounds", ("records",)),
    "run.advance": ("shift.run", ("sequence", "lengths", "run", "event")),
    "service.answer": ("service.page", ("record", "units")),
    "service.baseline": ("service.file", ("content", "units")),
    "service.curve": ("service.curve", ("plan", "summary", "earlier", "units")),
    "service.history": ("service.history", ("results", "speed_accuracy_rpm", "units")),
    "service.judged": ("service.file", ("record", "standards", "former", "units")),
    "service.standing": ("service.due", ("results", "on_ms", "interval_days")),
    "shift.advance": ("shift.card", ("state", "event")),
    "shift.start": ("shift.card", ("sequence", "rig")),
    "standing.of_rig": ("bay.standing", ("records",)),
    "standing.worst_first": ("bay.standing", ("rigs",)),
    "warming.answer": ("teaching.warming", ("entries", "units")),
    "water_page.answer": ("supply.page", ("page", "entries", "shelf", "units", "texts")),
    "water_loss.side": ("diagnosis.water_loss", ("rows", "seen")),
}


_held = {}  # value by name; no function of calc changes what it is handed


def hold(name, value_json):
    """Keep plain data under a name, for calls that name it in place of handing it over.

    name: any text; what was held under it is replaced. Up to 32 names are held
    value_json: the data, as JSON text of up to 1,000,000 characters

    Returns the text of a JSON object: `{"ok": true}`, or `{"error": {"field", "code", ...facts}}`. Raises nothing.
    """
    return _crossing(_hold, name, value_json)


def call(name, arguments_json):
    """Call a function of calc by name.

    name: one of DOORS, such as "hose.friction_loss_psi"
    arguments_json: its arguments, as the text of a JSON object, up to 1,000,000 characters. Its `held`, where there is
        one, names what is held by argument: `{"layout": ..., "held": {"shelf": name}}`

    Returns the text of a JSON object: `{"ok": answer}`, or `{"error": {"field", "code", ...facts}}` for an
    input that cannot be used. Raises nothing but a bug of ours, as it is.
    """
    return _crossing(_answer, name, arguments_json)


def _crossing(function, name, text):
    try:
        answer = function(name, text)
        try:
            return json.dumps({"ok": answer})
        except RuntimeError:  # pragma: no cover - CPython's reader has stopped by then; only MicroPython reads so deep
            raise CalcError("arguments", "too_deep")
    except CalcError as error:
        return json.dumps({"error": error.as_data()})


def _hold(name, value_json):
    if name not in _held and len(_held) >= MOST_HELD:
        raise CalcError("name", "too_many", most=MOST_HELD)
    _held[name] = _read("value", value_json)
    return True


def _read(field, text):
    if len(text) > MOST_CHARACTERS:
        raise CalcError(field, "too_large", most=MOST_CHARACTERS)
    try:
        return json.loads(text)
    except ValueError:
        raise CalcError(field, "not_json")
    except RuntimeError:
        raise CalcError(field, "too_deep")


def _answer(name, arguments_json):
    if name not in DOORS:
        raise CalcError("name", "unknown")
    module, expected = DOORS[name]
    arguments = _read("arguments", arguments_json)
    if not isinstance(arguments, dict):
        raise CalcError("arguments", "not_an_object")
    arguments = _filled(arguments)
    for argument in arguments:
        if argument not in expected:
            raise CalcError(argument, "unknown_argument")
    for argument in expected:
        if argument not in arguments:
            raise CalcError(argument, "missing")
    function = name.split(".")[1]
    return getattr(__import__("calc." + module, None, None, (function,)), function)(**arguments)


def _filled(arguments):
    """The arguments, those that are named as held in their place."""
    held = arguments.pop("held", {})
    if not isinstance(held, dict):
        raise CalcError("held", "not_an_object")
    for argument, name in held.items():
        if argument in arguments:
            raise CalcError(argument, "twice")
        if not isinstance(name, str) or name not in _held:
            raise CalcError(argument, "not_held")
        arguments[argument] = _held[name]
    return arguments
