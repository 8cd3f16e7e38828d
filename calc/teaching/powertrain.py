"""A split-shaft power train moving through time, simple and honest: what turns, where the air is, what warms.

TRAIN is plain data, contract `train`.
PARAMETERS are named in site_src/data/practice.toml; every one is illustrative and none is of a real rig.
FAULTS is a list of the codes in FAULT_CODES.
LIGHTS is `{name: [[claim, ...], ...]}`: a light is lit when all claims of any one row stand (see claims).
"""
from calc.base.errors import check_within
from calc.pump import heat

FAULT_CODES = ("no_air", "selector_stuck", "collar_stuck", "switch_closed", "switch_open", "bulb_dead", "no_water",
               "throttle_dead", "tank_shut")
LONGEST_TICK_S = 0.5
STEP_S = 0.01
PUSHES = 0.5  # of full air, to slide the collar against its detent
STILL_RPM = 1


def claims(train, faults):
    """What the interlocks can know: the switch, the gear and the brake, never the collar itself.

    train, faults: as the module says

    Returns a list of claims: "switch_closed", "pump_gear", "neutral", "parking_brake". Raises nothing.
    Source: interlock logic of split-shaft pumps, from memory.
    """
    closed = train["collar"] == "pump"
    if "switch_closed" in faults:
        closed = True
    if "switch_open" in faults:
        closed = False
    stand = ["switch_closed"] if closed else []
    stand.append("pump_gear" if train["gear"] == "drive" else "neutral")
    if train["brake_set"]:
        stand.append("parking_brake")
    return stand


def is_fed(train, faults):
    """Whether the pump has water: full, and its tank-to-pump valve open.

    train, faults: as the module says

    Raises nothing. Source: a midship pumper on its tank, its pump kept drained; common practice.
    """
    return train["tank_open"] and "no_water" not in faults


def is_true(light, stand):
    """Whether a light's condition holds.

    light: rows of claims, as LIGHTS has them
    stand: claims that stand

    Raises nothing. Source: interlock logic of split-shaft pumps, from memory.
    """
    return any(all(claim in stand for claim in row) for row in light)


def passed(train, parameters, lights, faults, passed_s):
    """Let time pass over the train, which is changed in place.

    train, parameters, lights, faults: as the module says
    passed_s: seconds, 0 to 0.5

    Returns what happened, a list of "clash", "home_road", "home_pump", "strain", "runaway", "hot".
    Raises CalcError naming passed_s.
    """
    check_within("passed_s", passed_s, 0, LONGEST_TICK_S)
    happened = []
    steps = int(passed_s / STEP_S) + 1
    for _ in range(steps):
        happened.extend(_step(train, parameters, lights, faults, passed_s / steps))
    return happened


def _step(train, parameters, lights, faults, step_s):
    _turn_engine(train, parameters, lights, faults, step_s)
    happened = _turn_shaft(train, parameters, step_s)
    _move_air(train, parameters, faults, step_s)
    happened.extend(_slide(train, parameters, faults, step_s))
    happened.extend(_warm(train, parameters, faults, step_s))
    return happened


def _turn_engine(train, parameters, lights, faults, step_s):
    ready = is_true(lights["throttle"], claims(train, faults)) and "throttle_dead" not in faults
    raised = train["throttle"] == "raised" and ready
    target_rpm = parameters["raised_rpm" if raised else "idle_rpm"]
    train["engine_rpm"] += (target_rpm - train["engine_rpm"]) * step_s / parameters["engine_s"]


def _turn_shaft(train, parameters, step_s):
    """The shaft is driven, held by the wheels, or runs down; the pump goes with it or runs down alone."""
    happened = []
    shaft_rpm = train["shaft_rpm"]
    if train["collar"] == "road":
        shaft_rpm = 0
        if train["gear"] == "drive" and train["engine_rpm"] > parameters["brake_holds_rpm"] and not train["moved"]:
            train["moved"] = True
            happened.append("runaway")
        if train["moved"] and train["gear"] == "drive":
            shaft_rpm = train["engine_rpm"]
    elif train["gear"] == "drive":
        slip = parameters["converter_slip"] if train["collar"] == "pump" else 0
        shaft_rpm += (train["engine_rpm"] * (1 - slip) - shaft_rpm) * step_s / parameters["take_up_s"]
    else:
        drag_rpm = parameters["oil_drag"] * max(train["engine_rpm"] - parameters["idle_rpm"] - STILL_RPM, 0)
        shaft_rpm = _run_down(shaft_rpm, drag_rpm, parameters, step_s)
    train["shaft_rpm"] = shaft_rpm
    if train["collar"] == "pump":
        train["pump_rpm"] = shaft_rpm * parameters["pump_ratio"]
    else:
        train["pump_rpm"] = _run_down(train["pump_rpm"], 0, parameters, step_s)
    return happened


def _run_down(speed_rpm, toward_rpm, parameters, step_s):
    """A free shaft: oil slows it in proportion to its speed, seals and bearings by a steady amount, to a stand."""
    over_rpm = speed_rpm - toward_rpm
    if over_rpm <= 0:
        return speed_rpm - over_rpm * step_s / parameters["coast_s"]
    return toward_rpm + max(over_rpm - (over_rpm / parameters["coast_s"] + parameters["drag_rpm_per_s"]) * step_s, 0)


def _move_air(train, parameters, faults, step_s):
    supply = 0 if "no_air" in faults else 1
    for side in ("road", "pump"):
        filling = train["valve"] == side
        share = step_s / parameters["fill_s" if filling else "exhaust_s"]
        train[side + "_air"] += ((supply if filling else 0) - train[side + "_air"]) * share


def _slide(train, parameters, faults, step_s):
    """The collar leaves one side, and meets the other only when the teeth turn almost alike."""
    push = train["pump_air"] - train["road_air"]
    toward = "pump" if push >= PUSHES else "road" if push <= -PUSHES else None
    bound = train["collar"] == "road" and train["gear"] == "drive"  # the wheels hold it under load
    if toward is None or toward == train["collar"] or bound or "collar_stuck" in faults:
        train["pushed_s"] = 0
        train["grinding"] = False
        return []
    train["pushed_s"] += step_s
    if train["pushed_s"] < parameters["travel_s"]:
        return []
    if train["collar"] != "between":
        train["collar"] = "between"
        train["pushed_s"] = 0
        return []
    mate_rpm = train["pump_rpm"] / parameters["pump_ratio"] if toward == "pump" else 0
    if abs(train["shaft_rpm"] - mate_rpm) > parameters["mesh_rpm"]:
        began = not train["grinding"]
        train["grinding"] = True
        return ["clash"] if began else []
    train["collar"] = toward
    train["pushed_s"] = 0
    train["grinding"] = False
    return ["home_" + toward]


def _warm(train, parameters, faults, step_s):
    """Power into the water by the cube of speed, carried away by what is sent round through the tank."""
    if train["collar"] != "pump" or train["pump_rpm"] <= STILL_RPM or not is_fed(train, faults):
        return []
    share = train["pump_rpm"] / parameters["shut_rpm"]
    was_f = train["rise_f"]
    rate_f_per_min = heat.shutoff_rise_f_per_min(parameters["shut_hp"] * share ** 3, parameters["trapped_gal"])
    if train["circulating"]:
        rate_f_per_min -= parameters["circulation_gpm"] * share / parameters["trapped_gal"] * was_f
    train["rise_f"] = was_f + rate_f_per_min * step_s / 60
    return ["hot"] if was_f < parameters["hot_rise_f"] <= train["rise_f"] else []
