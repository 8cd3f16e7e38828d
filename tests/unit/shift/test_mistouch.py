"""A red key that was touched by mistake: a way back that asks for the proofs again, and none where something truly moved."""
import pytest

from calc.base.errors import CalcError
from tests.unit.shift.hand import Hand


def test_a_slip_is_taken_back_to_its_step(run):
    """The same step is wanted, all that may have changed is to be seen again first, and what lasts stays (common practice)."""
    hand = Hand(run, "scene").see_until("raise")
    stood = set(hand.state["facts"])
    confirmed = [record["step"] for record in hand.state["confirmed"]]
    hand.send("danger")
    assert hand.offer["is_out"] and hand.offer["can_take_back"] and hand.offer["step"] is None
    hand.send("mistouch")
    assert hand.state["status"] == "running" and hand.state["stopped"] is None and hand.state["repeats"] == 0
    assert (hand.offer["wanted"], hand.offer["again"]) == ("raise", True)
    assert stood - set(hand.state["facts"]) == stood & {
        "transmission_neutral", "speed_zero", "parking_brake", "engine_idle", "water_moving", "standing_still", "people_clear",
        "crush_zone_clear", "foot_on_brake", "pressure_low", "pressure_zero", "engine_off", "key_out",
    } != set()
    assert [record["step"] for record in hand.state["confirmed"]] == confirmed
    hand.see_until("raise")
    assert not hand.offer["again"] or hand.offer["step"] == "raise"


def test_a_failed_try_still_counts(run):
    """A slip between two tries of a shift gives no third."""
    hand = Hand(run, "scene").see_until("pump").send("report", step="pump", hazard="grinding").send("start_over")
    hand.send("danger").send("mistouch")
    assert hand.state["repeats"] == 1


@pytest.mark.parametrize(("away_s", "wanted", "is_asked"), [(30, "raise", False), (3600, "raise", True), (7 * 3600, None, False)])
def test_a_slip_that_was_left_is_still_one(run, away_s, wanted, is_asked):
    """Left and come back to, it is taken back, and the card goes on as any that was left so long: by the same look, or the first (calc.shift.away)."""
    hand = Hand(run, "scene").see_until("raise").send("danger")
    left_s = hand.at_s
    hand.at_s += away_s
    hand.send("resume", left_s=left_s).send("resume", left_s=hand.at_s - 1)
    assert hand.offer["can_take_back"]
    hand.send("mistouch")
    assert hand.state["status"] == "running" and hand.offer["can_go_on"] is is_asked
    if is_asked:
        hand.send("go_on")
    if wanted:
        assert (hand.offer["wanted"], hand.offer["again"]) == (wanted, True)
    else:
        assert (hand.offer["step"], hand.state["confirmed"]) == (Hand(run, "scene").offer["step"], [])


@pytest.mark.parametrize("stop", ["a sign answered so", "after a failed try", "twice out"])
def test_what_is_no_slip_is_not_taken_back(run, stop):
    """A rig seen to move, or a key touched where the card already stood: a technician's."""
    if stop == "a sign answered so":
        hand = Hand(run, "scene").see_until("still").send("not_seen", step="still")
    elif stop == "after a failed try":
        hand = Hand(run, "scene").see_until("pump").send("not_seen", step="pump").send("danger")
    else:
        hand = Hand(run, "scene").see_until("pump").send("not_seen", step="pump").send("start_over").see_until("pump").send("not_seen", step="pump").send("danger")
    assert hand.offer["is_out"] and not hand.offer["can_take_back"]
    with pytest.raises(CalcError) as refusal:
        hand.send("mistouch")
    assert (refusal.value.field, refusal.value.code) == ("event", "not_offered")
    assert hand.offer["is_out"]
