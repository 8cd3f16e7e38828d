"""The shift card, event by event, on both Pythons."""
import json

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError
from site_src.content import data
from tests.unit.shift.hand import Hand, RIG

CARDS = [card["id"] for card in data.cards()]
GUARDS = {"transmission_neutral", "speed_zero", "parking_brake", "engine_idle"}  # common practice


@pytest.mark.parametrize("rig", [{}, {"drive": "front", "transmission": "manual"}, {"drive": "rear_shaft", "shift_control": "electric"}])
@pytest.mark.parametrize("card", CARDS)
def test_a_card_is_followed_to_its_end(run, card, rig):
    """Seeing every sign finishes the card, each step with the time it was confirmed."""
    fits = data.sequence(card)["fits"]
    hand = Hand(run, card, {question: answer for question, answer in rig.items() if answer in fits.get(question, [answer])})
    while hand.state["status"] == "running":
        hand.see()
    assert hand.state["status"] == "done"
    times = [record["at_s"] for record in hand.state["confirmed"]]
    assert times == sorted(times) and len(times) >= 9


@pytest.mark.parametrize("rig", [{}, RIG, {"drive": "pto", "transmission": "manual"}], ids=["unknown", "midship", "pto"])
@pytest.mark.parametrize("place", [0, -1], ids=["first answers", "last answers"])
@pytest.mark.parametrize("card", CARDS)
def test_steps_are_numbered_one_by_one(run, card, place, rig):
    """Each step is one more than the last, whatever is answered; no total is said before it is sure, and then it holds."""
    fits = data.sequence(card)["fits"]
    hand = Hand(run, card, {question: answer for question, answer in rig.items() if answer in fits.get(question, [answer])})
    numbers, totals, abouts = [], [], []
    while hand.state["status"] == "running":
        numbers.append(hand.offer["number"])
        totals.append(hand.offer["of"])
        abouts.append(hand.offer["about"])
        hand.see(hand.fitting_answer(place))
    assert numbers == list(range(1, len(numbers) + 1))
    said = [total for total in totals if total is not None]
    assert set(said) == {len(numbers)} and totals[-len(said):] == said
    assert place or set(abouts) == {len(numbers)}, "about, as of a rig that gives the first answers"


@pytest.mark.parametrize(("card", "rig", "until", "before", "then"), [
    # counted in shift.toml: three questions and the 25 steps of a midship pump shifted by air; the last question decides
    ("road", {}, "tell", "which_transmission", 28),
    # counted there: all of the frost card but its heating; dry or wet decides
    ("freeze", {}, "freeze_zero", "winter_rule", 12),
])
def test_a_total_is_said_once_it_is_sure(run, card, rig, until, before, then):
    """While an answer to come decides which steps there are, their number is not said; right after it, it is."""
    hand = Hand(run, card, rig).see_until(before)
    assert hand.offer["of"] is None and hand.offer["about"] == then, "about, as of a rig that gives the first answers"
    assert hand.see_until(until).offer["of"] == then


def test_looking_again_does_not_move_the_number(run):
    """A guard that is looked at again keeps the number of the step it is for; a step back is one less."""
    hand = Hand(run, "scene").see_until("pump")
    number = hand.offer["number"]
    hand.send("resume")
    while hand.offer["again"]:
        assert hand.offer["number"] == number
        hand.see()
    assert hand.offer["number"] == number
    assert hand.send("back").offer["number"] == number - 1


@pytest.mark.parametrize(("rig", "asked"), [
    ({}, ["which_drive", "which_control", "which_transmission"]),  # the first answer is midship
    ({"drive": "pto"}, ["which_transmission"]),
    (RIG, []),
])
def test_what_is_not_known_of_the_rig_is_asked_first(run, rig, asked):
    """A card asks only what it needs to know and the profile does not say."""
    hand = Hand(run, "scene", rig)
    for step in asked:
        assert hand.offer["step"] == step
        hand.see()
    assert hand.offer["step"] == "full_stop" and hand.offer["number"] == len(asked) + 1
    assert hand.offer["can_go_back"] == bool(asked)


@pytest.mark.parametrize(("rig", "steps", "others"), [
    ({"drive": "midship", "shift_control": "electric", "transmission": "automatic"}, {"volts", "pump_electric", "gear"}, {"air", "centre", "pto_on"}),
    ({"drive": "midship", "shift_control": "manual", "transmission": "manual"}, {"pump_lever", "zero_manual", "gear_manual"}, {"volts", "air", "gear"}),
    ({"drive": "rear_pto", "transmission": "manual"}, {"pto_on_manual", "pto_ok", "rear_place"}, {"gear_manual", "zero_manual", "pto_on"}),
    ({"drive": "midship", "shift_control": "air", "transmission": "automatic", "pressure_control": "relief"}, {"relief_ready", "relief_set"}, {"governor", "by_hand"}),
    ({"drive": "front", "transmission": "automatic"}, {"front_in", "front_ready", "front_place"}, {"throttle_ready", "pto_on", "zero"}),
])
def test_a_rig_gets_its_own_steps(run, rig, steps, others):
    """One card, and of its steps those that this rig's drive, control and transmission call for (common practice)."""
    hand = Hand(run, "scene", rig)
    while hand.state["status"] == "running":
        hand.see()
    done = {record["step"] for record in hand.state["confirmed"]}
    assert steps <= done and not others & done


@pytest.mark.parametrize(("card", "answers"), [("stages", ["1"]), ("moving", ["midship"]), ("override", ["midship", "manual"])])
def test_an_answer_that_is_for_another_card_stops_this_one(run, card, answers):
    """A card for some rigs asks whether this is one; where it is not, it stops, and asks again only when told to."""
    hand = Hand(run, card, {})
    for answer in answers:
        question = hand.offer["step"]
        hand.see(answer)
    assert hand.state["stopped"] == {"reason": "other_card", "step": question, "order": None, "answer": answers[-1], "at_s": hand.at_s}
    assert not hand.offer["can_start_over"]
    hand.send("look_again")
    assert hand.offer["step"] == question and hand.state["rig"][data.steps()[question]["asks"]] == "unknown"


def test_a_wrong_answer_about_the_rig_can_be_taken_back(run):
    """Stepping back to a question opens it again, and the steps follow the new answer."""
    hand = Hand(run, "scene", {}).see("midship").send("back")
    assert hand.offer["step"] == "which_drive"
    hand.see("pto")
    assert hand.offer["step"] == "which_transmission"


@pytest.mark.parametrize(("size", "limit_s"), [(None, 30), ("to_1250", 30), ("from_1500", 45)])
def test_priming_is_over_when_its_time_is(run, size, limit_s):
    """30 s up to 1,250 gpm, 45 s from 1,500 (an apparatus-service firm's description of the annual test), by any clock."""
    for jump in (False, True):
        hand = Hand(run, "draft", {"pump_size": size} if size else {}).see_until("prime_draft")
        assert hand.offer["hold_left_s"] == limit_s
        with pytest.raises(CalcError):
            hand.send("seen", step="prime_draft")
        hand.send("hold", step="prime_draft").tick(limit_s - 0.5)
        assert hand.state["status"] == "running"
        if jump:
            hand.at_s += 3600
        hand.tick(0.5)
        assert hand.state["stopped"]["reason"] == "time_up"
        hand.send("look_again")
        assert not hand.offer["holding"]


def test_the_order_cannot_be_broken(run):
    """Only the step on the screen can be confirmed."""
    hand = Hand(run, "scene")
    for step in ("pump", "gear", "raise", "brake", None):
        with pytest.raises(CalcError) as refused:
            hand.send("seen", step=step)
        assert (refused.value.field, refused.value.code) == ("step", "not_offered")


def test_two_taps_confirm_one_step(run):
    """The second of two quick taps names a step that is no longer offered."""
    hand = Hand(run, "scene")
    first = hand.offer["step"]
    hand.send("seen", step=first)
    with pytest.raises(CalcError):
        hand.send("seen", step=first)


def test_the_pause_takes_two_seconds(run):
    """The centre pause cannot be skipped, cut short, or ended before it was begun."""
    hand = Hand(run, "scene").see_until("centre")
    with pytest.raises(CalcError) as refused:
        hand.send("seen", step="centre")
    assert refused.value.code == "not_over"
    hand.send("hold", step="centre").tick(1.75)
    assert hand.offer["hold_left_s"] == pytest.approx(0.25)
    with pytest.raises(CalcError):
        hand.send("seen", step="centre")
    hand.tick(0.25).send("seen", step="centre")
    assert hand.offer["step"] == "pump"


@pytest.mark.parametrize("jump_s", [3600, 86400 * 365, -3600])
def test_a_clock_that_jumps_does_not_shorten_the_pause(run, jump_s):
    """One tick counts half a second at the most, and never backwards."""
    hand = Hand(run, "scene").see_until("centre").send("hold", step="centre")
    hand.at_s += jump_s
    hand.send("tick")
    assert hand.offer["hold_left_s"] >= 1.5


@pytest.mark.parametrize("leave", ["resume", "back"])
def test_after_looking_away_the_guards_are_asked_again(run, leave):
    """A selector move is offered only after each guard was seen anew."""
    hand = Hand(run, "scene").see_until("pump").send(leave)
    assert hand.offer["missing"][0] == "engine_idle", "what is offered first is named first"
    asked = []
    while hand.offer["step"] not in ("centre", "pump"):
        assert hand.offer["again"]
        asked.append(hand.offer["step"])
        hand.see()
    assert asked == ["idle", "neutral", "brake", "zero"]


def test_a_light_that_comes_after_drive_is_waited_for(run):
    """The answer "after drive" opens the later look; the OK light is not offered before it."""
    hand = Hand(run, "scene").see_until("light_first").see("after_drive").see().see()
    assert hand.offer["step"] == "light_later"


def test_a_rig_whose_light_comes_first_cannot_answer_otherwise(run):
    """What the rig's profile knows is not asked against."""
    hand = Hand(run, "scene", {**RIG, "pump_light": "before_drive"}).see_until("light_first")
    assert hand.offer["answers"] == ["on"]
    with pytest.raises(CalcError) as refused:
        hand.send("seen", step="light_first", answer="after_drive")
    assert refused.value.field == "answer"


def test_no_pressure_yet_leads_to_priming(run):
    """A pump that shows no pressure is primed before any throttle, every way shut; then water moves at once."""
    hand = Hand(run, "scene").see_until("pressure").see("none_yet")
    assert hand.offer["step"] == "prime"
    assert hand.see().offer["step"] == "circulate"


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(taps=st.lists(st.tuples(st.integers(0, 11), st.floats(-4000, 4000)), min_size=20, max_size=120),
       card=st.sampled_from(CARDS))
def test_random_taps_never_reach_an_unguarded_selector(run, taps, card):
    """Whatever is tapped, in whatever order, a selector move is offered only with its guards standing."""
    hand = Hand(run, card, {})
    steps = {step["id"]: step for step in hand.state["sequence"]["steps"]}
    for tap, jump_s in taps:
        hand.at_s += jump_s
        offered = hand.offer
        try:
            if tap < 5 and offered["step"]:
                hand.see()
            elif tap < 11:
                kind = ("back", "resume", "look_again", "start_over", "danger", "tick")[tap - 5]
                hand.send(kind)
            else:
                hand.send("not_seen", step=offered["step"])
        except CalcError:
            assert hand.offer == offered, "a refused tap changes nothing"
        step = steps.get(hand.offer["step"])
        if step and step.get("act") == "selector":
            assert GUARDS <= set(hand.state["facts"])
    assert json.loads(json.dumps(hand.state)) == hand.state


BEFORE_CONTROL = ["which_pressure_control", "which_job", "pump_on", "still", "flow_now", "tell_change"]


@pytest.mark.parametrize(("control", "job", "steps"), [
    ("governor", "hydrant", ["mode_pressure", "intake_relief", "water_lost_governor"]), ("governor", "draft", ["mode_speed", "water_lost_governor"]),
    ("governor", "relay_source", ["mode_agreed", "water_lost_governor"]), ("governor", "relay_end", ["mode_pressure", "intake_relief", "water_lost_governor"]),
    ("relief", "hydrant", ["relief_ready", "relief_set", "intake_relief", "water_lost_other"]), ("relief", "draft", ["relief_ready", "relief_set", "water_lost_other"]),
    ("none", "relay_end", ["by_hand", "intake_relief", "water_lost_other"]), ("none", "relay_source", ["by_hand", "water_lost_other"]),
])
def test_the_pressure_control_is_set_by_its_kind_and_job(run, control, job, steps):
    """From memory: one pumper of a relay in pressure mode, at the fire, others as agreed; rpm at draft; an intake relief where water comes in under pressure."""
    hand = Hand(run, "control", {})
    while hand.state["status"] == "running":
        hand.see({"which_pressure_control": control, "which_job": job}.get(hand.offer["step"]))
    assert [record["step"] for record in hand.state["confirmed"]] == BEFORE_CONTROL + steps
