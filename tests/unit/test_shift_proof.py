"""Every state the shift cards can reach, explored, and the proof that the exploring would notice."""
import copy

import pytest

from calc import sequence as sequences
from calc import shift
from calc.errors import CalcError
from site_src import data

CARDS = ("bay", "scene", "road")
GUARDS = {"transmission_neutral", "speed_zero", "parking_brake", "engine_idle"}  # common practice
MOVES = {"gear", "throttle", "release"}  # after these the rig may have moved


class Watcher:
    """An onlooker who trusts nothing of calc but what was offered and what was answered."""

    def __init__(self, sequence):
        self.steps = {step["id"]: step for step in sequence["steps"]}

    def after(self, seen, event, before, offered):
        """Guards that a person has truly seen since anything last could move."""
        seen = set(seen)
        acted = self.steps.get(before["step"])
        if event["kind"] == "seen":
            seen |= GUARDS & set(acted.get("proves", ()))
        if event["kind"] in ("danger", "back", "resume", "not_seen", "start_over"):
            seen.clear()
        for step in (acted, self.steps.get(offered["step"])):
            if step and step.get("act") in MOVES and not (step is acted and event["kind"] == "tick"):
                seen -= {"transmission_neutral", "speed_zero"}
                if step["act"] in ("throttle",):
                    seen -= {"engine_idle"}
                if step["act"] in ("release",):
                    seen -= {"parking_brake"}
        return frozenset(seen)

    def hazards(self, seen, offered, state):
        """What is wrong with offering this."""
        step = self.steps.get(offered["step"])
        if step is None:
            return []
        found = []
        if step.get("act") == "selector":
            found += [f"selector offered at {step['id']} without {guard}" for guard in sorted(GUARDS - seen)]
        if step.get("act") == "throttle":
            needed = {"pump_light", "ok_light", "throttle_ready", "water_moving", "pressure_seen", "standing_still"}
            found += [f"throttle offered without {guard}" for guard in sorted(needed - set(state["facts"]))]
        if step.get("act") == "gear":
            needed = {"parking_brake", "engine_idle", "wheels_chocked"}
            found += [f"gear offered at {step['id']} without {guard}" for guard in sorted(needed - set(state["facts"]))]
        if step.get("act") == "release" and "pump_lights_out" not in state["facts"]:
            found.append("brake release offered with a pump light on")
        return found


def events(state):
    """Every event worth trying: each button of the card, wrong steps, wrong answers, and clocks that jump."""
    offered = state["offer"]
    last_s = state["hold"]["last_s"] if state["hold"] else 0
    steps = [step["id"] for step in state["sequence"]["steps"]]
    tried = [{"kind": kind, "at_s": last_s} for kind in ("danger", "back", "look_again", "start_over", "resume")]
    tried += [{"kind": "tick", "at_s": last_s + jump} for jump in (0.5, -3600, 86400)]
    for step in steps:
        tried += [{"kind": kind, "step": step, "at_s": last_s} for kind in ("seen", "not_seen", "hold")]
    tried += [
        {"kind": "seen", "step": offered["step"], "answer": answer, "at_s": last_s}
        for answer in ["made_up"] + offered["answers"]
    ]
    return tried


def shape(state, seen):
    """A state without its clock and its record: two states of one shape behave alike."""
    held = state["hold"] and round(min(state["hold"]["held_s"], 2), 1)
    stopped = state["stopped"] and (state["stopped"]["reason"], state["stopped"]["step"])
    return state["position"], state["status"], frozenset(state["facts"]), held, stopped, seen


def explore(sequence, rig, check=sequences.check, most=60000):
    """Walk every reachable shape of state; the number of them, and the hazards met."""
    watcher = Watcher(sequence)
    real_check, sequences.check = sequences.check, check
    try:
        first = shift.start(sequence, rig)
    finally:
        sequences.check = real_check
    nothing = frozenset()
    met = {shape(first, nothing)}
    pending = [(first, nothing)]
    hazards = set()
    done = False
    while pending and len(met) < most:
        state, seen = pending.pop()
        for event in events(state):
            try:
                after = shift.advance(state, event)
            except CalcError:
                continue
            seen_after = watcher.after(seen, event, state["offer"], after["offer"])
            hazards.update(watcher.hazards(seen_after, after["offer"], after))
            done = done or after["status"] == "done"
            known = shape(after, seen_after)
            if known not in met:
                met.add(known)
                pending.append((after, seen_after))
    assert not pending, "the exploration did not end"
    return len(met), hazards, done


@pytest.mark.parametrize("card", CARDS)
@pytest.mark.parametrize("rig", [{}, {"pump_light": "before_drive"}, {"pump_light": "after_drive", "speedometer": "wheels"}])
def test_no_reachable_state_offers_an_act_with_a_guard_missing(card, rig):
    """Under every order of taps, backs, stops, reloads and clock jumps no act is offered unguarded."""
    states, hazards, done = explore(data.sequence(card), rig)
    assert hazards == set()
    assert done, "the card can be finished"
    assert states > len(data.sequence(card)["steps"])


def weakened(sequence):
    """Every way to take one guard out of one act of a sequence: (what was taken, the sequence without it)."""
    for place, step in enumerate(sequence["steps"]):
        for guard in sequences.GUARDS.get(step.get("act"), ()):
            mutant = copy.deepcopy(sequence)
            mutant["steps"][place]["needs"].remove(guard)
            yield f"{sequence['id']}: {step['id']} without {guard}", mutant


MUTANTS = [mutant for card in CARDS for mutant in weakened(data.sequence(card))]


@pytest.mark.parametrize("mutant", [mutant for _, mutant in MUTANTS], ids=[name for name, _ in MUTANTS])
def test_a_guard_taken_out_is_refused_before_it_can_be_followed(mutant):
    """A sequence that lacks a guard of an act never starts."""
    with pytest.raises(CalcError) as refused:
        shift.start(mutant, {})
    assert (refused.value.field, refused.value.code) == ("sequence", "guard_missing")


@pytest.mark.parametrize("card", CARDS)
@pytest.mark.parametrize("guard", sorted(GUARDS))
def test_the_exploration_notices_a_guard_that_is_never_asked_again(card, guard):
    """With the first check blinded and a guard taken out of every step, the onlooker catches a bare selector move."""
    mutant = data.sequence(card)
    for step in mutant["steps"]:
        step["needs"] = [need for need in step.get("needs", ()) if need != guard]
    _, hazards, _ = explore(mutant, {}, check=lambda sequence: None)
    assert any("selector" in hazard and guard in hazard for hazard in hazards)


def there_and_back():
    """A made-up card that moves the selector, selects a gear, and moves the selector again."""
    steps = data.by_id(data.load("sequences")["step"])
    kept = [copy.deepcopy(steps[name]) for name in ("idle", "neutral", "brake", "chock_scene", "zero", "centre", "gear", "road")]
    for step in kept:
        if step["id"] in ("centre", "gear", "road"):
            step["needs"] = [*sequences.GUARDS[step["act"]], "wheels_chocked"]
            step["voids"] = []
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
    monkeypatch.setattr(sequences, part, value)
    assert explore(there_and_back(), {})[1], "a machine that forgets motion must be caught"
