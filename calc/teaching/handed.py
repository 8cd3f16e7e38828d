"""A planted fault on its way to another phone, and the run on its way back: codes for a link, made and read here.

A plant says the task and the fault, if any. A return says the same, what the finder called it, and what happened when.
Each is sealed (calc.teaching.sealed); what was not made here, or was changed on its way, is refused.
"""
from calc.base.errors import CalcError
from calc.teaching import model_run, outcome, powertrain, practice, sealed

VERSION = 3  # of what is sealed here: raised with each new fault, note or act, which an older phone cannot read
_READ = (1, 2, VERSION)  # of what is opened here: what came later stands last, and the proof that was named came with version 3
_WITH_PROOF = 3
_PLANT, _RETURN = 0, 1
UNNAMED = "unsure"
SOUND = "nothing"  # nothing is wrong: a name like any fault's
_FAULTS = (None,) + powertrain.FAULT_CODES
_NAMES = (None, UNNAMED) + powertrain.FAULT_CODES[:8] + (SOUND,) + powertrain.FAULT_CODES[8:]
_PROOFS = (None, UNNAMED) + model_run.PROOFS
NOTES = ("neutral", "gear_refused", "dead_throttle") + outcome.GOODS[:-1] + outcome.HARMS[:-1] + (outcome.GOODS[-1], outcome.HARMS[-1])
ACTS = (
    ("selector", "road"), ("selector", "centre"), ("selector", "pump"), ("gear", "neutral"), ("gear", "drive"),
    ("throttle", "idle"), ("throttle", "raised"), ("circulate", True), ("circulate", False),
    ("tank", True), ("tank", False),
)
_ENDS = ("finished", "stopped")
_TENTHS = 10
_FIRST_NOTE = 100  # acts are numbered from 0, notes from here
_LATEST_TENTHS = 256 ** 3 - 1


def plant(task, fault, salt):
    """The code that plants a fault on another phone.

    task: "to_pump" or "to_road"
    fault: a code of calc.teaching.powertrain.FAULT_CODES, or None: a rig that is sound
    salt: see calc.teaching.sealed

    Returns text. Raises CalcError naming task, fault or salt.
    """
    return sealed.sealed([VERSION, _PLANT] + _planted(task, fault), salt)


def opened(code):
    """What a code of either kind holds.

    code: the text of a link, anything

    Returns contract `handed`; what a plant does not have is None. Raises CalcError naming code: "broken", or "newer" where
    another version of the site made it.
    """
    read = sealed.opened(code)
    if len(read) < 4:
        raise CalcError("code", "broken")
    if read[0] not in _READ:
        raise CalcError("code", "newer")
    kind, task, fault = read[1], _of(practice.TASKS, read[2]), _of(_FAULTS, read[3])
    faults = [fault] if fault else []
    if kind == _PLANT and len(read) == 4:
        return {"task": task, "faults": faults, "named": None, "proof": None, "record": None}
    head = 14 if read[0] >= _WITH_PROOF else 13
    if kind != _RETURN or len(read) < head or (len(read) - head) % 4:
        raise CalcError("code", "broken")
    acts, notes = [], []
    for at in range(head, len(read), 4):
        at_s = _seconds(read, at + 1)
        if read[at] < _FIRST_NOTE:
            act = _of(ACTS, read[at])
            acts.append({"at_s": at_s, "kind": act[0], "to": act[1]})
        else:
            notes.append({"at_s": at_s, "code": _of(NOTES, read[at] - _FIRST_NOTE)})
    return {
        "task": task, "faults": faults, "named": _of(_NAMES, read[4]), "proof": _of(_PROOFS, read[13]) if head > 13 else None,
        "record": {
            "faults": faults, "ended": _of(_ENDS, read[5]), "is_reached": _of((False, True), read[6]),
            "at_s": _seconds(read, 7), "away_s": _seconds(read, 10), "acts": acts, "notes": notes,
        },
    }


def sent_back(run, named, proof, salt):
    """The code that shows the planter how a run went.

    run: an ended one of calc.teaching.practice, of one fault at most
    named: what the finder called it: a fault's code, "nothing", "unsure", or None where nobody asked
    proof: what the finder named as the proof that contradicts, of calc.teaching.model_run.PROOFS, "unsure", or None likewise
    salt: see calc.teaching.sealed

    Returns text. Raises CalcError naming run, named, proof or salt.
    """
    if run["ended"] is None:
        raise CalcError("run", "not_ended")
    if named not in _NAMES:
        raise CalcError("named", "unknown")
    if proof not in _PROOFS:
        raise CalcError("proof", "unknown")
    values = [VERSION, _RETURN] + _planted(run["task"], run["faults"][0] if run["faults"] else None)
    values += [_NAMES.index(named), _ENDS.index(run["ended"]), 1 if outcome.is_reached(run) else 0]
    values += _three(run["at_s"]) + _three(run["away_s"]) + [_PROOFS.index(proof)]
    for act in run["acts"]:
        values += [ACTS.index((act["kind"], act["to"]))] + _three(act["at_s"])
    for note in run["notes"]:
        values += [_FIRST_NOTE + NOTES.index(note["code"])] + _three(note["at_s"])
    return sealed.sealed(values, salt)


def _planted(task, fault):
    if task not in practice.TASKS:
        raise CalcError("task", "unknown")
    if fault not in _FAULTS:
        raise CalcError("fault", "unknown")
    return [practice.TASKS.index(task), _FAULTS.index(fault)]


def _of(choices, place):
    if place >= len(choices):
        raise CalcError("code", "broken")
    return choices[place]


def _three(seconds):
    """Tenths of a second in three bytes: up to nineteen days."""
    tenths = min(int(seconds * _TENTHS + 0.5), _LATEST_TENTHS)
    return [tenths // 65536, tenths // 256 % 256, tenths % 256]


def _seconds(values, at):
    """The seconds of three bytes from a place on."""
    return (values[at] * 65536 + values[at + 1] * 256 + values[at + 2]) / _TENTHS
