"""What a question of the drill is made of, and figures such as people say them.

A question is `{"kind", "facts", "answer", "working", "habits"}`. Its answer is typed, `{"way": "typed", "quantity", "value", "within", "text",
"within_text"}` with value and within in calc's unit, or chosen, `{"way": "chosen", "options", "right"}`. A habit is a wrong way that people fall into,
with the value or the option it gives: only such as differ from the answer by more than it allows.
"""
from calc.base import display, rounding

SETTINGS = ("pump", "gauges")  # kinds whose answer a gauge is set to; other pressures are read, and worked out finer


def typed(kind, units, quantity, value, within, facts, working, habits):
    """A question that is answered by a number.

    kind: of the question
    units: see calc.base.display
    quantity: of the answer, such as "pressure"
    value: the answer, in calc's unit
    within: how far from it is still right, in calc's unit; is rounded to a mark of the page's unit
    facts: texts for the question's sentence
    working: rows of code and facts
    habits: rows of code and value, in calc's unit; None for what does not apply

    Returns contract `drill_question`. Raises CalcError naming units or value.
    """
    scale = display.scale(units, units["shown"], quantity)
    step = display.step(units, quantity, within)
    allowed = step / scale["factor"]
    text = display.setting(units, value) if kind in SETTINGS else display.text(units, quantity, value)
    return {
        "kind": kind, "facts": facts,
        "answer": {"way": "typed", "quantity": quantity, "value": value, "within": allowed, "text": text, "within_text": display.plain(units, step, 3)},
        "working": [{"code": code, "facts": terms} for code, terms in working],
        "habits": [{"code": row[0], "value": row[1]} for row in habits if row is not None and abs(row[1] - value) > 1.05 * allowed],
    }


def chosen(kind, options, right, facts, working, habits):
    """A question that is answered by one of a few.

    kind: of the question
    options: codes, each different
    right: the one that is
    facts, working: as for typed
    habits: rows of code and option

    Returns contract `drill_question`. Raises nothing.
    """
    return {
        "kind": kind, "facts": facts, "answer": {"way": "chosen", "options": options, "right": right},
        "working": [{"code": code, "facts": terms} for code, terms in working],
        "habits": [{"code": code, "value": option} for code, option in habits if option in options and option != right],
    }


def even(units, quantity, value, step):
    """A made-up figure that is even in the page's unit, as its text and as what it is in calc's.

    units: see calc.base.display
    quantity: such as "pressure"
    value, step: in calc's unit; step is what it is even by

    Returns text and amount. Raises CalcError naming units.
    """
    scale = display.scale(units, units["shown"], quantity)
    shown = rounding.to_step(value * scale["factor"], display.step(units, quantity, step))
    return display.plain(units, shown, scale["places"]), shown / scale["factor"]


def term(units, quantity, value, counted_by=1):
    """An amount as a working has it, without idle places.

    units, quantity, value, counted_by: as for calc.base.display.working

    Raises CalcError naming units.
    """
    return display.working(units, quantity, value, counted_by)


def is_customary(units):
    """Whether the page's gauges are in psi: the trade's rules of thumb are made for it.

    units: see calc.base.display

    Raises CalcError naming units.
    """
    return display.scale(units, units["shown"], "pressure")["factor"] == 1
