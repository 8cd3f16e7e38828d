"""Leak hunt under a dry vacuum: shut off half of what could leak, time one minute, keep the half that mattered.

A run is `{"shut": [parts], "from", "to"}`: the parts shut off for it, and the gauge at the start and at the end of one
minute, as typed (see calc.base.entry). The first run has nothing shut.
"""
from calc.base import display, readout
from calc.base.errors import CalcError
from calc.pump import draft

# Shares of the first run's loss: up to CURED the leak was among the parts shut off, from UNCHANGED on it was not.
CURED, UNCHANGED = 1 / 3, 2 / 3
ROLES = ("operator", "technician")


def hunt(parts, runs, role, units):
    """Where the leak can still be, and what to shut off for the next minute.

    parts: what could leak, in the order in which to shut them off, each contract `leak_part`
    runs: see the module, oldest first
    role: "operator" or "technician"; an operator shuts off no technician's part
    units: see calc.base.display

    Returns contract `leak_hunt`. Raises CalcError naming parts, role, or the run and its reading.
    Source: pump makers' inspection manuals (caps and plugs one by one); halving, from memory.
    """
    if role not in ROLES:
        raise CalcError("role", "unknown")
    losses = [_loss_inhg(run, count, units) for count, run in enumerate(runs)]
    texts = [display.working(units, "vacuum", loss_inhg) for loss_inhg in losses]
    hunted = {"kind": "first", "losses": texts, "suspects": [part["id"] for part in parts], "also": [], "shut": [], "mattered": []}
    if not runs:
        return hunted
    if losses[0] == 0:
        hunted["kind"] = "tight"
        return hunted
    for count, run in enumerate(runs[1:]):
        _narrow(hunted, run["shut"], losses[count + 1] / losses[0], count + 1)
    operators = [part["id"] for part in parts if part["role"] == "operator"]
    reach = [part for part in hunted["suspects"] if role == "technician" or part in operators]
    if len(hunted["suspects"]) == 1:
        hunted["kind"] = "found"
    elif not reach:
        hunted["kind"] = "technician"
    else:
        hunted["kind"] = "shut"
        hunted["shut"] = reach[:(len(hunted["suspects"]) + 1) // 2]
    return hunted


def restore(plugs, listed, opened):
    """What stays plugged after a hunt, and what may be opened next: the reliefs and the cooler before all else.

    plugs: all that a hunt can plug, in the order in which to open them, each contract `plug`
    listed: ids of what was plugged in this hunt
    opened: ids of what was opened again since

    Returns `{"open": [ids], "next": [ids]}`, both in the order of plugs; nothing is left once open is empty.
    Raises CalcError naming listed or opened.
    """
    names = [plug["id"] for plug in plugs]
    for field, ids in (("listed", listed), ("opened", opened)):
        if not isinstance(ids, list) or any(name not in names for name in ids):
            raise CalcError(field, "unknown_part")
    left = [plug for plug in plugs if plug["id"] in listed and plug["id"] not in opened]
    first = [plug for plug in left if plug.get("first")]
    return {"open": [plug["id"] for plug in left], "next": [plug["id"] for plug in first or left]}


def vacuum_inhg(field, text, units):
    """A reading of a vacuum gauge, in inches of mercury.

    field: name of the input, for the refusal
    text: as typed, see calc.base.entry
    units: see calc.base.display

    Raises CalcError naming the field. Source: no vacuum is deeper than the air is heavy, see calc.pump.draft.
    """
    return readout.amount({field: text}, units, field, "vacuum", 0, draft.MOST_VACUUM_INHG)


def _narrow(hunted, shut, ratio, count):
    """Keep the part of the suspects that a run points to."""
    inside = [part for part in hunted["suspects"] if part in shut]
    outside = [part for part in hunted["suspects"] if part not in shut]
    if not inside or not outside:
        raise CalcError("runs", "halves_nothing", run=count)
    if ratio >= UNCHANGED:
        hunted["suspects"] = outside
        return
    hunted["mattered"].append(count)
    hunted["suspects"] = inside
    if ratio > CURED:
        hunted["also"] = hunted["also"] + outside


def _loss_inhg(run, count, units):
    start_inhg, end_inhg = [vacuum_inhg(name, run[name], units) for name in ("from", "to")]
    if end_inhg > start_inhg:
        raise CalcError("to", "rose", run=count)
    return start_inhg - end_inhg
