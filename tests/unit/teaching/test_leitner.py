"""When a question comes back: properties of the Leitner rule over any history and any clock."""
import random

import pytest

from calc.base.errors import CalcError

CARDS = [f"{kind}:{which}" for kind in "abcdefg" for which in "123"]
WAITS = (0, 1, 2, 4, 8, 16, 32)  # days, each box twice as long: the Leitner rule as it is taught


def sitting(run, boxes, day, seed=1, cards=CARDS):
    return run.unheld("teaching.leitner", "sitting", cards=cards, boxes=boxes, day=day, seed=seed)


def after(run, row, is_right, day):
    return run.unheld("teaching.leitner", "after", row=row, is_right=is_right, day=day)


def test_right_waits_twice_as_long(run):
    """Right in a row: one day, then two, four, up to 32; wrong: back today."""
    row, day, waits = None, 100, []
    for _ in range(8):
        row = after(run, row, True, day)
        waits.append(row["due"] - day)
        day = row["due"]
    assert waits == [1, 2, 4, 8, 16, 32, 32, 32]
    assert after(run, row, False, day) == {"box": 0, "due": day}


def test_missed_comes_first(run):
    """What was missed is in the next sitting, before what is due and what is new, whenever that is and whatever the seed."""
    boxes = {"a:1": {"box": 0, "due": 100}, "b:1": {"box": 3, "due": 90}}
    for day in (100, 101, 400):
        for seed in range(20):
            assert sitting(run, boxes, day, seed)[:2] == ["a:1", "b:1"]


def test_first_evening_has_a_kind_each(run):
    """With nothing asked before, five kinds, and another five with another seed."""
    asked = [sitting(run, {}, 5, seed) for seed in range(10)]
    assert all(len({card[0] for card in cards}) == 5 for cards in asked)
    assert len({tuple(cards) for cards in asked}) > 5


def test_what_is_weak_and_when_it_comes_back(run):
    """A kind a row, by its least known question, the weakest first; what was never asked, is damaged or is no question now has none; a clock set back waits no longer."""
    def standing(boxes, day):
        return run.unheld("teaching.leitner", "standing", cards=CARDS, boxes=boxes, day=day)

    boxes = {"a:1": {"box": 3, "due": 104}, "a:2": {"box": 1, "due": 101}, "b:1": {"box": 0, "due": 90}, "c:1": {"box": 1, "due": 100},
             "d:1": {"box": 9, "due": 1}, "z:1": {"box": 0, "due": 90}}
    assert standing(boxes, 100) == [{"kind": "b", "box": 0, "days": 0}, {"kind": "c", "box": 1, "days": 0}, {"kind": "a", "box": 1, "days": 1}]
    assert standing({}, 100) == []
    assert standing({"a:1": {"box": 2, "due": 900}}, 100) == [{"kind": "a", "box": 2, "days": 0}]  # no box waits 800 days: the clock was set back
    with pytest.raises(CalcError) as refusal:
        standing(boxes, -1)
    assert refusal.value.field == "day"


def test_moved_clocks(run, python):
    """Over random evenings and clocks that jump both ways: five different cards, none due later than its box from the day it was asked, and after a jump back
    no card waits longer than its box."""
    chance = random.Random(19)
    for _ in range(200 if python == "cpython" else 20):
        boxes, day, missed = {}, chance.randrange(1000, 30000), set()
        for _ in range(12):
            cards = sitting(run, boxes, day, chance.randrange(1000))
            assert len(set(cards)) == 5
            assert len(missed & set(cards)) == min(len(missed), 5)
            for card in cards:
                is_right = chance.random() < 0.7
                boxes[card] = after(run, boxes.get(card), is_right, day)
                assert boxes[card]["due"] - day == WAITS[boxes[card]["box"]]
                (missed.discard if is_right else missed.add)(card)
            day = max(0, day + chance.choice([0, 1, 1, 2, 7, -1, -400, 400]))
            for card, row in boxes.items():
                waits = 0 if run.unheld("teaching.leitner", "is_due", row=row, day=day) else row["due"] - day
                assert waits <= WAITS[row["box"]]


def test_everything_comes_back(run):
    """A year of evenings, all right: no card is forgotten, and the last month asks none more than it must."""
    boxes = {}
    for day in range(1000, 1365):
        for card in sitting(run, boxes, day, day):
            boxes[card] = after(run, boxes.get(card), True, day)
    assert set(boxes) == set(CARDS)


@pytest.mark.parametrize("row", [None, 3, {}, {"box": 9, "due": 1}, {"box": "1", "due": 2}, {"box": -1, "due": 0}])
def test_damaged_is_new(run, row):
    """What a phone kept and no longer means anything counts as never asked."""
    assert "a:1" in sitting(run, {"a:1": row}, 10, cards=["a:1"])
    assert after(run, row, True, 10) == {"box": 1, "due": 11}


def test_refusals(run):
    """No cards, or a day that is none."""
    with pytest.raises(CalcError) as refusal:
        sitting(run, {}, 10, cards=[])
    assert refusal.value.field == "cards"
    with pytest.raises(CalcError) as refusal:
        sitting(run, {}, -1)
    assert refusal.value.field == "day"


@pytest.mark.parametrize(("on_ms", "offset_min", "day"), [
    (0, 0, 0), (86400000, 0, 1), (86399999, 0, 0),  # by hand: a day is 86,400,000 ms
    (1_000_000_000_000, -300, 11573), (1_000_000_000_000, 60, 11574),  # 9 Sep 2001 01:46 UTC, 11,574 days after 1970: still the 8th five hours west
])
def test_the_day_is_the_places(run, on_ms, offset_min, day):
    """Evening in one place is morning in another: a day is the phone's own."""
    assert run.unheld("teaching.leitner", "day_of", on_ms=on_ms, offset_min=offset_min) == day


@pytest.mark.parametrize(("on_ms", "offset_min", "day"), [(0, 0, 0), (86399999, 0, 0), (86400000, 0, 1), (86399999, 1, 1), (86400000, -1, 0), (50399999, 600, 0), (50400000, 600, 1), (1.7e12, 0, 19675)])
def test_the_day_of_a_place(run, on_ms, offset_min, day):
    """By hand: 86,400,000 ms a day; a place ahead of UTC has its new day sooner. 1.7e12 / 8.64e7 = 19,675.9."""
    assert run.unheld("teaching.leitner", "day_of", on_ms=on_ms, offset_min=offset_min) == day


def test_what_a_sitting_cannot_be_made_of(run):
    """No question at all, and no such day, each refused by its name."""
    for work, field, code in (
        (lambda: sitting(run, {}, 5, cards=[]), "cards", "empty"), (lambda: sitting(run, {}, -1), "day", "out_of_range"), (lambda: after(run, None, True, -1), "day", "out_of_range"),
        (lambda: run.unheld("teaching.leitner", "day_of", on_ms=-1, offset_min=0), "day", "out_of_range"),
    ):
        with pytest.raises(CalcError) as refusal:
            work()
        assert (refusal.value.field, refusal.value.code) == (field, code)


def test_a_rig_of_few_kinds(run):
    """Where there are fewer kinds than questions a kind comes again; where there are fewer questions, all of them come, once."""
    assert sorted(sitting(run, {}, 0, cards=["a:1", "a:2", "a:3", "b:1", "b:2"])) == ["a:1", "a:2", "a:3", "b:1", "b:2"]
    assert {card[0] for card in sitting(run, {}, 0, cards=["a:1", "a:2", "a:3", "a:4", "a:5", "a:6", "b:1"])} == {"a", "b"}
    assert sorted(sitting(run, {}, 0, cards=["a:1", "b:1"])) == ["a:1", "b:1"]


def test_another_kind_than_what_is_due(run):
    """With one kind due the new ones are of the others, while there are some."""
    cards = ["a:1", "a:2", "a:3", "b:1", "c:1", "d:1", "e:1"]
    for seed in range(10):
        assert sorted(sitting(run, {"a:1": {"box": 0, "due": 0}}, 0, seed, cards)) == ["a:1", "b:1", "c:1", "d:1", "e:1"]


@pytest.mark.parametrize(("day", "fits"), [(0, True), (1000000, True), (1000001, False)])
def test_the_days_there_are(run, day, fits):
    """From 1970 on, for longer than any phone's clock goes."""
    def standing():
        return run.unheld("teaching.leitner", "standing", cards=CARDS, boxes={}, day=day)

    if fits:
        assert standing() == []
    else:
        with pytest.raises(CalcError):
            standing()


def test_a_box_that_is_none(run):
    """There are seven boxes; what says an eighth was never asked, and goes to the second when it is right."""
    assert after(run, {"box": 7, "due": 5}, True, 5) == {"box": 1, "due": 6}
    assert after(run, {"box": 6, "due": 5}, True, 0) == {"box": 6, "due": 32}
