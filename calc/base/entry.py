"""Typed text to numbers, and from the page's units to those of calc. The one reader of entries, for every page.

A number is digits with a decimal point or a decimal comma, thousands set apart by commas, points or spaces, and a
minus: "1250", "1,250", "1 250", "1,250.5", "1.250,5", "12.5", "12,5". One mark alone before exactly three digits can be
read either way ("1,250", "1.000"), and is read so, by the page's decimal mark (`decimal` of the units) and the kind:

    typed   kind         page with a point   page with a comma
    1,250   any          1250                asked, but 1.25 where FINE
    1.000   FINE         1                   1
    1.000   any other    asked               asked

FINE are the kinds that are read to thousandths: a 1.125 in tip, a ratio of 2.125. Of any other nobody types three
decimals, and who types 1.000 for a flow may mean a thousand: read as one it would give a believable wrong answer.
With three digits before the mark too a point is the decimal one: 482.633 kPa. "Asked" is the refusal
thousands_or_decimals with both readings as facts. "0.500", "1250.500" and "1.2500" have one reading only.
"""
import math

from calc.base import display
from calc.base.errors import CalcError, check_number
from calc.base.rounding import plain

DIGITS = "0123456789"
LONGEST = 12  # digits of a number anyone means to type
BOUND_PLACES = 2  # decimals of a fine bound past those of an answer
LONGEST_TEXT = 30  # characters of an entry, its system and blanks included; scripts are handed it by base.html
FINE = ("diameter", "ratio", "coefficient", "barometer", "distance")
MINUS = "\u2212"
SPACES = " \t\r\n\u00a0\u2009\u202f"  # the last three do not break, or are narrow: what a phone or a pasted text may set
GROUP = 3
MOST_WHOLE = 2  # digits before the mark that may be thousands: nobody means 482633 of anything by 482.633


def number(field, text, kind="ratio", decimal="."):
    """The number a person typed.

    field: name of the input, for the refusal
    text: as typed, see the module
    kind: which quantity it is, such as "flow"; a plain number is a ratio
    decimal: the page's decimal mark, "." or ","

    Raises CalcError naming the field, with code empty, not_a_number, too_large, or thousands_or_decimals with the facts
    thousands and decimals, each a text that is read one way only.
    Source: common practice; the two Pythons accept different spellings, this accepts one grammar.
    """
    if not isinstance(text, str):
        raise CalcError(field, "not_a_number")
    whole, _, fraction = text.partition(".")
    if whole and not (whole + fraction).strip(DIGITS) and len(whole + fraction) <= LONGEST and len(fraction) != GROUP:
        return float(text)  # as most are: digits that can be read one way only
    typed = text.replace(MINUS, "-")
    for space in SPACES:
        typed = typed.replace(space, " ")
    typed = typed.strip(" ")  # of ASCII alone: the phone's strip goes by bytes
    if not typed:
        raise CalcError(field, "empty")
    sign, digits = ("-", typed[1:]) if typed[0] == "-" else ("", typed)
    if any(character not in DIGITS + "., " for character in digits):
        raise CalcError(field, "not_a_number")
    point, group = _marks(field, digits, sign, kind, decimal)
    whole, mark, fraction = digits.partition(point) if point else (digits, "", "")
    whole = _joined(field, whole, group)
    if not whole + fraction or any(character not in DIGITS for character in fraction):
        raise CalcError(field, "not_a_number")
    if len(whole + fraction) > LONGEST:
        raise CalcError(field, "too_large")
    return float(sign + whole + "." + fraction)


def _marks(field, digits, sign, kind, decimal):
    """Which mark of a text is the decimal one and which sets thousands apart; empty text for one it has not."""
    last = "," if digits.rfind(",") > digits.rfind(".") else "."
    other = "." if last == "," else ","
    if other in digits or digits.count(last) > 1:
        # two kinds of mark: the last is the decimal one; one kind several times sets thousands apart
        return (last, other) if digits.count(last) == 1 else ("", last)
    whole, mark, fraction = digits.partition(last)
    if not mark or len(fraction) != GROUP or not 1 <= len(whole) <= GROUP or whole[0] == "0":
        return last, ""
    if last == "," and decimal == ".":
        return "", ","
    if kind in FINE or len(whole) > MOST_WHOLE:
        return last, ""
    short = fraction.rstrip("0")
    plain_text = sign + whole + (decimal + (short if len(short) < GROUP else short + "0") if short else "")
    raise CalcError(field, "thousands_or_decimals", thousands=sign + whole + fraction, decimals=plain_text)


def _joined(field, whole, group):
    """The digits before the decimal mark, with whatever sets thousands apart taken out."""
    if group and " " in whole:
        raise CalcError(field, "not_a_number")
    groups = whole.split(group or " ")
    if len(groups) > 1 and (not 1 <= len(groups[0]) <= GROUP or groups[0][0] == "0" or any(len(digits) != GROUP for digits in groups[1:])):
        raise CalcError(field, "not_a_number")
    joined = "".join(groups)
    if any(character not in DIGITS for character in joined):
        raise CalcError(field, "not_a_number")
    return joined


def check(units, field, text):
    """Refuse what is no entry, whether its number can be read or not: what every page that keeps entries asks of them.

    units: see calc.base.display
    field: name of the input, for the refusal
    text: what was typed, with the mark of its system or without

    Raises CalcError naming the field, with code not_text, too_long or unknown_units.
    """
    if not isinstance(text, str):
        raise CalcError(field, "not_text")
    _check_length(field, text)
    _parted(units, field, text)


def _check_length(field, text):
    if len(text) > LONGEST_TEXT:
        raise CalcError(field, "too_long", most=LONGEST_TEXT)


def quantity(units, kind, field, text):
    """The amount a person typed, in calc's own unit.

    units: see calc.base.display
    kind: which quantity, such as "length"
    field: name of the input, for the refusal
    text: what was typed; "61@SI" was typed in the system SI, plain "200" in the one that is shown

    Raises CalcError as number does, and with code too_long or unknown_units.
    """
    typed, system = _parted(units, field, text)
    _check_length(field, text)
    there = display.scale(units, system, kind)
    amount = display.inside(there, number(field, typed, kind, display.decimal(units)))
    check_number(field, amount)
    return amount


def shown(units, kind, text):
    """What stands in the input for something typed: the very text where it was typed in the shown system.

    units, kind, text: as for quantity

    Text typed in another system comes converted and rounded; what is no number comes as it is. A decimal point comes as
    the page's decimal mark, once it is read as one.
    Raises CalcError with code unknown_units.
    """
    typed, system = _parted(units, "text", text)
    try:
        amount = quantity(units, kind, "text", text)
    except CalcError:
        return typed
    if system == units["shown"]:
        return typed if "," in typed or typed[-1:] == "." else display.marked(units, typed)
    here = display.scale(units, units["shown"], kind)
    return display.plain(units, display.converted(here, amount), here.get("typed", here["places"]))


def all_shown(units, entries):
    """The same of many entries, for a page that draws them all.

    units: see calc.base.display
    entries: `[[kind, text], ...]`, each as for shown

    Returns the texts in their order. Raises CalcError as shown does.
    """
    return [shown(units, kind, text) for kind, text in entries]


def stepped(text, kind, decimal, step, direction, least):
    """What a tap on a stepper's key makes of the text that stands in its input.

    text, kind, decimal: as for number
    step: what one tap adds, above zero, in the unit of the text
    direction: 1 up, -1 down
    least: what it does not go below, in the same unit, or None

    Returns the next multiple of the step as text with a point, or None where the text is no number or the next lies below
    the least. Raises nothing. Source: common practice (an amount goes by round figures).
    """
    try:
        standing = number("text", text, kind, decimal)
        check_number("text", standing)
    except CalcError:
        return None
    taps = math.floor(standing / step + display.LAST_BIT) + 1 if direction > 0 else math.ceil(standing / step - display.LAST_BIT) - 1
    following = taps * step
    if least is not None and following < least:
        return None
    return written(plain(following, 6))


def added(units, kind, text, other, sign):
    """One entry with another added to it or taken from it, as text in the shown system: a height one floor up.

    units, kind, text: as for quantity
    other: an entry of the same kind
    sign: 1 to add it, -1 to take it away

    Returns the text with its system, or None where one of the two is no number. Raises nothing.
    """
    try:
        total = quantity(units, kind, "text", text) + sign * quantity(units, kind, "other", other)
        return plain(total * display.scale(units, units["shown"], kind)["factor"], 2) + "@" + units["shown"]
    except CalcError:
        return None


def written(text):
    """A number that calc wrote, with a point, as an entry that is read one way in every language.

    text: the number

    Raises nothing.
    """
    return text + "0" if text[-GROUP - 1:-GROUP] == "." else text


def bound(units, kind, amount, side):
    """A bound of an entry as text in the page's unit, rounded inward, so that what is said to be allowed is.

    units: see calc.base.display
    kind: which quantity, such as "length"
    amount: the bound in calc's own unit
    side: -1 for the least that is allowed, 1 for the most

    Raises CalcError naming units where there is no such kind.
    """
    return display.limit(units, kind, amount, side, BOUND_PLACES if kind in FINE else 0)


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
