"""Every state the shift cards can reach, explored, and the proof that the exploring would notice."""
import copy

import pytest

from calc.base.errors import CalcError
from calc.shift import card as shift_card, halt, laws
from site_src.content import data
from tests.unit.shift.onlooker import FLEETING, HAZARDS, explore

CARDS = [card["id"] for card in data.cards()]
# Together every answer of every question, and every pairing of shift control with transmission. What a rig does not
# say, a card asks, and each answer is followed.
RIGS = {
    "any drive": {"shift_control": "air", "transmission": "automatic", "pump_light": "before_drive", "pressure_control": "governor"},
    "any shift": {"drive": "midship", "speedometer": "wheels", "pump_size": "from_1500", "pressure_control": "relief"},
    "clutch and PTO": {"drive": "pto", "transmission": "manual", "pump_stages": "2", "pressure_control": "none"},
}
BY_DRIVE = ("scene", "road", "bay")  # the other cards ask little: their rig stays unknown
EXPLORED = [(card, name) for card in BY_DRIVE for name in RIGS if (card, name) != ("bay", "any shift")]
EXPLORED += [(card, "clutch and PTO" if card == "check" else None) for card in CARDS if card not in BY_DRIVE]


@pytest.mark.parametrize(("card", "rig"), EXPLORED)
def test_no_reachable_state_offers_an_act_with_a_guard_missing(card, rig, record_property):
    """Under every order of taps, backs, stops, reloads and clock jumps no act is offered unguarded."""
    states, hazards, done = explore(data.sequence(card), RIGS.get(rig, {}))
    record_property("states", states)
    assert hazards == set()
    assert done, "the card can be finished"
    assert states > len(data.sequence(card)["steps"])


def test_every_variant_of_every_card_is_sound():
    """Whatever a rig may prove to be, its steps have their guards, their proofs and their moving water."""
    for card in CARDS:
        sequence = data.sequence(card)
        unknown = {question: "unknown" for question in sequence["rig"]}
        laws.check(sequence, unknown)
        asked = {step["asks"]: len(sequence["fits"].get(step["asks"], step["answers"])) for step in sequence["steps"] if "asks" in step}
        assert len(laws.variants(sequence, unknown)) >= max(asked.values(), default=1), card


def guarded(sequence):
    """Every act of a sequence with each guard of it: (place, act, guard)."""
    for place, step in enumerate(sequence["steps"]):
        for guard in laws.GUARDS.get(step.get("act"), ()):
            yield place, step["act"], guard


def weakened():
    """Every way to take one guard out of one act of a card: (what was taken, the sequence without it)."""
    for card in CARDS:
        sequence = data.sequence(card)
        for place, _, guard in guarded(sequence):
            mutant = data.sequence(card)
            mutant["steps"][place]["needs"].remove(guard)
            yield pytest.param(mutant, id=f"{card}: {sequence['steps'][place]['id']} without {guard}")


@pytest.mark.parametrize("mutant", list(weakened()))
def test_a_guard_taken_out_is_refused_before_it_can_be_followed(mutant):
    """A sequence that lacks a guard of an act never starts."""
    with pytest.raises(CalcError) as refused:
        shift_card.start(mutant, {})
    assert (refused.value.field, refused.value.code) == ("sequence", "guard_missing")


def blind():
    """Every act of every card with each guard of it, once."""
    for card in CARDS:
        for act, guard in sorted({(act, guard) for _, act, guard in guarded(data.sequence(card))}):
            yield pytest.param(card, act, guard, id=f"{card}: {act} without {guard}")


def never_asked(card, guard, sign_too):
    """A card in which no step needs a guard; with sign_too, none shows its sign either."""
    mutant = data.sequence(card)
    for step in mutant["steps"]:
        step["needs"] = [need for need in step.get("needs", ()) if need != guard]
        for told in [step, *step.get("answers", ())] if sign_too else []:
            told["proves"] = [fact for fact in told.get("proves", ()) if fact != guard]
    return mutant


@pytest.mark.parametrize(("card", "act", "guard"), list(blind()))
def test_the_exploration_notices_a_guard_that_is_never_asked(card, act, guard):
    """With the first check blinded and a guard taken out of every step, the onlooker catches the bare act.

    A guard that lasts is also asked for by the order alone, and two guards can share one sign; there the sign goes too.
    """
    rig = {}
    if card in BY_DRIVE:
        rig = {**RIGS["any drive"], "drive": "pto" if act in ("engage", "disengage") else "midship"}
    for sign_too in (False, True) if guard in FLEETING else (True,):
        _, hazards, _ = explore(never_asked(card, guard, sign_too), rig, check=lambda sequence, rig: None, until=(act, guard))
        if (act, guard) in hazards:
            return
    raise AssertionError("nobody noticed")


def test_every_act_is_a_declared_hazard():
    """Each act that calc knows is one that the onlooker watches, with at least the guards that calc asks for."""
    assert set(HAZARDS) | {"prime"} == set(laws.GUARDS)
    for act, guards in laws.GUARDS.items():
        assert set(guards) == HAZARDS.get(act, ("", set()))[1], act


def there_and_back():
    """A made-up card that moves the selector, selects a gear, and moves the selector again."""
    kept = [copy.deepcopy(data.steps()[name]) for name in ("idle", "neutral", "brake", "chock_scene", "zero", "centre", "gear", "pump")]
    for step in kept:
        step.pop("only_if", None)
        if step["id"] in ("centre", "gear", "pump"):
            step["needs"] = [*laws.GUARDS[step["act"]], "wheels_chocked"]
            step["voids"] = []
            step["proves"] = []
    return {"id": "there_and_back", "anchor": "idle", "rig": {}, "steps": kept}


def test_a_selector_move_after_a_gear_asks_for_neutral_and_zero_again():
    """Motion itself ends what was seen before it, also without looking away."""
    _, hazards, done = explore(there_and_back(), {})
    assert hazards == set() and done


@pytest.mark.parametrize(
    ("part", "value"),
    [("PERISHABLE", ()), ("PERISHABLE", ("engine_idle",)), ("ENDS", {})],
)
def test_the_exploration_notices_a_weaker_machine(monkeypatch, part, value):
    """Were nothing voided by motion or by looking away, the onlooker would catch it."""
    monkeypatch.setattr(laws, part, value)
    assert explore(there_and_back(), {})[1], "a machine that forgets motion must be caught"


def test_the_exploration_notices_a_stop_taken_back_too_late(monkeypatch):
    """Could any rig that is out of service be called a slip of the finger, the onlooker would catch it."""
    monkeypatch.setattr(halt, "can_take_back", halt.is_out)
    assert explore(there_and_back(), {}, until=("out of service", "third try"))[1]


def test_the_exploration_notices_a_driver_sent_away_in_gear():
    """Were neutral not seen again before what is looked at outside, once a range is in, the onlooker would catch it."""
    mutant = data.sequence("moving")
    for step in mutant["steps"]:
        if step["id"] in ("roll_water", "roll_signals", "roll_clear"):
            step["needs"].remove("transmission_neutral")
    assert ("gear", "seat") in explore(mutant, {"drive": "pto", "transmission": "automatic"}, until=("gear", "seat"))[1]


@pytest.mark.parametrize("limit_s", [60, 46])
def test_the_exploration_notices_a_primer_held_past_its_time(limit_s):
    """A limit longer than any pump is given is caught."""
    mutant = data.sequence("draft")
    for step in mutant["steps"]:
        if step["kind"] == "limit":
            step["limit_s"] = {"unknown": limit_s}
    assert ("prime", "time") in explore(mutant, {}, until=("prime", "time"))[1]


def without(card, name):
    """A card with one step taken out of it, and out of what the others need."""
    sequence = data.sequence(card)
    gone = laws.every_proof(data.steps()[name])
    sequence["steps"] = [step for step in sequence["steps"] if step["id"] != name]
    left = [fact for step in sequence["steps"] for fact in laws.every_proof(step)]
    for step in sequence["steps"]:
        if step.get("act") is None:
            step["needs"] = [need for need in step.get("needs", ()) if need not in gone or need in left]
    return sequence


@pytest.mark.parametrize(("card", "name", "code"), [
    ("scene", "circulate", "still_water"), ("draft", "draft_flow", "unproved_need"), ("bay", "which_drive", "unasked"),
    ("scene", "which_control", "unasked"), ("moving", "roll_clear", "unproved_need"),
])
def test_a_step_taken_out_is_refused(card, name, code):
    """A card that lacks the step which an act hangs on, or the question which a step hangs on, never starts."""
    with pytest.raises(CalcError) as refused:
        shift_card.start(without(card, name), {})
    assert (refused.value.field, refused.value.code) == ("sequence", code)


@pytest.mark.parametrize(("card", "before", "name"), [("scene", "still", "circulate"), ("draft", "draft_watch", "draft_flow")])
def test_water_that_stands_too_long_is_refused(card, before, name):
    """A card that lets the pump turn on still water for more than a moment never starts."""
    sequence = data.sequence(card)
    moved = next(step for step in sequence["steps"] if step["id"] == name)
    sequence["steps"].remove(moved)
    for step in sequence["steps"]:
        if step.get("act") == "throttle":
            step["act"] = None
            step["needs"] = []
    names = [step["id"] for step in sequence["steps"]]
    sequence["steps"].insert(names.index(before), moved)
    with pytest.raises(CalcError) as refused:
        shift_card.start(sequence, {})
    assert refused.value.code == "still_water"


def test_a_card_refuses_a_rig_it_is_not_for():
    """A card that moves a collar does not start for a rig that has none."""
    with pytest.raises(CalcError) as refused:
        shift_card.start(data.sequence("override"), {"drive": "pto"})
    assert (refused.value.field, refused.value.code) == ("rig", "other_card")
