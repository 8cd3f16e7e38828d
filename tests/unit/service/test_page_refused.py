"""What of a service test as typed is refused or asked back, each at its place."""
import copy

import pytest

from calc.base.errors import CalcError
from tests.unit.service.made import of
from tests.unit.service.test_page import a_record, answered


@pytest.mark.parametrize(
    ("path", "value", "place", "code"),
    [
        (("conditions", "air_f"), "hot@US", "conditions.air_f", "not_a_number"),
        (("conditions", "lift_ft"), "-5@US", "conditions.lift_ft", "out_of_range"),
        (("conditions", "suction_lines"), "0", "conditions.suction_lines", "out_of_range"),
        (("rig", "tank"), "big@US", "rig.tank", "not_a_number"),
        (("tests", "governed", "values", "governed_rpm"), "fast", "tests.governed.governed_rpm", "not_a_number"),
        (("tests", "capacity", "attempts", 0, "sets", 0, "values", "discharge_psi"), "x@US", "tests.capacity.0.0.discharge_psi", "not_a_number"),
        (("tests", "capacity", "attempts", 0, "sets", 0, "values", "discharge_psi"), "-1@US", "tests.capacity.0.0.discharge_psi", "out_of_range"),
        (("tests", "capacity", "draft", "values", "discharge_psi"), "-1@US", "tests.capacity.draft.discharge_psi", "out_of_range"),
        (("tests", "capacity", "draft", "values", "pitot_psi"), ["99999@US"], "tests.capacity.draft.pitot_psi.0", "out_of_range"),
        (("conditions", "water_f"), "-50@US", "conditions.water_f", "out_of_range"),
        (("tests", "conditions"), {"values": {"water_end_f": "101@SI"}}, "tests.conditions.water_end_f", "out_of_range"),
        (("tests", "vacuum"), {"values": {"vacuum_reached_inhg": "31@US"}}, "tests.vacuum.vacuum_reached_inhg", "out_of_range"),
    ],
)
def test_problems(run, path, value, place, code):
    """What cannot be used is told at its place, counts as not read, and the rest is judged all the same."""
    record = copy.deepcopy(a_record())
    within = record
    for step in path[:-1]:
        within = within[step]
    within[path[-1]] = value
    told = answered(run, record)
    assert [(problem["place"], problem["code"]) for problem in told["problems"]] == [(place, code)]
    assert told["verdict"]["status"] == "not_proven"


@pytest.mark.parametrize(
    ("shown", "typed", "least", "most", "is_below"),
    [("US", "99999@US", "0", "200", False), ("SI", "-1@SI", "0", "1378", True), ("bar", "14@bar", "0", "13.78", False)],
)
def test_bounds_are_told_in_the_units_shown(run, shown, typed, least, most, is_below):
    """By hand: a pitot gauge that ends at 200 psi ends at 1,378.95 kPa and 13.7895 bar; what is told is inside it."""
    record = a_record()
    record["tests"]["capacity"]["draft"]["values"]["pitot_psi"] = [typed]
    (problem,) = answered(run, record, shown)["problems"]
    assert (problem["least_text"], problem["most_text"], problem["is_below"], problem["kind"]) == (least, most, is_below, "pitot")


@pytest.mark.parametrize(("rig", "conditions"), [({}, a_record()["conditions"]), (a_record()["rig"], {})])
def test_no_plan(run, rig, conditions):
    """Without a rating, or without a source, there is no plan, and it is said why."""
    told = answered(run, a_record(rig=rig, conditions=conditions, tests={}))
    assert told["plan"] is None
    assert told["problems"]


def test_a_blank_is_no_zero(run):
    """A blank reading is no reading."""
    record = a_record()
    record["tests"]["capacity"]["attempts"][0]["sets"][0]["values"]["discharge_psi"] = "@US"
    judged = of(answered(run, record)["verdict"], "capacity")
    assert judged["sets"][0]["figures"][1]["value"] is None and judged["status"] == "not_proven"


def test_an_error_of_an_instrument_that_is_none(run):
    """An accuracy that cannot be read is told, and the band it would have given is not guessed."""
    told = answered(run, a_record(accuracy={"discharge_psi": "little@US"}))
    assert told["problems"] == [{"place": "accuracy.discharge_psi", "code": "not_a_number"}]


@pytest.mark.parametrize("record", [None, [], "test", {}, {"standard": "us"}])
def test_no_record(run, record):
    """What is no record of a test is refused whole."""
    with pytest.raises(CalcError) as refused:
        answered(run, record)
    assert (refused.value.field, refused.value.code) == ("record", "damaged")


def with_sets(count, **values):
    """A record whose capacity run holds so many sets with one reading that cannot be."""
    record = a_record()
    one, = record["tests"]["capacity"]["attempts"][0]["sets"]
    bad = {"at_s": 0, "values": {**one["values"], **values}}
    record["tests"]["capacity"]["attempts"][0]["sets"] = [copy.deepcopy(bad) for _ in range(count)]
    return record


def test_a_test_full_of_what_cannot_be(run):
    """Impossible readings are told one by one; one taken before its run began is no test."""
    assert len(answered(run, with_sets(60, discharge_psi="-1@US"))["problems"]) == 60
    record = a_record()
    record["tests"]["capacity"]["attempts"][0]["sets"][0]["at_s"] = -1
    with pytest.raises(CalcError) as refused:
        answered(run, record)
    assert (refused.value.field, refused.value.code) == ("record", "damaged")


def test_a_suction_hose_of_no_length(run):
    """Suction hose that has no length is told at its field; the plan stands without it."""
    record = a_record()
    record["conditions"]["suction_length_ft"] = "0@US"
    told = answered(run, record)
    assert told["problems"] == [{"place": "conditions.suction_length_ft", "code": "out_of_range"}]
    assert of(told["plan"], "capacity")["gauge_text"] is None


def test_a_tip_that_is_none(run):
    """A reading on its way through a tip without a bore is told at its place, and the rest stands."""
    record = a_record()
    record["tests"]["capacity"]["draft"]["tip"]["tip_in"] = "0@US"
    told = answered(run, record)
    assert told["problems"] == [{"place": "tests.capacity.draft.tip_in", "code": "not_positive"}]
    assert "capacity" not in told["live"] and told["plan"]


def test_a_vacuum_that_rose_by_itself(run):
    """No pump gains vacuum with the primer off: the later reading is told as the wrong way round, at its place."""
    record = a_record()
    record["tests"]["vacuum"] = {"values": {"vacuum_reached_inhg": "23@US", "vacuum_after_inhg": "24@US"}}
    told = answered(run, record)
    assert told["problems"] == [{"place": "tests.vacuum.vacuum_after_inhg", "code": "wrong_way"}]
    assert of(told["verdict"], "vacuum")["status"] == "not_proven"


@pytest.mark.parametrize(("strainer", "codes"), [("12@US", ["deeper_than_water"]), ("6.1@US", ["deeper_than_water"]), ("6@US", []), ("1.5@SI", [])])
def test_a_strainer_deeper_than_its_water(run, strainer, codes):
    """12 ft under in 6 ft of water contradict each other: said at the field, and neither depth is met. Hand: 1.5 m is 4.9 ft."""
    record = a_record()
    record["conditions"]["strainer_ft"] = strainer
    told = answered(run, record)
    assert [(problem["place"], problem["code"]) for problem in told["problems"]] == [("conditions.strainer_ft", code) for code in codes]
    site = {figure["id"]: figure for figure in of(told["verdict"], "conditions")["figures"]}
    for name in ("depth_ft", "strainer_ft"):
        assert (site[name]["value"] is None) == bool(codes)


def test_a_tip_past_any_pump(run):
    """A file may bring a reading that is being entered at a tip of 150 in, by hand 29.84 x 150 x 150 x the root of 70 = 5.6 million gpm."""
    record = a_record()
    record["tests"]["capacity"]["draft"]["tip"]["tip_in"] = "150@US"
    told = answered(run, record, "SI")
    assert told["live"] == {} and told["problems"] == [{"place": "tests.capacity.draft.value", "code": "too_large"}]
