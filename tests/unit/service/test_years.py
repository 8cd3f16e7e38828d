"""A pump over the years."""
import pytest

from tests.unit.service.made import a_plan, an_attempt, good_readings, of


def a_result(at, kind, rpm, psi=150.0, status="pass"):
    point = {"id": "capacity", "status": status, "flow_gpm": 1250, "net_psi": psi, "net_band_psi": 3, "flow_band_gpm": 9, "engine_rpm": rpm, "pump_rpm": None}
    return {"at": at, "kind": kind, "points": [point]}


def test_summary(run):
    """Of each run the reading nearest its limit is kept, with its speed."""
    plan = a_plan()
    readings = good_readings(plan)
    low = of(plan, "capacity")["gauge_psi"] + 1
    attempt = an_attempt(of(plan, "capacity"))
    attempt["sets"][2].update({"discharge_psi": low, "engine_rpm": 1777})
    readings["capacity"] = {"attempts": [attempt]}
    told = run("service.years", "summary", plan=plan, verdict=run("service.verdict", "verdict", plan=plan, readings=readings))
    point = told["points"][0]
    assert point["net_psi"] == pytest.approx(151) and point["engine_rpm"] == 1777
    assert told["status"] == "pass" and len(told["tests"]) == len(plan["tests"])
    nothing = run("service.years", "summary", plan=plan, verdict=run("service.verdict", "verdict", plan=plan, readings={}))
    assert {point["net_psi"] for point in nothing["points"]} == {None}


def test_change(run):
    """By hand: the same 150 psi at 1,650 rpm instead of 1,600 is (1600/1650)^2 = 0.9403 of it at one speed: 5.97 % less."""
    base, point = a_result(2020, "acceptance", 1600)["points"][0], a_result(2024, "annual", 1650)["points"][0]
    assert run("service.years", "change_percent", point=point, base=base) == pytest.approx(-5.969, abs=0.001)
    # 3 of 150 psi is 2 % twice; 2 x 10 rpm is 1.25 % and 1.212 %
    band = run("service.years", "change_band_percent", point=point, base=base, speed_accuracy_rpm=10)
    assert band == pytest.approx((2**2 + 2**2 + 1.25**2 + 1.2121**2) ** 0.5, abs=0.001)
    assert run("service.years", "change_percent", point={**point, "engine_rpm": None}, base=base) is None


def test_against_acceptance(run):
    """Acceptance is the base, wherever it lies in the list; without one the first test is."""
    results = [a_result(2024, "annual", 1650), a_result(2020, "acceptance", 1600), a_result(2022, "annual", 1600)]
    told, = run("service.years", "years", results=results, speed_accuracy_rpm=10)
    assert (told["base_at"], told["is_acceptance"]) == (2020, True)
    assert [change["at"] for change in told["changes"]] == [2020, 2022, 2024]
    assert [change["change_percent"] for change in told["changes"]] == pytest.approx([0, 0, -5.969], abs=0.001)
    told, = run("service.years", "years", results=[results[0], results[2]], speed_accuracy_rpm=10)
    assert (told["base_at"], told["is_acceptance"], told["trend"]) == (2022, False, None)
    assert told["changes"][1]["change_percent"] == pytest.approx(-5.969, abs=0.001)


def two_points(at, kind, capacity, fifty):
    """A result with two rated points; the speed, or None where it was not read."""
    result = a_result(at, kind, capacity)
    return {**result, "points": result["points"] + [{**a_result(at, kind, fifty, status="fail")["points"][0], "id": "fifty"}]}


def test_the_years_whole(run):
    """Each point by itself: by hand 1600/1650 squared is 5.969 % less; both speeds may err 10 rpm, both gauges 3 psi.

    At 50 % acceptance read no speed, so nothing is compared with it, though two later tests could be with each other.
    """
    results = [two_points(2023, "annual", 1650, 1800), two_points(2020, "acceptance", 1600, None), two_points(2021, "annual", None, 1850)]
    told = run("service.years", "years", results=results, speed_accuracy_rpm=10)
    own, band = 100 * (2 * 0.02**2 + 2 * (20 / 1600) ** 2) ** 0.5, 100 * (2 * 0.02**2 + (20 / 1600) ** 2 + (20 / 1650) ** 2) ** 0.5
    assert told == [
        {"id": "capacity", "base_at": 2020, "is_acceptance": True, "trend": None, "changes": [
            {"at": 2020, "status": "pass", "change_percent": 0, "band_percent": pytest.approx(own)},
            {"at": 2021, "status": "pass", "change_percent": None, "band_percent": None},
            {"at": 2023, "status": "pass", "change_percent": pytest.approx(-5.969, abs=0.001), "band_percent": pytest.approx(band)}]},
        {"id": "fifty", "base_at": None, "is_acceptance": True, "trend": None, "changes": [
            {"at": at, "status": "fail", "change_percent": None, "band_percent": None} for at in (2020, 2021, 2023)]}]
    later, = run("service.years", "years", results=[two_points(2021, "annual", None, 1850), a_result(2022, "annual", 1600)], speed_accuracy_rpm=10)[:1]
    assert (later["base_at"], later["is_acceptance"]) == (2022, False)  # the first test that read this point


def test_only_the_first_acceptance_is_a_base(run):
    """A second one, after a rebuild for instance, is a test like the others."""
    results = [two_points(2020, "acceptance", 1600, None), two_points(2024, "acceptance", 1600, 1800)]
    assert [point["base_at"] for point in run("service.years", "years", results=results, speed_accuracy_rpm=10)] == [2020, None]


def test_a_point_that_a_test_had_not(run):
    """A point that came later stands blank in the tests before it."""
    told = run("service.years", "years", results=[a_result(2020, "annual", 1600), two_points(2021, "annual", 1600, 1800)], speed_accuracy_rpm=0)
    assert [(change["status"], change["change_percent"]) for change in told[1]["changes"]] == [(None, None), ("fail", 0)]


def test_a_trend_through_the_years(run):
    """Three tests in as many years of one speed and pressure: level, and no trend to speak of."""
    told, = run("service.years", "years", results=[a_result(at, "annual", 1600) for at in (2020, 2021, 2022)], speed_accuracy_rpm=10)
    assert told["trend"] == {"per_year": 0, "band": 0, "is_clear": False}


@pytest.mark.parametrize("point", [None, {"net_psi": None, "engine_rpm": 1600}, {"net_psi": 150, "engine_rpm": None}, {"net_psi": 150}, {"engine_rpm": 1600}])
def test_what_was_not_read_is_not_compared(run, point):
    whole = {"net_psi": 150, "engine_rpm": 1600}
    for one, other in ((point, whole), (whole, point)):
        assert run("service.years", "change_percent", point=one, base=other) is None


def test_a_change_without_bands_of_pressure(run):
    """By hand: 20 of 1,600 rpm each, 1.25 % twice."""
    point = {"net_psi": 150, "engine_rpm": 1600}
    assert run("service.years", "change_band_percent", point={**point, "net_band_psi": None}, base=point, speed_accuracy_rpm=10) == pytest.approx(1.25 * 2**0.5)


def test_trend(run):
    """By hand: 0, -1, -3 over 0, 1, 2 years: slope -1.5, residuals 1/6, -1/3, 1/6; band 12.71 sqrt((1/6) / 1 / 2) = 3.669."""
    told = run("service.years", "trend", points=[[2020, 0], [2021, -1], [2022, -3]])
    assert told["per_year"] == pytest.approx(-1.5)
    assert told["band"] == pytest.approx(3.669, abs=0.001)
    assert not told["is_clear"]
    clear = run("service.years", "trend", points=[[2018, 0], [2020, -2], [2022, -4.1], [2024, -6]])
    assert clear["is_clear"] and clear["per_year"] == pytest.approx(-1.005)


@pytest.mark.parametrize("points", [[], [[2020, 0]], [[2020, 0], [2024, -9]], [[2020, 0], [2020.5, -1], [2021.9, -2]]])
def test_no_trend(run, points):
    """No line through two tests, nor through less than two years."""
    assert run("service.years", "trend", points=points) is None
