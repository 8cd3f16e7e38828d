"""Typed text to numbers."""
import json
import re

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError
from tests import bridge

# the grammar: digits, or groups of three set apart by one kind of mark, then at most one decimal mark of another kind
SPELLING = re.compile(
    r"[ \t\r\n\u00a0\u2009\u202f]*[-\u2212]?(?:"
    r"[0-9]+[.,]?[0-9]*|[.,][0-9]+"
    r"|[1-9][0-9]{0,2}(?:[ \t\r\n\u00a0\u2009\u202f][0-9]{3})+(?:[.,][0-9]*)?"
    r"|[1-9][0-9]{0,2}(?:,[0-9]{3})+(?:\.[0-9]*)?"
    r"|[1-9][0-9]{0,2}(?:\.[0-9]{3})+(?:,[0-9]*)?"
    r")[ \t\r\n\u00a0\u2009\u202f]*")
EITHER_WAY = re.compile(r"-?[1-9][0-9]{0,2}[.,][0-9]{3}")


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
        # a mark, or a space, that sets thousands apart: 1,250 is one thousand two hundred and fifty
        ("1,250", 1250),
        ("12,500", 12500),
        ("-1,250", -1250),
        ("1,250,000", 1250000),
        ("1.250.000", 1250000),
        ("1,250.5", 1250.5),
        ("1.250,5", 1250.5),
        ("1 250", 1250),
        ("1\u00a0250", 1250),  # no-break
        ("1\u202f250,5", 1250.5),  # narrow no-break, as French sets it
        ("12 500.25", 12500.25),
        ("50\u00a0", 50),
        # three decimals that can be nothing else
        ("0.500", 0.5),
        ("0,500", 0.5),
        ("1250.500", 1250.5),
        ("1250,500", 1250.5),
        ("1.2500", 1.25),
        (".125", 0.125),
        (",125", 0.125),
    ],
)
def test_number(run, text, expected):
    """What a person types for a number is that number."""
    assert run("base.entry", "number", field="length", text=text) == expected


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
        ("1,25,000", "not_a_number"),
        ("1,250,5", "not_a_number"),
        ("0,250,000", "not_a_number"),
        ("1 250,000.5", "not_a_number"),
        ("1,250 000", "not_a_number"),
        ("1 2500", "not_a_number"),
        ("1  250", "not_a_number"),
        ("1,250.5.5", "not_a_number"),
        (".", "not_a_number"),
        ("-", "not_a_number"),
        ("--5", "not_a_number"),
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
        run("base.entry", "number", field="length", text=text)
    assert (refusal.value.field, refusal.value.code) == ("length", code)


@pytest.mark.parametrize(
    ("text", "kind", "decimal", "expected"),
    [
        # an English page: a comma before three digits sets thousands apart, whatever the kind
        ("1,250", "flow", ".", 1250),
        ("1,125", "diameter", ".", 1125),
        ("1,25", "flow", ".", 1.25),
        # a point is the decimal one only where a thousandth is ever read: else it is asked about
        ("1.125", "diameter", ".", 1.125),
        ("2.125", "ratio", ".", 2.125),
        ("1.000", "flow", ".", None),
        ("1.250", "length", ".", None),
        ("-1.250", "rise", ".", None),
        ("12.500", "volume", ".", None),
        ("482.633", "pressure", ".", 482.633),  # a converted figure; thousands it cannot be
        ("482,633", "pressure", ",", 482.633),
        ("482,633", "pressure", ".", 482633),
        ("1.25", "flow", ".", 1.25),
        # a French page: the comma is its decimal mark, but many type it for thousands
        ("1,250", "flow", ",", None),
        ("1.250", "flow", ",", None),
        ("1,125", "diameter", ",", 1.125),
        ("1.125", "diameter", ",", 1.125),
        ("1 250", "flow", ",", 1250),
        ("1,25", "flow", ",", 1.25),
        ("1,250.5", "flow", ",", 1250.5),
        ("1.250,5", "flow", ",", 1250.5),
    ],
)
def test_a_mark_before_three_digits(run, text, kind, decimal, expected):
    """It is read by the page's language and the kind of quantity, and where both readings could be meant it is asked about."""
    if expected is not None:
        assert run("base.entry", "number", field="x", text=text, kind=kind, decimal=decimal) == expected
        return
    with pytest.raises(CalcError) as refusal:
        run("base.entry", "number", field="x", text=text, kind=kind, decimal=decimal)
    assert refusal.value.code == "thousands_or_decimals"


@pytest.mark.parametrize(
    ("text", "decimal", "thousands", "decimals"),
    [
        ("1.000", ".", "1000", "1"),
        ("1.250", ".", "1250", "1.25"),
        ("1,250", ",", "1250", "1,25"),
        ("-1.125", ".", "-1125", "-1.1250"),  # with three decimals it would be asked about again
    ],
)
def test_what_is_asked_can_be_answered(run, text, decimal, thousands, decimals):
    """Both readings are given as texts that are read one way."""
    with pytest.raises(CalcError) as refusal:
        run("base.entry", "number", field="x", text=text, kind="flow", decimal=decimal)
    assert (refusal.value.facts["thousands"], refusal.value.facts["decimals"]) == (thousands, decimals)
    digits = float(text.replace(",", "").replace(".", ""))
    assert run("base.entry", "number", field="x", text=thousands, kind="flow", decimal=decimal) == digits
    assert run("base.entry", "number", field="x", text=decimals, kind="flow", decimal=decimal) == digits / 1000


def spelled(text):
    """The number a spelling means, taken apart another way: the last mark is the decimal one unless three digits follow it alone."""
    bare = re.sub(r"[ \t\r\n\u00a0\u2009\u202f]", "", text).replace("\u2212", "-")
    marks = re.findall("[.,]", bare)
    thousands = marks and (len(marks) > 1 and len(set(marks)) == 1 or marks == [","] and EITHER_WAY.fullmatch(bare))
    whole, mark, fraction = re.fullmatch(r"(.*?)([.,]?)([0-9]*)", bare).groups() if marks and not thousands else (bare, "", "")
    return float(re.sub("[.,]", "", whole) + "." + fraction)


@settings(deadline=None, max_examples=500)
@given(text=st.text("0159.,-+ e\u202f", max_size=9))
@example(text="1,590")
@example(text="1.590,5")
@example(text="1 590.5")
def test_one_grammar(run, text):
    """Exactly one grammar is read, and as the number it spells."""
    try:
        read = run("base.entry", "number", field="length", text=text)
    except CalcError:
        assert not SPELLING.fullmatch(text)
    else:
        assert SPELLING.fullmatch(text)
        assert read == spelled(text)


@settings(deadline=None, max_examples=300)
@given(text=st.text(st.sampled_from("05.-\u2212 \t\u00a0\u2009\u202f\u3000\x1f\u0665"), max_size=4))
@example(text="50\u00a0")  # a space that does not break, as text pasted from a page often has
@example(text="\x1f5")
def test_both_pythons_read_alike(phone, text):
    """No blank or digit of another script is a number on the desk and a refusal on the phone."""
    request = json.dumps({"module": "base.entry", "function": "number", "arguments": {"field": "length", "text": text}})
    assert json.loads(phone.call(request)) == json.loads(bridge.call(request))


@pytest.mark.parametrize("text", ["\u30005", "5\u2003", "X5", "5X", "\x0b5"])
def test_only_blanks_that_a_keyboard_makes(run, text):
    """Other blanks, and letters, are no part of a number on either Python."""
    with pytest.raises(CalcError) as refusal:
        run("base.entry", "number", field="length", text=text)
    assert (refusal.value.field, refusal.value.code) == ("length", "not_a_number")


@pytest.mark.parametrize(("typed", "decimal", "kind", "kept", "amount"), [
    ("1,500", ".", "flow", "1500", 1500), ("1,250", ".", "diameter", "1250", 1250), ("482,633", ".", "pressure", "482633", 482633),
    ("1,125", ",", "diameter", "1.125", 1.125), ("482,633", ",", "pressure", "482.633", 482.633),
])
def test_what_is_kept_reads_one_way(run, typed, decimal, kind, kept, amount):
    """What shared/one_reading.js writes of an accepted entry is that entry in both languages (spellings by hand)."""
    assert run("base.entry", "number", field="x", text=typed, kind=kind, decimal=decimal) == amount
    for mark in (".", ","):
        assert run("base.entry", "number", field="x", text=kept, kind=kind, decimal=mark) == amount


@pytest.mark.parametrize(("kind", "amount"), [
    *((kind, 1.25) for kind in ("diameter", "ratio", "coefficient", "barometer", "distance")),  # read to thousandths in the trade
    *((kind, None) for kind in ("flow", "pressure", "length", "volume", "count", "speed")),
])
def test_which_kinds_are_read_to_thousandths(run, kind, amount):
    """1.250 of a tip or of a barometer is one and a quarter; of a flow it may be meant for a thousand, and is asked."""
    if amount is not None:
        assert run("base.entry", "number", field="x", text="1.250", kind=kind, decimal=".") == amount
        return
    with pytest.raises(CalcError) as refusal:
        run("base.entry", "number", field="x", text="1.250", kind=kind, decimal=".")
    assert (refusal.value.field, refusal.value.code) == ("x", "thousands_or_decimals")


def test_a_plain_number_is_a_ratio(run):
    """Where no kind is said."""
    assert run("base.entry", "number", field="x", text="1.250") == 1.25


@pytest.mark.parametrize(("text", "amount"), [("123456789012", 123456789012), ("1234567890.12", 1234567890.12), ("1234567890,12", 1234567890.12), ("1234567890123", None), ("1234567890,123", None)])
def test_as_long_as_a_number_may_be(run, text, amount):
    """Twelve digits, wherever the mark stands."""
    if amount is not None:
        assert run("base.entry", "number", field="x", text=text) == amount
        return
    with pytest.raises(CalcError) as refusal:
        run("base.entry", "number", field="x", text=text)
    assert (refusal.value.field, refusal.value.code) == ("x", "too_large")


@pytest.mark.parametrize("text", ["1,2.345.678", "1.2,345,678", "1,234.5.6"])
def test_three_kinds_of_mark(run, text):
    """A decimal mark before marks of thousands is no number."""
    with pytest.raises(CalcError) as refusal:
        run("base.entry", "number", field="x", text=text)
    assert (refusal.value.field, refusal.value.code) == ("x", "not_a_number")
