"""Entries with their unit: what was typed to calc's own amount and back, stepped, added, bounded."""
import pytest

from calc.base.errors import CalcError
from site_src.content import units

UNITS = {"shown": "page", "systems": {"page": {"length": {"factor": 0.25, "places": 0}}}}
TWO = {"shown": "near", "systems": {"near": {"length": {"factor": 1, "places": 0}}, "far": {"length": {"factor": 0.5, "places": 1}}}}
COMMA = {**TWO, "decimal": ","}


@pytest.mark.parametrize(
    ("text", "expected_ft"),
    [
        ("50", 200),  # a page unit of four feet: 50 of them are 200 ft
        ("-5", -20),
        ("0", 0),
    ],
)
def test_quantity(run, text, expected_ft):
    """A typed amount is brought to calc's unit once, at the edge."""
    amount_ft = run("base.entry", "quantity", units=UNITS, kind="length", field="length", text=text)
    assert amount_ft == pytest.approx(expected_ft, rel=1e-9)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("uphill", "not_a_number"),
        ("", "empty"),
        ("2500001", "too_large"),  # four times as many feet, past ten million
    ],
)
def test_quantity_refused(run, text, code):
    """A quantity is refused as its number is, and where it is too large in calc's unit."""
    with pytest.raises(CalcError) as refusal:
        run("base.entry", "quantity", units=UNITS, kind="length", field="rise", text=text)
    assert (refusal.value.field, refusal.value.code) == ("rise", code)


@pytest.mark.parametrize(("function", "more", "field"), [("quantity", {"field": "length"}, "length"), ("shown", {}, "text")])
def test_a_system_within_a_system(run, function, more, field):
    """What stands behind the first mark is the system, and this is none."""
    with pytest.raises(CalcError) as refusal:
        run("base.entry", function, units=units.shown_in("US"), kind="length", text="5@US@SI", **more)
    assert (refusal.value.field, refusal.value.code) == (field, "unknown_units")


@pytest.mark.parametrize(
    ("system", "kind", "amount", "side", "expected"),
    [
        ("US", "pressure", 50, -1, "50"), ("US", "pressure", 1500, 1, "1500"), ("US", "length", 5000, 1, "5000"),
        # by the definitions of foot and psi: 1 ft is 0.3048 m, 5000 ft 1524 m; 20 psi is 137.895 kPa, 1000 psi 6894.757
        ("SI", "length", 1, -1, "1"), ("SI", "length", 5000, 1, "1524"), ("SI", "pressure", 20, -1, "138"), ("SI", "pressure", 1000, 1, "6894"),
        ("SI", "flow", 50, -1, "190"), ("SI", "flow", 5000, 1, "18927"),  # 3.785412 L a gallon: 189.27 and 18,927.06 L/min
        ("US", "coefficient", 0.001, -1, "0.001"), ("SI", "diameter", 0.1, -1, "2.54"),  # fine ones keep their places
    ],
)
def test_a_bound_that_is_said_is_taken(run, system, kind, amount, side, expected):
    """A bound is told rounded inward, so that what is typed as told is within it."""
    assert run("base.entry", "bound", units=units.shown_in(system), kind=kind, amount=amount, side=side) == expected


@pytest.mark.parametrize(
    ("text", "code"),
    [("150@US", None), ("", None), ("1" * 30, None), ("x" * 31, "too_long"), ("5@nowhere", "unknown_units"), ("5@", "unknown_units"), (5, "not_text"), (None, "not_text")],
)
def test_one_check_of_entries(run, text, code):
    """What may be kept as an entry, whether its number can be read or not."""
    if code is None:
        assert run("base.entry", "check", units=units.shown_in("US"), field="tip", text=text) is None
        return
    with pytest.raises(CalcError) as refused:
        run("base.entry", "check", units=units.shown_in("US"), field="tip", text=text)
    assert (refused.value.field, refused.value.code) == ("tip", code)


@pytest.mark.parametrize(
    ("text", "decimal", "step", "direction", "least", "expected"),
    [
        ("200", ".", 50, 1, 0, "250"),
        ("210", ".", 50, 1, 0, "250"),
        ("210", ".", 50, -1, 0, "200"),
        ("0", ".", 50, -1, 0, None),
        ("0", ".", 10, -1, None, "-10"),
        ("\u221220", ".", 10, 1, None, "-10"),
        ("6.9", ".", 0.5, 1, 0.5, "7"),
        ("6,9", ",", 0.5, -1, 0.5, "6.5"),
        ("0,3", ",", 0.1, 1, 0, "0.4"),  # 0.3 lies a last bit under three steps
        ("1,250", ".", 50, 1, 0, "1300"),
        ("1", ".", 0.125, 1, 0, "1.1250"),  # so that it is not asked about
        ("1\u00a0250", ",", 50, 1, 0, "1300"),
        ("1.250", ".", 50, 1, 0, None),  # asked about: no step from it
        ("abc", ".", 50, 1, 0, None),
        ("", ".", 50, 1, 0, None),
        ("999999999999", ".", 50, 1, 0, None),  # past what calc takes
    ],
)
def test_stepped(run, text, decimal, step, direction, least, expected):
    """A key goes to the next multiple of its step from what stands there, however it is spelled."""
    assert run("base.entry", "stepped", text=text, kind="flow", decimal=decimal, step=step, direction=direction, least=least) == expected


@pytest.mark.parametrize(
    ("text", "other", "sign", "expected"),
    [
        ("96@near", "12@near", 1, "108@near"),
        ("96@near", "6@far", -1, "84@near"),  # a far unit is two near ones
        ("\u221212@near", "12", 1, "0@near"),
        ("up", "12", 1, None),
        ("96", "", 1, None),
    ],
)
def test_added(run, text, other, sign, expected):
    """A floor up or down is added to what stands there, whatever systems the two were typed in."""
    assert run("base.entry", "added", units=TWO, kind="length", text=text, other=other, sign=sign) == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("1.5@near", "1,5"),
        ("1.@near", "1."),   # still being typed
        ("1,5@near", "1,5"),
        ("1,250.5@near", "1,250.5"),  # as typed
        ("1.250@near", "1.250"),  # asked about: as typed
        ("abc.d@near", "abc.d"),
        ("15@far", "30"),
    ],
)
def test_shown_with_a_comma(run, text, expected):
    """On a page with a decimal comma a decimal point comes as one."""
    assert run("base.entry", "shown", units=COMMA, kind="length", text=text) == expected
    turned = {**COMMA, "shown": "far"}
    assert run("base.entry", "shown", units=turned, kind="length", text="5@near") == "2,5"
