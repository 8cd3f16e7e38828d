"""What a shift card cannot read is refused by name, on both Pythons."""
import pytest

from calc.errors import CalcError
from tests.unit.hand import Hand


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
        run("shift", "advance", state=given_state, event=event)
    assert refused.value.field == field


@pytest.mark.parametrize("damage", [{"rig": None}, {"facts": None}, {"position": 99}, {"sequence": None}])
def test_a_damaged_state_is_refused(run, damage):
    """A kept card that lost a part is refused by name."""
    with pytest.raises(CalcError) as refused:
        run("shift", "offer", state={**Hand(run, "scene").state, **damage})
    assert refused.value.field == "state"


def test_an_unknown_rig_answer_is_refused(run):
    """A rig's profile cannot invent an answer."""
    with pytest.raises(CalcError) as refused:
        Hand(run, "scene", {"pump_light": "sometimes"})
    assert refused.value.field == "rig"
