"""A rig's tests over the years, figure by figure: rows, sides, trend and where each mark lies.

By hand: at one speed pressure goes with its square. 3 of 150 psi twice and 10 rpm of 1,600 twice over are a band of
100 x root(2 x 0.02² + 2 x 0.0125²) = 3.335 percent between two tests at 1,600 rpm.
"""
import pytest

from site_src.content import units
from tests.unit.service.test_history import YEAR_MS, a_dated, told

BAND = 3.3354


def of_rpms(run, *rpms, first=2020, step=1, system="US"):
    results = [a_dated(first + step * count, "annual", rpm, status="pass" if rpm else "not_proven") for count, rpm in enumerate(rpms)]
    (point,) = told(run, results, system)["points"]
    return point


@pytest.mark.parametrize(("at_ms", "year"), [(0, 1970), (YEAR_MS, 1971), (-YEAR_MS / 2, 1969.5)])
def test_a_time_as_years(run, at_ms, year):
    assert run("service.history", "year_at", at_ms=at_ms) == pytest.approx(year)


@pytest.mark.parametrize(("percent", "text"), [(0, "0"), (0.04, "0"), (-0.04, "0"), (0.06, "+0.1"), (-0.06, "\u22120.1"), (12, "+12"), (-3.25, "\u22123.3")])
def test_a_change_has_its_sign(run, percent, text):
    assert run("service.history", "signed", units=units.fine("US"), percent=percent) == text


@pytest.mark.parametrize(("rpm", "side", "text"), [
    (1600, "same", "0"), (1550, "above", "+6.6"), (1650, "below", "\u22126"),
    (1574, "same", "+3.3"), (1572, "above", "+3.6"), (1627, "same", "\u22123.3"), (1629, "below", "\u22123.5")])  # either side of the band
def test_on_which_side(run, rpm, side, text):
    """Outside its band a change is told as one; within it the pump is as it was."""
    point = of_rpms(run, 1600, rpm)
    assert (point["rows"][1]["side"], point["rows"][1]["change_text"], point["is_below"]) == (side, text, side == "below")


def test_a_test_in_which_the_point_was_not_read(run):
    """It stands in its row with nothing beside it; the last that was read says whether the pump is below."""
    point = of_rpms(run, 1600, 1650, None)
    assert point["rows"][2] == {"test": "test-2022", "status": "pass", "net_text": "150", "net_band_text": "3", "flow_text": "1250", "engine_text": None,
                                "change_text": None, "band_text": None, "side": None}
    assert point["is_below"] and [mark["x"] for mark in point["picture"]["marks"]] == pytest.approx([0, 1])
    assert not of_rpms(run, 1600, 1650, 1600)["is_below"]


def test_a_point_that_one_test_lacks(run):
    results = [a_dated(2020, "annual", 1600), a_dated(2021, "annual", 1600, points=[])]
    (point,) = told(run, results)["points"]
    assert point["rows"][1] == {"test": "test-2021", "status": None, "net_text": None, "net_band_text": None, "flow_text": None, "engine_text": None,
                                "change_text": None, "band_text": None, "side": None}


def test_a_steady_pump(run):
    """Nothing changed: the marks lie in the middle of a picture that shows 5 percent either way and a tenth of room, so 5.5."""
    picture = of_rpms(run, 1600, 1600, step=2)["picture"]
    low, high = (5.5 - BAND) / 11, (5.5 + BAND) / 11
    assert picture["marks"] == [{"x": pytest.approx(x, abs=1e-6), "y": 0.5, "low": pytest.approx(low, abs=1e-4), "high": pytest.approx(high, abs=1e-4), "status": "pass"}
                                for x in (0, 1)]
    assert (picture["line"], picture["top_text"], picture["base"]) == (None, "6", 0.5)
    assert [year["text"] for year in picture["years"]] == ["2021", "2022"]
    assert picture["years"][0]["x"] == pytest.approx(0.5, abs=1e-3)


def test_a_pump_that_wears(run):
    """5.969 percent lost and a band of 3.316 make 9.285; a tenth more is 10.21 at the top, and the mark lies at a fifth of the height."""
    picture = of_rpms(run, 1600, 1650)["picture"]
    mark = picture["marks"][1]
    assert picture["top_text"] == "10"
    assert mark["y"] == pytest.approx((10.213 - 5.969) / 20.427, abs=1e-3)
    assert (mark["low"], mark["high"]) == (pytest.approx(0.1 / 2.2, abs=1e-3), pytest.approx((10.213 - 5.969 + 3.316) / 20.427, abs=1e-3))


@pytest.mark.parametrize(("span", "years"), [
    (1, ["2021"]), (5, ["2021", "2022", "2023", "2024", "2025"]), (6, ["2021", "2023", "2025"]), (11, ["2021", "2023", "2025", "2027", "2029", "2031"]), (12, ["2021", "2024", "2027", "2030"])])
def test_years_along_the_bottom(run, span, years):
    """Each while there are five, then every other, every third, so that no more than six stand there."""
    picture = of_rpms(run, 1600, 1600, step=span)["picture"]
    assert [year["text"] for year in picture["years"]] == years
    assert picture["years"][-1]["x"] == pytest.approx((int(years[-1]) - 2020) / span, abs=1e-3)


def test_one_moment_makes_no_picture(run):
    assert of_rpms(run, 1600)["picture"] is None
    assert of_rpms(run, None, 1600)["picture"] is None
    assert of_rpms(run, 1600, 1650, step=0)["picture"] is None
    results = [{**a_dated(year, "annual", 1600), "id": str(place)} for place, year in enumerate((2020, 2020, 2022))]
    assert [mark["x"] for mark in told(run, results)["points"][0]["picture"]["marks"]] == pytest.approx([0, 0, 1])


def test_a_trend(run):
    """By hand: three tests two years apart at 1,600, 1,625 and 1,650 rpm fall by 0, 3.053 and 5.969 percent: 1.492 a year, off the line by
    0.023, -0.046, 0.023; with one degree free 12.71 x root(0.0031 / 8) = 0.25."""
    point = of_rpms(run, 1600, 1625, 1650, step=2)
    assert point["trend"] == {"text": "\u22121.5", "band_text": "0.3", "is_clear": True}
    assert point["is_falling"]
    line = point["picture"]["line"]
    marks = point["picture"]["marks"]
    assert line == pytest.approx([marks[0]["y"], marks[2]["y"]], abs=0.01) and line[0] > line[1]


@pytest.mark.parametrize(("rpms", "is_clear", "is_falling"), [
    ((1600, 1575, 1550), True, False), ((1600, 1595, 1590), True, False),  # up by 1.6 and by 0.3 percent a year
    ((1600, 1700, 1600), False, False), ((1600, 1500, 1650), False, False)])
def test_what_is_no_clear_fall(run, rpms, is_clear, is_falling):
    """A pump that rises, or goes to and fro, does not fall."""
    point = of_rpms(run, *rpms, step=2)
    assert (point["trend"]["is_clear"], point["is_falling"]) == (is_clear, is_falling)


def test_two_tests_of_one_moment_keep_their_order(run):
    results = [{**a_dated(2020, "annual", 1600), "id": name} for name in ("b", "a")]
    assert told(run, results)["compared"] == ["b", "a"]


def test_a_metric_sheet(run):
    """By Pint: 150 psi are 1,034 kPa and 3 psi 21, 1,250 gpm 4,732 L/min, rpm are rpm."""
    row = of_rpms(run, 1600, 1650, system="SI")["rows"][1]
    assert (row["net_text"], row["net_band_text"], row["flow_text"], row["engine_text"], row["change_text"], row["band_text"]) == ("1034", "21", "4732", "1650", "\u22126", "3.3")
