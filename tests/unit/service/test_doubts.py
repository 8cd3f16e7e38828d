"""Readings that contradict each other are questioned, on both sides of each bound; true ones are not."""
import copy

import pytest

from tests import service_records as records

US = records.US


def doubts(run, kept=None, lift="8@US", **values):
    """What is asked of a draft of the fifty percent run through two tips, after a set that was kept."""
    record = records.an_unfinished_record()
    record["conditions"] = {**record["conditions"], "lift_ft": lift, "tips_in": ["1.25@US"]}
    good = {"discharge_psi": "246@US", "pitot_psi": ["50@US", "50@US"], "engine_rpm": "1800@US", "intake_inhg": "10@US"}
    tip = {"tip_in": "1.25@US", "count": 2}
    test = {"draft": {"tip": tip, "values": {**good, **values}}}
    if kept is not None:
        test["attempts"] = [{"tip": tip, "clock_s": 0, "stopped": None, "clock": {"counted_s": 0, "since": None, "events": []},
                             "sets": [{"at_s": 0, "at_ms": records.BEGUN_MS, "tip": tip, "values": {**good, **kept}}]}]
    record["tests"]["fifty"] = test
    told = run("service.page", "answer", record=copy.deepcopy(record), units=US)
    return [doubt["code"] for doubt in told["doubts"]["fifty"]]


@pytest.mark.parametrize(("pitots", "is_asked"), [(("70@US", "12@US"), True), (("50@US", "50@US"), False), (("60@US", "40@US"), False), (("61@US", "40@US"), True)])
def test_equal_tips_pass_the_same(run, pitots, is_asked):
    """Half as much again is the bound: 60 beside 40, common practice."""
    assert doubts(run, pitot_psi=list(pitots)) == (["pitots_unlike"] if is_asked else [])


# by hand: 625 gpm through one 6 in hose loses about 1.5 ft; 9.5 ft are 8.4 inHg, and 5 more are 13.4
@pytest.mark.parametrize(("vacuum", "is_asked"), [("25@US", True), ("15@US", True), ("12@US", False), ("9@US", False)])
def test_no_more_vacuum_than_lift_and_suction_take(run, vacuum, is_asked):
    assert doubts(run, intake_inhg=vacuum) == (["vacuum_over_lift"] if is_asked else [])


@pytest.mark.parametrize(("kept", "values", "is_asked"), [
    ({}, {"engine_rpm": "1700@US", "discharge_psi": "256@US"}, True),
    ({}, {"engine_rpm": "1900@US", "discharge_psi": "256@US"}, False),
    ({}, {"engine_rpm": "1700@US", "discharge_psi": "236@US"}, False),
    ({}, {"engine_rpm": "1795@US", "discharge_psi": "256@US"}, False),  # inside a counter's error
    ({}, {"engine_rpm": "1700@US", "discharge_psi": "256@US", "pitot_psi": ["40@US", "40@US"]}, False),  # a valve was throttled: less flow
    (None, {"engine_rpm": "1700@US", "discharge_psi": "256@US"}, False),  # nothing to compare with
])
def test_less_speed_gives_no_more_pressure(run, kept, values, is_asked):
    assert doubts(run, kept=kept, **values) == (["speed_down_pressure_up"] if is_asked else [])
