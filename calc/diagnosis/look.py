"""A diagnosis as a page asks for it, once after each answer: the next look or the end, what is still possible, what speaks for each cause."""
from calc.diagnosis import fault

MOST_NAMED = 4  # of the causes that are still possible, the likeliest


def after(knowledge, signs, began, role, engine, questions, may_shift):
    """What to look at next, or how the diagnosis ends and what it stands on.

    knowledge, signs, role, engine, questions: see calc.diagnosis.fault.next_check
    began: the signs that it opened with, all of them in `signs`
    may_shift: False where no look may move the shift any more

    Returns the answer of contract `look.after`. Raises CalcError as next_check does.
    """
    asked = knowledge if may_shift else fault.without_shifts(knowledge)
    end = fault.next_check(asked, signs, role, engine, questions)
    ranked = fault.rank(asked, signs)
    opened = fault.rank(asked, {sign: signs[sign] for sign in began if sign in signs})
    left = [cause for cause in ranked["causes"] if not cause["against"]]
    possible = {
        "left": len(left), "of": max(len(left), sum([not cause["against"] for cause in opened["causes"]])),
        "likeliest": [{"id": cause["id"], "share": cause["share"]} for cause in left[:MOST_NAMED]],
    }
    return {"end": end, "possible": possible, "ranked": None if end["kind"] == "check" else ranked}
