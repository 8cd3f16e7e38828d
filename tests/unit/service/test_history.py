"""A rig's tests over the years, told in texts; and where a rig stands on a day."""
import pytest

from calc.base.errors import CalcError
from calc.service import due
from site_src.content import units
from tests.unit.service.test_years import a_result

DAY_MS = 86_400_000
YEAR_MS = 365.25 * DAY_MS


def a_dated(year, kind, rpm, **changes):
    """A result with its id and time, of a pump of 1,250 gpm."""
    return {"id": f"test-{year}", "at_ms": (year - 1970) * YEAR_MS, "kind": kind, "standard": "us", "rated_gpm": 1250, "status": "pass",
            "points": a_result(year, kind, rpm)["points"], **changes}


def told(run, results, system="US"):
    return run("service.history", "history", results=results, speed_accuracy_rpm=10, units=units.fine(system))


def test_changes_in_words(run):
    """By hand: 1,650 rpm for the same 150 psi instead of 1,600 is 5.97 % less; the band is 3.32 % (see test_change)."""
    point, = told(run, [a_dated(2024, "annual", 1650), a_dated(2020, "acceptance", 1600)])["points"]
    base, now = point["rows"]
    assert (point["base"], point["is_acceptance"], point["trend"]) == ("test-2020", True, None)
    assert (base["test"], base["change_text"], base["side"]) == ("test-2020", "0", "same")
    assert (now["change_text"], now["band_text"], now["side"]) == ("\u22126", "3.3", "below")
    assert (now["net_text"], now["net_band_text"], now["flow_text"], now["engine_text"]) == ("150", "3", "1250", "1650")
    assert point["is_below"] and not point["is_falling"]


def test_in_other_units(run):
    """Pint: 150 psi is 1034 kPa and 3 psi are 21; 1,250 gpm are 4732 L/min; a percent is a percent."""
    point, = told(run, [a_dated(2024, "annual", 1600)], "SI")["points"]
    row, = point["rows"]
    assert (row["net_text"], row["net_band_text"], row["flow_text"], row["change_text"]) == ("1034", "21", "4732", "0")
    assert point["picture"] is None


def test_picture(run):
    """By hand: 2020 to 2024 is the whole width, 2022 its middle; the base lies half way up; the trend ends with the last test."""
    results = [a_dated(2020, "acceptance", 1600), a_dated(2022, "annual", 1625), a_dated(2024, "annual", 1650)]
    point, = told(run, results)["points"]
    picture = point["picture"]
    assert [mark["x"] for mark in picture["marks"]] == pytest.approx([0, 0.5, 1], abs=1e-6)
    assert picture["base"] == pytest.approx(0.5) and picture["marks"][0]["y"] == pytest.approx(0.5)
    assert all(0 <= mark["low"] < mark["y"] < mark["high"] <= 1 for mark in picture["marks"])
    # squares of 1600/1625 and 1600/1650 fall by 3.053 and 5.969 percent: 1.492 a year, near a straight line
    assert point["trend"]["text"] == "\u22121.5" and point["is_falling"]
    assert picture["line"] == pytest.approx([mark["y"] for mark in picture["marks"][::2]], abs=0.01)
    assert [each["text"] for each in picture["years"]] == ["2021", "2022", "2023", "2024"]


def test_two_points_are_no_trend(run):
    """Two tests, however far apart, give no line."""
    point, = told(run, [a_dated(2010, "acceptance", 1600), a_dated(2024, "annual", 1700)])["points"]
    assert point["trend"] is None and point["picture"]["line"] is None and not point["is_falling"]


def test_other_ratings_are_not_compared(run):
    """A test at another rating, or to another standard, stands in no comparison."""
    results = [a_dated(2018, "acceptance", 1500), a_dated(2020, "rerating", 1400, rated_gpm=1000), a_dated(2021, "annual", 1400, rated_gpm=1000),
               a_dated(2022, "annual", 1400, rated_gpm=1000, standard="europe"), a_dated(2023, "annual", 1400, rated_gpm=1000)]
    found = told(run, results)
    assert found["compared"] == ["test-2020", "test-2021", "test-2023"]
    assert found["points"][0]["base"] == "test-2020" and not found["points"][0]["is_acceptance"]


def test_nothing_to_tell(run):
    """No tests, no points; a test in which a point was not read has no change there."""
    assert told(run, []) == {"compared": [], "points": []}
    point, = told(run, [a_dated(2020, "annual", None, status="not_proven")])["points"]
    assert point["rows"][0]["change_text"] is None and point["base"] is None


ON = 20_000 * DAY_MS


@pytest.mark.parametrize(
    ("tests", "status", "due_day"),
    [
        # days before the day, and what each test said; a proof holds 365 days
        ([], "never", None),
        ([(10, "not_proven")], "never", None),
        ([(400, "pass")], "due", 365 - 400), ([(366, "pass")], "due", -1), ([(365, "pass")], "soon", 0), ([(335, "pass")], "soon", 30),
        ([(334, "pass")], "current", 31), ([(1, "pass")], "current", 364),
        ([(400, "pass"), (10, "fail")], "failed", -35), ([(20, "fail"), (10, "pass")], "current", 355),
        # a test that proves nothing neither renews nor clears
        ([(400, "pass"), (10, "not_proven")], "due", -35), ([(20, "fail"), (10, "not_proven")], "failed", None),
        # nothing is said by a test of tomorrow
        ([(400, "pass"), (-1, "pass")], "due", -35),
    ],
)
def test_standing(run, tests, status, due_day):
    """A failure outweighs, a pass holds for its time, and what proved nothing changes nothing."""
    results = [{"at_ms": ON - days * DAY_MS, "status": each} for days, each in tests]
    found = run("service.due", "standing", results=results, on_ms=ON, interval_days=365)
    assert found["status"] == status
    assert found["due_ms"] == (None if due_day is None else ON + due_day * DAY_MS)


def test_standing_refused(run):
    """A status nobody knows is refused, not read as a pass."""
    with pytest.raises(CalcError) as refused:
        run("service.due", "standing", results=[{"at_ms": 0, "status": "fine"}], on_ms=ON, interval_days=365)
    assert (refused.value.field, refused.value.code) == ("status", "unknown")


@pytest.mark.parametrize(
    ("changes", "field", "code"),
    [({"on_ms": -1}, "on_ms", "negative"), ({"interval_days": 0}, "interval_days", "not_positive")],
)
def test_standing_on_no_day(run, changes, field, code):
    """A day before all days, or a proof that holds for none, is refused."""
    with pytest.raises(CalcError) as refused:
        run("service.due", "standing", **{"results": [], "on_ms": ON, "interval_days": 365, **changes})
    assert (refused.value.field, refused.value.code) == (field, code)
    assert run("service.due", "standing", results=[], on_ms=0, interval_days=365)["status"] == "never"


def test_the_days_that_a_standing_rests_on(run):
    """The newest test, whatever it proved, and the newest that passed; one of this very moment counts."""
    results = [{"at_ms": ON - days * DAY_MS, "status": each} for days, each in ((40, "pass"), (0, "not_proven"), (20, "pass"))]
    found = run("service.due", "standing", results=results, on_ms=ON, interval_days=365)
    assert (found["last_ms"], found["passed_ms"]) == (ON, ON - 20 * DAY_MS)
    none = run("service.due", "standing", results=[], on_ms=ON, interval_days=365)
    assert (none["last_ms"], none["passed_ms"], none["due_ms"]) == (None, None, None)


def test_what_needs_somebody_stands_first():
    """Common practice: failed, never passed, due, due within 30 days, and the rest."""
    rigs = [[(5, "pass")], [(350, "pass")], [(400, "pass")], [], [(400, "pass"), (10, "fail")]]
    found = [due.standing([{"at_ms": ON - days * DAY_MS, "status": each} for days, each in tests], ON, 365)["status"] for tests in rigs]
    assert sorted(found, key=due.ORDER.index) == found[::-1] == list(due.ORDER)
