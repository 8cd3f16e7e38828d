"""The shift card, event by event, on both Pythons."""
import json

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError
from site_src.content import data, units
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
    numbers, totals = [], []
    while hand.state["status"] == "running":
        numbers.append(hand.offer["number"])
        totals.append(hand.offer["of"])
        hand.see(hand.fitting_answer(place))
    assert numbers == list(range(1, len(numbers) + 1))
    said = [total for total in totals if total is not None]
    assert set(said) == {len(numbers)} and totals[-len(said):] == said


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


@pytest.mark.parametrize(("rated", "size"), [
    ("250@US", "to_1250"), ("1250@US", "to_1250"), ("1400@US", "to_1250"), ("1500@US", "from_1500"),
    ("5000@SI", "to_1250"), ("6000@SI", "from_1500"),  # by hand: 1,321 and 1,585 US gpm
    ("1250@imperial", "from_1500"),  # by hand: 1,501 US gpm
])
def test_pump_size(run, rated, size):
    """The class of a pump follows its rated capacity, whatever it was typed in."""
    assert run("pump.pump_size", "size", rated=rated, units=units.shown_in("US")) == size


def test_a_capacity_that_is_none(run):
    """What is no amount of flow is refused as the rated capacity."""
    with pytest.raises(CalcError) as refused:
        run("pump.pump_size", "size", rated="large", units=units.shown_in("US"))
    assert (refused.value.field, refused.value.code) == ("rated", "not_a_number")


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


@pytest.mark.parametrize("failing", ["pump", "light_first"])
def test_a_failed_shift_is_repeated_once(run, failing):
    """No second look at a shift that did not show: the whole shift again, once; then no way on (common practice)."""
    hand = Hand(run, "scene").see_until(failing).send("not_seen", step=failing)
    assert hand.state["stopped"] == {"step": failing, "reason": "repeat", "order": "pump_fails", "at_s": hand.at_s}
    with pytest.raises(CalcError):
        hand.send("look_again")
    hand.send("start_over")
    assert hand.offer["step"] == "idle" and not GUARDS & set(hand.state["facts"])
    hand.see_until(failing).send("not_seen", step=failing)
    assert hand.state["stopped"]["reason"] == "failed_twice"
    assert_out(hand)


def assert_out(hand):
    """Nothing leads on from here, however long it is left, but a technician's release."""
    for kind in ("look_again", "start_over", "not_short", "go_on", "begin_again"):
        with pytest.raises(CalcError):
            hand.send(kind)
    for left_s in (hand.at_s, hand.at_s - 1300, hand.at_s - 8000):
        hand.send("resume", left_s=left_s)
        assert hand.offer["step"] is None and hand.offer["is_out"]
        assert not any(hand.offer[way] for way in ("can_start_over", "can_look_again", "can_begin_again", "can_go_on", "can_say_long"))
    hand.send("released")
    assert hand.state["status"] == "running" and hand.state["confirmed"] == [] and hand.state["repeats"] == 0


@pytest.mark.parametrize(("card", "failing"), [("road", "road"), ("road", "lights_out"), ("road", "drive")])
def test_a_failed_shift_to_road_is_answered_as_such(run, card, failing):
    """Never with PUMP: once more to road from its first step in the cab, then it cannot be driven (common practice)."""
    hand = Hand(run, card).see_until(failing).send("not_seen", step=failing)
    assert (hand.state["stopped"]["reason"], hand.state["stopped"]["order"]) == ("repeat", "road_fails")
    hand.send("start_over")
    assert hand.offer["step"] == "idle_cab"
    hand.see_until(failing)
    assert "source_shut" in hand.state["facts"] and "pressure_zero" in hand.state["facts"]
    hand.send("not_seen", step=failing)
    assert (hand.state["stopped"]["reason"], hand.state["stopped"]["order"]) == ("failed_twice", "road_fails")
    assert_out(hand)


def test_a_rig_that_moved_is_out_of_service(run):
    """No start over, no second shift, no new run: a technician first (common practice)."""
    hand = Hand(run, "scene").see_until("raise").send("danger")
    assert hand.state["stopped"]["order"] == "moved"
    assert_out(hand)


@pytest.mark.parametrize("card", [card for card in CARDS if any(step["id"] == "still" for step in data.card_steps(card))])
def test_a_rig_not_seen_to_stand_still_has_moved(run, card):
    """It crept, however little: the order for a rig that moved, no second look (common practice)."""
    hand = Hand(run, card).see_until("still").send("not_seen", step="still")
    assert (hand.state["stopped"]["reason"], hand.state["stopped"]["order"]) == ("danger", "moved")
    assert_out(hand)


@pytest.mark.parametrize("second", ["grinding again", "a sign that does not come"])
def test_grinding_is_tried_once_more(run, second):
    """A short noise with everything still: once more from the first step. Noise again, or no shift: out of service."""
    hand = Hand(run, "scene").see_until("pump").send("report", step="pump", hazard="grinding")
    assert (hand.state["stopped"]["reason"], hand.state["stopped"]["order"]) == ("repeat", "grinding")
    assert hand.offer["can_say_long"] and hand.offer["can_start_over"]
    hand.send("start_over").see_until("pump")
    hand.send("not_seen", step="pump") if second.startswith("a sign") else hand.send("report", step="pump", hazard="grinding")
    assert_out(hand)


def test_a_long_grind_is_not_tried_again(run):
    """The noise was long, or something still moves: out of service at once."""
    hand = Hand(run, "road").see_until("road").send("report", step="road", hazard="grinding").send("not_short")
    assert hand.state["stopped"]["reason"] == "failed_twice"
    assert_out(hand)


@pytest.mark.parametrize("step", ["still", "raise"])
def test_a_dead_throttle_is_proved_once_more(run, step):
    """Nothing moved: the shift once more from its first step; dead again: out of service."""
    hand = Hand(run, "scene").see_until(step).send("report", step=step, hazard="dead_throttle")
    assert hand.state["stopped"]["order"] == "dead_throttle" and not hand.offer["can_say_long"]
    hand.send("start_over")
    assert hand.offer["step"] == "idle"
    assert_out(hand.see_until(step).send("report", step=step, hazard="dead_throttle"))


@pytest.mark.parametrize(("step", "hazard"), [("idle", "grinding"), ("pump", "dead_throttle"), ("pump", "moved"), ("pump", None)])
def test_a_hazard_that_a_step_cannot_meet_is_refused(run, step, hazard):
    """Teeth grind where a collar moves, a throttle is dead where it is raised."""
    hand = Hand(run, "scene").see_until(step)
    with pytest.raises(CalcError) as refused:
        hand.send("report", step=step, hazard=hazard)
    assert (refused.value.field, refused.value.code) == ("hazard", "not_offered")


def test_a_new_run_does_not_forget_that_the_shift_failed(run):
    """Begun again after one failure, the next failure is the second; a run that was finished clears it."""
    hand = Hand(run, "scene").see_until("pump").send("not_seen", step="pump").send("begin_again")
    assert hand.offer["step"] == "full_stop"
    hand.see_until("pump").send("not_seen", step="pump")
    assert hand.state["stopped"]["reason"] == "failed_twice"
    hand = Hand(run, "scene").see_until("pump").send("not_seen", step="pump").send("start_over")
    while hand.state["status"] == "running":
        hand.see()
    assert hand.send("begin_again").state["repeats"] == 0


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
