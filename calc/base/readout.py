"""What the water and foam pages read in and read out: typed entries to amounts, amounts to texts.

An answer of theirs is contract `water_answer`.
"""
from calc.base import display, entry, shelf as at_hand
from calc.base.errors import CalcError

HOURS_FROM_MINUTES = 120


def amount(entries, units, name, kind, least, most):
    """An entry as an amount in calc's own unit.

    entries: by name, text as typed, see calc.base.entry
    units: see calc.base.display
    name: which entry
    kind: its quantity, such as "pressure"
    least, most: the bounds, both allowed, in calc's unit

    Raises CalcError naming the entry; out_of_range tells least and most as texts in the page's unit, such as are
    taken.
    """
    if not isinstance(entries, dict):
        raise CalcError("entries", "damaged")
    value = entry.quantity(units, kind, name, entries.get(name))
    slack = 1e-9 * max(abs(least), abs(most))  # a bound typed in another unit comes back a last bit off
    if not least - slack <= value <= most + slack:
        raise CalcError(name, "out_of_range", least=display.limit(units, kind, least, -1), most=display.limit(units, kind, most, 1))
    return value


def amounts(entries, units, wanted):
    """Several entries as amounts, by name.

    entries, units: as for amount
    wanted: rows of name, kind, least, most

    Raises CalcError as amount does.
    """
    return {name: amount(entries, units, name, kind, least, most) for name, kind, least, most in wanted}


def if_given(entries, units, name, kind, least, most):
    """An entry that may be left empty, as an amount, or None.

    entries, units, name, kind, least, most: as for amount

    Raises CalcError as amount does.
    """
    typed = entries.get(name) if isinstance(entries, dict) else None
    if typed is None or (isinstance(typed, str) and not typed.partition("@")[0].strip()):
        return None
    return amount(entries, units, name, kind, least, most)


def count(entries, name, least, most):
    """An entry as a whole number.

    entries: by name, text as typed
    name: which entry
    least, most: the bounds, both allowed

    Raises CalcError naming the entry.
    """
    if not isinstance(entries, dict):
        raise CalcError("entries", "damaged")
    typed = entries.get(name)
    value = entry.number(name, typed.partition("@")[0] if isinstance(typed, str) else typed, "count")
    if value != int(value):
        raise CalcError(name, "not_whole")
    if not least <= value <= most:
        raise CalcError(name, "out_of_range", least=str(least), most=str(most))
    return int(value)


def count_if_given(entries, name, least, most):
    """An entry that may be left empty, as a whole number, or None.

    entries, name, least, most: as for count

    Raises CalcError as count does.
    """
    typed = entries.get(name) if isinstance(entries, dict) else None
    if typed is None or (isinstance(typed, str) and not typed.partition("@")[0].strip()):
        return None
    return count(entries, name, least, most)


def choice(entries, name, offered):
    """An entry that is one of a few.

    entries: by name, as chosen
    name: which entry
    offered: what may be chosen

    Raises CalcError naming the entry.
    """
    chosen = entries.get(name) if isinstance(entries, dict) else None
    if not isinstance(chosen, str) or chosen not in offered:
        raise CalcError(name, "unknown")
    return chosen


def hose(entries, shelf):
    """The hose that is chosen, with its figures.

    entries: by name, as chosen; the hose is `hose`
    shelf: see calc.base.shelf

    Raises CalcError naming hose; faulty_profile where the rig's own figures of it have a fault.
    """
    return at_hand.hose(shelf, "hose", choice(entries, "hose", shelf["hoses"]))


def row(units, name, kind, value, terms, sources, side=None):
    """One figure with its working.

    units: see calc.base.display
    name: of the figure; the page has its words and those of its working
    kind: its quantity, or None where value is text already
    value: the figure in calc's unit
    terms: the terms of its working, rows of name, kind and value, kind None where the value is text already
    sources: the ids of the formulas and tables it rests on
    side: of a limit to keep to, -1 for a least, 1 for a most, see display.limit

    Returns contract `water_row`. Raises CalcError naming value or units.
    """
    texts = {term: amount if quantity is None else display.working(units, quantity, amount) for term, quantity, amount in terms}
    text = value if kind is None else display.limit(units, kind, value, side) if side else display.text(units, kind, value)
    return {"name": name, "kind": kind, "text": text, "terms": texts, "sources": sources}


def lasting(units, minutes):
    """How long something lasts, by kind and text: in minutes, from two hours on in hours.

    units: see calc.base.display
    minutes: 0 or more

    Raises CalcError naming value or units. Source: common practice (a pond lasts 9.3 hours, not 560 minutes).
    """
    kind, value = ("time", minutes) if minutes < HOURS_FROM_MINUTES else ("hours", minutes / 60)
    return {"kind": kind, "text": display.text(units, kind, value)}


def caution(units, level, code, facts):
    """One caution, its facts as texts.

    units: see calc.base.display
    level: "stop" or "caution"
    code: which
    facts: rows of name, kind and value in calc's unit, kind None where the value is text already

    Returns contract `water_caution`. Raises CalcError naming value or units.
    """
    texts = {name: value if kind is None else display.text(units, kind, value) for name, kind, value in facts}
    texts["level"] = level
    texts["code"] = code
    return texts
