"""The shift card as a state machine: what may be done next, and what must be seen first.

Time is the caller's: every event carries `at_s`, seconds on any clock. A hold counts only ticks, each at most
half a second, so a clock that jumps cannot shorten it; a limit counts all that passed, so none can lengthen it.
State and events are plain data, JSON both ways.

Events: `{"kind", "at_s"}` and, where it says so, `step` (the one that was offered).
    seen (step, and answer for an ask)   the sign was seen
    not_seen (step)                      it was not: stop
    danger                               it moved, strained, or the throttle was dead: stop
    hold (step), tick                    begin what is timed; time passes, and a limit that is over stops
    back                                 to the step before
    look_again                           after not_seen, a limit that was over, or an answer that is not this card's rig:
                                         the same step; but where the remedy is the whole shift again (`repeat`),
                                         only start_over
    start_over                           after a stop: from the sequence's anchor; never once a repeat has failed too
    resume                               the card was away: what may have changed must be seen again
"""
from calc import course
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
    questions = sequence.get("rig", {}) if isinstance(sequence, dict) else {}
    for question, answer in rig.items():
        if question not in questions or answer not in questions[question]:
            raise CalcError("rig", "unknown_answer", question=question)
    known = {question: rig.get(question, sequences.UNKNOWN) for question in questions}
    sequences.check(sequence, known)
    if not sequences.is_for(sequence, known):
        raise CalcError("rig", "other_card")
    return _settled({
        "sequence": sequence,
        "rig": known,
        "position": 0,
        "status": "running",
        "facts": [],
        "confirmed": [],
        "hold": None,
        "stopped": None,
        "repeats": 0,
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
    after["rig"] = dict(state["rig"])
    after["facts"] = list(state["facts"])
    after["confirmed"] = list(state["confirmed"])
    _EVENTS[kind](after, event, _offered(state))
    return _settled(after)


def offer(state):
    """What the card offers in this state.

    state: from start or advance

    Returns `{"step", "kind", "again", "wanted", "missing", "answers", "holding", "hold_left_s", "number", "of",
    "can_go_back", "can_start_over"}`: `step` is None when stopped or done; where a guard of the `wanted` step is `missing`, `step` is
    the one that proves it and `again` is True. `number` counts what was seen, `of` is None while it hangs on answers
    to come. Raises CalcError naming state. Source: common practice.
    """
    _check_state(state)
    told = _offered(state)
    to_come = course.count_to_come(state)
    told["number"] = len(state["confirmed"]) + 1
    told["of"] = None if to_come is None else len(state["confirmed"]) + to_come
    return told


def _offered(state):
    """What may be done, without how far along it is."""
    can_start_over = state["status"] == "stopped" and state["stopped"]["reason"] != "other_card" and state["repeats"] <= MOST_REPEATS
    if state["status"] != "running":
        return {"step": None, "kind": None, "again": False, "wanted": None, "missing": [], "answers": [],
                "holding": False, "hold_left_s": 0, "can_go_back": False, "can_start_over": can_start_over}
    steps = state["sequence"]["steps"]
    wanted = steps[state["position"]]
    step = course.next_proof(steps, state["position"], state["facts"], state["rig"])
    held_s = state["hold"]["held_s"] if state["hold"] else 0
    whole_s = step.get("hold_s", 0) if step["kind"] != "limit" else course.limit_s(step, state["rig"])
    return {
        "step": step["id"],
        "kind": step["kind"],
        "again": step["id"] != wanted["id"],
        "wanted": wanted["id"],
        "missing": course.to_see(wanted, step, state["facts"]),
        "answers": [answer["id"] for answer in course.answers(step, state["rig"])],
        "holding": state["hold"] is not None,
        "hold_left_s": max(whole_s - held_s, 0),
        "can_go_back": any(course.may_come(before, state) for before in steps[:state["position"]]),
        "can_start_over": can_start_over,
    }


_KEYS = ("sequence", "rig", "position", "status", "facts", "confirmed", "hold", "stopped", "repeats")
MOST_REPEATS = 1  # a shift that fails again is a technician's: common practice


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
    while state["position"] < len(steps) and course.is_needless(steps[state["position"]], state):
        state["position"] += 1
    if state["status"] == "running" and state["position"] == len(steps):
        state["status"] = "done"
    state["offer"] = offer(state)
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
        chosen = [answer for answer in course.answers(step, state["rig"]) if answer["id"] == event.get("answer")]
        if not chosen:
            raise CalcError("answer", "not_offered")
        proves.extend(chosen[0].get("proves", ()))
        if "asks" in step:
            if not sequences.is_for(state["sequence"], {step["asks"]: chosen[0]["id"]}):
                _stop(state, event, "other_card", step["id"])
                state["stopped"]["answer"] = chosen[0]["id"]
                return
            state["rig"][step["asks"]] = chosen[0]["id"]
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
    if step.get("repeat"):
        state["repeats"] += 1
        state["stopped"]["reason"] = "failed_twice" if state["repeats"] > MOST_REPEATS else "repeat"


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
    if step["kind"] not in ("hold", "limit"):
        raise CalcError("step", "not_a_hold")
    state["hold"] = {"last_s": event["at_s"], "held_s": 0}


def _tick(state, event, offered):
    if state["hold"] is None:
        return
    counted_s = max(event["at_s"] - state["hold"]["last_s"], 0)
    if offered["kind"] == "hold":
        counted_s = min(counted_s, LONGEST_TICK_S)
    state["hold"] = {"last_s": event["at_s"], "held_s": state["hold"]["held_s"] + counted_s}
    if offered["kind"] == "limit" and counted_s >= offered["hold_left_s"]:
        _stop(state, event, "time_up", offered["step"])


def _back(state, event, offered):
    if not offered["can_go_back"]:
        raise CalcError("step", "no_step_before")
    _look_away(state)
    _undo(state, state["position"])
    steps = state["sequence"]["steps"]
    while True:
        state["position"] -= 1
        _undo(state, state["position"])
        if state["position"] == 0 or not course.is_needless(steps[state["position"]], state):
            return


def _undo(state, place):
    step = state["sequence"]["steps"][place]
    if not sequences.fits(step, state["rig"]):
        return
    _void(state, sequences.every_proof(step))
    _void(state, sequences.ended_by(step))
    if "asks" in step and not course.is_known(step, state):
        state["rig"][step["asks"]] = sequences.UNKNOWN
    state["confirmed"] = [record for record in state["confirmed"] if record["step"] != step["id"]]


def _look_again(state, event, offered):
    if state["status"] != "stopped" or state["stopped"]["reason"] not in ("not_seen", "time_up", "other_card"):
        raise CalcError("event", "not_offered")
    state["status"] = "running"
    state["stopped"] = None


def _start_over(state, event, offered):
    if not offered["can_start_over"]:
        raise CalcError("event", "not_offered")
    names = [step["id"] for step in state["sequence"]["steps"]]
    state["position"] = min(names.index(state["sequence"]["anchor"]), state["position"])
    state["status"] = "running"
    state["stopped"] = None
    kept = names[:state["position"]]
    state["confirmed"] = [record for record in state["confirmed"] if record["step"] in kept]
    proved_before = []
    for step in state["sequence"]["steps"][:state["position"]]:
        if sequences.fits(step, state["rig"]):
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
