"""Typed text to numbers, and from the page's units to those of calc."""
import math

from calc import display
from calc.errors import CalcError, check_number
from calc.rounding import plain

LONGEST = 12  # characters of a number anyone means to type
BOUND_PLACES = 2  # decimals of a bound past those of an answer
LAST_BIT = 1e-6  # of a step: what scaling leaves on a bound that is whole
LONGEST_TEXT = 30  # characters of an entry, its system and blanks included; pressure/lay.js takes no more either


def number(field, text):
    """The number a person typed.

    field: name of the input, for the refusal
    text: digits with at most one decimal point (a comma will do) and a leading minus; blanks around it

    Raises CalcError naming the field, with code empty, not_a_number, too_large, or comma_of_thousands for a comma
    before exactly three digits, which one person means as a point and another as thousands.
    Source: common practice; the two Pythons accept different spellings, this accepts one.
    """
    if not isinstance(text, str):
        raise CalcError(field, "not_a_number")
    typed = text.strip(" \t\r\n").replace("\u2212", "-")
    if not typed:
        raise CalcError(field, "empty")
    if typed[-4:-3] == ",":
        raise CalcError(field, "comma_of_thousands")
    typed = typed.replace(",", ".")
    digits = typed[1:] if typed[0] == "-" else typed
    whole = digits.replace(".", "", 1)
    if not whole or any(character not in "0123456789" for character in whole):
        raise CalcError(field, "not_a_number")
    if len(whole) > LONGEST:
        raise CalcError(field, "too_large")
    return float(typed)


def check(units, field, text):
    """Refuse what is no entry, whether its number can be read or not: what every page that keeps entries asks of them.

    units: see calc.display
    field: name of the input, for the refusal
    text: what was typed, with the mark of its system or without

    Raises CalcError naming the field, with code not_text, too_long or unknown_units. Source: common practice.
    """
    if not isinstance(text, str):
        raise CalcError(field, "not_text")
    if len(text) > LONGEST_TEXT:
        raise CalcError(field, "too_long", most=LONGEST_TEXT)
    _parted(units, field, text)


def quantity(units, kind, field, text):
    """The amount a person typed, in calc's own unit.

    units: see calc.display
    kind: which quantity, such as "length"
    field: name of the input, for the refusal
    text: what was typed; "61@SI" was typed in the system SI, plain "200" in the one that is shown

    Raises CalcError as number does, and with code too_long or unknown_units. Source: factors made by Pint at build time.
    """
    typed, system = _parted(units, field, text)
    check(units, field, text)
    amount = number(field, typed) / display.scale(units, system, kind)["factor"]
    check_number(field, amount)
    return amount


def shown(units, kind, text):
    """What stands in the input for something typed: the very text where it was typed in the shown system.

    units, kind, text: as for quantity

    Text typed in another system comes converted and rounded; what is no number comes as it is.
    Raises CalcError with code unknown_units. Source: factors made by Pint at build time.
    """
    typed, system = _parted(units, "text", text)
    if system == units["shown"]:
        return typed
    try:
        amount = quantity(units, kind, "text", text)
    except CalcError:
        return typed
    here = display.scale(units, units["shown"], kind)
    return plain(amount * here["factor"], here["places"])


def bound(units, kind, amount, side):
    """A bound of an entry as text in the page's unit, rounded inward, so that what is said to be allowed is.

    units: see calc.display
    kind: which quantity, such as "length"
    amount: the bound in calc's own unit
    side: -1 for the least that is allowed, 1 for the most

    Raises CalcError naming units where there is no such kind. Source: factors made by Pint at build time.
    """
    here = display.scale(units, units["shown"], kind)
    steps = 10 ** (here["places"] + BOUND_PLACES)
    whole = math.floor(side * amount * here["factor"] * steps + LAST_BIT) * side
    return plain(whole / steps, here["places"] + BOUND_PLACES)


def _parted(units, field, text):
    """What was typed, and the system it was typed in."""
    if not isinstance(text, str):
        raise CalcError(field, "not_a_number")
    typed, mark, system = text.partition("@")
    if not mark:
        return text, units["shown"]
    if system not in units["systems"]:
        raise CalcError(field, "unknown_units")
    return typed, system
