"""A diagnosis as a page asks for it, once after each answer: the next look or the end, what is still possible, what speaks for each cause."""
from calc.base.errors import CalcError
from calc.diagnosis import choice, fault, ways

MOST_NAMED = 4  # of the causes that are still possible, the likeliest
NOTHING_FITS = ("unlisted", "contradiction")


def after(knowledge, signs, began, again, role, engine, questions, may_shift):
    """What to look at next, or how the diagnosis ends and what it stands on.

    knowledge, signs, role, engine, questions: see calc.diagnosis.fault.next_check
    began: the signs that it opened with, all of them in `signs`
    again: the signs whose look was made twice: no look is asked a third time
    may_shift: False where no look may move the shift any more

    Returns the answer of contract `look.after`. Raises CalcError naming again, or as next_check does.
    """
    if not isinstance(again, list) or not all(isinstance(sign, str) for sign in again):
        raise CalcError("again", "damaged")
    asked = knowledge if may_shift else fault.without_shifts(knowledge)
    ranked = fault.rank(asked, signs)
    end = fault.decided(asked, signs, ranked, role, engine, questions)
    opened = fault.rank(asked, {sign: signs[sign] for sign in began if sign in signs})
    left = [cause for cause in ranked["causes"] if not cause["against"]]
    possible = {
        "left": len(left), "of": max(len(left), sum([not cause["against"] for cause in opened["causes"]])),
        "likeliest": [{"id": cause["id"], "share": cause["share"]} for cause in left[:MOST_NAMED]],
    }
    doubted = _doubted(asked, signs, began + again, role, engine, end, ranked)
    if doubted:
        end["kind"], end["again"] = "check", True
        end["sign"], end["question"], end["answers"] = choice.asking(asked, doubted, ways.barred(asked, signs))
    return {"end": end, "possible": possible, "ranked": None if end["kind"] == "check" else ranked}


def _doubted(knowledge, signs, settled, role, engine, end, ranked):
    """The one answer that keeps a likely cause from fitting whole, and that can be looked at once more now; None where there is none.

    It is looked for once nothing fits, and for a cause that leads all the same with nothing of its own left to look at.
    """
    if ranked["alarms"]:
        return None
    barred = ways.barred(knowledge, signs)
    can = [row["id"] for row in knowledge["signs"] if row["id"] in signs and row["id"] not in settled and row["id"] not in barred
           and choice.may_look(row, role, engine) and choice.is_askable(row, signs)]
    causes = ranked["causes"][:MOST_NAMED] if end["kind"] in NOTHING_FITS else [
        cause for cause in ranked["causes"] if cause["share"] >= choice.LEADS and not cause["open"]]
    for cause in causes:
        if len(cause["against"]) == 1 and cause["against"][0] in can:
            return cause["against"][0]
    return None
