"""Days of the fleet's report by the department's clock, and its rigs' own rows and limits."""
import datetime
import zoneinfo

import pytest

from site_src.content import data, fleet
from site_src.report import days, pages as report
from tests.site.test_report import ON, put
from tests.site.test_report_logs import BAY, L, STATUS, a_log, words_of
from tests.unit.bay.logs import defect, record

CENTRAL = zoneinfo.ZoneInfo("America/Chicago")
# November 25, 2026 (Wednesday), 23:30 in Chicago, 6 hours behind: the 26th, 05:30 UTC. By hand: 20,783 days of 86,400 s and 5.5 h
LATE_MS = (20783 * 24 * 60 + 330) * 60000
# July 1, 2026, 23:30 there, 5 hours behind in summer: July 2, 04:30 UTC. By hand: 20,636 days and 4.5 h
SUMMER_MS = (20636 * 24 * 60 + 270) * 60000


def pages_of(folder, zone, profiles=(), on=ON):
    counts = report.write(folder, on, zone=zone, profiles=profiles)
    return words_of(counts["page"]), words_of(next(iter(counts["page"].parent.glob("log-*.html"))))


def test_the_moments_are_as_said():
    """The figures above, by the calendar of Python's own library."""
    assert datetime.datetime.fromtimestamp(LATE_MS / 1000, CENTRAL).isoformat() == "2026-11-25T23:30:00-06:00"
    assert datetime.datetime.fromtimestamp(SUMMER_MS / 1000, CENTRAL).isoformat() == "2026-07-01T23:30:00-05:00"


def test_a_record_near_midnight(tmp_path):
    """At half past eleven in the evening it is of that day there; by UTC it is dated after the day and counts for nothing yet."""
    put(tmp_path, log=a_log(defect("d1", at_ms=LATE_MS)))
    text, page = pages_of(tmp_path, CENTRAL)
    assert "low gear oil: metal, 2026-11-25." in text.lower() and "0 Low gear oil" in page
    assert L["log"]["zone"].format(zone="America/Chicago") in text
    text, page = pages_of(tmp_path, days.UTC)
    assert "2026-11-26" in page and L["log"]["ahead"].format(count=1) in page


def test_summer_time_moves_no_day(tmp_path):
    """From July 1 to November 25 are 147 days, by hand (30 + 31 + 30 + 31 + 25), though the clock was put back between."""
    put(tmp_path, log=a_log(defect("d1", at_ms=SUMMER_MS)))
    text, page = pages_of(tmp_path, CENTRAL)
    assert "147 Low gear oil: metal" in page and "2026-07-01" in page
    assert L["log"]["silent_days"].format(days=147) in text


def test_a_check_late_in_the_evening_is_of_its_day(tmp_path):
    """A daily list ended at 23:30 on the 25th is done on the 25th there, so nothing of it is overdue on the 25th; the day after, nothing either."""
    put(tmp_path, log=a_log(record("round", "r1", at_ms=LATE_MS, list="daily", items=["prime_hold"]), record("ended", "e1", at_ms=LATE_MS, round="r1", took_s=60, hurried=0)))
    late = BAY["list"]["daily"]
    overdue = [pages_of(tmp_path, CENTRAL, on=datetime.date(2026, 11, day))[1].split(L["log"]["overdue"])[1].split(L["log"]["readings"])[0] for day in (26, 27)]
    assert late not in overdue[0] and late in overdue[1]
    assert late not in pages_of(tmp_path, days.UTC, on=datetime.date(2026, 11, 27))[1].split(L["log"]["overdue"])[1].split(L["log"]["readings"])[0]  # by UTC it was the 26th


ENGINE = fleet.load()["tollgate-engine-1"]
OWN = [
    {"item": "prime_hold", "act": "change", "unit": "vacuum", "most": "5@US"}, {"item": "weekly", "act": "leave_out", "reason": "daily instead"},
    {"item": "siren_horn", "act": "add", "name": "Air horn", "good": "It sounds.", "lists": ["daily"], "place": "cab", "state": "running"},
    {"item": "siren_horn", "act": "change", "days": "7"},
]


def vacuum(amount):
    return record("answer", "v1", at_ms=LATE_MS, round="rx", item="prime_hold", answer="good", entry=None, amount=amount)


@pytest.mark.parametrize("profile", [{**ENGINE, "id": "r1", "checks": OWN}, {**ENGINE, "name": "engine 1 ", "checks": OWN}], ids=["by id", "by name"])
def test_a_departments_own_rows(tmp_path, profile):
    """Its limit judges the reading, and the page says whose it is; its interval is due; the list it leaves out is not."""
    old = [record("answer", f"h{count}", at_ms=LATE_MS - 9 * 86400000, round="rx", item=item, answer="good", entry=None, amount=None) for count, item in enumerate(["siren_horn"])]
    put(tmp_path, log=a_log(vacuum(6), *old, record("round", "w1", at_ms=LATE_MS - 40 * 86400000, list="weekly", items=[]), record("ended", "w2", at_ms=LATE_MS - 40 * 86400000, round="w1", took_s=9, hurried=0)))
    _, page = pages_of(tmp_path, CENTRAL, [profile])
    assert BAY["side"]["high"] in page and f"({BAY['department']['limit_department']})" in page
    overdue = page.split(L["log"]["overdue"])[1].split(L["log"]["readings"])[0]
    assert "Air horn" in overdue and BAY["list"]["weekly"] not in overdue
    _, page = pages_of(tmp_path, CENTRAL, [{**profile, "id": "r9", "name": "Another"}])
    assert BAY["side"]["high"] not in page and BAY["list"]["weekly"] in page.split(L["log"]["overdue"])[1].split(L["log"]["readings"])[0]
    assert STATUS and data.words("checks")["prime_hold"]["title"] not in page


@pytest.mark.parametrize("name", ["Chicago/America", "", "../zones", "6"])
def test_what_is_no_zone(name):
    with pytest.raises(days.ZoneError, match="no time zone of this computer"):
        days.zone(name)


def test_zones_by_name():
    """UTC needs no list of zones; none is this computer's own."""
    assert days.zone("UTC") is days.UTC and days.zone(None) is None and days.zone("America/Chicago") == CENTRAL
    assert days.Days(None).date(LATE_MS) == datetime.datetime.fromtimestamp(LATE_MS / 1000).date()
    assert days.Days(CENTRAL).end_ms(ON) == LATE_MS + (29 * 60 + 59) * 1000
