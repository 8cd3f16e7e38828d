"""What a failed reading is a sign of, and the way from it into the diagnosis."""
import copy

import pytest

from calc import fault, service_quick, service_signs
from tests.unit.dialogue import BASE
from tests.unit.service import a_plan, a_rig, an_attempt, good_readings, of

PLAN = a_plan()
GOOD = good_readings(PLAN)


def judged(run, readings, plan=PLAN):
    return run("service_test", "verdict", plan=plan, readings=readings)


@pytest.mark.parametrize(
    ("change", "pattern", "fault"),
    [
        ({"vacuum": {"vacuum_reached_inhg": 20, "vacuum_after_inhg": 19}}, "vacuum_not_reached", "vacuum_not_reached"),
        ({"vacuum": {"vacuum_after_inhg": 10}}, "vacuum_lost", "vacuum_drop"),
        ({"priming": {"prime_s": 60}}, "prime_slow", "slow_prime"),
        ({"pressure_control": {"at_90.peak_psi": 150}}, "rise_high", "relief_not_holding"),
        ({"tank": {"tank_flow_gpm": 300}}, "tank_flow_low", "tank_to_pump_low"),
        ({"gauges": {"master.at_200.panel_psi": 220}}, "gauge_off", "gauge_disagree"),
        ({"meters": {"main.shown_gpm": 1300}}, "meter_off", None),
        ({"interlock": {"pump_gear": "no"}}, "interlock_wrong", "interlock_test_fail"),
        ({"governed": {"governed_rpm": 1900}}, "governed_low", "engine_derates"),
        ({"leaks": {"leak_shaft": "no"}}, "shaft_leak", "packing_leak"),
        ({"transfer": {"transfer_both_ways": "no"}}, "transfer_stuck", "transfer_stuck"),
    ],
)
def test_signs(run, change, pattern, fault):
    """A failed figure is told to the diagnosis as one sign."""
    readings = copy.deepcopy(GOOD)
    for test, values in change.items():
        readings[test]["values"].update(values)
    assert [(sign["id"], sign["fault"]) for sign in judged(run, readings)["signs"]] == [(pattern, fault)]


@pytest.mark.parametrize(
    ("change", "new", "pattern"),
    [
        # 1,600 rpm when new: 10 % over is 1,760
        ({"discharge_psi": 120, "engine_rpm": 1600, "pump_rpm": 3200}, True, "pressure_low_speed_usual"),
        ({"discharge_psi": 120, "engine_rpm": 1761, "pump_rpm": 3522}, True, "pressure_low_speed_high"),
        ({"discharge_psi": 120}, False, "pressure_low_speed_unknown"),
        ({"engine_rpm": 1761, "pump_rpm": 3522}, True, "speed_high_at_pressure"),
        ({"pitot_psi": [64]}, True, "flow_low_pressure_good"),
        ({"pump_rpm": 3300}, True, "ratio_changed"),  # 3300 / 1750 is 1.886 against 2.0 on the plate
    ],
)
def test_run_signs(run, change, new, pattern):
    """Pressure, flow and speed of a run together name a pattern."""
    plan = PLAN if new else a_plan(a_rig(new=None))
    attempt = an_attempt(of(plan, "capacity"), **change)
    told = judged(run, {"capacity": {"attempts": [attempt]}}, plan)
    assert [sign["id"] for sign in told["signs"]] == [pattern]


def test_every_failure_leads_into_the_diagnosis():
    """Each pattern that a failure shows has a sign of the diagnosis to enter by, on whatever rig it was tested."""
    patterns = set(service_signs.FIGURES.values()) | set(service_signs.FAULTS)
    patterns |= {"interlock_wrong", "governed_low", "governed_high"}
    assert patterns <= set(service_signs.ENTER)
    enters = {*service_signs.ENTER.values(), *service_quick.ENTER.values()}
    for drive in ("midship", "pto", "front", "rear"):
        for transmission in ("automatic", "manual"):
            rig = {"drive": drive, "transmission": transmission, "pump_stages": "2"}
            assert enters <= {sign["id"] for sign in fault.for_rig(BASE, rig)["signs"]}
