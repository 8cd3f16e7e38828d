"""A timed step as its time passes: all that a card asks for five times a second."""
from calc.base.errors import CalcError

LONGEST_TICK_S = 0.5
LATEST_S = 1e11  # a clock that counts from 1970 is far short of this


def ticked(kind, whole_s, hold, at_s):
    """A pause after a beat of the clock.

    kind: of the step, "hold" or "limit"; a hold counts at most half a second of a beat, a limit all of it
    whole_s: how long it is
    hold: as a state of calc.shift.card has it
    at_s: now, seconds on the clock that `hold` was begun on

    Returns `{"hold", "hold_left_s"}`. Raises CalcError naming at_s.
    """
    check_time(at_s)
    counted_s = max(at_s - hold["last_s"], 0)
    if kind == "hold":
        counted_s = min(counted_s, LONGEST_TICK_S)
    after = {"last_s": at_s, "held_s": hold["held_s"] + counted_s}
    return {"hold": after, "hold_left_s": left_s(whole_s, after)}


def left_s(whole_s, hold):
    """What is left of a pause.

    whole_s: how long it is
    hold: as a state of calc.shift.card has it; None before it begins

    Returns seconds. Raises nothing. Source: common practice.
    """
    return max(whole_s - hold["held_s"], 0) if hold else whole_s


def check_time(at_s):
    """Refuse what is no time of any clock.

    at_s: seconds

    Returns nothing. Raises CalcError naming at_s.
    """
    if not isinstance(at_s, (int, float)) or not -LATEST_S <= at_s <= LATEST_S:
        raise CalcError("at_s", "not_a_time")
