"""The problems of a profile made ready to be read: what stands in the field, and what it may hold, in the page's units."""
from calc.base import display, entry
from calc.base.errors import CalcError
from calc.rig.fields import BED_FIELDS, END_FIELDS, FIELDS, HOSE_FIELDS, SUPPLY_FIELDS

PLACES = 3  # of a bound that is a plain number
_ROWS = {"hoses": HOSE_FIELDS, "beds": BED_FIELDS + END_FIELDS["fog"] + END_FIELDS["smooth"], "supply": SUPPLY_FIELDS}


def read(problems, profile, units):
    """Problems with the texts that sentences take.

    problems: of calc.rig.check
    profile: what they are of
    units: see calc.base.display

    Returns the problems, with `typed` and `allowed` of contract `problem`. Raises nothing.
    """
    return [_read(problem, profile, units) for problem in problems]


def _read(problem, profile, units):
    path = problem["field"].split(".")
    fields = [field for field in (FIELDS if len(path) == 1 else _ROWS.get(path[0], ())) if field[0] == path[-1]]
    text = _at(profile, path)
    if not fields or fields[0][1] not in ("number", "quantity") or not isinstance(text, str):
        return problem
    field = fields[0]
    read = dict(problem)
    if field[1] == "number":
        read["typed"] = text.strip()
        bounds = [display.plain(units, bound, PLACES) for bound in field[2:]]
    else:
        read["typed"] = _shown(units, field[2], text)
        bounds = [entry.bound(units, field[2], bound, side) for bound, side in zip(field[3:], (-1, 1))]
    if problem["code"] == "out_of_range":
        read["allowed"] = {"least": bounds[0], "most": bounds[1]}
    return read


def _at(part, path):
    """What stands at a place such as ["beds", "2", "length"], or None."""
    for key in path:
        if isinstance(part, list) and key.isdigit() and int(key) < len(part):
            part = part[int(key)]
        else:
            part = part.get(key) if isinstance(part, dict) else None
    return part


def _shown(units, kind, text):
    try:
        return entry.shown(units, kind, text).strip()
    except CalcError:
        return text.partition("@")[0].strip()
