"""Rounding for people: the same text on both Pythons, halves away from zero."""
import decimal
import json
import random

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError
from tests import bridge


@pytest.mark.parametrize(
    ("value", "places", "expected"),
    [
        # halves go away from zero; every one of these is an exact half in binary too
        (0.5, 0, "1"),
        (1.5, 0, "2"),
        (2.5, 0, "3"),
        (112.5, 0, "113"),
        (-112.5, 0, "-113"),
        (0.125, 2, "0.13"),
        (-0.375, 2, "-0.38"),
        # not quite a half
        (112.49, 0, "112"),
        (0.4999, 0, "0"),
        # nothing is nothing, without a sign
        (0, 0, "0"),
        (-0.0, 1, "0.0"),
        (-0.04, 1, "0.0"),
        # decimals are kept, zeros included
        (7, 2, "7.00"),
        (0.05, 2, "0.05"),
        (9.996, 2, "10.00"),
        (1.0625, 3, "1.063"),
        (1e7, 0, "10000000"),
        (-1e7, 6, "-10000000.000000"),
        # halves as people type them, which binary holds a little short
        (1.005, 2, "1.01"),
        (0.575, 2, "0.58"),
        (2.675, 2, "2.68"),
    ],
)
def test_rounded(run, value, places, expected):
    """The text is what a person rounds to by hand."""
    assert run("base.rounding", "rounded", value=value, places=places) == expected


@settings(deadline=None, max_examples=1000)
@given(digits=st.integers(-(10**8), 10**8), half=st.booleans(), places=st.integers(0, 6))
@example(digits=1, half=False, places=0)
def test_typed_values(run, digits, half, places):
    """A number typed with one decimal more than is shown rounds as decimal arithmetic rounds it, half up."""
    typed = decimal.Decimal(digits * 10 + (5 if half else 0)).scaleb(-places - 1)
    if abs(typed) > 10**7:
        typed = typed.scaleb(-2).quantize(decimal.Decimal(1).scaleb(-places - 1))
    expected = typed.quantize(decimal.Decimal(1).scaleb(-places), decimal.ROUND_HALF_UP)
    shown = run("base.rounding", "rounded", value=float(typed), places=places)
    assert shown == str(abs(expected) if expected == 0 else expected)


def test_same_text(phone):
    """Five thousand amounts of every size, halves among them, have the same text on both Pythons."""
    chance = random.Random(1925)
    for _ in range(5000):
        size = 10 ** chance.randint(-6, 6)
        value = chance.choice([chance.uniform(-size, size), chance.randint(-999, 999) / 2 ** chance.randint(0, 9)])
        arguments = {"value": value, "places": chance.randint(0, 6)}
        request = json.dumps({"module": "base.rounding", "function": "rounded", "arguments": arguments})
        assert json.loads(phone.call(request)) == json.loads(bridge.call(request)), arguments


@pytest.mark.parametrize(
    ("value", "places", "expected"),
    [
        (69.75, 2, "69.75"),
        (69.7, 2, "69.7"),
        (70, 2, "70"),    # no idle zeros
        (100, 0, "100"),  # these are not idle
        (-0.001, 2, "0"),
        (0.434, 3, "0.434"),
    ],
)
def test_plain(run, value, places, expected):
    """The text has no idle zeros behind the point."""
    assert run("base.rounding", "plain", value=value, places=places) == expected


@pytest.mark.parametrize(
    ("value", "step", "expected"),
    [
        (169.75, 5, 170),
        (167.5, 5, 170),    # half way: up
        (-167.5, 5, -170),  # away from zero on both sides
        (167.4, 5, 165),
        (2, 5, 0),
        (-2, 5, 0),
        (62.5, 25, 75),
        (1.3, 0.25, 1.25),
        (40, 1, 40),
    ],
)
def test_to_step(run, value, step, expected):
    """The nearest mark of the gauge, by hand."""
    assert run("base.rounding", "to_step", value=value, step=step) == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize(
    ("function", "arguments", "field", "code"),
    [
        ("rounded", {"value": "12", "places": 0}, "value", "not_a_number"),
        ("rounded", {"value": True, "places": 0}, "value", "not_a_number"),
        ("rounded", {"value": None, "places": 0}, "value", "not_a_number"),
        ("rounded", {"value": 1.1e11, "places": 0}, "value", "too_large"),
        ("rounded", {"value": -1e300, "places": 0}, "value", "too_large"),
        ("rounded", {"value": 12, "places": "2"}, "places", "out_of_range"),
        ("rounded", {"value": 12, "places": None}, "places", "out_of_range"),
        ("rounded", {"value": 12, "places": True}, "places", "out_of_range"),
        ("rounded", {"value": 12, "places": 2.5}, "places", "out_of_range"),
        ("rounded", {"value": 12, "places": -1}, "places", "out_of_range"),
        ("rounded", {"value": 12, "places": 7}, "places", "out_of_range"),
        ("plain", {"value": None, "places": 0}, "value", "not_a_number"),
        ("to_step", {"value": "12", "step": 5}, "value", "not_a_number"),
        ("to_step", {"value": 12, "step": 0}, "step", "not_positive"),
        ("to_step", {"value": 12, "step": -5}, "step", "not_positive"),
        ("to_step", {"value": 12, "step": "5"}, "step", "not_a_number"),
    ],
)
def test_refusal(run, function, arguments, field, code):
    """What is no number, or no number of decimals, is refused and never clamped."""
    with pytest.raises(CalcError) as refusal:
        run("base.rounding", function, **arguments)
    assert (refusal.value.field, refusal.value.code) == (field, code)


def test_refused_places_tell_their_bounds(run):
    """Whoever asks for too many decimals is told how many there are."""
    with pytest.raises(CalcError) as refusal:
        run("base.rounding", "rounded", value=12, places=7)
    assert refusal.value.facts == {"least": 0, "most": 6}
    with pytest.raises(CalcError) as refusal:
        run("base.rounding", "rounded", value=12, places=False)
    assert refusal.value.code == "out_of_range"


@pytest.mark.parametrize(("value", "step", "expected"), [(0.4, 0.25, 0.5), (-0.4, 0.25, -0.5), (0.6, 1, 1), (0, 5, 0)])
def test_to_small_steps(run, value, step, expected):
    """Below one the sign is still the value's."""
    assert run("base.rounding", "to_step", value=value, step=step) == expected


def test_idle_zeros_end_at_the_point(run):
    """Zeros before the point are figures of the number."""
    assert run("base.rounding", "plain", value=100.0, places=2) == "100"
    assert run("base.rounding", "plain", value=1200.50, places=3) == "1200.5"
