"""What is due on a rig: by date, by hours or by miles, whichever comes first."""
from calc.base.errors import CalcError
from calc.base.order import ordered
from calc.bay.records import in_force, is_whole

DAY_MS = 86400000
SOON_DAYS = 30
SOON_SHARE = 0.1  # of an interval in hours or miles: its last tenth counts as soon
METERS = ("miles", "engine_h", "pump_h")


def date_of(days):
    """The calendar date of a day, `[year, month, day]`.

    days: whole days since January 1, 1970

    Raises nothing. Source: the Gregorian calendar (146,097 days in 400 years).
    """
    z = days + 719468
    era = z // 146097
    of_era = z - era * 146097
    year_of_era = (of_era - of_era // 1460 + of_era // 36524 - of_era // 146096) // 365
    of_year = of_era - (365 * year_of_era + year_of_era // 4 - year_of_era // 100)
    shifted = (5 * of_year + 2) // 153
    month = shifted + 3 if shifted < 10 else shifted - 9
    return [year_of_era + era * 400 + (1 if month <= 2 else 0), month, of_year - (153 * shifted + 2) // 5 + 1]


def days_of(year, month, day):
    """Whole days from January 1, 1970 to a calendar date.

    year, month, day: the date, all counted from 1

    Raises nothing. Source: the Gregorian calendar (146,097 days in 400 years).
    """
    early = 1 if month <= 2 else 0
    year = year - early
    era = year // 400
    year_of_era = year - era * 400
    of_year = (153 * (month + 9 if early else month - 3) + 2) // 5 + day - 1
    return era * 146097 + year_of_era * 365 + year_of_era // 4 - year_of_era // 100 + of_year - 719468


def months_on(days, months):
    """The day that is some calendar months after another: the same date, or the last of a month that is too short.

    days: whole days since January 1, 1970
    months: whole months, 0 or more

    Raises nothing. Source: the Gregorian calendar.
    """
    year, month, day = date_of(days)
    count = year * 12 + month - 1 + months
    first = days_of(count // 12, count % 12 + 1, 1)
    length = days_of((count + 1) // 12, (count + 1) % 12 + 1, 1) - first
    return first + min(day, length) - 1


def due(rows, records, on_ms, offset_min):
    """Where each row of the due board stands on a day.

    rows: `{"id", "months", "days", "hours", "miles", "by"}`, None for what a row does not go by. hours: of the pump. by: items
        of a check and kinds of test that count as done when they are good, or lists that count when they are ended
    records: the rig's log, in any order; one dated after this day, by a phone whose clock is wrong, counts for nothing yet
    on_ms: the moment, milliseconds since 1970
    offset_min: minutes that the place's clock is ahead of UTC

    Returns `{"rows": [...], "meters": last readings by name}` of contract `board.due`, overdue first, then by date, then as the rows came: standing
    overdue (a day, hour or mile past), soon (within 30 days, or in the last tenth of the hours or miles), later, or never
    where nothing says it was ever done. Raises CalcError naming on_ms.
    Source: common practice (whichever comes first; the 30 days are the board's own).
    """
    if not on_ms >= 0:
        raise CalcError("on_ms", "negative")
    today = day_at(on_ms, offset_min)
    live = [record for record in in_force(records) if day_at(record["at_ms"], offset_min) <= today]
    meters = _meters(live)
    done = _done(live, rows)
    answer = [_row(row, done.get(row["id"]), meters, today, offset_min) for row in rows]
    order = ("overdue", "soon", "never", "later")
    answer = ordered(answer, lambda row: (order.index(row["standing"]), row["due_day"] if row["due_day"] is not None else 10**9))
    return {"rows": answer, "meters": {name: meters[name][-1][1] if meters[name] else None for name in METERS}}


def row_of(id, done_ms, due_day, today, by_meter=((None, None), (None, None))):
    """A row of the due board as it stands.

    id: of the row
    done_ms: when it was last done, milliseconds since 1970, or None
    due_day: whole days from January 1, 1970 to the last day on which it holds, or None where it does not go by days
    today: whole days from January 1, 1970
    by_meter: pump hours and miles, of each what is left and the interval, None for what it does not go by

    Returns contract `bay_due`. Raises nothing. Source: as due.
    """
    left_days = None if due_day is None else due_day - today
    left_hours, left_miles = [left for left, _ in by_meter]
    if done_ms is None and due_day is None:
        standing = "never"
    elif any([left is not None and left < 0 for left in (left_days, left_hours, left_miles)]):
        standing = "overdue"
    else:
        is_soon = left_days is not None and left_days <= SOON_DAYS
        is_soon = is_soon or any([left is not None and left <= interval * SOON_SHARE for left, interval in by_meter])
        standing = "soon" if is_soon else "later"
    return {"id": id, "standing": standing, "done_ms": done_ms, "due_day": due_day, "due_date": None if due_day is None else date_of(due_day),
            "left_days": left_days, "left_hours": left_hours, "left_miles": left_miles}


def done_of_due(rows, records, from_ms, on_ms, offset_min):
    """How often each row was done of the times it came due.

    rows, records, offset_min: as for due; rows without days or months are left out
    from_ms, on_ms: the time that is looked at, milliseconds since 1970

    Returns `[{"id", "done", "due"}]`: of the whole intervals that end on this day and lie in that time, and no earlier than the
    first record of the log, how many saw it done; one that is done twice in a week makes no other week good. A month is 30.4
    days here. Raises CalcError naming on_ms. Source: common practice (checks done against checks due); the Gregorian
    calendar (146,097 days in 4,800 months).
    """
    if not on_ms >= from_ms:
        raise CalcError("on_ms", "too_small", least=from_ms)
    today = day_at(on_ms, offset_min)
    live = [record for record in in_force(records) if day_at(record["at_ms"], offset_min) <= today]
    if not live:
        return []
    first = max(day_at(from_ms, offset_min), min([day_at(record["at_ms"], offset_min) for record in live]))
    days = {}
    for name, at_ms in _dones(live):
        days.setdefault(name, set()).add(day_at(at_ms, offset_min))
    answer = []
    for row in rows:
        interval = row["days"] if row["months"] is None else (row["months"] * 146097 + 2400) // 4800
        if interval is None:
            continue
        due = (today + 1 - first) // interval
        done = {(today - day) // interval for name in [row["id"]] + row["by"] for day in days.get(name, ())}
        answer.append({"id": row["id"], "done": len([count for count in done if count < due]), "due": due})
    return answer


def done_at(date, on_ms, offset_min):
    """The moment that stands for a day on which something was done: its noon, or now where that has not come today.

    date: "2026-05-14", year, month and day
    on_ms: the moment it is written, milliseconds since 1970
    offset_min: minutes that the place's clock is ahead of UTC

    Returns milliseconds since 1970. Raises CalcError naming date: "not_a_date", "future", or "too_early" for a day before 1970.
    Source: the Gregorian calendar.
    """
    days = day_named(date)
    if days is None:
        raise CalcError("date", "not_a_date")
    if days < 0:
        raise CalcError("date", "too_early")
    if days > day_at(on_ms, offset_min):
        raise CalcError("date", "future")
    return min(days * DAY_MS + DAY_MS // 2 - offset_min * 60000, on_ms)


def day_named(date):
    """Whole days from January 1, 1970 to a date as it is written, "2026-05-14"; None for what is no date.

    date: anything

    Raises nothing. Source: the Gregorian calendar.
    """
    parts = date.split("-") if isinstance(date, str) else []
    if len(parts) != 3 or not all([part.isdigit() and len(part) <= 4 for part in parts]):
        return None
    year, month, day = [int(part) for part in parts]
    if not (year and 1 <= month <= 12 and day and date_of(days_of(year, month, day)) == [year, month, day]):
        return None
    return days_of(year, month, day)


def day_at(at_ms, offset_min):
    """Whole days from January 1, 1970 to the day of a moment at a place.

    at_ms: milliseconds since 1970
    offset_min: minutes that the place's clock is ahead of UTC

    Raises nothing.
    """
    return int((at_ms + offset_min * 60000) // DAY_MS)


def _meters(live):
    """Readings of each meter, oldest first."""
    return {name: ordered([(record["at_ms"], record[name]) for record in live if record["kind"] == "meters" and record[name] is not None])
            for name in METERS}


def _done(live, rows):
    """When each row was last done."""
    counts = {}
    for row in rows:
        for name in [row["id"]] + row["by"]:
            counts.setdefault(name, []).append(row["id"])
    answer = {}
    for name, at_ms in _dones(live):
        for id in counts.get(name, ()):
            answer[id] = max(answer.get(id, 0), at_ms)
    return answer


def _dones(live):
    """What was done and when: rows by their own name, items that were good as read and timed, lists that were ended."""
    lists = {record["id"]: record["list"] for record in live if record["kind"] == "round"}
    answer = []
    for record in live:
        kind = record["kind"]
        if kind == "done":
            answer.append((record["due"], record["at_ms"]))
        elif kind == "answer" and is_whole(record):
            answer.append((record["item"], record["at_ms"]))
        elif kind == "ended":
            answer.append((lists.get(record["round"]), record["at_ms"]))
    return answer


def _row(row, done_ms, meters, today, offset_min):
    if done_ms is None:
        return row_of(row["id"], None, None, today)
    due_day, day = None, day_at(done_ms, offset_min)
    if row["months"] is not None:
        due_day = months_on(day, row["months"])
    if row["days"] is not None:
        due_day = day + row["days"]
    left = [(_left(row[ours], meters[meter], done_ms), row[ours]) for ours, meter in (("hours", "pump_h"), ("miles", "miles"))]
    return row_of(row["id"], done_ms, due_day, today, left)


def _left(interval, readings, done_ms):
    """What is left of an interval by a meter: from its last reading when the row was done."""
    if interval is None or not readings:
        return None
    before = [amount for at_ms, amount in readings if at_ms <= done_ms]
    return interval - (readings[-1][1] - (before[-1] if before else readings[0][1]))
