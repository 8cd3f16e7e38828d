"""A shift sequence as plain data, and the laws of the trade that every one of them must obey.

A sequence is `{"id", "anchor", "steps": [STEP, ...], "rig": {question: [answers]}, "fits": {question: [answers]}}`;
`anchor` is the step from which it is repeated after a stop, `fits` the rigs it is for. A STEP holds
    id        its name
    kind      "confirm" (seen or not), "hold" (a timed pause, then seen or not), "limit" (a timed act that must be
              over before its time), "ask" (one of `answers`)
    act       one of GUARDS where the step moves something; else absent
    only_if   `{question: [answers]}`: the rigs it is a step for; "unknown" must be named to be meant
    asks      of an ask: the question about the rig that its answers settle
    needs     facts that must stand before it is offered
    proves    facts that stand once it is seen
    voids     facts that it ends
    order     the hazard whose order answers a sign that does not come (data/orders.toml); else the step's own words do
    reports   hazards that this step may meet beside: "grinding", "dead_throttle"
    repeat    true where a sign that does not come calls for the whole shift again, once (see calc.shift.card)
    skip_if   facts that, standing together, make it needless
    hold_s    length of a hold, seconds
    limit_s   of a limit: `{answer of pump_size or "unknown": seconds}`
    answers   of an ask: `{"id", "proves", "only_if": {question: [rig answers]}}`
"""
from calc.base.errors import CalcError, check_within

# What a person must have seen, since anything last moved, before each act.
GUARDS = {
    "start": ("people_clear", "fit_to_start", "wheels_chocked"),
    "selector": ("engine_idle", "transmission_neutral", "parking_brake", "speed_zero"),
    "to_road": ("engine_idle", "transmission_neutral", "parking_brake", "speed_zero",
                "source_shut", "intakes_closed", "bleeders_open", "pressure_zero"),
    "gear": ("engine_idle", "parking_brake", "foot_on_brake"),
    "engage": ("engine_idle", "transmission_neutral", "parking_brake"),  # a PTO or a front clutch, in
    # and out: while it is in, a pump at idle makes pressure from its tank, so no gauge can stand at zero before
    "disengage": ("engine_idle", "transmission_neutral", "parking_brake", "source_shut", "intakes_closed", "bleeders_open"),
    "throttle": ("throttle_ready", "water_moving", "standing_still", "pressure_seen", "wheels_chocked"),
    "charge": ("crews_told", "water_moving", "pressure_seen", "standing_still"),  # a line
    "close": ("water_moving",),  # a valve, with another way for the water left open
    "shut": ("engine_idle", "crews_told"),  # the last way for the water
    "feed": ("crews_told", "air_bled"),  # water under pressure into the pump
    "prime": (),
    "transfer": ("crews_told", "pressure_low"),  # a two-stage pump from one mode to the other
    "off": ("transmission_neutral", "speed_zero"),  # the key
    "roll": ("engine_idle", "crews_told", "crush_zone_clear", "water_moving"),
    "drain": ("pump_parted", "pressure_zero"),
    "cap": ("lines_bled",),
    "override": ("engine_off", "key_out", "parking_brake", "transmission_neutral", "selector_centred", "wheels_chocked"),
    "release": ("engine_idle", "pump_lights_out", "people_clear"),
}
# What each act ends.
ENDS = {
    "start": ("engine_off", "key_out"),
    "gear": ("transmission_neutral", "speed_zero", "pressure_zero"),
    "engage": ("pressure_zero",),
    "throttle": ("engine_idle", "speed_zero", "pressure_low", "pressure_zero"),
    "shut": ("water_moving",),
    "feed": ("pressure_low", "pressure_zero", "source_shut", "intakes_closed", "bleeders_open"),
    "transfer": ("pressure_low",),
    "roll": ("engine_idle", "parking_brake", "transmission_neutral", "speed_zero", "standing_still", "pressure_low"),
    "release": ("parking_brake", "speed_zero"),
}
# What may have changed while nobody was looking.
PERISHABLE = (
    "engine_idle", "transmission_neutral", "parking_brake", "speed_zero", "standing_still", "water_moving", "people_clear",
    "crush_zone_clear", "foot_on_brake", "range_in", "pressure_low", "pressure_zero", "engine_off", "key_out",
)
SHORTEST_HOLD_S = 2
LONGEST_HOLD_S = 60
# The most steps that may pass until water moves, once the pump turns, or once the last way was shut. A pump at idle warms its
# still water slowly, and while it is primed every way must be shut: common practice.
STILL_STEPS = {"pump_turning": 10, "shut": 3}
UNKNOWN = "unknown"


def check(sequence, rig):
    """Refuse a sequence that could offer an act with a guard missing, or that cannot be followed.

    sequence: as the module says
    rig: answers of the rig by question, "unknown" where one is not known; every rig it may prove to be is checked

    Raises CalcError with field "sequence", a code, and the step.
    Source: common practice (neutral, zero speed, brake set and idle before a selector is moved).
    """
    if not isinstance(sequence, dict) or not isinstance(sequence.get("steps"), list) or not sequence["steps"]:
        raise CalcError("sequence", "damaged")
    names = []
    for step in sequence["steps"]:
        _check_form(step, names)
        names.append(step["id"])
    for steps in variants(sequence, rig):
        _check_order(steps)
        if sequence.get("anchor") not in [step["id"] for step in steps]:
            raise CalcError("sequence", "no_anchor")


def variants(sequence, rig):
    """The steps of a sequence, in order, for each rig that a rig may prove to be.

    sequence: as the module says
    rig: answers of the rig by question, "unknown" where one is not known

    Returns a list of lists of steps. Raises CalcError with field "sequence" where a step hangs on a question that
    nobody has asked by then.
    """
    ways = []
    pending = [(rig, 0, [])]
    while pending:
        rig, place, steps = pending.pop()
        while place < len(sequence["steps"]):
            step = sequence["steps"][place]
            place += 1
            if is_excluded(step, rig):
                continue
            if not fits(step, rig):
                raise CalcError("sequence", "unasked", step=step["id"])
            steps.append(step)
            question = step.get("asks")
            if question and rig[question] == UNKNOWN:
                for answer in step["answers"]:
                    if is_for(sequence, {question: answer["id"]}):
                        answered = dict(rig)
                        answered[question] = answer["id"]
                        pending.append((answered, place, list(steps)))
                break
        else:
            ways.append(steps)
    return ways


def fits(step, rig):
    """Whether a step, or an answer, is one for this rig, as far as the rig is known.

    step: one step or answer of a sequence
    rig: answers of the rig by question

    Returns a bool. Raises nothing.
    """
    return all(rig.get(question) in known for question, known in step.get("only_if", {}).items())


def is_for(sequence, rig):
    """Whether nothing that is known of a rig speaks against a sequence.

    sequence: as the module says
    rig: answers of the rig by question

    Returns a bool. Raises nothing.
    """
    return not is_excluded({"only_if": sequence.get("fits", {})}, rig)


def is_excluded(step, rig):
    """Whether what is known of a rig says that a step is not for it, whatever else it may prove to be.

    step: one step of a sequence
    rig: answers of the rig by question

    Returns a bool. Raises nothing.
    """
    return any(
        rig.get(question, UNKNOWN) != UNKNOWN and rig.get(question) not in known
        for question, known in step.get("only_if", {}).items()
    )


def _check_form(step, names):
    name = step.get("id") if isinstance(step, dict) else None
    if not isinstance(name, str) or name in names:
        raise CalcError("sequence", "damaged", step=str(name))
    kind = step.get("kind")
    act = step.get("act")
    if kind not in ("confirm", "hold", "limit", "ask") or not (act is None or act in GUARDS):
        raise CalcError("sequence", "damaged", step=name)
    if kind == "hold":
        check_within("hold_s", step.get("hold_s"), SHORTEST_HOLD_S, LONGEST_HOLD_S)
    if kind == "limit":
        limits = step.get("limit_s")
        if not isinstance(limits, dict) or UNKNOWN not in limits:
            raise CalcError("sequence", "no_limit", step=name)
        for limit_s in limits.values():
            check_within("limit_s", limit_s, SHORTEST_HOLD_S, LONGEST_HOLD_S)
    if act == "prime" and kind != "limit":
        raise CalcError("sequence", "no_limit", step=name)
    if kind == "ask" and not step.get("answers"):
        raise CalcError("sequence", "no_answers", step=name)
    for guard in GUARDS.get(act, ()):
        if guard not in step.get("needs", ()):
            raise CalcError("sequence", "guard_missing", step=name, guard=guard)


def _check_order(steps):
    """What a step needs, an earlier one can prove; and water that stands in a turning pump moves again soon."""
    provable = set()
    still_left = None
    for step in steps:
        for need in step.get("needs", ()):
            if need not in provable:
                raise CalcError("sequence", "unproved_need", step=step["id"], need=need)
        proofs = every_proof(step)
        provable.update(proofs)
        if still_left is not None:
            still_left -= 1
            if "water_moving" in proofs or "pump_parted" in proofs:
                still_left = None
            elif still_left == 0:
                raise CalcError("sequence", "still_water", step=step["id"])
        elif "pump_turning" in proofs and "water_moving" not in provable:
            still_left = STILL_STEPS["pump_turning"]
        if step.get("act") == "shut":
            still_left = STILL_STEPS["shut"]
    if still_left is not None:
        raise CalcError("sequence", "still_water", step=steps[-1]["id"])


def every_proof(step):
    """Every fact a step can prove, by any of its answers.

    step: one step of a sequence

    Returns a list of facts. Raises nothing.
    """
    facts = list(step.get("proves", ()))
    for answer in step.get("answers", ()):
        facts.extend(answer.get("proves", ()))
    return facts


def ended_by(step):
    """Every fact that a step ends once it is done: its own and those its act always ends.

    step: one step of a sequence

    Returns a list of facts. Raises nothing.
    """
    return list(step.get("voids", ())) + list(ENDS.get(step.get("act"), ()))
