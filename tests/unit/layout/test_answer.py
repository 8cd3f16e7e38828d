"""The Pressure page's answer: typed texts in, texts with their workings out."""
import pytest

from calc.base.errors import CalcError

PLACES = {"pressure": 0, "flow": 0, "length": 0, "diameter": 2, "velocity": 0, "volume": 0, "force": 0,
          "coefficient": 1, "friction_rate": 1, "elevation_rate": 1, "tip_constant": 1, "smooth_reaction_constant": 2,
          "fog_reaction_constant": 4}
SYSTEM = {kind: {"factor": 1, "places": places} for kind, places in PLACES.items()}
UNITS = {"shown": "ours", "systems": {"ours": SYSTEM}}
# easy made-up factors in the place of metric ones
OTHER_FACTORS = {"pressure": 7, "flow": 4, "length": 0.25, "diameter": 25, "velocity": 0.3, "volume": 4, "force": 4.5,
                 "coefficient": 2, "friction_rate": 20, "elevation_rate": 28}
OTHER_SYSTEM = {kind: {"factor": OTHER_FACTORS.get(kind, 1), "places": places} for kind, places in PLACES.items()}
OTHER_UNITS = {"shown": "other", "systems": {"ours": SYSTEM, "other": OTHER_SYSTEM}}
SHELF = {
    "hoses": {
        "attack": {"coefficient": 15.5, "bore_in": 1.75, "test_psi": 300, "least_usual_gpm": 95,
                   "most_usual_gpm": 200},
        "supply": {"coefficient": 2, "bore_in": 2.5, "test_psi": None},
    },
    "crews": {"1": {"limit_lbf": 60}, "2": {"limit_lbf": 80}},
    "appliances": {"wye": [[0, 0], [350, 10]], "master": [[0, 25]]},
}


def fog(flow="150", pressure="100"):
    """A fog nozzle as typed."""
    return {"kind": "fog", "flow": flow, "pressure": pressure}


def a_line(**given_facts):
    """200 ft of attack line with a fog nozzle, as typed, but for what is given."""
    return {**{"id": "A", "hose": "attack", "length": "200", "height": "0", "end": fog()}, **given_facts}


def a_wye(*branches, **given_facts):
    """100 ft of supply line to a wye with these branches."""
    return a_line(**{**{"id": "S", "hose": "supply", "length": "100", "end": {"lines": list(branches)}}, **given_facts})


def a_layout(*lines, crew="2"):
    """A layout as the page sends it."""
    return {"crew": crew, "lines": list(lines)}


def ask(run, layout, units=UNITS):
    """The answer of the page for this layout."""
    return run("layout.answer", "answer", layout=layout, shelf=SHELF, units=units)


@pytest.mark.parametrize(("height", "is_below"), [("0.5", False), ("0", False), ("-0.5", True), ("-20", True)])
def test_above_or_below_the_pump(run, height, is_below):
    """Half a foot up is not below."""
    assert ask(run, a_layout(a_line(height=height)))["lines"][0]["is_below"] == is_below


def test_single_line(run):
    """Every figure of one line is read out, with the terms of its working; all worked by hand."""
    answer = ask(run, a_layout(a_line(height="20")))
    assert answer.pop("pressure_psi") == pytest.approx(178.43, rel=1e-9)  # 100 + 69.75 + 8.68
    assert (answer.pop("loss_steps"), answer.pop("by_rule"), answer.pop("modern"), answer.pop("department")) == ({}, None, None, None)
    # 70 + 9 + 100 would print as 179 beside 178: so to a tenth, 69.75 cut to 69.7
    assert answer.pop("sum") == {"total": "178.4", "friction": ["69.7"], "nozzle": ["100"], "inlet": [], "elevation": ["8.7"], "appliance": []}
    assert answer == {"pressure": "178", "flow": "150", "cautions": [], "lines": [{
        "id": "A", "feeder": None, "into": None, "end_flow": "150", "length_ft": 200, "end": "fog", "device": "none", "flow": "150", "gate": None, "appliance": "0",
        "gauge": "178", "outlet": "100", "height": "20", "is_below": False,  # as typed
        "friction_rate": "34.9",  # 15.5 x 1.5^2 = 34.875 per 100 ft
        "velocity": "20",         # 577.5 in3/s / 2.405 in2 / 12 = 20.0 ft/s
        "water": "25",            # 2.405 in2 x 2400 in / 231 = 25.0 gal
        "reaction": "76",         # 0.0505 x 150 x 10 = 75.75
        "fall": {"lengths": [0, 200], "heights": [0, 20], "pressures": [pytest.approx(178.43), 100, 100]},
        "workings": {
            "friction": {"coefficient": "15.5", "hundreds_flow": "1.5", "hundreds_length": "2", "rate": "34.875",
                         "loss": "69.75"},
            "elevation": {"rate": "0.434", "rise": "20", "elevation": "8.68"},
            "inlet": {"outlet": "100", "friction": "69.75", "elevation": "8.68", "appliance": "0", "inlet": "178.43"},
            "nozzle": {"flow": "150", "pressure": "100", "reaction": "75.75", "constant": "0.0505"},
            "parts": {"inlet": "178.4", "friction": "69.7", "elevation": "8.7", "appliance": "0"},  # as in the sum, 15.5 x 1.5^2 x 2 = 69.75 and 20 x 0.434 = 8.68
            "department": None,
        },
    }]}


def test_smooth_bore(run):
    """A smooth-bore line shows its tip and the flow and push that follow from it."""
    end = {"kind": "smooth", "tip": "2,00", "pressure": "100"}
    (line,) = ask(run, a_layout(a_line(hose="supply", end=end)))["lines"]
    assert line["end"] == "smooth"
    # by hand: 29.7 x 4 x 10 = 1188 gpm; 1.57 x 4 x 100 = 628 lbf
    assert line["workings"]["nozzle"] == {"flow": "1188", "pressure": "100", "reaction": "628", "tip": "2",
                                          "flow_constant": "29.7", "constant": "1.57"}


@pytest.mark.parametrize(
    ("easy", "hard", "pressure", "appliance", "gate"),
    [
        # by hand, 100 ft branches: 100 + 15.5 x 1.75^2 = 147.47 at 175 gpm
        ("175", "175", "182", "10", None),  # 350 gpm: + 2 x 3.5^2 + 10 = 181.97
        ("174", "175", "172", "0", "1"),    # 349 gpm: + 2 x 3.49^2 = 171.83; easy 100 + 46.93, gate 0.54
        ("150", "175", "169", "0", "13"),   # 325 gpm: + 2 x 3.25^2 = 168.59; easy 100 + 34.88, gate 12.59
        ("174.5", "175", "172", "0", None),  # easy 100 + 47.20: a gate of 0.27 is read as none
    ],
)
def test_wye(run, easy, hard, pressure, appliance, gate):
    """A wye loses what its rule asks at the flow through it, and the easier branch is gated."""
    branches = [a_line(id=flow, length="100", end=fog(flow=flow)) for flow in (easy, hard)]
    branches[1]["id"] = "hard"
    answer = ask(run, a_layout(a_wye(*branches)))
    supply, easy_line, hard_line = answer["lines"]
    assert (answer["pressure"], supply["appliance"], supply["end"]) == (pressure, appliance, "joint")
    assert answer["loss_steps"] == {"wye": [{"from": "0", "loss": "0"}, {"from": "350", "loss": "10"}]}  # as on the shelf
    assert (easy_line["gate"], hard_line["gate"], hard_line["feeder"]) == (gate, None, "S")
    assert (supply["reaction"], "nozzle" in supply["workings"]) == (None, False)


def test_other_units(run):
    """Other units change what is typed and what is read, once each, and nothing between."""
    layout = a_layout(a_line(length="50", height="5", end=fog("600", "700")), crew="1")
    answer = ask(run, layout, OTHER_UNITS)
    (line,) = answer["lines"]
    # the layout of test_single_line: 50 / 0.25 = 200 ft, 5 / 0.25 = 20 ft, 600 / 4 = 150 gpm, 700 / 7 = 100 psi
    assert answer["pressure_psi"] == pytest.approx(178.43, rel=1e-9)
    # by hand: 178.43 x 7 = 1249.01; 69.75 x 7 = 488.25; 75.75 x 4.5 = 340.9; 24.99 x 4 = 99.96; 34.875 x 20 = 697.5
    assert (answer["pressure"], answer["flow"], line["workings"]["parts"]["friction"], line["reaction"]) == ("1249", "600", "488", "341")
    assert (line["water"], line["friction_rate"]) == ("100", "697.5")
    # hundreds of the page's units; 15.5 x 2
    assert line["workings"]["friction"] == {
        "coefficient": "31", "hundreds_flow": "6", "hundreds_length": "0.5", "rate": "697.5", "loss": "488.25"}
    assert line["workings"]["elevation"] == {"rate": "12.152", "rise": "5", "elevation": "60.76"}  # 0.434 x 28
    (caution,) = answer["cautions"]
    assert (caution["amount"], caution["limit"]) == ("341", "270")  # 60 x 4.5


def test_fall_in_other_units(run):
    """What is drawn is in the page's units: lengths and heights by 0.25, pressures by 7; a device takes its loss at the end."""
    nozzle = a_line(length="50", height="15", end=fog("600", "700"), device="master")
    supply, line = ask(run, a_layout(a_wye(nozzle, length="25", height="10")), OTHER_UNITS)["lines"]
    assert (supply["fall"]["lengths"], supply["fall"]["heights"]) == ([0, 25], [0, 10])
    assert (line["fall"]["lengths"], line["fall"]["heights"]) == ([25, 75], [10, 15])
    # by hand, the layout of test_single_line behind 25 psi of a master stream: 178.43 + 25 in, 125 before the device, 100 behind
    assert line["fall"]["pressures"] == pytest.approx([203.43 * 7, 875, 700])


@pytest.mark.parametrize(("pressure", "is_read"), [("1000", True), ("1000.5", False)])
def test_past_any_hose(run, pressure, is_read):
    """By hand: 100 gpm through 50,000 ft of C 2 lose 1,000 psi; with 1,000 at the nozzle just what any fire hose could take."""
    layout = a_layout(a_line(hose="supply", length="50000", end=fog("100", pressure)))
    if is_read:
        assert ask(run, layout)["pressure"] == "2000"
        return
    with pytest.raises(CalcError) as refusal:
        ask(run, layout)
    assert (refusal.value.code, refusal.value.facts) == ("beyond_any_hose", {"line": "A"})


def test_cautions(run):
    """What to be careful of is read out in the page's units, the stop first."""
    answer = ask(run, a_layout(a_line(length="600", end=fog(flow="210")), crew="1"))
    # by hand: 100 + 15.5 x 2.1^2 x 6 = 510.13 psi; 0.0505 x 210 x 10 = 106.05 lbf
    assert answer["cautions"] == [
        {"level": "stop", "code": "above_test_pressure", "line": "A", "crew": "1", "amount": "510", "limit": "300", "reaction": "106"},
        {"level": "caution", "code": "reaction_above_crew", "line": "A", "crew": "1", "amount": "106", "limit": "60", "reaction": "106"},
        {"level": "caution", "code": "flow_above_usual", "line": "A", "crew": "1", "amount": "210", "limit": "200", "reaction": "106"},
    ]


TYPED = [(field, text, code) for field in ("length", "height") for text, code in (
    ("", "empty"), ("far", "not_a_number"), (None, "not_a_number"), (200, "not_a_number"), (True, "not_a_number"),
    ("99999999", "too_large"))]
TYPED += [("length", "-1", "negative"), ("hose", "garden", "unknown"), ("hose", None, "unknown"),
          ("hose", ["attack"], "unknown")]
TYPED_AT_NOZZLE = [(field, text, code) for field in ("flow", "pressure", "tip") for text, code in (
    ("", "empty"), ("0", "not_positive"), ("-1", "not_positive"), ("some", "not_a_number"), (None, "not_a_number"),
    ("99999999", "too_large"), ("0.0000000001", "too_small"))]


@pytest.mark.parametrize(("field", "text", "code"), TYPED)
def test_refused_line(run, field, text, code):
    """What is typed wrong for a line is refused under the name it has on the page, with the line."""
    with pytest.raises(CalcError) as refusal:
        ask(run, a_layout(a_wye(a_line(id="B"), a_line(**{field: text}))))
    assert (refusal.value.field, refusal.value.code, refusal.value.facts["line"]) == (field, code, "A")


@pytest.mark.parametrize(("field", "text", "code"), TYPED_AT_NOZZLE)
def test_refused_nozzle(run, field, text, code):
    """What is typed wrong for a nozzle is refused under the name it has on the page, with the line."""
    end = {"kind": "smooth", "tip": "1", "pressure": "50"} if field == "tip" else fog()
    with pytest.raises(CalcError) as refusal:
        ask(run, a_layout(a_wye(a_line(id="B"), a_line(end={**end, field: text}))))
    assert (refusal.value.field, refusal.value.code, refusal.value.facts["line"]) == (field, code, "A")


def nested(depth):
    """A layout with this many wyes behind one another."""
    line = a_line()
    for number in range(depth):
        line = a_wye(line, id=f"S{number}", length="0")
    return a_layout(line)


@pytest.mark.parametrize(
    ("layout", "field", "code"),
    [
        (None, "crew", "unknown"),
        ([], "crew", "unknown"),
        (a_layout(a_line(), crew="9"), "crew", "unknown"),
        (a_layout(a_line(), crew=["1"]), "crew", "unknown"),
        ({"crew": "1"}, "layout", "damaged"),
        ({"crew": "1", "lines": {"1": a_line()}}, "layout", "damaged"),
        (a_layout("hose"), "layout", "damaged"),
        (a_layout(a_line(id=7)), "layout", "damaged"),
        (a_layout(a_line(end=[])), "layout", "damaged"),
        (a_layout(a_line(end={"lines": "two"})), "layout", "damaged"),
        (a_layout(a_line(end={"kind": "open"})), "kind", "unknown"),
        (a_layout(a_line(end={"kind": ["fog"]})), "kind", "unknown"),
        (a_layout(), "lines", "missing"),
        (a_layout(a_wye()), "lines", "missing"),
        (a_layout(a_line(), a_line()), "id", "duplicate"),
        (a_layout(a_line(height="10000")), "layout", "beyond_any_hose"),   # 4340 psi of height alone
        (a_layout(a_line(height="-10000")), "layout", "beyond_any_hose"),
        (nested(20), "layout", "too_deep"),
        (nested(25), "layout", "too_deep"),
    ],
)
def test_refused_lay(run, layout, field, code):
    """A layout that is damaged, too deep or beyond any hose is refused."""
    with pytest.raises(CalcError) as refusal:
        ask(run, layout)
    assert (refusal.value.field, refusal.value.code) == (field, code)


def test_the_line_that_goes_beyond_any_hose_is_named(run):
    """Of a line and what feeds it, the one whose own entries are past any hose. By hand: 15.5 x 15^2 x 2 = 6975 psi."""
    with pytest.raises(CalcError) as refusal:
        ask(run, a_layout(a_wye(a_line(end=fog("1500")), a_line(id="B"))))
    assert refusal.value.facts["line"] == "A"


def test_deepest_lay(run):
    """Nineteen wyes behind one another, the most allowed, are read."""
    answer = ask(run, nested(19))
    assert answer["pressure"] == "170"  # by hand: 100 + 69.75, the wyes lose nothing below 350 gpm
    assert len(answer["lines"]) == 20


def test_refused_absurd_flow(run):
    """A flow no hose could carry is refused with its line, not only where its length shows it."""
    with pytest.raises(CalcError) as refusal:  # 29.7 x 100^2 x 10 = 2,970,000 gpm through no length at all
        ask(run, a_layout(a_line(end={"kind": "smooth", "tip": "100", "pressure": "100"}, length="0")))
    told = refusal.value
    assert (told.field, told.code, told.facts.get("line")) == ("layout", "beyond_any_hose", "A")
