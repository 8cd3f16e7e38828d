"""What flows now, how hard the pump works, and how far a layout goes: typed texts in, texts out."""
import pytest

from calc.base.errors import CalcError
from tests.unit.layout.test_answer import SHELF, SYSTEM, a_layout, a_line, a_wye, fog

MORE = {kind: {"factor": 1, "places": 0} for kind in ("power", "lift")}
UNITS = {"shown": "ours", "systems": {"ours": {**SYSTEM, **MORE}}}
AS_ASKED = {"pressure": "", "gates": "set", "shut": []}
TANK = {"kind": "tank", "intake": "50", "lift": "10", "loss": "5"}
TWO = (a_line(), a_line(id="B", length="100"))


def flowing(run, *lines, source=TANK, **now):
    """The layout as it stands."""
    layout = {**a_layout(*lines), "source": source, "now": {**AS_ASKED, **now}}
    return run("layout.flowing", "now", layout=layout, shelf=SHELF, units=UNITS)


def test_as_asked(run):
    """At the pressure asked for, gated as asked, every nozzle gets its rating."""
    found = flowing(run, *TWO)
    assert (found["pressure"], found["flow"]) == ("170", "300")
    assert [(line["flow"], line["outlet"], line["rated_flow"], line["rated_outlet"]) for line in found["lines"]] == [
        ("150", "100", "150", "100")] * 2


def test_at_another_pressure(run):
    """A square-law line alone takes flow by the square root of the pressure, pressures by their share."""
    (line,) = flowing(run, a_line(), pressure="42.4375")["lines"]  # a quarter of 169.75
    assert (line["flow"], line["outlet"]) == ("75", "25")
    assert line["reaction"] == "19"  # by hand: 0.0505 x 75 x 5 = 18.94


def test_wide_open(run):
    """Without gating the easier line takes more than its rating."""
    easy = flowing(run, *TWO, gates="open")["lines"][1]
    # by hand: 150 x sqrt(169.75 / 134.875) = 168.28; 100 x 169.75 / 134.875 = 125.86
    assert (easy["flow"], easy["outlet"]) == ("168", "126")


def test_shutting_one(run):
    """Shutting one of two nozzles behind a wye gives the other more, side by side with what it had."""
    found = flowing(run, a_wye(a_line(), a_line(id="B")), shut=["B"])
    one, other = found["lines"]
    # by hand: 187.75 at the pump; alone it needs 100 + 69.75 + 2 x 1.5^2 = 174.25 at 150 gpm: x sqrt(187.75 / 174.25)
    assert (one["flow"], one["open_flow"], one["outlet"], one["is_shut"]) == ("156", "150", "108", False)
    assert (other["flow"], other["open_flow"], other["is_shut"]) == ("0", "150", True)
    assert found["asked"] == "174"


def test_nothing_is_asked_where_nothing_changes_or_nothing_is_open(run):
    assert flowing(run, *TWO)["asked"] is flowing(run, *TWO, shut=["A", "B"])["asked"] is None


@pytest.mark.parametrize(("pressure", "code", "reaction"), [("310", "above_test_pressure", "138"), ("280", "above_working_pressure", "125")])
def test_cautions_of_what_flows(run, pressure, code, reaction):
    """More pressure than asked for is judged as it stands."""
    layout = {**a_layout(a_line(), crew="1"), "now": {**AS_ASKED, "pressure": pressure}}
    told = run("layout.flowing", "now", layout=layout, shelf=SHELF, units=UNITS)["cautions"]
    # the hose is tested at 300, worked to 270; by hand 75.75 x 310 / 169.75 = 138.3 lbf, 75.75 x 280 / 169.75 = 124.9
    assert [(each["code"], each["amount"]) for each in told] == [(code, pressure), ("reaction_above_crew", reaction)]


def test_two_hoses_into_one_end(run):
    """Gated as asked beside a line that needs more, 351 and 249 gpm of 600 come to the one end, each at the pressure before its device; C 15.5 x 200 ft and 15.5 x 400 share as 1 to the root of a half."""
    first = a_line(device="master", loss="25", end=fog("600"))
    found = flowing(run, first, {**a_line(id="B", length="400"), "end": {"kind": "into", "line": "A"}}, a_line(id="C", length="4000"))
    assert [(line["id"], line["flow"], line["rated_flow"]) for line in found["lines"]] == [("A", "600", "600"), ("B", "249", "249"), ("C", "150", "150")]
    assert [line["outlet"] for line in found["lines"]] == [line["rated_outlet"] for line in found["lines"]] == ["100", "125", "100"]
    found = flowing(run, {**first, "length": "0"}, {**a_line(id="B"), "end": {"kind": "into", "line": "A"}})
    assert [line["flow"] for line in found["lines"]] == ["600", "0"]  # no length takes all, and the other is not gated by what it does not pass


def test_a_nozzle_that_water_does_not_reach(run):
    """By hand: 43.4 psi of height where the pump shows 20: nothing comes, and no gauge shows less than nothing."""
    (line,) = flowing(run, a_line(height="100"), pressure="20")["lines"]
    assert (line["flow"], line["outlet"]) == ("0", "0")


@pytest.mark.parametrize("shut", [[], ["B"]])
def test_a_pump_that_shows_nothing(run, shut):
    """Nothing flows on the level, and downhill what the height makes flow: no pump shows less than nothing."""
    assert flowing(run, *TWO, pressure="0", shut=shut)["flow"] == "0"
    steep = [a_line(id=name, height="-400") for name in "AB"]
    assert flowing(run, *steep, shut=shut)["pressure"] == "0"


@pytest.mark.parametrize(("now", "field", "code"), [
    ({"pressure": "lots"}, "gauge", "not_a_number"), ({"pressure": "-5"}, "gauge", "negative"), ({"gates": "ajar"}, "now", "damaged")])
def test_refused_now(run, now, field, code):
    """A gauge that cannot be read is refused at its field."""
    with pytest.raises(CalcError) as refusal:
        flowing(run, a_line(), **now)
    assert (refusal.value.field, refusal.value.code) == (field, code)


def at_pump(run, profile, source=TANK, *lines):
    """How hard the pump works."""
    layout = {**a_layout(*(lines or [a_line()])), "source": source}
    return run("layout.at_pump", "answer", layout=layout, shelf=SHELF, units=UNITS, profile=profile)


@pytest.mark.parametrize(("source", "net"), [
    (TANK, "170"),
    ({**TANK, "kind": "fed"}, "120"),    # by hand: 169.75 - 50
    ({**TANK, "kind": "draft"}, "176"),  # by hand: 169.75 + 15 / 2.3 = 176.27
])
def test_net_pressure(run, source, net):
    """What the pump adds depends on where the water comes from."""
    assert at_pump(run, {}, source)["net"] == net


@pytest.mark.parametrize(("intake", "level", "code"), [
    ("-5", "stop", "no_supply"), ("0", "stop", "no_supply"), ("1", "caution", "low_supply"), ("19", "caution", "low_supply"),
    ("20", None, None), ("169", None, None), ("170", "caution", "high_supply")])
def test_what_to_mind_of_an_intake(run, intake, level, code):
    """A hydrant is left 20 psi (driver/operator study cards); no pump shows less than comes in: 169.75 psi are asked for."""
    told = at_pump(run, {}, {**TANK, "kind": "fed", "intake": intake})["supply"]
    assert told == (code and {"level": level, "code": code, "limit": "20"})


def test_an_intake_at_just_what_is_asked(run):
    """100 psi in and 100 asked for: the pump adds nothing, and that is said."""
    told = at_pump(run, {}, {**TANK, "kind": "fed", "intake": "100"}, a_line(length="0"))
    assert (told["net"], told["supply"]["code"]) == ("0", "high_supply")


def test_an_intake_is_minded_of_a_fed_pump_alone(run):
    assert at_pump(run, {}, TANK)["supply"] is at_pump(run, {}, {**TANK, "kind": "draft"})["supply"] is None


def test_rating(run):
    """Within, past the pressure and past the flow of a rating; power from the pump formula sheets' 1714."""
    assert at_pump(run, {})["rating"] is None
    # by hand: at 150 of 250 gpm, 60 %: half way between 200 and 250 psi; 225 - 169.75 = 55.25; 150 x 169.75 / 1714 = 14.9
    found = at_pump(run, {"pump_rated": "250"})
    assert found["rating"] == {"within": True, "limit": None, "rated": "250", "promised": "225", "margin": "55", "extrapolated": False}
    assert found["power"] == "15"
    assert at_pump(run, {"pump_rated": "140"})["rating"]["limit"] == "flow"
    assert at_pump(run, {"pump_rated": "160"})["rating"]["limit"] == "pressure"  # at 94 % some 160 psi are promised


def test_engine_speed(run):
    """At a point of its own test the engine turns what it turned then; without a test nothing is said."""
    profile = {"pump_rated": "150", "speed_capacity": "1610", "speed_seventy": "1700", "speed_fifty": "1820"}
    at_test = a_line(length="0", end=fog("150", "150"))
    assert at_pump(run, profile, TANK, at_test)["engine"] == {"rpm": "1610", "basis": "between_points"}
    assert at_pump(run, {"pump_rated": "150"}, TANK, at_test)["engine"] is None
    beyond = a_line(length="0", end=fog("150", "290"))
    assert at_pump(run, profile, TANK, beyond)["engine"] == {"code": "beyond_test"}


@pytest.mark.parametrize(("source", "field", "code"), [
    ({**TANK, "kind": "fed", "intake": "?"}, "intake", "not_a_number"), ({**TANK, "kind": "draft", "lift": "-1"}, "lift", "negative"),
    ({**TANK, "kind": "draft", "loss": ""}, "suction", "empty"), ({"kind": "well"}, "source", "unknown"), (None, "source", "unknown")])
def test_refused_source(run, source, field, code):
    """A source that cannot be used is refused at its field."""
    with pytest.raises(CalcError) as refusal:
        at_pump(run, {}, source)
    assert (refusal.value.field, refusal.value.code) == (field, code)


def bounds(run, line="A", **facts):
    """How far one line goes."""
    reach = {"pump": "", "flow": "150", "end": "100", "length": "200"}
    return run("layout.reach", "answer", layout=a_layout(a_line(**facts)), shelf=SHELF, units=UNITS, line=line, reach=reach)


def test_surge(run):
    """Slamming a nozzle shut: density x wave speed x speed of the water, to its first figure."""
    # by hand: 20.0 ft/s x 1.938 slug/ft3 / 144 = 0.2693 psi per ft/s of wave; at 1300: 350.1; at 300: 80.8
    # the wave needs 400 / 1300 = 0.31 s and 400 / 300 = 1.33 s there and back, the shutting 0.5 s: 350.1 x 0.615 = 215
    assert bounds(run)["surge"] == {"least": "80", "most": "200", "slowest": "2"}
    joint = run("layout.reach", "answer", layout=a_layout(a_wye(a_line())), shelf=SHELF, units=UNITS, line="S",
                reach={"pump": "", "flow": "150", "end": "100", "length": "100"})
    assert joint["surge"] is None


@pytest.mark.parametrize(("flow", "least", "most"), [
    # by hand, as above: 80.8 and 215 psi at 150 gpm are 10.8 and 28.7 at 20, in bar 0.74 and 1.98; at 150, 5.57 and 14.8
    ("20", "0.70", "2"), ("150", "6", "10"),
])
def test_surge_in_bar(run, flow, least, most):
    """A surge is told to its first figure: with decimals only below one."""
    pressure = {"factor": 0.0689476, "places": 2}  # the definition: 1 psi = 0.0689476 bar
    bar = {"shown": "bar", "systems": {**UNITS["systems"], "bar": {**UNITS["systems"]["ours"], "pressure": pressure}}}
    layout = a_layout(a_line(end=fog(f"{flow}@ours", "100@ours"), length="200@ours", height="0@ours"))
    told = run("layout.reach", "answer", layout=layout, shelf=SHELF, units=bar, line="A",
               reach={"pump": "", "flow": f"{flow}@ours", "end": "100@ours", "length": "200@ours"})
    assert (told["surge"]["least"], told["surge"]["most"]) == (least, most)


def test_all_that_is_drawn_of_the_pump(run):
    """Points stand in the page's units: 150 gpm and 169.75 psi, and the rating of a 250 gpm pump, with factors of two and three."""
    factors = {"flow": {"factor": 2, "places": 0}, "pressure": {"factor": 3, "places": 0}}
    doubled = {"shown": "doubled", "systems": {**UNITS["systems"], "doubled": {**UNITS["systems"]["ours"], **factors}}}
    layout = {**a_layout(a_line(length="200@ours", height="0@ours", end=fog("150@ours", "100@ours"))), "source": TANK}
    told = run("layout.at_pump", "answer", layout=layout, shelf=SHELF, units=doubled, profile={"pump_rated": "250@ours"})["picture"]
    assert told["point"] == pytest.approx([300, 509.25])
    # by hand: 250 psi up to half, 200 at 70 %, 150 at all of 250 gpm
    assert told["rating"] == [pytest.approx(point) for point in ([0, 750], [250, 750], [350, 600], [500, 450])]
    assert at_pump(run, {})["picture"]["rating"] == []


def test_a_lay_that_needs_no_pump(run):
    """Downhill far enough the nozzle has its pressure from the height alone: the pump adds nothing, and nothing is asked of the engine."""
    steep = a_line(length="100", height="-400", end=fog("50", "100"))  # 173.6 psi of height
    profile = {"pump_rated": "150", "speed_capacity": "1610", "speed_seventy": "1700", "speed_fifty": "1820"}
    found = at_pump(run, profile, TANK, steep)
    assert (found["net"], found["power"], found["engine"]) == ("0", "0", None)
    assert at_pump(run, profile, {**TANK, "kind": "draft", "lift": "20"}, steep)["net"] == "0"
    # 100 psi less 230 ft of height, 99.82, is 0.18 that the pump must show, and 20 / 2.3 = 8.70 to lift
    barely = a_line(length="0", height="-230", end=fog("50", "100"))
    assert at_pump(run, profile, {**TANK, "kind": "draft", "lift": "20", "loss": "0"}, barely)["net"] == "9"
    # fed with more than it needs, the pump adds nothing either
    assert at_pump(run, profile, {**TANK, "kind": "fed", "intake": "200"})["net"] == "0"


def test_a_speed_is_read_by_the_pages_mark(run):
    """1,610 is a speed where a comma sets thousands apart; where it is the decimal mark either could be meant, and it is asked."""
    profile = {"pump_rated": "150", "speed_capacity": "1,610", "speed_seventy": "1700", "speed_fifty": "1820"}
    at_test = {**a_layout(a_line(length="0", end=fog("150", "150"))), "source": TANK}
    asked = {"layout": at_test, "shelf": SHELF, "profile": profile}
    assert run("layout.at_pump", "answer", units=UNITS, **asked)["engine"]["rpm"] == "1610"
    with pytest.raises(CalcError) as refusal:
        run("layout.at_pump", "answer", units={**UNITS, "decimal": ","}, **asked)
    assert (refusal.value.field, refusal.value.code) == ("speed_capacity", "thousands_or_decimals")


@pytest.mark.parametrize("name", ["speed_capacity", "speed_seventy", "speed_fifty", "pump_rated"])
def test_a_profile_is_refused_by_name(run, name):
    """A speed or a rating that is no number is refused at its own field; two speeds are enough for an estimate."""
    profile = {"pump_rated": "150", "speed_capacity": "1610", "speed_seventy": "1700", "speed_fifty": "1820"}
    with pytest.raises(CalcError) as refusal:
        at_pump(run, {**profile, name: "fast"})
    assert (refusal.value.field, refusal.value.code) == (name, "not_a_number")
    if name != "pump_rated":
        assert at_pump(run, {**profile, name: ""})["engine"] is not None
    assert at_pump(run.unheld, "no profile")["engine"] is None


def test_each_line_by_its_name_and_as_it_was(run):
    """Each nozzle stands under its own line's name, with its pressure while all was open beside what it is now."""
    found = flowing(run, a_wye(a_line(), a_line(id="B")), shut=["B"])["lines"]
    assert [line["id"] for line in found] == ["A", "B"]
    assert [line["open_outlet"] for line in found] == ["100", "100"]  # gated as asked, all open
    bare = {**a_layout(a_line()), "now": {"pressure": "", "gates": "set"}}
    told = run("layout.flowing", "now", layout=bare, shelf=SHELF, units=UNITS)["lines"]
    assert "open_flow" not in told[0] and told[0]["flow"] == "150"
    assert flowing(run, a_line(), pressure="0")["lines"][0]["flow"] == "0"


@pytest.mark.parametrize(("runs", "least"), [("1", "80"), ("2", "40")])
def test_surge_of_each_hose(run, runs, least):
    """By hand, as above: half the water in each of two hoses is half the surge, and 10 gpm of 150 are 5 psi."""
    assert bounds(run, runs=runs)["surge"]["least"] == least
    assert bounds(run, end=fog("10", "100"))["surge"]["least"] == "5"
    assert bounds(run, end=fog("20", "100"))["surge"]["least"] == "10"  # 10.8


def test_no_surge_without_hose(run):
    """A nozzle on the wye itself has no hose to surge in; half a foot is hose."""
    for length, surges in (("0", False), ("0.5", True)):
        layout = a_layout(a_wye(a_line(length=length)))
        told = run("layout.reach", "answer", layout=layout, shelf=SHELF, units=UNITS, line="A",
                   reach={"pump": "400", "flow": "150", "end": "100", "length": "200"})
        assert (told["surge"] is not None) == surges
