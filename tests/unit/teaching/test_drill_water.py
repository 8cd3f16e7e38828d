"""Questions of water, each worked by hand: its facts, its answer, what its working shows and the wrong ways that it knows."""
import pytest

from calc.base.errors import CalcError
from calc.teaching import drill_water
from site_src.content import units
from tests.unit.teaching import lines
from tests.unit.teaching.lines import CROSSLAY, habits
from tests.unit.teaching.loaded import Loaded, offered

US, SI = units.shown_in("US"), units.shown_in("SI")
TIPS = [{"id": "1.125@US", "label": "1 1/8", "usual": "50@US"}, {"id": "2@US", "label": "2", "usual": "80@US"}]
SMOOTH = {"name": "Gun", "end": {"kind": "smooth", "tip": "1.5@US", "pressure": "65@US"}}


def ground(*beds, **rig):
    return lines.ground(*beds, tips=TIPS, **rig)


def ask(kind, *throws, card=None, shown=US, **rig):
    question = getattr(drill_water, kind)(card or kind, Loaded(*throws), ground(**rig), shown)
    assert question["kind"] == kind
    return question


def working(question):
    [row] = question["working"]
    return row["code"], row["facts"]


def test_tip():
    """29.7 x 1.125^2 x sqrt 50 = 265.8; 29.7 x 1.125 x 7.071 = 236.3; 29.7 x 1.2656 x 50 = 1879; at 80 psi 336.2. 5 % of it is 13, a mark of 10 or so."""
    question = ask("tip", 0)
    assert question["facts"] == {"tip": "1 1/8", "pressure": "50"}
    assert question["answer"]["value"] == pytest.approx(265.8, abs=0.05)
    assert (question["answer"]["quantity"], question["answer"]["text"]) == ("flow", "266")
    assert 10 <= question["answer"]["within"] <= 14
    assert habits(question) == {"diameter_not_squared": pytest.approx(236.3, abs=0.1), "no_root": pytest.approx(1879.4, abs=0.2), "other_pressure": pytest.approx(336.2, abs=0.1)}
    assert working(question) == ("tip", {"constant": "29.7", "tip": "1.125", "pressure": "50", "flow": "266"})


@pytest.mark.parametrize(("psi", "other_gpm"), [("65", 597.7), ("66", 472.5), ("80", 472.5)])
def test_other_pressure_of_a_tip(psi, other_gpm):
    """A tip asked at a pressure nearer to a master stream's 80 psi is mistaken for a hand line's 50, else the other way: 29.7 x 2.25 x 8.944 or 7.071."""
    bed = {"name": "Gun", "end": {"kind": "smooth", "tip": "1.5@US", "pressure": f"{psi}@US"}}
    question = drill_water.tip("tip", Loaded(1, 0), ground(CROSSLAY, bed), US)
    assert question["facts"] == {"tip": "1.5", "pressure": psi}
    assert habits(question)["other_pressure"] == pytest.approx(other_gpm, abs=0.1)


def test_whose_tip():
    """Half the time the rig's own, else one of the usual; without a smooth bore on the rig no die decides."""
    own = ground(CROSSLAY, SMOOTH)
    assert [drill_water.tip("tip", Loaded(1, 0), own, US)["facts"]["tip"], drill_water.tip("tip", Loaded(0, 1), own, US)["facts"]["tip"]] == ["1.5", "2"]
    assert [row["facts"]["tip"] for row in offered(lambda dice: drill_water.tip("tip", dice, ground(CROSSLAY), US))] == ["1 1/8", "2"]


def test_a_tip_of_hardly_any_flow():
    """29.7 x 0.01 x 7.07 = 2.1 gpm: 5 % would be a tenth of a gallon; 1 gpm counts as right."""
    bed = {"name": "Gun", "end": {"kind": "smooth", "tip": "0.1@US", "pressure": "50@US"}}
    assert drill_water.tip("tip", Loaded(1, 0), ground(bed), US)["answer"]["within"] == pytest.approx(1)


def test_floors():
    """Floor 5 of 10 ft floors is four up: 0.434 x 40 = 17.4 psi; the ground counted 21.7, twice 34.7, feet for psi 40."""
    question = ask("floors", 2)
    assert question["facts"] == {"floor": "5", "height": "10"}
    assert question["answer"]["value"] == pytest.approx(17.36)
    assert habits(question) == {"ground_floor_counted": 21.7, "elevation_twice": 34.7, "feet_for_psi": 40}
    assert working(question) == ("floors", {"rate": "0.434", "rise": "40", "elevation": "17.36", "floors": "4"})
    assert [row["facts"]["floor"] for row in offered(lambda dice: drill_water.floors("floors", dice, ground(), US))] == ["3", "4", "5"]


@pytest.mark.parametrize("throw", [0, 1, 2])
@pytest.mark.parametrize("system", ["US", "imperial", "SI", "bar"])
def test_five_a_floor_is_right_and_a_floor_too_many_is_not(throw, system):
    """Floors of 10 ft take 4.34 psi each; 5 a floor, as many are taught, is 2 off after three of them: right where gauges are in psi. One floor more never is."""
    question = ask("floors", throw, shown=units.shown_in(system))
    answer, up = question["answer"], 2 + throw
    assert answer["within"] < 4.34 and "ground_floor_counted" in habits(question)
    if system in ("US", "imperial"):
        assert abs(5 * up - answer["value"]) <= answer["within"]


def test_low_floors():
    """Two floors of 2 ft are 1.7 psi: a share of it would be less than a needle shows; 1 psi counts as right."""
    assert ask("floors", 0, floor="2@US")["answer"]["within"] == pytest.approx(1)


def test_floors_in_metric():
    """Floors of 3 m, four up: 9.817 x 12 = 117.8 kPa; nobody takes meters for kPa."""
    question = ask("floors", 2, shown=SI, floor="3@SI")
    assert question["facts"] == {"floor": "5", "height": "3"}
    assert set(habits(question)) == {"ground_floor_counted", "elevation_twice"}
    assert float(working(question)[1]["elevation"]) == pytest.approx(117.8, abs=0.05)


def test_lines_that_are_offered():
    """From 100 psi static every drop of 4 to 39 percent that is clear of 10, 15 and 25 by more than one."""
    questions = offered(lambda dice: drill_water.lines("lines", dice, ground(), US), 10)
    drops = [100 - int(question["facts"]["residual"]) for question in questions]
    assert drops == [*range(4, 9), 12, 13, *range(17, 24), *range(27, 40)]
    assert {question["facts"]["static"] for question in questions} == {"100"}
    rights = [question["answer"]["right"] for question in questions]
    assert {question["kind"] for question in questions} == {"lines"}
    assert rights == ["3"] * 5 + ["2"] * 2 + ["1"] * 7 + ["0"] * 13  # handbooks: to 10 % three, to 15 two, to 25 one
    assert all(question["answer"]["options"] == ["3", "2", "1", "0"] for question in questions)


def test_lines_that_drop_a_unit():
    """From 50 psi a drop is a whole psi, 2 percent each; one of 4 or 5 percent is 2 psi, as 48 and 47.5 are read."""
    questions = offered(lambda dice: drill_water.lines("lines", dice, ground(), US), 0)
    residuals = [int(question["facts"]["residual"]) for question in questions]
    assert max(residuals) == 48 and {question["facts"]["static"] for question in questions} == {"50"}


@pytest.mark.parametrize(("residual", "right", "habit", "drop", "percent"), [
    ("87", "2", [], "13", "13"),  # 13 / 87 is 14.9 %: two as well
    ("78", "1", [{"code": "drop_of_residual", "value": "0"}], "22", "22"),  # 22 / 78 is 28 %: none
    ("94", "3", [], "6", "6"),  # 6 / 94 is 6.4 %
    ("65", "0", [], "35", "35"),
])
def test_lines(residual, right, habit, drop, percent):
    """The drop is of the static pressure; who takes it of the residual may come out one line short."""
    questions = offered(lambda dice: drill_water.lines("lines", dice, ground(), US), 10)
    question = next(question for question in questions if question["facts"]["residual"] == residual)
    assert (question["answer"]["right"], question["habits"]) == (right, habit)
    assert working(question) == ("lines", {"drop": drop, "static": "100", "percent": percent, "lines": right})


def test_colors():
    """NFPA 291: blue (AA) from 1,500 gpm, green (A) from 1,000, orange (B) from 500, red (C) below; every 50 gpm of 200 to 2,150 but those three."""
    questions = offered(lambda dice: drill_water.colors("colors", dice, ground(), US))
    asked = {int(question["facts"]["flow"].replace(",", "")): question["answer"]["right"] for question in questions}
    wanted = [flow for flow in range(200, 2200, 50) if flow not in (500, 1000, 1500)]
    assert asked == {flow: "AA" if flow > 1500 else "A" if flow > 1000 else "B" if flow > 500 else "C" for flow in wanted}
    for question in questions:
        assert question["kind"] == "colors" and question["answer"]["options"] == ["AA", "A", "B", "C"] and question["habits"] == []
        code, terms = working(question)
        assert code == "color_" + question["answer"]["right"]
        assert [terms[name].replace(",", "") for name in ("low", "middle", "high")] == ["500", "1000", "1500"]


def test_net_from_a_hydrant():
    """150 at the discharge and 35 at the intake: 115 net; added 185; the discharge alone 150."""
    question = ask("net", 6, 3, card="net:hydrant")
    assert question["facts"] == {"discharge": "150", "intake": "35", "place": "hydrant"}
    assert question["answer"]["value"] == pytest.approx(115) and question["answer"]["within"] == pytest.approx(1)
    assert habits(question) == {"intake_added": 185, "gross": 150}
    code, terms = working(question)
    assert (code, terms["discharge"], terms["intake"], terms["net"]) == ("net_hydrant", "150", "35", "115")


def test_net_at_draft():
    """150 at the discharge and 10 inHg, 0.4912 psi each: 154.9 net; taken off 145.1; the discharge alone 150; inches for psi 160."""
    question = ask("net", 6, 4, card="net:draft")
    assert question["facts"] == {"discharge": "150", "intake": "10", "place": "draft"}
    assert question["answer"]["value"] == pytest.approx(154.91, abs=0.01)
    assert habits(question) == {"vacuum_taken_off": 145.1, "gross": 150, "inches_for_psi": 160}
    code, terms = working(question)
    assert (code, terms["net"], terms["vacuum"]) == ("net_draft", "155", "4.91")
    assert "inches_for_psi" not in habits(ask("net", 6, 4, card="net:draft", shown=SI))


def test_what_net_is_asked_of():
    """Discharges of 120 to 240 by 5, intakes of 20 to 70 by 5, vacuums of 6 to 18 inHg: what gauges of a pumper show."""
    discharges = [int(question["facts"]["discharge"]) for question in offered(lambda dice: drill_water.net("net:hydrant", Loaded(*dice.throws, 0), ground(), US))]
    assert discharges == list(range(120, 245, 5))
    intakes = [int(question["facts"]["intake"]) for question in offered(lambda dice: drill_water.net("net:hydrant", dice, ground(), US), 0)]
    assert intakes == list(range(20, 75, 5))
    vacuums = [int(question["facts"]["intake"]) for question in offered(lambda dice: drill_water.net("net:draft", dice, ground(), US), 0)]
    assert vacuums == list(range(6, 19))


def test_vacuum():
    """10 ft of lift are 4.34 psi, 8.8 inHg of vacuum: the feet for inches 10, the psi 4.3. Lifts of 6 to 19 ft are asked."""
    question = ask("vacuum", 4)
    assert question["facts"] == {"lift": "10"} and question["answer"]["value"] == pytest.approx(8.83, abs=0.03)
    assert question["answer"]["within"] == pytest.approx(1)
    assert habits(question) == {"feet_for_inches": 10, "psi_for_inches": 4.3}
    assert working(question) == ("vacuum", {"lift": "10", "each": "1.13", "vacuum": question["answer"]["text"]})
    assert habits(ask("vacuum", 4, shown=SI)) == {}
    assert working(ask("vacuum", 4, shown=SI))[1]["each"] == "0.102"  # NIST SP 811: 0.3048 m and 2.989 kPa to the foot of water
    assert [int(each["facts"]["lift"]) for each in offered(lambda dice: drill_water.vacuum("vacuum", dice, ground(), US))] == list(range(6, 20))


@pytest.mark.parametrize(("throw", "net", "percent", "gpm", "other"), [(0, "200", "70", 1050, 750), (1, "250", "50", 750, 1050)])
def test_rated(throw, net, percent, gpm, other):
    """A pump of 1,500 gpm: 70 % of it, 1,050, at 200 psi and half, 750, at 250 (study cards). 3 % count as right."""
    question = ask("rated", throw, pump_rated="1500@US")
    assert question["facts"] == {"rated": "1500", "net": net}
    assert question["answer"]["value"] == pytest.approx(gpm) and 20 <= question["answer"]["within"] <= 32
    assert habits(question) == {"full_rating": 1500, "other_point": other}
    assert working(question) == ("rated", {"rated": "1500", "percent": percent, "flow": str(gpm), "at_100": "150", "at_70": "200", "at_50": "250"})


@pytest.mark.parametrize(("work", "field"), [
    (lambda: drill_water.tip("tip", Loaded(1, 0), ground({"name": "Gun", "end": {"kind": "smooth", "tip": "wide", "pressure": "50@US"}}), US), "tip"),
    (lambda: drill_water.tip("tip", Loaded(1, 0), ground({"name": "Gun", "end": {"kind": "smooth", "tip": "1@US", "pressure": "high"}}), US), "pressure"),
    (lambda: ask("rated", 0, pump_rated="much"), "pump_rated"),
])
def test_what_is_no_number_is_refused_by_its_field(work, field):
    """A rig's figure that cannot be read."""
    with pytest.raises(CalcError) as refusal:
        work()
    assert (refusal.value.field, refusal.value.code) == (field, "not_a_number")


def test_the_points_of_a_rating_in_metric():
    """As a gauge is set: 150, 200 and 250 psi are 1,034, 1,379 and 1,724 kPa."""
    terms = working(ask("rated", 0, shown=SI, pump_rated="1500@US"))[1]
    assert [terms[name] for name in ("at_100", "at_70", "at_50")] == ["1030", "1380", "1720"]


def test_a_pressure_that_is_read_is_not_rounded_as_one_that_is_set():
    """1,550 kPa at the discharge and 45 of vacuum are 1,595, and no 1,600."""
    questions = offered(lambda dice: drill_water.net("net:draft", Loaded(21, *dice.throws), ground(), SI))
    question = next(each for each in questions if each["facts"]["intake"] == "45")
    assert question["facts"]["discharge"] == "1550" and question["answer"]["text"] == "1595"
    assert question["working"][0]["facts"]["net"] == question["answer"]["text"]


def test_a_small_rating():
    """A pump of 60 gpm gives 30 at 250: 3 % is less than a gallon; 1 gpm counts as right."""
    assert ask("rated", 1, pump_rated="60@US")["answer"]["within"] == pytest.approx(1)
