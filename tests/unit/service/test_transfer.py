"""The transfer valve: one that sticks fails; a point pumped in the wrong position is not shown, and says nothing against the pump."""
import pytest

from tests.unit.service.made import a_plan, good_readings, of

PLAN = a_plan()
GOOD = good_readings(PLAN)


@pytest.mark.parametrize(("values", "status", "code"), [
    ({}, "pass", "met"),
    ({"capacity.transfer_volume": "no"}, "not_proven", "position"),
    ({"fifty.transfer_pressure": "no", "seventy.transfer_plate": "no"}, "not_proven", "position"),
    ({"transfer_both_ways": "no"}, "fail", "no"),
    ({"transfer_both_ways": "no", "capacity.transfer_volume": "no"}, "fail", "no"),
])
def test_a_wrong_position_is_no_fault(run, values, status, code):
    """The point was pumped, only not as it is rated: it is run again. Common practice."""
    readings = {**GOOD, "transfer": {"values": {**GOOD["transfer"]["values"], **values}}}
    told = run("service.verdict", "verdict", plan=PLAN, readings=readings)
    assert (of(told, "transfer")["status"], of(told, "transfer")["code"], told["status"]) == (status, code, status)
    assert [sign["id"] for sign in told["signs"]] == (["transfer_stuck"] if status == "fail" else [])
