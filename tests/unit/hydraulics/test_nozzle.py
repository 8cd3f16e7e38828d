"""Nozzles: flow from tip and pressure, and the push back."""
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError

tips_in = st.floats(0.25, 4)
pressures_psi = st.floats(0, 400)


@pytest.mark.parametrize(
    ("function", "arguments", "expected"),
    [
        ("smooth_bore_flow_gpm", {"tip_in": 1, "nozzle_psi": 1}, 29.7),       # the constant itself
        ("smooth_bore_flow_gpm", {"tip_in": 2, "nozzle_psi": 100}, 1188),     # by hand: 29.7 x 4 x 10
        ("smooth_bore_flow_gpm", {"tip_in": 1.25, "nozzle_psi": 0}, 0),       # no pressure, no flow
        ("smooth_bore_pressure_psi", {"tip_in": 2, "flow_gpm": 1188}, 100),   # the row above, backwards
        ("smooth_bore_pressure_psi", {"tip_in": 2, "flow_gpm": 0}, 0),        # no flow, no pressure
        ("fog_flow_gpm", {"rated_gpm": 150, "rated_psi": 100, "nozzle_psi": 100}, 150),  # at its rating
        ("fog_flow_gpm", {"rated_gpm": 150, "rated_psi": 100, "nozzle_psi": 64}, 120),   # by hand: 150 x sqrt 0.64
        ("fog_flow_gpm", {"rated_gpm": 150, "rated_psi": 75, "nozzle_psi": 0}, 0),       # no pressure, no flow
        # by hand: 29.84 x 0.8 x 6.25 x 5
        ("pitot_flow_gpm", {"bore_in": 2.5, "pitot_psi": 25, "discharge_coefficient": 0.8}, 746),
        ("pitot_flow_gpm", {"bore_in": 1, "pitot_psi": 1, "discharge_coefficient": 1}, 29.84),  # the constant itself
        ("smooth_bore_reaction_lbf", {"tip_in": 2, "nozzle_psi": 80}, 502.4),  # by hand: 1.57 x 4 x 80
        ("smooth_bore_reaction_lbf", {"tip_in": 2, "nozzle_psi": 0}, 0),       # no pressure, no push
        ("fog_reaction_lbf", {"flow_gpm": 200, "nozzle_psi": 100}, 101),       # by hand: 0.0505 x 200 x 10
        ("fog_reaction_lbf", {"flow_gpm": 0, "nozzle_psi": 100}, 0),           # no flow, no push
    ],
)
def test_nozzle(run, function, arguments, expected):
    """Each formula gives what the hand gives."""
    assert run("hydraulics.nozzle", function, **arguments) == pytest.approx(expected, rel=1e-9)


@settings(deadline=None)
@given(tip_in=tips_in, nozzle_psi=pressures_psi)
def test_pressure_inverts_flow(run, tip_in, nozzle_psi):
    """The pressure that a flow stands for is the pressure that makes it."""
    flow_gpm = run("hydraulics.nozzle", "smooth_bore_flow_gpm", tip_in=tip_in, nozzle_psi=nozzle_psi)
    back_psi = run("hydraulics.nozzle", "smooth_bore_pressure_psi", tip_in=tip_in, flow_gpm=flow_gpm)
    assert back_psi == pytest.approx(nozzle_psi, rel=1e-9)


@settings(deadline=None)
@given(tip_in=tips_in, nozzle_psi=pressures_psi)
def test_four_times_the_pressure(run, tip_in, nozzle_psi):
    """Four times the pressure doubles the flow of any fixed nozzle; twice the tip passes four times as much."""
    once, harder, wider = (
        run("hydraulics.nozzle", "smooth_bore_flow_gpm", tip_in=tip, nozzle_psi=pressure)
        for tip, pressure in ((tip_in, nozzle_psi), (tip_in, 4 * nozzle_psi), (2 * tip_in, nozzle_psi))
    )
    assert (harder, wider) == pytest.approx((2 * once, 4 * once), rel=1e-9)
    fog_gpm = run("hydraulics.nozzle", "fog_flow_gpm", rated_gpm=150, rated_psi=100, nozzle_psi=nozzle_psi)
    fog_harder_gpm = run("hydraulics.nozzle", "fog_flow_gpm", rated_gpm=150, rated_psi=100, nozzle_psi=4 * nozzle_psi)
    assert fog_harder_gpm == pytest.approx(2 * fog_gpm, rel=1e-9)


@settings(deadline=None)
@given(tip_in=tips_in, nozzle_psi=pressures_psi)
def test_reaction_is_momentum(run, tip_in, nozzle_psi):
    """The push is that of a jet, twice pressure times area; 1.57 is pi/2 cut short by 0.05 %."""
    reaction_lbf = run("hydraulics.nozzle", "smooth_bore_reaction_lbf", tip_in=tip_in, nozzle_psi=nozzle_psi)
    assert reaction_lbf == pytest.approx(2 * nozzle_psi * math.pi * tip_in**2 / 4, rel=6e-4)


SMOOTH = {"tip_in": 1, "nozzle_psi": 50}
FOG = {"rated_gpm": 150, "rated_psi": 100, "nozzle_psi": 100}
PITOT = {"bore_in": 2.5, "pitot_psi": 40, "discharge_coefficient": 0.9}
PUSH = {"flow_gpm": 150, "nozzle_psi": 100}


@pytest.mark.parametrize(
    ("function", "good", "field", "value", "code"),
    [
        ("smooth_bore_flow_gpm", SMOOTH, "tip_in", 0, "not_positive"),
        ("smooth_bore_flow_gpm", SMOOTH, "tip_in", 1e-12, "too_small"),
        ("smooth_bore_flow_gpm", SMOOTH, "nozzle_psi", -1, "negative"),
        ("smooth_bore_pressure_psi", {"tip_in": 1, "flow_gpm": 200}, "tip_in", -1, "not_positive"),
        ("smooth_bore_pressure_psi", {"tip_in": 1, "flow_gpm": 200}, "flow_gpm", -1, "negative"),
        ("fog_flow_gpm", FOG, "rated_gpm", 0, "not_positive"),
        ("fog_flow_gpm", FOG, "rated_psi", 0, "not_positive"),
        ("fog_flow_gpm", FOG, "nozzle_psi", -1, "negative"),
        ("pitot_flow_gpm", PITOT, "bore_in", 0, "not_positive"),
        ("pitot_flow_gpm", PITOT, "pitot_psi", -1, "negative"),
        ("pitot_flow_gpm", PITOT, "discharge_coefficient", 0.49, "out_of_range"),
        ("pitot_flow_gpm", PITOT, "discharge_coefficient", 1.01, "out_of_range"),
        ("smooth_bore_reaction_lbf", SMOOTH, "tip_in", 0, "not_positive"),
        ("smooth_bore_reaction_lbf", SMOOTH, "nozzle_psi", -1, "negative"),
        ("fog_reaction_lbf", PUSH, "flow_gpm", -1, "negative"),
        ("fog_reaction_lbf", PUSH, "nozzle_psi", -1, "negative"),
    ],
)
def test_refusal(run, function, good, field, value, code):
    """An input outside its range is refused by its name; what is no number at all is tested in test_laws."""
    with pytest.raises(CalcError) as refusal:
        run("hydraulics.nozzle", function, **{**good, field: value})
    assert (refusal.value.field, refusal.value.code) == (field, code)
