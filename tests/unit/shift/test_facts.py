"""What does not outlast an act, or a moment nobody looked: on cards of two acts, made for it. Reasons are common practice."""
import pytest

from calc.base.errors import CalcError

LAST = {"id": "last", "kind": "confirm", "proves": ["pump_parted"]}
GUARDS = {  # what must be seen before each act
    "start": ["people_clear", "fit_to_start", "wheels_chocked"], "gear": ["engine_idle", "parking_brake", "foot_on_brake"],
    "throttle": ["throttle_ready", "water_moving", "standing_still", "pressure_seen", "wheels_chocked"], "shut": ["engine_idle", "crews_told"],
    "feed": ["crews_told", "air_bled"], "transfer": ["crews_told", "pressure_low"],
    "roll": ["engine_idle", "crews_told", "crush_zone_clear", "water_moving"],
    "release": ["engine_idle", "pump_lights_out", "people_clear"],
}
ENDED = [
    ("start", "engine_off"), ("start", "key_out"),  # it runs, with the key in
    ("gear", "transmission_neutral"), ("gear", "speed_zero"), ("gear", "pressure_zero"),  # the pump turns
    ("throttle", "engine_idle"), ("throttle", "speed_zero"), ("throttle", "pressure_low"),  # all of them rise
    ("shut", "water_moving"),
    ("feed", "pressure_low"), ("transfer", "pressure_low"),  # water comes, or both stages push in a row
    ("roll", "engine_idle"), ("roll", "parking_brake"), ("roll", "transmission_neutral"), ("roll", "speed_zero"),
    ("roll", "standing_still"), ("roll", "pressure_low"),  # the rig moves, in gear, by its throttle
    ("release", "parking_brake"), ("release", "speed_zero"),
]
STAYS = [("start", "wheels_chocked"), ("gear", "parking_brake"), ("throttle", "water_moving"), ("shut", "engine_idle"), ("feed", "air_bled")]
PERISH = ["engine_idle", "transmission_neutral", "parking_brake", "speed_zero", "standing_still", "water_moving", "people_clear",
          "crush_zone_clear", "pressure_low", "pressure_zero", "engine_off", "key_out", "foot_on_brake", "range_in"]  # any of them can change behind one's back
OUTLAST = ["wheels_chocked", "fit_to_start", "selector_centred"]  # what stays where a person put it


def a_card(*steps):
    return {"id": "card", "anchor": steps[0]["id"], "steps": list(steps)}


def begun(run, *steps):
    return run("shift.card", "start", sequence=a_card(*steps), rig={})


def seen(run, state, *steps):
    for step in steps:
        state = run("shift.card", "advance", state=state, event={"kind": "seen", "step": step, "at_s": 1})
    return state


def acted(run, act, fact):
    """A card on which an act was done, and a step is wanted that needs a fact seen before it."""
    state = begun(
        run, {"id": "look", "kind": "confirm", "proves": [*GUARDS[act], fact]},
        {"id": "act", "kind": "confirm", "act": act, "needs": GUARDS[act]},
        {"id": "then", "kind": "confirm", "needs": [fact]}, LAST)
    return seen(run, state, "look", "act")["offer"]


@pytest.mark.parametrize(("act", "fact"), ENDED)
def test_what_an_act_ends_must_be_seen_again(run, act, fact):
    """After the act the fact no longer stands, and the step that needs it offers its proof first."""
    offer = acted(run, act, fact)
    assert (offer["wanted"], offer["step"], offer["again"]) == ("then", "look", True)
    assert offer["missing"][-1] == fact


@pytest.mark.parametrize(("act", "fact"), STAYS)
def test_what_an_act_leaves_is_not_asked_again(run, act, fact):
    """What the act does not touch still stands."""
    offer = acted(run, act, fact)
    assert (offer["wanted"], offer["step"], offer["again"], offer["missing"]) == ("then", "then", False, [])


@pytest.mark.parametrize(("fact", "stands"), [(fact, False) for fact in PERISH] + [(fact, True) for fact in OUTLAST])
def test_what_a_look_away_ends(run, fact, stands):
    """After the card was away, whatever can have changed must be seen again, and nothing else."""
    state = seen(run, begun(run, {"id": "look", "kind": "confirm", "proves": [fact]}, {"id": "then", "kind": "confirm", "needs": [fact]}), "look")
    offer = run("shift.card", "advance", state=state, event={"kind": "resume", "at_s": 2, "left_s": 2})["offer"]
    assert offer["step"] == ("then" if stands else "look")


def test_a_step_can_end_a_fact_of_its_own(run):
    """A step says itself what it ends beside what its act does."""
    offer = seen(run, begun(
        run, {"id": "look", "kind": "confirm", "proves": ["pressure_seen", "air_bled"]},
        {"id": "open", "kind": "confirm", "voids": ["pressure_seen"]},
        {"id": "then", "kind": "confirm", "needs": ["pressure_seen", "air_bled"]}), "look", "open")["offer"]
    # first what the step that proves it says anew, then what lacks
    assert (offer["step"], offer["missing"]) == ("look", ["air_bled", "pressure_seen"])


def test_a_step_that_became_needless_is_passed_over(run):
    """A step is left out once all that makes it needless was seen, and not before."""
    steps = [{"id": "one", "kind": "confirm", "proves": ["dry"]}, {"id": "two", "kind": "confirm", "proves": ["warm"]},
             {"id": "drain", "kind": "confirm", "skip_if": ["dry", "warm"]}, {"id": "end", "kind": "confirm"}]
    assert seen(run, begun(run, *steps), "one", "two")["offer"]["step"] == "end"
    steps[1]["proves"] = []
    assert seen(run, begun(run, *steps), "one", "two")["offer"]["step"] == "drain"


@pytest.mark.parametrize(("size", "limit_s"), [("small", 30), ("huge", 20), ("unknown", 20), (None, 20)])
def test_a_limit_by_the_size_of_the_pump(run, size, limit_s):
    """A size that a step does not name has the limit of an unknown one."""
    step = {"id": "prime", "kind": "limit", "limit_s": {"small": 30, "unknown": 20}}
    assert run("shift.next_step", "limit_s", step=step, rig={"pump_size": size} if size else {}) == limit_s


def still(run, *steps):
    """The refusal of a card on which the pump turns and these steps follow; None where it starts."""
    turning = {"id": "turn", "kind": "confirm", "proves": ["pump_turning"]}
    try:
        begun(run, turning, *({"id": str(place), "kind": "confirm", "proves": proves} for place, proves in enumerate(steps)))
    except CalcError as refused:
        return refused.field, refused.code, refused.facts
    return None


@pytest.mark.parametrize("proof", ["water_moving", "pump_parted"])
def test_water_stands_in_a_turning_pump_for_ten_steps_at_most(run, proof):
    """By the tenth step, a look for pressure and a priming among them, water moves or the pump is parted; a card on which it does not is refused by the step that is too late."""
    assert still(run, *[[]] * 9, [proof]) is None
    assert still(run, *[[]] * 10, [proof]) == ("sequence", "still_water", {"step": "9"})


def test_water_that_moved_before_the_pump_turned(run):
    """A pump fed by a hydrant turns in water that moves already."""
    steps = [{"id": "feed", "kind": "confirm", "proves": ["water_moving"]}, {"id": "turn", "kind": "confirm", "proves": ["pump_turning"]}]
    assert begun(run, *steps)["offer"]["step"] == "feed"


def test_an_unasked_question_is_told_by_its_step(run):
    """A step that hangs on what nobody asked is refused by its name."""
    step = {"id": "air", "kind": "confirm", "only_if": {"control": ["air"]}}
    with pytest.raises(CalcError) as refused:
        run("shift.card", "start", sequence={**a_card(step), "rig": {"control": ["air", "electric"]}}, rig={})
    assert (refused.value.field, refused.value.code, refused.value.facts) == ("sequence", "unasked", {"step": "air"})


@pytest.mark.parametrize("needs", [{}, {"needs": []}, {"needs": ["engine_idle"]}])
def test_a_missing_guard_is_told_by_step_and_name(run, needs):
    """An act without its guards is refused, and which one is lacking is told, also where it needs nothing at all."""
    with pytest.raises(CalcError) as refused:
        begun(run, {"id": "look", "kind": "confirm", "proves": ["engine_idle", "parking_brake", "foot_on_brake"]}, {"id": "shift", "kind": "confirm", "act": "gear", **needs})
    lacking = "parking_brake" if needs.get("needs") else "engine_idle"
    assert (refused.value.code, refused.value.facts) == ("guard_missing", {"step": "shift", "guard": lacking})


def test_an_answer_that_proves_is_asked_for_again(run):
    """Where an answer proved the fact, the question is offered again, and what is missing is the fact alone."""
    state = begun(
        run, {"id": "ask", "kind": "ask", "answers": [{"id": "calm", "proves": ["people_clear"]}]},
        {"id": "then", "kind": "confirm", "needs": ["people_clear"]}, LAST)
    state = run("shift.card", "advance", state=state, event={"kind": "seen", "step": "ask", "answer": "calm", "at_s": 1})
    assert state["offer"]["step"] == "then"
    offer = run("shift.card", "advance", state=state, event={"kind": "resume", "at_s": 2, "left_s": 2})["offer"]
    assert (offer["step"], offer["wanted"], offer["missing"]) == ("ask", "then", ["people_clear"])
