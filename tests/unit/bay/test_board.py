"""What is due, by date, hours or miles."""
import calendar
import datetime

import pytest

from calc.base.errors import CalcError
from calc.bay import board
from tests.unit.bay.logs import DAY_MS, NOW_MS, record

ROW = {"id": "gear_oil", "months": 12, "days": None, "hours": None, "miles": None, "by": []}


def due(run, row, *records, on_ms=NOW_MS, offset_min=0):
    answer = run("bay.board", "due", rows=[{**ROW, **row}], records=list(records), on_ms=on_ms, offset_min=offset_min)
    return answer["rows"][0]


def done(date, id="n1", due_id="gear_oil"):
    at = datetime.datetime.combine(date, datetime.time(12), datetime.UTC)
    return record("done", id, at_ms=at.timestamp() * 1000, due=due_id)


TODAY = datetime.date(2026, 11, 30)  # the day of NOW_MS


def test_now():
    assert NOW_MS == datetime.datetime(2026, 11, 30, tzinfo=datetime.UTC).timestamp() * 1000


@pytest.mark.parametrize(("date", "standing", "left_days"), [
    (datetime.date(2025, 11, 29), "overdue", -1),
    (datetime.date(2025, 11, 30), "soon", 0),  # due today is not past
    (datetime.date(2025, 12, 30), "soon", 30),
    (datetime.date(2025, 12, 31), "later", 31),
])
def test_by_date(run, date, standing, left_days):
    """A year on: a day past is overdue, 30 days ahead is soon."""
    answer = due(run, {}, done(date))
    assert (answer["standing"], answer["left_days"]) == (standing, left_days)
    assert answer["due_date"] == [date.year + 1, date.month, date.day]


def test_never(run):
    assert due(run, {})["standing"] == "never"


@pytest.mark.parametrize(("pump_h", "standing", "left"), [(189, "later", 11), (190, "soon", 10), (200, "soon", 0), (200.5, "overdue", -0.5)])
def test_by_hours(run, pump_h, standing, left):
    """100 h after the 100 h on the meter when it was done; the last tenth is soon, whatever the date says."""
    meters = [record("meters", f"m{count}", at_ms=NOW_MS - (5 - count) * DAY_MS, miles=None, engine_h=None, pump_h=hours) for count, hours in enumerate((100, pump_h))]
    answer = due(run, {"hours": 100}, *meters, record("done", "n1", at_ms=NOW_MS - 5 * DAY_MS, due="gear_oil"))
    assert (answer["standing"], answer["left_hours"]) == (standing, left)


def test_by_miles(run):
    """4,000 miles after 10,000 on the clock: at 14,001 it is overdue."""
    meters = [record("meters", f"m{count}", at_ms=NOW_MS - (5 - count) * DAY_MS, miles=miles, engine_h=None, pump_h=None) for count, miles in enumerate((10000, 14001))]
    answer = due(run, {"miles": 4000}, *meters, record("done", "n1", at_ms=NOW_MS - 5 * DAY_MS, due="gear_oil"))
    assert (answer["standing"], answer["left_miles"]) == ("overdue", -1)


@pytest.mark.parametrize(("answer", "more", "standing"), [
    ("good", {}, "later"), ("not_good", {}, "never"), ("good", {"clock": "run"}, "later"),
    ("good", {"clock": "not_run"}, "never"), ("good", {"reading": "not_read"}, "never"),  # a vacuum test is its five minutes and its reading
])
def test_a_good_item_counts(run, answer, more, standing):
    """A vacuum that held in a check is the dry vacuum test done; one that did not is not."""
    held = record("answer", "a1", round="c1", item="prime_hold", answer=answer, entry=None, amount=None, **more)
    assert due(run, {"by": ["prime_hold"]}, held)["standing"] == standing


def test_a_list_that_was_ended(run):
    begun = record("round", "c1", list="weekly", items=[])
    row = {"months": None, "days": 7, "by": ["weekly"]}
    assert due(run, row, begun)["standing"] == "never"
    assert due(run, row, begun, record("ended", "n", at_ms=NOW_MS - 8 * DAY_MS, round="c1", took_s=300, hurried=0))["standing"] == "overdue"


def test_the_days_of_the_place(run):
    """At 20:00 on November 29 in a place five hours behind UTC it is not yet November 30."""
    assert due(run, {}, done(datetime.date(2025, 11, 29)), on_ms=NOW_MS + 3600000, offset_min=-300)["left_days"] == 0


def test_order(run):
    """Overdue first, then what is soon, then what nobody knows."""
    rows = [{**ROW, "id": id} for id in ("later", "never", "soon", "late")]
    records = [done(datetime.date(2026, 11, 1), "1", "later"), done(datetime.date(2025, 12, 10), "2", "soon"), done(datetime.date(2025, 11, 1), "3", "late")]
    answer = run("bay.board", "due", rows=rows, records=records, on_ms=NOW_MS, offset_min=0)
    assert [row["id"] for row in answer["rows"]] == ["late", "soon", "never", "later"]


EPOCH = datetime.date(1970, 1, 1)


def test_calendar():
    """Each day of 1970 to 2402 as Python's own calendar has it, there and back: all that 400 years of leap days bring."""
    for days in range((datetime.date(2402, 1, 1) - EPOCH).days):
        date = EPOCH + datetime.timedelta(days)
        assert board.date_of(days) == [date.year, date.month, date.day]
        assert board.days_of(date.year, date.month, date.day) == days


def month_later(date, months):
    """The same date some months on, or the last of a month too short: by Python's calendar, whose months know their length."""
    count = date.year * 12 + date.month - 1 + months
    year, month = count // 12, count % 12 + 1
    return datetime.date(year, month, min(date.day, calendar.monthrange(year, month)[1]))


@pytest.mark.parametrize("months", [0, 1, 3, 6, 12, 13, 60])
def test_months_on(months):
    for days in range(20000, 21500):
        date = EPOCH + datetime.timedelta(days)
        assert board.months_on(days, months) == (month_later(date, months) - EPOCH).days


def test_no_moment(run):
    with pytest.raises(CalcError) as refusal:
        due(run, {}, on_ms=-1)
    assert (refusal.value.field, refusal.value.code) == ("on_ms", "negative")
    assert due(run, {}, on_ms=0)["standing"] == "never"


def test_order_by_day(run):
    """Of one standing the nearest day first, and what goes by no day last."""
    rows = [{**ROW, "id": id, "hours": None} for id in ("far", "near")] + [{**ROW, "id": "hours", "months": None, "hours": 100}]
    records = [done(datetime.date(2026, 10, 1), "1", "far"), done(datetime.date(2026, 3, 1), "2", "near"), done(datetime.date(2026, 3, 1), "3", "hours")]
    answer = run("bay.board", "due", rows=rows[::-1], records=records, on_ms=NOW_MS, offset_min=0)
    assert [(row["id"], row["standing"]) for row in answer["rows"]] == [("near", "later"), ("far", "later"), ("hours", "later")]


def test_a_row_by_days(run):
    """Seven days after the 25th of November 2026 is the 2nd of December."""
    answer = due(run, {"months": None, "days": 7}, done(datetime.date(2026, 11, 25)))
    assert (answer["due_date"], answer["left_days"], answer["done_ms"]) == ([2026, 12, 2], 2, NOW_MS - 4.5 * DAY_MS)


def test_the_last_time_counts(run):
    """Whatever order the log is in, the newest counts, and the meter as it was then: read at 40, at 100 and at 130 h."""
    meters = [record("meters", f"m{ago}", at_ms=NOW_MS - ago * DAY_MS, miles=None, engine_h=None, pump_h=hours) for ago, hours in ((9, 40), (5, 100), (0, 130))]
    records = [record("done", f"n{ago}", at_ms=NOW_MS - ago * DAY_MS, due="gear_oil") for ago in (5, 9)]
    for log in (records, records[::-1]):
        answer = due(run, {"hours": 100}, *log, *meters)
        assert (answer["left_hours"], answer["done_ms"]) == (70, NOW_MS - 5 * DAY_MS)


def test_done_before_the_first_reading(run):
    """With no reading from then, the interval runs from the first there is."""
    meters = [record("meters", f"m{hours}", at_ms=NOW_MS - (200 - hours) * DAY_MS / 100, miles=None, engine_h=None, pump_h=hours) for hours in (150, 180)]
    assert due(run, {"hours": 100}, done(datetime.date(2026, 11, 1)), *meters)["left_hours"] == 70


@pytest.mark.parametrize(("date", "offset_min", "at"), [
    ("2026-05-14", 0, datetime.datetime(2026, 5, 14, 12, tzinfo=datetime.UTC)),
    ("2026-05-14", -240, datetime.datetime(2026, 5, 14, 16, tzinfo=datetime.UTC)),  # noon four hours west of UTC
    ("2024-02-29", 0, datetime.datetime(2024, 2, 29, 12, tzinfo=datetime.UTC)),
    ("1970-01-01", 0, datetime.datetime(1970, 1, 1, 12, tzinfo=datetime.UTC)), ("2026-01-31", 0, datetime.datetime(2026, 1, 31, 12, tzinfo=datetime.UTC)),
    ("2025-12-31", 0, datetime.datetime(2025, 12, 31, 12, tzinfo=datetime.UTC)), ("2026-11-30", 0, datetime.datetime(2026, 11, 30, tzinfo=datetime.UTC)),  # today, before noon: now
])
def test_a_day_it_was_done(run, date, offset_min, at):
    """A past day is its noon where the rig stands."""
    assert run("bay.board", "done_at", date=date, on_ms=NOW_MS, offset_min=offset_min) == at.timestamp() * 1000


@pytest.mark.parametrize(("date", "code"), [
    ("2026-12-01", "future"), ("2027-05-14", "future"), ("2026-02-29", "not_a_date"), ("2026-13-01", "not_a_date"), ("", "not_a_date"),
    ("14 May", "not_a_date"), ("0000-01-01", "not_a_date"), ("2026-00-14", "not_a_date"), ("2026-05-00", "not_a_date"), ("2026-05", "not_a_date"), ("02026-05-14", "not_a_date"), ("2026-5x-14", "not_a_date"), ("1969-12-31", "too_early"),
])
def test_a_day_it_cannot_have_been_done(run, date, code):
    """A day that is none, or has not come, is refused at its field."""
    with pytest.raises(CalcError) as refused:
        run("bay.board", "done_at", date=date, on_ms=NOW_MS, offset_min=0)
    assert (refused.value.field, refused.value.code) == ("date", code)


@pytest.mark.parametrize(("ahead_days", "standing"), [(0, "later"), (1, "overdue")])
def test_a_record_dated_ahead_hides_nothing(run, ahead_days, standing):
    """What a phone with a wrong clock dated after today leaves an overdue row overdue, and gives no meter reading; one of today counts."""
    ahead = TODAY + datetime.timedelta(ahead_days)
    records = [done(datetime.date(2025, 11, 29)), done(ahead, "n2"), record("meters", "m1", at_ms=NOW_MS + ahead_days * DAY_MS, miles=9000.0, engine_h=None, pump_h=None)]
    answer = run("bay.board", "due", rows=[ROW], records=records, on_ms=NOW_MS + DAY_MS / 2, offset_min=0)
    assert answer["rows"][0]["standing"] == standing
    assert answer["meters"]["miles"] == (None if ahead_days else 9000.0)


WEEKLY = {"id": "weekly", "months": None, "days": 7, "hours": None, "miles": None, "by": ["weekly"]}


def ended(days_ago, id):
    at_ms = NOW_MS - days_ago * DAY_MS
    return [record("round", f"r{id}", at_ms=at_ms, list="weekly", items=["prime_hold"]), record("ended", f"e{id}", at_ms=at_ms, round=f"r{id}", took_s=60, hurried=0)]


@pytest.mark.parametrize(("days_ago", "done", "due"), [
    ([], 0, 0),  # an empty log: nothing is known of it
    ([0], 0, 0),  # begun today: no week is over
    ([0, 27], 2, 4),  # four weeks of days 0 to 27 ago; 27 is in the fourth
    ([0, 26], 1, 3),  # three whole weeks end today; 26 days ago was before them
    ([0, 7, 14, 21, 27], 4, 4),
    ([0, 1, 2, 3, 4, 5, 6, 27], 2, 4),  # seven in one week make no other week good
    ([13, 27], 2, 4),
    ([-3, 27], 1, 4),  # dated ahead
])
def test_done_of_due(run, days_ago, done, due):
    """By hand: weeks are counted back from today to the day the log begins."""
    records = [made for place, ago in enumerate(days_ago) for made in ended(ago, place)]
    answer = run("bay.board", "done_of_due", rows=[WEEKLY], records=records, from_ms=NOW_MS - 90 * DAY_MS, on_ms=NOW_MS, offset_min=0)
    assert answer == ([{"id": "weekly", "done": done, "due": due}] if days_ago else [])


def test_done_of_due_looks_back_so_far(run):
    """Of a log of years only the weeks of the time that is looked at; months by their mean length, 30.44 days; rows without either are left out."""
    records = [made for place in range(60) for made in ended(place * 7, place)]
    rows = [WEEKLY, {**ROW, "id": "m", "months": 1}, {**ROW, "id": "meter", "months": None, "hours": 50}]
    answer = run("bay.board", "done_of_due", rows=rows, records=records, from_ms=NOW_MS - 89 * DAY_MS, on_ms=NOW_MS, offset_min=0)
    assert answer == [{"id": "weekly", "done": 12, "due": 12}, {"id": "m", "done": 0, "due": 3}]  # 90 days: 12 weeks of 7, 3 months of 30
    with pytest.raises(CalcError) as refusal:
        run("bay.board", "done_of_due", rows=rows, records=records, from_ms=NOW_MS, on_ms=NOW_MS - 1, offset_min=0)
    assert (refusal.value.field, refusal.value.code) == ("on_ms", "too_small")
