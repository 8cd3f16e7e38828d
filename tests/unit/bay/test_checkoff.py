"""The check-off sheet: what both signed stands, phones end equal, a changed row loses its signatures."""
import random

import pytest

from calc.base.errors import CalcError
from calc.bay.record_fields import LATEST_MS

DAY_MS = 86400000


def row(id="a", at_ms=DAY_MS, **more):
    return {"id": id, "trainee": "Ann Bell", "task": "road", "at_ms": at_ms, "date": "2026-11-29", "rig": "Engine 1", "faults": "", "took_s": None,
            "on_rig": True, "by_trainee": "", "by_officer": "", **more}


def signed(id="a", at_ms=DAY_MS, **more):
    return row(id, at_ms, by_trainee="Ann Bell", by_officer="Cal Dunn", **more)


def test_phones_end_equal(run):
    """In any order, twice or partly: after both have swapped all, the sheets are one, and what is no record is counted."""
    made = [signed("a"), row("b", 2 * DAY_MS), row("c", 3 * DAY_MS, task="draft"), signed("d", 2 * DAY_MS, task="draft")]
    whole = run("bay.checkoff", "merged", one=made, other=[])
    assert [record["id"] for record in whole["records"]] == ["a", "b", "d", "c"] and whole["refused"] == 0
    for seed in range(20):
        mixed = random.Random(seed).sample(made, 4)
        assert run("bay.checkoff", "merged", one=mixed[:seed % 5], other=mixed + [mixed[0]]) == whole
    spoiled = row("a", faults="x")
    assert run("bay.checkoff", "merged", one=[made[0]], other=[spoiled])["records"] == run("bay.checkoff", "merged", one=[spoiled], other=[made[0]])["records"]
    assert run("bay.checkoff", "merged", one=made, other=[3, {"id": "x"}]) == {"records": whole["records"], "refused": 2}


def test_what_both_signed_stands(run):
    """A later entry that is not signed by both stands beside it, and one that is takes its place; names by letters alone."""
    def of(*records):
        return next(each for each in run("bay.checkoff", "standing", records=list(records), trainee=" ann  bell") if each["task"] == "road")

    first, later, second = signed("a"), row("b", 2 * DAY_MS), signed("c", 3 * DAY_MS)
    assert of() == {"task": "road", "signed": None, "open": None, "earlier": 0, "last_ms": 0}
    assert of(later) == {"task": "road", "signed": None, "open": later, "earlier": 0, "last_ms": 2 * DAY_MS}
    assert of(later, first) == {"task": "road", "signed": first, "open": later, "earlier": 0, "last_ms": 2 * DAY_MS}
    assert of(second, later, first) == {"task": "road", "signed": second, "open": None, "earlier": 1, "last_ms": 3 * DAY_MS}
    assert of(signed("e", trainee="Eve Fox")) == of(), "another's row is not hers"


def test_a_changed_row_is_signed_again(run):
    """A signature is under what it signed: the officer may add hers, but new words let an earlier one fall away."""
    before = row(by_trainee="Ann Bell")
    assert run("bay.checkoff", "entered", before=before, row=signed("b")) == signed("b")
    assert run("bay.checkoff", "entered", before=before, row=row("b", by_trainee="Ann Bell", faults="No air"))["by_trainee"] == ""
    assert run("bay.checkoff", "entered", before=None, row=signed("b")) == signed("b")


def test_a_clock_that_is_behind_leaves_nothing_open(run):
    """The officer's phone is a year slow: what he signs comes after what it was signed under, and no half-signed row stands beside it."""
    hers = row("a", 400 * DAY_MS, by_trainee="Ann Bell")
    his = run("bay.checkoff", "entered", before=hers, row=signed("b", DAY_MS), last_ms=hers["at_ms"])
    assert his == signed("b", hers["at_ms"] + 1)
    [road] = [each for each in run("bay.checkoff", "standing", records=[hers, his], trainee="Ann Bell") if each["task"] == "road"]
    assert (road["signed"], road["open"]) == (his, None)
    latest = run("bay.checkoff", "entered", before=None, row=signed("c"), last_ms=LATEST_MS)
    assert latest["at_ms"] == LATEST_MS


@pytest.mark.parametrize("signer", ["by_trainee", "by_officer"])
def test_nobody_signs_without_a_day(run, signer):
    """A row without a date may be kept while nobody has signed it; a signature wants the day."""
    assert run("bay.checkoff", "entered", before=None, row=row(date=""))["date"] == ""
    with pytest.raises(CalcError) as refusal:
        run("bay.checkoff", "entered", before=None, row=row(date="", **{signer: "Cal Dunn"}))
    assert (refusal.value.field, refusal.value.code) == ("date", "undated")


@pytest.mark.parametrize(("change", "field", "code"), [
    ({"trainee": " "}, "trainee", "missing"), ({"id": ""}, "id", "missing"), ({"faults": 7}, "faults", "not_text"),
    ({"faults": "x" * 401}, "faults", "too_long"), ({"task": "ladder"}, "task", "unknown"), ({"on_rig": 1}, "on_rig", "unknown"),
    ({"at_ms": "noon"}, "at_ms", "not_a_number"), ({"at_ms": -1}, "at_ms", "out_of_range"), ({"took_s": 86401}, "took_s", "out_of_range"),
    ({"took_s": True}, "took_s", "not_a_number"), ({"score": 9}, "score", "unknown_field"), ({"by_officer": "."}, "by_officer", "missing"),
    ({"by_officer": "ann BELL"}, "by_officer", "same_name"), ({"by_trainee": "A. Bell", "by_officer": "a. bell "}, "by_officer", "same_name"),
    ({"by_trainee": "A. Bell", "by_officer": "Ann Bell"}, "by_officer", "same_name"),
])
def test_what_is_no_record(run, change, field, code):
    """A wrong field, an unknown one, and a trainee who signs as the officer are refused by name."""
    with pytest.raises(CalcError) as refused:
        run.unheld("bay.checkoff", "entered", before=None, row={**row(), **change})
    assert (refused.value.field, refused.value.code) == (field, code)


@pytest.mark.parametrize(("record", "field", "code"), [(3, "record", "not_a_record"), ({"id": "a"}, "trainee", "missing")])
def test_what_is_none_at_all(run, record, field, code):
    """What has no fields is refused too."""
    with pytest.raises(CalcError) as refused:
        run.unheld("bay.checkoff", "check", record=record)
    assert (refused.value.field, refused.value.code) == (field, code)


def test_the_times_this_phone_has(run):
    """Whole runs of the task alone, the newest three; a run's own count before its beginning and end."""
    def made(began_ms, **more):
        return {"title": "Back to road", "began_ms": began_ms, "ended_ms": began_ms + 90900, "took_s": None, "is_whole": True, **more}

    runs = [made(1000), made(4000, took_s=30.5), made(2000), made(3000), made(9000, is_whole=False), made(8000, title="Frost"), made(7000, took_s=0)]
    assert run("bay.checkoff", "times", runs=runs, titles=["Back to road"]) == [  # by hand: 90.9 s is 1 min 30 s gone by
        {"took_s": 30, "began_ms": 4000}, {"took_s": 90, "began_ms": 3000}, {"took_s": 90, "began_ms": 2000}]


@pytest.mark.parametrize("field", list(row()))
def test_every_field_is_wanted(run, field):
    with pytest.raises(CalcError) as refused:
        run.unheld("bay.checkoff", "entered", before=None, row={name: value for name, value in row().items() if name != field})
    assert (refused.value.field, refused.value.code) == (field, "missing")


@pytest.mark.parametrize("field", ["id", "trainee", "date", "rig", "faults", "by_trainee", "by_officer"])
def test_every_text_is_one_of_400_letters_at_most(run, field):
    assert run.unheld("bay.checkoff", "entered", before=None, row=row(**{field: "no" * 200}))[field]
    for value, code in ((7, "not_text"), ("x" * 401, "too_long")):
        with pytest.raises(CalcError) as refused:
            run.unheld("bay.checkoff", "entered", before=None, row=row(**{field: value}))
        assert (refused.value.field, refused.value.code) == (field, code)


@pytest.mark.parametrize("field", ["date", "rig", "faults", "took_s", "on_rig"])
def test_whatever_was_signed_under_other_words_falls_away(run, field):
    """Both signatures, if both were given before; one that is new stays."""
    changed = signed("b", **{field: {"took_s": 60, "on_rig": False}.get(field, "other")})
    fresh = run("bay.checkoff", "entered", before=signed(), row=changed)
    assert (fresh["by_trainee"], fresh["by_officer"]) == ("", "")
    fresh = run("bay.checkoff", "entered", before=row(by_trainee="Ann Bell"), row=changed)
    assert (fresh["by_trainee"], fresh["by_officer"]) == ("", "Cal Dunn")


def test_a_day_is_the_longest(run):
    assert run("bay.checkoff", "entered", before=None, row=row(took_s=86400))["took_s"] == 86400
