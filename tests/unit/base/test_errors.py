"""The checks of plain numbers: what is let through at each bound, what is refused, and what the refusal tells."""
import pytest

from calc.base.errors import CalcError

# limits that calc sets itself: ten million either way, and a thousand-millionth above nothing
MOST, LEAST = 1e7, 1e-9


@pytest.mark.parametrize(
    ("check", "value"),
    [
        ("number", 0), ("number", MOST), ("number", -MOST), ("number", 5e-324), ("number", -0.5),
        ("positive", LEAST), ("positive", 1), ("positive", MOST),
        ("not_negative", 0), ("not_negative", 5e-324), ("not_negative", MOST),
        ("within", 2), ("within", 3), ("within", 2.5),
    ],
)
def test_let_through(run, check, value):
    """A number at a bound is still one that can be meant."""
    more = {"least": 2, "most": 3} if check == "within" else {}
    assert run("base.errors", f"check_{check}", field="x", value=value, **more) is None


@pytest.mark.parametrize(
    ("check", "value", "code", "facts"),
    [
        ("number", 1.000001e7, "too_large", {"most": MOST}),
        ("number", -1.000001e7, "too_large", {"most": MOST}),
        ("number", True, "not_a_number", {}),
        ("number", False, "not_a_number", {}),
        ("number", None, "not_a_number", {}),
        ("number", "1", "not_a_number", {}),
        ("number", [1], "not_a_number", {}),
        ("positive", 0, "not_positive", {"value": 0}),
        ("positive", -3, "not_positive", {"value": -3}),
        ("positive", 9.9e-10, "too_small", {"value": 9.9e-10, "least": LEAST}),
        ("positive", 2e7, "too_large", {"most": MOST}),
        ("positive", "1", "not_a_number", {}),
        ("not_negative", -5e-324, "negative", {"value": -5e-324}),
        ("not_negative", 2e7, "too_large", {"most": MOST}),
        ("not_negative", None, "not_a_number", {}),
        ("within", 1.999, "out_of_range", {"value": 1.999, "least": 2, "most": 3}),
        ("within", 3.001, "out_of_range", {"value": 3.001, "least": 2, "most": 3}),
        ("within", -2e7, "too_large", {"most": MOST}),
        ("within", "2.5", "not_a_number", {}),
    ],
)
def test_refused(run, check, value, code, facts):
    """What cannot be meant is refused by its name and code, with the bound it broke and what was given."""
    more = {"least": 2, "most": 3} if check == "within" else {}
    with pytest.raises(CalcError) as refused:
        run("base.errors", f"check_{check}", field="depth_ft", value=value, **more)
    assert (refused.value.field, refused.value.code) == ("depth_ft", code)
    assert refused.value.facts == pytest.approx(facts, rel=1e-12)


def test_a_refusal_that_nobody_caught_names_itself():
    """In a log the refusal reads as its field and code."""
    assert str(CalcError("depth_ft", "negative", value=-1)) == "depth_ft: negative"
