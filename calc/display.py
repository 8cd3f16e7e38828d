"""Amounts in calc's own units to the text a person reads in the page's units."""
from calc.rounding import plain, rounded


def text(units, kind, value):
    """An amount as an answer: in the page's unit, rounded as that unit is read; None stays None.

    units: factor and decimals of the page's units, by kind of quantity
    kind: which quantity, such as "pressure"
    value: the amount in calc's unit, or None where it is not known

    Raises CalcError naming value. Source: factors made by Pint when the site is built.
    """
    return None if value is None else rounded(value * units[kind]["factor"], units[kind]["places"])


def working(units, kind, value, scale=1):
    """An amount as a term of a working: in the page's unit, to two decimals more than an answer.

    units, kind, value: as for text
    scale: what the term counts by (100 for hundreds of gpm), in the page's unit

    Raises CalcError naming value. Source: factors made by Pint when the site is built.
    """
    return plain(value * units[kind]["factor"] / scale, units[kind]["places"] + 2)
