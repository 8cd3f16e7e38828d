"""A practice run: a task, and a power train to get wrong at no cost. What the run was worth is calc.teaching.outcome's.

Events: `{"kind"}` and, where it says so, more.
    tick (passed_s)          time passes, at most half a second
    away (passed_s)          time that passes on the clock alone: nobody looked, and the rig stood as it was
    selector (to)            the lever to "road", "centre" or "pump"
    gear (to)                the transmission to "neutral" or "drive", which stands for the gear of the task
    throttle (to)            the panel throttle to "idle" or "raised"
    circulate (to)           the tank fill open, true or false
    tank (to)                the tank-to-pump valve open, true or false
    end (how)                "finished", or "stopped": something is wrong and the rig is reported
An event that a rig would not take (drive above idle) is noted and changes nothing.
"""
from calc.base import display
from calc.base.errors import CalcError, check_within
from calc.pump import driveline, rating
from calc.teaching import outcome, powertrain, sounds

TASKS = ("to_pump", "to_road")
MOST_NOTES = 200
MOST_AWAY_S = 86400
EXHAUSTED = 0.2  # of full air: the old side has all but fallen silent
NEAR_IDLE_RPM = 50


def begin(task, parameters, lights, faults):
    """A run at its start: engine at idle in road, or pumping.

    task: "to_pump" or "to_road"
    parameters, lights, faults: see calc.teaching.powertrain

    Returns contract `practice_run`. Raises CalcError naming task or faults.
    """
    if task not in TASKS:
        raise CalcError("task", "unknown")
    for fault in faults:
        if fault not in powertrain.FAULT_CODES:
            raise CalcError("faults", "unknown", fault=str(fault))
    pumping = task == "to_road"
    supply = 0 if "no_air" in faults else 1
    side = "pump" if pumping else "road"
    engine_rpm = parameters["raised_rpm" if pumping else "idle_rpm"]
    shaft_rpm = engine_rpm * (1 - parameters["converter_slip"]) if pumping else 0
    train = {
        "engine_rpm": engine_rpm, "throttle": "raised" if pumping else "idle", "gear": "drive" if pumping else "neutral",
        "brake_set": True, "selector": side, "valve": side, "road_air": 0, "pump_air": 0, "collar": side, "pushed_s": 0,
        "grinding": False, "shaft_rpm": shaft_rpm, "pump_rpm": shaft_rpm * parameters["pump_ratio"],
        "circulating": pumping, "tank_open": "tank_shut" not in faults, "rise_f": 0, "moved": False,
    }
    train[side + "_air"] = supply
    return _settled({
        "task": task, "parameters": parameters, "lights": lights, "faults": list(faults), "train": train, "at_s": 0, "away_s": 0,
        "acts": [], "notes": [], "ended": None,
    })


def advance(run, event):
    """The run after an event; the given run is left as it was.

    run: from begin or advance
    event: see the module

    Returns contract `practice_run`. Raises CalcError where the event is unknown, or the run has ended or is too long.
    """
    kind = event.get("kind") if isinstance(event, dict) else None
    if not isinstance(kind, str) or kind not in _EVENTS:
        raise CalcError("event", "unknown")
    if run["ended"] is not None:
        raise CalcError("run", "ended")
    if max(len(run["notes"]), len(run["acts"])) > MOST_NOTES:
        raise CalcError("run", "too_long", most=MOST_NOTES)
    after = dict(run)
    after["train"] = dict(run["train"])
    after["notes"] = list(run["notes"])
    allowed, act = _EVENTS[kind]
    if allowed is not None and event.get("to") not in allowed:
        raise CalcError("to", "unknown")
    if allowed is not None:
        after["acts"] = run["acts"] + [{"at_s": run["at_s"], "kind": kind, "to": event["to"]}]
    act(after, event)
    return _settled(after)


def shown(run):
    """What a person in the cab and at the panel could see, and what only the drawing knows.

    run: from begin or advance

    Returns contract `practice_shown`. Raises nothing.
    """
    train, parameters, faults = run["train"], run["parameters"], run["faults"]
    stand = powertrain.claims(train, faults)
    true = {name: powertrain.is_true(light, stand) for name, light in run["lights"].items()}
    lights = dict(true)
    if "bulb_dead" in faults:
        lights["engaged"] = False
    raised = train["engine_rpm"] > parameters["idle_rpm"] + NEAR_IDLE_RPM
    pressure_psi = _pressure_psi(train, parameters, faults)
    return {
        "true": true, "lights": lights, "stand": stand,
        "speed_mph": driveline.indicated_mph(train["shaft_rpm"], 1, parameters["axle_ratio"], parameters["tyre_rev"]),
        "pressure_psi": pressure_psi,
        "shaft_turning": train["shaft_rpm"] > powertrain.STILL_RPM,
        "pump_turning": train["pump_rpm"] > powertrain.STILL_RPM,
        "strains": train["collar"] == "road" and train["gear"] == "drive",
        "is_hot": train["rise_f"] >= parameters["hot_rise_f"],
        "is_warm": train["rise_f"] >= parameters["warm_rise_f"],
        "raised": raised,
        "sounds": sounds.sounds(train, raised, pressure_psi),
    }


def gauges(run, units):
    """The gauges of a run as text.

    run: from begin or advance
    units: see calc.base.display

    Returns `{"engine", "speed", "pressure", "rise"}`. Raises CalcError naming units.
    """
    return {
        "engine": display.rounded(units, run["train"]["engine_rpm"], 0),
        "speed": display.text(units, "road_speed", run["shown"]["speed_mph"]),
        "pressure": display.text(units, "pressure", run["shown"]["pressure_psi"]),
        "rise": display.text(units, "temperature_rise", run["train"]["rise_f"]),
    }


def _settled(run):
    run["shown"] = shown(run)
    run["verdict"] = None if run["ended"] is None else outcome.verdict(run)
    return run


def _pressure_psi(train, parameters, faults):
    if train["pump_rpm"] <= powertrain.STILL_RPM or not powertrain.is_fed(train, faults):
        return 0
    idle_pump_rpm = parameters["idle_rpm"] * parameters["pump_ratio"]
    return rating.pressure_at_speed_psi(parameters["idle_psi"], idle_pump_rpm, train["pump_rpm"])


def _note(run, code):
    """Write down what happened; the same again at once is one note."""
    if not run["notes"] or run["notes"][-1]["code"] != code:
        run["notes"].append({"at_s": run["at_s"], "code": code})


def _tick(run, event):
    passed_s = event.get("passed_s")
    happened = powertrain.passed(run["train"], run["parameters"], run["lights"], run["faults"], passed_s)
    run["at_s"] += passed_s
    for code in happened:
        _note(run, code)


def _away(run, event):
    passed_s = event.get("passed_s")
    check_within("passed_s", passed_s, 0, MOST_AWAY_S)
    run["at_s"] += passed_s
    run["away_s"] += passed_s


def _selector(run, event):
    train, to = run["train"], event["to"]
    if to == train["selector"]:
        return
    wrong = []
    if train["gear"] != "neutral":
        wrong.append("in_gear")
    if train["shaft_rpm"] > powertrain.STILL_RPM:
        wrong.append("turning")
    if train["engine_rpm"] > run["parameters"]["idle_rpm"] + NEAR_IDLE_RPM:
        wrong.append("above_idle")
    other = {"road": "pump_air", "pump": "road_air"}.get(to)
    if other and train[other] > EXHAUSTED:
        wrong.append("no_pause")
    train["selector"] = to
    if "selector_stuck" not in run["faults"]:
        train["valve"] = to
    for code in wrong or ["sound_move"]:
        _note(run, code)


def _gear(run, event):
    train, to = run["train"], event["to"]
    if to == train["gear"]:
        return
    if to == "drive" and train["engine_rpm"] > run["parameters"]["idle_rpm"] + NEAR_IDLE_RPM:
        return _note(run, "gear_refused")
    train["gear"] = to
    if to == "neutral":
        return _note(run, "neutral")
    wanted = "pump" if run["task"] == "to_pump" else "road"
    if train["collar"] != wanted:
        return _note(run, "strain" if train["collar"] == "road" else "not_home")
    first = begin(run["task"], run["parameters"], run["lights"], run["faults"])
    _note(run, outcome.LATE if outcome.is_past_proof(run, first) else "gear_taken")


def _throttle(run, event):
    train = run["train"]
    if event["to"] == "idle":
        train["throttle"] = "idle"
        return
    now = run["shown"]
    if not now["true"]["throttle"] or "throttle_dead" in run["faults"]:
        dead = [note for note in run["notes"] if note["code"] == "dead_throttle"]
        _note(run, "second_try" if len(dead) > 1 or outcome.is_dead(run) else "dead_throttle")
        return None if now["lights"]["ok"] and now["lights"]["engaged"] else _note(run, "lamp_dark")
    wrong = []
    if not now["lights"]["ok"] or not now["lights"]["engaged"] or train["collar"] != "pump":
        wrong.append("unproved")
    elif not powertrain.is_fed(train, run["faults"]):
        wrong.append("dry")
    elif not train["circulating"]:
        wrong.append("no_flow")
    train["throttle"] = "raised"
    for code in wrong or ["throttle_answered"]:
        _note(run, code)


def _circulate(run, event):
    run["train"]["circulating"] = event["to"]
    if event["to"]:
        _note(run, "water_moved")


def _tank(run, event):
    train, to = run["train"], event["to"]
    if to != train["tank_open"] and (to or train["pump_rpm"] > powertrain.STILL_RPM):
        _note(run, "tank_opened" if to else "tank_closed")
    train["tank_open"] = to


def _end(run, event):
    if event.get("how") not in ("finished", "stopped"):
        raise CalcError("how", "unknown")
    run["ended"] = event["how"]


_EVENTS = {
    "tick": (None, _tick),
    "away": (None, _away),
    "selector": (("road", "centre", "pump"), _selector),
    "gear": (("neutral", "drive"), _gear),
    "throttle": (("idle", "raised"), _throttle),
    "circulate": ((True, False), _circulate),
    "tank": ((True, False), _tank),
    "end": (None, _end),
}
