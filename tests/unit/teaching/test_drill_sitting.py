"""A sitting of the drill: which questions a rig has, which five are asked, and what an answer is worth."""
import pytest

from calc.base.errors import CalcError
from site_src.content import catalogue, units
from tests.unit.teaching import lines
from tests.unit.teaching.lines import CROSSLAY, GUN

DRILL, US = "teaching.drill", units.shown_in("US")
WATER = ["tip", "floors", "lines", "colors", "net:hydrant", "net:draft", "vacuum", "first_look"]
SIGNS = ["lamps", "proves:engaged", "proves:ok", "proves:throttle"]
DAY_MS = 86400000
TYPED = {"answer": {"way": "typed", "quantity": "pressure", "value": 170, "within": 5},
         "habits": [{"code": "far", "value": 150}, {"code": "near", "value": 159}, {"code": "other", "value": 200}]}
CHOSEN = {"answer": {"way": "chosen", "options": ["1", "2", "3"], "right": "2"}, "habits": [{"code": "one_off", "value": "3"}]}


def ground(*beds, **rig):
    return lines.ground(*beds, tips=[tip for tip in catalogue.tip_choices() if tip["family"] == units.family("US")], **rig)


@pytest.mark.parametrize(("beds", "rig", "names"), [
    ([], {}, WATER + SIGNS),  # a rig is a midship pump where nothing else is said
    ([], {"drive": "midship"}, WATER + SIGNS), ([], {"drive": "rear_shaft"}, WATER + SIGNS), ([], {"drive": "pto"}, WATER), ([], {"drive": "front"}, WATER),
    ([], {"drive": "pto", "tank": "750@US"}, WATER),  # a tank, and nothing that draws on it
    ([CROSSLAY], {"drive": "pto"}, ["pump:0", "friction:attack-1.75", *WATER]),
    ([CROSSLAY], {"drive": "pto", "tank": "750@US", "pump_rated": "1500@US"}, ["pump:0", "friction:attack-1.75", *WATER, "tank", "rated"]),
    ([{**CROSSLAY, "hose": "none"}, CROSSLAY, GUN], {"drive": "pto"}, ["pump:1", "pump:2", "friction:attack-1.75", *WATER, "gauges"]),
])
def test_cards(run, beds, rig, names):
    """Of what the rig has: beds that can be reckoned by their place, hose, tank, rating; lamps of a collar only where there is one."""
    assert run.unheld(DRILL, "cards", ground=ground(*beds, **rig), units=US) == names


@pytest.mark.parametrize("name", [*WATER, *SIGNS, "pump:0", "friction:attack-1.75", "gauges", "tank", "rated"])
def test_each_card_has_its_question(run, name):
    """The kind of a question is the name before its colon."""
    here = ground(CROSSLAY, GUN, tank="750@US", pump_rated="1500@US")
    assert run.unheld(DRILL, "question", ground=here, card=name, seed=7, units=US)["kind"] == name.split(":")[0]


@pytest.mark.parametrize("name", ["pump:1", "tank", "", "tip:1"])
def test_no_such_question(run, name):
    """A card of another rig is refused by its name."""
    with pytest.raises(CalcError) as refusal:
        run.unheld(DRILL, "question", ground=ground(CROSSLAY), card=name, seed=1, units=US)
    assert (refusal.value.field, refusal.value.code) == ("card", "unknown")


def test_a_sitting(run):
    """What is due comes first, by the place's own day; each question by a seed of its own."""
    here = ground(CROSSLAY, GUN, drive="pto")
    boxes = {"vacuum": {"box": 1, "due": 101}, "tip": {"box": 1, "due": 100}}
    asked = {"ground": here, "boxes": boxes, "on_ms": 100 * DAY_MS + DAY_MS - 1, "units": US, "seed": 5}
    sitting = run.unheld(DRILL, "sitting", offset_min=0, **asked)
    assert sitting["cards"][0] == "tip" and "vacuum" not in sitting["cards"] and len(sitting["cards"]) == 5
    later = run.unheld(DRILL, "sitting", offset_min=1, **asked)  # past midnight there
    assert set(later["cards"][:2]) == {"tip", "vacuum"}
    for place, (name, question) in enumerate(zip(sitting["cards"], sitting["questions"])):
        assert question == run.unheld(DRILL, "question", ground=here, card=name, seed=5 + place, units=US)


@pytest.mark.parametrize("seed", [-1, 1000001, "x"])
def test_a_seed_that_is_none(run, seed):
    """0 to a million."""
    with pytest.raises(CalcError) as refusal:
        run.unheld(DRILL, "sitting", ground=ground(), boxes={}, on_ms=0, offset_min=0, seed=seed, units=US)
    assert refusal.value.field == "seed"


@pytest.mark.parametrize("seed", [0, 1000000])
def test_the_first_and_the_last_seed(run, seed):
    assert len(run.unheld(DRILL, "sitting", ground=ground(), boxes={}, on_ms=0, offset_min=0, seed=seed, units=US)["questions"]) == 5


def test_standing(run):
    """What was asked before, by kind, counted from the place's own day."""
    told = {"ground": ground(), "boxes": {"tip": {"box": 2, "due": 102}}, "on_ms": 100 * DAY_MS + DAY_MS - 1, "units": US}
    today, later = (run.unheld(DRILL, "standing", offset_min=offset, **told) for offset in (0, 1))
    assert (today, later) == ([{"kind": "tip", "box": 2, "days": 2}], [{"kind": "tip", "box": 2, "days": 1}])


@pytest.mark.parametrize(("reply", "is_right", "habit"), [
    ("170", True, None), ("165", True, None), ("175", True, None), ("164.9", False, None), ("175.1", False, None),
    ("158", False, "near"), ("156.5", False, "near"), ("156.4", False, None), ("152.5", False, "far"), ("152.6", False, None), ("147.5", False, "far"), ("147.4", False, None), ("202.5", False, "other"), ("202.6", False, None), ("500", False, None),
])
def test_what_is_typed(run, reply, is_right, habit):
    """Right within what the question allows, its ends too; else a wrong way that gives it, within half of that: told of a slip that one did not make, nobody learns."""
    assert run.unheld(DRILL, "right", question=TYPED, reply=reply, units=US) == {"is_right": is_right, "habit": habit}


@pytest.mark.parametrize(("reply", "is_right", "habit"), [("2", True, None), ("1", False, None), ("3", False, "one_off")])
def test_what_is_chosen(run, reply, is_right, habit):
    assert run.unheld(DRILL, "right", question=CHOSEN, reply=reply, units=US) == {"is_right": is_right, "habit": habit}


@pytest.mark.parametrize(("question", "reply", "code"), [(CHOSEN, "4", "unknown"), (TYPED, "", "empty"), (TYPED, "ten", "not_a_number")])
def test_what_is_no_answer(run, question, reply, code):
    """Refused, and worth nothing."""
    with pytest.raises(CalcError) as refusal:
        run.unheld(DRILL, "right", question=question, reply=reply, units=US)
    assert (refusal.value.field, refusal.value.code) == ("reply", code)


@pytest.mark.parametrize(("reply", "offset_min", "row"), [("2", 0, {"box": 3, "due": 104}), ("2", 1, {"box": 3, "due": 105}), ("3", 0, {"box": 0, "due": 100})])
def test_where_a_question_goes(run, reply, offset_min, row):
    """A box on, and waits 4 days there; wrong, back to the first: by the place's own day."""
    told = run.unheld(DRILL, "judged", question=CHOSEN, reply=reply, boxes={"lines": {"box": 2, "due": 99}, "tip": {"box": 0, "due": 99}}, card="lines",
                      on_ms=100 * DAY_MS + DAY_MS - 1, offset_min=offset_min, units=US)
    assert told["row"] == row and told["is_right"] is (reply == "2")
