"""What a failed reading is a sign of, and the way from it into the diagnosis."""
import copy

import pytest

from calc.diagnosis import fault
from calc.service import quick, signs
from tests.unit.diagnosis.dialogue import BASE
from tests.unit.service.made import a_plan, a_rig, an_attempt, good_readings, of

PLAN = a_plan()
GOOD = good_readings(PLAN)


def judged(run, readings, plan=PLAN):
    return run("service.verdict", "verdict", plan=plan, readings=readings)


@pytest.mark.parametrize(
    ("change", "pattern", "enter"),
    [
        ({"vacuum": {"vacuum_reached_inhg": 20, "vacuum_after_inhg": 19}}, "vacuum_not_reached", "vacuum_short"),
        ({"vacuum": {"vacuum_after_inhg": 10}}, "vacuum_lost", "vacuum_falls"),
        ({"priming": {"prime_s": 60}}, "prime_slow", "slow_prime"),
        ({"governor": {"at_90.peak_psi": 150}}, "rise_high", "rise_over"),
        ({"tank": {"tank_flow_gpm": 300}}, "tank_flow_low", "low_from_tank"),
        ({"gauges": {"master.at_200.panel_psi": 220}}, "gauge_off", "test_gauge_differs"),
        ({"meters": {"main.shown_gpm": 1300}}, "meter_off", "meter_differs"),
        ({"interlock": {"pump_gear": "no"}}, "interlock_wrong", "interlock_fails"),
        ({"shift": {"shift_proved": "no"}}, "shift_unproved", None),  # nobody said which proof: the diagnosis asks
        ({"governed": {"governed_rpm": 2300, "panel_rpm": 2300}}, "governed_high", "governed_differs"),
        ({"intake_relief": {"relief_opened": "no"}}, "relief_shut", "intake_relief_shut"),
        ({"governed": {"governed_rpm": 1900, "panel_rpm": 1900}}, "governed_low", "governed_differs"),
        ({"leaks": {"leak_shaft": "no"}}, "shaft_leak", "gland_drips_more"),
        ({"transfer": {"transfer_both_ways": "no"}}, "transfer_stuck", "pointer_short"),
        ({"intake_relief": {"relief_reseated": "no"}}, "relief_open", "intake_relief_shut"),
        ({"governed": {"panel_rpm": 2400}}, "gauge_off", "test_gauge_differs"),  # the tachometer, 190 rpm off the counter
        ({"compound": {"compound.panel_psi": 90}}, "gauge_off", "test_gauge_differs"),
        ({"compound": {"compound.panel_inhg": 20}}, "gauge_off", "test_gauge_differs"),
        ({"interlock": {"pump_gear": "no", "road_set": "no"}}, "interlock_wrong", "interlock_fails"),  # once, however much failed
        ({"leaks": {"leak_casing": "no", "leak_shaft": "no"}}, "shaft_leak", "gland_drips_more"),  # a casing that drips has no sign of its own
    ],
)
def test_signs(run, change, pattern, enter):
    """A failed figure is told to the diagnosis as one sign."""
    readings = copy.deepcopy(GOOD)
    for test, values in change.items():
        readings[test]["values"].update(values)
    assert judged(run, readings)["signs"] == [{"id": pattern, "test": list(change)[0], "enter": enter}]


@pytest.mark.parametrize(("drive", "check"), [
    ("midship", "shift_locked"), ("midship", "shift_gear_locked"), ("rear_shaft", "shift_locked"), ("pto", "pto_locked"), ("front", "pto_locked"), ("pto", "shift_override")])
def test_whatever_holds_the_pump_in_is_the_same_sign(run, drive, check):
    plan = a_plan(a_rig(drive=drive, has_override=True))
    readings = good_readings(plan)
    readings["shift"]["values"][check] = "no"
    assert judged(run, readings, plan)["signs"] == [{"id": "shift_wrong", "test": "shift", "enter": "interlock_fails"}]


def test_signs_stand_in_the_order_of_the_tests_each_at_the_first(run):
    """A run that is short and fast once is short and fast, whatever the later ones are; the vacuum comes before it."""
    readings = copy.deepcopy(GOOD)
    readings["vacuum"]["values"]["vacuum_after_inhg"] = 10
    for name in ("capacity", "seventy"):
        readings[name] = {"attempts": [an_attempt(of(PLAN, name), discharge_psi=100, pump_rpm=3000)]}
    assert judged(run, readings)["signs"] == [
        {"id": "vacuum_lost", "test": "vacuum", "enter": "vacuum_falls"},
        {"id": "pressure_low_speed_usual", "test": "capacity", "enter": "pressure_short"}, {"id": "ratio_changed", "test": "capacity", "enter": "ratio_differs"}]


@pytest.mark.parametrize(
    ("change", "new", "pattern", "enter"),
    [
        # 1,600 rpm when new: 10 % over is 1,760
        ({"discharge_psi": 120, "engine_rpm": 1600, "pump_rpm": 3200}, True, "pressure_low_speed_usual", "pressure_short"),
        ({"discharge_psi": 120, "engine_rpm": 1761, "pump_rpm": 3522}, True, "pressure_low_speed_high", "pressure_short"),
        ({"discharge_psi": 120}, False, "pressure_low_speed_unknown", "pressure_short"),
        ({"engine_rpm": 1761, "pump_rpm": 3522}, True, "speed_high_at_pressure", "test_speed_high"),
        ({"pitot_psi": [64]}, True, "flow_low_pressure_good", "test_flow_short"),
        ({"pump_rpm": 3300}, True, "ratio_changed", "ratio_differs"),  # 3300 / 1750 is 1.886 against 2.0 on the plate
    ],
)
def test_run_signs(run, change, new, pattern, enter):
    """Pressure, flow and speed of a run together name a pattern."""
    plan = PLAN if new else a_plan(a_rig(new=None))
    attempt = an_attempt(of(plan, "capacity"), **change)
    told = judged(run, {"capacity": {"attempts": [attempt]}}, plan)
    assert told["signs"] == [{"id": pattern, "test": "capacity", "enter": enter}]


RUN = {"id": "capacity", "expected": [{"of": "last", "engine_rpm": 1500}, {"of": "new", "engine_rpm": 1600}]}


def cautions(run, sets, ratio=2.0, rise_percent=10, test=RUN, off_rpm=50):
    plan = {"speed_rise_percent": rise_percent, "pump_ratio": ratio, "tachometer_most_off_rpm": off_rpm}
    return run("service.signs", "cautions_of", test=test, sets=[dict(zip(("engine_rpm", "pump_rpm", "panel_rpm"), (*each, None))) for each in sets], plan=plan)


@pytest.mark.parametrize(("rpm", "is_told"), [(1760, False), (1761, True)])
def test_an_engine_faster_than_when_new(run, rpm, is_told):
    """Ten per cent over 1,600 rpm are 1,760; the worst reading counts, and the last year's speed does not."""
    told = {"code": "speed_above_new", "kind": "speed", "value": rpm, "limit": pytest.approx(1760)}
    assert cautions(run, [(1500, None), (rpm, None), (None, None)]) == ([told] if is_told else [])
    assert cautions(run, [(2000, None)], rise_percent=25) == []  # a quarter over, to the last bit


@pytest.mark.parametrize(("pumps", "off"), [
    ((3200, 3105), None), ((3200, 3103), 3103 / 1600), ((3295, 3200), None), ((3297, 3200), 3297 / 1600), ((3300, 3000), 3000 / 1600), ((3400, 3100), 3400 / 1600)])
def test_a_ratio_that_is_not_the_plates(run, pumps, off):
    """Three per cent of 2.0 are 0.06 either way: at 1,600 rpm of the engine 3,104 to 3,296 of the pump; the farthest is told."""
    told = {"code": "ratio_off", "kind": "ratio", "value": pytest.approx(off), "limit": 2.0}
    assert cautions(run, [(1600, pump) for pump in pumps]) == ([] if off is None else [told])


def test_without_a_plate_or_a_speed_when_new_nothing_is_compared(run):
    assert cautions(run, [(1900, 3000)], None, None) == []
    assert cautions(run, [(1900, None)], test={"id": "capacity", "expected": []}) == []


def test_the_tachometer_is_held_to_the_counter(run):
    """50 rpm either way is common practice: at it nothing is said, past it the worst; without a limit, a counter or a tachometer nothing."""
    assert cautions(run, [(1600, None, 1650), (1600, None, 1550)]) == []
    assert cautions(run, [(1600, None, 1651), (1600, None, 1540), (1600, None, None), (None, None, 900)]) == [
        {"code": "tachometer_off", "kind": "speed", "value": 60, "limit": 50}]
    assert cautions(run, [(1600, None, 1700)], off_rpm=None) == []


def test_every_failure_leads_into_the_diagnosis():
    """Each pattern that a failure shows has a sign of the diagnosis to enter by, on whatever rig it was tested."""
    patterns = set(signs.FIGURES.values())
    patterns |= {"interlock_wrong", "governed_low", "governed_high", "pressure_low", "flow_low_pressure_good", "speed_high_at_pressure", "ratio_changed"}
    assert patterns == set(signs.ENTER)
    enters = {*signs.ENTER.values(), *quick.ENTER.values()} - {None}
    for drive in ("midship", "pto", "front", "rear_shaft", "rear_pto"):
        for transmission in ("automatic", "manual"):
            rig = {"drive": drive, "transmission": transmission, "pump_stages": "2"}
            assert enters <= {sign["id"] for sign in fault.for_rig(BASE, rig)["signs"]}
