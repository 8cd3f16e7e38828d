"""An onlooker who trusts nothing of calc but what was offered and what was answered, and a walk through every state."""
from calc import sequence as sequences
from calc import shift
from calc.errors import CalcError

# What can hurt, and what must have been seen since anything last moved before it is offered. Declared here by hand,
# from the trade (common practice) and the makers' warnings, not read from calc.
HAZARDS = {
    "selector": ("selector moved with the shaft turning", {"transmission_neutral", "speed_zero", "parking_brake", "engine_idle"}),
    "gear": ("gear taken with nothing to hold the wheels", {"parking_brake", "engine_idle"}),
    "engage": ("drive engaged above its speed or in gear", {"engine_idle", "transmission_neutral", "parking_brake"}),
    "throttle": ("throttle raised without interlocks or on still water",
                 {"throttle_ready", "water_moving", "standing_still", "pressure_seen"}),
    "close": ("pump dead-headed", {"water_moving"}),
    "shut": ("line cut without a word, or at speed", {"engine_idle", "crews_told"}),
    "feed": ("supply opened with air in it, or without a word", {"air_bled", "crews_told"}),
    "transfer": ("transfer valve moved above its pressure", {"pressure_low", "crews_told"}),
    "roll": ("rig set rolling with people in the crush zone", {"crush_zone_clear", "engine_idle", "crews_told", "water_moving"}),
    "drain": ("drain opened under pressure", {"pressure_zero", "pump_parted"}),
    "cap": ("cap opened under pressure", {"lines_bled"}),
    "off": ("key off in gear", {"transmission_neutral", "speed_zero"}),
    "override": ("override with the engine able to run, or the rig free",
                 {"engine_off", "key_out", "parking_brake", "transmission_neutral", "selector_centred", "wheels_chocked"}),
    "start": ("engine started on people", {"people_clear", "fit_to_start", "wheels_chocked"}),
    "release": ("brake released in pump", {"engine_idle", "pump_lights_out", "people_clear"}),
}
# What may have changed while nobody looked; of these the onlooker keeps its own account. The rest stays as it was
# left (chocks, a bled line, what a lamp meant), and is taken from the card.
FLEETING = {
    "transmission_neutral", "speed_zero", "parking_brake", "engine_idle", "water_moving", "standing_still", "people_clear",
    "crush_zone_clear", "pressure_low", "pressure_zero", "engine_off", "key_out",
}
# What is over once an act may have been done.
MOTION = {
    "gear": {"transmission_neutral", "speed_zero"},
    "throttle": {"engine_idle", "speed_zero", "pressure_low"},
    "roll": {"engine_idle", "transmission_neutral", "speed_zero", "standing_still", "parking_brake", "pressure_low"},
    "release": {"parking_brake", "speed_zero"},
    "shut": {"water_moving"},
    "feed": {"pressure_low"},
    "start": {"engine_off", "key_out"},
}
LIMIT_S = 45  # no pump is primed longer in one go (an apparatus-service firm's description of the annual test)


def proofs(step, answer):
    """What a person has seen who confirmed a step with an answer."""
    chosen = [each for each in step.get("answers", ()) if each["id"] == answer]
    return set(step.get("proves", ())).union(*(each.get("proves", ()) for each in chosen))


class Watcher:
    """Keeps its own account of what a person has truly seen, and says what is wrong with an offer."""

    def __init__(self, sequence):
        self.steps = {step["id"]: step for step in sequence["steps"]}

    def after(self, seen, event, before, offered):
        """What was seen, after an event."""
        seen = set(seen)
        acted = self.steps.get(before["step"])
        if event["kind"] == "seen":
            seen |= FLEETING & proofs(acted, event.get("answer"))
        if event["kind"] in ("danger", "back", "resume", "not_seen", "start_over"):
            seen -= FLEETING
        for step in (acted, self.steps.get(offered["step"])):
            if step and not (step is acted and event["kind"] != "seen"):
                seen -= MOTION.get(step.get("act"), set())
        return frozenset(seen)

    def hazards(self, seen, state):
        """What is wrong with offering this, as (act, guard)."""
        offered = state["offer"]
        step = self.steps.get(offered["step"])
        if step is None:
            return []
        wanted = HAZARDS.get(step.get("act"), ("", set()))[1]
        # what an act itself ends, or what lasts, is the card's to say; the rest must have been seen
        unseen = (wanted & FLEETING) - MOTION.get(step.get("act"), set()) - seen
        found = [(step["act"], guard) for guard in unseen | wanted - set(state["facts"])]
        if step["kind"] == "limit" and state["hold"] and state["hold"]["held_s"] >= LIMIT_S:
            found.append(("prime", "time"))
        return found


def events(state):
    """Every event worth trying: each button of the card, wrong steps, wrong answers, and clocks that jump."""
    offered = state["offer"]
    last_s = state["hold"]["last_s"] if state["hold"] else 0
    steps = [step["id"] for step in state["sequence"]["steps"]]
    place = steps.index(offered["step"]) if offered["step"] else 0
    tried = [{"kind": kind, "at_s": last_s} for kind in ("danger", "back", "look_again", "start_over", "resume")]
    tried += [{"kind": "tick", "at_s": last_s + jump} for jump in ((0.5, 20, -3600, 86400) if state["hold"] else (0.5,))]
    tried += [{"kind": kind, "step": offered["step"], "at_s": last_s} for kind in ("seen", "not_seen", "hold")]
    tried += [{"kind": "seen", "step": step, "at_s": last_s} for step in (steps[place - 1], steps[(place + 1) % len(steps)])]
    tried += [
        {"kind": "seen", "step": offered["step"], "answer": answer, "at_s": last_s}
        for answer in ["made_up"] + offered["answers"]
    ]
    return tried


def shape(state, seen):
    """A state without its clock and its record: two states of one shape behave alike."""
    held = state["hold"] and round(min(state["hold"]["held_s"], 60), 1)
    if held is not None and state["offer"]["kind"] == "hold":
        held = min(held, 3)
    stopped = state["stopped"] and state["stopped"]["reason"]  # at which step, it only tells
    return state["repeats"], state["position"], state["status"], frozenset(state["facts"]), held, stopped, seen, tuple(sorted(state["rig"].items()))


def explore(sequence, rig, check=sequences.check, until=None, most=200000):
    """Walk every reachable shape of state: how many, the hazards met, and whether the end was.

    until: a hazard at which to stop looking
    """
    watcher = Watcher(sequence)
    real_check, sequences.check = sequences.check, check
    try:
        first = shift.start(sequence, rig)
    finally:
        sequences.check = real_check
    nothing = frozenset()
    met = {shape(first, nothing)}
    pending = [(first, nothing)]
    hazards = set(watcher.hazards(nothing, first))
    done = False
    while pending and len(met) < most and until not in hazards:
        state, seen = pending.pop()
        for event in events(state):
            try:
                after = shift.advance(state, event)
            except CalcError:
                continue
            seen_after = watcher.after(seen, event, state["offer"], after["offer"])
            hazards.update(watcher.hazards(seen_after, after))
            done = done or after["status"] == "done"
            known = shape(after, seen_after)
            if known not in met:
                met.add(known)
                pending.append((after, seen_after))
    assert until in hazards or not pending, "the exploration did not end"
    return len(met), hazards, done
