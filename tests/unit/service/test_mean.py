"""One short reading inside the instruments' error: the mean of the run counts, and nothing else is forgiven."""
import pytest

from tests.unit.service.made import a_plan, a_rig, an_attempt, good_readings, of

PLAN = a_plan()


def of_run(run, offs_psi, plan=PLAN, **changes):
    """The capacity run with a net pressure this far off its 150 psi at each reading, and the whole verdict."""
    test = of(plan, "capacity")
    attempt = an_attempt(test, **changes)
    for row, off_psi in zip(attempt["sets"], offs_psi):
        row["discharge_psi"] = test["gauge_psi"] + off_psi
    told = run("service.verdict", "verdict", plan=plan, readings={**good_readings(plan), "capacity": {"attempts": [attempt]}})
    return of(told, "capacity"), told


# by hand: five readings; the instruments may err 3.5 psi either way (3 psi of gauge, twice over root three)
@pytest.mark.parametrize(("offs_psi", "status", "code", "mean_psi"), [
    ((3, 3, -2, 3, 3), "pass", "mean", 152),  # (4 x 153 + 148) / 5
    ((0, 0.5, -1, 0.5, 0), "pass", "mean", 150),  # at the point exactly
    ((0, 0, -1, 0, 0), "fail", "below", 149.8),  # the mean is short too
    ((3, 3, -2, -2, 3), "fail", "below", None),  # two are no single reading
    ((9, 9, -5, 9, 9), "fail", "below", None),  # further off than the instruments err
    ((3, 3, 3, 3, 3), "pass", "met", None),
])
def test_the_mean_of_a_run(run, offs_psi, status, code, mean_psi):
    """Passed on its mean a run says so, shows that it is close, and points to no fault; the short reading stays short."""
    test, told = of_run(run, offs_psi)
    assert (test["status"], test["code"]) == (status, code)
    means = [figure["value"] for figure in test["figures"] if figure["id"] == "mean_net_psi"]
    assert means == ([] if mean_psi is None else [pytest.approx(mean_psi)])
    if code == "mean":
        assert test["is_close"] and told["signs"] == [] and told["status"] == "pass"
        assert [row["is_by_mean"] for row in test["sets"]] == [False, False, True, False, False]
        assert [row["status"] for row in test["sets"]] == ["pass", "pass", "fail", "pass", "pass"]
    elif status == "fail":
        assert not test["is_close"] and not any(row["is_by_mean"] for row in test["sets"])
        assert [sign["id"] for sign in told["signs"]] == ["pressure_low_speed_usual"]


def flow_short_once(run):
    """Pitot 1 psi low on one reading of five is inside a pitot's error of 1 psi."""
    test = of(PLAN, "capacity")
    tip = test["tips"][0]
    attempt = an_attempt(test)
    attempt["sets"][2]["pitot_psi"] = [tip["pitot_psi"] - 1] * tip["count"]
    return of(run("service.verdict", "verdict", plan=PLAN, readings={**good_readings(PLAN), "capacity": {"attempts": [attempt]}}), "capacity")


@pytest.mark.parametrize(("short", "place", "kind", "least"), [
    (flow_short_once, 0, "flow", 1250), (lambda run: of_run(run, (3, 3, -2, 3, 3))[0], 1, "pressure", 150)])
def test_the_mean_is_a_figure_of_its_own(run, short, place, kind, least):
    """In place of the short reading: against the same limit, as far off as the worst of the five may be."""
    told = short(run)
    assert (told["status"], told["code"]) == ("pass", "mean")
    read = [row["figures"][place] for row in told["sets"]]
    value = sum(figure["value"] for figure in read) / 5
    assert [figure for figure in told["figures"] if figure["id"][:5] == "mean_"] == [{
        "id": f"mean_{read[0]['id']}", "kind": kind, "value": pytest.approx(value), "least": least, "most": None, "band": max(figure["band"] for figure in read),
        "margin": pytest.approx(value - least), "status": "pass", "is_close": True}]


@pytest.mark.parametrize(("count", "names"), [(1, ["net_psi"]), (2, ["mean_net_psi", "net_psi"])])
def test_two_readings_have_a_mean_and_one_has_none(run, count, names):
    """The first is 1 psi short, the next 9 over; the figure of each set counts, or the mean in place of the short one."""
    test = of(PLAN, "capacity")
    attempt = an_attempt(test, discharge_psi=test["gauge_psi"] + 9)
    attempt["sets"] = attempt["sets"][:count]
    attempt["sets"][0]["discharge_psi"] = test["gauge_psi"] - 1
    told = of(run("service.verdict", "verdict", plan=PLAN, readings={"capacity": {"attempts": [attempt]}}), "capacity")
    assert [figure["id"] for figure in told["figures"] if figure["id"] != "flow_gpm"] == names
    assert told["status"] == ("not_proven" if count == 2 else "fail")


def test_a_reading_short_in_both_counts_by_no_mean(run):
    """Flow 1 psi of pitot low is inside its error, net pressure 20 psi low is not: the reading is short, and the run failed."""
    test = of(PLAN, "capacity")
    tip = test["tips"][0]
    attempt = an_attempt(test)
    attempt["sets"][2].update(pitot_psi=[tip["pitot_psi"] - 1] * tip["count"], discharge_psi=test["gauge_psi"] - 20)
    told = of(run("service.verdict", "verdict", plan=PLAN, readings={**good_readings(PLAN), "capacity": {"attempts": [attempt]}}), "capacity")
    assert told["status"] == "fail" and not told["sets"][2]["is_by_mean"]


def test_no_mean_where_the_standard_has_none(run):
    """Europe's practice is not known to allow it."""
    standard = {**a_rig()["standard"]}
    standard["flow"] = {**standard["flow"], "by_mean": False}
    plan = a_plan({**a_rig(), "standard": standard})
    assert of_run(run, (3, 3, -2, 3, 3), plan)[0]["status"] == "fail"


def test_close_is_said_of_any_figure(run):
    """A run 1 psi over its point is a pass that another gauge could deny; 9 over is none."""
    assert of_run(run, (1, 9, 9, 9, 9))[0]["is_close"]
    test = of_run(run, (9, 9, 9, 9, 9), pitot_psi=[of(PLAN, "capacity")["tips"][0]["pitot_psi"] + 5] * of(PLAN, "capacity")["tips"][0]["count"])[0]
    assert test["status"] == "pass" and not test["is_close"]
