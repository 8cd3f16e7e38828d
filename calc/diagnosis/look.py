"""A diagnosis as a page asks for it, once after each answer: the next look or the end, and what speaks for each cause."""
from calc.diagnosis import fault


def after(knowledge, signs, role, engine, questions, may_shift):
    """What to look at next, or how the diagnosis ends and what it stands on.

    knowledge, signs, role, engine, questions: see calc.diagnosis.fault.next_check
    may_shift: False where no look may move the shift any more

    Returns the answer of contract `look.after`. Raises CalcError as next_check does.
    """
    asked = knowledge if may_shift else fault.without_shifts(knowledge)
    end = fault.next_check(asked, signs, role, engine, questions)
    return {"end": end, "ranked": None if end["kind"] == "check" else fault.rank(asked, signs)}
