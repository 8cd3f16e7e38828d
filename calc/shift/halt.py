"""What stops a shift card, the order that answers it, and what may follow.

A stop is `{"reason", "step", "order", "at_s"}`; `order` is the hazard whose order answers it, None where the step's own
words do. Reasons:
    not_seen      a sign did not come: the same step may be looked at again
    time_up       what is timed ran over: likewise
    repeat        a shift failed, ground, or its throttle was dead: once more from the anchor, no second look
    failed_twice  it did so again, or the noise was long: out of service
    danger        it moved or strained, or was not seen to stand still: out of service at once
    other_card    an answer says that this is not the card for the rig
"""
from calc.shift import laws

MOST_REPEATS = 1  # a shift that fails again is a technician's: common practice
MOVED = "moved"  # the order of a rig that moved: no second look, no second shift
OUT = ("danger", "failed_twice")


def stop(state, event, reason, step, order):
    """Stop a card; what may change unseen must be seen again.

    state, event: see calc.shift.card; the state is changed
    reason, step, order: of the stop

    Returns nothing. Raises nothing.
    """
    state["status"] = "stopped"
    state["stopped"] = {"reason": reason, "step": step, "order": order, "at_s": event["at_s"]}
    look_away(state)


def fail(state, event, step, order):
    """Stop a card whose shift failed: once more from its anchor, and never a third time.

    state, event: see calc.shift.card; the state is changed
    step, order: of the stop

    Returns nothing. Raises nothing. Source: common practice: one repeat, then out of service.
    """
    state["repeats"] += 1
    stop(state, event, "failed_twice" if state["repeats"] > MOST_REPEATS else "repeat", step, order)


def is_out(state):
    """Whether the rig is out of service by what this card has seen.

    state: see calc.shift.card

    Returns a bool. Raises nothing.
    """
    return state["status"] == "stopped" and state["stopped"]["reason"] in OUT


def can_start_over(state):
    """Whether the card may go on from its anchor: after a stop that neither ends it nor is another card's.

    state: see calc.shift.card

    Returns a bool. Raises nothing.
    """
    return state["status"] == "stopped" and not is_out(state) and state["stopped"]["reason"] != "other_card" and state["repeats"] <= MOST_REPEATS


def can_take_back(state):
    """Whether a stop may have been a slip of the finger: the red key, touched at a step, and nothing else done on the card since.

    state: see calc.shift.card

    Returns a bool. Raises nothing. Source: a sign that was answered "it moved" is no slip; who looks after the stop was left may
    still say so (common practice).
    """
    return is_out(state) and bool(state["stopped"].get("by_touch"))


def can_look_again(state):
    """Whether the step that stopped the card may be looked at once more.

    state: see calc.shift.card

    Returns a bool. Raises nothing.
    """
    return state["status"] == "stopped" and state["stopped"]["reason"] in ("not_seen", "time_up", "other_card")


def look_away(state):
    """Something may have moved: what can change must be seen again, and a pause begun again.

    state: see calc.shift.card; it is changed

    Returns nothing. Raises nothing.
    """
    state["facts"] = [fact for fact in state["facts"] if fact not in laws.PERISHABLE]
    state["hold"] = None
