"""What a record proves: what cannot be used is told, what stays impossible is no test, and no amount is past any pump."""
import copy

import pytest

from calc.base.errors import CalcError
from tests.unit.service.made import of
from tests.unit.service.test_page import US, a_record


def proved(run, record):
    return run("service.proof", "proof", record=record, units=US)


def test_a_reading_the_wrong_way_round(run):
    """A vacuum that rose by itself is told at its place and counts as not read; the other figures of its part and all others stand."""
    record = a_record()
    record["tests"]["vacuum"] = {"values": {"vacuum_reached_inhg": "23@US", "vacuum_after_inhg": "24@US"}}
    told = proved(run, record)
    assert told["problems"] == [{"place": "tests.vacuum.vacuum_after_inhg", "code": "wrong_way"}]
    assert [figure["value"] for figure in of(told["verdict"], "vacuum")["figures"]] == [23, None]
    assert of(told["verdict"], "governed")["status"] == "pass"


@pytest.mark.parametrize(("part", "name", "code"), [("rig", "pump_rated", "not_a_number"), ("conditions", "source", "unknown")])
def test_no_plan_without(run, part, name, code):
    """A test of a pump whose rating, or whose source of water, nobody entered has no plan; it is told where that is missing."""
    record = a_record()
    record[part] = {key: value for key, value in record[part].items() if key != name}
    told = proved(run, record)
    assert (told["plan"], told["verdict"]) == (None, None)
    assert {"place": f"{part}.{name}", "code": code} in told["problems"]


@pytest.mark.parametrize("change", [{"clock_s": -1}, {"tip": {"tip_in": "0@US", "count": 1}}])
def test_an_attempt_that_cannot_be(run, change):
    """A clock that ran backwards, a tip without a bore: no phone writes those, so it is no test."""
    record = copy.deepcopy(a_record())
    record["tests"]["capacity"]["attempts"][0].update(change)
    with pytest.raises(CalcError) as refused:
        proved(run, record)
    assert (refused.value.field, refused.value.code) == ("record", "damaged")


def verdict_of(figures=(), caution=None, sets=None):
    test = {"figures": list(figures), "cautions": [caution] if caution else []}
    return {"tests": [{**test, "attempts": [{"sets": sets}]} if sets else test]}


def figure(**amounts):
    return {"kind": "pressure", "value": 1, "band": None, "least": None, "most": None, **amounts}


@pytest.mark.parametrize("amount", [1000001, -1000001])
@pytest.mark.parametrize("made", [
    lambda amount: ([{"engine_rpm": amount, "pump_rpm": None}], verdict_of()), lambda amount: ([{"engine_rpm": 1, "pump_rpm": amount}], verdict_of()),
    *[lambda amount, name=name: ([], verdict_of([figure(), figure(**{name: amount})])) for name in ("value", "band", "least", "most")],
    *[lambda amount, name=name: ([], verdict_of(caution={"value": 1, "limit": 1, name: amount})) for name in ("value", "limit")],
    *[lambda amount, name=name: ([], verdict_of(sets=[{"figures": [figure(), figure(**{name: amount})]}])) for name in ("value", "band")]])
def test_an_amount_past_any_pump(run, made, amount):
    """A million of anything; an answer of yes or no is no amount, and what was not read is none."""
    with pytest.raises(CalcError) as refused:
        expected, verdict = made(amount)
        run.unheld("service.proof", "check_amounts", plan={"tests": [{"expected": expected}]}, verdict=verdict)
    assert (refused.value.field, refused.value.code, refused.value.facts) == ("value", "too_large", {"most": 1e6})
    expected, verdict = made(999999)
    verdict["tests"][0]["figures"].append({"kind": "check", "value": "yes"})
    assert run.unheld("service.proof", "check_amounts", plan={"tests": [{"expected": expected}, {}]}, verdict=verdict) is None
