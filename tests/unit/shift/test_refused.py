"""What a shift card cannot read is refused by name, on both Pythons."""
import pytest

from calc.base.errors import CalcError
from tests.unit.shift.hand import Hand


@pytest.mark.parametrize(
    ("state", "event", "field"),
    [
        ({}, {"kind": "tick", "at_s": 0}, "state"),
        ("text", {"kind": "tick", "at_s": 0}, "state"),
        (None, {"kind": "tick", "at_s": 0}, "state"),
        ("good", None, "event"),
        ("good", {"kind": ["seen"], "at_s": 0}, "event"),
        ("good", {"kind": "fly", "at_s": 0}, "event"),
        ("good", {"kind": "tick"}, "at_s"),
        ("good", {"kind": "tick", "at_s": "noon"}, "at_s"),
        ("good", {"kind": "tick", "at_s": 1e300}, "at_s"),
    ],
)
def test_damaged_states_and_events_are_refused(run, state, event, field):
    """What cannot be read is refused by name, never followed."""
    given_state = Hand(run, "scene").state if state == "good" else state
    with pytest.raises(CalcError) as refused:
        run("shift.card", "advance", state=given_state, event=event)
    assert refused.value.field == field


@pytest.mark.parametrize("damage", [{"rig": None}, {"facts": None}, {"position": 99}, {"sequence": None}])
def test_a_damaged_state_is_refused(run, damage):
    """A kept card that lost a part is refused by name."""
    with pytest.raises(CalcError) as refused:
        run("shift.card", "advance", state={**Hand(run, "scene").state, **damage}, event={"kind": "tick", "at_s": 0})
    assert refused.value.field == "state"


def test_an_unknown_rig_answer_is_refused(run):
    """A rig's profile cannot invent an answer."""
    with pytest.raises(CalcError) as refused:
        Hand(run, "scene", {"pump_light": "sometimes"})
    assert refused.value.field == "rig"


LOOK = {"id": "look", "kind": "confirm"}


@pytest.mark.parametrize(
    ("changes", "code", "facts"),
    [
        ({"steps": []}, "damaged", {}),
        ({"steps": "look"}, "damaged", {}),
        ({"anchor": "elsewhere"}, "no_anchor", {}),
        ({"steps": ["look"]}, "damaged", {"step": "None"}),
        ({"steps": [{"kind": "confirm"}]}, "damaged", {"step": "None"}),
        ({"steps": [LOOK, LOOK]}, "damaged", {"step": "look"}),
        ({"steps": [{**LOOK, "kind": "guess"}]}, "damaged", {"step": "look"}),
        ({"steps": [{**LOOK, "act": "fly"}]}, "damaged", {"step": "look"}),
        ({"steps": [{**LOOK, "kind": "limit"}]}, "no_limit", {"step": "look"}),
        ({"steps": [{**LOOK, "kind": "limit", "limit_s": {"small": 30}}]}, "no_limit", {"step": "look"}),
        ({"steps": [{**LOOK, "kind": "ask"}]}, "no_answers", {"step": "look"}),
        ({"steps": [{**LOOK, "needs": ["seen"]}]}, "unproved_need", {"step": "look", "need": "seen"}),
        # a pump that turns with its water shut in at the end of a card
        ({"steps": [{**LOOK, "proves": ["pump_turning"]}]}, "still_water", {"step": "look"}),
    ],
)
def test_a_card_that_is_none_does_not_start(run, changes, code, facts):
    """A card that cannot be read, that lacks what its kind of step needs, or that leaves water standing is refused by its step."""
    with pytest.raises(CalcError) as refused:
        run("shift.card", "start", sequence={"anchor": "look", "steps": [LOOK], **changes}, rig={})
    assert (refused.value.field, refused.value.code, refused.value.facts) == ("sequence", code, facts)


@pytest.mark.parametrize(
    ("step", "field"),
    [
        ({"kind": "hold", "hold_s": 1.9}, "hold_s"), ({"kind": "hold", "hold_s": 61}, "hold_s"), ({"kind": "hold"}, "hold_s"),
        ({"kind": "limit", "limit_s": {"unknown": 30, "small": 1}}, "limit_s"),
    ],
)
def test_a_time_that_is_none_does_not_start(run, step, field):
    """A hold or a limit must last long enough to mean something, and end."""
    with pytest.raises(CalcError) as refused:
        run("shift.card", "start", sequence={"anchor": "look", "steps": [{**LOOK, **step}]}, rig={})
    assert refused.value.field == field


def test_priming_without_a_limit_does_not_start(run):
    """Priming is timed, whatever else stands in its step (common practice: 30 s, 45 s for a large pump)."""
    prime = {**LOOK, "act": "prime"}
    with pytest.raises(CalcError) as refused:
        run("shift.card", "start", sequence={"anchor": "look", "steps": [prime]}, rig={})
    assert (refused.value.field, refused.value.code, refused.value.facts) == ("sequence", "no_limit", {"step": "look"})


def test_a_fact_that_nothing_proves_is_refused(run):
    """Asked for the proof of a fact that no step before gives, it says which fact."""
    with pytest.raises(CalcError) as refused:
        steps = [LOOK, {**LOOK, "id": "act", "needs": ["seen"]}, {**LOOK, "id": "late", "proves": ["seen"]}]
        run("shift.next_step", "next_proof", steps=steps, position=1, facts=[], rig={})
    assert (refused.value.field, refused.value.code, refused.value.facts) == ("sequence", "unproved_need", {"need": "seen"})


@pytest.mark.parametrize("kind", ["mistouch", "look_again", "start_over", "go_on", "released"])
@pytest.mark.parametrize("step", ["full_stop", "pump"])
def test_what_is_not_offered_is_refused(run, kind, step):
    """On a card that goes on there is nothing to take back, to look at again, to go on from or to release."""
    hand = Hand(run, "scene").see_until(step)
    before = hand.state
    with pytest.raises(CalcError) as refused:
        hand.send(kind)
    assert (refused.value.field, refused.value.code) == ("event", "not_offered")
    assert hand.state == before


def test_a_rig_that_is_out_begins_no_new_run(run):
    """Only a technician's release does."""
    hand = Hand(run, "scene").see_until("pump").send("danger", step="pump", hazard="moved")
    assert hand.offer["is_out"]
    with pytest.raises(CalcError) as refused:
        hand.send("begin_again")
    assert (refused.value.field, refused.value.code) == ("event", "not_offered")


@pytest.mark.parametrize("kind", ["begin_again", "released"])
def test_a_new_run_asks_again_what_was_answered(run, kind):
    """What was said of the rig on this card may have been said wrong: asked anew; what its profile says is not."""
    hand = Hand(run, "scene", {"drive": "midship", "shift_control": "air"})
    assert hand.offer["step"] == "which_transmission"
    hand.see_until("pump")
    if kind == "released":
        hand.send("danger", step="pump", hazard="moved")
    hand.send(kind)
    assert hand.offer["step"] == "which_transmission" and hand.state["confirmed"] == []
