"""Typed text to numbers, and from the page's units to calc's own."""
import json
import re

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from calc.errors import CalcError
from site_src import units
from tests import bridge

# one spelling: digits with at most one point or comma among them, one minus before, blanks around
SPELLING = re.compile(r"\s*[-\u2212]?(?![0-9]*,[0-9]{3}\s*$)([0-9]+[.,]?[0-9]*|[.,][0-9]+)\s*", re.ASCII)
UNITS = {"shown": "page", "systems": {"page": {"length": {"factor": 0.25, "places": 0}}}}


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("150", 150),
        ("0", 0),
        ("007", 7),
        ("1.75", 1.75),
        ("1,75", 1.75),     # a decimal comma
        ("62.", 62),
        (".5", 0.5),
        ("-20", -20),
        ("\u221220", -20),  # the minus that keyboards of phones put
        ("  150 ", 150),
        ("\t150\n", 150),
        ("999999999999", 999999999999),  # twelve digits
    ],
)
def test_number(run, text, expected):
    """What a person types for a number is that number."""
    assert run("entry", "number", field="length", text=text) == expected


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "empty"),
        ("   ", "empty"),
        (None, "not_a_number"),
        (True, "not_a_number"),
        (150, "not_a_number"),
        (["150"], "not_a_number"),
        ("abc", "not_a_number"),
        ("150 ft", "not_a_number"),
        ("1 50", "not_a_number"),
        ("1.2.3", "not_a_number"),
        ("1,000.5", "not_a_number"),
        (".", "not_a_number"),
        ("-", "not_a_number"),
        ("--5", "not_a_number"),
        ("1,000", "comma_of_thousands"),  # a thousand to one person, one to another
        ("- 5", "not_a_number"),
        ("5-", "not_a_number"),
        # spellings that one Python or the other would take
        ("+5", "not_a_number"),
        ("1e3", "not_a_number"),
        ("1_000", "not_a_number"),
        ("0x10", "not_a_number"),
        ("inf", "not_a_number"),
        ("nan", "not_a_number"),
        ("\u0665", "not_a_number"),  # a digit, but not one of ours
        ("\u00bd", "not_a_number"),  # one half as one character
        ("1234567890123", "too_large"),
        ("9" * 400, "too_large"),
    ],
)
def test_number_refused(run, text, code):
    """Anything else is refused under the name of its field."""
    with pytest.raises(CalcError) as refusal:
        run("entry", "number", field="length", text=text)
    assert (refusal.value.field, refusal.value.code) == ("length", code)


@settings(deadline=None, max_examples=300)
@given(text=st.text("0159.,-+ ex_", max_size=8))
def test_one_spelling(run, text):
    """Exactly one spelling is read, and as the number it spells."""
    try:
        read = run("entry", "number", field="length", text=text)
    except CalcError:
        assert not SPELLING.fullmatch(text)
    else:
        assert SPELLING.fullmatch(text)
        assert read == float(text.replace(",", "."))


@settings(deadline=None, max_examples=300)
@given(text=st.text(st.sampled_from("05.-\u2212 \t\u00a0\u2009\u202f\u3000\x1f\u0665"), max_size=4))
@example(text="50\u00a0")  # a space that does not break, as text pasted from a page often has
@example(text="\x1f5")
def test_both_pythons_read_alike(phone, text):
    """No blank or digit of another script is a number on the desk and a refusal on the phone."""
    request = json.dumps({"module": "entry", "function": "number", "arguments": {"field": "length", "text": text}})
    assert json.loads(phone.call(request)) == json.loads(bridge.call(request))


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
    amount_ft = run("entry", "quantity", units=UNITS, kind="length", field="length", text=text)
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
        run("entry", "quantity", units=UNITS, kind="length", field="rise", text=text)
    assert (refusal.value.field, refusal.value.code) == ("rise", code)


@pytest.mark.parametrize("text", ["\u00a05", "5\u2003", "X5", "5X", "\x0b5"])
def test_only_blanks_that_a_keyboard_makes(run, text):
    """Other blanks, and letters, are no part of a number on either Python."""
    with pytest.raises(CalcError) as refusal:
        run("entry", "number", field="length", text=text)
    assert (refusal.value.field, refusal.value.code) == ("length", "not_a_number")


@pytest.mark.parametrize(("function", "more", "field"), [("quantity", {"field": "length"}, "length"), ("shown", {}, "text")])
def test_a_system_within_a_system(run, function, more, field):
    """What stands behind the first mark is the system, and this is none."""
    with pytest.raises(CalcError) as refusal:
        run("entry", function, units=units.shown_in("US"), kind="length", text="5@US@SI", **more)
    assert (refusal.value.field, refusal.value.code) == (field, "unknown_units")


@pytest.mark.parametrize(
    ("system", "kind", "amount", "side", "expected"),
    [
        ("US", "pressure", 50, -1, "50"), ("US", "pressure", 1500, 1, "1500"), ("US", "length", 5000, 1, "5000"),
        # by the definitions of foot and psi: 1 ft is 0.3048 m, 5000 ft 1524 m; 20 psi is 137.895 kPa, 1000 psi 6894.757
        ("SI", "length", 1, -1, "0.31"), ("SI", "length", 5000, 1, "1524"), ("SI", "pressure", 20, -1, "137.9"), ("SI", "pressure", 1000, 1, "6894.75"),
    ],
)
def test_a_bound_that_is_said_is_taken(run, system, kind, amount, side, expected):
    """A bound is told rounded inward, so that what is typed as told is within it."""
    assert run("entry", "bound", units=units.shown_in(system), kind=kind, amount=amount, side=side) == expected


@pytest.mark.parametrize(
    ("text", "code"),
    [("150@US", None), ("", None), ("1" * 30, None), ("x" * 31, "too_long"), ("5@nowhere", "unknown_units"), ("5@", "unknown_units"), (5, "not_text"), (None, "not_text")],
)
def test_one_check_of_entries(run, text, code):
    """What may be kept as an entry, whether its number can be read or not."""
    if code is None:
        assert run("entry", "check", units=units.shown_in("US"), field="tip", text=text) is None
        return
    with pytest.raises(CalcError) as refused:
        run("entry", "check", units=units.shown_in("US"), field="tip", text=text)
    assert (refused.value.field, refused.value.code) == ("tip", code)
