"""The engine is not raised on a run before the checks before water are answered yes, or a named person went on without, with a reason."""
import copy

import pytest

from tests.unit.service.made import of
from tests.unit.service.test_page import READY, a_record, answered

RUNS = ("capacity", "overload", "seventy", "fifty")
PERSON = {"name": "A. Tester", "reason": "stop control shown by hand", "wall": 0}


def with_checks(*changes, **more):
    """A record at the start of its runs, ready but for these answers: (part, check, answer)."""
    tests = copy.deepcopy(READY)
    for part, check, answer in changes:
        tests[part]["values"][check] = answer
    draft = {"draft": {"tip": {"tip_in": "2.25@US", "count": 1}, "values": {"discharge_psi": "145@US", "pitot_psi": ["70@US"], "engine_rpm": "1600"}}}
    return a_record(tests={**tests, "capacity": draft}, **more)


def unready(answer, name="capacity"):
    return [wait["id"] for wait in answer["waits"][name] if wait["code"] == "unready"]


@pytest.mark.parametrize(
    ("changes", "expected"),
    [
        ((), []),
        ((("checks_dry", "chocks", None),), ["checks_dry"]),
        ((("checks_dry", "people_clear", "no"), ("shift", "shift_proved", None)), ["checks_dry", "shift"]),
    ],
)
def test_a_run_waits_for_every_yes(run, changes, expected):
    """A blank and a no hold every run alike, whatever readings stand."""
    answer = answered(run, with_checks(*changes))
    runs = [test["id"] for test in answer["plan"]["tests"] if test["kind"] == "run"]
    assert set(runs) <= set(RUNS)
    assert {name: unready(answer, name) for name in runs} == {name: expected for name in runs}
    assert bool(answer["waits"]["capacity"]) == bool(expected)


def test_a_run_waits_for_what_the_rig_does_not_say(run):
    """An interlock and a shift that are not known for want of the drive are no yes; neither is a part set aside as not done."""
    record = with_checks()
    record["rig"]["drive"] = ""
    assert unready(answered(run, record)) == ["interlock", "shift"]
    record = with_checks()
    record["tests"]["shift"]["not_done"] = "no time"
    assert unready(answered(run, record)) == ["shift"]


def test_the_dry_vacuum_waits_for_none(run):
    """The vacuum is held with the pump dry: its clock is no raised engine's."""
    assert unready(answered(run, a_record(tests={})), "vacuum") == []


@pytest.mark.parametrize(("lack", "expected"), [({}, []), ({"name": " "}, ["checks_dry"]), ({"reason": ""}, ["checks_dry"])])
def test_a_named_person_may_go_on(run, lack, expected):
    """An override counts with a name and a reason, and not without either."""
    change = ("checks_dry", "stop_control", None)
    is_open = answered(run, with_checks(change))["before"]["open"]
    assert is_open == [{"test": "checks_dry", "check": "stop_control", "value": None}]
    answer = answered(run, with_checks(change, overrides=[{**PERSON, "open": is_open, **lack}]))
    assert unready(answer) == expected
    assert (answer["before"]["override"] or {}).get("name") == (None if expected else PERSON["name"])


def test_an_override_covers_what_was_open_then(run):
    """A check that turns to no afterwards holds the run again, and the override before it stays in the record."""
    change = ("checks_dry", "stop_control", None)
    overrides = [{**PERSON, "open": answered(run, with_checks(change))["before"]["open"]}]
    assert unready(answered(run, with_checks(("checks_dry", "stop_control", "no"), overrides=overrides))) == ["checks_dry"]
    assert unready(answered(run, with_checks(change, ("shift", "shift_proved", "no"), overrides=overrides))) == ["checks_dry", "shift"]
    assert answered(run, with_checks(overrides=overrides))["before"]["override"] is None  # nothing open: nobody goes on without anything


def test_what_an_override_lacks(run):
    """Named while it is typed."""
    assert answered(run, with_checks())["before"]["wants"] == ["name", "reason"]
    assert answered(run, with_checks(override={"name": "A. Tester"}))["before"]["wants"] == ["reason"]
