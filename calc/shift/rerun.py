"""A shift card taken up again: after a stop, after a time out of sight, or from its first step.

Each act takes a state, which it changes, the event and what was offered; see calc.shift.card.
"""
from calc.base.errors import CalcError
from calc.shift import away, halt, laws


def renew(state):
    """Put a card at its first step.

    state: see calc.shift.card; it is changed

    Returns nothing. Raises nothing.
    """
    state.update({"position": 0, "status": "running", "facts": [], "confirmed": [], "hold": None, "stopped": None,
                  "repeats": 0, "left_s": None, "offered_s": None})


def mistouch(state, event, offered):
    """Take back a red key that was touched by mistake: the same step, and what may have changed is seen again first.

    state, event, offered: see the module

    A stop that was left meanwhile goes on as any card does that was left for so long. Returns nothing. Raises CalcError naming
    event where that is not offered.
    """
    if not offered["can_take_back"]:
        raise CalcError("event", "not_offered")
    was_away, left_s = state["stopped"].get("away"), state["stopped"].get("left_s")
    state["status"] = "running"
    state["stopped"] = None
    halt.look_away(state)
    _take_up(state, was_away, left_s)


def look_again(state, event, offered):
    """Look once more at the step that stopped the card.

    state, event, offered: see the module

    Returns nothing. Raises CalcError naming event where that is not offered.
    """
    if not offered["can_look_again"]:
        raise CalcError("event", "not_offered")
    state["status"] = "running"
    state["stopped"] = None


def start_over(state, event, offered):
    """Go on from the anchor of the sequence; what was proved after it is proved again.

    state, event, offered: see the module

    Returns nothing. Raises CalcError naming event where that is not offered.
    """
    if not offered["can_start_over"]:
        raise CalcError("event", "not_offered")
    names = [step["id"] for step in state["sequence"]["steps"]]
    state["position"] = min(names.index(state["sequence"]["anchor"]), state["position"])
    state["status"] = "running"
    state["stopped"] = None
    before = names[:state["position"]]
    state["confirmed"] = [record for record in state["confirmed"] if record["step"] in before]
    proved_before = []
    for step in state["sequence"]["steps"][:state["position"]]:
        if laws.fits(step, state["rig"]):
            proved_before.extend(laws.every_proof(step))
    void(state, [fact for fact in state["facts"] if fact not in proved_before])
    halt.look_away(state)


def resume(state, event, offered):
    """Take up a card that was out of sight: by how long, see again, ask first, or start at the first step.

    state, event, offered: see the module

    Returns nothing. Raises CalcError naming left_s.
    """
    asks = away.kind(event["at_s"], event.get("left_s"))
    halt.look_away(state)
    if halt.can_take_back(state) and away.KINDS.index(asks) >= away.KINDS.index(state["stopped"].get("away", "look")):
        state["stopped"] = dict(state["stopped"], away=asks, left_s=event["left_s"])  # the longest time it was left
    if not halt.is_out(state):
        _take_up(state, asks, event["left_s"])


def _take_up(state, asks, left_s):
    """Go on with a card that was out of sight, as calc.shift.away asks; None where it was not."""
    if state["status"] == "done" or not state["confirmed"] and state["status"] == "running":
        return
    if asks == "new_run":
        _new_run(state)
    elif asks == "ask":
        void(state, away.SLOW)
        state["left_s"] = left_s


def go_on(state, event, offered):
    """Go on with a card that was left for long.

    state, event, offered: see the module

    Returns nothing. Raises CalcError naming event where nothing was asked.
    """
    if not offered["can_go_on"]:
        raise CalcError("event", "not_offered")
    state["left_s"] = None


def begin_again(state, event, offered):
    """A new run, unless the rig is out of service.

    state, event, offered: see the module

    Returns nothing. Raises CalcError naming event where it is.
    """
    if not offered["can_begin_again"]:
        raise CalcError("event", "not_offered")
    _new_run(state)


def _new_run(state):
    """A new run of the same rig: what failed and was not done since still counts."""
    repeats = 0 if state["status"] == "done" else state["repeats"]
    _forget_answers(state)
    renew(state)
    state["repeats"] = repeats


def released(state, event, offered):
    """A new run of a rig that was out of service: a technician has found the cause.

    state, event, offered: see the module

    Returns nothing. Raises CalcError naming event where it was not.
    """
    if not offered["is_out"]:
        raise CalcError("event", "not_offered")
    _forget_answers(state)
    renew(state)


def _forget_answers(state):
    """What was answered of the rig on this card is asked again."""
    for record in state["confirmed"]:
        step = next(step for step in state["sequence"]["steps"] if step["id"] == record["step"])
        if "asks" in step:
            state["rig"][step["asks"]] = laws.UNKNOWN


def void(state, facts):
    """End facts.

    state: see calc.shift.card; it is changed
    facts: those that stand no longer

    Returns nothing. Raises nothing.
    """
    state["facts"] = [fact for fact in state["facts"] if fact not in facts]


def forget(state, step):
    """Take what was confirmed at a step out of the record.

    state: see calc.shift.card; it is changed
    step: name of a step

    Returns nothing. Raises nothing.
    """
    state["confirmed"] = [record for record in state["confirmed"] if record["step"] != step]
