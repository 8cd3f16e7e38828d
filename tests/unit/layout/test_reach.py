"""How far a line goes for a flow, and what it passes at a length: worked by hand."""
import pytest

from calc.base.errors import CalcError
from tests.unit.layout.test_answer import OTHER_UNITS, SHELF, UNITS, a_layout, a_line, a_wye, fog

REACH = {"pump": "", "flow": "150", "end": "100", "length": "200"}


def bounds(run, *lines, line="A", units=UNITS, shelf=SHELF, **reach):
    """What is said of one line, with these entries."""
    return run("layout.reach", "answer", layout=a_layout(*lines), shelf=shelf, units=units, line=line, reach={**REACH, **reach})


@pytest.mark.parametrize(("line", "reach", "longest", "passes"), [
    # by hand, 15.5 psi per 100 ft at 100 gpm: 34.875 at 150; of 200 psi 100 are left: 286.7 ft; 100 = 31 Q^2: 179.6 gpm
    ({}, {"pump": "200"}, "286", "179"),
    # left empty the pump has nine tenths of 300: 170 / 34.875 = 487.5 ft; 170 = 31 Q^2: 234.2 gpm
    ({}, {}, "487", "234"),
    ({}, {"pump": "169.75"}, "200", "150"),           # as the line stands
    ({}, {"pump": "200", "end": "130"}, "200", "150"),  # 70 left: 200.7 ft; 70 = 31 Q^2: 150.3
    ({"height": "50"}, {"pump": "221.7"}, "286", "179"),  # 21.7 of height
    ({"height": "-50"}, {"pump": "178.3"}, "286", "179"),
    ({"runs": "2"}, {"pump": "200"}, "1146", "359"),  # two hoses: a quarter of the loss, twice the flow
    ({"device": "master"}, {"pump": "225"}, "286", "179"),  # 25 psi of the device
    ({"device": "master", "loss": "60"}, {"pump": "260"}, "286", "179"),
    # 60 at 300 gpm are 15 at 150; at Q hundreds 15 (Q / 1.5)^2 + 31 Q^2 = 115: 174.7 gpm
    ({"device": "master", "loss": "60", "loss_at": "300"}, {"pump": "215"}, "286", "174"),
    ({}, {"pump": "200", "length": "0"}, "286", None),  # no hose, no end to the flow
    ({}, {"pump": "100"}, "0", "0"),
])
def test_reach(run, line, reach, longest, passes):
    """What is left after the end, the height and the device goes into hose."""
    found = bounds(run, a_line(**line), **reach)
    assert (found["longest"], found["passes"]) == (longest, passes)


def test_nothing_left(run):
    """Where the end and the height take more than the pump has there is no hose and no flow, and what they take is said."""
    found = bounds(run, a_line(height="100"), pump="120")
    assert (found["longest"], found["passes"], found["taken"]) == (None, None, "143")  # 100 + 43.4


def test_behind_a_wye(run):
    """The way there is counted with all that goes through it, its device at that flow."""
    wye = a_wye(a_line(), a_line(id="B", length="100"))
    # by hand, 300 gpm: supply 2 x 9 = 18; 200 - 18 = 182 at the wye; 82 / 34.875 = 235.1 ft
    # flow Q beside B's 150: 18 becomes 2 (Q + 1.5)^2: 31 Q^2 + 2 (Q + 1.5)^2 = 100: 33 Q^2 + 6 Q = 95.5: Q = 1.6126
    found = bounds(run, wye, pump="200")
    assert (found["longest"], found["passes"]) == ("235", "161")
    # at 200 gpm 350 go through the wye, and it takes 10: 24.5 + 10; 200 - 134.5 = 65.5; 15.5 x 4 = 62 per 100 ft
    assert bounds(run, wye, pump="200", flow="200")["longest"] == "105"


@pytest.mark.parametrize(("lines", "limit"), [
    ([a_line()], "270"),
    ([a_line(hose="supply")], None),            # its test pressure is not known
    ([a_wye(a_line())], "270"),                 # the way there has no limit that is known
    ([a_line(height="-20")], "261"),            # its foot stands at 8.68 more: 261.32
    ([a_line(height="20")], "270"),
    ([a_line(height="-621")], "0"),             # 269.5 of height: half a psi is left
    ([a_wye(a_line(height="50"), height="50")], "291"),    # all of the hose that is known is 21.7 psi above the pump
    ([a_wye(a_line(height="50"), height="-20")], "261"),   # its foot is the wye
])
def test_limit(run, lines, limit):
    """The most the pump may show is the working pressure of the hose on the way, less what still water downhill adds."""
    assert bounds(run, *lines, pump="200")["limit"] == limit
    if limit != "0":
        assert bounds(run, *lines)["pump"] == (limit or "109")  # what the layout asks: 2 x 1.5^2 x 2 + 100


def test_other_lines_do_not_count(run):
    """Another line at the pump takes nothing from this one."""
    assert bounds(run, a_line(), a_line(id="B", length="400"), pump="200")["longest"] == "286"


OWN_LIMIT = {**SHELF, "hoses": {**SHELF["hoses"], "attack": {**SHELF["hoses"]["attack"], "work_psi": 199.9}}}


def test_a_working_limit_of_its_own(run):
    """Where the rig's profile has one, it counts and not nine tenths of the test pressure, in bar to two decimals and never past it."""
    assert (bounds(run, a_line(height="20"), shelf=OWN_LIMIT)["limit"], bounds(run, a_line(), shelf=OWN_LIMIT)["pump"]) == ("199", "199")
    pressure = {"factor": 0.0689476, "places": 2}  # the definition: 1 psi = 0.0689476 bar; 199.9 are 13.7826
    bar = {"shown": "bar", "systems": {**UNITS["systems"], "bar": {**UNITS["systems"]["ours"], "pressure": pressure}}}
    assert bounds(run, a_line(end=fog("150", "100@ours")), units=bar, shelf=OWN_LIMIT, end="6")["limit"] == "13.78"


@pytest.mark.parametrize(("pump", "more", "said"), [
    ("", {}, []), ("269", {}, []), ("275", {}, [("caution", "above_working_pressure", "275", "270")]), ("300", {}, [("stop", "above_test_pressure", "300", "300")]),
    ("265", {"height": "-20"}, [("caution", "above_working_pressure", "274", "270")]),  # its foot sees 8.68 more
    ("210", {"shelf": OWN_LIMIT}, [("caution", "above_working_pressure", "210", "200")]),
])
def test_hose_past_its_limit_is_said(run, pump, more, said):
    """A pressure typed past what the hose is worked at is cautioned as on the answer."""
    cautions = bounds(run, a_line(height=more.get("height", "0")), pump=pump, shelf=more.get("shelf", SHELF))["cautions"]
    assert [(each["level"], each["code"], each["amount"], each["limit"]) for each in cautions] == said


@pytest.mark.parametrize("line", ["A", "B"])
def test_hoses_that_share_an_end_have_no_bounds(run, line):
    """The length of either changes what the other carries."""
    assert bounds(run, a_line(), {**a_line(id="B"), "end": {"kind": "into", "line": "A"}}, line=line) is None


def test_what_the_line_has(run):
    """With no flow and no end pressure typed, the line's own stand: at 200 psi the same 286 ft as with them typed."""
    found = bounds(run, a_line(), pump="200", flow="", end="")
    assert (found["flow"], found["end"], found["longest"]) == ("150", "100", "286")


def test_unknown_line(run):
    """A line that is not there is refused."""
    with pytest.raises(CalcError) as refusal:
        bounds(run, a_line(), line="Z")
    assert (refusal.value.field, refusal.value.code) == ("line", "unknown")


def test_other_units(run):
    """In units of which seven make a psi, four a gpm and a quarter a foot: 200 psi, 150 gpm, 100 psi: 286.7 ft are 71."""
    line = a_line(length="50", end=fog("600", "700"))
    found = bounds(run, line, units=OTHER_UNITS, pump="1400", flow="600", end="700", length="50")
    assert (found["longest"], found["passes"], found["taken"]) == ("71", "718", "700")  # 179.6 gpm
    assert bounds(run, line, units=OTHER_UNITS, pump="200@ours", flow="600", end="700", length="50")["pump"] == "1400"


@pytest.mark.parametrize(("name", "text", "code"), [
    ("pump", "0", "not_positive"), ("pump", "x", "not_a_number"), ("flow", "0", "not_positive"),
    ("end", "-1", "negative"), ("length", "-1", "negative"), ("length", "", "empty"),
])
def test_refused(run, name, text, code):
    """What cannot be used is refused at its field."""
    with pytest.raises(CalcError) as refusal:
        bounds(run, a_line(), **{name: text})
    assert (refusal.value.field, refusal.value.code) == ("reach_" + name, code)
