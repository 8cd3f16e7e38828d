"""Diagnosis: which cause fits what is seen and not seen, and the safe, cheap look that best tells the rest apart.

Knowledge is `{"signs": [SIGN], "causes": [CAUSE], "questions": [QUESTION], "excludes": [[sign, sign], ...], "facts": {fact: sign}}`;
for questions, which may be left out, see calc.diagnosis.choice. A SIGN is
something out of the ordinary that can be seen or not:
    id       its name
    engine   states of the engine in which it may be looked for, of "pumping", "idle", "off"; [] for a sign that only
             another part of the site reports
    role     "operator" (cab and panel, no tools) or "technician"
    under    True where the look is under the rig or among its shafts: then only with the engine secured
    effort   1 a glance, 2 a walk or an act, 3 tools
    danger   0 none, 1 water under pressure, heat or a shaft near, 2 more than that
    after    where it is there: asked only once one of these signs is seen
    unless   where it is there: not asked once one of these signs is seen, beside which it has no answer
    either   True where it tells nothing of a cause that does not name it
    alarm    True where it overrides every ranking
    applies  {rig question: [answers]}: the rigs that can show it; where absent, all
    shifts   True where the look moves the shift
    way      "pump" or "road" where it is of a shift to that side only: once one is seen, nothing of the other is looked for
    stops    True where, once it is seen, nothing is looked for with the engine running
A CAUSE is `{"id", "likelihood", "shows": [signs it always shows], "brings": [forks: signs it always brings along, as many others do,
that split the causes and that it needs none of to stand], "may": [signs it can show], "applies"}`. What a person answered is `signs`: {sign: "seen" | "not_seen" | "unknown"}; unknown was asked and not answered.
"""
from calc.base.errors import CalcError
from calc.diagnosis import choice, likelihood, ways

ROLES = ("operator", "technician")
ANSWERS = ("seen", "not_seen", "unknown")
MOST_QUESTIONS = 8
CROSS_CHECKED = 6  # from as many questions on a cause is tried without a look at what it should bring along
SURE = 0.8  # a cause stands only with this share, with all its signs seen and none against it


def for_rig(knowledge, rig):
    """The knowledge with the causes that this rig can have, and the signs that it can show of them.

    knowledge: see the module
    rig: answers known of the rig, such as {"drive": "pto"}; what is absent is unknown and rules nothing out

    Raises nothing.
    """
    def can_be(row):
        return all(not rig.get(question) or rig[question] in known for question, known in row.get("applies", {}).items())

    causes = [cause for cause in knowledge["causes"] if can_be(cause)]
    named = {sign for cause in causes for sign in cause["shows"] + cause.get("brings", []) + cause.get("may", [])}
    signs = [sign for sign in knowledge["signs"] if can_be(sign) and (sign["id"] in named or sign.get("alarm"))]
    return _with(knowledge, signs, causes, choice.of_rig(knowledge.get("questions", ()), {sign["id"] for sign in signs}))


def without_shifts(knowledge):
    """The knowledge with no look left that moves the shift: for a rig out of service, and after teeth ground.

    knowledge: see the module; what such a look would have told counts where it was seen already

    Raises nothing.
    """
    signs = []
    for sign in knowledge["signs"]:
        signs.append(dict(sign))
        if sign.get("shifts"):
            signs[-1]["engine"] = []
    return _with(knowledge, signs, knowledge["causes"], knowledge.get("questions", []))


def entered(knowledge, facts, missing):
    """What a shift card has seen already, as signs that this rig can show.

    knowledge: see the module
    facts: facts the card holds now, see calc.shift.laws
    missing: facts that the step would have proved whose sign did not come

    Raises CalcError naming facts or missing.
    """
    for name, names in (("facts", facts), ("missing", missing)):
        if not isinstance(names, list) or not all(isinstance(fact, str) for fact in names):
            raise CalcError(name, "damaged")
    can_show = _by_id(knowledge["signs"])
    signs = {}
    for answer, names in (("not_seen", facts), ("seen", missing)):
        for fact in names:
            if knowledge["facts"].get(fact) in can_show:
                signs[knowledge["facts"][fact]] = answer
    return signs


def rank(knowledge, signs):
    """Causes from the likeliest down, each with what speaks for it and against it.

    knowledge: see the module
    signs: what is seen, not seen and unknown

    Returns contract `ranking`. Raises CalcError naming signs.
    Source: the likelihood classes, experience of the trade (from memory).
    """
    rows = _checked(knowledge, signs)
    signs = ways.implied(knowledge, signs)
    barred, others = ways.barred(knowledge, signs), ways.of_other(knowledge, signs)
    askable = {name for name in rows if name not in signs and name not in barred and choice.is_askable(rows[name], signs)}
    answered = [(rows[sign], signs[sign]) for sign in signs if signs[sign] != "unknown"]
    alarms = [sign["id"] for sign in knowledge["signs"] if sign.get("alarm") and signs.get(sign["id"]) == "seen"]
    clashes = [pair for pair in knowledge["excludes"] if signs.get(pair[0]) == signs.get(pair[1]) == "seen"]
    ranked = []
    other = total = likelihood.unlisted_weight(answered)
    for place, cause in enumerate(knowledge["causes"]):
        if any(sign in others for sign in cause["shows"]):
            continue  # it is behind a shift to the other side
        weight, against = likelihood.weight(cause, answered)
        total += weight
        ranked.append((-weight, place, {
            "id": cause["id"], "share": weight,
            "for": [sign for sign in cause["shows"] + cause.get("brings", []) + cause.get("may", []) if signs.get(sign) == "seen"],
            "against": against,
            "open": [sign for sign in cause["shows"] if signs.get(sign, "unknown") == "unknown"],
            "unsure": [sign for sign in cause["shows"] if signs.get(sign) == "unknown"],
            "unasked": [sign for sign in cause["shows"] if sign in askable],
        }))
    ranked.sort()  # by place where weights are equal: no sort of the phone keeps their order
    causes = [cause for _, _, cause in ranked]
    for cause in causes:
        cause["share"] /= total
    return {"alarms": alarms, "clashes": clashes, "causes": causes, "other": other / total}


def next_check(knowledge, signs, role, engine, questions):
    """What to look at next, or how the diagnosis ends.

    knowledge: see the module
    signs: what is seen, not seen and unknown
    role: "operator" or "technician"
    engine: how it is now: "pumping", "idle", "off", or "secured" (off, and nobody can start it)
    questions: how many were asked so far, 0 or more

    Returns contract `next_check`. Kinds:
    "check" look for `sign`, or put `question` with those `answers`, which settles that sign and others; "stands" the `cause` shows every one of its signs and nothing else fits, nor is there
    another look to make now at what it should bring along; "danger";
    "contradiction" no cause shows together what was seen; "unlisted" one does, but not what it should show besides;
    and where nothing more can be asked: "engine" the looks left want the engine as `engine` says, "technician" they want
    one, "enough" eight were asked, "maker" nothing is left to look at.
    Raises CalcError naming signs, role, engine or questions. Source: information gained, with effort and danger as its
    costs (from memory).
    """
    return decided(knowledge, signs, rank(knowledge, signs), role, engine, questions)


def decided(knowledge, signs, ranked, role, engine, questions):
    """What next_check returns, of causes that are ranked already.

    knowledge, signs, role, engine, questions: see next_check
    ranked: as rank returns it for them

    Raises CalcError as next_check does, but for signs.
    """
    if role not in ROLES:
        raise CalcError("role", "unknown")
    if engine not in choice.ENGINES:
        raise CalcError("engine", "unknown")
    if not isinstance(questions, int) or questions < 0:
        raise CalcError("questions", "not_a_count")
    signs = ways.implied(knowledge, signs)
    left = [cause for cause in ranked["causes"] if not cause["against"]]
    end = {"kind": "check", "sign": None, "question": None, "answers": [], "again": False, "cause": None, "engine": [], "left": [cause["id"] for cause in left]}
    if ranked["alarms"]:
        end["kind"] = "danger"
    elif ranked["clashes"] or not any(_could_be(cause, signs) for cause in ranked["causes"]):
        end["kind"] = "contradiction"
    elif questions < CROSS_CHECKED and _cross_check(knowledge, signs, role, engine, ranked, end):
        return end
    elif _stands(ranked["causes"]):
        end["kind"], end["cause"] = "stands", ranked["causes"][0]["id"]
    elif questions >= MOST_QUESTIONS:
        end["kind"] = "enough" if left else "unlisted"
    else:
        doubtful = followed(ranked)
        if doubtful:
            _choose(knowledge, signs, role, engine, doubtful, ranked["other"], end)
        if not left and (not doubtful or end["kind"] != "check"):
            end["kind"] = "unlisted"
    return end


def followed(ranked):
    """The causes that looks are chosen for: those that nothing speaks against, and those in doubt that still fit better than what is not listed.

    ranked: as rank returns it

    Raises nothing.
    """
    left = [cause["share"] for cause in ranked["causes"] if not cause["against"]]
    least = max(ranked["other"], left[0] if left else 0)
    return [cause for cause in ranked["causes"] if not cause["against"] or cause["share"] > least]


def _choose(knowledge, signs, role, engine, left, other, end):
    """Put the best look that may be made now, or what stands in the way of the others, into `end`."""
    look = choice.best(knowledge, signs, role, engine, left, other)
    if look["sign"]:
        _ask(look, end)
    elif look["engine"]:
        end["kind"], end["engine"] = "engine", look["engine"]
    else:
        end["kind"] = "technician" if look["technician"] else "maker"


def _cross_check(knowledge, signs, role, engine, ranked, end):
    """Put a look at what the likeliest cause should bring along into `end`, where it is as good as standing; False where there is none."""
    leader = ranked["causes"][0]
    look = choice.beside(knowledge, signs, role, engine, leader, ranked["other"]) if leader["share"] >= SURE else None
    if look:
        _ask(look, end)
    return look is not None


def _ask(look, end):
    end["sign"], end["question"], end["answers"] = look["sign"], look["question"], look["answers"]


def _with(knowledge, signs, causes, questions):
    return {"signs": signs, "causes": causes, "questions": questions, "excludes": knowledge["excludes"], "facts": knowledge["facts"]}


def _could_be(cause, signs):
    """Whether a ranked cause shows all that was seen, whatever else it should show."""
    return all(signs[sign] != "seen" for sign in cause["against"])


def _stands(causes):
    """Whether the likeliest cause shows all of its signs, and no other does."""
    full = [cause for cause in causes if not cause["open"] and not cause["against"]]
    return len(full) == 1 and full[0] is causes[0] and causes[0]["share"] >= SURE


def _by_id(rows):
    return {row["id"]: row for row in rows}


def _checked(knowledge, signs):
    """The rows of the knowledge's signs by their ids, once what was said of them is sound."""
    rows = _by_id(knowledge["signs"])
    if not isinstance(signs, dict):
        raise CalcError("signs", "damaged")
    for sign in signs:
        if sign not in rows:
            raise CalcError("signs", "unknown_sign", sign=str(sign)[:60])
        if not isinstance(signs[sign], str) or signs[sign] not in ANSWERS:
            raise CalcError("signs", "unknown_answer", sign=sign)
    return rows
