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
