"""Hose: friction, its inverses, parallel lines, speed and water held."""
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError

coefficients = st.floats(0.05, 1100)  # 6 in hose to 3/4 in hose
flows_gpm = st.floats(0, 2000)
lengths_ft = st.floats(1, 5000)


@pytest.mark.parametrize(
    ("coefficient", "flow_gpm", "length_ft", "expected_psi"),
    [
        (15.5, 150, 200, 69.75),  # by hand: 15.5 x 1.5^2 x 2
        (2, 250, 100, 12.5),      # by hand: 2 x 2.5^2 x 1
        (0.08, 1000, 1500, 120),  # by hand: 0.08 x 10^2 x 15
        (15.5, 0, 200, 0),        # no flow, no loss
        (15.5, 150, 0, 0),        # no hose, no loss
        (15.5, 100, 100, 15.5),   # the definition of the coefficient
    ],
)
def test_friction_loss(run, coefficient, flow_gpm, length_ft, expected_psi):
    """Loss follows the square of flow and the length of the line, and can be asked backwards."""
    loss_psi = run("hydraulics.hose", "friction_loss_psi", coefficient=coefficient, flow_gpm=flow_gpm, length_ft=length_ft)
    assert loss_psi == pytest.approx(expected_psi, rel=1e-9)
    if expected_psi:
        tested = run("hydraulics.hose", "coefficient_from_test", loss_psi=loss_psi, flow_gpm=flow_gpm, length_ft=length_ft)
        assert tested == pytest.approx(coefficient, rel=1e-9)


@settings(deadline=None)
@given(coefficient=coefficients, flow_gpm=flows_gpm, length_ft=lengths_ft, times=st.floats(0.1, 10))
def test_friction_grows(run, coefficient, flow_gpm, length_ft, times):
    """Loss grows with the square of the flow and in step with the length."""
    once_psi, faster_psi, longer_psi = (
        run("hydraulics.hose", "friction_loss_psi", coefficient=coefficient, flow_gpm=flow, length_ft=length)
        for flow, length in ((flow_gpm, length_ft), (times * flow_gpm, length_ft), (flow_gpm, times * length_ft))
    )
    assert faster_psi == pytest.approx(times**2 * once_psi, rel=1e-9)
    assert longer_psi == pytest.approx(times * once_psi, rel=1e-9)


@settings(deadline=None)
@given(coefficient=coefficients, flow_gpm=flows_gpm, length_ft=lengths_ft)
def test_flow_for_loss(run, coefficient, flow_gpm, length_ft):
    """The flow that a loss stands for is the flow that makes it."""
    loss_psi = run("hydraulics.hose", "friction_loss_psi", coefficient=coefficient, flow_gpm=flow_gpm, length_ft=length_ft)
    if loss_psi > 1e7:
        return
    back_gpm = run("hydraulics.hose", "flow_for_loss_gpm", coefficient=coefficient, loss_psi=loss_psi, length_ft=length_ft)
    assert back_gpm == pytest.approx(flow_gpm, rel=1e-9)


@settings(deadline=None)
@given(coefficient=coefficients, count=st.integers(1, 12))
def test_parallel_equal(run, coefficient, count):
    """Two equal hoses have a quarter of the coefficient of one, n of them one part in n squared."""
    together = run("hydraulics.hose", "parallel_coefficient", coefficients=[coefficient] * count)
    assert together == pytest.approx(coefficient / count**2, rel=1e-9)


@settings(deadline=None)
@given(each=st.lists(coefficients, min_size=1, max_size=12), flow_gpm=flows_gpm)
def test_parallel_unlike(run, each, flow_gpm):
    """Unlike hoses side by side share the flow so that all lose the same, and the shares add up."""
    together = run("hydraulics.hose", "parallel_coefficient", coefficients=each)
    loss_psi = run("hydraulics.hose", "friction_loss_psi", coefficient=together, flow_gpm=flow_gpm, length_ft=100)
    shares_gpm = [
        run("hydraulics.hose", "flow_for_loss_gpm", coefficient=coefficient, loss_psi=loss_psi, length_ft=100)
        for coefficient in each
    ]
    assert sum(shares_gpm) == pytest.approx(flow_gpm, rel=1e-9)


@pytest.mark.parametrize(
    ("flow_gpm", "bore_in", "expected_ft_per_s"),
    [
        (250, 2.5, 16.34),  # by hand: 250 x 231 / 60 = 962.5 in3/s over 4.9087 in2 over 12
        (150, 1.75, 20.01),  # by hand: 577.5 in3/s over 2.4053 in2 over 12
        (0, 5, 0),          # still water
    ],
)
def test_velocity(run, flow_gpm, bore_in, expected_ft_per_s):
    """Speed is flow over area; the tolerance is half the last digit of the hand sum."""
    velocity_ft_per_s = run("hydraulics.hose", "velocity_ft_per_s", flow_gpm=flow_gpm, bore_in=bore_in)
    assert velocity_ft_per_s == pytest.approx(expected_ft_per_s, abs=0.005)


@pytest.mark.parametrize(
    ("bore_in", "length_ft", "expected_gal"),
    [
        (2.5, 100, 25.5),  # by hand: 4.9087 in2 x 1200 in / 231
        (5, 100, 102),     # twice the bore holds four times as much
        (5, 0, 0),         # no hose, no water
        # a bore of sqrt(4 x 231 / (12 pi)) in has 19.25 in2, so a foot of it is 231 in3: one gallon
        (math.sqrt(4 * 231 / (12 * math.pi)), 1, 1),
    ],
)
def test_water_in_hose(run, bore_in, length_ft, expected_gal):
    """Water held is area times length; the tolerance is that of the hand sum."""
    held_gal = run("hydraulics.hose", "water_in_hose_gal", bore_in=bore_in, length_ft=length_ft)
    assert held_gal == pytest.approx(expected_gal, rel=1e-4)


FRICTION = {"coefficient": 15.5, "flow_gpm": 150, "length_ft": 200}
FLOW = {"coefficient": 15.5, "loss_psi": 60, "length_ft": 200}
TEST = {"loss_psi": 60, "flow_gpm": 150, "length_ft": 200}


@pytest.mark.parametrize(
    ("function", "good", "field", "value", "code"),
    [
        ("friction_loss_psi", FRICTION, "coefficient", 0, "not_positive"),
        ("friction_loss_psi", FRICTION, "coefficient", -2, "not_positive"),
        ("friction_loss_psi", FRICTION, "coefficient", 1e-12, "too_small"),
        ("friction_loss_psi", FRICTION, "flow_gpm", -1, "negative"),
        ("friction_loss_psi", FRICTION, "length_ft", -1, "negative"),
        ("flow_for_loss_gpm", FLOW, "coefficient", 0, "not_positive"),
        ("flow_for_loss_gpm", FLOW, "loss_psi", -1, "negative"),
        ("flow_for_loss_gpm", FLOW, "length_ft", 0, "not_positive"),
        ("coefficient_from_test", TEST, "loss_psi", 0, "not_positive"),
        ("coefficient_from_test", TEST, "flow_gpm", 0, "not_positive"),
        ("coefficient_from_test", TEST, "length_ft", -50, "not_positive"),
        ("velocity_ft_per_s", {"flow_gpm": 150, "bore_in": 2.5}, "flow_gpm", -1, "negative"),
        ("velocity_ft_per_s", {"flow_gpm": 150, "bore_in": 2.5}, "bore_in", 0, "not_positive"),
        ("water_in_hose_gal", {"bore_in": 2.5, "length_ft": 100}, "bore_in", -2.5, "not_positive"),
        ("water_in_hose_gal", {"bore_in": 2.5, "length_ft": 100}, "length_ft", -1, "negative"),
        ("parallel_coefficient", {}, "coefficients", [], "missing"),
        ("parallel_coefficient", {}, "coefficients", None, "missing"),
        ("parallel_coefficient", {}, "coefficients", 2, "missing"),
        ("parallel_coefficient", {}, "coefficients", "22", "missing"),
        ("parallel_coefficient", {}, "coefficients", {"first": 2}, "missing"),
        ("parallel_coefficient", {}, "coefficients", [2] * 13, "too_many"),
        ("parallel_coefficient", {}, "coefficients", [2, 0], "not_positive"),
        ("parallel_coefficient", {}, "coefficients", [2, "2"], "not_a_number"),
        ("parallel_coefficient", {}, "coefficients", [2, True], "not_a_number"),
        ("parallel_coefficient", {}, "coefficients", [2, 1e300], "too_large"),
    ],
)
def test_refusal(run, function, good, field, value, code):
    """An input outside its range is refused by its name; what is no number at all is tested in test_laws."""
    with pytest.raises(CalcError) as refusal:
        run("hydraulics.hose", function, **{**good, field: value})
    assert (refusal.value.field, refusal.value.code) == (field, code)


def test_too_many_side_by_side_tells_how_many(run):
    """Twelve hoses are the most, and the refusal says so."""
    with pytest.raises(CalcError) as refusal:
        run("hydraulics.hose", "parallel_coefficient", coefficients=[2] * 13)
    assert refusal.value.facts == {"most": 12}


def test_no_working_pressure_of_no_test(run):
    """A test pressure of nothing is none."""
    with pytest.raises(CalcError) as refusal:
        run("hydraulics.hose", "working_pressure_psi", test_psi=0)
    assert (refusal.value.field, refusal.value.code) == ("test_psi", "not_positive")
