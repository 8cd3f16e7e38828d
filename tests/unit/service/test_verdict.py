"""Verdicts at, just inside and just outside every limit; never a pass by default."""
import copy

import pytest

from calc.base.errors import CalcError
from tests.unit.service.made import a_plan, a_rig, a_set, an_attempt, changed, good_readings, of

PLAN = a_plan()
GOOD = good_readings(PLAN)
ACCEPTANCE = a_plan(a_rig(kind="acceptance"))
RUN = of(PLAN, "capacity")


def judged(run, readings, plan=PLAN):
    return run("service.verdict", "verdict", plan=plan, readings=readings)


def with_attempts(*attempts, test="capacity"):
    return {**GOOD, test: {"attempts": list(attempts)}}


def test_all_good(run):
    """Everything read and inside: the whole passes, and names the figure nearest its limit."""
    told = judged(run, GOOD)
    assert [test["id"] for test in told["tests"] if test["status"] != "pass"] == []
    assert told["status"] == "pass" and told["signs"] == []
    assert told["decided"]["figure"]["margin"] >= 0


def test_acceptance_good(run):
    """The acceptance test too, with its longer runs and its hydrostatic test."""
    assert judged(run, good_readings(ACCEPTANCE), ACCEPTANCE)["status"] == "pass"


# test, field, inside, at, outside, what outside is: all by hand from the standard's limits; a low vacuum at 500 ft is 22 inHg
LIMITS = [
    ("governed", "governed_rpm", 2151, 2150, 2149, "fail"), ("governed", "governed_rpm", 2249, 2250, 2251, "fail"),
    ("vacuum", "vacuum_reached_inhg", 22.1, 22, 21.9, "fail"), ("vacuum", "vacuum_after_inhg", 14.1, 14, 13.9, "fail"),
    ("priming", "prime_s", 29, 30, 31, "fail"),
    ("governor", "at_150.peak_psi", 179, 180, 181, "fail"), ("governor", "at_90.peak_psi", 119, 120, 121, "fail"),
    ("governor", "at_250.peak_psi", 279, 280, 281, "fail"),
    ("governor", "at_150.closing_s", 3.1, 3, 2.9, "fail"), ("governor", "at_150.closing_s", 9.9, 10, 10.1, "fail"),
    ("governor", "at_90.set_psi", 82, 81, 80, "fail"),
    ("intake_relief", "relief_setting_psi", 116, 115, 114, "fail"), ("intake_relief", "relief_setting_psi", 134, 135, 136, "fail"),
    ("vacuum_valves", "vacuum_reached_inhg", 22.1, 22, 21.9, "fail"), ("vacuum_valves", "vacuum_after_inhg", 14.1, 14, 13.9, "fail"),
    ("governor", "at_150.flow_gpm", 1126, 1125, 1124, "fail"), ("governor", "at_250.flow_gpm", 687, 687.5, 688, "fail"),
    ("tank", "tank_flow_gpm", 501, 500, 499, "fail"),
    ("gauges", "master.at_150.panel_psi", 159, 160, 161, "fail"), ("gauges", "master.at_250.panel_psi", 241, 240, 239, "fail"),
    ("meters", "main.shown_gpm", 1099, 1100, 1101, "fail"), ("meters", "main.shown_gpm", 901, 900, 899, "fail"),
    # the site: outside, nothing is proved, and nothing is said against the pump
    ("conditions", "air_f", 1, 0, -1, "not_proven"), ("conditions", "air_f", 109, 110, 111, "not_proven"),
    ("conditions", "water_f", 36, 35, 34, "not_proven"), ("conditions", "water_end_f", 89, 90, 91, "not_proven"),
    ("conditions", "barometer_inhg", 29.1, 29, 28.9, "not_proven"), ("conditions", "altitude_ft", 1999, 2000, 2001, "not_proven"),
    ("conditions", "lift_ft", 9.9, 10, 10.1, "not_proven"), ("conditions", "suction_length_ft", 21, 20, 19, "not_proven"),
    ("conditions", "depth_ft", 4.1, 4, 3.9, "not_proven"), ("conditions", "strainer_ft", 2.1, 2, 1.9, "not_proven"),
]


@pytest.mark.parametrize(("test", "field", "inside", "at", "outside", "beyond"), LIMITS)
def test_limits(run, test, field, inside, at, outside, beyond):
    """Inside a limit and at it passes; outside it does not, and the figure that decided is told."""
    for value in (inside, at):
        assert of(judged(run, changed(GOOD, test, field, value)), test)["status"] == "pass", value
    told = judged(run, changed(GOOD, test, field, outside))
    assert of(told, test)["status"] == beyond == told["status"]
    assert of(told, test)["decided"]["margin"] < 0
    assert told["decided"]["test"] == test


@pytest.mark.parametrize(("name", "value", "beyond"), [("hydrostatic_psi", 249, "fail"), ("hydrostatic_psi", 250, "pass")])
def test_hydrostatic(run, name, value, beyond):
    """250 psi for 3 minutes (study cards)."""
    readings = changed(good_readings(ACCEPTANCE), "hydrostatic", name, value)
    assert of(judged(run, readings, ACCEPTANCE), "hydrostatic")["status"] == beyond
    readings["hydrostatic"]["clock_s"] = 179
    assert of(judged(run, readings, ACCEPTANCE), "hydrostatic")["status"] != "pass"


@pytest.mark.parametrize("name", ["capacity", "overload", "seventy", "fifty"])
@pytest.mark.parametrize(
    ("gauge", "pitot", "status", "code"),
    [
        (0.1, 0.1, "pass", "met"), (0, 0, "pass", "met"), (-0.1, 0.1, "fail", "below"), (0.1, -0.1, "fail", "below"),
    ],
)
def test_run_at_its_point(run, name, gauge, pitot, status, code):
    """A tenth of a psi over the point, at it, and under it, on either gauge."""
    test = of(PLAN, name)
    tip = test["tips"][0]
    attempt = an_attempt(test, discharge_psi=test["gauge_psi"] + gauge, pitot_psi=[tip["pitot_psi"] + pitot] * tip["count"])
    told = of(judged(run, with_attempts(attempt, test=name)), name)
    assert (told["status"], told["code"]) == (status, code)
    assert told["decided"]["is_close"], "a tenth of a psi is less than the gauges err"


def test_net_not_gross(run):
    """By hand: the gauge shows 150 with 10 ft of lift and 5.2 ft of loss in 20 ft of hose: net is 150 + 15.2 / 2.3 = 156.6."""
    attempt = an_attempt(RUN, discharge_psi=150)
    net = of(judged(run, with_attempts(attempt)), "capacity")["sets"][0]["figures"][1]
    assert net["value"] == pytest.approx(150 + 15.2 / 2.3)


def test_net_from_a_hydrant(run):
    """Constructed example K012: 150 on the gauge with 50 at the intake is 100 net, and fails at 150."""
    plan = a_plan(source="pressurised")
    capacity = of(plan, "capacity")
    tip = capacity["tips"][0]
    sets = [{"at_s": at_s, "discharge_psi": 150, "intake_psi": 50, "pitot_psi": [tip["pitot_psi"]] * tip["count"], "engine_rpm": 1600}
            for at_s in capacity["due_s"]]
    told = of(judged(run, {"capacity": {"attempts": [{"clock_s": 1200, "tip": tip, "sets": sets}]}}, plan), "capacity")
    assert told["sets"][0]["figures"][1]["value"] == 100
    assert told["status"] == "fail"
    blank = copy.deepcopy(sets)
    blank[2]["intake_psi"] = None
    blank[2]["discharge_psi"] = 250
    for each in blank:
        each["discharge_psi"] = 250
    told = of(judged(run, {"capacity": {"attempts": [{"clock_s": 1200, "tip": tip, "sets": blank}]}}, plan), "capacity")
    assert told["status"] == "not_proven" and "due_600" in told["missing"]


@pytest.mark.parametrize(
    ("clock_s", "last_s", "status"),
    [(1200, 1200, "pass"), (1199, 1200, "not_proven"), (1200, 1170, "pass"), (1200, 1169, "not_proven"), (1500, 1500, "pass")],
)
def test_twenty_minutes(run, clock_s, last_s, status):
    """The run lasts its twenty minutes by its clock, with a reading within half a minute of the end."""
    attempt = an_attempt(RUN)
    attempt["clock_s"] = clock_s
    attempt["sets"][-1]["at_s"] = last_s
    assert of(judged(run, with_attempts(attempt)), "capacity")["status"] == status


@pytest.mark.parametrize("dropped", range(5))
@pytest.mark.parametrize("field", ["whole set", "discharge_psi", "pitot_psi", "engine_rpm"])
def test_every_reading_is_needed(run, dropped, field):
    """A set left out, or a blank in one, leaves the run not proven and says when it was due."""
    attempt = an_attempt(RUN)
    if field == "whole set":
        del attempt["sets"][dropped]
    else:
        attempt["sets"][dropped][field] = [None] if field == "pitot_psi" else None
    told = of(judged(run, with_attempts(attempt)), "capacity")
    assert told["status"] == "not_proven"
    assert f"due_{dropped * 300}" in told["missing"]


# by hand: the flow goes with the root of the pitot reading, so 1.05^2 = 1.1025 of it is the edge of the band, 0.95^2 = 0.9025
@pytest.mark.parametrize(("share", "strayed"), [(1.1024, False), (1.1026, True), (0.9026, False), (0.9024, True)])
def test_strayed(run, share, strayed):
    """A flow 5 % off the point has strayed, and that run proves nothing."""
    tip = RUN["tips"][0]
    attempt = an_attempt(RUN)
    attempt["sets"][2]["pitot_psi"] = [tip["pitot_psi"] * share]
    told = of(judged(run, with_attempts(attempt)), "capacity")
    assert told["sets"][2]["is_strayed"] == strayed
    assert told["status"] == ("fail" if share < 1 else "not_proven" if strayed else "pass")
    assert told["code"] == ("below" if share < 1 else "strayed" if strayed else "met")


def test_attempts(run):
    """The last attempt that proved something decides: no pass hides a later fail, no unfinished one a fail."""
    good, short = an_attempt(RUN), an_attempt(RUN, discharge_psi=100)
    begun = {**an_attempt(RUN), "clock_s": 60, "sets": [a_set(RUN, 0)]}
    stopped = {**an_attempt(RUN), "stopped": "flow_strayed"}
    for attempts, status in (
        ([short, good], "pass"), ([good, short], "fail"), ([short, begun], "fail"), ([begun], "not_proven"), ([stopped], "not_proven"),
        ([short, stopped], "fail"), ([good, begun], "pass"), ([{**good, "sets": []}], "not_proven"), ([], "not_proven"),
    ):
        told = of(judged(run, with_attempts(*attempts)), "capacity")
        assert told["status"] == status
        assert len(told["attempts"]) == len(attempts)


def test_unread_is_never_passed(run):
    """Nothing read: nothing passes, each test says what is missing, and the whole is not proven."""
    told = judged(run, {})
    assert told["status"] == "not_proven"
    assert {test["status"] for test in told["tests"]} == {"not_proven"}
    assert all(test["missing"] for test in told["tests"])


@pytest.mark.parametrize("test", PLAN["tests"], ids=lambda test: test["id"])
def test_one_unread_test_leaves_the_whole_not_proven(run, test):
    """Whichever test is left out, or marked as not done, the whole is not proven and the reason is kept."""
    left = {name: given for name, given in GOOD.items() if name != test["id"]}
    assert judged(run, left)["status"] == "not_proven"
    told = judged(run, {**GOOD, test["id"]: {"not_done": "no time"}})
    assert told["status"] == "not_proven"
    assert (of(told, test["id"])["code"], of(told, test["id"])["not_done"]) == ("not_done", "no time")


@pytest.mark.parametrize(
    ("test", "field"),
    [(test["id"], field["id"]) for test in PLAN["tests"] if test["kind"] != "run" for field in test["fields"]],
)
def test_one_blank_leaves_its_test_not_proven(run, test, field):
    """Whichever figure or check is blank, its test is not proven and names it."""
    plan = copy.deepcopy(PLAN)
    plan["conditions"] = {name: value for name, value in plan["conditions"].items() if name != field or test != "conditions"}
    told = of(judged(run, changed(GOOD, test, field, None), plan), test)
    assert told["status"] == "not_proven"
    assert field in told["missing"]


@pytest.mark.parametrize(
    ("test", "field"),
    [(test["id"], field["id"]) for test in PLAN["tests"] for field in test["fields"] if field["kind"] == "check"],
)
def test_a_no_is_no_pass(run, test, field):
    """A check answered no fails its test; before water the crew is not ready, and a point in the wrong transfer position is to be run again."""
    told = of(judged(run, changed(GOOD, test, field, "no")), test)
    code = "not_ready" if test == "checks_dry" else "position" if ".transfer_" in field else "no"
    assert (told["status"], told["code"]) == ("fail" if code == "no" else "not_proven", code)


def test_unknown_limits_stay_not_proven(run):
    """A standard that does not know its times or limits proves nothing by them, however good the readings."""
    plan = a_plan(a_rig("europe", "annual"))
    told = judged(run, good_readings({**plan, "tests": [test for test in plan["tests"] if test["kind"] != "run"]}), plan)
    assert of(told, "governor")["status"] == "not_proven"
    capacity = of(plan, "capacity")
    told = judged(run, {"capacity": {"attempts": [{**an_attempt({**capacity, "hold_s": 3600, "due_s": [0]})}]}}, plan)
    assert (of(told, "capacity")["status"], of(told, "capacity")["missing"]) == ("not_proven", ["hold"])


@pytest.mark.parametrize(
    ("test", "given", "field", "code", "facts"),
    [
        ("capacity", {"attempts": [an_attempt(RUN, discharge_psi=-1)]}, "discharge_psi", "negative", {"attempt": 0, "set": 0}),
        ("capacity", {"attempts": [an_attempt(RUN, pitot_psi=[-1])]}, "pitot_psi", "negative", {"attempt": 0, "set": 0}),
        ("capacity", {"attempts": [an_attempt(RUN, engine_rpm="fast")]}, "engine_rpm", "not_a_number", {"attempt": 0, "set": 0}),
        ("governed", {"values": {"governed_rpm": "fast"}}, "governed_rpm", "not_a_number", {}),
        ("leaks", {"values": {"leak_shaft": "maybe"}}, "leak_shaft", "unknown", {}),
        ("vacuum", {"values": {"vacuum_reached_inhg": 22, "vacuum_after_inhg": 23}}, "vacuum_after_inhg", "wrong_way", {}),
        ("governor", {"values": {"at_90.set_psi": 90, "at_90.peak_psi": 80}}, "at_90.peak_psi", "wrong_way", {}),
    ],
)
def test_refused(run, test, given, field, code, facts):
    """A reading that cannot be is refused by name, with its test, attempt and set."""
    with pytest.raises(CalcError) as refused:
        judged(run, {test: given})
    assert (refused.value.field, refused.value.code) == (field, code)
    assert {**facts, "test": test}.items() <= refused.value.facts.items()


def test_a_figure_without_limits_proves_nothing(run):
    """A figure that no standard limits is kept, and is neither good nor bad."""
    told = run("service.judge", "judged", name="engine_f", kind="temperature", value=180, least=None, most=None)
    assert (told["status"], told["margin"], told["value"]) == ("not_proven", None, 180)


def test_flow_from_a_meter(run):
    """By hand: 1,260 gpm on a meter that errs by 3 % is within 37.8 of 1,250; a meter that shows less than nothing is refused."""
    plan = a_plan()
    sets = [{**a_set(RUN, at_s), "pitot_psi": None, "meter_gpm": 1260} for at_s in RUN["due_s"]]
    attempt = {**an_attempt(RUN), "sets": sets}
    plan["accuracy"]["meter_percent"] = 3
    flow = of(judged(run, with_attempts(attempt), plan), "capacity")["sets"][0]["figures"][0]
    assert (flow["value"], flow["margin"], flow["is_close"]) == (1260, 10, True)
    assert flow["band"] == pytest.approx(37.8)
    sets[1]["meter_gpm"] = -1
    with pytest.raises(CalcError) as refused:
        judged(run, with_attempts(attempt), plan)
    assert (refused.value.field, refused.value.code) == ("meter_gpm", "negative")


def test_suction_hose_that_no_table_has(run):
    """The loss of a suction hose of no known size is missing, not guessed."""
    plan = a_plan(suction_size_in=7.0)
    assert "suction_size_in" in of(plan, "capacity")["missing"]
