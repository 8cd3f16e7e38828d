"""The shift card as a state machine: what may be done next, and what must be seen first.

Time is the caller's: every event carries `at_s`, seconds on any clock. A hold counts only ticks, each at most
half a second, so a clock that jumps cannot shorten it; a limit counts all that passed, so none can lengthen it.
State and events are plain data, JSON both ways.

Events: `{"kind", "at_s"}` and, where it says so, `step` (the one that was offered).
    seen (step, and answer for an ask)   the sign was seen
    not_seen (step)                      it was not: stop; out of service where that means that the rig moved
    report (step, hazard)                one of the step's own hazards: teeth ground, the throttle was dead
    danger                               it moved or strained: out of service
    mistouch                             that was a slip of the finger and nothing moved: the step again, what may have changed with it
    hold (step), tick                    begin what is timed; time passes, and a limit that is over stops
    back                                 to the step before
    look_again                           after not_seen, a limit that was over, or an answer that is not this card's rig
    start_over                           after any other stop that is not the end: from the sequence's anchor
    not_short                            after grinding: the noise was long, or something still moves: out of service
    resume (left_s)                      the card was out of sight since then, see calc.shift.away: what may have changed must be
                                         seen again; after long, first whether to go on; after very long, the first step
    go_on                                the answer to that: go on
    begin_again                          a new run; what failed before still counts, until a run is done
    released                             out of service no more, a technician has found the cause: a new run
"""
from calc.base.errors import CalcError
from calc.shift import halt, laws, next_step, offering, pause, rerun


def start(sequence, rig):
    """The state of a sequence at its first step.

    sequence: plain data, see calc.shift.laws
    rig: answers known of the rig by question, such as {"pump_light": "after_drive"}; what is absent is unknown

    Returns a state. Raises CalcError naming sequence or rig.
    """
    questions = sequence.get("rig", {}) if isinstance(sequence, dict) else {}
    for question, answer in rig.items():
        if question not in questions or answer not in questions[question]:
            raise CalcError("rig", "unknown_answer", question=question)
    known = {question: rig.get(question, laws.UNKNOWN) for question in questions}
    laws.check(sequence, known)
    if not laws.is_for(sequence, known):
        raise CalcError("rig", "other_card")
    state = {"sequence": sequence, "rig": known}
    rerun.renew(state)
    return _settled(state)


def advance(state, event):
    """The state after an event; the given state is left as it was.

    state: from start or advance
    event: see the module

    Returns a state whose `offer` says what may be done next, see calc.shift.offering. Raises CalcError where the event is not
    offered: a step other than the one shown, a hold not over, an answer this rig cannot give; nothing has
    changed then.
    """
    _check_state(state)
    kind = event.get("kind") if isinstance(event, dict) else None
    if not isinstance(kind, str) or kind not in _EVENTS:
        raise CalcError("event", "unknown")
    at_s = event.get("at_s")
    pause.check_time(at_s)
    after = {key: state[key] for key in _KEYS}
    after["rig"] = dict(state["rig"])
    after["facts"] = list(state["facts"])
    after["confirmed"] = list(state["confirmed"])
    before = offering.offered(state)
    _EVENTS[kind](after, event, before)
    _settled(after)
    if kind not in _TIMED:
        after["offered_s"] = at_s
    return after


_KEYS = ("sequence", "rig", "position", "status", "facts", "confirmed", "hold", "stopped", "repeats", "left_s", "offered_s")


def _check_state(state):
    if not isinstance(state, dict) or any(key not in state for key in _KEYS):
        raise CalcError("state", "damaged")
    steps = state["sequence"].get("steps") if isinstance(state["sequence"], dict) else None
    if not isinstance(steps, list) or not isinstance(state["facts"], list) or not isinstance(state["confirmed"], list):
        raise CalcError("state", "damaged")
    if not isinstance(state["rig"], dict) or not isinstance(state["position"], int) or not 0 <= state["position"] <= len(steps):
        raise CalcError("state", "damaged")


def _settled(state):
    """Pass over steps that are needless now, close the card behind the last, and say what is offered."""
    steps = state["sequence"]["steps"]
    while state["position"] < len(steps) and next_step.is_needless(steps[state["position"]], state):
        state["position"] += 1
    if state["status"] == "running" and state["position"] == len(steps):
        state["status"] = "done"
    seen = len(state["confirmed"])
    state["offer"] = offering.offered(state)
    state["offer"]["number"] = seen + 1
    state["offer"]["of"], state["offer"]["about"] = (None if count is None else seen + count for count in next_step.count_to_come(state))
    return state


def _offered_step(state, event, offered):
    if offered["step"] is None or event.get("step") != offered["step"]:
        raise CalcError("step", "not_offered", offered=offered["step"])
    return next(step for step in state["sequence"]["steps"] if step["id"] == offered["step"])


def _seen(state, event, offered):
    step = _offered_step(state, event, offered)
    proves = list(step.get("proves", ()))
    if step["kind"] == "hold" and (not offered["holding"] or offered["hold_left_s"] > 0):
        raise CalcError("hold", "not_over", left_s=offered["hold_left_s"])
    if step["kind"] == "limit" and not offered["holding"]:
        raise CalcError("hold", "not_begun")
    if step["kind"] == "ask":
        chosen = [answer for answer in next_step.answers(step, state["rig"]) if answer["id"] == event.get("answer")]
        if not chosen:
            raise CalcError("answer", "not_offered")
        proves.extend(chosen[0].get("proves", ()))
        if "asks" in step:
            if not laws.is_for(state["sequence"], {step["asks"]: chosen[0]["id"]}):
                halt.stop(state, event, "other_card", step["id"], None)
                state["stopped"]["answer"] = chosen[0]["id"]
                return
            state["rig"][step["asks"]] = chosen[0]["id"]
    rerun.void(state, laws.ended_by(step))
    for fact in proves:
        if fact not in state["facts"]:
            state["facts"].append(fact)
    _record(state, event, step["id"])
    state["hold"] = None
    if not offered["again"]:
        state["position"] += 1


def _record(state, event, step):
    """Write down what was confirmed; a step that was read before is not hurried when it is looked at again."""
    took_s = None
    if state["offered_s"] is not None and event["at_s"] >= state["offered_s"]:
        took_s = event["at_s"] - state["offered_s"]
    for record in state["confirmed"]:
        if record["step"] == step and (took_s is None or record["took_s"] is None or record["took_s"] > took_s):
            took_s = record["took_s"]
    rerun.forget(state, step)
    state["confirmed"].append({"step": step, "answer": event.get("answer"), "at_s": event["at_s"], "took_s": took_s})


def _not_seen(state, event, offered):
    step = _offered_step(state, event, offered)
    rerun.void(state, laws.every_proof(step))
    if step.get("order") == halt.MOVED:
        halt.stop(state, event, "danger", step["id"], halt.MOVED)
    elif step.get("repeat"):
        halt.fail(state, event, step["id"], step.get("order"))
    else:
        halt.stop(state, event, "not_seen", step["id"], step.get("order"))


def _report(state, event, offered):
    step = _offered_step(state, event, offered)
    if event.get("hazard") not in step.get("reports", ()):
        raise CalcError("hazard", "not_offered")
    rerun.void(state, laws.every_proof(step))
    halt.fail(state, event, step["id"], event["hazard"])


def _not_short(state, event, offered):
    if not offered["can_say_long"]:
        raise CalcError("event", "not_offered")
    halt.stop(state, event, "failed_twice", state["stopped"]["step"], state["stopped"]["order"])


def _danger(state, event, offered):
    if state["stopped"] and state["stopped"]["reason"] == "danger":
        return
    state["left_s"] = None
    halt.stop(state, event, "danger", offered["step"], halt.MOVED)
    state["stopped"]["by_touch"] = offered["step"] is not None


def _hold(state, event, offered):
    step = _offered_step(state, event, offered)
    if step["kind"] not in ("hold", "limit"):
        raise CalcError("step", "not_a_hold")
    state["hold"] = {"last_s": event["at_s"], "held_s": 0}


def _tick(state, event, offered):
    if state["hold"] is None:
        return
    after = pause.ticked(offered["kind"], offered["whole_s"], state["hold"], event["at_s"])
    state["hold"] = after["hold"]
    if offered["kind"] == "limit" and after["hold_left_s"] == 0:
        halt.stop(state, event, "time_up", offered["step"], None)


def _back(state, event, offered):
    if not offered["can_go_back"]:
        raise CalcError("step", "no_step_before")
    halt.look_away(state)
    _undo(state, state["position"])
    steps = state["sequence"]["steps"]
    while True:
        state["position"] -= 1
        _undo(state, state["position"])
        if state["position"] == 0 or not next_step.is_needless(steps[state["position"]], state):
            return


def _undo(state, place):
    step = state["sequence"]["steps"][place]
    if not laws.fits(step, state["rig"]):
        return
    rerun.void(state, laws.every_proof(step))
    rerun.void(state, laws.ended_by(step))
    if "asks" in step and not next_step.is_known(step, state):
        state["rig"][step["asks"]] = laws.UNKNOWN
    rerun.forget(state, step["id"])


_EVENTS = {
    "seen": _seen,
    "not_seen": _not_seen,
    "report": _report,
    "danger": _danger,
    "mistouch": rerun.mistouch,
    "hold": _hold,
    "tick": _tick,
    "back": _back,
    "look_again": rerun.look_again,
    "start_over": rerun.start_over,
    "not_short": _not_short,
    "resume": rerun.resume,
    "go_on": rerun.go_on,
    "begin_again": rerun.begin_again,
    "released": rerun.released,
}
_TIMED = ("hold", "tick")  # their clock is another: no time of theirs is compared with the rest
