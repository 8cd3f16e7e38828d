"""The shift card as a state machine: what may be done next, and what must be seen first.

Time is the caller's: every event carries `at_s`, seconds on any clock. A hold counts only ticks, each at most
half a second, so a clock that jumps cannot shorten it. State and events are plain data, JSON both ways.

Events: `{"kind", "at_s"}` and, where it says so, `step` (the one that was offered).
    seen (step, and answer for an ask)   the sign was seen
    not_seen (step)                      it was not: stop
    danger                               it moved, strained, or the throttle was dead: stop
    hold (step), tick                    begin the pause; time passes
    back                                 to the step before
    look_again                           after not_seen: the same step
    start_over                           after any stop: from the sequence's anchor
    resume                               the card was away: what may have changed must be seen again
"""
from calc import sequence as sequences
from calc.errors import CalcError

LONGEST_TICK_S = 0.5
LATEST_S = 1e11  # a clock that counts from 1970 is far short of this


def start(sequence, rig):
    """The state of a sequence at its first step.

    sequence: plain data, see calc.sequence
    rig: answers known of the rig by question, such as {"pump_light": "after_drive"}; what is absent is unknown

    Returns a state. Raises CalcError naming sequence or rig. Source: common practice.
    """
    sequences.check(sequence)
    questions = sequence.get("rig", {})
    for question, known in rig.items():
        if question not in questions or known not in questions[question]:
            raise CalcError("rig", "unknown_answer", question=question)
    return _settled({
        "sequence": sequence,
        "rig": {question: rig.get(question, "unknown") for question in questions},
        "position": 0,
        "status": "running",
        "facts": [],
        "confirmed": [],
        "hold": None,
        "stopped": None,
    })


def advance(state, event):
    """The state after an event; the given state is left as it was.

    state: from start or advance
    event: see the module

    Returns a state whose `offer` says what may be done next (see offer). Raises CalcError where the event is not
    offered: a step other than the one shown, a hold not over, an answer this rig cannot give; nothing has
    changed then. Source: common practice.
    """
    _check_state(state)
    kind = event.get("kind") if isinstance(event, dict) else None
    if not isinstance(kind, str) or kind not in _EVENTS:
        raise CalcError("event", "unknown")
    at_s = event.get("at_s")
    if not isinstance(at_s, (int, float)) or not -LATEST_S <= at_s <= LATEST_S:
        raise CalcError("at_s", "not_a_time")
    after = {key: state[key] for key in _KEYS}
    after["facts"] = list(state["facts"])
    after["confirmed"] = list(state["confirmed"])
    _EVENTS[kind](after, event, offer(state))
    return _settled(after)


def offer(state):
    """What the card offers in this state.

    state: from start or advance

    Returns `{"step", "kind", "again", "wanted", "missing", "answers", "holding", "hold_left_s", "number", "of",
    "can_go_back"}`: `step` is None when stopped or done; where a guard of the `wanted` step is `missing`, `step` is
    the one that proves it and `again` is True. Raises CalcError naming state. Source: common practice.
    """
    _check_state(state)
    steps = state["sequence"]["steps"]
    if state["status"] != "running":
        return {"step": None, "kind": None, "again": False, "wanted": None, "missing": [], "answers": [],
                "holding": False, "hold_left_s": 0, "number": state["position"], "of": len(steps),
                "can_go_back": False}
    wanted = steps[state["position"]]
    missing = _missing(wanted, state["facts"])
    step = _next_proof(steps, state["position"], state["facts"])
    held_s = state["hold"]["held_s"] if state["hold"] else 0
    return {
        "step": step["id"],
        "kind": step["kind"],
        "again": step["id"] != wanted["id"],
        "wanted": wanted["id"],
        "missing": missing,
        "answers": [answer["id"] for answer in _answers(step, state["rig"])],
        "holding": state["hold"] is not None,
        "hold_left_s": max(step.get("hold_s", 0) - held_s, 0),
        "number": state["position"] + 1,
        "of": len(steps),
        "can_go_back": state["position"] > 0,
    }


_KEYS = ("sequence", "rig", "position", "status", "facts", "confirmed", "hold", "stopped")


def _check_state(state):
    if not isinstance(state, dict) or any(key not in state for key in _KEYS):
        raise CalcError("state", "damaged")
    steps = state["sequence"].get("steps") if isinstance(state["sequence"], dict) else None
    if not isinstance(steps, list) or not isinstance(state["facts"], list) or not isinstance(state["confirmed"], list):
        raise CalcError("state", "damaged")
    if not isinstance(state["position"], int) or not 0 <= state["position"] <= len(steps):
        raise CalcError("state", "damaged")


def _settled(state):
    """Pass over steps that are needless now, close the card behind the last, and say what is offered."""
    steps = state["sequence"]["steps"]
    while state["position"] < len(steps) and _needless(steps[state["position"]], state["facts"]):
        state["position"] += 1
    if state["status"] == "running" and state["position"] == len(steps):
        state["status"] = "done"
    state["offer"] = offer(state)
    return state


def _needless(step, facts):
    needless = step.get("skip_if")
    return bool(needless) and all(fact in facts for fact in needless)


def _missing(step, facts):
    return [need for need in step.get("needs", ()) if need not in facts]


def _next_proof(steps, position, facts):
    """The step to offer: the wanted one, or the first earlier one that proves a guard it lacks."""
    missing = _missing(steps[position], facts)
    while missing:
        position = min(_prover(steps, position, need) for need in missing)
        missing = _missing(steps[position], facts)
    return steps[position]


def _prover(steps, before, need):
    """Place of the last step before another that can prove a fact."""
    for place in range(before - 1, -1, -1):
        if need in sequences.every_proof(steps[place]):
            return place
    raise CalcError("sequence", "unproved_need", need=need)


def _answers(step, rig):
    """The answers of an ask that this rig can give."""
    return [
        answer for answer in step.get("answers", ())
        if all(rig[question] in known for question, known in answer.get("only_if", {}).items())
    ]


def _offered_step(state, event, offered):
    if offered["step"] is None or event.get("step") != offered["step"]:
        raise CalcError("step", "not_offered", offered=offered["step"])
    for step in state["sequence"]["steps"]:
        if step["id"] == offered["step"]:
            return step


def _seen(state, event, offered):
    step = _offered_step(state, event, offered)
    proves = list(step.get("proves", ()))
    if step["kind"] == "hold" and (not offered["holding"] or offered["hold_left_s"] > 0):
        raise CalcError("hold", "not_over", left_s=offered["hold_left_s"])
    if step["kind"] == "ask":
        chosen = [answer for answer in _answers(step, state["rig"]) if answer["id"] == event.get("answer")]
        if not chosen:
            raise CalcError("answer", "not_offered")
        proves.extend(chosen[0].get("proves", ()))
    _void(state, sequences.ended_by(step))
    for fact in proves:
        if fact not in state["facts"]:
            state["facts"].append(fact)
    state["confirmed"] = [record for record in state["confirmed"] if record["step"] != step["id"]]
    state["confirmed"].append({"step": step["id"], "answer": event.get("answer"), "at_s": event["at_s"]})
    state["hold"] = None
    if not offered["again"]:
        state["position"] += 1


def _not_seen(state, event, offered):
    step = _offered_step(state, event, offered)
    _stop(state, event, "not_seen", step["id"])
    _void(state, sequences.every_proof(step))


def _danger(state, event, offered):
    if state["stopped"] and state["stopped"]["reason"] == "danger":
        return
    _stop(state, event, "danger", offered["step"])


def _stop(state, event, reason, step):
    state["status"] = "stopped"
    state["stopped"] = {"reason": reason, "step": step, "at_s": event["at_s"]}
    _look_away(state)


def _hold(state, event, offered):
    step = _offered_step(state, event, offered)
    if step["kind"] != "hold":
        raise CalcError("step", "not_a_hold")
    state["hold"] = {"last_s": event["at_s"], "held_s": 0}


def _tick(state, event, offered):
    if state["hold"] is None:
        return
    passed_s = event["at_s"] - state["hold"]["last_s"]
    counted_s = min(max(passed_s, 0), LONGEST_TICK_S)
    state["hold"] = {"last_s": event["at_s"], "held_s": state["hold"]["held_s"] + counted_s}


def _back(state, event, offered):
    if not offered["can_go_back"]:
        raise CalcError("step", "no_step_before")
    _look_away(state)
    _undo(state, state["position"])
    steps = state["sequence"]["steps"]
    while state["position"] > 0:
        state["position"] -= 1
        _undo(state, state["position"])
        if not _needless(steps[state["position"]], state["facts"]):
            return


def _undo(state, place):
    step = state["sequence"]["steps"][place]
    _void(state, sequences.every_proof(step))
    _void(state, sequences.ended_by(step))
    state["confirmed"] = [record for record in state["confirmed"] if record["step"] != step["id"]]


def _look_again(state, event, offered):
    if state["status"] != "stopped" or state["stopped"]["reason"] == "danger":
        raise CalcError("event", "not_offered")
    state["status"] = "running"
    state["stopped"] = None


def _start_over(state, event, offered):
    if state["status"] != "stopped":
        raise CalcError("event", "not_offered")
    names = [step["id"] for step in state["sequence"]["steps"]]
    state["position"] = min(names.index(state["sequence"]["anchor"]), state["position"])
    state["status"] = "running"
    state["stopped"] = None
    kept = names[:state["position"]]
    state["confirmed"] = [record for record in state["confirmed"] if record["step"] in kept]
    proved_before = []
    for step in state["sequence"]["steps"][:state["position"]]:
        proved_before.extend(sequences.every_proof(step))
    _void(state, [fact for fact in state["facts"] if fact not in proved_before])
    _look_away(state)


def _resume(state, event, offered):
    _look_away(state)


def _look_away(state):
    """Something may have moved: what can change must be seen again, and a pause begun again."""
    _void(state, sequences.PERISHABLE)
    state["hold"] = None


def _void(state, facts):
    state["facts"] = [fact for fact in state["facts"] if fact not in facts]


_EVENTS = {
    "seen": _seen,
    "not_seen": _not_seen,
    "danger": _danger,
    "hold": _hold,
    "tick": _tick,
    "back": _back,
    "look_again": _look_again,
    "start_over": _start_over,
    "resume": _resume,
}
