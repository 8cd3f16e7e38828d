"""The surge of a shut nozzle: worked by hand, and by law."""
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError


def rise(run, **facts):
    return run("hydraulics.surge", "rise", **{"flow_gpm": 150, "bore_in": 1.75, "length_ft": 200, "shutting_s": 0.1, **facts})


def test_shut_at_once(run):
    """150 gpm in 1 3/4 in hose runs at 20.0 ft/s; stopped at once, about 80 psi in soft hose and 350 in stiff."""
    told = rise(run)
    # by hand: 150 x 231 / 60 / 2.4053 in2 / 12 = 20.01 ft/s; 62.37 / 32.174 = 1.9385 slugs per cubic foot;
    # 1.9385 x 300 x 20.01 / 144 = 80.8 psi, and 1300 / 300 of it
    assert (told["least_psi"], told["most_psi"]) == (pytest.approx(80.8, abs=0.1), pytest.approx(350.2, abs=0.3))
    assert told["slowest_s"] == pytest.approx(400 / 300, rel=1e-9)


def test_shut_slowly(run):
    """Slower than the wave takes there and back, the surge is the momentum of the water over the time, in any hose."""
    told = rise(run, shutting_s=4)
    # by hand: 2 x 1.9385 slugs per cubic foot x 200 ft x 20.01 ft/s / 4 s / 144 = 26.9 psi
    assert told["least_psi"] == pytest.approx(told["most_psi"], rel=1e-9)
    assert told["least_psi"] == pytest.approx(26.9, abs=0.1)


@settings(max_examples=50, deadline=None)
@given(shutting_s=st.floats(0.01, 20), longer_s=st.floats(0.01, 20), flow_gpm=st.floats(10, 1000))
def test_slower_is_never_worse(run, shutting_s, longer_s, flow_gpm):
    """More time never means more surge, and twice the flow is twice the surge."""
    fast = rise(run, shutting_s=shutting_s, flow_gpm=flow_gpm)
    slow = rise(run, shutting_s=shutting_s + longer_s, flow_gpm=flow_gpm)
    double = rise(run, shutting_s=shutting_s, flow_gpm=2 * flow_gpm)
    for name in ("least_psi", "most_psi"):
        assert slow[name] <= fast[name] * (1 + 1e-9)
        assert double[name] == pytest.approx(2 * fast[name], rel=1e-9)
    assert fast["least_psi"] <= fast["most_psi"] * (1 + 1e-9)


@pytest.mark.parametrize("field", ["flow_gpm", "bore_in", "length_ft", "shutting_s"])
@pytest.mark.parametrize(("value", "code"), [(0, "not_positive"), ("1", "not_a_number"), (1e300, "too_large")])
def test_refused(run, field, value, code):
    """What cannot be meant is refused by its name."""
    with pytest.raises(CalcError) as refusal:
        rise(run, **{field: value})
    assert (refusal.value.field, refusal.value.code) == (field, code)


def test_surges_are_as_the_waves(run):
    """By hand: the same stopped water in soft hose and in stiff, waves of 300 and 1,300 ft/s (from memory)."""
    surge = rise(run)
    assert surge["most_psi"] / surge["least_psi"] == pytest.approx(1300 / 300, rel=1e-9)


def test_water_weighs_what_it_weighs_at_60(run):
    """Density of water at 60 F is 999.01 kg per cubic metre (handbooks), 62.366 lb per cubic foot: 62.366 / 32.174 x 300 / 144."""
    speed_ft_per_s = 150 * 231 / 60 / (math.pi * 1.75**2 / 4) / 12  # by hand: flow over area
    assert rise(run)["least_psi"] / speed_ft_per_s == pytest.approx(62.366 / 32.174 * 300 / 144, rel=2e-5)
