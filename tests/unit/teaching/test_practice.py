"""The practice rig: honest against closed forms, forgiving nothing a real one would not, and never a liar."""
import math

import pytest

from calc.base.errors import CalcError
from site_src.content import units
from site_src.routes import why

LIGHTS = why.lights()
PARAMETERS = why.parameters()
SOUND_SHIFT = [
    ("selector", "centre"), 2, ("selector", "pump"), 2, ("gear", "drive"), 2, ("circulate", True), 1, ("throttle", "raised"), 3,
]


def event(step):
    kind, value = step
    return {"kind": kind, "how" if kind == "end" else "to": value}


def play(advance, begun, *steps):
    """A run through its steps: a number of seconds, or an event's kind and value."""
    now = begun
    for step in steps:
        events = [{"kind": "tick", "passed_s": 0.5}] * int(step * 2) if isinstance(step, (int, float)) else [event(step)]
        for each in events:
            now = advance(run=now, event=each)
    return now


def through(run, task, *steps, faults=()):
    begun = run("teaching.practice", "begin", task=task, parameters=PARAMETERS, lights=LIGHTS, faults=list(faults))
    return play(lambda **given: run("teaching.practice", "advance", **given), begun, *steps)


def with_train(run, seconds, **train):
    """A run with its train set as given, after some seconds in steps of half a second."""
    begun = through(run, "to_pump")
    begun["train"].update(train)
    return play(lambda **given: run("teaching.practice", "advance", **given), begun, seconds)["train"]


@pytest.mark.parametrize("seconds", [0.5, 1, 2, 3])
def test_shaft_runs_down_as_the_closed_form(run, seconds):
    """d(speed)/dt = -speed / tau - drag has the solution (s0 + drag tau) exp(-t / tau) - drag tau: within 1 %."""
    train = with_train(run, seconds, collar="between", valve="centre", road_air=0, shaft_rpm=700)
    tau_s, floor_rpm = PARAMETERS["coast_s"], PARAMETERS["drag_rpm_per_s"] * PARAMETERS["coast_s"]
    exact_rpm = (700 + floor_rpm) * math.exp(-seconds / tau_s) - floor_rpm
    assert train["shaft_rpm"] == pytest.approx(exact_rpm, rel=0.01)


def test_shaft_stands_after_about_four_seconds(run):
    """It comes to a full stand: at idle after tau ln(1 + s0 / (drag tau)) = 3.99 s; makers give about four."""
    assert with_train(run, 3.5, collar="between", valve="centre", road_air=0, shaft_rpm=700)["shaft_rpm"] > 0
    assert with_train(run, 4.5, collar="between", valve="centre", road_air=0, shaft_rpm=700)["shaft_rpm"] == 0


def test_gauges(run):
    """By hand, at 1400 rpm with 6 % slip: 1316 x 60 / 2663.1 = 29.649 mph; 50 x (1316 / 700)^2 = 177 psi."""
    begun = through(run, "to_road")
    told = run("teaching.practice", "gauges", run=begun, units=units.shown_in("US"))
    assert told == {"engine": "1400", "speed": "29.6", "pressure": "177", "rise": "0"}


STEADY = {"gear": "drive", "collar": "pump", "valve": "pump", "selector": "pump", "road_air": 0, "pump_air": 1}


def steady(circulating):
    """A pump in its steady state at idle, its share of the speed at which its power is given, and seconds."""
    shaft_rpm = PARAMETERS["idle_rpm"] * (1 - PARAMETERS["converter_slip"])
    pump_rpm = shaft_rpm * PARAMETERS["pump_ratio"]
    train = {**STEADY, "shaft_rpm": shaft_rpm, "pump_rpm": pump_rpm, "circulating": circulating}
    return train, pump_rpm / PARAMETERS["shut_rpm"]


def test_shut_in_water_warms_as_the_published_formula(run):
    """With no flow the rise is 42.4 x hp / (8.34 x gal) a minute, power with the cube of speed: within 1 %."""
    train, share = steady(False)
    exact_f = 42.4 * PARAMETERS["shut_hp"] * share**3 / (8.34 * PARAMETERS["trapped_gal"]) * 0.5
    assert with_train(run, 30, **train)["rise_f"] == pytest.approx(exact_f, rel=0.01)


def test_circulated_water_warms_as_the_closed_form(run):
    """With flow q through volume V the rise is limit (1 - exp(-q t / V)), limit 42.4 x hp / (8.34 q): within 1 %."""
    train, share = steady(True)
    flow_gpm = PARAMETERS["circulation_gpm"] * share
    limit_f = 42.4 * PARAMETERS["shut_hp"] * share**3 / (8.34 * flow_gpm)
    exact_f = limit_f * (1 - math.exp(-flow_gpm * 0.5 / PARAMETERS["trapped_gal"]))
    assert with_train(run, 30, **train)["rise_f"] == pytest.approx(exact_f, rel=0.01)


def test_air_leaves_as_the_closed_form(run):
    """Air exhausts by exp(-t / tau): within 1 % after half a second."""
    train = with_train(run, 0.5, valve="centre", selector="centre")
    assert train["road_air"] == pytest.approx(math.exp(-0.5 / PARAMETERS["exhaust_s"]), rel=0.01)


BACK = [("throttle", "idle"), 3, ("gear", "neutral"), 5, ("selector", "centre"), 2, ("selector", "road"), 3]
PROOF = [("gear", "drive"), 1, ("gear", "neutral"), 1]


@pytest.mark.parametrize(
    ("task", "faults", "steps", "how", "outcome", "harm"),
    [
        ("to_pump", [], SOUND_SHIFT, "finished", "good", []),
        ("to_road", [], BACK + PROOF, "finished", "good", []),
        ("to_pump", [], SOUND_SHIFT[:3], "finished", "unreached", []),
        ("to_pump", [], [("selector", "centre"), 2], "stopped", "unneeded", []),
        # no time for the shaft: it turns, and the teeth of the road gear stand
        ("to_road", [], [("throttle", "idle"), 3, ("gear", "neutral"), ("selector", "centre"), 2, ("selector", "road"), 3],
         "finished", "harm", ["turning", "clash"]),
        # straight through the centre
        ("to_road", [], [*BACK[:4], ("selector", "road"), 3], "finished", "harm", ["no_pause"]),
        # out of pump with the gear still selected
        ("to_road", [], [("throttle", "idle"), 3, ("selector", "centre"), 2, ("selector", "road"), 3], "stopped", "harm",
         ["in_gear", "turning", "clash"]),
        # drive with the collar in road, and a dead throttle tried twice
        ("to_pump", [], [("gear", "drive"), 1, ("throttle", "raised"), ("throttle", "raised")], "stopped", "harm",
         ["strain", "lamp_dark", "second_try"]),
        # every lamp says pump, and the wheels are joined
        ("to_pump", ["switch_closed"], [("gear", "drive"), 1, ("throttle", "raised"), 3], "stopped", "harm",
         ["strain", "unproved", "runaway"]),
        # all shut: hot, in the end
        ("to_pump", [], [*SOUND_SHIFT[:6], ("throttle", "raised"), 152], "stopped", "harm", ["no_flow", "hot"]),
        ("to_pump", ["no_water"], SOUND_SHIFT, "stopped", "harm", ["dry"]),
        # tank-to-pump shut: no pressure, so it is opened, or the rig is stopped; raised all the same the pump runs dry (the into-pump card)
        ("to_pump", ["tank_shut"], [*SOUND_SHIFT[:6], ("tank", True), 1, *SOUND_SHIFT[6:]], "finished", "cured", []),
        ("to_pump", ["tank_shut"], SOUND_SHIFT[:6], "stopped", "found", []),
        ("to_pump", ["tank_shut"], SOUND_SHIFT, "finished", "harm", ["dry"]),
        ("to_pump", ["tank_shut"], SOUND_SHIFT[:6], "finished", "missed", []),
        ("to_pump", ["tank_shut"], [("tank", True), *SOUND_SHIFT[:6]], "finished", "missed", []),
        ("to_road", ["tank_shut"], [("tank", True), 1, *BACK, *PROOF], "finished", "cured", []),
        ("to_road", ["tank_shut"], BACK + PROOF, "finished", "missed", ["past_proof"]),
        ("to_pump", [], [*SOUND_SHIFT, ("tank", False), 1], "finished", "harm", ["tank_closed"]),
        ("to_pump", [], [("tank", False), ("tank", True), *SOUND_SHIFT], "finished", "good", []),
        ("to_pump", ["no_water"], [("tank", True), *SOUND_SHIFT], "stopped", "harm", ["dry"]),
        ("to_pump", ["no_air"], SOUND_SHIFT[:4], "stopped", "found", []),
        ("to_pump", ["bulb_dead"], SOUND_SHIFT[:4], "stopped", "found", []),
        ("to_road", ["switch_closed"], BACK, "finished", "missed", []),
        # the lamp stayed dark at the clunk, and the gear was taken: a stop after it is late, and what was missed is no less missed
        ("to_pump", ["switch_open"], SOUND_SHIFT[:6], "stopped", "late", ["past_proof"]),
        ("to_pump", ["bulb_dead"], SOUND_SHIFT[:6], "stopped", "late", ["past_proof"]),
        ("to_pump", ["switch_open"], SOUND_SHIFT[:6], "finished", "missed", ["past_proof"]),
        # lit in road before any act, and the gear taken for all that
        ("to_pump", ["switch_closed"], SOUND_SHIFT[:6], "stopped", "late", ["past_proof"]),
        ("to_road", ["switch_closed"], BACK + PROOF, "stopped", "late", ["past_proof"]),
        ("to_road", ["throttle_dead"], BACK + PROOF, "stopped", "late", ["past_proof"]),
        ("to_road", ["no_water"], BACK + PROOF, "stopped", "late", ["past_proof"]),
        # no pressure shows only once the gear is in
        ("to_pump", ["no_water"], SOUND_SHIFT[:6], "stopped", "found", []),
        # a throttle already dead in neutral
        ("to_pump", ["throttle_dead"], [*SOUND_SHIFT[:4], ("throttle", "raised"), ("gear", "drive"), 2], "stopped", "late", ["lamp_dark", "past_proof"]),
    ],
)
def test_outcome(run, task, faults, steps, how, outcome, harm):
    """A run is worth what a machine would say of it, whatever its lamps said."""
    told = through(run, task, *steps, ("end", how), faults=faults)["verdict"]
    assert (told["outcome"], told["harm"]) == (outcome, harm)


def test_sound_run_says_what_was_right(run):
    """What went well is told in its order, with how long it took."""
    told = through(run, "to_pump", *SOUND_SHIFT, ("end", "finished"))["verdict"]
    assert told["right"] == ["sound_move", "home_pump", "gear_taken", "water_moved", "throttle_answered"]
    assert told["took_s"] == pytest.approx(10)


@pytest.mark.parametrize(
    ("fault", "collar", "lights"),
    [
        (None, "pump", {"engaged": True, "ok": True, "throttle": True}),
        ("no_air", "road", {"engaged": False, "ok": False, "throttle": False}),
        ("selector_stuck", "road", {"engaged": False, "ok": False, "throttle": False}),
        ("collar_stuck", "road", {"engaged": False, "ok": False, "throttle": False}),
        ("switch_open", "pump", {"engaged": False, "ok": False, "throttle": False}),
        ("bulb_dead", "pump", {"engaged": False, "ok": True, "throttle": True}),
        ("switch_closed", "pump", {"engaged": True, "ok": True, "throttle": True}),
        ("no_water", "pump", {"engaged": True, "ok": True, "throttle": True}),
        ("tank_shut", "pump", {"engaged": True, "ok": True, "throttle": True}),
        ("throttle_dead", "pump", {"engaged": True, "ok": True, "throttle": True}),
    ],
)
def test_each_fault_shows_its_signs(run, fault, collar, lights):
    """A planted fault shows itself as it would: the lamps of a shift made in the right order, drive selected."""
    now = through(run, "to_pump", *SOUND_SHIFT[:6], faults=[fault] if fault else [])
    assert (now["train"]["collar"], now["shown"]["lights"]) == (collar, lights)


@pytest.mark.parametrize(
    ("given", "field", "code"),
    [
        ({"kind": "jump"}, "event", "unknown"),
        ({}, "event", "unknown"),
        ("tick", "event", "unknown"),
        ({"kind": "selector", "to": "up"}, "to", "unknown"),
        ({"kind": "end", "how": "well"}, "how", "unknown"),
        ({"kind": "tick", "passed_s": 3600}, "passed_s", "out_of_range"),
        ({"kind": "tick"}, "passed_s", "not_a_number"),
    ],
)
def test_refused_events(run, given, field, code):
    """What no person can do is refused by field and code."""
    begun = run("teaching.practice", "begin", task="to_pump", parameters=PARAMETERS, lights=LIGHTS, faults=[])
    with pytest.raises(CalcError) as refusal:
        run("teaching.practice", "advance", run=begun, event=given)
    assert (refusal.value.field, refusal.value.code) == (field, code)


def test_a_run_ends_once(run):
    """After its end a run takes nothing more; before it there is no verdict; an unknown task or fault does not begin."""
    ended = through(run, "to_pump", ("end", "stopped"))
    with pytest.raises(CalcError) as refusal:
        run("teaching.practice", "advance", run=ended, event={"kind": "tick", "passed_s": 0.1})
    assert (refusal.value.field, refusal.value.code) == ("run", "ended")
    for task, faults, field, facts in (("to_moon", [], "task", {}), ("to_pump", ["gremlin"], "faults", {"fault": "gremlin"})):
        with pytest.raises(CalcError) as refusal:
            run("teaching.practice", "begin", task=task, parameters=PARAMETERS, lights=LIGHTS, faults=faults)
        assert (refusal.value.field, refusal.value.code, refusal.value.facts) == (field, "unknown", facts)


def test_a_run_of_too_many_notes_takes_no_more(run):
    """A run that never ends on its own is refused once its notes are past 200: no run of any length can fill the phone."""
    begun = through(run, "to_pump")
    note = {"code": "strain", "at_s": 1.0}
    full = {**begun, "notes": [note] * 200}
    assert run("teaching.practice", "advance", run=full, event={"kind": "tick", "passed_s": 0.1})["ended"] is None
    with pytest.raises(CalcError) as refusal:
        run("teaching.practice", "advance", run={**full, "notes": [note] * 201}, event={"kind": "tick", "passed_s": 0.1})
    assert (refusal.value.field, refusal.value.code, refusal.value.facts) == ("run", "too_long", {"most": 200})


def test_no_verdict_before_the_end(run):
    """A run that is still on is worth nothing yet."""
    with pytest.raises(CalcError) as refusal:
        run("teaching.outcome", "verdict", run=through(run, "to_pump"))
    assert (refusal.value.field, refusal.value.code) == ("run", "not_ended")


def test_a_brake_let_go_holds_no_light(run):
    """OK and throttle-ready are wired through the parking brake: with it off both are dark, though the collar is in pump."""
    begun = through(run, "to_pump", *SOUND_SHIFT[:6])
    begun["train"]["brake_set"] = False
    now = run("teaching.practice", "advance", run=begun, event={"kind": "tick", "passed_s": 0.1})
    assert now["shown"]["lights"] == {"engaged": True, "ok": False, "throttle": False}
