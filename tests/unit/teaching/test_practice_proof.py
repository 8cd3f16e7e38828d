"""Practice explored to its end: no lamp lies without a planted fault, and who keeps the guards does no harm."""
import itertools

import pytest

from calc.teaching import outcome, powertrain, practice
from tests.unit.teaching.test_practice import LIGHTS, PARAMETERS


def explored(faults, allowed, most=4000):
    """Every state within reach by the allowed events, coarse in its figures, each step of time looked at."""
    def shape(run):
        train = run["train"]
        return (run["task"], train["selector"], train["gear"], train["throttle"], train["circulating"], train["collar"], train["grinding"],
                train["moved"], round(train["shaft_rpm"] / 200), train["shaft_rpm"] > 0, round(train["engine_rpm"] / 300),
                bucket(train["road_air"]), bucket(train["pump_air"]))

    def bucket(air):
        return (air >= 0.1) + (air > 0.5) + (air > 0.9)

    def wait(run, ticks):
        for _ in range(ticks):
            run = practice.advance(run, {"kind": "tick", "passed_s": 0.4})
        return run

    events = [{"kind": kind, "to": to} for kind, tos in (("selector", ("road", "centre", "pump")), ("gear", ("neutral", "drive")),
              ("throttle", ("idle", "raised")), ("circulate", (True, False))) for to in tos]
    waiting = [practice.begin(task, PARAMETERS, LIGHTS, faults) for task in practice.TASKS]
    seen = {shape(run) for run in waiting}
    while waiting and len(seen) < most:
        run = waiting.pop(0)
        nexts = [practice.advance({**run, "notes": []}, each) for each in events if allowed(run, each)]
        nexts += [wait({**run, "notes": []}, ticks) for ticks in (1, 10)]
        for after in nexts:
            yield run, after
            if shape(after) not in seen:
                seen.add(shape(after))
                waiting.append(after)


def anything(run, event):
    return True


@pytest.mark.parametrize("faults", [[]] + [[fault] for fault in powertrain.FAULT_CODES], ids=str)
def test_no_path_lights_a_lie(faults):
    """Whatever a person does, a pump light with the collar elsewhere needs a fault planted in its switch."""
    for _, after in explored(faults, anything, most=250):
        lights = after["shown"]["lights"]
        if after["train"]["collar"] != "pump" and "switch_closed" not in faults:
            assert not lights["engaged"] and not lights["ok"]
        if lights["ok"]:
            assert after["train"]["gear"] == "drive" and after["train"]["brake_set"]
        if after["train"]["moved"]:
            assert after["train"]["throttle"] == "raised" or after["train"]["engine_rpm"] > PARAMETERS["idle_rpm"]


def test_teeth_clash_only_when_speeds_differ():
    """Step by step of time: a clash needs speeds further apart than teeth can take, and a meeting needs them alike."""
    clashes = meetings = 0
    begun = practice.begin("to_pump", PARAMETERS, LIGHTS, [])["train"]
    for valve, gear, shaft_rpm, pump_rpm in itertools.product(("road", "pump"), ("neutral", "drive"), range(0, 1500, 100), (0, 1600)):
        train = {**begun, "collar": "between", "valve": valve, "gear": gear, "road_air": 0, "pump_air": 0,
                 "shaft_rpm": shaft_rpm, "pump_rpm": pump_rpm}
        happened = []
        while not happened and train["pump_air"] + train["road_air"] < 0.99:
            happened = powertrain.passed(train, PARAMETERS, LIGHTS, [], powertrain.STEP_S * 0.99)
        mate_rpm = train["pump_rpm"] / PARAMETERS["pump_ratio"] if valve == "pump" else 0
        apart_rpm = abs(train["shaft_rpm"] - mate_rpm)
        assert (happened == ["clash"]) == (apart_rpm > PARAMETERS["mesh_rpm"])
        clashes += happened == ["clash"]
        meetings += happened == ["home_" + valve]
    assert clashes > 20 and meetings > 5 and clashes + meetings == 120


def guards(run, event):
    """What the card asks a person to have seen before an act, by name."""
    train, now = run["train"], run["shown"]
    seen = {"idle": train["engine_rpm"] <= PARAMETERS["idle_rpm"] + 20}
    if event["kind"] == "selector":
        old = {"pump": "road_air", "road": "pump_air"}.get(event["to"])
        seen.update(neutral=train["gear"] == "neutral", rest=train["shaft_rpm"] == 0, pause=old is None or train[old] < 0.1)
        return seen
    if event == {"kind": "gear", "to": "drive"}:
        home = "pump" if run["task"] == "to_pump" else "road"
        seen.update(lamp=now["lights"]["engaged"] == (home == "pump"), shift=train["selector"] == home, full=train[home + "_air"] > 0.9)
        return seen
    if event == {"kind": "throttle", "to": "raised"}:
        return {"lights": now["lights"]["ok"], "pressure": now["pressure_psi"] > 10, "water": train["circulating"]}
    return {"water": event not in ({"kind": "circulate", "to": False}, {"kind": "tank", "to": False})}


def keeper(without=()):
    """A person who keeps every guard but those."""
    return lambda run, event: all(is_seen for name, is_seen in guards(run, event).items() if name not in without)


def harms(after):
    return [note["code"] for note in after["notes"] if note["code"] in outcome.HARMS]


def test_who_keeps_the_guards_does_no_harm():
    """No path that keeps the card's guards, on a sound rig, ends in anything a machine would not forgive."""
    done = set()
    for _, after in explored([], keeper()):
        assert harms(after) == []
        assert not after["train"]["moved"] and not after["train"]["grinding"]
        done.add((after["task"], practice.advance({**after, "notes": []}, {"kind": "end", "how": "finished"})["verdict"]["outcome"]))
    assert {("to_pump", "good"), ("to_road", "good")} <= done


@pytest.mark.parametrize(
    ("without", "harm"),
    [
        (["idle", "rest"], "above_idle"),  # above idle the oil turns the shaft, so either guard holds it back
        (["neutral", "rest"], "in_gear"),
        (["rest"], "turning"),
        (["pause"], "no_pause"),
        (["lamp", "full", "shift"], "strain"),
        (["lamp", "full"], "not_home"),
        (["water"], "no_flow"),
        (["lights", "pressure"], "unproved"),
    ],
)
def test_a_guard_left_out_does_harm(without, harm):
    """Each guard is needed: without it the same exploring finds the harm it stands against."""
    assert any(harm in harms(after) for _, after in explored([], keeper(without), most=1500))
