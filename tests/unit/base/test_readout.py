"""How a page's entries are read in and its figures read out."""
import pytest

from calc.base.errors import CalcError
from site_src.content import units

US, SI = units.shown_in("US"), units.shown_in("SI")


def amount(run, typed, least=1, most=100, shown=US):
    return run("base.readout", "amount", entries={"lift": typed}, units=shown, name="lift", kind="length", least=least, most=most)


@pytest.mark.parametrize(("typed", "expected"), [("1", 1), ("100", 100), ("50@US", 50), ("30.48@SI", 100), ("0.3048@SI", 1)])
def test_amount(run, typed, expected):
    """An entry at a bound is taken, in whatever unit it was typed: 0.3048 m is a foot."""
    assert amount(run, typed) == pytest.approx(expected, rel=1e-8)


@pytest.mark.parametrize("typed", ["0.99", "100.01"])
def test_amount_past_a_bound(run, typed):
    """Past a bound it is refused, and the bounds are told in the page's unit, inward: 1 ft is 0.3048 m, 100 ft 30.48 m."""
    with pytest.raises(CalcError) as refused:
        amount(run, typed + "@US", shown=SI)
    assert (refused.value.field, refused.value.code) == ("lift", "out_of_range")
    assert refused.value.facts == {"least": "1", "most": "30"}


def test_no_entries(run):
    """What is no set of entries is refused whole; where an entry may be left out there is then none."""
    for function, more in (("amount", {"units": US, "kind": "length"}), ("count", {})):
        with pytest.raises(CalcError) as refused:
            run("base.readout", function, entries="5", name="lift", least=1, most=4, **more)
        assert (refused.value.field, refused.value.code) == ("entries", "damaged")
    assert run("base.readout", "if_given", entries="5", units=US, name="lift", kind="length", least=1, most=4) is None


@pytest.mark.parametrize(("typed", "expected"), [("@US", None), (" @SI", None), ("", None), (None, None), ("2@US", 2)])
def test_if_given(run, typed, expected):
    """An entry of which only the unit is left was not given."""
    entries = {} if typed is None else {"lift": typed}
    assert run("base.readout", "if_given", entries=entries, units=US, name="lift", kind="length", least=1, most=4) == expected


@pytest.mark.parametrize(("typed", "expected"), [("1", 1), ("4", 4), ("2@US", 2), (" 3 ", 3), ("2.0", 2)])
def test_count(run, typed, expected):
    """A count is a whole number within its bounds, whatever unit the page is in."""
    assert run("base.readout", "count", entries={"lines": typed}, name="lines", least=1, most=4) == expected


@pytest.mark.parametrize(
    ("typed", "code", "facts"),
    [("0", "out_of_range", {"least": "1", "most": "4"}), ("5", "out_of_range", {"least": "1", "most": "4"}),
     ("1.5", "not_whole", {}), (2, "not_a_number", {}), (None, "not_a_number", {})],
)
def test_count_refused(run, typed, code, facts):
    """What is no such number is refused by its name, with its bounds."""
    with pytest.raises(CalcError) as refused:
        run("base.readout", "count", entries={"lines": typed}, name="lines", least=1, most=4)
    assert (refused.value.field, refused.value.code, refused.value.facts) == ("lines", code, facts)


def test_row(run):
    """By hand: 100 psi is 689.476 kPa, told as 689, and in the working with two figures more."""
    told = run("base.readout", "row", units=SI, name="pressure", kind="pressure", value=100, sources=["friction"],
               terms=[["nozzle", "pressure", 100], ["rule", None, "square"]])
    assert told == {"name": "pressure", "kind": "pressure", "text": "689", "sources": ["friction"],
                    "terms": {"nozzle": "689.48", "rule": "square"}}
    assert run("base.readout", "row", units=SI, name="class", kind=None, value="AA", terms=[], sources=[])["text"] == "AA"
