"""Elevation is typed above the pump, for every end and every joint; layouts of the old kind are converted."""
import pytest

from calc.base.errors import CalcError
from site_src.content import layouts, units
from tests.unit.layout.test_answer import OTHER_UNITS, SHELF, UNITS, a_layout, a_line, a_wye, ask

US, BAR = units.shown_in("US"), units.shown_in("bar")
FT_A_METER = 1 / 0.3048  # the international foot


def old(line, rise):
    """A line as it was saved before: its end above the joint before it, or above the pump."""
    line = {**line, "rise": rise}
    del line["height"]
    return line


def pressures(run, layout, shown=UNITS):
    answer = ask(run, layout, shown)
    return answer["pressure_psi"], [line["fall"]["heights"] for line in answer["lines"]]


@pytest.mark.parametrize(("joint", "end", "psi"), [
    # by hand: 169.75 at the joint, 100 ft of 2 1/2 (C 2) with 150 gpm 4.5, and 0.434 psi a foot of the end, whatever the joint's
    ("0", "0", 174.25),
    ("108", "108", 221.122),   # 0.434 x 108 = 46.872
    ("0", "108", 221.122),
    ("108", "0", 174.25),
    ("-30", "12.5", 179.675),  # 0.434 x 12.5 = 5.425
])
def test_above_the_pump(run, joint, end, psi):
    """The end's own elevation counts, and the picture ends at it; the joint's moves only the pressure there."""
    answer = ask(run, a_layout(a_wye(a_line(height=end), height=joint)))
    assert answer["pressure_psi"] == pytest.approx(psi, rel=1e-9)
    supply, line = answer["lines"]
    assert (supply["fall"]["heights"], line["fall"]["heights"]) == ([0, float(joint)], [float(joint), float(end)])


@pytest.mark.parametrize(("joint", "end", "psi"), [
    ("108", "0", 221.122),  # by hand as above: 0.434 x (108 + 0)
    ("0", "108", 221.122),
    ("20", "-5", 180.76),   # 0.434 x 15 = 6.51
    ("-7.25", "7.25", 174.25),
])
def test_old_kind(run, joint, end, psi):
    """An old layout has the pressures it had, before and after it is converted, and ends at the sum of its heights."""
    layout = a_layout(old(a_wye(old(a_line(), end)), joint))
    assert pressures(run, layout) == (pytest.approx(psi, rel=1e-12), [[0, float(joint)], [float(joint), float(joint) + float(end)]])
    new = run("layout.heights", "converted", layout=layout, units=UNITS)
    assert "rise" not in str(new)
    assert pressures(run, new)[0] == pytest.approx(psi, rel=1e-12)
    assert ask(run, new)["lines"][1]["fall"]["heights"][1] == float(joint) + float(end)
    assert run("layout.heights", "converted", layout=new, units=UNITS) == new


@pytest.mark.parametrize(("joint", "end", "height"), [
    ("108@US", "0@US", "108@US"),
    ("0@US", "1,5@US", "1,5@US"),        # level before it: as typed
    ("3@SI", "0@US", "3@SI"),            # level behind it: as typed before
    ("3@SI", "10@US", "19.84251969@US"),  # 3 m are 9.842519685 ft
    ("10@US", "3@SI", "6.0480@SI"),      # 10 ft are 3.048 m; a zero more, so that it is not read as 6048
    ("0.1@SI", "0.2@SI", "0.3@SI"),
    ("-10@imperial", "-0.5@US", "-10.5@US"),
    ("\u22124@US", "4@US", "0@US"),
    ("4", "5", "9@US"),                  # untagged: the system that is shown
    ("108@US", "up@US", "up@US"),        # no number stays as typed
    ("up@US", "8@US", ""),               # behind one, nothing is made up
])
def test_text_of_a_converted_height(run, joint, end, height):
    """By hand: the two heights in the system of the second; what is no number is never made into one."""
    layout = a_layout(old(a_wye(old(a_line(), end), old(a_line(id="B"), end)), joint))
    supply = run("layout.heights", "converted", layout=layout, units=US)["lines"][0]
    assert supply["height"] == joint
    assert [line["height"] for line in supply["end"]["lines"]] == [height, height]


@pytest.mark.parametrize(("joint", "end"), [("3@SI", "10@US"), ("10@US", "3@bar"), ("-33.3@imperial", "7.77@SI"), ("0.1@SI", "1234.5@US")])
def test_mixed_systems_keep_their_pressure(run, joint, end):
    """By hand: 174.25 psi and 0.434 psi for each foot of the two together, to a billionth of a psi."""
    def feet(text):
        typed, system = text.split("@")
        return float(typed) * (1 if system in ("US", "imperial") else FT_A_METER)
    shelf_hose = {"hose": "attack-1.75", "length": "200@US", "end": {"kind": "fog", "flow": "150@US", "pressure": "100@US"}}
    layout = {"crew": "2", "lines": [{
        "id": "S", "hose": "attack-2.5", "length": "100@US", "rise": joint, "device": "wye", "end": {"lines": [
            {"id": "A", "rise": end, **shelf_hose}]}}]}
    shelf = {**SHELF, "hoses": {"attack-1.75": SHELF["hoses"]["attack"], "attack-2.5": SHELF["hoses"]["supply"]}}
    psi = 174.25 + 0.434 * (feet(joint) + feet(end))
    for each in (layout, run("layout.heights", "converted", layout=layout, units=US)):
        for shown in (US, BAR):
            assert run("layout.answer", "answer", layout=each, shelf=shelf, units=shown)["pressure_psi"] == pytest.approx(psi, abs=2e-8)


def test_typed_since_goes_first(run):
    """A height typed into an old layout before it was converted stands, and lines behind go on from it."""
    joint = {**old(a_wye(old(a_line(), "8")), "100"), "height": "50"}
    assert pressures(run, a_layout(joint))[0] == pytest.approx(174.25 + 0.434 * 58, rel=1e-12)
    new = run("layout.heights", "converted", layout=a_layout(joint), units=UNITS)["lines"][0]
    assert (new["height"], new["end"]["lines"][0]["height"]) == ("50", "58@ours")


def test_no_height_at_all(run):
    """A line with neither stays empty, to be typed, at the pump and behind a joint."""
    bare = {name: value for name, value in a_line().items() if name != "height"}
    new = run.unheld("layout.heights", "converted", layout=a_layout(bare, old(a_wye(bare), "5")), units=UNITS)["lines"]
    assert [new[0]["height"], new[1]["end"]["lines"][0]["height"]] == ["", ""]


def test_old_text_is_refused_at_its_line(run):
    """An old elevation that is no number is refused as a new one is."""
    with pytest.raises(CalcError) as refusal:
        ask(run, a_layout(old(a_line(), "up")))
    assert (refusal.value.field, refusal.value.code, refusal.value.facts["line"]) == ("height", "not_a_number", "A")


def test_other_units(run):
    """A height is converted from the system it was typed in. By hand: 5 of a unit four to the foot's one: 20 ft."""
    answer = ask(run, a_layout(a_line(length="50", height="5")), OTHER_UNITS)
    assert answer["lines"][0]["fall"]["heights"] == [0, 5]
    assert answer["lines"][0]["workings"]["elevation"]["rise"] == "5"


@pytest.mark.parametrize(("family", "shown", "ends_at"), [("customary", "US", 108), ("metric", "SI", 31.5)])
def test_tenth_floor(run, family, shown, ends_at):
    """The tenth floor reads 108 ft at its line, as at its joint: nine floors of 12 ft above the first; 31.5 m of 3.5 m."""
    layout = layouts.ready(family)["standpipe"]
    supply = layout["lines"][0]
    assert supply["height"] == supply["end"]["lines"][0]["height"] == f"{ends_at}@{shown}"
