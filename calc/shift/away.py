"""How long a shift card was out of sight, and what that asks for.

Whatever can change unseen is dropped after any time away, however short: a phone that showed something else for three
seconds had the eye and the hand that belong to the rig.
"""
from calc.base.errors import CalcError

# What stays where a person put it, and may yet be another after a long time out of sight.
SLOW = (
    "wheels_chocked", "crews_told", "source_shut", "intakes_closed", "bleeders_open", "lines_bled", "air_bled", "pressure_seen",
    "throttle_ready", "pump_lights_out", "pump_light", "ok_light", "air_up", "volts_up",
)
UNWATCHED_S = 5  # clocks that part by more while a page is open: the screen slept (common practice)
ASK_S = 20 * 60  # longer than a crew's air lasts: who drives, and where the rig stands, may have changed (common practice)
LOST_S = 2 * 60 * 60  # another run, if not another day (common practice)
KINDS = ("look", "ask", "new_run")  # what a time asks for, the longest last


def kind(at_s, left_s):
    """What a time out of sight asks for.

    at_s: now, seconds on the wall clock
    left_s: when the card was last in sight, on the same clock

    Returns "look" (see again what may have changed), "ask" (go on, or a new run?) or "new_run" (from the first step).
    A clock that went back says nothing of how long it was: "ask". Raises CalcError naming left_s.
    """
    if not isinstance(left_s, (int, float)) or not left_s == left_s:
        raise CalcError("left_s", "not_a_time")
    away_s = at_s - left_s
    if away_s > LOST_S:
        return "new_run"
    if away_s > ASK_S or away_s < -UNWATCHED_S:
        return "ask"
    return "look"


def slept(wall_s, steady_s):
    """Whether a page slept between two beats of its timer.

    wall_s: seconds that passed on the wall clock
    steady_s: seconds that passed on the clock nobody can set, which may stand still while a phone sleeps

    Returns a bool; a wall clock that was set counts as sleep. Raises nothing.
    """
    return wall_s > UNWATCHED_S or steady_s > UNWATCHED_S or wall_s < -UNWATCHED_S
