"""Test results that come from elsewhere: whole ones are let in, damaged and hostile ones are refused by name."""
import copy
import json
import random

import pytest

from calc.base.errors import CalcError
from calc.service import file
from site_src.content import former, standards, units
from tests import service_records

US = service_records.US
WHOLE, FAILED, OPEN = service_records.a_record(), service_records.a_failed_record(), service_records.an_unfinished_record()
HOSTILE = (None, True, -1, 0, 1e300, 5e-324, "", "x", "<script>alert(1)</script>", "=1+1", "9" * 300, [], {}, [[]], {"x": {}}, [None] * 501)


def judged(run, record):
    return run("service.file", "judged", record=record, standards=standards.every(), former=former.every(), units=US)


@pytest.mark.parametrize(("record", "status"), [(WHOLE, "pass"), (FAILED, "fail"), (OPEN, "not_proven")])
def test_whole_records(run, record, status):
    """What the Test page writes comes back as it was, and says again what it said."""
    told = judged(run, record)
    assert told["claimed"] is None
    assert told["verdict"]["status"] == status
    assert {**told["record"], "result": None} == {**record, "result": None}
    assert (told["record"]["result"] is None) == (record["finished_ms"] is None)


@pytest.mark.parametrize("claim", [{"status": "pass"}, None, "pass", {"status": ["pass"]}, {}])
def test_a_claim_is_not_believed(run, claim):
    """A file that calls a failed test passed is read by its readings."""
    told = judged(run, {**FAILED, "result": claim})
    assert told["record"]["result"]["status"] == "fail"
    assert told["claimed"] == ("pass" if claim == {"status": "pass"} else "missing")


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"schema": 2}, "newer"), ({"schema": "1"}, "newer"), ({"id": ""}, "damaged"), ({"rig_name": 7}, "damaged"), ({"rig_id": None}, "damaged"),
        ({"begun_ms": "today"}, "damaged"), ({"finished_ms": -1}, "damaged"), ({"tests": []}, "damaged"), ({"odd": [[[[[[[[[[[[[[]]]]]]]]]]]]]]}, "damaged"),
        ({"equipment": [{"what": "Pitot"}]}, "damaged"), ({"notes": "n" * 2001}, "damaged"), ({"rig": {"meters": "9999999"}}, "damaged"),
        ({"standard": {"id": "us"}}, "damaged"),
    ],
)
def test_refused(run, changes, code):
    """A file of another kind, version or shape is refused."""
    with pytest.raises(CalcError) as refused:
        judged(run, {**WHOLE, **changes})
    assert (refused.value.field, refused.value.code) == ("file", code)


BASELINE = {"schema": 1, "rig_id": "rig-1", "rig_name": "Tollgate Engine 1",
            "baseline": {"at_ms": service_records.BEGUN_MS, "readings": [{"engine_rpm": "1000@US", "discharge_psi": "60@US"}, {"engine_rpm": "1500", "discharge_psi": "1034@SI"}]}}


def test_a_baseline_comes_back(run):
    """What the Check page writes is kept as it was."""
    assert run("service.file", "baseline", content=BASELINE, units=US) == BASELINE


def with_reading(**changes):
    return {"at_ms": 5, "readings": [{"engine_rpm": "1000", "discharge_psi": "60@US", **changes}]}


@pytest.mark.parametrize("given", [None, [], {}, {"schema": 1}, "baseline"])
def test_no_baseline(run, given):
    """What is no baseline is refused whole."""
    with pytest.raises(CalcError) as refused:
        run("service.file", "baseline", content=given, units=US)
    assert (refused.value.field, refused.value.code) == ("file", "not_a_test")


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"schema": 2}, "newer"), ({"rig_id": ""}, "damaged"), ({"rig_name": ["x"]}, "damaged"), ({"odd": 1}, "damaged"), ({"baseline": None}, "damaged"),
        ({"baseline": {"at_ms": None, "readings": []}}, "damaged"), ({"baseline": {"at_ms": 5, "readings": []}}, "damaged"),
        ({"baseline": {"at_ms": 5, "readings": [{"engine_rpm": "1000", "discharge_psi": "60"}] * 13}}, "damaged"),
        *[({"baseline": with_reading(**each)}, "damaged") for each in
          ({"engine_rpm": "0"}, {"engine_rpm": "99999"}, {"discharge_psi": "-5@US"}, {"discharge_psi": "60@nowhere"}, {"discharge_psi": 60},
           {"discharge_psi": "<b>"}, {"__proto__": "x"})],
    ],
)
def test_a_baseline_made_to_hurt(run, changes, code):
    """A baseline with anything strange in it is refused whole: a wrong one would hide a sick pump."""
    with pytest.raises(CalcError) as refused:
        run("service.file", "baseline", content={**BASELINE, **changes}, units=US)
    assert (refused.value.field, refused.value.code) == ("file", code)


def test_what_a_later_page_adds_is_kept(run):
    """A field that this version does not know goes along untouched."""
    added = {**WHOLE, "heard": 1_790_000_000_000, "events": [{"kind": "away", "s": 3, "wall": None, "turn": 1_790_000_000_001, "clocks": [{"test": "vacuum"}]}]}
    assert {**judged(run, added)["record"], "result": None} == {**added, "result": None}


@pytest.mark.parametrize("record", [None, 3, "text", [], {}, {"schema": 1, "name": "a rig's profile"}])
def test_no_test_at_all(run, record):
    """What is no test is called that."""
    with pytest.raises(CalcError) as refused:
        judged(run, record)
    assert (refused.value.field, refused.value.code) == ("file", "not_a_test")


def with_limit(*way):
    """The whole record with something else in a place of its standard."""
    *places, last, value = way
    record = copy.deepcopy(WHOLE)
    inner = record["standard"]
    for place in places:
        inner = inner[place]
    inner[last] = value
    return record


@pytest.mark.parametrize(
    ("record", "at"),
    [
        (with_limit("vacuum", "most_loss_inhg", 20), "standard.vacuum.most_loss_inhg"), (with_limit("runs", 0, "interval_s", 0.001), "standard.runs.interval_s"),
        (with_limit("runs", 0, "holds", 0, "hold_s", 60), "standard.runs.holds.hold_s"), (with_limit("runs", []), "standard.runs"),
        (with_limit("tests", ["capacity"]), "standard.tests"), (with_limit("tests", ["gauges"] * 500), "standard.tests"),
        (with_limit("unsure", "x"), "standard.unsure"), (with_limit("accuracy", {}), "standard.accuracy."), (with_limit("odd", 1), "standard.odd"),
        (with_limit("flow", "much"), "standard.flow"), (with_limit("vacuum", "most_loss_inhg", True), "standard.vacuum.most_loss_inhg"),
        (with_limit("vacuum", "most_loss_inhg", "10"), "standard.vacuum.most_loss_inhg"), (with_limit("vacuum", None), "standard.vacuum"),
    ],
)
def test_limits_of_a_file_do_not_count(run, record, at):
    """A test that brings any limit but our standard's is refused before it is worked out, and the limit is named."""
    with pytest.raises(CalcError) as refused:
        judged(run, record)
    assert (refused.value.field, refused.value.code) == ("file", "other_limits")
    assert refused.value.facts["at"].startswith(at)


def test_a_limit_written_by_another_phone(run):
    """The same limits in another order, or with another last digit, are the same limits."""
    record = copy.deepcopy(WHOLE)
    loss = record["standard"]["vacuum"]["most_loss_inhg"]
    record["standard"] = dict(sorted(record["standard"].items(), reverse=True))
    record["standard"]["vacuum"] = {**record["standard"]["vacuum"], "most_loss_inhg": loss * (1 + 1e-12)}
    assert judged(run, record)["verdict"]["status"] == "pass"


@pytest.mark.parametrize("standard", [{"id": "none", "kind": "annual"}, {"id": "us", "kind": "none"}, {"id": "constructor", "kind": "keys"}])
def test_a_standard_that_we_do_not_hold(run, standard):
    with pytest.raises(CalcError) as refused:
        judged(run, {**WHOLE, "standard": {**WHOLE["standard"], **standard}})
    assert (refused.value.code, refused.value.facts["at"]) == ("damaged", "standard")


def spots(value, found, path=()):
    """Every place in plain data."""
    for key in value if isinstance(value, dict) else range(len(value)) if isinstance(value, list) else ():
        found.append((*path, key))
        spots(value[key], found, (*path, key))
    return found


def damaged(pick):
    """A record with something hostile in one place, or with a part taken out."""
    record = copy.deepcopy(FAILED)
    *way, last = pick.choice(spots(record, []))
    inner = record
    for key in way:
        inner = inner[key]
    if pick.random() < 0.3:
        del inner[last]
    else:
        inner[last] = copy.deepcopy(pick.choice(HOSTILE))
    return record


@pytest.mark.parametrize("seed", range(12))
def test_damage_is_refused_or_harmless(run, seed):
    """Whatever stands wherever in a file: it is refused as a file, or judged to plain data; nothing else ever happens."""
    try:
        told = judged(run.unheld, damaged(random.Random(seed)))  # a name of no page in a place that takes any is let in
    except CalcError as error:
        assert error.field == "file", error
    else:
        json.dumps(told, allow_nan=False)


def test_much_damage_is_refused_or_harmless():
    """The same for 150 more, on one Python; a good part of them is refused."""
    refused = 0
    for seed in range(100, 250):
        try:
            json.dumps(file.judged(damaged(random.Random(seed)), standards.every(), former.every(), US), allow_nan=False)
        except CalcError as error:
            assert error.field == "file", error
            refused += 1
    assert 50 < refused < 150


@pytest.mark.parametrize(
    ("changes", "at"),
    [
        ({"rig": {"pump_rated": "much@US", "x" * 201: "1"}}, "rig"),     # a name longer than any
        ({"tests": {"capacity": {"attempts": [None] * 501}}}, "tests.capacity.attempts"),
        ({"conditions": {"x" * 9: {"deep": 1}}}, "conditions.xxxxxxxxx"),
        ({"equipment": [{"what": "Pitot", "serial": "", "calibrated": "", "lent": "yes"}]}, "equipment.lent"),
    ],
)
def test_the_place_of_the_damage_is_told(run, changes, at):
    """What is damaged is named by its place."""
    with pytest.raises(CalcError) as refused:
        judged(run, {**WHOLE, **changes})
    assert (refused.value.code, refused.value.facts) == ("damaged", {"at": at})


def test_a_reading_from_before_its_run(run):
    """A record that passes by its shape and still cannot be judged is damaged."""
    record = copy.deepcopy(WHOLE)
    record["tests"]["capacity"]["attempts"][0]["sets"][0]["at_s"] = -1
    with pytest.raises(CalcError) as refused:
        judged(run, record)
    assert (refused.value.field, refused.value.code, refused.value.facts) == ("file", "damaged", {"at": "record"})


@pytest.mark.parametrize(("count", "fits"), [(0, False), (1, True), (12, True), (13, False)])
def test_how_many_readings_a_baseline_may_have(run, count, fits):
    """One is enough, and a dozen are read; where there are too many or none, it is told that they are what is wrong."""
    given = copy.deepcopy(BASELINE)
    given["baseline"]["readings"] = given["baseline"]["readings"][:1] * count
    if fits:
        assert run("service.file", "baseline", content=given, units=US) == given
    else:
        with pytest.raises(CalcError) as refused:
            run("service.file", "baseline", content=given, units=US)
        assert (refused.value.field, refused.value.code, refused.value.facts["at"]) == ("file", "damaged", "baseline.readings")


def test_a_reading_of_a_baseline_that_is_none(run):
    """Told to lie among the readings, whichever it is."""
    with pytest.raises(CalcError) as refused:
        run("service.file", "baseline", content={**BASELINE, "baseline": with_reading(engine_rpm="0")}, units=US)
    assert refused.value.facts == {"at": "baseline.readings"}


@pytest.mark.parametrize("at_ms", [0, file.LATEST_MS])
def test_the_moments_a_baseline_may_be_of(run, at_ms):
    given = copy.deepcopy(BASELINE)
    given["baseline"]["at_ms"] = at_ms
    assert run("service.file", "baseline", content=given, units=US) == given


def names_within(data):
    """Every name in plain data, at any depth."""
    if isinstance(data, dict):
        return set(data).union(*map(names_within, data.values()))
    return set().union(*map(names_within, data)) if isinstance(data, list) else set()


@pytest.mark.parametrize("record", [WHOLE, FAILED, OPEN])
def test_no_text_is_written_for_a_verdict(run, record):
    """Two thousand tests are judged for one report, and few of their figures are read."""
    assert not [name for name in names_within(judged(run, record)["verdict"]) if name.endswith("_text")]


@pytest.mark.parametrize("system", ["US", "SI"])
@pytest.mark.parametrize("entry", ["governed", "tip"])
def test_amounts_past_any_pump(run, system, entry):
    """No engine turns 2 million times a minute, and a tip of 100 in passes 30 x 100 x 100 x the root of some 50 psi, 2 million gpm: refused in whatever units."""
    record = copy.deepcopy(WHOLE)
    if entry == "governed":
        record["rig"]["governed"] = "2000000@US"
    else:
        record["tests"]["capacity"]["attempts"][0]["tip"]["tip_in"] = "100@US"
    with pytest.raises(CalcError) as refused:
        run("service.file", "judged", record=record, standards=standards.every(), former=former.every(), units=units.fine(system))
    assert (refused.value.code, refused.value.facts["at"]) == ("damaged", "value")


def test_a_one_is_no_true(run):
    """Python holds 1 and True for the same; a limit is not."""
    record = with_limit("runs", 0, "share_percent", 1)
    ours = copy.deepcopy(standards.every())
    ours["us"]["annual"]["runs"][0]["share_percent"] = True
    with pytest.raises(CalcError) as refused:
        run("service.file", "judged", record=record, standards=ours, former=[], units=US)
    assert refused.value.code == "other_limits"
