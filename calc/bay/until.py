"""What holds until a day that is written on it: where each stands on the due board."""
from calc.base.errors import CalcError
from calc.bay import board


def until(dates, on_ms, offset_min):
    """Rows of the due board for things that hold until a date, an instrument's calibration for one.

    dates: `{"id", "date"}`, the date as "2027-05-14" or "" where it is not known; the thing still holds on that day
    on_ms: the moment, milliseconds since 1970, 0 or more
    offset_min: minutes that the place's clock is ahead of UTC

    Returns rows of contract `bay_due`, as they came; standing never where there is no date that can be read.
    Raises CalcError naming on_ms. Source: common practice (30 days are soon, as on the rest of the board).
    """
    if not on_ms >= 0:
        raise CalcError("on_ms", "negative")
    today = board.day_at(on_ms, offset_min)
    return [board.row_of(row["id"], None, board.day_named(row["date"]), today) for row in dates]
