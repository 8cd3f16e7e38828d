"""An onlooker who trusts nothing of calc but what was offered and what was answered, and a walk through every state."""
from calc.base.errors import CalcError
from calc.shift import card, laws, next_step
from site_src.content import data

# What can hurt, and what must have been seen since anything last moved before it is offered. Declared here by hand,
# from the trade (common practice) and the makers' warnings, not read from calc.
HAZARDS = {
    "selector": ("selector moved with the shaft turning", {"transmission_neutral", "speed_zero", "parking_brake", "engine_idle"}),
    "to_road": ("selector moved to road with water that turns the shaft",
                {"transmission_neutral", "speed_zero", "parking_brake", "engine_idle",
                 "source_shut", "intakes_closed", "bleeders_open", "pressure_zero"}),
    "gear": ("gear taken with nothing to hold the wheels", {"parking_brake", "engine_idle", "foot_on_brake"}),
    "engage": ("drive engaged above its speed or in gear", {"engine_idle", "transmission_neutral", "parking_brake"}),
    "disengage": ("drive taken out in gear, or with a source that turns the pump",
                  {"engine_idle", "transmission_neutral", "parking_brake", "source_shut", "intakes_closed", "bleeders_open"}),
    "charge": ("line charged without a word, or from a pump that holds no water",
               {"crews_told", "water_moving", "pressure_seen", "standing_still"}),
    "throttle": ("throttle raised without interlocks or on still water",
                 {"throttle_ready", "water_moving", "standing_still", "pressure_seen", "wheels_chocked"}),
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
    "crush_zone_clear", "foot_on_brake", "range_in", "pressure_low", "pressure_zero", "engine_off", "key_out",
}
# What is over once an act may have been done.
MOTION = {
    "gear": {"transmission_neutral", "speed_zero", "pressure_zero"},
    "engage": {"pressure_zero"},
    "throttle": {"engine_idle", "speed_zero", "pressure_low", "pressure_zero"},
    "roll": {"engine_idle", "transmission_neutral", "speed_zero", "standing_still", "parking_brake", "pressure_low"},
    "release": {"parking_brake", "speed_zero"},
    "shut": {"water_moving"},
    "feed": {"pressure_low", "pressure_zero"},
    "start": {"engine_off", "key_out"},
}
# What stays where a person put it, and is asked for again once the card was out of sight for over twenty minutes.
SLOW = {
    "wheels_chocked", "crews_told", "source_shut", "intakes_closed", "bleeders_open", "lines_bled", "air_bled", "pressure_seen",
    "throttle_ready", "pump_lights_out",
}
AWAY_S = (0, 3, 21 * 60, -60, 121 * 60)  # in sight again at once, a glance, long, by a clock that was set back, very long
ASK_S, LOST_S = 20 * 60, 120 * 60
STOPPING = ("danger", "back", "resume", "not_seen", "report", "not_short", "start_over", "begin_again", "released", "mistouch")
LIMIT_S = 45  # no pump is primed longer in one go (an apparatus-service firm's description of the annual test)


def proofs(step, answer):
    """What a person has seen who confirmed a step with an answer."""
    chosen = [each for each in step.get("answers", ()) if each["id"] == answer]
    return set(step.get("proves", ())).union(*(each.get("proves", ()) for each in chosen))


class Watcher:
    """Keeps its own account of what a person has truly seen, and says what is wrong with an offer."""

    def __init__(self, sequence):
        self.steps = {step["id"]: step for step in sequence["steps"]}
        self.is_driven = any(step.get("act") == "roll" for step in sequence["steps"])  # in gear to move, with a driver in the seat

    def after(self, seen, event, before, offered):
        """What was seen, after an event; with it what else an onlooker remembers: `failed` and `out` of a shift, `old` and
        `lost` of a card that was out of sight for long and not taken up since, `in gear` of a rig with a range in."""
        seen = set(seen)
        acted = self.steps.get(before["step"])
        kind = event["kind"]
        if kind == "seen":
            proved = proofs(acted, event.get("answer"))
            seen |= FLEETING & proved
            seen = seen - {"in gear"} if "transmission_neutral" in proved else seen | {"in gear"} if acted.get("act") == "gear" else seen
        if kind in STOPPING:
            seen -= FLEETING
        if kind in ("seen", "go_on", "danger", "begin_again", "released"):
            seen -= {"old", "lost"}
        if kind == "resume" and not -5 <= event["at_s"] - event["left_s"] <= ASK_S:
            seen.add("lost" if event["at_s"] - event["left_s"] > LOST_S else "old")
        if kind == "report" or kind == "not_seen" and acted.get("repeat"):
            seen.add("out" if "failed" in seen else "failed")
        if kind == "danger" and before["step"] and "out" not in seen:
            seen.add("touched")  # out of service as well, until it is taken back
        elif kind == "not_short" or kind == "danger" and "touched" not in seen:
            seen = seen - {"touched"} | {"out"}
        if kind == "mistouch" and "touched" in seen:
            seen.remove("touched")
        if kind == "released" or kind == "begin_again" and before["was_done"]:
            seen -= {"failed", "out", "touched"}
        for step in (acted, self.steps.get(offered["step"])):
            if step and not (step is acted and event["kind"] != "seen"):
                seen -= MOTION.get(step.get("act"), set())
        return frozenset(seen)

    def hazards(self, seen, state):
        """What is wrong with offering this, as (act, guard)."""
        offered = state["offer"]
        step = self.steps.get(offered["step"])
        if seen & {"out", "touched"} and (step or any(offered[way] for way in ("can_start_over", "can_look_again", "can_begin_again"))):
            return [("out of service", "third try")]
        if seen & {"old", "lost"} and SLOW & set(state["facts"]) and state["status"] == "running":
            return [("resume", "slow")]
        if step is None:
            return []
        if self.is_driven and "in gear" in seen and offered["again"] and data.steps()[step["id"]]["place"] != "cab":
            return [("gear", "seat")]  # the card itself sends the driver away
        if state["confirmed"] and seen & {"old", "lost"}:
            return [("resume", "old")]
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
    beat_s = 5 if offered["kind"] == "limit" else 0.5  # a limit counts whatever passed
    tried = [{"kind": kind, "at_s": last_s} for kind in ("danger", "mistouch", "back", "look_again", "start_over", "not_short", "go_on", "begin_again", "released")]
    tried += [{"kind": "resume", "at_s": last_s, "left_s": last_s - away_s} for away_s in AWAY_S]
    tried += [{"kind": "report", "step": offered["step"], "hazard": hazard, "at_s": last_s} for hazard in ["made_up"] + offered["reports"]]
    tried += [{"kind": "tick", "at_s": last_s + jump} for jump in ((beat_s, 20, -3600, 86400) if state["hold"] else (beat_s,))]
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
        held = min(held, 5)
    stopped = state["stopped"] and (state["stopped"]["reason"], state["stopped"].get("away"))  # at which step, it only tells
    left = state["left_s"] is not None, state["offer"]["can_say_long"], state["offer"]["can_take_back"]
    return left, state["repeats"], state["position"], state["status"], frozenset(state["facts"]), held, stopped, seen, tuple(sorted(state["rig"].items()))


def explore(sequence, rig, check=laws.check, until=None, most=200000):
    """Walk every reachable shape of state: how many, the hazards met, and whether the end was.

    until: a hazard at which to stop looking
    """
    counting, next_step.count_to_come = next_step.count_to_come, lambda state: (None, 0)  # how many steps there are is no guard
    try:
        return _walk(sequence, rig, check, until, most)
    finally:
        next_step.count_to_come = counting


def _walk(sequence, rig, check, until, most):
    watcher = Watcher(sequence)
    real_check, laws.check = laws.check, check
    try:
        first = card.start(sequence, rig)
    finally:
        laws.check = real_check
    nothing = frozenset()
    met = {shape(first, nothing)}
    pending = [(first, nothing)]
    hazards = set(watcher.hazards(nothing, first))
    done = False
    while pending and len(met) < most and until not in hazards:
        state, seen = pending.pop()
        for event in events(state):
            try:
                after = card.advance(state, event)
            except CalcError:
                continue
            before = {**state["offer"], "was_done": state["status"] == "done"}
            seen_after = watcher.after(seen, event, before, after["offer"])
            hazards.update(watcher.hazards(seen_after, after))
            done = done or after["status"] == "done"
            known = shape(after, seen_after)
            if known not in met:
                met.add(known)
                pending.append((after, seen_after))
    assert until in hazards or not pending, "the exploration did not end"
    return len(met), hazards, done
