"""Questions of a rig's own hose, each worked by hand: its facts, its answer, what its working shows and the wrong ways that it knows."""
import pytest

from calc.base.errors import CalcError
from calc.teaching import drill_hose, drill_line
from site_src.content import units
from tests.unit.teaching.lines import CROSSLAY, GUN, ground, habits
from tests.unit.teaching.loaded import Loaded, offered

US, SI, BAR = units.shown_in("US"), units.shown_in("SI"), units.shown_in("bar")


def line(bed, shown=US, rule=""):
    return drill_line.Line(ground(bed, rule=rule), shown, bed)


def working(question):
    return [row["code"] for row in question["working"]]


def test_a_line_two_floors_up():
    """15.5 x 1.5^2 x 2 = 69.75, and 100, and 0.434 x 20 = 8.68: 178.4. Wrong: 8.7 more or less, no nozzle, no friction; 100 ft alone 34.9 less; 150 / 100 not squared 15.5 x 1.5 x 2 = 46.5, 23.25 less."""
    question = drill_hose.raised(line(CROSSLAY), 2, False, ground(CROSSLAY), US)
    assert question["facts"] == {"bed": "Crosslay", "hose": "1¾ in", "length": "200", "end": "fog", "tip": "", "flow": "150", "nozzle": "100",
                                 "floors": "2", "floor": "10", "added": "", "device": "", "own": ""}
    assert question["answer"]["value"] == pytest.approx(178.43) and question["answer"]["within"] == pytest.approx(5)
    assert habits(question) == {"elevation_twice": 187.1, "no_elevation": 169.8, "no_nozzle": 78.4, "no_friction": 108.7, "one_hundred": 143.6, "not_squared": 155.2}
    assert working(question) == ["friction_square", "elevation", "sum"]
    assert question["working"][1]["facts"] == {"rate": "0.434", "rise": "20", "elevation": "8.68"}
    assert question["working"][2]["facts"] == {"nozzle": "100", "friction": "69.75", "elevation": "8.68", "appliance": "0", "sum": "178.43"}


@pytest.mark.parametrize(("shown", "added", "psi"), [(US, "10", 10), (SI, "70", 10.15), (BAR, "0.7", 10.15)])
def test_a_wye_in_the_line(shown, added, psi):
    """A wye takes 10 psi, 70 kPa, 0.7 bar (handbook): left out, the answer is wrong and the habit named."""
    question = drill_hose.raised(line(CROSSLAY, shown), 0, True, ground(CROSSLAY), shown)
    assert question["facts"]["added"] == added and question["facts"]["device"] == ""
    assert question["answer"]["value"] == pytest.approx(169.75 + psi, abs=0.02)
    assert habits(question)["no_appliance"] == pytest.approx(169.75, abs=0.1)
    assert not {"elevation_twice", "no_elevation"} & set(habits(question))
    assert working(question) == ["friction_square", "sum"]


def test_a_gun_on_no_hose():
    """Piped to the pump: 100 and the handbook's 25; no friction to reckon or to forget."""
    question = drill_hose.raised(line(GUN), 0, False, ground(GUN), US)
    assert (question["facts"]["device"], question["facts"]["added"], question["facts"]["floors"]) == ("25", "", "0")
    assert question["answer"]["value"] == pytest.approx(125)
    assert habits(question) == {"no_appliance": 100, "no_nozzle": 25} and working(question) == ["sum"]
    assert question["working"][0]["facts"]["appliance"] == "25"


@pytest.mark.parametrize(("nozzle", "floors"), [("136.5", "2"), ("136.6", "0")])
def test_past_what_is_trained_on(nozzle, floors):
    """A line that with its floors and a wye would ask over 225 psi is asked for as it lies: 136.5 + 69.75 + 8.68 + 10 = 224.93."""
    bed = {**CROSSLAY, "end": {**CROSSLAY["end"], "pressure": f"{nozzle}@US"}}
    question = drill_hose.raised(line(bed), 2, True, ground(bed), US)
    assert (question["facts"]["floors"], question["facts"]["added"]) == (floors, "10" if floors == "2" else "")
    assert question["answer"]["value"] == pytest.approx(69.75 + float(nozzle) + (18.68 if floors == "2" else 0))


def test_height_as_the_department_counts_it():
    """Floors of 12 ft, one up: 5.208 psi, which is told apart from none."""
    question = drill_hose.raised(line(CROSSLAY), 1, False, ground(CROSSLAY, floor="12@US"), US)
    assert question["facts"]["floor"] == "12" and question["answer"]["value"] == pytest.approx(174.958)


@pytest.mark.parametrize(("throws", "floors", "added"), [((0, 0), "0", "10"), ((2, 1), "3", ""), ((2, 2), "3", ""), ((1, 0), "2", "10")])
def test_what_is_thrown_for_a_bed(throws, floors, added):
    """Level, two floors up or three: one floor would be lost in the 5 psi that count as right. One time in three a wye."""
    dice = Loaded(*throws)
    question = drill_hose.pump("pump:0", dice, ground(CROSSLAY), US)
    assert dice.sides == [3, 3]
    assert (question["kind"], question["facts"]["floors"], question["facts"]["added"]) == ("pump", floors, added)


def test_no_wye_where_there_is_no_hose():
    """A gun piped to the pump has no line to put one into, and goes up no stairs; the bed is the one of its place."""
    question = drill_hose.pump("pump:1", Loaded(2, 0), ground(CROSSLAY, GUN), US)
    assert [question["facts"][name] for name in ("bed", "added", "floors")] == ["Gun", "", "0"] and question["answer"]["value"] == pytest.approx(125)


@pytest.mark.parametrize(("rule", "wrong"), [("gpm_times_n", {"one_hundred"}), ("rounded_50", {"one_hundred", "not_squared"}), ("", {"one_hundred", "not_squared"})])
def test_slips_of_a_rule(rule, wrong):
    """Only a rule with a square has one to forget."""
    question = drill_hose.raised(line(CROSSLAY, rule=rule), 0, False, ground(CROSSLAY, rule=rule), US)
    assert {"one_hundred", "not_squared"} & set(habits(question)) == wrong


@pytest.mark.parametrize(("throw", "gauge", "psi", "other"), [(0, "master", 170, 110), (1, "line", 110, 170)])
def test_what_a_gauge_shows(throw, gauge, psi, other):
    """Study cards: the pump makes what the line needs that needs most, and the other is gated. Crosslay 169.75; a gun of 100 and 10."""
    gun = {**GUN, "loss": "10@US"}
    dice = Loaded(0, throw)
    question = drill_hose.gauges("gauges", dice, ground(CROSSLAY, gun), US)
    assert question["kind"] == "gauges" and dice.sides == [1, 2]
    assert question["facts"] == {"first": "Crosslay", "first_needs": "170", "second": "Gun", "second_needs": "110", "gauge": gauge}
    assert question["answer"]["value"] == pytest.approx(psi, abs=0.3) and question["answer"]["within"] == pytest.approx(5)
    assert habits(question) == {"pressures_added": 279.8, "pressures_averaged": 139.9, "other_line": pytest.approx(other, abs=0.3)}
    assert question["working"] == [{"code": f"gauge_{gauge}", "facts": question["facts"]}]


def test_friction():
    """Each run that loses 8 to 120 psi: 1 3/4 in at 160 gpm, 15.5 x 2.56 = 39.68 per 100 ft; 300 ft lose 119.04, 400 ft more than is asked."""
    questions = offered(lambda dice: drill_hose.friction("friction:attack-1.75", dice, ground(CROSSLAY), US))
    asked = {(question["facts"]["flow"], question["facts"]["length"]): question for question in questions}
    assert {question["kind"] for question in questions} == {"friction"}
    lengths = [int(length) for flow, length in asked if flow == "160"]
    assert lengths == [100, 150, 200, 300]
    question = asked["160", "200"]
    assert question["facts"] == {"hose": "1¾ in", "length": "200", "flow": "160", "own": ""}
    assert question["answer"]["value"] == pytest.approx(79.36) and question["answer"]["within"] == pytest.approx(5)
    assert habits(question) == {"one_hundred": 39.7, "not_squared": 49.6}
    assert working(question) == ["friction_square"]
    assert all(8 <= question["answer"]["value"] <= 120 for question in questions)


@pytest.mark.parametrize(("length_ft", "within"), [(100, 3), (150, 5)])
def test_how_near_friction_is_right(length_ft, within):
    """A tenth in whole psi, from 2 to 5: 39.7 lost, 3; 59.5 lost, 5."""
    questions = offered(lambda dice: drill_hose.friction("friction:attack-1.75", dice, ground(CROSSLAY), US))
    question = next(each for each in questions if (each["facts"]["flow"], each["facts"]["length"]) == ("160", str(length_ft)))
    assert question["answer"]["within"] == pytest.approx(within)


def test_little_friction():
    """2 1/2 in at 250 gpm in C 2: 12.5 per 100 ft; a tenth of it is 1: 2 psi counts as right."""
    bed = {**CROSSLAY, "hose": "attack-2.5"}
    questions = offered(lambda dice: drill_hose.friction("friction:attack-2.5", dice, ground(bed), US))
    question = next(each for each in questions if (each["facts"]["flow"], each["facts"]["length"]) == ("250", "100"))
    assert question["answer"]["value"] == pytest.approx(12.5) and question["answer"]["within"] == pytest.approx(2)


def test_which_hoses_are_asked_about():
    """Of beds and of the supply, each once; not one whose own figure has a fault, nor a bed without hose."""
    here = ground(CROSSLAY, {**CROSSLAY, "name": "Two"}, GUN, supply=[{"hose": "supply-5"}, {"hose": "attack-2.5"}, {}])
    assert drill_hose.hoses(here, US) == ["attack-1.75", "supply-5", "attack-2.5"]
    here["shelf"]["hoses"] = {**here["shelf"]["hoses"], "attack-2.5": {**here["shelf"]["hoses"]["attack-2.5"], "faulty": True}}
    assert drill_hose.hoses(here, US) == ["attack-1.75", "supply-5"]
    assert drill_hose.hoses(ground(CROSSLAY), US) == ["attack-1.75"]
    with pytest.raises(CalcError) as refusal:
        drill_hose.friction("friction:none", Loaded(0), here, US)
    assert refusal.value.field == "hose"


def test_minutes_of_the_tank():
    """750 gal over 150 gpm: 5 minutes; with the gun's 500 too 650 gpm, 1.2 minutes, where one line alone would be 5. A tenth counts as right."""
    one = drill_hose.of_tank(ground(tank="750@US"), [line(CROSSLAY)], US)
    assert one["facts"] == {"tank": "750", "first": "Crosslay", "first_flow": "150", "second": "", "second_flow": ""}
    assert one["answer"]["value"] == pytest.approx(5) and one["answer"]["within"] == pytest.approx(0.5) and one["habits"] == []
    assert one["working"] == [{"code": "tank", "facts": {"tank": "750", "flow": "150", "minutes": "5.0"}}]
    assert one["kind"] == "tank"
    two = drill_hose.of_tank(ground(tank="750@US"), [line(CROSSLAY), line(GUN)], US)
    assert (two["facts"]["second"], two["facts"]["second_flow"]) == ("Gun", "500")
    assert two["answer"]["value"] == pytest.approx(750 / 650) and two["working"][0]["facts"]["flow"] == "650"
    assert habits(two) == {"one_line": 5}


def test_a_tank_that_is_gone_at_once():
    """50 gal over 500 gpm: six seconds; a tenth of a minute counts as right."""
    assert drill_hose.of_tank(ground(tank="50@US"), [line(GUN)], US)["answer"]["within"] == pytest.approx(0.1)


def test_a_tank_that_cannot_be_read():
    """Refused by its field."""
    with pytest.raises(CalcError) as refusal:
        drill_hose.of_tank(ground(tank="big"), [line(GUN)], US)
    assert (refusal.value.field, refusal.value.code) == ("tank", "not_a_number")


def test_which_lines_the_tank_feeds():
    """The rig's lines in any order, one of them or two."""
    here = ground(CROSSLAY, GUN, tank="750@US")
    named = [drill_hose.tank("tank", Loaded(first, 0, count), here, US)["facts"] for first, count in ((0, 0), (1, 0), (1, 1))]
    assert [(facts["first"], facts["second"]) for facts in named] == [("Crosslay", ""), ("Gun", ""), ("Gun", "Crosslay")]


@pytest.mark.parametrize(("coefficient", "lengths"), [(8, [100, 150, 200, 300, 400, 600]), (7.9, [150, 200, 300, 400, 600]), (20, [100, 150, 200, 300, 400, 600]), (20.1, [100, 150, 200, 300, 400])])
def test_what_is_worth_a_question(coefficient, lengths):
    """A hose that is asked about at 100 gpm: by hand, C 8 loses 8 psi in 100 ft, the least that is asked; C 20 loses 120 in 600 ft, the most."""
    here = ground(CROSSLAY)
    here["shelf"]["hoses"] = {"attack-1.75": {**here["shelf"]["hoses"]["attack-1.75"], "coefficient": coefficient, "card_gpm": [100]}}
    questions = offered(lambda dice: drill_hose.friction("friction:attack-1.75", dice, here, US))
    assert [int(question["facts"]["length"]) for question in questions] == lengths


def test_a_hose_of_the_rigs_own_figure():
    """Nobody knows by heart what a department measured: the question says its C, for a line and for hose alone; a handbook's it does not."""
    here = ground(CROSSLAY)
    here["shelf"]["hoses"] = {"attack-1.75": {**here["shelf"]["hoses"]["attack-1.75"], "coefficient": 11.4, "origin": "measured"}}
    question = drill_hose.pump("pump:0", Loaded(0, 1), here, US)
    assert question["facts"]["own"] == "11.4" and question["answer"]["value"] == pytest.approx(11.4 * 2.25 * 2 + 100)
    assert drill_hose.friction("friction:attack-1.75", Loaded(0), here, US)["facts"]["own"] == "11.4"
