"""A shift that fails, a rig that moves, teeth that grind, a dead throttle: what still leads on, and what nothing does."""
import pytest

from calc.base.errors import CalcError
from site_src.content import data
from tests.unit.shift.hand import Hand
from tests.unit.shift.test_card import CARDS, GUARDS


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


@pytest.mark.parametrize("failing", ["pump", "light_first"])
def test_a_failed_shift_is_repeated_once(run, failing):
    """No second look at a shift that did not show: the whole shift again, once; then no way on (common practice)."""
    hand = Hand(run, "scene").see_until(failing)
    done_before = [record["step"] for record in hand.state["confirmed"]]
    hand.send("not_seen", step=failing)
    assert hand.state["stopped"] == {"step": failing, "reason": "repeat", "order": "pump_fails", "at_s": hand.at_s}
    with pytest.raises(CalcError):
        hand.send("look_again")
    hand.send("start_over")
    assert hand.offer["step"] == "idle" and not GUARDS & set(hand.state["facts"])
    steps = [step["id"] for step in hand.state["sequence"]["steps"]]
    assert [record["step"] for record in hand.state["confirmed"]] == [step for step in steps[:steps.index("idle")] if step in done_before]
    hand.see_until(failing).send("not_seen", step=failing)
    assert hand.state["stopped"]["reason"] == "failed_twice"
    assert_out(hand)


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
