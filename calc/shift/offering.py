"""What a shift card offers in a state: the step, its answers, and the ways on."""
from calc.shift import halt, next_step, pause

RESTING = ("step", "kind", "wanted")  # of a card that stands still: None


def offered(state):
    """What may be done in a state; the card itself adds how far along it is.

    state: see calc.shift.card

    Returns contract `offer`, less `number`, `of` and `about`, which the card adds. Raises CalcError naming sequence where nothing proves a guard.
    """
    is_left = state["left_s"] is not None
    ways = {
        "can_go_on": is_left,
        "can_look_again": not is_left and halt.can_look_again(state),
        "can_start_over": not is_left and halt.can_start_over(state),
        "can_say_long": not is_left and state["status"] == "stopped" and state["stopped"]["reason"] == "repeat" and state["stopped"]["order"] == "grinding",
        "can_take_back": halt.can_take_back(state),
        "can_begin_again": not halt.is_out(state),
        "is_out": halt.is_out(state),
    }
    if state["status"] != "running" or is_left:
        ways.update({"again": False, "missing": [], "answers": [], "reports": [], "holding": False, "whole_s": 0, "hold_left_s": 0, "can_go_back": False})
        ways.update({name: None for name in RESTING})
        return ways
    steps = state["sequence"]["steps"]
    wanted = steps[state["position"]]
    step = next_step.next_proof(steps, state["position"], state["facts"], state["rig"])
    whole_s = step.get("hold_s", 0) if step["kind"] != "limit" else next_step.limit_s(step, state["rig"])
    ways.update({
        "step": step["id"],
        "kind": step["kind"],
        "again": step["id"] != wanted["id"],
        "wanted": wanted["id"],
        "missing": next_step.to_see(wanted, step, state["facts"]),
        "answers": [answer["id"] for answer in next_step.answers(step, state["rig"])],
        "reports": list(step.get("reports", ())),
        "holding": state["hold"] is not None,
        "whole_s": whole_s,
        "hold_left_s": pause.left_s(whole_s, state["hold"]),
        "can_go_back": any(next_step.may_come(before, state) for before in steps[:state["position"]]),
    })
    return ways
