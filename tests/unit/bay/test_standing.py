"""A rig's status from its log, by one rule."""
import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError
from tests.unit.bay.logs import DAY_MS, NOW_MS, decision, defect, logs, record, release


def standing(run, *records):
    return run("bay.standing", "of_rig", records=list(records))


def test_no_record(run):
    assert standing(run) == {"state": "in_service", "since_ms": None, "stops_pump": False, "is_waiting": False, "defects": []}


@pytest.mark.parametrize(("rank", "scope", "state", "stops_pump"), [
    ("out_of_service", "apparatus", "out_of_service", True),
    ("out_of_service", "pump", "pump_out", True),
    ("out_of_service", "foam", "restricted", False),
    ("out_of_service", "aerial", "restricted", False),
    ("restricted", "pump", "restricted", False),
    ("report", "pump", "open_items", False),
    ("note", "apparatus", "open_items", False),
])
def test_class_and_scope(run, rank, scope, state, stops_pump):
    """A rig is as its worst open defect."""
    answer = standing(run, defect("d1", rank, scope), defect("d2", "note", "pump"))
    assert (answer["state"], answer["stops_pump"], len(answer["defects"])) == (state, stops_pump, 2)
    assert [(row["limits"], row["decided_by"], row["decided_ms"]) for row in answer["defects"]] == [("", None, None)] * 2


def test_worst_first(run):
    answer = standing(run, defect("a", "note"), defect("b", "restricted"), defect("c"), defect("d", scope="apparatus", at_ms=NOW_MS + 5))
    assert [row["id"] for row in answer["defects"]] == ["d", "c", "b", "a"]
    assert answer["since_ms"] == NOW_MS + 5


def test_an_officer_decides(run):
    """The decision holds in place of the proposed class, with who made it."""
    answer = standing(run, defect("d1"), decision("e1", "d1", "restricted", ["d1"], limits="no drafting", by="Lane"))
    assert answer["state"] == "restricted"
    assert [answer["defects"][0][name] for name in ("limits", "decided_by", "decided_ms")] == ["no drafting", "Lane", NOW_MS]


def test_two_officers_unseen_by_each_other(run):
    """The stricter holds, whichever clock is later, until one has seen both."""
    milder = decision("e1", "d1", "note", ["d1"], at_ms=NOW_MS + DAY_MS)
    stricter = decision("e2", "d1", "out_of_service", ["d1"])
    assert standing(run, defect("d1"), milder, stricter)["state"] == "pump_out"
    assert standing(run, defect("d1"), milder, stricter, decision("e3", "d1", "report", ["e1", "e2"]))["state"] == "open_items"


def test_repaired_waits_for_release(run):
    repair = record("repair", "f1", by="Moss", defects=["d1"], done="seal replaced", parts="", hours="3")
    answer = standing(run, defect("d1"), repair)
    assert (answer["state"], answer["is_waiting"], answer["defects"][0]["repaired_by"]) == ("pump_out", True, "Moss")
    assert standing(run, defect("d1"), defect("d2"), repair)["is_waiting"] is False


def test_release_closes(run):
    answer = standing(run, defect("d1"), decision("e1", "d1", "restricted", ["d1"]), release("z", ["d1"], ["d1", "e1"]))
    assert (answer["state"], answer["defects"]) == ("in_service", [])


@pytest.mark.parametrize("more", [
    release("z", ["d1"], []),  # saw no opinion
    release("z", ["d2"], ["d2"]),  # of another defect
    release("z", ["d1"], ["d1"], repaired_by="Hart"),  # one name twice
])
def test_what_does_not_release(run, more):
    assert run.unheld("bay.standing", "of_rig", records=[defect("d1"), more])["state"] == "pump_out"


def test_a_decision_that_the_release_had_not_seen(run):
    """It keeps the defect open until somebody has seen it."""
    late = decision("e1", "d1", "out_of_service", ["d1"])
    assert standing(run, defect("d1"), release("z", ["d1"], ["d1"]), late)["state"] == "pump_out"
    assert standing(run, defect("d1"), release("z", ["d1"], ["d1"]), late, release("zz", ["d1"], ["e1"]))["state"] == "in_service"


def test_opinions_that_replace_each_other(run):
    """A spoiled file cannot close a defect without a release."""
    answer = standing(run, defect("d1"), decision("e1", "d1", "note", ["d1", "e2"]), decision("e2", "d1", "note", ["d1", "e1"]))
    assert answer["state"] == "pump_out"


def test_withdrawn(run):
    """A defect written at the wrong rig counts no more; a release that is withdrawn leaves its defect open."""
    assert standing(run, defect("d1"), record("withdrawn", "w", replaces=["d1"], reason="wrong rig"))["state"] == "in_service"
    answer = standing(run, defect("d1"), release("z", ["d1"], ["d1"]), record("withdrawn", "w", replaces=["z"], reason="leaks again"))
    assert answer["state"] == "pump_out"


WITHDRAWN = record("withdrawn", "w", replaces=["d1"], reason="wrong rig")


@pytest.mark.parametrize(("rank", "scope"), [("out_of_service", "pump"), ("out_of_service", "apparatus"), ("out_of_service", "foam"), ("restricted", "pump")])
def test_what_an_officer_decided_is_not_withdrawn(run, rank, scope):
    """Only a release ends it, whether the withdrawal or the decision came first, and though the decision itself is withdrawn."""
    decided = decision("e1", "d1", rank, ["d1"], scope, at_ms=NOW_MS + DAY_MS)
    no_decision = record("withdrawn", "v", replaces=["e1"], reason="wrong rig")
    for records in ((defect("d1"), decided, WITHDRAWN), (WITHDRAWN, decided, defect("d1")), (defect("d1"), decided, WITHDRAWN, no_decision)):
        answer = standing(run, *records)
        assert [(row["class"], row["may_withdraw"]) for row in answer["defects"]] == [(rank, False)]
    assert standing(run, defect("d1"), decided, WITHDRAWN, release("z", ["d1"], ["d1", "e1"]))["defects"] == []


def test_what_nobody_decided_may_be_withdrawn(run):
    """So may one that an officer made a note."""
    assert standing(run, defect("d1"))["defects"][0]["may_withdraw"] is True
    assert standing(run, defect("d1"), decision("e1", "d1", "note", ["d1"]))["defects"][0]["may_withdraw"] is True
    assert standing(run, defect("d1"), decision("e1", "d1", "note", ["d1"]), WITHDRAWN)["defects"] == []


@pytest.mark.parametrize("change", [{"by": ""}, {"by": "x"}, {"by": "12"}, {"reason": " "}])
def test_a_withdrawal_has_a_name_and_a_reason(run, change):
    """A slip of a finger withdraws nothing."""
    assert standing(run, defect("d1"), {**WITHDRAWN, **change})["state"] == "pump_out"


@settings(max_examples=60, deadline=None)
@given(made=logs(), seed=st.integers(0, 10**6))
def test_no_order_and_no_clock_changes_it(run, made, seed):
    """Any order, any record twice, any clock up to a day wrong: the same state, defects and classes."""
    dice = random.Random(seed)
    mixed = [{**row, "at_ms": row["at_ms"] + dice.randint(-DAY_MS, DAY_MS)} for row in made]
    dice.shuffle(mixed)
    one, other = standing(run, *made), standing(run, *mixed)
    assert (one["state"], one["stops_pump"], one["is_waiting"]) == (other["state"], other["stops_pump"], other["is_waiting"])
    assert {row["id"]: (row["class"], row["scope"], row["heads"]) for row in one["defects"]} \
        == {row["id"]: (row["class"], row["scope"], row["heads"]) for row in other["defects"]}
    assert standing(run, *run("bay.records", "merged", one=made, other=made[::-1])) == one


@settings(max_examples=60, deadline=None)
@given(made=logs())
def test_only_a_release_or_a_withdrawal_closes(run, made):
    """Without either every defect is open."""
    live = [row for row in made if row["kind"] not in ("release", "withdrawn")]
    assert len(standing(run, *live)["defects"]) == sum(row["kind"] == "defect" for row in live)


def of_phone(id, state="in_service", overdue=0, open=0, next_day=None):
    return {"id": id, "state": state, "overdue": overdue, "open": open, "next_day": next_day}


def test_rigs_worst_first(run):
    """A rig that is limited comes before one that is late, a late one before one with defects, then by the day, an undated one last."""
    rigs = [of_phone("undated"), of_phone("next", next_day=20600), of_phone("soon", next_day=20570), of_phone("open", open=2), of_phone("later", overdue=1),
            of_phone("late", overdue=3), of_phone("pump", "pump_out"), of_phone("out", "out_of_service", next_day=20570), of_phone("items", "open_items", open=1)]
    wanted = ["out", "pump", "items", "late", "later", "open", "soon", "next", "undated"]  # by hand, from the rule
    assert run("bay.standing", "worst_first", rigs=rigs) == wanted
    assert run("bay.standing", "worst_first", rigs=rigs[::-1]) == wanted
    with pytest.raises(CalcError) as refusal:
        run.unheld("bay.standing", "worst_first", rigs=[of_phone("x", "asleep")])
    assert (refusal.value.field, refusal.value.code) == ("state", "unknown")


HOUR_MS = DAY_MS // 24
OUT, BACK = defect("d1"), release("r1", ["d1"], ["d1"], at_ms=NOW_MS + 5 * DAY_MS)


@pytest.mark.parametrize(("made", "days"), [
    ([], 0),
    ([OUT], 10),  # still out: from the tag to the day it is looked at
    ([OUT, BACK], 5),
    ([OUT, decision("e1", "d1", "restricted", ["d1"], at_ms=NOW_MS + 2 * DAY_MS)], 2),  # limits only from then on
    ([defect("d1", "restricted"), decision("e1", "d1", "out_of_service", ["d1"], at_ms=NOW_MS + 4 * DAY_MS)], 6),
    ([OUT, BACK, defect("d2", scope="apparatus", at_ms=NOW_MS + 3 * DAY_MS), release("r2", ["d2"], ["d2"], at_ms=NOW_MS + 7 * DAY_MS)], 7),  # 0 to 5 and 3 to 7
    ([OUT, BACK, defect("d2", at_ms=NOW_MS + 8 * DAY_MS)], 7),  # 0 to 5 and 8 to 10
    ([OUT, record("withdrawn", "w1", replaces=["d1"], reason="other engine")], 0),
    ([defect("d1", scope="foam"), defect("d2", "report")], 0),  # neither takes the rig or its pump out
    ([defect("d1", at_ms=NOW_MS - 9 * DAY_MS)], 10),  # from before the time that is looked at
    ([defect("d1", at_ms=NOW_MS + 30 * DAY_MS)], 0),  # dated ahead
    ([OUT, release("r1", ["d1"], ["d1"], at_ms=NOW_MS - DAY_MS)], 0),  # back before it went out: a clock was wrong
    ([OUT, release("r1", ["d1"], [], at_ms=NOW_MS + DAY_MS)], 10),  # it saw nothing of what holds
    ([decision("e9", "none", "out_of_service", [])], 0),  # of no defect that is here
    ([OUT, *[decision(f"e{days}", "d1", "note", ["d1"], at_ms=NOW_MS + days * DAY_MS) for days in (2, 5)]], 2),  # until the first that saw it
    ([OUT, decision("e1", "d1", "out_of_service", ["d1", "e2"]), decision("e2", "d1", "out_of_service", ["e1"])], 10),  # each saw the other: nobody released it
])
def test_days_out(run, made, days):
    """By hand, of ten days from the moment the first defect was written."""
    for order in (made, made[::-1]):
        assert run("bay.standing", "out_ms", records=order, from_ms=NOW_MS, on_ms=NOW_MS + 10 * DAY_MS) == days * DAY_MS


def test_days_out_of_a_time_that_ends_before_it_begins(run):
    with pytest.raises(CalcError) as refusal:
        run("bay.standing", "out_ms", records=[], from_ms=NOW_MS, on_ms=NOW_MS - 1)
    assert (refusal.value.field, refusal.value.code, refusal.value.facts) == ("on_ms", "too_small", {"least": NOW_MS})
    assert run("bay.standing", "out_ms", records=[defect("d1")], from_ms=NOW_MS, on_ms=NOW_MS) == 0  # none of no time


@settings(max_examples=60, deadline=None)
@given(made=logs())
def test_out_now_and_out_by_time_agree(run, made):
    """A rig that is out of service by its status is out in the hour that ends the log, and one that is not is in service there."""
    on_ms = NOW_MS + 40 * DAY_MS  # after every record
    is_out = standing(run, *made)["state"] in ("out_of_service", "pump_out")
    assert run("bay.standing", "out_ms", records=made, from_ms=on_ms - HOUR_MS, on_ms=on_ms) == (HOUR_MS if is_out else 0)


def halt(id="h1", **more):
    """The defect that a card wrote when the rig moved."""
    return defect(id, scope="apparatus", origin="halt", by="", **more)


@pytest.mark.parametrize("then", [
    [],
    [decision("e1", "h1", "note", ["h1"])],
    [decision("e1", "h1", "note", ["h1"]), decision("e2", "h1", "report", ["h1", "e1"])],
    [record("withdrawn", "w1", replaces=["h1"], reason="nothing there")],
    [defect("d1"), release("r1", ["d1"], ["d1"])],
    [decision("e1", "h1", "note", ["h1"]), record("withdrawn", "w1", by="", replaces=["h1"], reason="slip", at="halt")],
])
def test_a_rig_that_moved_stays_out(run, then):
    """No milder decision, no withdrawal from the list and no release of another defect ends it (order: until a technician has found the cause)."""
    for order in ([halt(), *then], [*reversed(then), halt()]):
        answer = standing(run, *order)
        assert (answer["state"], answer["stops_pump"]) == ("out_of_service", True)
        assert (answer["defects"][0]["id"], answer["defects"][0]["may_withdraw"], answer["defects"][0]["origin"]) == ("h1", False, "halt")


@pytest.mark.parametrize("then", [
    [release("r1", ["h1"], ["h1"])],
    [decision("e1", "h1", "note", ["h1"]), release("r1", ["h1"], ["h1", "e1"])],
    [record("withdrawn", "w1", by="", replaces=["h1"], reason="slip", at="halt")],
])
def test_what_ends_a_stop_of_a_rig_that_moved(run, then):
    """Its release by two names, or the slip said at the stop itself, which needs no name."""
    assert standing(run, halt(), *then)["state"] == "in_service"


def test_a_slip_at_a_stop_ends_nothing_else(run):
    """The word of a stop takes back that stop's defect alone."""
    assert standing(run, defect("d1"), record("withdrawn", "w1", replaces=["d1"], reason="slip", at="halt"))["state"] == "pump_out"
