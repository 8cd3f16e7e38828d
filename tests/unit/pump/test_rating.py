"""The pump's rating: what it promises, and how far a demand is from it."""
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError


def within(run, flow_gpm, net_psi, rated_gpm=1000):
    return run("pump.rating", "within_rating", rated_gpm=rated_gpm, flow_gpm=flow_gpm, net_psi=net_psi)


@pytest.mark.parametrize(
    ("flow_gpm", "net_psi", "limit", "rated_psi", "extrapolated"),
    [
        # a 1,000 gpm pump: 1,000 at 150, 700 at 200, 500 at 250 psi
        (1000, 150, None, 150, False),
        (700, 200, None, 200, False),
        (500, 250, None, 250, False),
        (850, 150, None, 175, False),          # halfway between 700 and 1,000
        (850, 180, "pressure", 175, False),
        (600, 225, None, 225, False),          # halfway between 500 and 700
        (300, 240, None, 250, True),           # level below the least tested
        (300, 260, "pressure", 250, True),
        (1100, 100, "flow", 0, False),
        (0, 0, None, 250, True),
    ],
)
def test_within_rating(run, flow_gpm, net_psi, limit, rated_psi, extrapolated):
    """A demand is held against straight lines between the rating points, by hand."""
    told = within(run, flow_gpm, net_psi)
    assert (told["within"], told["limit"], told["extrapolated"]) == (limit is None, limit, extrapolated)
    assert told["rated_psi"] == pytest.approx(rated_psi, rel=1e-9)
    assert told["margin_psi"] == pytest.approx(rated_psi - net_psi, abs=1e-9)


@settings(max_examples=60, deadline=None)
@given(rated_gpm=st.floats(50, 6000), share=st.floats(0, 1.5), net_psi=st.floats(0, 300))
def test_within_means_pressure_and_flow(run, rated_gpm, share, net_psi):
    """A demand is within the rating just when neither pressure nor flow is lacking."""
    told = within(run, share * rated_gpm, net_psi, rated_gpm)
    assert told["within"] == (told["margin_psi"] >= 0 and share <= 1)


def test_rating_curve(run):
    """The line to draw goes through the rating points, least flow first, level before the first."""
    assert run("pump.rating", "rating_curve", rated_gpm=1250) == [[0, 250], [625, 250], [875, 200], [1250, 150]]


@pytest.mark.parametrize(
    ("facts", "field"), [({"rated_gpm": 40}, "rated_gpm"), ({"flow_gpm": -1}, "flow_gpm"), ({"net_psi": "150"}, "net_psi")])
def test_refused(run, facts, field):
    """What cannot be meant is refused by its name."""
    with pytest.raises(CalcError) as refusal:
        within(run, **{"flow_gpm": 500, "net_psi": 150, **facts})
    assert refusal.value.field == field


@pytest.mark.parametrize(
    ("flow_gpm", "from_rpm", "to_rpm", "expected_gpm"),
    [(500, 1000, 1500, 750), (500, 1500, 1000, 500 / 1.5), (0, 1000, 2000, 0)],  # by hand: flow goes with speed
)
def test_flow_at_another_speed(run, flow_gpm, from_rpm, to_rpm, expected_gpm):
    """Half as fast again moves half as much again (affinity laws)."""
    told = run("pump.rating", "flow_at_speed_gpm", flow_gpm=flow_gpm, from_rpm=from_rpm, to_rpm=to_rpm)
    assert told == pytest.approx(expected_gpm, rel=1e-12)


@pytest.mark.parametrize(("function", "quantity"), [("flow_at_speed_gpm", "flow_gpm"), ("pressure_at_speed_psi", "pressure_psi")])
def test_refused_speed(run, function, quantity):
    """A speed of none compares with nothing, and less than nothing is no reading; each by its own name."""
    sound = {quantity: 100, "from_rpm": 1000, "to_rpm": 1500}
    for name, value, code in (("from_rpm", 0, "not_positive"), ("to_rpm", 0, "not_positive"), (quantity, -1, "negative")):
        with pytest.raises(CalcError) as refusal:
            run("pump.rating", function, **{**sound, name: value})
        assert (refusal.value.field, refusal.value.code) == (name, code)
