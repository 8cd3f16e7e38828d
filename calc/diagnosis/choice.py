"""The safe, cheap look that best tells the causes that are left apart: one sign by itself, or a question that settles several at once.

A QUESTION is `{"id", "answers": [{"id", "seen": [signs]}]}`. One of its answers alone can be true: its signs are seen with it, and
all other signs of the question are not; an answer without signs is that nothing is out of the ordinary. All signs of a question are
looked for in the same place, by the same person, with the engine in the same state, and each belongs to one question at most.
Knowledge without `questions` asks for each sign by itself. Signs and causes: see calc.diagnosis.fault.
"""
from calc.diagnosis import likelihood, ways

LEADS = 0.5  # from this share on a cause is followed until all of its signs are known
ALIKE = 1e-9  # bits; the last digits of a logarithm differ between the two Pythons
EFFORT_COST, DANGER_COST = 0.06, 0.15  # bits, for each step of effort and of danger
ENGINES = ("pumping", "idle", "off", "secured")  # secured: off, and nobody can start it


def of_rig(questions, known):
    """The questions whose signs a rig can show, with the answers that it can give.

    questions: see the module
    known: ids of the signs that the rig can show

    Raises nothing.
    """
    possible = []
    for question in questions:
        answers = [answer for answer in question["answers"] if all(sign in known for sign in answer["seen"])]
        if len(answers) > 1 and any(answer["seen"] for answer in answers):
            possible.append({"id": question["id"], "answers": answers})
    return possible


def best(knowledge, signs, role, engine, left, other):
    """The best look that may be made now, or what stands in the way of all others.

    knowledge, signs, role, engine: see calc.diagnosis.fault.next_check
    left: causes that nothing speaks against, as calc.diagnosis.fault.rank returns them
    other: the share of what the knowledge does not list

    Returns {"sign": id or None, "question": id or None, "answers": [ids], "engine": [states wanted], "technician": whether one is
    wanted}. `sign` is the first that the look settles. Raises nothing.
    Source: information gained, with effort and danger as its costs (from memory).
    """
    leader = left[0]["open"] if left[0]["share"] >= LEADS else []
    by_id = {cause["id"]: cause for cause in knowledge["causes"]}
    causes = [by_id[cause["id"]] for cause in left]
    shares = [cause["share"] for cause in left] + [other]
    named = {sign for cause in causes for sign in cause["shows"] + cause.get("brings", [])}
    chances = [likelihood.chances(cause) for cause in causes]
    first, wanted, technician = None, [], False
    barred = ways.barred(knowledge, signs)
    for look in _looks(knowledge, signs, named, barred):
        row = look["rows"][0]
        if row["role"] == "technician" and role != "technician":
            technician = True
        elif not may_look(row, role, engine):
            wanted.extend(["secured"] if row.get("under") else [state for state in row["engine"] if state != "pumping"])
        else:
            worth = _gain_bits(look, shares, chances) - EFFORT_COST * row["effort"] - DANGER_COST * row["danger"]
            leads = any(sign["id"] in leader for sign in look["rows"])
            if first is None or leads > first[0] or (leads == first[0] and worth > first[1] + ALIKE):
                first = (leads, worth, look)
    chosen = first[2] if first else {"rows": [{"id": None}], "question": None, "answers": []}
    return {
        "sign": chosen["rows"][0]["id"], "question": chosen["question"], "answers": [answer["id"] for answer in chosen["answers"]],
        "engine": [state for state in ENGINES if state in wanted], "technician": technician,
    }


def beside(knowledge, signs, role, engine, cause, other):
    """The look at what a cause should bring along, once all that it shows but cures is seen, and before a cure is tried; None where there is none.

    knowledge, signs, role, engine: see calc.diagnosis.fault.next_check
    cause: as calc.diagnosis.fault.rank returns it
    other: the share of what the knowledge does not list

    Nothing that can hurt is looked at to be surer. Returns as best does. Raises nothing.
    Source: two proofs are better than one (common practice).
    """
    rows = {sign["id"]: sign for sign in knowledge["signs"]}
    if cause["against"] or any(rows[sign].get("cures") for sign in cause["for"]) or not all(rows[sign].get("cures") for sign in cause["open"]):
        return None
    besides = dict(signs)
    for cure in cause["open"]:
        besides[cure] = "unknown"  # it is not to be chosen yet
    look = best(knowledge, besides, role, engine, [cause], other)
    return look if look["sign"] and not rows[look["sign"]]["danger"] else None


def _looks(knowledge, signs, named, barred):
    """What may be looked at, in the order of the signs: {"rows": [signs it settles], "question": id or None, "answers": [...]}."""
    rows = {sign["id"]: sign for sign in knowledge["signs"]}
    of_sign, settled = {}, set()
    for question in knowledge.get("questions", ()):
        members = {sign for answer in question["answers"] for sign in answer["seen"]}
        said = {signs[sign] for sign in members if sign in signs}
        if "seen" in said or "unknown" in said:
            settled.update(members)  # one is seen, so the others are not; or it was asked, and nobody can tell
            continue
        answers = [answer for answer in question["answers"] if not any(sign in signs or sign in barred for sign in answer["seen"])]
        if len(answers) > 1:
            of_sign.update({sign: (question["id"], answers) for sign in members})
    looks, asked = [], set()
    for sign in knowledge["signs"]:
        name = sign["id"]
        if name in signs or name in barred or name in settled or name not in named or not is_askable(sign, signs):
            continue
        question, answers = of_sign.get(name, (None, ()))
        if question is None:
            looks.append({"rows": [sign], "question": None, "answers": []})
        elif question not in asked:
            asked.add(question)
            others = [rows[other] for answer in answers for other in answer["seen"] if other != name]
            looks.append({"rows": [sign] + others, "question": question, "answers": answers})
    return looks


def _gain_bits(look, shares, chances):
    """Bits that a look tells of the causes with these shares; the last share is of what the knowledge does not list."""
    if look["question"] is None:
        return likelihood.gain_bits(shares, [likelihood.chance(look["rows"][0], named) for named in chances] + [likelihood.UNLISTED])
    odds = []
    for named in chances + [None]:
        seen = {row["id"]: likelihood.UNLISTED if named is None else likelihood.chance(row, named) for row in look["rows"]}
        odds.append([likelihood.of_answer(seen, answer["seen"]) for answer in look["answers"]])
    return likelihood.answer_gain_bits(shares, odds)


def is_askable(sign, signs):
    """Whether a sign can be looked for at all, and makes sense after what was seen.

    sign: one of the knowledge's
    signs: what is seen, not seen and unknown

    Raises nothing.
    """
    if any(signs.get(ending) == "seen" for ending in sign.get("unless", ())):
        return False
    return bool(sign["engine"]) and ("after" not in sign or any(signs.get(before) == "seen" for before in sign["after"]))


def may_look(sign, role, engine):
    """Whether a sign may be looked for by this person with the engine as it is.

    sign: one of the knowledge's
    role, engine: see calc.diagnosis.fault.next_check

    Raises nothing.
    """
    if sign["role"] == "technician" and role != "technician":
        return False
    if sign.get("under"):
        return engine == "secured"
    return engine in sign["engine"] or (engine == "secured" and "off" in sign["engine"])


def asking(knowledge, sign, barred):
    """What asks for a sign: (sign, question or None, its answers).

    knowledge: see calc.diagnosis.fault
    sign: id of one of its signs
    barred: ids of signs that no answer may say, see calc.diagnosis.ways.barred

    Raises nothing.
    """
    for question in knowledge.get("questions", ()):
        names = [name for answer in question["answers"] for name in answer["seen"]]
        if sign in names:
            return sign, question["id"], [answer["id"] for answer in question["answers"] if not any(name in barred for name in answer["seen"])]
    return sign, None, []
