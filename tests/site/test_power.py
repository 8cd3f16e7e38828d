"""The drawing under each step of a card: it follows the card, keeps its laws, and claims nothing only the rig can say."""
import json
import subprocess

import pytest

from site_src.content import data
from tests.conftest import ROOT, node

DRAWING = data.load("why/power")
BEGIN = {name: row for name, row in DRAWING["begin"].items() if isinstance(row, dict)}
CHANGES = {name: row for name, row in DRAWING["changes"].items() if isinstance(row, dict)}
SEQUENCES = {name: data.sequence(name) for name in BEGIN}
VALUES = {
    "engine": {"off", "idle", "raised"}, "gear": {"neutral", "pump"}, "collar": {"road", "between", "pump"},
    "selector": {"road", "centre", "pump"}, "speedometer": {"zero", "up", None},
    **{name: {True, False} for name in ("shaft_turning", "pump_turning", "wheels_locked", "switch_closed")},
}
DRIVELINE, UNKNOWN = {"speedometer": "driveline"}, {"speedometer": "unknown"}


def every_fact(sequence):
    facts = [fact for step in sequence["steps"] for fact in step.get("proves", ())]
    return facts + [fact for step in sequence["steps"] for answer in step.get("answers", ()) for fact in answer.get("proves", ())]


def drawings(**asked):
    told = json.dumps({"cards": [], "begin": BEGIN, "changes": CHANGES, **asked})
    run = subprocess.run([node(), ROOT / "tests" / "site" / "path.mjs"], input=told, capture_output=True, encoding="utf-8", check=True)
    return json.loads(run.stdout)


def walk(facts_of, rig):
    """The drawing at every step of every card that has one, by card and step."""
    walked = drawings(cards=[{"sequence": sequence, "facts": facts_of(sequence), "rig": rig} for sequence in SEQUENCES.values()])
    return {name: dict(zip([step["id"] for step in sequence["steps"]], states, strict=True))
            for (name, sequence), states in zip(SEQUENCES.items(), walked, strict=True)}


@pytest.fixture(scope="module")
def drawn():
    return walk(every_fact, DRIVELINE)


def test_every_value_can_be_drawn(drawn):
    """Each state holds what the drawing knows how to draw, and nothing missing."""
    for card, steps in drawn.items():
        for step, state in steps.items():
            for name, values in VALUES.items():
                assert state[name] in values, (card, step, name)
            assert set(state["air"]) == {"road", "pump"} and set(state["air"].values()) <= {"full", "leaving", "empty"}
            assert set(state["lights"].values()) <= {True, False, None}


def test_selector_moves_only_at_rest(drawn):
    """Where the lever moves from one step to the next, the drawing shows idle, neutral, no shaft turning, brake set."""
    moves = 0
    for steps in drawn.values():
        states = list(steps.values())
        for before, after in zip(states, states[1:]):
            if before["selector"] != after["selector"]:
                moves += 1
                assert (before["engine"], before["gear"], before["shaft_turning"], before["wheels_locked"]) == ("idle", "neutral", False, True)
    assert moves == 6  # two on each of three cards


def test_ends_of_the_cards(drawn):
    """Into pump ends pumping with every light on; back to road ends with the collar in road and the pump at rest."""
    for card in ("bay", "scene"):
        last = drawn[card]["raise"]
        assert (last["engine"], last["collar"], last["pump_turning"]) == ("raised", "pump", True)
        assert last["lights"] == {"engaged": True, "ok": True, "throttle": True}
    last = drawn["road"]["roll"]
    assert (last["collar"], last["selector"], last["pump_turning"], last["wheels_locked"]) == ("road", "road", False, False)
    assert last["rolls"] and last["shaft_turning"] and last["speedometer"] == "up"  # driven wheels turn either kind of needle
    assert drawn["road"]["drive"]["strains"] and not drawn["road"]["neutral_out"]["strains"]


def test_what_only_the_rig_says_stays_open():
    """A light that was not yet seen, and a needle whose kind is not known, are drawn as a question."""
    unseen = walk(lambda sequence: [], UNKNOWN)
    assert unseen["scene"]["pump"]["lights"]["engaged"] is None
    assert unseen["scene"]["light_first"]["lights"]["engaged"] is None
    assert unseen["scene"]["gear"]["speedometer"] is None
    assert walk(every_fact, {"speedometer": "wheels"})["scene"]["gear"]["speedometer"] == "zero"


def test_at_the_centre_the_old_side_leaves(drawn):
    """The side that was full exhausts at the centre, the collar stays, and the new side fills after it."""
    for card, centre, then, old, new in (("scene", "centre", "pump", "road", "pump"), ("road", "centre_back", "road", "pump", "road")):
        assert drawn[card][centre]["air"] == {old: "leaving", new: "empty"}
        assert drawn[card][centre]["collar"] == old
        assert drawn[card][then]["air"] == {old: "empty", new: "full"}
        assert drawn[card][then]["collar"] == new


def test_a_guard_looked_at_again_keeps_what_was_done():
    """Asked again for idle before the selector goes to pump, the drawing still has the selector at the centre."""
    sequence = SEQUENCES["scene"]
    position = [step["id"] for step in sequence["steps"]].index("pump")
    state, = drawings(again={"sequence": sequence, "position": position, "step": "idle", "facts": every_fact(sequence), "rig": UNKNOWN})
    assert (state["selector"], state["engine"], state["collar"]) == ("centre", "idle", "road")


def test_no_change_is_orphaned():
    """Every beginning is a card, and every change hangs on a fact that some card proves."""
    assert set(BEGIN) <= {card["id"] for card in data.cards()}
    assert set(CHANGES) <= {fact for sequence in SEQUENCES.values() for fact in every_fact(sequence)}
