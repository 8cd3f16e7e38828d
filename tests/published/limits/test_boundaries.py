"""Every boundary of the checks and of the due board, on both sides, in every system of units."""
import datetime
from decimal import Decimal

import pytest

from site_src.content import checks, units
from tests.unit.bay.logs import DAY_MS, record

LIMITED = [row for row in checks.rows() if row["limit"] and row["limit"]["kind"] != "target"]
SYSTEMS = [system["id"] for system in units.systems()]
DUE = checks.due()
DONE = datetime.date(2026, 1, 15)  # no month is too short for a fifteenth


def last_digit(text, step):
    """The figure that many of its last digits away, as a hand would type it."""
    figure = Decimal(text.replace("\u2212", "-").replace(",", ""))
    return str(figure + step * Decimal(1).scaleb(figure.as_tuple().exponent))


@pytest.mark.parametrize("row", LIMITED, ids=lambda row: row["id"])
def test_the_limit_as_it_is_shown(run, row):
    """What the page shows as the limit is good when it is read, and one of its last digits past it is not: at each end, in each system."""
    limit = row["limit"]
    for system in SYSTEMS:
        shown_in = units.shown_in(system)
        shown = run("bay.limits", "shown", limit=limit, own=None, units=shown_in)
        ends = {"min": [(shown["value"], -1, "low")], "max": [(shown["value"], 1, "high")],
                "range": [(shown["value"], -1, "low"), (shown["to"], 1, "high")]}[limit["kind"]]
        for text, step, side in ends:
            at = {count: run("bay.limits", "judged", limit=limit, text=f"{last_digit(text, count * step)}@{system}", own=None, earlier=[], units=shown_in)
                  for count in (0, 1)}
            assert (at[0]["is_good"], at[0]["side"]) == (True, None), (system, text)
            assert (at[1]["is_good"], at[1]["side"]) == (False, side), (system, text)


def ms(date):
    return (date - datetime.date(1970, 1, 1)).days * DAY_MS


@pytest.mark.parametrize("row", DUE, ids=lambda row: row["id"])
def test_the_last_day_of_a_row(run, row):
    """On the day it falls due a row is not overdue, the day after it is. By Python's own calendar."""
    month = DONE.month - 1 + (row["months"] or 0)
    last = datetime.date(DONE.year + month // 12, month % 12 + 1, DONE.day) + datetime.timedelta(days=row["days"] or 0)
    asked = {name: row[name] for name in ("id", "months", "days", "hours", "miles", "by")}
    done = [record("done", "d", at_ms=ms(DONE), due=row["id"])]
    for day, standing in ((last, "soon"), (last + datetime.timedelta(days=1), "overdue")):
        [answer] = run("bay.board", "due", rows=[asked], records=done, on_ms=ms(day), offset_min=0)["rows"]
        assert (answer["standing"], answer["due_date"]) == (standing, [last.year, last.month, last.day])


@pytest.mark.parametrize(("row", "kind", "meter"), [(row, kind, meter) for row in DUE for kind, meter in (("hours", "pump_h"), ("miles", "miles")) if row[kind]], ids=lambda value: value["id"] if isinstance(value, dict) else value)
def test_the_last_hour_or_mile_of_a_row(run, row, kind, meter):
    """At its hours or miles a row is not overdue, one past them it is, whatever the date."""
    asked = {name: row[name] for name in ("id", "months", "days", "hours", "miles", "by")}
    for past, standing in ((0, "soon"), (1, "overdue")):
        read = [record("meters", f"m{count}", at_ms=ms(DONE) + count, **{**dict.fromkeys(("miles", "engine_h", "pump_h")), meter: 1000 + amount}) for count, amount in enumerate((0, row[kind] + past))]
        [answer] = run("bay.board", "due", rows=[asked], records=[record("done", "d", at_ms=ms(DONE), due=row["id"]), *read], on_ms=ms(DONE) + 9, offset_min=0)["rows"]
        assert answer["standing"] == standing
