"""Two phones and one fault: a run begun from a code, and what was done beside what should have been, the same on both phones."""
from calc.base import display
from calc.base.errors import CalcError
from calc.base.order import ordered
from calc.teaching import bench, handed, outcome

_SAYS_AWAY_S = 1


def begin(code, parameters, lights, units):
    """The run of a plant's code, at its first moment.

    code: see calc.teaching.handed
    parameters, lights: see calc.teaching.practice
    units: see calc.base.display

    Returns what bench.begin returns. Raises CalcError naming code: as handed.opened does, and "ended" where it is a return.
    """
    read = handed.opened(code)
    if read["record"] is not None:
        raise CalcError("code", "ended")
    return bench.begin(read["task"], parameters, lights, read["faults"], units)


def kind(code):
    """What a code is, and the task it is of: never the fault.

    code: see calc.teaching.handed

    Returns `{"kind": "plant" or "return", "task"}`. Raises CalcError as handed.opened does.
    """
    read = handed.opened(code)
    return {"kind": "plant" if read["record"] is None else "return", "task": read["task"]}


def debrief(code, models, units):
    """What was done beside what should have been done.

    code: a return, see calc.teaching.handed
    models: rows of contract `model`, one of each task and fault, made by calc.teaching.model_run
    units: see calc.base.display

    Returns contract `debrief`: times as text, in seconds with one decimal. Raises CalcError naming code as handed.opened does, and
    "not_ended" where it is a plant.
    """
    read = handed.opened(code)
    record = read["record"]
    if record is None:
        raise CalcError("code", "not_ended")
    fault = read["faults"][0] if read["faults"] else None
    verdict = outcome.judged(record)
    model = [row for row in models if row["task"] == read["task"] and row["fault"] == fault][0]

    naming = _naming(read["named"], fault, model["alike"])
    is_luck = naming in ("other", "overlooked") or read["proof"] not in (None, handed.UNNAMED) and read["proof"] not in model["proofs"]
    if verdict["outcome"] == "found" and is_luck:
        verdict["outcome"] = "luck"  # something was wrong, and not what was seen

    def clock(seconds):
        return display.rounded(units, seconds, 1)

    return {
        "task": read["task"],
        "verdict": verdict,
        "named": read["named"],
        "naming": naming,
        "proof": read["proof"],
        "proofs": model["proofs"],
        "alike": model["alike"],
        "done": _done(record, clock),
        "stopped_after": _steps_done(record["acts"], model["steps"]) if record["ended"] == "stopped" and not fault else None,
        "ended": {"how": record["ended"], "at": clock(record["at_s"])},
        "should": [
            {"at": clock(step["at_s"]), "kind": step["kind"], "to": step["to"], "sign": step["sign"], "shows": step["shows"]}
            for step in model["steps"]
        ],
        "should_end": {"how": model["how"], "at": clock(model["at_s"])},
        "away": clock(record["away_s"]) if record["away_s"] >= _SAYS_AWAY_S else None,
    }


def _naming(named, fault, alike):
    """Whether the finder named the fault: one that shows the very same signs is as good a name, and no fault has a name too."""
    if named is None:
        return None
    if named == handed.UNNAMED:
        return "unsure"
    if named == handed.SOUND or fault is None:
        return "right" if named == handed.SOUND and fault is None else "overlooked" if named == handed.SOUND else "imagined"
    return "right" if named == fault else "alike" if named in alike else "other"


def _steps_done(acts, steps):
    """How many steps of a run as it should have gone were done in their order, the look before the first act among them."""
    count = 0
    for step in steps:
        if step["kind"] is None:
            count += 1
            continue
        places = [place for place, act in enumerate(acts) if (act["kind"], act["to"]) == (step["kind"], step["to"])]
        if not places:
            break
        acts, count = acts[places[0] + 1:], count + 1
    return count


def _done(record, clock):
    """Acts and what came of them, in their order; an act comes before a note of the same moment."""
    rows = [(act["at_s"], act["kind"], act["to"], None) for act in record["acts"]]
    rows += [(note["at_s"], None, None, note["code"]) for note in record["notes"]]
    return [
        {"at": clock(at_s), "kind": kind, "to": to, "note": note, "is_harm": note in outcome.HARMS}
        for at_s, kind, to, note in ordered(rows, lambda row: row[0])
    ]

