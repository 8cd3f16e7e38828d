"""The drawing at each step of a card: it follows the card, keeps its laws, and claims nothing only the rig can say."""
import json
import subprocess

import pytest

from site_src.content import data
from tests.conftest import ROOT, node

DRAWING = data.load("why/power")
ORIGIN = ("source", "basis")
PLAIN = {part: {name: row for name, row in DRAWING[part].items() if name not in ORIGIN} for part in ("families", "begin", "changes", "act_changes")}
SEQUENCES = {name: data.sequence(name) for name in PLAIN["begin"]}
VALUES = {
    "engine": {"off", "idle", "raised"}, "gear": {"neutral", "pump"}, "collar": {"road", "between", "pump"},
    "selector": {"road", "centre", "pump"}, "speedometer": {"zero", "up", None},
    **{name: {True, False} for name in ("shaft_turning", "pump_turning", "wheels_locked", "switch_closed")},
}
SPLIT = {"drive": "midship", "shift_control": "air", "transmission": "automatic"}
DRIVELINE, UNKNOWN = {**SPLIT, "speedometer": "driveline"}, {**SPLIT, "speedometer": "unknown"}
SPLIT_CARDS = [name for name in SEQUENCES if "drive" not in SEQUENCES[name]["fits"]]


def path_of(card):
    """What a card's page carries to draw its steps."""
    return {**{part: PLAIN[part] for part in ("families", "changes", "act_changes")}, "begin": DRAWING["state"][PLAIN["begin"][card]]}


def steps_for(card, rig):
    """A card's steps that a rig has."""
    return [step for step in SEQUENCES[card]["steps"] if all(rig.get(question, answers[0]) in answers for question, answers in step.get("only_if", {}).items())]


def every_fact(sequence):
    facts = [fact for step in sequence["steps"] for fact in step.get("proves", ())]
    return facts + [fact for step in sequence["steps"] for answer in step.get("answers", ()) for fact in answer.get("proves", ())]


def drawings(**asked):
    told = json.dumps({"cards": [], **asked})
    run = subprocess.run([node(), ROOT / "tests" / "site" / "path.mjs"], input=told, capture_output=True, encoding="utf-8", check=True)
    return json.loads(run.stdout)


def walk(facts_of, rig, names=SPLIT_CARDS):
    """The drawing at every step of every card that has one for a rig, by card and step."""
    sequences = {name: {**SEQUENCES[name], "steps": steps_for(name, rig)} for name in names}
    walked = drawings(cards=[{"sequence": sequence, "facts": facts_of(sequence), "rig": rig, "path": path_of(name)} for name, sequence in sequences.items()])
    return {name: dict(zip([step["id"] for step in sequence["steps"]], states, strict=True))
            for (name, sequence), states in zip(sequences.items(), walked, strict=True)}


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
    assert moves == 6  # two on each of the three cards that shift


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
    state, = drawings(again={"sequence": sequence, "position": position, "step": "idle", "facts": every_fact(sequence), "rig": UNKNOWN, "path": path_of("scene")})
    assert (state["selector"], state["engine"], state["collar"]) == ("centre", "idle", "road")


PTO = {"drive": "pto", "transmission": "automatic", "speedometer": "wheels"}
FRONT = {"drive": "front", "transmission": "automatic", "speedometer": "wheels"}


@pytest.mark.parametrize(("rig", "into", "out"), [(PTO, "pto_on", "pto_off"), (FRONT, "front_in", "front_out")], ids=["pto", "front"])
def test_a_pump_of_another_drive_turns_without_a_gear(rig, into, out):
    """Beside a PTO or a front mount the pump turns from the step that engages it to the one that takes it out, in NEUTRAL, and the driveshaft stands."""
    drawn = walk(every_fact, rig, ["scene", "road"])
    steps = list(drawn["scene"])
    before, after = drawn["scene"][steps[steps.index(into) - 1]], drawn["scene"][into]
    assert (before["collar"], before["pump_turning"]) == ("road", False)
    assert (after["collar"], after["pump_turning"], after["gear"], after["shaft_turning"]) == ("pump", True, "neutral", False)
    assert all((drawn["road"][step]["gear"], drawn["road"][step]["pump_turning"]) == ("neutral", True) for step in list(drawn["road"])[:4])
    assert (drawn["road"][out]["collar"], drawn["road"][out]["pump_turning"]) == ("road", False)


def test_a_rig_that_arrives_rolls_until_it_stops(drawn):
    """At a scene the wheels turn, in gear, until the full stop; NEUTRAL and the brake come with their own steps."""
    scene = drawn["scene"]
    assert (scene["full_stop"]["rolls"], scene["full_stop"]["gear"], scene["full_stop"]["wheels_locked"]) == (False, "pump", False)
    assert (scene["neutral"]["gear"], scene["neutral"]["wheels_locked"], scene["brake"]["wheels_locked"]) == ("neutral", False, True)


def test_pump_and_roll_turns_both():
    """While a PTO pump works on the move, pump and wheels turn at once; at the stop the wheels rest and the pump goes on."""
    moving = walk(every_fact, PTO, ["moving"])["moving"]
    assert [(moving[step]["gear"], moving[step]["strains"]) for step in ("roll_clear", "roll_gear", "roll_go")] == [("neutral", False), ("pump", True), ("pump", False)]
    assert (moving["roll_go"]["pump_turning"], moving["roll_go"]["rolls"]) == (True, True)
    assert (moving["roll_stop"]["pump_turning"], moving["roll_stop"]["rolls"], moving["roll_stop"]["gear"]) == (True, False, "neutral")


def test_no_change_is_orphaned():
    """Every beginning is a card, and every change hangs on a fact that some card proves."""
    assert set(SEQUENCES) <= {card["id"] for card in data.cards()} and set(PLAIN["begin"].values()) == set(DRAWING["state"]) - set(ORIGIN)
    assert set(PLAIN["changes"]) <= {fact for sequence in SEQUENCES.values() for fact in every_fact(sequence)}
    assert set(PLAIN["act_changes"]) <= {step["id"] for sequence in SEQUENCES.values() for step in sequence["steps"]}
    assert {drive for drives in PLAIN["families"].values() for drive in drives} == set(SEQUENCES["scene"]["rig"]["drive"]) - {"unknown"}
