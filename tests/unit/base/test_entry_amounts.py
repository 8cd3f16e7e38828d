"""Typed text to amounts of a unit, and back to what stands in an entry."""
import pytest

from calc.base.errors import CalcError
from site_src.content import units


def test_an_amount_is_read_by_the_pages_own_mark(run):
    """1,250 of a flow is a thousand and more on an English page, and asked on a French one."""
    english = units.shown_in("US")
    assert run("base.entry", "quantity", units=english, kind="flow", field="flow", text="1,250") == 1250
    with pytest.raises(CalcError) as refusal:
        run("base.entry", "quantity", units={**english, "decimal": ","}, kind="flow", field="flow", text="1,250")
    assert (refusal.value.field, refusal.value.code) == ("flow", "thousands_or_decimals")


@pytest.mark.parametrize(("typed", "shown"), [("15.", "15."), ("15.5", "15,5"), ("15,5", "15,5")])
def test_what_stands_in_a_french_entry(run, typed, shown):
    """A point that is read as the decimal mark becomes a comma; one that was only just typed stays, so that the next digit has a place."""
    assert run("base.entry", "shown", units={**units.shown_in("US"), "decimal": ","}, kind="pressure", text=typed) == shown


@pytest.mark.parametrize(("text", "other", "sign", "total"), [
    ("10@US", "3@SI", 1, "6.05@SI"),  # 3.048 and 3
    ("10@US", "3@SI", -1, "0.05@SI"), ("ten", "3@SI", 1, None), ("10@US", "three", 1, None),
])
def test_one_height_more(run, text, other, sign, total):
    """In the page's unit, to two decimals."""
    assert run("base.entry", "added", units=units.shown_in("SI"), kind="length", text=text, other=other, sign=sign) == total


@pytest.mark.parametrize(("kind", "amount", "side", "text"), [
    ("diameter", 1.0313, -1, "26.196"), ("diameter", 1.0313, 1, "26.195"),  # 26.19502 mm, to two decimals more than an answer
    ("length", 100, 1, "30"), ("length", 100, -1, "31"),  # 30.48 m
])
def test_a_bound_is_rounded_inward(run, kind, amount, side, text):
    """What is said to be allowed is."""
    assert run("base.entry", "bound", units=units.shown_in("SI"), kind=kind, amount=amount, side=side) == text


@pytest.mark.parametrize(("kind", "text", "code", "facts"), [
    ("flow", "5" * 31, "too_long", {"most": 30}), ("flow", 5, "not_a_number", {}), ("flow", None, "not_a_number", {}),
    ("flow", "1.250", "thousands_or_decimals", {"thousands": "1250", "decimals": "1.25"}),
])
def test_an_amount_refused(run, kind, text, code, facts):
    """By the name of its entry, with what the page says of it."""
    with pytest.raises(CalcError) as refusal:
        run.unheld("base.entry", "quantity", units=units.shown_in("US"), kind=kind, field="wanted", text=text)
    assert (refusal.value.field, refusal.value.code, refusal.value.facts) == ("wanted", code, facts)


def test_an_amount_by_its_kind(run):
    """A tip is read to thousandths."""
    assert run("base.entry", "quantity", units=units.shown_in("US"), kind="diameter", field="tip", text="1.250") == 1.25


def test_all_that_a_page_shows(run):
    """Each by its own kind: 200 ft are 61 m, 100 psi 689 kPa."""
    shown = run("base.entry", "all_shown", units=units.shown_in("SI"), entries=[["length", "200@US"], ["pressure", "100@US"], ["length", "5"]])
    assert shown == ["61", "689", "5"]
