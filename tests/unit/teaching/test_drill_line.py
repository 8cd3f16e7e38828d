"""A rig's own lines as the drill takes them: the figures that the panel card has of them, by hand and beside the card's own way."""
import pytest

from calc.base.errors import CalcError
from calc.rig import bed_answer
from calc.teaching import drill_line
from site_src.content import units
from tests.unit.teaching.lines import CROSSLAY, GUN, ground
from tests.unit.teaching.test_drill import RIGS, ground_of

US, SI = units.shown_in("US"), units.shown_in("SI")
TIPS = [{"id": "1.125@US", "label": "1 1/8"}, {"id": "0.9375@US", "label": "15/16"}]


def line(bed, shown=US, rule=""):
    return drill_line.Line(ground(bed, rule=rule, tips=TIPS), shown, bed)


def test_a_line_of_fog():
    """By hand: C 15.5 of 1 3/4 in, 15.5 x 1.5^2 x 2 = 69.75, and 100; 200 ft are 61 m, 150 gpm 568 L/min, 100 psi 689 kPa."""
    crosslay = line(CROSSLAY)
    assert (crosslay.friction_psi, crosslay.pump_psi(), crosslay.device_psi) == (pytest.approx(69.75), pytest.approx(169.75), 0)
    hose = {"bed": "Crosslay", "hose": "1¾ in", "end": "fog", "tip": "", "own": ""}
    assert crosslay.facts(US) == {**hose, "length": "200", "flow": "150", "nozzle": "100"}
    assert crosslay.facts(SI) == {**hose, "length": "61", "flow": "568", "nozzle": "689"}


def test_a_line_of_a_smooth_bore():
    """By hand: 29.7 x 0.8789 x 7.071 = 184.6 gpm, 15.5 x 1.846^2 x 2 = 105.6 psi, and 50."""
    bored = line({**CROSSLAY, "end": {"kind": "smooth", "tip": "0.9375@US", "pressure": "50@US"}})
    assert (bored.kind, bored.tip, bored.flow_gpm, bored.pump_psi()) == ("smooth", "15/16", pytest.approx(184.6, abs=0.1), pytest.approx(155.6, abs=0.2))


@pytest.mark.parametrize(("tip", "shown", "label"), [("1.125@US", US, "1 1/8"), ("23.8125@SI", US, "15/16"), ("1@US", US, "1"), ("1@US", SI, "25.4")])
def test_what_a_tip_is_called(tip, shown, label):
    """By its name where the page has one, whatever unit it was typed in (15/16 in is 23.81 mm); else by its diameter."""
    assert drill_line.tip_label(ground(tips=TIPS), shown, tip) == label


@pytest.mark.parametrize(
    ("given", "device_psi"),
    [({}, 25), ({"loss": "40@US"}, 40), ({"loss": "60@US", "loss_at": "500@US"}, 60), ({"loss": "60@US", "loss_at": "1000@US"}, 15)],
)
def test_what_a_device_takes(given, device_psi):
    """The handbook's 25 for a master stream; its own; and a loss that was measured at another flow goes with the square: 60 x (500 / 1000)^2 = 15."""
    assert (line({**GUN, **given}).device_psi, line({**GUN, **given}).pump_psi()) == (pytest.approx(device_psi), pytest.approx(100 + device_psi))


@pytest.mark.parametrize("name", RIGS)
@pytest.mark.parametrize("system", ["US", "SI"])
def test_a_line_asks_what_the_panel_card_says(run, name, system):
    """The same pressure as on the card, which comes by calc.layout.pressure."""
    here, shown = ground_of(run, name, system), units.shown_in(system)
    here["shelf"].pop("rule", None)  # the card is by C Q^2 L
    lines = drill_line.usable(here, shown)
    assert lines
    for place, each in lines:
        _, _, answer = bed_answer.solved(here["beds"][place], here["shelf"], shown)
        assert each.pump_psi() == pytest.approx(answer["pressure_psi"])


@pytest.mark.parametrize(
    ("rule", "shown", "size_in", "flow_gpm", "taken"),
    [
        ("gpm_times_n", US, 1.75, 150, "gpm_times_n"), ("two_q_squared_plus_q", US, 2.5, 250, "two_q_squared_plus_q"), ("rounded_50", US, None, 150, "rounded_50"),
        ("", US, 1.75, 150, "square"), (None, US, 1.75, 150, "square"), ("square", US, 1.75, 150, "square"),
        ("gpm_times_n", SI, 1.75, 150, "square"), ("gpm_times_n", units.shown_in("imperial"), 1.75, 150, "square"),  # made for psi and US gallons
        ("gpm_times_n", US, 3, 150, "square"), ("gpm_times_n", US, 1.75, 33, "square"),  # of no such hose; 33 x 3 / 10 - 10 is below nothing
    ],
)
def test_the_rule_that_is_asked_by(rule, shown, size_in, flow_gpm, taken):
    """The department's, where it has a figure for this hose and flow and the gauges are those it is made for; else C Q^2 L. Source: study cards."""
    assert drill_line.rule_of({"rule": rule}, shown, size_in, flow_gpm) == taken


def test_a_line_by_the_departments_rule():
    """By hand, N 3 of 1 3/4 in: 150 x 3 / 10 - 10 = 35 per 100 ft, so 70 for 200 ft, and 100."""
    assert line(CROSSLAY, rule="gpm_times_n").pump_psi() == pytest.approx(170)


@pytest.mark.parametrize(
    ("rule", "flow_gpm", "code", "counted"),
    [("square", 160, "friction_square", "160"), ("rounded_50", 160, "friction_square", "150"), ("gpm_times_n", 160, "friction_gpm_times_n", "160")],
)
def test_the_working_of_friction(rule, flow_gpm, code, counted):
    """A rule that rounds the flow is C Q^2 L at the flow it counts: 160 to the nearest 50 is 150. Hundreds of gpm and of feet, as the formula counts."""
    told, terms = drill_line.friction_row(US, rule, 15.5, flow_gpm, 250, 87.25)
    assert told == code
    numbers = {name: float(text) for name, text in terms.items()}
    assert numbers == {"coefficient": 15.5, "hundreds_flow": float(counted) / 100, "flow": float(counted), "hundreds_length": 2.5, "loss": 87.25}


@pytest.mark.parametrize(("typed", "feet"), [({}, 10), ({"floor": "12@US"}, 12), ({"floor": "3@SI"}, 9.8425)])
def test_the_height_of_a_floor(typed, feet):
    """As the department counts it, 3 m are 9.84 ft; else 10 ft (common practice)."""
    assert drill_line.floor_height_ft(ground(**typed), US) == pytest.approx(feet, abs=0.001)


def test_what_is_no_number_is_refused_by_its_field():
    """A floor and a tip that cannot be read."""
    for work, field in ((lambda: drill_line.floor_height_ft(ground(floor="high"), US), "floor"), (lambda: drill_line.tip_label(ground(tips=TIPS), US, "wide"), "tip")):
        with pytest.raises(CalcError) as refusal:
            work()
        assert (refusal.value.field, refusal.value.code) == (field, "not_a_number")


@pytest.mark.parametrize(("shown", "terms"), [(US, (0.434, 20, 8.68)), (SI, (9.817, 6.096, 59.85))])
def test_the_working_of_an_elevation(shown, terms):
    """By hand, 0.434 psi a foot: 20 ft are 8.68 psi; 9.82 kPa a meter: 6.096 m are 59.8 kPa."""
    told = drill_line.elevation_terms(shown, 20)
    assert {name: float(text) for name, text in told.items()} == {name: pytest.approx(value, abs=0.01) for name, value in zip(("rate", "rise", "elevation"), terms)}


def test_what_questions_are_made_of():
    """A bed that has no figure, and one that asks 300 psi or more, are passed over; each other keeps its place. By hand: 150 and 149 are 299."""
    high = {**GUN, "end": {**GUN["end"], "pressure": "150@US"}}
    here = ground({**CROSSLAY, "hose": "none"}, CROSSLAY, {**GUN, "end": {"kind": "fog", "flow": "", "pressure": ""}}, {**high, "loss": "150.5@US"},
                  {**high, "loss": "150@US"}, {**high, "loss": "149@US"})
    assert [place for place, _ in drill_line.usable(here, US)] == [1, 5]


def test_which_lines_a_gauge_tells_apart():
    """Two that differ by 15 psi or more, the lower first, and never one bed with two tips: guns that ask 125, 140, 139 and 110."""
    beds = [{**GUN, "name": name, "loss": f"{loss}@US"} for name, loss in (("B", 25), ("D", 40), ("C", 39), ("A", 10), ("A", 60))]
    pairs = [(low.name, round(low.pump_psi()), high.name, round(high.pump_psi())) for low, high in drill_line.unlike(ground(*beds), US)]
    assert pairs == [
        ("A", 110, "B", 125), ("A", 110, "C", 139), ("A", 110, "D", 140), ("B", 125, "D", 140), ("B", 125, "A", 160), ("C", 139, "A", 160), ("D", 140, "A", 160),
    ]
