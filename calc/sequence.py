"""A shift sequence as plain data, and the laws of the trade that every one of them must obey.

A sequence is `{"id", "anchor", "steps": [STEP, ...], "rig": {question: [answers]}}`; `anchor` is the step from
which the shift is repeated after a stop. A STEP holds
    id        its name
    kind      "confirm" (seen or not), "hold" (a timed pause, then seen or not), "ask" (one of `answers`)
    act       "selector", "gear", "throttle" or "release" where the step moves something; else absent
    needs     facts that must stand before it is offered
    proves    facts that stand once it is seen
    voids     facts that it ends
    skip_if   facts that, standing together, make it needless
    hold_s    length of a hold, seconds
    answers   of an ask: `{"id", "proves", "only_if": {question: [rig answers]}}`
"""
from calc.errors import CalcError, check_within

# What a person must have seen, since anything last moved, before each act.
GUARDS = {
    "selector": ("engine_idle", "transmission_neutral", "parking_brake", "speed_zero"),
    "gear": ("engine_idle", "parking_brake"),
    "throttle": ("throttle_ready", "water_moving", "standing_still", "pressure_seen"),
    "release": ("engine_idle", "pump_lights_out", "people_clear"),
}
# What each act ends.
ENDS = {
    "selector": (),
    "gear": ("transmission_neutral", "speed_zero"),
    "throttle": ("engine_idle", "speed_zero"),
    "release": ("parking_brake", "speed_zero"),
}
# What may have changed while nobody was looking.
PERISHABLE = ("engine_idle", "transmission_neutral", "parking_brake", "speed_zero", "standing_still")
SHORTEST_HOLD_S = 2
LONGEST_HOLD_S = 60


def check(sequence):
    """Refuse a sequence that could offer an act with a guard missing, or that cannot be followed.

    sequence: as the module says

    Raises CalcError with field "sequence", a code, and the step.
    Source: common practice (neutral, zero speed, brake set and idle before a selector is moved).
    """
    if not isinstance(sequence, dict) or not isinstance(sequence.get("steps"), list) or not sequence["steps"]:
        raise CalcError("sequence", "damaged")
    seen = []
    provable = set()
    for step in sequence["steps"]:
        _check_step(step, seen, provable)
        seen.append(step["id"])
        provable.update(every_proof(step))
    if sequence.get("anchor") not in seen:
        raise CalcError("sequence", "no_anchor")


def _check_step(step, seen, provable):
    name = step.get("id") if isinstance(step, dict) else None
    if not isinstance(name, str) or name in seen:
        raise CalcError("sequence", "damaged", step=str(name))
    kind = step.get("kind")
    act = step.get("act")
    if kind not in ("confirm", "hold", "ask") or not (act is None or act in GUARDS):
        raise CalcError("sequence", "damaged", step=name)
    if kind == "hold":
        check_within("hold_s", step.get("hold_s"), SHORTEST_HOLD_S, LONGEST_HOLD_S)
    if kind == "ask" and not step.get("answers"):
        raise CalcError("sequence", "no_answers", step=name)
    for guard in GUARDS.get(act, ()):
        if guard not in step.get("needs", ()):
            raise CalcError("sequence", "guard_missing", step=name, guard=guard)
    for need in step.get("needs", ()):
        if need not in provable:
            raise CalcError("sequence", "unproved_need", step=name, need=need)


def every_proof(step):
    """Every fact a step can prove, by any of its answers.

    step: one step of a sequence

    Returns a list of facts. Raises nothing. Source: common practice.
    """
    facts = list(step.get("proves", ()))
    for answer in step.get("answers", ()):
        facts.extend(answer.get("proves", ()))
    return facts


def ended_by(step):
    """Every fact that a step ends once it is done: its own and those its act always ends.

    step: one step of a sequence

    Returns a list of facts. Raises nothing. Source: common practice.
    """
    return list(step.get("voids", ())) + list(ENDS.get(step.get("act"), ()))
