"""Elevation of the lines of a typed layout: text as typed, the end of each line above the pump.

A line of the kind that was saved before has `rise` in its place, its end above its own beginning: above the joint
before it, or above the pump. Such a line is read as it was meant, and `converted` writes it anew.
"""
from calc.base import display, entry
from calc.base.errors import CalcError

PLACES = 8  # what is converted moves no pressure by more than a billionth of a psi


def of_line(line, start_ft, units):
    """Where a typed line ends: feet above the pump, and feet above its own beginning.

    line: with `height`, or `rise` of the old kind; a height typed since goes first
    start_ft: its beginning above the pump, feet
    units: see calc.base.display

    Raises CalcError naming height.
    """
    if "rise" in line and not line.get("height"):
        rise_ft = entry.quantity(units, "length", "height", line["rise"])
        return start_ft + rise_ft, rise_ft
    height_ft = entry.quantity(units, "length", "height", line.get("height"))
    return height_ft, height_ft - start_ft


def converted(layout, units):
    """A layout with every elevation typed above the pump.

    layout: see calc.layout.typed; lines of the old kind among the others, no more than 20 joints behind one another
    units: see calc.base.display

    Text that is no number stays as it was typed; behind such a line the elevation is left empty, to be typed.
    Raises nothing for a layout of known form.
    """
    above_pump = dict(layout)
    above_pump["lines"] = _converted(layout["lines"], None, units)
    return above_pump


def _converted(lines, before, units):
    """Lines with their heights; `before` is the height of what feeds them as typed, None at the pump."""
    lines_above_pump = []
    for line in lines:
        line = dict(line)
        rise = line.pop("rise", "")
        if not line.get("height"):
            line["height"] = rise if before is None else _above(before, rise, units)
        if "lines" in line["end"]:
            line["end"] = {"lines": _converted(line["end"]["lines"], line["height"], units)}
        lines_above_pump.append(line)
    return lines_above_pump


def _above(before, rise, units):
    """Two heights as typed made into one, in the system of the second where both are something."""
    before_ft, rise_ft = _feet(before, units), _feet(rise, units)
    if rise_ft is None:
        return rise
    if before_ft is None:
        return ""
    if before_ft == 0:
        return rise
    if rise_ft == 0:
        return before
    system = rise.partition("@")[2] or units["shown"]
    return entry.written(_text((before_ft + rise_ft) * display.scale(units, system, "length")["factor"])) + "@" + system


def _feet(text, units):
    """A height as typed, in feet; None where it is no number."""
    try:
        return entry.quantity(units, "length", "height", text)
    except CalcError:
        return None


def _text(amount):
    """A number with up to eight decimals: rounding.plain is for people and has six."""
    count = int(abs(amount) * 10 ** PLACES + 0.5)
    decimals = str(10 ** PLACES + count % 10 ** PLACES)[1:].rstrip("0")
    return ("-" if amount < 0 and count else "") + str(count // 10 ** PLACES) + ("." + decimals if decimals else "")
