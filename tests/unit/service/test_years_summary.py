"""What a test leaves behind to be compared with others, to the last name; factors against their table."""
import pytest

from calc.base.errors import CalcError
from tests.unit.service.made import a_plan, an_attempt, good_readings, of

PLAN = a_plan()


def summed(run, readings):
    verdict = run("service.verdict", "verdict", plan=PLAN, readings=readings)
    return run("service.years", "summary", plan=PLAN, verdict=verdict), verdict


def test_a_whole_summary(run):
    """All that is kept is kept under its name: the reading that came nearest, its bands and speeds, and what each part said."""
    readings = good_readings(PLAN)
    attempt = an_attempt(of(PLAN, "capacity"))
    attempt["sets"][1].update(discharge_psi=of(PLAN, "capacity")["gauge_psi"] + 1, engine_rpm=1777, pump_rpm=3600)
    readings["capacity"] = {"attempts": [attempt]}
    readings["tank"]["values"]["tank_flow_gpm"] = 300
    told, verdict = summed(run, readings)
    flow, net = of({"tests": verdict["tests"]}, "capacity")["sets"][1]["figures"]
    assert told["points"][0] == {
        "id": "capacity", "status": "pass", "flow_gpm": flow["value"], "net_psi": pytest.approx(151), "net_band_psi": net["band"],
        "flow_band_gpm": flow["band"], "engine_rpm": 1777, "pump_rpm": 3600}
    assert (told["status"], told["standard"], told["kind"], told["rated_gpm"]) == ("fail", "us", "annual", 1250)
    assert told["tests"] == [{"id": test["id"], "status": test["status"], "code": test["code"]} for test in verdict["tests"]]
    assert told["signs"] == ["speed_high_at_pressure", "tank_flow_low"]  # 1,777 rpm are over 1,760


def test_of_two_readings_as_near_the_first_is_kept(run):
    """And one that was not read whole is none, however low its flow."""
    attempt = an_attempt(of(PLAN, "capacity"))
    for count, row in enumerate(attempt["sets"]):
        row["engine_rpm"] = 1700 + count
    attempt["sets"][0].update(discharge_psi=None, pitot_psi=[60])
    point = summed(run, {"capacity": {"attempts": [attempt]}})[0]["points"][0]
    assert (point["engine_rpm"], point["net_psi"]) == (1701, pytest.approx(153))


def test_the_nearest_is_so_for_its_size(run):
    """By hand: 1 of 150 psi is 0.67 percent; half a psi of 69 on the pitot is 0.36 percent of the flow."""
    test = of(PLAN, "capacity")
    attempt = an_attempt(test)
    attempt["sets"][1].update(discharge_psi=test["gauge_psi"] + 1, engine_rpm=1701)
    attempt["sets"][3].update(pitot_psi=[test["tips"][0]["pitot_psi"] + 0.5], engine_rpm=1703)
    assert summed(run, {"capacity": {"attempts": [attempt]}})[0]["points"][0]["engine_rpm"] == 1703


def test_nothing_read_leaves_blanks(run):
    blank = {"status": "not_proven", "flow_gpm": None, "net_psi": None, "net_band_psi": None, "flow_band_gpm": None, "engine_rpm": None, "pump_rpm": None}
    assert summed(run, {})[0]["points"][:1] == [{"id": "capacity", **blank}]


# Student's t for 95 % two-sided by degrees of freedom, as any table of it prints
STUDENT = {1: 12.71, 2: 4.30, 3: 3.18, 4: 2.78, 5: 2.57, 6: 2.45, 7: 2.36, 8: 2.31, 9: 2.26, 10: 2.23, 11: 2.2}


@pytest.mark.parametrize("free", STUDENT)
def test_a_trends_band_is_students(run, free):
    """Points at +1 and -1 about a level: the standard error of a slope is the root of (sum of squares / free) over the spread."""
    count = free + 2
    points = [(float(at), 1.0 if at % 2 else -1.0) for at in range(count)]
    middle, level = (count - 1) / 2, sum(value for _, value in points) / count
    spread = sum((at - middle) ** 2 for at, _ in points)
    slope = sum((at - middle) * value for at, value in points) / spread
    left = sum((value - level - slope * (at - middle)) ** 2 for at, value in points)
    told = run("service.years", "trend", points=points)
    assert told["per_year"] == pytest.approx(slope)
    assert told["band"] == pytest.approx(STUDENT[free] * (left / free / spread) ** 0.5, rel=1e-6)


@pytest.mark.parametrize("points", [[["x", 1], [1, 2], [2, 3]], [[0, None], [1, 2], [2, 3]]])
def test_a_trend_of_what_is_no_number(run, points):
    with pytest.raises(CalcError) as refused:
        run("service.years", "trend", points=points)
    assert refused.value.field == "points"


@pytest.mark.parametrize(("point", "accuracy", "field"), [
    ({"net_psi": "much", "engine_rpm": 1600}, 10, "net_psi"), ({"net_psi": 150, "engine_rpm": "fast"}, 10, "engine_rpm"),
    ({"net_psi": 150, "engine_rpm": 1600}, "some", "speed_accuracy_rpm")])
def test_what_cannot_be_compared(run, point, accuracy, field):
    base = {"net_psi": 150, "engine_rpm": 1600, "net_band_psi": 3}
    with pytest.raises(CalcError) as refused:
        run("service.years", "change_percent", point=point, base=base)
        run("service.years", "change_band_percent", point=point, base=base, speed_accuracy_rpm=accuracy)
    assert refused.value.field == field
