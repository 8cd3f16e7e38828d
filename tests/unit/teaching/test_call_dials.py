"""The gauges a call is drawn on: faces as panels have them (common practice), needles by hand."""
import pytest

from calc.teaching import call_dials
from site_src.content import units

US, SI, BAR = units.shown_in("US"), units.shown_in("SI"), units.shown_in("bar")


def test_a_discharge_gauge():
    """0 to 400 psi by hundreds; a reading sways; one that is to be set is moved by 5 psi."""
    face = {"gauge": "master", "least": 0, "end": 400, "step": 100, "quantity": "pressure"}
    assert call_dials.pressure(US, "master", 169.75) == {**face, "value": 169.75, "sway": 0, "text": "170", "moves_by": None}
    assert call_dials.pressure(US, "master", 150, 15)["sway"] == 15
    assert call_dials.pressure(US, "master", None) == {**face, "value": None, "sway": 0, "text": None, "moves_by": 5}
    assert call_dials.pressure(US, "line", 0) == {**face, "gauge": "line", "value": 0, "sway": 0, "text": "0", "moves_by": None}


@pytest.mark.parametrize(("shown", "end", "step", "moves_by", "value", "text"), [(SI, 2000, 500, 25, 1170.4, "1170"), (BAR, 20, 5, 0.5, 11.704, "11.7")])
def test_a_discharge_gauge_in_metric(shown, end, step, moves_by, value, text):
    """100 psi are marks of 500 kPa or 5 bar, 5 psi of 25 or 0.5."""
    set_dial, dial = call_dials.pressure(shown, "master", None), call_dials.pressure(shown, "master", 169.75)
    assert (set_dial["end"], set_dial["step"], set_dial["moves_by"]) == (pytest.approx(end), pytest.approx(step), pytest.approx(moves_by))
    assert (dial["value"], dial["text"]) == (pytest.approx(value, abs=0.1), text)
    assert call_dials.pressure(shown, "master", 169.75, 10)["sway"] == pytest.approx(value * 10 / 169.75, rel=1e-3)


def test_an_intake_gauge():
    """A compound gauge: 30 inHg below zero as far down as 30 psi lie up, to 120 psi."""
    face = {"gauge": "intake", "least": -30, "end": 120, "step": 30, "moves_by": None}
    assert call_dials.intake(US, 45) == {**face, "value": 45, "sway": 0, "text": "45", "quantity": "pressure"}
    assert call_dials.intake(US, 20, 15)["sway"] == 15
    assert call_dials.vacuum(US, 12) == {**face, "value": -12, "sway": 0, "text": "12", "quantity": "vacuum"}


@pytest.mark.parametrize(("shown", "least", "end", "step", "text"), [(SI, -100, 900, 100, "495"), (BAR, -1, 9, 1, "5.0")])
def test_an_intake_gauge_in_metric(shown, least, end, step, text):
    """To 100 kPa or 1 bar below zero, as much vacuum as there is; up to 120 psi, 827 kPa. It is read, 71.8 psi as 495 kPa or 4.95 bar, and never set."""
    dial = call_dials.intake(shown, 71.8)
    assert (dial["least"], dial["end"], dial["step"], dial["text"]) == (pytest.approx(least), pytest.approx(end), pytest.approx(step), text)


@pytest.mark.parametrize(("shown", "value", "text"), [(SI, -40.637, "-41"), (BAR, -0.40637, "-0.4")])
def test_vacuum_in_metric(shown, value, text):
    """12 inHg are 40.637 kPa (NIST SP 811: 3.38639 to the inch), which a gauge in one unit shows below its zero."""
    dial = call_dials.vacuum(shown, 12)
    assert (dial["value"], dial["text"], dial["quantity"]) == (pytest.approx(value, abs=0.001), text, "pressure")


def test_a_tank_gauge():
    """In quarters."""
    assert call_dials.tank(1) == {"gauge": "tank", "value": 1, "sway": 0, "least": 0, "end": 4, "step": 1, "text": "1", "quantity": "quarters", "moves_by": None}
