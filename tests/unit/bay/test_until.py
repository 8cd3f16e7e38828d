"""What holds until a date, on the due board."""
import pytest

from calc.base.errors import CalcError
from tests.unit.bay.logs import NOW_MS  # 30 November 2026, 0:00 UTC


@pytest.mark.parametrize(
    ("date", "standing", "left_days"),
    [  # by hand; it still holds on its day, and 30 days are soon
        ("2026-11-30", "soon", 0), ("2026-11-29", "overdue", -1), ("2026-12-30", "soon", 30), ("2026-12-31", "later", 31), ("2027-11-30", "later", 365),
        ("", "never", None), ("2026-02-30", "never", None), ("soon", "never", None), ("2026-0x-01", "never", None), ("20260-1-1", "never", None),
    ],
)
def test_until(run, date, standing, left_days):
    row, = run("bay.until", "until", dates=[{"id": "gauge", "date": date}], on_ms=NOW_MS, offset_min=0)
    assert (row["id"], row["standing"], row["left_days"], row["done_ms"]) == ("gauge", standing, left_days, None)
    assert row["due_date"] == (None if left_days is None else [int(part) for part in date.split("-")])


def test_the_day_is_the_places_own(run):
    """Half an hour before midnight UTC it is the next day an hour to the east."""
    at_ms = NOW_MS - 1_800_000
    left = [run("bay.until", "until", dates=[{"id": "a", "date": "2026-11-29"}], on_ms=at_ms, offset_min=offset)[0]["left_days"] for offset in (0, 60)]
    assert left == [0, -1]


def test_a_moment_is_wanted(run):
    with pytest.raises(CalcError) as refused:
        run("bay.until", "until", dates=[], on_ms=-1, offset_min=0)
    assert (refused.value.field, refused.value.code) == ("on_ms", "negative")
