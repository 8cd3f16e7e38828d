"""A typed layout: devices, hoses side by side, every kind of end."""
import pytest

from calc.base.errors import CalcError
from tests.unit.layout.test_answer import SHELF, UNITS, a_layout, a_line, a_wye, ask, fog, nested

AUTOMATIC = {"kind": "automatic", "least": "60", "flow": "150", "pressure": "100"}
INLET = {"kind": "inlet", "flow": "500", "pressure": "150"}


def test_hoses_side_by_side(run):
    """Two hoses that share the water lose a quarter; the master stream device takes its own, and no crew holds it."""
    end = {"kind": "smooth", "tip": "1.5", "pressure": "80"}
    answer = ask(run, a_layout(a_line(hose="supply", runs="2", device="master", end=end), crew="1"))
    # by hand: 29.7 x 2.25 x sqrt(80) = 597.70 gpm; half of it in each: 2 x 2.98850^2 x 2 = 35.72; 80 + 35.72 + 25
    assert answer["pressure_psi"] == pytest.approx(140.72, abs=0.01)
    assert [caution["code"] for caution in answer["cautions"]] == ["monitor_hold"]
    assert answer["loss_steps"] == {"master": [{"from": "0", "loss": "25"}]}  # as on the shelf


def test_loss_as_typed(run):
    """A loss typed for a device stands in place of the usual one, also at nothing."""
    wye = a_wye(a_line(end=fog("200")), a_line(id="B", end=fog("200")))
    # by hand, 400 gpm: 100 + 15.5 x 4 x 2 = 224 at the wye, + 2 x 16 x 1 = 32, + 10 from 350 gpm
    for loss, psi in (("", 266), ("15", 271), ("0", 256)):
        assert ask(run, a_layout({**wye, "loss": loss}))["pressure_psi"] == pytest.approx(psi, rel=1e-9)


@pytest.mark.parametrize("runs", range(1, 13))
def test_up_to_twelve_hoses_side_by_side(run, runs):
    """By hand: one hose loses 69.75 psi at 150 gpm, and each of several carries its share: the square of it."""
    answer = ask(run, a_layout(a_line(runs=str(runs))))
    assert answer["pressure_psi"] == pytest.approx(100 + 69.75 / runs ** 2, rel=1e-9)
    assert float(answer["lines"][0]["workings"]["friction"]["hundreds_flow"]) == pytest.approx(1.5 / runs, abs=0.0051)  # to two decimals


@pytest.mark.parametrize(("device", "warns"), [("wye", True), ("master", False), ("aerial", False)])
def test_only_what_a_crew_holds_is_weighed_against_it(run, device, warns):
    """By hand: 150 gpm at 100 psi push with 75.75 lbf, too much for one person; a fixed device takes that itself."""
    shelf = {**SHELF, "appliances": {**SHELF["appliances"], "aerial": [[0, 25]]}}
    answer = run("layout.answer", "answer", layout=a_layout(a_line(device=device), crew="1"), shelf=shelf, units=UNITS)
    assert ("reaction_above_crew" in [caution["code"] for caution in answer["cautions"]]) == warns


@pytest.mark.parametrize(("line", "flow_gpm", "psi"), [
    ({"device": "none"}, 350, 0),
    ({"device": "wye"}, 349, 0), ({"device": "wye"}, 350, 10),  # the shelf's steps: 10 psi from 350 gpm on
    ({"device": "wye", "appliance_psi": 0, "has_own_loss": True}, 350, 0),
])
def test_what_a_device_takes(run, line, flow_gpm, psi):
    """The usual loss by the flow, or its own as typed, nothing too."""
    assert run("layout.typed", "appliance_psi", line=line, flow_gpm=flow_gpm, shelf=SHELF) == psi


@pytest.mark.parametrize(("end", "psi"), [
    (AUTOMATIC, 169.75),  # by hand: as a fog nozzle at its greatest flow, 69.75 + 100
    ({**AUTOMATIC, "least": "150"}, 169.75),  # its least flow may be its greatest
    (INLET, 150 + 15.5 * 25 * 2),  # by hand: 500 gpm to an inlet that shall see 150
])
def test_ends(run, end, psi):
    """An automatic nozzle is reckoned at its greatest flow; an inlet takes what it shall see and pushes nobody."""
    answer = ask(run, a_layout(a_line(end=end), crew="1"))
    assert answer["pressure_psi"] == pytest.approx(psi, rel=1e-9)
    assert (answer["lines"][0]["reaction"] is None) == (end is INLET)


@pytest.mark.parametrize(("facts", "field", "code"), [
    ({"runs": "0"}, "runs", "unknown"),
    ({"runs": "13"}, "runs", "unknown"),
    ({"runs": 2}, "runs", "unknown"),
    ({"device": "hydrant"}, "device", "unknown"),
    ({"device": ["wye"]}, "device", "unknown"),
    ({"device": "wye", "loss": "-1"}, "loss", "negative"),
    ({"device": "wye", "loss": "much"}, "loss", "not_a_number"),
    ({"end": {**AUTOMATIC, "least": "151"}}, "least", "above_greatest"),
    ({"end": {**AUTOMATIC, "least": ""}}, "least", "empty"),
    ({"end": {**INLET, "pressure": "0"}}, "pressure", "not_positive"),
])
def test_refused(run, facts, field, code):
    """What cannot be used is refused at its field, with its line."""
    with pytest.raises(CalcError) as refusal:
        ask(run, a_layout(a_line(**facts)))
    assert (refusal.value.field, refusal.value.code, refusal.value.facts["line"]) == (field, code, "A")


def test_a_refusal_keeps_its_facts(run):
    """A line's refusal says what was too much beside which line it was; one of the whole layout names no line."""
    with pytest.raises(CalcError) as refusal:
        ask(run, a_layout(a_line(length="99999999")))
    assert (refusal.value.field, refusal.value.facts) == ("length", {"line": "A", "most": 1e7})
    with pytest.raises(CalcError) as refusal:
        ask(run, nested(20))
    assert (refusal.value.field, refusal.value.facts) == ("layout", {"most": 20})


def test_two_lines_at_the_pump(run):
    """Two lines at the pump: the harder one sets it, the easier one is gated by the difference."""
    answer = ask(run, a_layout(a_line(), a_line(id="B", length="100")))
    easy, hard = {line["id"]: line for line in answer["lines"]}["B"], answer["lines"][0]
    # by hand: 169.75 and 100 + 34.875; the difference is 34.875
    assert (answer["pressure"], answer["flow"], hard["gate"], easy["gate"]) == ("170", "300", None, "35")


def test_fall_goes_on_behind_a_joint(run):
    """What is drawn of a line starts where the line before it ended, in length and in height."""
    answer = ask(run, a_layout(a_wye(a_line(height="15"), height="20")))
    supply, line = answer["lines"]
    assert (supply["fall"]["lengths"], supply["fall"]["heights"]) == ([0, 100], [0, 20])
    assert (line["fall"]["lengths"], line["fall"]["heights"]) == ([100, 300], [20, 15])


@pytest.mark.parametrize(("rule", "told"), [
    (None, None),
    ("square", None),
    # by hand: 2 x 1.5^2 + 1.5 = 6 per 100 ft, 12 on 200 ft, and 100
    ("two_q_squared_plus_q", {"rule": "two_q_squared_plus_q", "pressure": "112"}),
])
def test_own_friction_rule(run, rule, told):
    """A department's rule is answered beside the formula, never in its place."""
    hoses = {"attack": {**SHELF["hoses"]["attack"], "size_in": 2.5}}
    shelf = {**SHELF, "hoses": hoses, "rule": rule} if rule else SHELF
    answer = run("layout.answer", "answer", layout=a_layout(a_line()), shelf=shelf, units=UNITS)
    assert (answer["by_rule"], answer["pressure"]) == (told, "170")


def test_own_friction_rule_that_does_not_fit(run):
    """A rule made for another size says which line it does not fit, and gives no figure."""
    hoses = {"attack": {**SHELF["hoses"]["attack"], "size_in": 1.75}}
    shelf = {**SHELF, "hoses": hoses, "rule": "two_q_squared_plus_q"}
    answer = run("layout.answer", "answer", layout=a_layout(a_line()), shelf=shelf, units=UNITS)
    assert answer["by_rule"] == {"rule": "two_q_squared_plus_q", "code": "not_for_this_rule", "line": "A"}


def test_a_waterway_is_its_builders_to_rate(run):
    """The handbook's 25 psi stand with a caution until the builder's figure is typed, which is then taken as it is."""
    shelf = {**SHELF, "appliances": {**SHELF["appliances"], "aerial": [[0, 25]]}}

    def asked(**line):
        answer = run("layout.answer", "answer", layout=a_layout(a_line(device="aerial", **line)), shelf=shelf, units=UNITS)
        return answer["pressure_psi"], [(each["code"], each["amount"]) for each in answer["cautions"]]

    assert asked() == (pytest.approx(194.75), [("waterway_usual", "25")])  # by hand: 169.75 + 25
    assert asked(loss="75") == (pytest.approx(244.75), [])


def test_a_standpipe_says_what_comes_first(run):
    """More pump pressure does not help behind a regulating device: said with every standpipe."""
    shelf = {**SHELF, "appliances": {**SHELF["appliances"], "standpipe": [[0, 25]]}}
    answer = run("layout.answer", "answer", layout=a_layout(a_wye(a_line(), device="standpipe")), shelf=shelf, units=UNITS)
    assert [(each["code"], each["line"]) for each in answer["cautions"]] == [("regulated_outlets", "S")]


def test_no_loss_of_a_device_that_is_not_there(run):
    """A loss typed for a device that was taken away stands nowhere on the page, and counts nowhere either."""
    line = a_line(end=fog("150", "100"))
    assert ask(run, a_layout({**line, "loss": "10@US"}))["pressure_psi"] == ask(run, a_layout(line))["pressure_psi"]


def two_into_one(**second):
    """A monitor on one hose, and a second of the same from the pump into it."""
    first = a_line(end=fog(flow="600", pressure="100"), device="wye", loss="25")
    return [first, {**a_line(id="B", length="400"), "end": {"kind": "into", "line": "A"}, **second}]


def test_a_second_hose_into_the_same_end(run):
    """By hand: hoses of 200 and 400 ft share 1 to 1/root 2, so 351.5 and 248.5 of 600 gpm, and lose 15.5 x 3.515^2 x 2 = 383 alike."""
    answer = ask(run, a_layout(*two_into_one()))
    first, second = answer["lines"]
    assert (first["flow"], first["end_flow"], second["flow"], second["into"], second["end"]) == ("351", "600", "249", "A", "into")
    assert answer["pressure"] == "508"  # 100 + 25 + 383
    assert second["height"] is None and second["outlet"] == "125"


def test_a_second_hose_rises_with_the_end_it_goes_into(run):
    """Its own height is not asked: what the first rises, it does."""
    lines = two_into_one()
    lines[0]["height"] = "100"
    answer = ask(run, a_layout(*lines))
    assert [line["workings"]["parts"]["elevation"] for line in answer["lines"]] == ["43", "43"]


@pytest.mark.parametrize(("flow", "loss"), [("349.5", "0"), ("350", "10")])
def test_a_joint_before_two_hoses_counts_their_nozzle_once(run, flow, loss):
    """A wye loses 10 psi from 350 gpm on: what comes in by the second hose is of the same nozzle."""
    first, second = two_into_one()
    assert ask(run, a_layout(a_wye({**first, "end": fog(flow=flow)}, second)))["lines"][0]["appliance"] == loss


@pytest.mark.parametrize("into", ["B", "Z", None, 3])
def test_a_second_hose_goes_into_a_line_beside_it(run, into):
    """One from the same place that has an end of its own."""
    with pytest.raises(CalcError) as refused:
        ask(run.unheld, a_layout(*two_into_one(end={"kind": "into", "line": into})))
    assert (refused.value.field, refused.value.code, refused.value.facts["line"]) == ("into", "unknown", "B")


@pytest.mark.parametrize(("hose", "expected"), [
    ({}, None),
    ({"modern": [0.06, 0.07]}, {"least": "80", "most": "90"}),  # by hand: 20 + 0.06 x 10^2 x 10, and 0.07, beside 100 by C 0.08
    ({"modern": [0.06, 0.07], "origin": "handbook"}, {"least": "80", "most": "90"}),
    ({"modern": [0.06, 0.07], "origin": "measured"}, None),
])
def test_hose_as_measured_of_late_gives_a_range(run, hose, expected):
    """Beside the handbook's answer, where its figure is used; a department's own figure stands alone."""
    shelf = {**SHELF, "hoses": {"large": {"coefficient": 0.08, "bore_in": 5, **hose}}}
    line = a_line(hose="large", length="1000", end={"kind": "inlet", "flow": "1000", "pressure": "20"})
    answer = run("layout.answer", "answer", layout=a_layout(line), shelf=shelf, units=UNITS)
    assert (answer["pressure"], answer["modern"]) == ("100", expected)


DEPARTMENT = {"coefficient": 0.065, "least": 0.06, "most": 0.0725, "readings": 7, "rigs": 3, "left_out": 0}


@pytest.mark.parametrize(("origin", "expected"), [({}, "85"), ({"origin": "handbook"}, "85"), ({"origin": "measured"}, None), ({"origin": "pooled"}, None)])
def test_a_departments_hose_stands_beside_the_handbooks(run, origin, expected):
    """By hand: 20 + 0.065 x 10^2 x 10 = 85 beside 100 by C 0.08; a rig's own figure stands alone, and the working says what was measured either way."""
    shelf = {**SHELF, "hoses": {"large": {"coefficient": 0.08, "bore_in": 5, "department": DEPARTMENT, **origin}}}
    line = a_line(hose="large", length="1000", end={"kind": "inlet", "flow": "1000", "pressure": "20"})
    answer = run("layout.answer", "answer", layout=a_layout(line), shelf=shelf, units=UNITS)
    assert (answer["pressure"], answer["department"]) == ("100", expected)
    assert answer["lines"][0]["workings"]["department"] == {"coefficient": "0.065", "least": "0.06", "most": "0.0725", "readings": "7", "rigs": "3"}


@pytest.mark.parametrize(("flow", "psi"), [("750", 33.75), ("1250", 93.75), ("1000", 60)])
def test_a_builders_loss_goes_with_the_square_of_the_flow(run, flow, psi):
    """One measured loss gives all others: 60 psi at 1,000 gpm is 33.8 at 750 and 93.8 at 1,250 (aerial practice, square law)."""
    line = a_line(hose="supply", length="0", device="master", loss="60", loss_at="1000", end=fog(flow, "100"))
    answer = run("layout.answer", "answer", layout=a_layout(line), shelf=SHELF, units=UNITS)
    assert answer["pressure_psi"] == pytest.approx(100 + psi)


@pytest.mark.parametrize(("typed", "code"), [("0", "not_positive"), ("-5", "not_positive"), ("x", "not_a_number")])
def test_the_flow_of_a_builders_loss_is_more_than_nothing(run, typed, code):
    """Refused where it stands."""
    with pytest.raises(CalcError) as refused:
        ask(run, a_layout(a_line(device="master", loss="60", loss_at=typed)))
    assert (refused.value.field, refused.value.code, refused.value.facts["line"]) == ("loss_at", code, "A")


def test_a_loss_beyond_any_hose_is_the_line_s_that_has_the_device(run):
    """40 psi at 20 gpm is 36,000 at 600: said of the line with the device, not of the second hose into it."""
    first, second = two_into_one()
    with pytest.raises(CalcError) as refused:
        ask(run, a_layout({**first, "loss": "40", "loss_at": "20"}, second))
    assert (refused.value.code, refused.value.facts["line"]) == ("beyond_any_hose", "A")


def test_a_device_s_own_limit_is_said_at_the_answer(run):
    """By hand, 29.7 x d^2 x the root of P: a 2 in tip at 80 psi flows 1,063 gpm, over 800, and pushes back 1.57 x 4 x 80 = 502 lbf; 1 3/8 in flows 502."""
    def stops(tip):
        line = a_line(hose="supply", device="master", device_most="800", end={"kind": "smooth", "tip": tip, "pressure": "80"})
        answer = run("layout.answer", "answer", layout=a_layout(line), shelf=SHELF, units=UNITS)
        return [(row["amount"], row["limit"], row["reaction"]) for row in answer["cautions"] if row["code"] == "device_over"]
    assert stops("2") == [("1063", "800", "502")]
    assert stops("1.375") == []


@pytest.mark.parametrize(("typed", "code"), [("0", "not_positive"), ("lots", "not_a_number")])
def test_a_device_s_own_limit_is_more_than_nothing(run, typed, code):
    """Refused where it stands; without a device it counts for nothing."""
    with pytest.raises(CalcError) as refused:
        ask(run, a_layout(a_line(device="master", device_most=typed)))
    assert (refused.value.field, refused.value.code, refused.value.facts["line"]) == ("device_most", code, "A")
    ask(run, a_layout(a_line(device_most="0")))
