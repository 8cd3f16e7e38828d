"""The call of the shift: every step has one right answer, worked out here from what a person sees and the handbook's own formulas."""
import collections

import pytest

from calc.base.errors import CalcError
from site_src.content import data, units
from tests.sampling import seeds
from tests.unit.teaching.test_drill import by_hand, ground_of, number, psi, right_option

SEEDS = {"cpython": 10000, "micropython": 240}
RIGS = ["tollgate-engine-1", "northmere-pumper-4", "quarry-hill-tanker-3"]
SYSTEMS = ["US", "SI", "bar", "imperial"]
SAME = 0.02  # of the face: a needle that stands where it stood


def dial_of(step, gauge):
    return next(dial for dial in step["dials"] if dial["gauge"] == gauge)


def contradicts(step):
    """What is off, by the interlocks as the lights page words them: OK takes engaged's switch and the gear; a full pump shows pressure at idle."""
    lamps = step["lamps"]
    off = [lamp for lamp in ("engaged", "ok") if not lamps[lamp]] + (["gauge"] if dial_of(step, "master")["value"] == 0 else [])
    return off[0] if off else "agree"


def first_side(step, facts):
    """Trade articles: master as it was, past the pump; that line lower by more than the master, its hose; intake as it was, the pump; else supply."""
    now = {gauge: dial_of(step, gauge) for gauge in ("intake", "master", "line")}
    assert any(abs(dial["value"] - number(facts[gauge])) > SAME * dial["end"] or dial["sway"] for gauge, dial in now.items())  # all as they were say nothing
    left = {gauge: now[gauge]["value"] / number(facts[gauge]) for gauge in ("master", "line")}
    intake = now["intake"]
    if left["master"] > 0.9:
        return "discharge"
    if left["line"] < 0.75 * left["master"]:
        return "line"
    is_still = intake["sway"] == 0 and abs(intake["value"] - number(facts["intake"])) <= SAME * intake["end"]
    return "pump" if is_still else "supply"


def by_eye(step, steps, system, ground):
    """The right option of a step that is chosen."""
    question = step["question"]
    facts, kind = question["facts"], question["kind"]
    if kind == "proof":
        return contradicts(step)
    if kind == "look":
        return first_side(step, facts)
    if kind == "intake":  # handbooks: 20 psi stays at the intake
        return "hold" if psi(dial_of(step, "intake")["text"], system) >= 20 else "down"
    if kind == "tank_low":
        assert dial_of(step, "tank")["value"] == 1
        minutes = number(facts["tank"]) / 4 / number(facts["flow"])
        assert abs(number(facts["needed"]) - minutes) > 0.1 * minutes  # no tie that a rounding decides
        return "reaches" if number(facts["needed"]) < minutes else "tell"
    return right_option(question, system)


def set_by_hand(step, steps, system, ground):
    """The answer of a step that is set or typed."""
    question = step["question"]
    if question["kind"] != "second":
        return by_hand(question, ground, system)
    pump = next(each["question"] for each in steps if each["question"]["kind"] == "pump")
    return max(by_hand(pump, ground, system), psi(question["facts"]["needs"], system))  # the pump serves the line that needs most


def check(step, steps, system, ground):
    question, answer = step["question"], step["question"]["answer"]
    if answer["way"] == "chosen":
        assert answer["right"] == by_eye(step, steps, system, ground), step
        assert answer["right"] in answer["options"] and len(set(answer["options"])) == len(answer["options"])
        assert all(row["value"] != answer["right"] for row in question["habits"])
        return
    assert abs(set_by_hand(step, steps, system, ground) - answer["value"]) <= 0.6 * answer["within"], step
    assert all(abs(row["value"] - answer["value"]) > answer["within"] for row in question["habits"]), step
    for dial in step["dials"]:
        if dial["moves_by"]:
            assert dial["value"] is None and number(answer["text"]) <= dial["end"]
            nearest = round(number(answer["text"]) / dial["moves_by"]) * dial["moves_by"]
            assert abs(nearest - number(answer["text"])) <= number(answer["within_text"])  # the slider reaches what counts as right


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_step_has_one_right_answer(run, python, system):
    """Ten thousand seeds on the desk, a part of them a run, over rigs and units: each answer comes out the same by what stands on the gauges and by hand."""
    seen = collections.Counter()
    for name in RIGS:
        ground = ground_of(run, name, system)
        count = SEEDS[python] // (len(SYSTEMS) * len(RIGS)) + 1
        for seed in seeds(count) if python == "cpython" else range(count):
            steps = run.unheld("teaching.call", "steps", ground=ground, seed=seed, units=units.shown_in(system))
            for step in steps:
                check(step, steps, system, ground)
                seen[step["question"]["kind"], step["question"]["answer"].get("right")] += 1
            assert [step["question"]["kind"] for step in steps][-1] == "look" and len(steps) in (4, 5)
    if python == "micropython":
        return  # too few to meet every kind
    for right in ("engaged", "ok", "gauge", "agree"):
        assert seen["proof", right]
    for right in ("supply", "pump", "discharge", "line"):
        assert seen["look", right]
    assert all(seen[kind] for kind in (("intake", "hold"), ("intake", "down"), ("tank_low", "reaches"), ("tank_low", "tell"), ("second", None)))


@pytest.mark.parametrize(("hour", "day"), [
    # by hand: 2026-11-29 is 20,786 days after 1970-01-01 (56 years with 14 leap days to 2026-01-01: 20,454; and 332)
    (7, 20786), (12, 20786), (23.9, 20786), (24, 20786), (30.9, 20786), (31, 20787), (6.9, 20785),
])
@pytest.mark.parametrize("offset_min", [-300, 0, 600])
def test_one_call_a_shift(run, hour, day, offset_min):
    """The same from seven in the morning to seven the next, by the station's own clock."""
    on_ms = (20786 * 24 + hour) * 3600000 - offset_min * 60000
    assert run("teaching.call", "shift_seed", on_ms=on_ms, offset_min=offset_min) == day


def test_answers_are_judged_in_their_order(run):
    """What was answered is worth what the drill says of it, the habit named; a slip is refused and counts for nothing; past the end is nothing."""
    ground = ground_of(run, "tollgate-engine-1", "US")
    shown = units.shown_in("US")
    steps = run("teaching.call", "call", ground=ground, seed=20786, replies=[], units=shown)["steps"]
    right = [step["question"]["answer"].get("right") or step["question"]["answer"]["text"] for step in steps]
    assert [row["is_right"] for row in run("teaching.call", "call", ground=ground, seed=20786, replies=right, units=shown)["judged"]] == [True] * len(steps)
    pump = steps[1]["question"]
    wrong = next(row for row in pump["habits"] if row["code"] == "no_nozzle")
    told = run("teaching.call", "call", ground=ground, seed=20786, replies=[right[0], f'{wrong["value"]:.1f}'], units=shown)["judged"]
    assert told == [{"is_right": True, "habit": None}, {"is_right": False, "habit": "no_nozzle"}]
    with pytest.raises(CalcError) as refusal:
        run("teaching.call", "call", ground=ground, seed=20786, replies=[right[0], "ten"], units=shown)
    assert (refusal.value.field, refusal.value.code) == ("reply", "not_a_number")


def test_a_rig_without_beds_has_no_call(run):
    """No line, no call: the refusal names the beds."""
    ground = {**ground_of(run, "tollgate-engine-1", "US"), "beds": []}
    with pytest.raises(CalcError) as refusal:
        run("teaching.call", "call", ground=ground, seed=1, replies=[], units=units.shown_in("US"))
    assert (refusal.value.field, refusal.value.code) == ("beds", "empty")


@pytest.mark.parametrize("drive", ["pto", "front"])
def test_no_collar_no_lamp_of_one(run, drive):
    """A rig without a collar is not asked what a collar's lamp says."""
    ground = ground_of(run, "tollgate-engine-1", "US")
    ground["rig"] = {**ground["rig"], "drive": drive}
    assert run.unheld("teaching.call", "steps", ground=ground, seed=4, units=units.shown_in("US"))[0]["question"]["kind"] == "pump"


def test_every_step_has_its_words(run):
    """Kinds, questions, options, workings and habits of calls are worded in both languages."""
    ground = ground_of(run, "tollgate-engine-1", "US")
    made = [step["question"] for seed in range(60) for step in run.unheld("teaching.call", "steps", ground=ground, seed=seed, units=units.shown_in("US"))]
    for language in data.languages():
        words = data.load(f"words/{language}/drill")
        sides = data.load(f"words/{language}/diagnose/water_loss")["side"]
        for question in made:
            kind = question["kind"]
            assert kind in words["kind"]
            assert {row["code"] for row in question["habits"]} <= set(words["habit"])
            assert {row["code"] for row in question["working"]} <= set(words["working"])
            if question["answer"]["way"] == "chosen":
                assert set(question["answer"]["options"]) <= set(sides if kind == "look" else words["option"][kind])
