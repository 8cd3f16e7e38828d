"""A department's limits as its rows have them, and what of a row's form is told."""
import pytest

from calc.base.errors import CalcError
from calc.rig.check_fields import MOST_CHECKS
from site_src.content import units

US = units.shown_in("US")
OUT = {"item": "belts", "act": "leave_out", "reason": "Shop does it"}
LIMIT = {"item": "vacuum", "act": "change", "unit": "vacuum"}


def problems(run, *checks):
    return run("rig.check_rows", "problems", checks=list(checks), units=US)


@pytest.mark.parametrize(
    ("row", "limit"),
    [
        ({"unit": "vacuum", "least": "24@US"}, ("min", 24, None, "vacuum")), ({"unit": "V", "most": "13.2"}, ("max", 13.2, None, None)),
        ({"unit": "drops", "least": "8", "most": "120"}, ("range", 8, 120, None)), ({"unit": "drops", "least": "8", "most": "8"}, ("range", 8, 8, None)),
        ({"unit": "tread", "aim": "4@US"}, ("target", 4, None, None)),  # no unit of the page's: as it stands
        ({"unit": "pressure", "aim": "6.894757@bar"}, ("target", pytest.approx(100, abs=0.001), None, "pressure")),  # 100 psi: NIST SP 811
        ({"unit": "seconds", "most": "1,250"}, ("max", 1250, None, None)),
        ({}, None), ({"unit": "V", "least": ""}, None),
    ],
)
def test_limits(run, row, limit):
    """A least, a most, both, or one to aim at; in calc's unit where the unit is the page's."""
    told = run("rig.check_rows", "limit_of", row=row, units=US)
    assert told == (limit and dict(zip(("kind", "value", "to", "quantity"), limit)))


@pytest.mark.parametrize(
    ("row", "field", "code"),
    [({"unit": "drops", "least": "9", "most": "8"}, "most", "out_of_order"), ({"unit": "V", "aim": "much"}, "aim", "not_a_number"), ({"unit": "vacuum", "least": "much"}, "least", "not_a_number")],
)
def test_no_limit(run, row, field, code):
    with pytest.raises(CalcError) as refusal:
        run("rig.check_rows", "limit_of", row=row, units=US)
    assert (refusal.value.field, refusal.value.code) == (field, code)


@pytest.mark.parametrize("row", [{**OUT, "whose": "rig"}, {**LIMIT, "aim": "22@US"}, {**LIMIT, "least": "22@US", "most": "24@US", "days": "7"}])
def test_sound_rows(run, row):
    """Whose rule leaves an item out may be said; a limit to aim at stands alone."""
    assert problems(run, row) == []


@pytest.mark.parametrize(
    ("row", "told"),
    [
        ({**LIMIT, "unit": "stone", "least": "much"}, [{"field": "checks.0.unit", "code": "unknown"}]),
        ({**LIMIT, "least": "22@US", "days": "week"}, [{"field": "checks.0.days", "code": "not_a_number"}]),
        ({**LIMIT, "unit": "V", "least": "12.345"}, [{"field": "checks.0.least", "code": "thousands_or_decimals", "thousands": "12345", "decimals": "12.3450"}]),
        ({**LIMIT, "unit": "V", "least": "1" * 31}, [{"field": "checks.0.least", "code": "too_large"}]),
    ],
)
def test_a_fault_is_told_once(run, row, told):
    """What is wrong with a field is told, and not again what follows from it."""
    assert problems(run, row) == told


def test_how_many_rows(run):
    """120 at most; that is told."""
    rows = [{**OUT, "item": f"own_{count}"} for count in range(MOST_CHECKS + 1)]
    assert problems(run, *rows[:120]) == []
    assert problems(run, *rows) == [{"field": "checks", "code": "too_many", "most": 120}]
