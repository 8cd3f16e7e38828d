"""The whole verdict piece by piece: which readings are due, what an attempt lacks, which attempt decides, what is told of a check."""
import copy

import pytest

from calc.base.errors import CalcError
from tests.unit.service.made import a_plan, a_set, an_attempt, good_readings, of

PLAN = a_plan()
RUN = of(PLAN, "capacity")  # twenty minutes, read each five


def judged(run, test, entered, plan=PLAN):
    return of(run("service.verdict", "verdict", plan=plan, readings={test: entered}), test)


def attempt_at(times_s, clock_s=1200, **changes):
    return {"clock_s": clock_s, "tip": RUN["tips"][0], "sets": [a_set(RUN, at_s) for at_s in times_s], **changes}


@pytest.mark.parametrize(("times_s", "missing"), [
    ([0, 300, 600, 900, 1200], []), ([149, 151, 700, 800, 1175], []),  # each counts for the due time it is nearest to
    ([0, 300, 600, 1200], ["due_900"]), ([0, 449, 749, 900, 1200], []), ([0, 451, 749, 900, 1200], ["due_300"]),
    ([0, 300, 600, 900, 1169], ["due_1200"]), ([0, 300, 600, 900, 1170], []), ([0, 300, 600, 900, 1500], []),
    ([1200], ["due_0", "due_300", "due_600", "due_900"]),
    ([150, 450, 750, 1050, 1200], []), ([150.5, 450, 750, 1050, 1200], ["due_0"]),  # half way between two: for the earlier
    ([150, 450, 750, 1200], ["due_900"]), ([0, 450, 600, 900, 1200], []), ([0, 151, 450, 900, 1200], ["due_600"]),  # and for that alone
])
def test_which_reading_is_due(run, times_s, missing):
    (told,) = judged(run, "capacity", {"attempts": [attempt_at(times_s)]})["attempts"]
    assert (told["missing"], told["status"]) == (missing, "not_proven" if missing else "pass")


def test_a_reading_off_its_time_is_named(run):
    """More than half a minute early or late, the slack a run's last reading has; at its time, and with no time to hold, nothing is off."""
    (told,) = judged(run, "capacity", {"attempts": [attempt_at([0, 269, 631, 900.4, 1169, 1170])]})["attempts"]
    assert [(row["due_s"], row["off_s"]) for row in told["sets"]] == [(0, None), (300, -31), (600, 31), (900, None), (None, None), (1200, None)]


@pytest.mark.parametrize(("changes", "missing", "code"), [
    ({"clock_s": 1199}, ["time"], "blank"), ({"clock_s": None}, ["time"], "blank"), ({"stopped": "leak"}, ["stopped"], "stopped"),
    ({"stopped": "flow_strayed"}, ["stopped"], "strayed"), ({"stopped": "", "clock_s": 1201}, [], "met")])
def test_what_an_attempt_lacks(run, changes, missing, code):
    (told,) = judged(run, "capacity", {"attempts": [{**attempt_at(RUN["due_s"]), **changes}]})["attempts"]
    assert (told["missing"], told["code"]) == (missing, code)
    assert (told["clock_s"], told["stopped"]) == (changes.get("clock_s", 1200) or 0, changes.get("stopped"))


def test_a_flow_that_strayed(run):
    """A flow over its band proves nothing of the run, whatever else is missing of it."""
    attempt = attempt_at(RUN["due_s"], clock_s=1000)
    attempt["sets"][1]["pitot_psi"] = [reading * 1.2 for reading in attempt["sets"][1]["pitot_psi"]]
    (told,) = judged(run, "capacity", {"attempts": [attempt]})["attempts"]
    assert (told["missing"], told["code"]) == (["time", "strayed"], "strayed")


def test_a_clock_that_ran_backwards(run):
    with pytest.raises(CalcError) as refused:
        judged(run, "capacity", {"attempts": [attempt_at([0], clock_s=-1)]})
    assert (refused.value.field, refused.value.code, refused.value.facts["test"]) == ("clock_s", "negative", "capacity")


def test_no_attempt(run):
    """Nothing run: its readings are missing, beside whatever the plan does not know; begun and not read is the same."""
    for attempts in (None, [], [{"sets": []}], [{}]):
        told = judged(run, "capacity", {"attempts": attempts})
        assert (told["status"], told["code"], told["missing"], told["sets"], told["cautions"]) == ("not_proven", "blank", ["readings"], [], [])
        assert len(told["attempts"]) == len(attempts or [])
    plan = a_plan(lift_ft=None)
    assert judged(run, "capacity", {}, plan)["missing"] == ["lift_ft", "readings"]
    assert of(plan, "capacity")["missing"] == ["lift_ft"]


def test_the_attempt_that_decides(run):
    """The last that proved something; where none did, the last that was begun; all stand beside it."""
    good, begun, short = an_attempt(RUN), attempt_at([0], clock_s=9), an_attempt(RUN, discharge_psi=100)
    for attempts, place in (([good, begun], 0), ([begun, good], 1), ([short, begun, good, begun], 2), ([begun, attempt_at([0, 300], clock_s=9)], 1), ([begun, {"sets": []}], 0)):
        told = judged(run, "capacity", {"attempts": copy.deepcopy(attempts)})
        assert told["sets"] == told["attempts"][place]["sets"]
        assert (told["status"], told["missing"]) == (told["attempts"][place]["status"], told["attempts"][place]["missing"])


def test_a_set_with_its_own_tips(run):
    """Changed on the way: twice as many tips pass twice the flow."""
    attempt = attempt_at([0, 300])
    tip = RUN["tips"][0]
    attempt["sets"][1].update(tip={**tip, "count": 2 * tip["count"]}, pitot_psi=[50] * 2 * tip["count"])
    attempt["sets"][0].update(pitot_psi=[50] * tip["count"])
    one, two = judged(run, "capacity", {"attempts": [attempt]})["sets"]
    assert two["figures"][0]["value"] == pytest.approx(2 * one["figures"][0]["value"])


@pytest.mark.parametrize(("place", "count"), [(0, 0), (1, 2)])
def test_where_a_refused_reading_stands(run, place, count):
    attempts = [an_attempt(RUN), an_attempt(RUN)]
    attempts[place]["sets"][count]["at_s"] = -1
    with pytest.raises(CalcError) as refused:
        judged(run, "capacity", {"attempts": attempts})
    assert (refused.value.field, refused.value.code, refused.value.facts) == ("at_s", "negative", {"attempt": place, "set": count, "test": "capacity", "value": -1})


@pytest.mark.parametrize(("value", "status"), [("yes", "pass"), ("no", "fail"), (None, "not_proven")])
def test_a_check(run, value, status):
    told = judged(run, "shift", {"values": {"shift_proved": value}})["figures"][0]
    assert told == {"id": "shift_proved", "kind": "check", "value": value, "least": None, "most": None, "band": None, "margin": None, "status": status, "is_close": False}


@pytest.mark.parametrize(("clock_s", "status"), [(300, "pass"), (299, "not_proven"), (None, "not_proven")])
def test_a_vacuum_is_held_for_its_time(run, clock_s, status):
    told = judged(run, "vacuum", {"clock_s": clock_s, "values": {"vacuum_reached_inhg": 24, "vacuum_after_inhg": 20}})
    assert (told["status"], told["missing"]) == (status, [] if status == "pass" else ["time"])


def test_the_site_is_read_once(run):
    """What the plan was made with needs no second entry; and it is a reading of its own part alone."""
    assert judged(run, "conditions", {"values": {"water_end_f": 65}})["status"] == "pass"
    plan = a_plan(prime_s=20)
    assert judged(run, "priming", {}, plan)["status"] == "not_proven"


@pytest.mark.parametrize(("test", "values", "status", "code"), [
    ("conditions", {"air_f": 200}, "not_proven", "outside"), ("checks_dry", {"chocks": "no"}, "not_proven", "not_ready"), ("shift", {"shift_proved": "no"}, "fail", "no"),
    ("conditions", {"air_f": None}, "not_proven", "blank"), ("checks_dry", {}, "not_proven", "blank")])
def test_what_says_nothing_of_the_pump(run, test, values, status, code):
    """A site or a crew that is not ready is no fault of the rig's."""
    told = judged(run, test, {"values": values})
    assert (told["id"], told["status"], told["code"], told["cautions"], told["not_done"]) == (test, status, code, [], None)


def test_not_done_and_failed(run):
    """A reason why it was not done does not hide what failed; it does hide what is blank."""
    told = judged(run, "priming", {"not_done": "no water", "values": {"prime_s": 90}})
    assert (told["status"], told["code"], told["not_done"]) == ("fail", "above", "no water")
    told = judged(run, "priming", {"not_done": "no water", "values": {"prime_s": 9}})
    assert (told["status"], told["code"]) == ("not_proven", "not_done")


def test_the_whole(run):
    """Its status is that of the worst part; each part counts once; the figure that decided is named with its part."""
    readings = good_readings(PLAN)
    readings["priming"]["values"]["prime_s"] = 31
    readings["tank"]["values"]["tank_flow_gpm"] = 400
    readings["governed"] = {}
    told = run("service.verdict", "verdict", plan=PLAN, readings=readings)
    assert (told["status"], told["counts"]) == ("fail", {"fail": 2, "not_proven": 1, "pass": len(PLAN["tests"]) - 3})
    assert (told["decided"]["test"], told["decided"]["figure"]["id"]) == ("tank", "tank_flow_gpm")  # a fifth short; 1 of 30 s over
    assert [test["id"] for test in told["tests"]] == [test["id"] for test in PLAN["tests"]]
    del readings["priming"], readings["tank"]
    told = run("service.verdict", "verdict", plan=PLAN, readings=readings)
    assert (told["status"], told["decided"]) == ("not_proven", {"test": "governed", "figure": None})


def test_a_plan_of_nothing(run):
    told = run("service.verdict", "verdict", plan={"tests": []}, readings={})
    assert told == {"status": "not_proven", "decided": None, "counts": {"fail": 0, "not_proven": 0, "pass": 0}, "tests": [], "signs": []}
