"""The Pressure page's one question: a layout's answer, and of what lies under it the parts that are in sight."""
from calc.base import entry
from calc.base.errors import CalcError
from calc.layout import answer as layout_answer, at_pump, flowing, reach, scale


def answer(layout, shelf, units, profile, parts, texts):
    """All that the page shows of a layout.

    layout, shelf: see calc.layout.typed; with `now` and `source` where their parts are wanted, see calc.layout.flowing and at_pump
    units: see calc.base.display
    profile: of the rig, or None, see calc.layout.at_pump
    parts: those that are in sight, contract `layout_parts`
    texts: [kind, text] of what stands in inputs and was typed in another system

    Returns the answer of contract `layout_page.answer`. Raises CalcError naming text where one is of no known system.
    """
    shown = {"answer": None, "scale": None, "flowing": None, "at_pump": None, "bounds": None, "refusal": None,
             "texts": entry.all_shown(units, texts)}
    try:
        solution = layout_answer.solved(layout, shelf, units)
        shown["answer"] = layout_answer.read(solution, shelf, units, parts)
        shown["scale"] = scale.read(solution, layout, units, profile)
    except CalcError as error:
        shown["refusal"] = error.as_data()
        return shown
    readers = (
        ("flowing", lambda: flowing.read(solution, layout, units)),
        ("at_pump", lambda: at_pump.read(solution, layout, units, profile)),
        ("bounds", lambda: reach.read(solution, shelf, units, parts["bounds"]["line"], parts["bounds"]["reach"])),
    )
    for name, read in readers:
        if parts.get(name):
            try:
                shown[name] = read()
            except CalcError as error:
                shown["refusal"] = shown["refusal"] or error.as_data()
    return shown
