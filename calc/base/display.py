"""Amounts in calc's own units to the text a person reads in the page's units.

`units` is `{"shown": name, "decimal": mark, "systems": {name: {kind: {"factor", "places", "offset", "set"}}}}`: how many of a system's
unit make one of calc's (factors that Pint made when the site was built), by kind of quantity, the decimals of an answer
and, only of a kind whose zero differs, what calc's zero is called there (0 F is -17.8 C), and, only where a gauge is set less finely, `set`, the step that it is set to, and, only where an entry is shown finer, `typed`, its decimals; `shown` is the system of the page, `decimal` the decimal mark of its language, a point where it is left out.
Every text a person reads goes through here; texts that machines read (files, entries as kept) have a point.
"""
import math

from calc.base import rounding
from calc.base.errors import CalcError

NEEDLE_PSI = 1  # the smallest step that a needle shows
LAST_BIT = 1e-6  # of a step: what scaling leaves on a limit that is whole


def decimal(units):
    """The decimal mark of the page's language.

    units: as the module says

    Raises CalcError with field units where it is neither a point nor a comma.
    """
    mark = units.get("decimal", ".")
    if mark not in (".", ","):
        raise CalcError("units", "unknown")
    return mark


def marked(units, text):
    """A number that calc wrote, with a point, as the page's language writes it.

    units: as the module says
    text: the number as text, or None

    Raises CalcError as decimal does.
    """
    mark = decimal(units)
    return text if text is None or mark == "." else text.replace(".", mark)


def rounded(units, value, places):
    """A plain number to a fixed count of decimals, as the page's language writes it.

    units: as the module says
    value, places: as for rounding.rounded

    Raises CalcError as rounding.rounded does.
    """
    return marked(units, rounding.rounded(value, places))


def plain(units, value, places):
    """A plain number without idle zeros, as the page's language writes it.

    units: as the module says
    value, places: as for rounding.plain

    Raises CalcError as rounding.plain does.
    """
    return marked(units, rounding.plain(value, places))


def scale(units, system, kind):
    """Factor and decimals of one kind of quantity in one system.

    units: as the module says
    system: its name
    kind: which quantity, such as "pressure"

    Raises CalcError with field units where there is no such system or kind.
    """
    kinds = units["systems"].get(system)
    if kinds is None or kind not in kinds:
        raise CalcError("units", "unknown")
    return kinds[kind]


def converted(here, value):
    """An amount in the unit of a scale.

    here: factor and offset, as scale returns them
    value: the amount in calc's unit

    Raises nothing.
    """
    return value * here["factor"] + here.get("offset", 0)


def inside(here, shown):
    """An amount of a scale's unit in calc's unit.

    here: factor and offset, as scale returns them
    shown: the amount

    Raises nothing.
    """
    return (shown - here.get("offset", 0)) / here["factor"]


def text(units, kind, value):
    """An amount as an answer: in the page's unit, rounded as that unit is read; None stays None.

    units: as the module says
    kind: which quantity, such as "pressure"
    value: the amount in calc's unit, or None where it is not known

    Raises CalcError naming value or units.
    """
    shown = scale(units, units["shown"], kind)
    return None if value is None else marked(units, rounding.rounded(converted(shown, value), shown["places"]))


def setting(units, psi):
    """A pressure to set a gauge to, as text: to the step that such a gauge is set to in the page's unit; None stays None.

    units: as the module says; `set` of its pressure is that step, without one it is set as an answer is rounded
    psi: the pressure, or None where it is not known

    Raises CalcError naming value or units. Source: common practice (a needle is set to a fifth of its marks: 1 psi, 10 kPa, 0.1 bar).
    """
    here = scale(units, units["shown"], "pressure")
    if psi is None or "set" not in here:
        return text(units, "pressure", psi)
    return rounded(units, rounding.to_step(converted(here, psi), here["set"]), here["places"])


def addends(units, kind, amounts):
    """Amounts and their sum as texts that add up: each as an answer is rounded; where those do not add up, to one decimal more, without idle zeros.

    units, kind: as for text
    amounts: in calc's unit

    What rounding leaves over at that decimal goes to the amounts that it cut the most. Returns the sum and a list. Raises CalcError naming value or units.
    """
    here = scale(units, units["shown"], kind)
    places = here["places"]
    whole = [rounding.rounded(converted(here, amount), places) for amount in amounts + [sum(amounts)]]
    counts = [int(amount.replace(".", "")) for amount in whole]
    if sum(counts[:-1]) == counts[-1]:
        return marked(units, whole[-1]), [marked(units, amount) for amount in whole[:-1]]
    steps = 10 ** (places + 1)
    exact = [converted(here, amount) * steps for amount in amounts]
    counts = [math.floor(amount + LAST_BIT) for amount in exact]
    total = int(rounding.rounded(sum(exact), 0))
    by_cut = sorted([(counts[place] - exact[place], place) for place in range(len(exact))])
    for _, place in by_cut[:total - sum(counts)]:
        counts[place] += 1
    return plain(units, total / steps, places + 1), [plain(units, count / steps, places + 1) for count in counts]


def figure(units, kind, value):
    """An amount as an instrument is read: as text, but without idle zeros.

    units, kind, value: as for text

    Raises CalcError naming value or units.
    """
    shown = scale(units, units["shown"], kind)
    return None if value is None else plain(units, converted(shown, value), shown["places"])


def working(units, kind, value, counted_by=1):
    """An amount as a term of a working: in the page's unit, to two decimals more than an answer, of the unit itself.

    units, kind, value: as for text
    counted_by: what the term counts by, in the page's unit: 1, or 100 for hundreds of gpm

    Raises CalcError naming value or units.
    """
    shown = scale(units, units["shown"], kind)
    return marked(units, rounding.plain(value * shown["factor"] / counted_by, shown["places"] + (2 if counted_by == 1 else 4)))


def significant(units, kind, value):
    """An amount in the page's unit to three significant figures, such as a coefficient that was converted.

    units, kind: as for text
    value: the amount in calc's unit, above 0

    Raises CalcError naming value or units.
    """
    shown = converted(scale(units, units["shown"], kind), value)
    places = 0
    while places < rounding.MOST_PLACES and shown * 10 ** places < 100:
        places += 1
    return plain(units, shown, places)


def step(units, kind, value):
    """A step of rounding as the page's unit has it: as it is where that unit shows it, else the nearest 1, 2.5 or 5 of tens.

    units, kind: as for text
    value: the step in calc's unit, above 0

    Returns a number in the page's unit: 5 psi is 25 kPa and 0.5 bar. Raises CalcError naming value or units.
    Source: common practice (a gauge is read to its marks).
    """
    here = scale(units, units["shown"], kind)
    shown = value * here["factor"]
    if abs(shown - float(rounding.rounded(shown, here["places"]))) < LAST_BIT * shown:
        return shown
    marks = [mark * 10 ** power for power in range(-here["places"], 5) for mark in (1, 2.5, 5)]
    marks = [mark for mark in marks if abs(mark * 10 ** here["places"] - int(mark * 10 ** here["places"] + LAST_BIT)) < LAST_BIT]
    return min([(max(mark / shown, shown / mark), mark) for mark in marks])[1]


def needle(units, kind, value, side=-1):
    """A reading to set, as text: the first mark of a needle gauge that is not below it, so that its point is reached; None stays None.

    units, kind, value: as for text; a needle is read to 1 psi, and to the mark nearest to that in other units
    side: -1 for that mark, 1 for the last one that is not above it

    Raises CalcError naming value or units. Source: common practice (test gauges are marked and read to 1 psi, 5 kPa, 0.05 bar).
    """
    if value is None:
        return None
    shown = scale(units, units["shown"], kind)
    mark = step(units, kind, NEEDLE_PSI)
    return plain(units, math.floor(side * converted(shown, value) / mark + LAST_BIT) * side * mark, 2)


def limit(units, kind, value, side, more_places=0):
    """A limit as text in the page's unit, rounded inward, so that a figure shown as this meets it; None stays None.

    units, kind, value: as for text
    side: -1 for a least, 1 for a most
    more_places: decimals past those of an answer

    Raises CalcError naming value or units.
    """
    if value is None:
        return None
    shown = scale(units, units["shown"], kind)
    places = shown["places"] + more_places
    whole = math.floor(side * converted(shown, value) * 10 ** places + LAST_BIT) * side
    return plain(units, whole / 10 ** places, places)
