"""Typed text to numbers, and from the page's units to those of calc."""
from calc.errors import CalcError, check_number

LONGEST = 12  # characters of a number anyone means to type


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


def quantity(units, kind, field, text):
    """The amount a person typed, in calc's own unit.

    units: factors of the page's units, per calc unit, by kind of quantity
    kind: which quantity, such as "length"
    field: name of the input, for the refusal
    text: what was typed

    Raises CalcError as number does. Source: factors made by Pint when the site is built.
    """
    amount = number(field, text) / units[kind]["factor"]
    check_number(field, amount)
    return amount
