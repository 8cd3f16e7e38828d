"""The log as a set: merging in any order, twice or partly, and what is refused."""
import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError
from tests.unit.bay.logs import NOW_MS, decision, defect, logs, record, release


@settings(max_examples=40, deadline=None)
@given(made=logs(), seed=st.integers(0, 10**6), cut=st.integers(0, 14))
def test_two_phones_end_equal(run, made, seed, cut):
    """Whatever each has, in whatever order, twice or partly: after both have swapped all, the logs are one."""
    mixed = list(made)
    random.Random(seed).shuffle(mixed)
    one, other = mixed[:cut], mixed[max(0, cut - 3):]
    whole = run("bay.records", "merged", one=made, other=[])
    assert run("bay.records", "merged", one=one, other=other + other) == whole
    assert run("bay.records", "merged", one=other, other=one) == whole
    partly = run("bay.records", "merged", one=one, other=other[:2])
    assert run("bay.records", "merged", one=partly, other=mixed) == whole
    assert sorted(row["id"] for row in whole) == sorted(row["id"] for row in made)  # nothing is lost


def test_one_id_twice(run):
    """Two records with one id, which only a spoiled file has: every phone takes the same one."""
    one, other = defect("d1", seen="metal"), defect("d1", seen="water")
    assert run("bay.records", "merged", one=[one], other=[other]) == run("bay.records", "merged", one=[other], other=[one])
    answer = run("bay.records", "taken", arriving=[one, one, other], standing=[])
    assert (answer["add"], answer["change"], answer["same"]) == ([0], [2], 1)


@pytest.mark.parametrize(("change", "field", "code"), [
    ({"id": ""}, "id", "missing"),
    ({"id": 7}, "id", "not_text"),
    ({"rig_id": ""}, "rig_id", "missing"),
    ({"kind": "spell"}, "kind", "unknown"),
    ({"class": "broken"}, "class", "unknown"),
    ({"seen": "x" * 2001}, "seen", "too_long"),
    ({"at_ms": "noon"}, "at_ms", "not_a_number"),
    ({"at_ms": -1}, "at_ms", "out_of_range"),
    ({"replaces": "d2"}, "replaces", "not_a_list"),
    ({"replaces": [2]}, "replaces", "not_text"),
    ({"extra": 1}, "extra", "unknown_field"),
    ({"by": None}, "by", "not_text"),
])
def test_hostile_records(run, change, field, code):
    """A record that is none is refused by its place, field and reason; those beside it are taken."""
    answer = run("bay.records", "taken", arriving=[defect("d0"), {**defect("d1"), **change}], standing=[])
    assert answer["add"] == [0]
    assert answer["refused"] == [{"at": 1, "field": field, "code": code}]


@pytest.mark.parametrize(("clock", "refused"), [
    ({}, []), ({"clock": "run"}, []), ({"clock": "not_run"}, []), ({"clock": "fast"}, ["unknown"]),
    ({"reading": "not_read", "limit": "22 inHg or more, limit of the list"}, []), ({"reading": "guessed"}, ["unknown"]), ({"figures": ["engine_h 2301@US"]}, []), ({"figures": "2301"}, ["not_a_list"]), ({"limit": 22}, ["not_text"]), ({"limit": "2" * 2001}, ["too_long"])])
def test_the_clock_of_an_answer(run, clock, refused):
    """An answer may say whether its clock was run, that nothing could be read, and which limit held; those from before say nothing."""
    made = record("answer", "a", round="c1", item="prime_hold", answer="good", entry=None, amount=None, **clock)
    assert [row["code"] for row in run("bay.records", "taken", arriving=[made], standing=[])["refused"]] == refused


@pytest.mark.parametrize("arriving", [None, {}, "x", 3])
def test_no_list(run, arriving):
    with pytest.raises(CalcError) as refusal:
        run("bay.records", "taken", arriving=arriving, standing=[])
    assert (refusal.value.field, refusal.value.code) == ("arriving", "not_a_list")


@pytest.mark.parametrize("strange", [None, 4, [], "d1"])
def test_no_record(run, strange):
    assert run("bay.records", "taken", arriving=[strange], standing=[])["refused"] == [{"at": 0, "field": "record", "code": "not_a_record"}]


@pytest.mark.parametrize(("limit", "code"), [
    ({"value": 20, "to": None, "whose": "plate"}, None), ({"value": 20, "to": 10, "whose": "plate"}, "out_of_order"),
    ({"value": 20, "to": None}, "missing"), ({"value": True, "to": None, "whose": ""}, "not_a_number"), (20, "not_a_limit"), (None, None),
])
def test_own_limit(run, limit, code):
    """A rig's own limit says its figures and whose they are."""
    answer = run("bay.records", "taken", arriving=[record("setting", "s1", item="prime_pull", applies=True, reason="", limit=limit)], standing=[])
    assert [row["code"] for row in answer["refused"]] == ([code] if code else [])


@pytest.mark.parametrize(("repaired_by", "by", "is_taken"), [
    ("Moss", "Hart", True), ("Moss", " moss ", False), ("", "Hart", False), ("Moss", "", False), ("J  Moss", "j moss", False),
    ("Moss", "x", False), ("Moss", "xx", False), ("Moss", "12", False), ("M", "Hart", False), ("Éli", "Hé", True),
])
def test_a_release_has_two_names(run, repaired_by, by, is_taken):
    answer = run("bay.records", "taken", arriving=[release("z", ["d1"], ["d1"], repaired_by, by)], standing=[])
    assert (answer["add"] == [0]) is is_taken


def test_a_log_of_a_thousand(run):
    """A thousand records are read, merged and reported; what the phone needs for it is measured in tests/bench."""
    made = [defect(f"d{count:04d}", "note") if count % 10 else decision(f"e{count:04d}", "d0001", "report", [], at_ms=NOW_MS + count) for count in range(1000)]
    answers = [run("bay.records", "taken", arriving=made[start:start + 400], standing=[]) for start in (0, 400, 800)]
    assert sum(len(answer["add"]) for answer in answers) == 1000
    assert len(run("bay.standing", "of_rig", records=made)["defects"]) == 900
