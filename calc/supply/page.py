"""The one question of a water or foam page."""
from calc.base import entry
from calc.base.errors import CalcError
from calc.supply import measured


def answer(page, entries, shelf, units, texts):
    """All that a page shows of its entries.

    page: its name, such as "hydrant": the module calc.supply.hydrant_answer answers
    entries, shelf: as that module takes them
    units: see calc.base.display
    texts: [kind, text] of what stands in inputs and was typed in another system

    Returns the answer of contract `water_page.answer`. Raises CalcError naming page where there is none of that name, or text.
    """
    shown = {"answer": None, "refusal": None, "texts": entry.all_shown(units, texts)}
    try:
        module = __import__("calc.supply." + str(page) + "_answer", None, None, ("answer",))
    except ImportError:
        raise CalcError("page", "unknown")
    try:
        shown["answer"] = module.answer(entries, shelf, units)
        shown["answer"]["measured"] = measured.read(module.answer, entries, shelf, units, shown["answer"])
    except CalcError as error:
        shown["refusal"] = error.as_data()
    return shown
