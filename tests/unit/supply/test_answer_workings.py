"""The workings of the water and foam pages: every term as a person reads it, so that each line adds up by hand."""
import pytest

from tests.unit.supply.reckoned import ask, row

LARGE = {"static": "90", "residual": "60", "flowing": "1000", "wanted": "1000", "length": "100"}
PITOT = {"known": "pitot", "residual": "50"}
LIFTS = {"practical": "22.2"}  # a study's table, and two thirds of it (NWCG)


@pytest.mark.parametrize(
    ("page", "changes", "name", "text", "terms"),
    [
        # NFPA 291, from memory: 250 x (45 / 7)^0.54; 65 - 7 x (500 / 250)^1.852 = 39.73; C 0.08 of 5 in hose: 0.08 x 25 x 1
        ("hydrant", {}, "available", "683", {"flow": "250", "static": "65", "floor": "20", "residual": "58", "available": "682.84"}),
        ("hydrant", {"floor": "30"}, "class", "B", {"at": "20", "flow": "682.84"}),
        # 682.84 / 250 = 2.7: two lines, so one more
        ("hydrant", {}, "more", "1",
         {"percentage": "2", "first_digit": "2", "squaring": "1", "by_flow": "1", "test": "250", "floor": "20"}),
        ("hydrant", {}, "percentage", "2", {"drop": "7", "static": "65", "percent": "10.8"}),
        ("hydrant", {"rise": "10"}, "intake", "33",
         {"hydrant": "39.73", "friction": "2", "elevation": "4.34", "flow": "500", "intake": "33.39"}),
        ("hydrant", {"lines": "2", "rise": "-10"}, "intake", "44",  # two hoses lose a quarter
         {"hydrant": "39.73", "friction": "0.5", "elevation": "-4.34", "flow": "500", "intake": "43.57"}),
        ("hydrant", {"length": "0", "floor": "30"}, "at_pump", "596", {"floor": "30"}),  # no hose: 250 x 5^0.54
        # 29.84 x 0.9 x 6.25 x 5; two outlets twice that; 3 in is still plain, 29.84 x 0.8 x 9 x 5; 4 in at 5 psi carries 0.86
        ("hydrant", PITOT, "test", "839",
         {"constant": "29.84", "coefficient": "0.9", "bore": "2.5", "pitot": "25", "factor": "1", "outlets": "1", "flow": "839.25"}),
        ("hydrant", {**PITOT, "outlets": "2"}, "test", "1679",
         {"constant": "29.84", "coefficient": "0.9", "bore": "2.5", "pitot": "25", "factor": "1", "outlets": "2", "flow": "1678.5"}),
        ("hydrant", {**PITOT, "outlet": "3@US", "shape": "0.8"}, "test", "1074",
         {"constant": "29.84", "coefficient": "0.8", "bore": "3", "pitot": "25", "factor": "1", "outlets": "1", "flow": "1074.24"}),
        ("hydrant", {**PITOT, "outlet": "4@US", "pitot": "5"}, "test_large", "826",
         {"constant": "29.84", "coefficient": "0.9", "bore": "4", "pitot": "5", "factor": "0.86", "outlets": "1", "flow": "826.31"}),
        # 40 psi over the 8 psi per 100 ft of 1,000 gpm in 5 in, over the 20 of 4 in (the same test at 60 psi residual)
        ("hydrant", LARGE, "reach", "500", {"hydrant": "60", "floor": "20", "elevation": "0", "rate": "8", "reach": "500"}),
        ("hydrant", {**LARGE, "hose": "supply-4"}, "reach", "200", {"hydrant": "60", "floor": "20", "elevation": "0", "rate": "20", "reach": "200"}),
        # pi/4 x 25 x 12,000 / 231 = 1,020 gal in 1,000 ft: one minute at 1,000 gpm, two at 500
        ("hydrant", {**LARGE, "length": "1000"}, "fill", "1.0", {"held": "1020", "flow": "1000", "minutes": "1.02"}),
        ("hydrant", {**LARGE, "length": "1000", "wanted": "500"}, "fill", "2.0", {"held": "1020", "flow": "500", "minutes": "2.04"}),
        # classed at half of a static pressure under 40 psi (NFPA 291, from memory): 250 x (18 / 6)^0.54
        ("hydrant", {"static": "36", "residual": "30"}, "class_low", "C", {"at": "18", "flow": "452.47"}),
        # reverse: 180 psi is nine tenths of 200; 160 over 0.2 x 10 per 100 gpm squared and 1,000 ft: 894 gpm, less than the 1,580 of 1,000 x (70 / 30)^0.54
        ("hydrant", {**LARGE, "hose": "supply-4", "length": "1000"}, "reverse", "894", {"limit": "180", "floor": "20"}),
        ("hydrant", LARGE, "reverse", "1580", {"limit": "180", "floor": "20"}),
        ("tank", {}, "usable", "600", {"tank": "750", "percent": "80", "usable": "600"}),
        ("tank", {"usable": "90"}, "minutes", "4.5", {"usable": "675", "flow": "150", "minutes": "4.5"}),
        # study cards: 70 % at 15 ft; suction table, from memory: 3.4 ft at 1,000 gpm in 20 ft of 6 in, 0.6 for 10 ft more; 1.13 ft an inHg
        ("draft", {"lift": "15"}, "left", "875", {"rated": "1250", "percent": "70", "counted": "15", "left": "875"}),
        ("draft", {"lift": "20"}, "left", "750", {"rated": "1250", "percent": "60", "counted": "20", "left": "750"}),
        ("draft", {}, "counted", "10.0", {"lift": "10", "lost": "0", "counted": "10"}),
        ("draft", {"length": "30"}, "loss", "4.0", {"each": "1000", "length": "30", "loss": "4"}),
        ("draft", {"hoses": "2"}, "loss", "0.9", {"each": "500", "length": "20", "loss": "0.85"}),  # half the flow: a quarter of 3.4
        ("draft", {}, "expected", "12", {"lift": "10", "loss": "3.4", "vacuum": "11.86"}),
        ("draft", {"vacuum": "15"}, "reading", "17.0",
         {"vacuum": "15", "head": "16.95", "lift": "10", "beyond": "6.95", "loss": "3.4"}),
        # study cards, P = R / D + 1: 8 psi per 100 ft in 5 in hose at 1,000 gpm; 100 ft of climb is 43.4 psi, over two legs
        ("relay", {"climb": "100"}, "pressure", "162", {"floor": "20", "friction": "120", "elevation": "21.7", "pressure": "161.7"}),
        ("relay", {}, "leg_friction", "120",
         {"coefficient": "0.08", "hundreds_flow": "10", "hundreds_length": "15", "friction": "120"}),
        ("relay", {"lines": "2"}, "leg_friction", "60",
         {"coefficient": "0.02", "hundreds_flow": "10", "hundreds_length": "30", "friction": "60"}),
        ("relay", {}, "pumpers", "3", {"distance": "3000", "reach": "2000", "pumpers": "3"}),
        ("relay", {"climb": "-800"}, "pumpers", "2", {"distance": "3000", "reach": "3000", "pumpers": "2"}),
        ("relay", {}, "leg", "1500", {"distance": "3000", "legs": "2", "leg": "1500"}),
        ("relay", {}, "fill", "3.1", {"held": "3059.99", "flow": "1000", "minutes": "3.06"}),  # pi/4 x 25 x 36,000 / 231
        ("relay", {"lines": "2"}, "fill", "6.1", {"held": "6119.99", "flow": "1000", "minutes": "6.12"}),
        ("relay", {"climb": "100"}, "shut", "140", {"pressure": "161.7", "elevation": "21.7", "shut": "140"}),
        # 2 lines of 3 in hose are 0.8 / 4; 250 gpm, 100 ft; the tenth floor is nine times 5 psi; a handbook's 0.374 (from memory), 45 / 0.434 ft
        ("connection", {}, "feed", "1", {"coefficient": "0.2", "hundreds_flow": "2.5", "hundreds_length": "1", "friction": "1.25"}),
        ("connection", {}, "floors", "45", {"floor": "10", "each": "5", "elevation": "45"}),
        ("connection", {}, "at_connection", "170", {"needed": "100", "system": "25", "riser": "0", "elevation": "45", "connection": "170"}),
        ("connection", {"riser": "4"}, "riser", "2", {"coefficient": "0.374", "hundreds_flow": "2.5", "hundreds_length": "1.04", "friction": "2.42"}),
        # pressures in series add: 0.08 x 25 x 0.5 = 1 psi between the two
        ("joint", {}, "second_intake", "129", {"from": "130", "friction": "1", "intake": "129"}),
        ("joint", {"way": "dual"}, "second_intake", "44", {"from": "45", "friction": "1", "intake": "44"}),
        ("joint", {}, "second_adds", "121", {"wanted": "250", "intake": "129", "net": "121"}),
        # magazine drill: 2 x (0.65 + 1.7 x 3) = 11.5 min; three of 0.9 x 2,500 gal in 20.5 min
        ("shuttle", {}, "road", "11.5", {"distance": "3", "road": "11.5"}),
        ("shuttle", {"way": "round"}, "road", "6.4", {"distance": "1.5", "road": "6.4"}),  # 2 x (0.65 + 1.7 x 1.5)
        ("shuttle", {}, "cycle", "20.5", {"road": "11.5", "fill": "5", "dump": "4", "wait": "0", "cycle": "20.5"}),
        ("shuttle", {"tankers": "7"}, "cycle", "35.0", {"road": "11.5", "fill": "5", "dump": "4", "wait": "14.5", "cycle": "35"}),
        ("shuttle", {}, "kept_up", "329", {"tankers": "3", "load": "2500", "cycle": "20.5", "flow": "329.27"}),
        ("shuttle", {}, "needed", "3", {"wanted": "300"}),
        ("shuttle", {"wanted": "500"}, "needed", "\u2013", {"wanted": "500"}),  # the fill site passes 2,250 / 5 = 450
        ("shuttle", {}, "useful", "5", {"road": "11.5", "fill": "5", "dump": "4"}),  # 20.5 / 5, rounded up
        # handbook chapter 14: 95 x 0.03 = 2.85 gpm of concentrate; 15.5 x 0.95^2 = 13.989 psi per 100 ft; 10 ft is 4.34 psi
        ("foam", {}, "foam_minutes", "10.5", {"concentrate": "30", "flow": "95", "percent": "3", "minutes": "10.526"}),
        ("foam", {}, "foam_needed", "29", {"wanted": "10", "flow": "95", "percent": "3", "needed": "28.5"}),
        ("foam", {}, "most_back", "130", {"inlet": "200", "percent": "65", "most": "130"}),
        ("foam", {"plate": "100", "inlet": "160"}, "most_back_plate", "100", {"most": "100"}),  # an eductor maker's sheet
        ("foam", {"rise": "10"}, "back", "125", {"nozzle": "100", "friction": "20.98", "elevation": "4.34", "back": "125.32"}),
        ("foam", {"rise": "10"}, "longest", "183",  # 25.66 / 13.989
         {"most": "130", "nozzle": "100", "elevation": "4.34", "rate": "13.989", "longest": "183.43"}),
    ],
)
def test_working(run, page, changes, name, text, terms):
    """Each working has its terms, and they give its figure; all worked by hand."""
    found = row(ask(run, page, **changes), name)
    assert found["text"] == text
    assert {term: found["terms"].get(term) for term in terms} == terms


def test_thin_air(run):
    """At 5,000 ft water at 60 F is lifted 27.6 ft, at 90 F 26.7, not the 30.1 of the rating conditions (a study's table)."""
    answer = ask(run, "draft", lift="8", altitude="5000")
    told = {each["name"]: each["terms"] for each in answer["rows"]}
    assert float(row(answer, "max")["text"]) == pytest.approx(27.6, abs=0.1)
    assert float(told["counted"]["lost"]) == pytest.approx(30.1 - 26.7, abs=0.1)
    assert float(told["counted"]["counted"]) == pytest.approx(8 + float(told["counted"]["lost"]), abs=0.001)
    # 8 ft of lift and 3.4 of suction leave 16.2
    assert float(row(answer, "spare")["text"]) == pytest.approx(16.2, abs=0.1)
    assert float(told["spare"]["spare"]) == pytest.approx(float(told["spare"]["max"]) - 8 - 3.4, abs=0.0015)
    assert (told["spare"]["lift"], told["spare"]["loss"]) == ("8", "3.4")


def test_thin_air_takes_from_the_rating(run):
    """At 5,000 ft 3.4 ft more count than the 10 of the rating (30.1 - 26.7, the same table): 1 - 0.3 x 3.4 / 5 = 0.796."""
    answer = ask(run, "draft", altitude="5000", water="80")
    assert float(answer["figure"]["text"]) == pytest.approx(0.796 * 1250, abs=0.01 * 1250)
    assert (row(answer, "practical")["text"], row(answer, "max")["text"]) == ("18.1", "27.1")


def test_the_most_that_reaches_the_pump(run):
    """The flow that is told as the most leaves at the intake what was to be left there."""
    answer = ask(run, "hydrant", length="500", rise="5")
    most = row(answer, "at_pump")["text"]
    assert row(ask(run, "hydrant", length="500", rise="5", wanted=most), "intake")["text"] == "20"
    short = ask(run, "hydrant", length="500", rise="5", wanted="700")["cautions"]
    assert short == [{"code": "intake_below_floor", "level": "stop", "flow": "700", "limit": "20", "most": most}]


@pytest.mark.parametrize(
    ("page", "changes", "facts"),
    [
        ("hydrant", {}, {"class": "B", "safe": "1", "floor": "20", "test": "250"}),
        ("tank", {}, {"usable": "600", "flow": "150"}),
        ("draft", {}, {"percent": "100", "lift": "10", "counted": "10.0", "expected": "12", "flow": "1000", **LIFTS}),  # 13.4 / 1.13 = 11.9
        ("draft", {"lift": "12.5"}, {"percent": "85", "lift": "12.5", "counted": "12.5", "expected": "14", "flow": "1000", **LIFTS}),  # 15.9 / 1.13 = 14.07
        ("draft", {"lift": "21"}, {"percent": None, "lift": "21", "counted": "21.0", "expected": "22", "flow": "1000", **LIFTS}),  # 24.4 / 1.13 = 21.6
        ("relay", {}, {"pumpers": "3", "shut": "140"}),
        ("joint", {}, {"net": "121", "shut": "130"}),
        ("shuttle", {}, {"tankers": "3", "cycle": "20.5", "each": "110"}),  # 2250 / 20.5 = 109.8
        ("foam", {}, {"pump": "200", "percent": "3", "flow": "95", "longest": "214"}),     # 30 / 13.989
    ],
)
def test_sentence(run, page, changes, facts):
    """What the sentence below the figure says."""
    assert ask(run, page, **changes)["facts"] == facts


@pytest.mark.parametrize(("lines", "sources"), [("1", ["friction"]), ("2", ["friction", "parallel"])])
def test_hoses_side_by_side_have_their_rule(run, lines, sources):
    """The rule for hoses side by side is named where there are some."""
    assert row(ask(run, "relay", lines=lines), "leg_friction")["sources"] == sources


@pytest.mark.parametrize(("changes", "name", "sources"), [(PITOT, "test", ["pitot"]), ({**PITOT, "outlet": "4@US"}, "test_large", ["pitot", "large_outlet"])])
def test_a_large_outlet_has_its_table(run, changes, name, sources):
    """The table of large outlets is named where it was read."""
    assert row(ask(run, "hydrant", **changes), name)["sources"] == sources
