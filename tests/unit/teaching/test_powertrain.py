"""The power train of practice, one small step at a time: each law by hand, with parameters of the test's own.

A step of at most 0.01 s is one step of the laws, so that what it changes can be worked out on paper.
"""
import pytest

from calc.base.errors import CalcError
from calc.teaching import powertrain

STEP_S = 0.01 - 1e-9
P = {
    "idle_rpm": 700, "raised_rpm": 1400, "engine_s": 0.5, "brake_holds_rpm": 1000, "converter_slip": 0.1, "take_up_s": 0.5,
    "oil_drag": 0.2, "coast_s": 2, "drag_rpm_per_s": 50, "pump_ratio": 2, "fill_s": 0.4, "exhaust_s": 0.2, "travel_s": 0.1,
    "mesh_rpm": 60, "shut_rpm": 2000, "shut_hp": 50, "trapped_gal": 10, "circulation_gpm": 30, "hot_rise_f": 40,
}
LIGHTS = {"throttle": [["neutral", "parking_brake"], ["switch_closed", "pump_gear"]]}


def a_train(**changes):
    return {
        "engine_rpm": 700, "throttle": "idle", "gear": "neutral", "brake_set": True, "selector": "road", "valve": "road",
        "road_air": 1, "pump_air": 0, "collar": "road", "pushed_s": 0, "grinding": False, "shaft_rpm": 0, "pump_rpm": 0,
        "tank_open": True, "circulating": False, "rise_f": 0, "moved": False, **changes,
    }


def after(train, passed_s=STEP_S, faults=(), **changed):
    """What happened to the train in that time."""
    happened = []
    while passed_s > 1e-9:
        part_s = min(passed_s, powertrain.LONGEST_TICK_S)
        happened += powertrain.passed(train, {**P, **changed}, LIGHTS, list(faults), part_s)
        passed_s -= part_s
    return happened


def pushed(**changes):
    """A train whose air pushes the collar to pump."""
    return a_train(selector="pump", valve="pump", road_air=0, pump_air=1, **changes)


@pytest.mark.parametrize(
    ("changes", "faults", "rpm"),
    [
        ({"throttle": "raised"}, [], 700 + 700 * 0.01 / 0.5),              # neutral and brake: the throttle answers
        ({"throttle": "raised"}, ["throttle_dead"], 700),
        ({"throttle": "raised", "brake_set": False}, [], 700),             # its light is out: it does not
        ({"throttle": "idle", "engine_rpm": 1400}, [], 1400 - 700 * 0.01 / 0.5),
        ({"throttle": "raised", "collar": "pump", "gear": "drive"}, [], 714),
        ({"throttle": "raised", "collar": "between", "gear": "drive"}, [], 700),
        ({"throttle": "raised", "collar": "between", "gear": "drive"}, ["switch_closed"], 714),  # the switch lies
        ({"throttle": "raised", "collar": "pump", "gear": "drive"}, ["switch_open"], 700),
    ],
)
def test_the_throttle_answers_to_its_light(changes, faults, rpm):
    """The engine goes to where the throttle is, where throttle-ready is lit and nothing broke. Common practice."""
    train = a_train(**changes)
    after(train, faults=faults)
    assert train["engine_rpm"] == pytest.approx(rpm, rel=1e-6)


@pytest.mark.parametrize(("engine_rpm", "moves"), [(1000, False), (1001, True)])
def test_in_road_and_in_gear_the_brake_holds_so_much(engine_rpm, moves):
    """Over what the brake holds the rig runs away, once; in neutral again the wheels do not drive the shaft."""
    train = a_train(gear="drive", engine_rpm=engine_rpm)
    assert after(train, idle_rpm=engine_rpm) == (["runaway"] if moves else [])
    assert train["moved"] is moves
    assert train["shaft_rpm"] == pytest.approx(engine_rpm if moves else 0, rel=1e-6)
    assert after(train, 0.5, idle_rpm=engine_rpm) == []
    train["gear"] = "neutral"
    after(train)
    assert (train["shaft_rpm"], train["moved"]) == (0, moves)


def test_in_neutral_nothing_runs_away():
    train = a_train(engine_rpm=1400, throttle="raised")
    assert after(train, 2) == []
    assert (train["moved"], train["shaft_rpm"]) == (False, 0)


@pytest.mark.parametrize(("collar", "slip", "pump_rpm"), [("between", 0, 0), ("pump", 0.1, 1260)])
def test_drive_takes_the_shaft_up(collar, slip, pump_rpm):
    """A free shaft comes to the engine's speed; under the pump the converter slips a tenth, and the pump turns twice as fast."""
    train = pushed(gear="drive", collar=collar)
    train.update(pump_air=1 if collar == "pump" else 0, valve=collar)  # so that it stays
    after(train)
    assert train["shaft_rpm"] == pytest.approx(700 * (1 - slip) * 0.01 / 0.5, rel=1e-6)
    after(train, 10)
    assert train["shaft_rpm"] == pytest.approx(700 * (1 - slip), rel=1e-3)
    assert train["pump_rpm"] == pytest.approx(pump_rpm, rel=1e-3)


def test_what_is_free_runs_down():
    """The pump loses speed to its water and to its seals, and comes to a stand; it never turns back."""
    train = a_train(collar="between", pump_rpm=1000)
    after(train)
    assert train["pump_rpm"] == pytest.approx(1000 - (1000 / 2 + 50) * 0.01, rel=1e-6)
    train["pump_rpm"] = 0.1
    after(train)
    assert train["pump_rpm"] == 0
    after(train, 1)
    assert train["pump_rpm"] == 0


def test_oil_drags_the_shaft_along():
    """In neutral at a raised engine the shaft creeps up to a fifth of what the engine turns over idle; at idle it stands."""
    train = a_train(collar="between", engine_rpm=1401, shaft_rpm=0)
    after(train, engine_s=1e30)
    assert train["shaft_rpm"] == pytest.approx(0.2 * 700 * 0.01 / 2, rel=1e-6)
    train["shaft_rpm"] = 240
    after(train, engine_s=1e30)  # 100 over what the oil drags
    assert train["shaft_rpm"] == pytest.approx(240 - (100 / 2 + 50) * 0.01, rel=1e-6)
    idling = a_train(collar="between", valve="centre", road_air=0)
    after(idling, 1)
    assert idling["shaft_rpm"] == 0


@pytest.mark.parametrize(("faults", "pump_air"), [([], 0.01 / 0.4), (["no_air"], 0)])
def test_air_comes_and_goes(faults, pump_air):
    """One side fills slowly while the other leaves fast; with no air in the tanks none comes."""
    train = a_train(selector="pump", valve="pump")
    after(train, faults=faults)
    assert train["pump_air"] == pytest.approx(pump_air, rel=1e-6)
    assert train["road_air"] == pytest.approx(1 - 0.01 / 0.2, rel=1e-6)


@pytest.mark.parametrize(("pump_air", "road_air", "goes"), [(0.5, 0, True), (0.49, 0, False), (1, 0.52, False)])
def test_half_the_air_moves_the_collar(pump_air, road_air, goes):
    train = a_train(valve="pump", pump_air=pump_air, road_air=road_air)
    after(train, travel_s=0.005, fill_s=1e30, exhaust_s=1e30)
    assert train["collar"] == ("between" if goes else "road")


@pytest.mark.parametrize(("pump_air", "road_air", "goes"), [(0, 0.5, True), (0, 0.49, False)])
def test_half_the_air_moves_it_back(pump_air, road_air, goes):
    train = a_train(collar="pump", pump_air=pump_air, road_air=road_air)
    after(train, travel_s=0.005, fill_s=1e30, exhaust_s=1e30)
    assert train["collar"] == ("between" if goes else "pump")


def test_the_collar_takes_its_time_twice():
    """Out of road after a tenth of a second, into pump after another; then it stays, and the push is over."""
    train = pushed()
    assert after(train, 0.095) == []
    assert train["collar"] == "road"
    assert after(train, 0.01) == []
    assert train["collar"] == "between"
    assert after(train, 0.09) == []
    assert train["collar"] == "between"
    assert after(train, 0.02) == ["home_pump"]
    assert (train["collar"], train["pushed_s"], train["grinding"]) == ("pump", 0, False)
    assert after(train, 1) == []


@pytest.mark.parametrize(("changes", "faults"), [({"gear": "drive"}, []), ({}, ["collar_stuck"])])
def test_what_holds_the_collar(changes, faults):
    """The wheels hold it under load in road; a stuck one moves for no air. A push that ends begins from nothing."""
    train = pushed(pushed_s=0.09, grinding=True, **changes)
    assert after(train, 2, faults=faults) == []
    assert (train["collar"], train["pushed_s"], train["grinding"]) == ("road", 0, False)


def test_out_of_pump_the_load_does_not_hold_it():
    train = a_train(collar="pump", gear="drive", shaft_rpm=630, pump_rpm=1260)
    after(train, 0.11)
    assert train["collar"] == "between"


def test_teeth_that_turn_apart_clash_once():
    """With the shaft turning 61 rpm faster than the pump's gear the teeth grind, said once; at 60 they meet."""
    train = pushed(collar="between", shaft_rpm=61, pushed_s=0.2)
    still = {"coast_s": 1e30, "drag_rpm_per_s": 0}
    assert after(train, **still) == ["clash"]
    assert (train["collar"], train["grinding"]) == ("between", True)
    assert after(train, 0.3, **still) == []
    assert train["grinding"] is True
    train["shaft_rpm"] = 60
    assert after(train, **still) == ["home_pump"]
    assert (train["collar"], train["pushed_s"], train["grinding"]) == ("pump", 0, False)


def test_the_pumps_gear_turns_with_the_pump():
    """At 630 rpm of the shaft a pump at 1260, geared twice as fast, turns alike: no clash."""
    train = pushed(collar="between", shaft_rpm=630, pump_rpm=1260, pushed_s=0.2)
    assert after(train, coast_s=1e30, drag_rpm_per_s=0) == ["home_pump"]


def test_road_meets_standing_wheels():
    """Back to road the wheels stand: a shaft at 61 rpm clashes, one at 60 does not, whatever the pump does."""
    for shaft_rpm, told in ((61, ["clash"]), (60, ["home_road"])):
        train = a_train(collar="between", shaft_rpm=shaft_rpm, pump_rpm=1000, pushed_s=0.2)
        assert after(train, coast_s=1e30, drag_rpm_per_s=0) == told


def pumping(**changes):
    return a_train(collar="pump", gear="drive", valve="pump", road_air=0, pump_air=1, shaft_rpm=630, pump_rpm=1260, **changes)


def test_shut_in_water_warms():
    """50 hp at 2000 rpm are by the cube 12.5 hp at 1260; 42.4 Btu a minute each, into 10 gal of 8.33 lb. Common practice."""
    train = pumping()
    after(train)
    by_hand_f = 50 * 0.63 ** 3 * 42.41 / (10 * 8.33) * 0.01 / 60
    assert train["rise_f"] == pytest.approx(by_hand_f, rel=5e-3)


def test_circulating_carries_heat_away():
    """At 1260 of 2000 rpm 63 % of 30 gpm go round: 18.9 gpm of 10 gal take 1.89 of the rise each minute."""
    still, round_ = pumping(rise_f=30), pumping(rise_f=30, circulating=True)
    after(still)
    after(round_)
    assert still["rise_f"] - round_["rise_f"] == pytest.approx(1.89 * 30 * 0.01 / 60, rel=1e-4)


@pytest.mark.parametrize(("changes", "faults"), [({}, ["no_water"]), ({"collar": "between"}, [])])
def test_no_water_or_no_drive_warms_nothing(changes, faults):
    train = {**pumping(), **changes}
    after(train, faults=faults)
    assert train["rise_f"] == 0


@pytest.mark.parametrize(("rise_f", "told"), [(40 - 1e-9, ["hot"]), (40, []), (39, [])])
def test_hot_is_said_as_it_comes(rise_f, told):
    assert after(pumping(rise_f=rise_f)) == told


@pytest.mark.parametrize("passed_s", [0.51, -0.01])
def test_no_longer_than_half_a_second(passed_s):
    with pytest.raises(CalcError) as refusal:
        powertrain.passed(a_train(), P, LIGHTS, [], passed_s)
    assert refusal.value.field == "passed_s"
