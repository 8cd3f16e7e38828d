"""The hydrant: pitot, class, more lines, and what reaches the pump."""
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError

TEST = {"static_psi": 65, "residual_psi": 50, "flow_gpm": 839.25}
LINE = {"coefficient": 0.08, "length_ft": 500, "rise_ft": 10}


@pytest.mark.parametrize(
    ("pitot_psi", "factor"),
    [
        # NFPA 291 large-outlet factors, from memory; 0.83 published in an engineering forum
        (2, 0.97), (3, 0.92), (4, 0.89), (5, 0.86), (6, 0.84), (7, 0.83), (40, 0.83),
        (2.5, 0.945),  # by hand: half way between 0.97 and 0.92
    ],
)
def test_large_outlet(run, pitot_psi, factor):
    """A pumper outlet gives less than its pitot says, by the table."""
    assert run("supply.hydrant", "large_outlet_factor", pitot_psi=pitot_psi) == pytest.approx(factor, rel=1e-9)


@pytest.mark.parametrize(
    ("bore_in", "pitot_psi", "coefficient", "outlets", "expected_gpm"),
    [
        (2.5, 25, 0.9, 1, 839.25),       # by hand: 29.84 x 0.9 x 6.25 x 5
        (2.5, 25, 0.9, 2, 1678.5),       # two alike
        (4.5, 9, 0.9, 1, 1354.1),        # by hand: 29.84 x 0.9 x 20.25 x 3 = 1631.5, x 0.83
        (2.5, 1, 0.8, 1, 149.2),         # a small outlet has no least reading: 29.84 x 0.8 x 6.25
    ],
)
def test_outlets(run, bore_in, pitot_psi, coefficient, outlets, expected_gpm):
    """Flow by pitot grows with the outlets, and carries the large-outlet factor past 3 in."""
    flow_gpm = run("supply.hydrant", "outlets_flow_gpm", bore_in=bore_in, pitot_psi=pitot_psi, discharge_coefficient=coefficient,
                   outlets=outlets)
    assert flow_gpm == pytest.approx(expected_gpm, rel=1e-4)


@pytest.mark.parametrize(
    ("flow_gpm", "name"),
    # NFPA 291 as driver/operator study cards report it: 1,500 and more, 1,000 to 1,499, 500 to 999, under 500
    [(1500, "AA"), (1499, "A"), (1000, "A"), (999, "B"), (500, "B"), (499, "C"), (0, "C")],
)
def test_class(run, flow_gpm, name):
    """Each class begins at its flow."""
    assert run("supply.hydrant", "hydrant_class", flow_gpm=flow_gpm) == name


@pytest.mark.parametrize(
    ("static_psi", "residual_psi", "percentage", "first_digit", "squaring"),
    [
        # by hand: percent of static to 10, 15, 25; drop to 1, 2, 3 times the first digit; static - drop n^2 >= 20
        (65, 58, 2, 2, 1),    # 10.8 %; 7 is over 6, not over 12; 65 - 28 = 37 with two, 65 - 63 = 2 with three
        (80, 75, 3, 3, 2),    # 6.25 %; 5 is not over 8; 80 - 45 = 35 with three, 80 - 80 = 0 with four
        (60, 40, 0, 0, 0),    # 33 %; 20 is over 18; 60 - 80 with two
        (50, 44, 2, 2, 1),    # 12 %; 6 is over 5; 50 - 24 = 26 with two, 50 - 54 with three
    ],
)
def test_the_rules_of_thumb(run, static_psi, residual_psi, percentage, first_digit, squaring):
    """The three rules each give their number, and least and most tell where they disagree."""
    told = run("supply.sources", "additional_lines", static_psi=static_psi, residual_psi=residual_psi)
    assert (told["percentage"], told["first_digit"], told["squaring"]) == (percentage, first_digit, squaring)
    assert (told["least"], told["most"]) == (min(percentage, first_digit, squaring), max(percentage, first_digit, squaring))


def test_intake(run):
    """The pump gets what the hydrant keeps, less friction and height."""
    # by hand: at the flow of the test the hydrant keeps 50; 0.08 x 8.3925^2 x 5 = 28.17; 0.434 x 10 = 4.34
    intake_psi = run("supply.hydrant", "intake_psi", test=TEST, line=LINE, flow_gpm=839.25)
    assert intake_psi == pytest.approx(17.49, abs=0.01)


@settings(deadline=None, max_examples=40)
@given(
    static_psi=st.floats(40, 120), drop=st.floats(0.05, 0.5), flow_gpm=st.floats(100, 2000),
    length_ft=st.floats(50, 1500), least_psi=st.floats(0, 30),
)
def test_flow_at_pump(run, static_psi, drop, flow_gpm, length_ft, least_psi):
    """At the greatest flow exactly the pressure asked for is left at the intake."""
    test = {"static_psi": static_psi, "residual_psi": static_psi * (1 - drop), "flow_gpm": flow_gpm}
    line = {"coefficient": 0.2, "length_ft": length_ft, "rise_ft": 5}
    most_gpm = run("supply.hydrant", "flow_at_pump_gpm", test=test, line=line, least_psi=least_psi)
    left_psi = run("supply.hydrant", "intake_psi", test=test, line=line, flow_gpm=most_gpm)
    assert left_psi == pytest.approx(least_psi, abs=1e-6)


def test_out_of_reach(run):
    """A pump too high for the hydrant gets nothing, not something."""
    line = {**LINE, "rise_ft": 200}  # by hand: 86.8 psi of height against 65
    assert run("supply.hydrant", "flow_at_pump_gpm", test=TEST, line=line, least_psi=20) == pytest.approx(0, abs=1e-6)


@pytest.mark.parametrize(
    ("function", "arguments", "field", "code"),
    [
        ("large_outlet_factor", {"pitot_psi": 1.9}, "pitot_psi", "below_table"),
        ("outlets_flow_gpm", {"bore_in": 2.5, "pitot_psi": 20, "discharge_coefficient": 0.9, "outlets": 0}, "outlets", "out_of_range"),
        ("hydrant_class", {"flow_gpm": -1}, "flow_gpm", "negative"),
        ("residual_psi", {"test": {**TEST, "residual_psi": 65}, "flow_gpm": 100}, "residual_psi", "not_below_static"),
        ("residual_psi", {"test": {**TEST, "flow_gpm": 0}, "flow_gpm": 100}, "test_flow_gpm", "not_positive"),
        ("flow_at_pump_gpm", {"test": TEST, "line": LINE, "least_psi": -1}, "least_psi", "negative"),
        ("more_lines", {"test": TEST, "floor_psi": 65.1}, "floor_psi", "out_of_range"),
        ("residual_psi", {"test": TEST, "flow_gpm": -1}, "flow_gpm", "negative"),
        ("reach_ft", {"test": TEST, "line": LINE, "flow_gpm": 0, "least_psi": 20}, "flow_gpm", "not_positive"),
        ("reach_ft", {"test": TEST, "line": LINE, "flow_gpm": 500, "least_psi": -1}, "least_psi", "negative"),
        ("reverse_gpm", {"test": TEST, "line": LINE, "floor_psi": 20, "most_psi": 0}, "most_psi", "not_positive"),
        ("reverse_gpm", {"test": TEST, "line": LINE, "floor_psi": 65.1, "most_psi": 150}, "floor_psi", "out_of_range"),
    ],
)
def test_refusal(run, function, arguments, field, code):
    """What cannot be used is refused by field and code."""
    with pytest.raises(CalcError) as refusal:
        run("supply.hydrant", function, **arguments)
    assert (refusal.value.field, refusal.value.code) == (field, code)


@pytest.mark.parametrize(
    ("static_psi", "residual_psi", "percentage", "first_digit", "squaring"),
    [
        # study cards: a drop of up to 10 % three more lines, 15 % two, 25 % one; up to the first digit of static three more
        # (that is its tens), twice it two, three times it one. By hand, squaring: 4, 9, 16 times the drop must leave 20
        (100, 90, 3, 3, 1),        # 10 %; 10; 100 - 40 leaves 60, 100 - 90 leaves 10
        (100, 89.9, 2, 2, 1),
        (100, 85, 2, 2, 1),
        (100, 84.9, 1, 2, 1),
        (100, 75, 1, 1, 0),
        (100, 74.9, 0, 1, 0),
        (60, 54, 3, 3, 1),         # its first digit just met
        (65, 58.6, 3, 2, 1),       # 6.4 is past 6
        (60, 50, 1, 2, 1),         # 60 - 40 leaves just 20
        (60, 49.9, 1, 2, 0),
        (10, 5, 0, 0, 0),          # the first digit of 10 is 1
        (8, 1, 0, 3, 0),           # and of 8 it is 8
        (100, 99.999, 3, 3, 20),   # twenty are enough to tell
    ],
)
def test_the_rules_of_thumb_at_their_steps(run, static_psi, residual_psi, percentage, first_digit, squaring):
    """Each rule of thumb at and just past its steps."""
    told = run("supply.sources", "additional_lines", static_psi=static_psi, residual_psi=residual_psi)
    assert (told["percentage"], told["first_digit"], told["squaring"]) == (percentage, first_digit, squaring)
    assert (told["least"], told["most"]) == (min(percentage, first_digit, squaring), max(percentage, first_digit, squaring))


def test_no_drop_is_no_test(run):
    """A residual at static says nothing of the hydrant, and the refusal tells the static pressure."""
    with pytest.raises(CalcError) as refusal:
        run("supply.sources", "additional_lines", static_psi=65, residual_psi=65)
    assert (refusal.value.field, refusal.value.code, refusal.value.facts) == ("residual_psi", "not_below_static", {"static_psi": 65})


@pytest.mark.parametrize(
    ("rise_ft", "spacing_ft"),
    # by hand: 8 psi per 100 ft at 1,000 gpm in C 0.08; 165 psi to lose, less or more by 0.434 a foot
    [(0, 2062.5), (50, 1791.25), (-50, 2333.75), (380, 1.0), (400, 0)],
)
def test_relay_spacing_on_a_hill(run, rise_ft, spacing_ft):
    """Uphill the next pumper stands nearer, downhill farther, and where height alone takes all nowhere."""
    told = run("supply.sources", "relay_spacing_ft", coefficient=0.08, flow_gpm=1000, discharge_psi=185, residual_psi=20, rise_ft=rise_ft)
    assert told == pytest.approx(spacing_ft, rel=1e-9, abs=1e-9)


def test_a_plain_outlet_has_no_factor(run):
    """By hand: 3 in is still plain, 29.84 x 0.9 x 9 x 4 = 966.8; a fifth outlet is on no hydrant."""
    told = run("supply.hydrant", "outlets_flow_gpm", bore_in=3, pitot_psi=4, discharge_coefficient=0.9, outlets=4)
    assert told == pytest.approx(4 * 29.84 * 0.9 * 9 * 2, rel=1e-9)
    with pytest.raises(CalcError) as refusal:
        run("supply.hydrant", "outlets_flow_gpm", bore_in=3, pitot_psi=4, discharge_coefficient=0.9, outlets=5)
    assert refusal.value.field == "outlets"


def test_below_the_table_tells_where_it_begins(run):
    """The table of large outlets begins at 2 psi."""
    with pytest.raises(CalcError) as refusal:
        run("supply.hydrant", "large_outlet_factor", pitot_psi=1.99)
    assert (refusal.value.code, refusal.value.facts) == ("below_table", {"least": 2})
    assert run("supply.hydrant", "large_outlet_factor", pitot_psi=2) == 0.97


@pytest.mark.parametrize(
    ("test", "floor_psi", "safe", "by_flow"),
    [
        # by hand, the 0.54 power: 250 x (45 / 7)^0.54 = 683 gpm at 20 psi feed 2.7 such lines; two rules allow two more
        ({"static_psi": 65, "residual_psi": 58, "flow_gpm": 250}, 20, 1, 1),
        # 6 % of drop: the rules allow three, three and two; (60 / 5)^0.54 = 3.8 lines at 20 psi, (20 / 5)^0.54 = 2.1 at 60
        ({"static_psi": 80, "residual_psi": 75, "flow_gpm": 250}, 20, 2, 2),
        ({"static_psi": 80, "residual_psi": 75, "flow_gpm": 250}, 60, 1, 1),
        # at the residual of the test there is the flow of the test, above it less: none more
        ({"static_psi": 80, "residual_psi": 75, "flow_gpm": 250}, 75, 0, 0),
        ({"static_psi": 80, "residual_psi": 75, "flow_gpm": 250}, 79, 0, 0),
        # a drop of one part in 20,000: no more lines than the rules are asked for
        ({"static_psi": 100, "residual_psi": 99.995, "flow_gpm": 250}, 20, 3, 20),
        # (128 / 2)^0.54 = 9.45 more than the rules' three
        ({"static_psi": 148, "residual_psi": 146, "flow_gpm": 250}, 20, 3, 8),
    ],
)
def test_more_lines(run, test, floor_psi, safe, by_flow):
    """The least of the rules leads, and never takes the main under what is to be left in it."""
    found = run("supply.hydrant", "more_lines", test=test, floor_psi=floor_psi)
    assert (found["safe"], found["by_flow"]) == (safe, by_flow)


@settings(deadline=None, max_examples=60)
@given(static_psi=st.floats(30, 150), drop=st.floats(0.01, 0.9), floor=st.floats(0, 0.9), flow_gpm=st.floats(50, 2000))
def test_no_number_of_lines_takes_the_main_too_low(run, static_psi, drop, floor, flow_gpm):
    """Whatever the test, with the lines that are offered the main keeps the pressure to be left, by the same law of flow."""
    test = {"static_psi": static_psi, "residual_psi": static_psi * (1 - drop), "flow_gpm": flow_gpm}
    lines = run("supply.hydrant", "more_lines", test=test, floor_psi=static_psi * floor)["safe"]
    if lines:
        left_psi = run("supply.hydrant", "residual_psi", test=test, flow_gpm=flow_gpm * (1 + lines))
        assert left_psi >= static_psi * floor - 1e-6


@pytest.mark.parametrize(("static_psi", "at_psi"), [(65, 20), (40.5, 20), (40, 20), (39.9, 19.95), (24, 12)])
def test_residual_of_a_class(run, static_psi, at_psi):
    """NFPA 291, from memory: classed at 20 psi, or at half of a static pressure under 40."""
    assert run("supply.hydrant", "class_residual_psi", static_psi=static_psi) == pytest.approx(at_psi)


def test_the_pumper_at_the_hydrant(run):
    """By hand: 0.08 x 17.32^2 x 5 = 120 psi at 1,732 gpm; from 150 psi to 20 uphill 23.04 ft (10 psi) there are 120. The main gives less: 839.25 x (45 / 15)^0.54."""
    line = {**LINE, "rise_ft": 23.04}
    told = run("supply.hydrant", "reverse_gpm", test={**TEST, "flow_gpm": 5000}, line=line, floor_psi=20, most_psi=150)
    assert told == pytest.approx(1732, rel=1e-3)
    assert run("supply.hydrant", "reverse_gpm", test=TEST, line=line, floor_psi=20, most_psi=150) == pytest.approx(839.25 * 3 ** 0.54)
    assert run("supply.hydrant", "reverse_gpm", test=TEST, line={**LINE, "rise_ft": 400}, floor_psi=20, most_psi=150) == 0
    assert run("supply.hydrant", "reach_ft", test=TEST, line={**LINE, "rise_ft": 200}, flow_gpm=500, least_psi=20) == 0


def test_how_far_the_hydrant_carries(run):
    """By hand, C 0.08 at the flow of the test: 50 - 20 psi and 23.04 ft uphill (10 psi) leave 20; 839.25 gpm lose 5.635 psi a hundred feet, so 354.9 ft."""
    assert run("supply.hydrant", "reach_ft", test=TEST, line={**LINE, "rise_ft": 23.04}, flow_gpm=839.25, least_psi=20) == pytest.approx(354.9, rel=1e-3)


def test_what_is_left_at_twice_the_flow(run):
    """By hand: 15 psi x 2 ^ (1 / 0.54) are 54.14 psi of drop, 10.86 left; and none of it at no flow."""
    left = [run("supply.hydrant", "residual_psi", test=TEST, flow_gpm=flow_gpm) for flow_gpm in (0, 839.25, 1678.5)]
    assert left == pytest.approx([65, 50, 10.86], abs=0.01)


def test_the_pumper_at_the_hydrant_with_no_hose(run):
    """Without hose there is the main's own flow; with a foot of it, what the hose carries may be less."""
    told = run("supply.hydrant", "reverse_gpm", test=TEST, line={**LINE, "length_ft": 0, "rise_ft": 0}, floor_psi=0, most_psi=150)
    assert told == pytest.approx(839.25 * (65 / 15) ** 0.54)
    # by hand: a foot of C 24 takes 110 psi at 100 x the root of 110 / 0.24, where the main alone would give 5,000 x 3^0.54
    a_foot = {"coefficient": 24, "length_ft": 1, "rise_ft": 0}
    assert run("supply.hydrant", "reverse_gpm", test={**TEST, "flow_gpm": 5000}, line=a_foot, floor_psi=20, most_psi=130) == pytest.approx(2140.9, abs=0.1)


def test_half_a_psi_to_lose(run):
    """By hand: 0.5 psi in 500 ft of C 0.08 is 100 x the root of 0.5 / 0.4 = 111.8 gpm: however little, it is some."""
    told = run("supply.hydrant", "reverse_gpm", test=TEST, line={**LINE, "rise_ft": 0}, floor_psi=20, most_psi=20.5)
    assert told == pytest.approx(111.8, abs=0.05)
