"""Which items a check has, in which order, and how far it is."""
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError
from calc.bay import rounds
from tests.unit.bay.logs import defect, record

PROFILE = {"schema": 1, "id": "a", "name": "Engine 1", "units": "US", "drive": "midship", "pump_stages": "1", "pressure_control": ""}


def row(id, place="panel", state="pumping", lists=("weekly",), fits=None, equipment=None):
    return {"id": id, "lists": list(lists), "place": place, "state": state, "fits": fits or {}, "equipment": equipment}


ROWS = [
    row("throttle"), row("tires", "round", "off"), row("oil", "engine", "off"), row("drains", "panel", "shut"), row("chocks", "round", "off"),
    row("lights", "cab", "running"), row("transfer", fits={"pump_stages": ["2"]}), row("relief", fits={"pressure_control": ["relief"]}),
    row("foam", equipment="foam"), row("yearly", lists=("yearly",)),
]


def items(run, profile=PROFILE, settings=None, name="weekly", rows=ROWS, after=()):
    return run("bay.rounds", "items", rows=rows, name=name, profile=profile, settings=settings or {}, after=list(after))


def test_order(run):
    """Engine off, then running, then pumping, then shut down; at one place all of it at once."""
    assert items(run)["items"] == ["tires", "chocks", "oil", "lights", "throttle", "relief", "foam", "drains"]


def test_the_rig_decides(run):
    """What the profile says otherwise is left out; what it does not say stays."""
    assert items(run)["left_out"] == [{"id": "transfer", "code": "fits"}]
    assert items(run, {**PROFILE, "pressure_control": "governor"})["left_out"] == [{"id": "transfer", "code": "fits"}, {"id": "relief", "code": "fits"}]
    assert items(run, None)["left_out"] == []


def test_care_after_use(run):
    """Care that belongs to dirty water, foam or frost is asked only after it, where it is walked to."""
    rows = [row("drains", "panel", "shut"), {**row("rinse"), "after": "water"}, {**row("bubbles"), "after": "foam"}, {**row("dry", state="shut"), "after": "frost"}]
    assert items(run, rows=rows)["items"] == ["drains"]
    assert items(run, rows=rows)["left_out"] == [{"id": id, "code": "after"} for id in ("rinse", "bubbles", "dry")]
    assert items(run, rows=rows, after=["water", "frost"])["items"] == ["rinse", "drains", "dry"]
    assert items(run, rows=rows, after=rounds.AFTER)["items"] == ["rinse", "bubbles", "drains", "dry"]


def test_not_on_this_rig(run):
    """Said once with a reason, for an item or for all of an equipment, it is asked no more."""
    no_foam = record("setting", "s1", item="foam", applies=False, reason="none fitted", limit=None)
    made = run("bay.rounds", "settings", records=[no_foam])
    assert made["foam"]["reason"] == "none fitted"
    assert {"id": "foam", "code": "setting"} in items(run, settings=made)["left_out"]
    back = record("setting", "s2", replaces=["s1"], item="foam", applies=True, reason="fitted in May", limit=None)
    assert "foam" in items(run, settings=run("bay.rounds", "settings", records=[back, no_foam]))["items"]


def test_two_settings_unseen_by_each_other(run):
    """The item stays on the list."""
    made = [record("setting", "s1", item="foam", applies=False, reason="", limit=None), record("setting", "s2", item="foam", applies=True, reason="", limit=None)]
    for records in (made, made[::-1]):
        assert run("bay.rounds", "settings", records=records)["foam"]["applies"] is True


def test_settings_whole(run):
    """Of two that nobody replaced: on the list if either has it, the first limit there is, the later's words, and both ids."""
    limit = {"value": 20, "to": None, "whose": "plate"}
    first = record("setting", "s1", item="foam", applies=True, reason="", limit=None, by="A. Roy", at_ms=1000)
    later = record("setting", "s2", item="foam", applies=False, reason="gone", limit=limit, by="B. Day", at_ms=2000)
    last = record("setting", "s3", item="foam", applies=False, reason="gone too", limit={**limit, "value": 9}, by="C. Low", at_ms=3000)
    assert run("bay.rounds", "settings", records=[later, last, first]) == {
        "foam": {"applies": True, "reason": "gone too", "limit": limit, "by": "C. Low", "at_ms": 3000, "ids": ["s1", "s2", "s3"]}}


@pytest.mark.parametrize("change", [{"place": "roof"}, {"state": "flying"}])
def test_an_item_that_is_nowhere(run, change):
    with pytest.raises(CalcError) as refusal:
        items(run.unheld, rows=[{**row("tires"), **change}])
    assert (refusal.value.field, refusal.value.code) == ("tires", "unknown")


def test_what_the_department_leaves_out(run):
    """Its own list goes before what fits the rig."""
    assert items(run, rows=[row("oil"), {**row("foam", fits={"drive": ["pto"]}), "left_out": "no foam"}])["left_out"] == [{"id": "foam", "code": "department"}]


def test_unknown_list(run):
    with pytest.raises(CalcError) as refusal:
        items(run, name="hourly")
    assert (refusal.value.field, refusal.value.code) == ("list", "unknown")


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(st.sampled_from(rounds.PLACES), st.sampled_from(rounds.STATES)), min_size=1, max_size=40))
def test_nobody_walks_twice(run, places):
    """Within one state of the engine each place comes once, and no state comes back."""
    rows = [row(f"i{count}", place, state) for count, (place, state) in enumerate(places)]
    where = [places[int(id[1:])] for id in items(run, rows=rows)["items"]]
    stops = [stop for count, stop in enumerate(where) if count == 0 or where[count - 1] != stop]
    assert len(stops) == len(set(stops))
    engine = [rounds.STATES.index(state) for _, state in stops]
    assert engine == sorted(engine)


def answer(id, item, says="good", round_id="c1", **more):
    return record("answer", id, **{"round": round_id, "item": item, "answer": says, "entry": None, "amount": None, **more})


BEGUN = record("round", "c1", list="weekly", items=["oil", "chocks", "lights"])


def test_halves_of_two_phones(run):
    """Two people do a half each: what is left is what neither did; where they differ, not good holds."""
    one = [BEGUN, answer("a1", "oil"), answer("a2", "chocks")]
    other = [BEGUN, answer("b1", "lights"), answer("b2", "chocks", "not_good")]
    assert run("bay.rounds", "progress", records=one, id="c1")["left"] == ["lights"]
    joined = run("bay.rounds", "progress", records=run("bay.records", "merged", one=one, other=other), id="c1")
    assert (joined["left"], joined["answers"]["chocks"]["answer"], joined["is_ended"]) == ([], "not_good", False)


def test_an_answer_taken_back(run):
    records = [BEGUN, answer("a1", "oil", "not_good"), answer("a2", "oil", "good", replaces=["a1"]), answer("x", "oil", "not_good", "other")]
    records.append(record("ended", "n", round="c1", took_s=300, hurried=0))
    joined = run("bay.rounds", "progress", records=records, id="c1")
    assert (joined["answers"]["oil"]["answer"], joined["left"], joined["is_ended"]) == ("good", ["chocks", "lights"], True)


@pytest.mark.parametrize("says", [("not_good", "good"), ("not_good", "not_here"), ("good", "not_here")])
def test_the_graver_of_two_answers_holds(run, says):
    """Not good before good before not on this rig, in whatever order they came."""
    records = [BEGUN, answer("a1", "oil", says[1]), answer("a2", "oil", says[0])]
    for log in (records, records[::-1]):
        told = run("bay.rounds", "progress", records=log, id="c1")
        assert (told["list"], told["answers"]["oil"]["answer"], told["left"]) == ("weekly", says[0], ["chocks", "lights"])


def test_the_end_of_another_check_is_none_of_this(run):
    records = [BEGUN, record("ended", "n", round="c2", took_s=300, hurried=0)]
    assert run("bay.rounds", "progress", records=records, id="c1")["is_ended"] is False


def test_no_such_check(run):
    with pytest.raises(CalcError) as refusal:
        run("bay.rounds", "progress", records=[defect("c1")], id="c1")
    assert (refusal.value.field, refusal.value.code) == ("id", "unknown")


@pytest.mark.parametrize(("took_s", "is_hurried"), [(1.9, True), (2, False), (None, False)])
def test_too_fast_to_be_true(run, took_s, is_hurried):
    """20 words are not even skimmed in under 2 s: 10 words a second, as on the cards."""
    assert run("bay.rounds", "hurried", answers=[{"item": "oil", "took_s": took_s}], words={"oil": 20}) == (["oil"] if is_hurried else [])
