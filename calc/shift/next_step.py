"""What comes next on a shift card: which steps are for this rig, which is wanted, and which must be seen first."""
from calc.base.errors import CalcError
from calc.shift import laws


def is_needless(step, state):
    """Whether a step is not for this rig, asks what is known of it, or was made needless by what was seen.

    step: one step of the state's sequence
    state: see calc.shift.card

    Returns a bool. Raises nothing.
    """
    if "only_if" in step and not laws.fits(step, state["rig"]) or "asks" in step and is_known(step, state):
        return True
    needless = step.get("skip_if")
    return bool(needless) and all(fact in state["facts"] for fact in needless)


def is_known(step, state):
    """Whether a step asks what was known of the rig before the card began.

    step: one step of the state's sequence
    state: see calc.shift.card

    Returns a bool. Raises nothing.
    """
    question = step.get("asks")
    if not question or state["rig"][question] == laws.UNKNOWN:
        return False
    return all(record["step"] != step["id"] for record in state["confirmed"])


def may_come(step, state):
    """Whether a step may be one for this rig, as far as it is known.

    step: one step of the state's sequence
    state: see calc.shift.card

    Returns a bool. Raises nothing.
    """
    if "only_if" in step and laws.is_excluded(step, state["rig"]):
        return False
    return "asks" not in step or not is_known(step, state)


def count_to_come(state):
    """How many steps are to come, the wanted one among them.

    state: see calc.shift.card

    Returns (sure, about): `sure` is None while it hangs on what nobody has said yet; `about` counts then the steps of
    a rig and a run that give the first answer to each question.
    Raises nothing.
    """
    count, is_sure, asked, provable, usual, ended = 0, True, [], [], [], []
    for step in state["sequence"]["steps"][state["position"]:]:
        if not may_come(step, state):
            continue
        open_questions = [question for question, known in step.get("only_if", {}).items()
                          if question in asked or state["rig"].get(question) not in known]
        if open_questions:
            is_sure = False
            if any(state["sequence"]["rig"][question][0] not in step["only_if"][question] for question in open_questions):
                continue
        lacking = [fact for fact in step.get("skip_if", ()) if fact not in state["facts"]]
        if "skip_if" in step and all(fact in provable for fact in lacking):
            if lacking or any(fact in ended for fact in step["skip_if"]):
                is_sure = False
            if all(fact in usual for fact in lacking):
                continue
        count += 1
        if "asks" in step:
            asked.append(step["asks"])
        provable.extend(laws.every_proof(step))
        usual.extend(step.get("proves", ()))
        usual.extend(step["answers"][0].get("proves", ()) if step.get("answers") else ())
        ended.extend(laws.ended_by(step))
    return (count if is_sure else None), count


def limit_s(step, rig):
    """Seconds of a limit for this rig; for a pump of unknown size, those that the step names for it.

    step: a step of the kind "limit"
    rig: answers of the rig by question

    Returns a number. Raises nothing. Source: common practice.
    """
    return step["limit_s"].get(rig.get("pump_size"), step["limit_s"][laws.UNKNOWN])


def missing(step, facts):
    """The facts that a step needs and that do not stand.

    step: one step of a sequence
    facts: those that stand

    Returns a list of facts. Raises nothing.
    """
    return [need for need in step.get("needs", ()) if need not in facts]


def to_see(wanted, offered, facts):
    """What must be seen before a step that is wanted: first what the step that is offered in its place proves.

    wanted, offered: steps of a sequence; the same one where nothing is missing
    facts: those that stand

    Returns a list of facts. Raises nothing.
    """
    lacking = missing(wanted, facts)
    if offered is wanted:
        return lacking
    return [fact for fact in offered.get("proves", ()) if fact not in lacking] + lacking


def next_proof(steps, position, facts, rig):
    """The step to offer: the wanted one, or the first earlier one that proves a guard it lacks.

    steps: those of the sequence
    position: place of the wanted one
    facts: those that stand
    rig: answers of the rig by question

    Returns a step. Raises CalcError naming sequence.
    """
    lacking = missing(steps[position], facts)
    while lacking:
        position = min(_prover(steps, position, need, rig) for need in lacking)
        lacking = missing(steps[position], facts)
    return steps[position]


def _prover(steps, before, need, rig):
    """Place of the last step before another that can prove a fact on this rig."""
    for place in range(before - 1, -1, -1):
        if need in laws.every_proof(steps[place]) and laws.fits(steps[place], rig):
            return place
    raise CalcError("sequence", "unproved_need", need=need)


def answers(step, rig):
    """The answers of an ask that this rig can give.

    step: one step of a sequence
    rig: answers of the rig by question

    Returns a list of answers. Raises nothing.
    """
    return [answer for answer in step.get("answers", ()) if laws.fits(answer, rig)]
