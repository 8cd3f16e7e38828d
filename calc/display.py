"""Amounts in calc's own units to the text a person reads in the page's units.

`units` is `{"shown": name, "systems": {name: {kind: {"factor", "places"}}}}`: how many of a system's unit make one of
calc's, by kind of quantity, and the decimals of an answer; `shown` is the system of the page.
"""
from calc.errors import CalcError
from calc.rounding import plain, rounded


def scale(units, system, kind):
    """Factor and decimals of one kind of quantity in one system.

    units: as the module says
    system: its name
    kind: which quantity, such as "pressure"

    Raises CalcError with field units where there is no such system or kind. Source: made by Pint at build time.
    """
    kinds = units["systems"].get(system)
    if kinds is None or kind not in kinds:
        raise CalcError("units", "unknown")
    return kinds[kind]


def text(units, kind, value):
    """An amount as an answer: in the page's unit, rounded as that unit is read; None stays None.

    units: as the module says
    kind: which quantity, such as "pressure"
    value: the amount in calc's unit, or None where it is not known

    Raises CalcError naming value or units. Source: factors made by Pint when the site is built.
    """
    shown = scale(units, units["shown"], kind)
    return None if value is None else rounded(value * shown["factor"], shown["places"])


def working(units, kind, value, counted_by=1):
    """An amount as a term of a working: in the page's unit, to two decimals more than an answer, of the unit itself.

    units, kind, value: as for text
    counted_by: what the term counts by, in the page's unit: 1, or 100 for hundreds of gpm

    Raises CalcError naming value or units. Source: factors made by Pint when the site is built.
    """
    shown = scale(units, units["shown"], kind)
    return plain(value * shown["factor"] / counted_by, shown["places"] + (2 if counted_by == 1 else 4))
