"""Amounts as texts of the page's unit, each by hand: settings of a needle, limits rounded inward, sums that add up, three significant figures.

NIST SP 811: 6.894757 kPa to the psi; a US coefficient is 1.578621 in kPa, L/min and m (6.894757 / 0.3048 / 3.785412^2).
"""
import pytest

from site_src.content import units

DISPLAY = "base.display"
US, SI, BAR = units.shown_in("US"), units.shown_in("SI"), units.shown_in("bar")
FINE_SI, FINE_BAR = units.fine("SI"), units.fine("bar")


@pytest.mark.parametrize(("shown", "psi", "side", "text"), [
    (US, 150.2, -1, "151"), (US, 150.2, 1, "150"), (US, 150, -1, "150"), (US, 150, 1, "150"),
    (FINE_SI, 150, -1, "1035"), (FINE_SI, 150, 1, "1030"),  # 1034.2 kPa between marks of 5
    (FINE_BAR, 150, -1, "10.35"), (FINE_BAR, 150, 1, "10.3"),  # 10.342 bar between marks of 0.05
    (US, None, -1, None), (US, None, 1, None),
])
def test_needle(run, shown, psi, side, text):
    """The first mark that reaches it, or the last that does not pass it (test gauges are read to 1 psi, 5 kPa, 0.05 bar: common practice)."""
    assert run(DISPLAY, "needle", units=shown, kind="pressure", value=psi, side=side) == text


def test_a_needle_reaches_unless_told(run):
    """Where no side is said the point is to be reached."""
    assert run(DISPLAY, "needle", units=US, kind="pressure", value=150.2) == "151"


@pytest.mark.parametrize(("psi", "side", "more", "text"), [
    (150.4, -1, 0, "151"), (150.4, 1, 0, "150"), (150, -1, 0, "150"), (150, 1, 0, "150"), (150.44, -1, 1, "150.5"), (150.44, 1, 1, "150.4"), (None, 1, 0, None),
    (-10.4, -1, 0, "-10"), (-10.4, 1, 0, "-11"),
])
def test_limit(run, psi, side, more, text):
    """A least is rounded up and a most down, so that a figure shown as the limit meets it."""
    assert run(DISPLAY, "limit", units=US, kind="pressure", value=psi, side=side, more_places=more) == text


@pytest.mark.parametrize(("coefficient", "text"), [
    (15.5, "24.5"),  # 24.469
    (0.08, "0.126"),  # 0.12629
    (100, "158"), (63.66, "100"),  # 157.86, 100.495
    (6.045, "9.54"),  # 9.5428
    (0.0004, "0.000631"),  # 0.00063145
])
def test_significant(run, coefficient, text):
    """To three figures, wherever its point stands."""
    assert run(DISPLAY, "significant", units=SI, kind="coefficient", value=coefficient) == text


@pytest.mark.parametrize(("shown", "amounts", "total", "texts"), [
    (US, [100, 70.2, 9.1], "179", ["100", "70", "9"]),
    (US, [100, 69.75, 8.68], "178.4", ["100", "69.7", "8.7"]),  # 100 + 70 + 9 are not 178; of 178.43 the cut tenth goes to 8.68, which is cut more
    (US, [8.62, 69.78, 100], "178.4", ["8.6", "69.8", "100"]),  # here to 69.78
    (BAR, [4, 4.1, 4.05], "0.84", ["0.28", "0.28", "0.28"]),  # 0.2758, 0.2827, 0.2792: three of 0.3 are not 0.8
    (US, [100.4, 69.4, 8.4], "178.2", ["100.4", "69.4", "8.4"]),
    (US, [50, -4.4, -4.4], "41.2", ["50", "-4.4", "-4.4"]),  # downhill
    (BAR, [100, 69.75, 8.68], "12.3", ["6.9", "4.8", "0.6"]),  # 6.895, 4.809, 0.598: 12.302
])
def test_addends(run, shown, amounts, total, texts):
    """Parts as they are read where these add up, else to a tenth of that, what is left over given to the one that was cut most."""
    assert run(DISPLAY, "addends", units=shown, kind="pressure", amounts=amounts) == [total, texts]


def test_addends_with_a_comma(run):
    """As the page's language writes them."""
    comma = {**US, "decimal": ","}
    assert run(DISPLAY, "addends", units=comma, kind="pressure", amounts=[100.4, 69.4, 8.4]) == ["178,2", ["100,4", "69,4", "8,4"]]


@pytest.mark.parametrize("kind", ["marked", "text", "figure", "setting"])
def test_nothing_stays_nothing(run, kind):
    """What is not known has no text, whatever mark the page has."""
    comma = {**BAR, "decimal": ","}
    more = {"marked": {"text": None}, "setting": {"psi": None}}.get(kind, {"kind": "pressure", "value": None})
    assert run(DISPLAY, kind, units=comma, **more) is None


@pytest.mark.parametrize(("gpm", "text"), [(250.5, "2.505"), (250.12345, "2.5012"), (95, "0.95")])
def test_hundreds(run, gpm, text):
    """A flow in hundreds keeps two figures more than the flow."""
    assert run(DISPLAY, "working", units=US, kind="flow", value=gpm, counted_by=100) == text


@pytest.mark.parametrize(("shown", "kind", "value", "step"), [
    (US, "pressure", 5, 5), (US, "pressure", 3, 3), (SI, "pressure", 5, 25), (BAR, "pressure", 5, 0.5), (SI, "pressure", 1, 5), (SI, "pressure", 100, 500),
    (SI, "length", 50, 10), (SI, "flow", 50, 250), (SI, "flow", 5, 25), (BAR, "pressure", 1, 0.1),
])
def test_step(run, shown, kind, value, step):
    """As it is where the unit shows it, else the nearest 1, 2.5 or 5 of tens: 5 psi are 34.5 kPa, marked by 25; 50 ft 15.2 m, by 10; 50 gpm 189 L/min, by 250."""
    assert run(DISPLAY, "step", units=shown, kind=kind, value=value) == pytest.approx(step)
