"""The form of a profile's `checks`, see calc.rig.check_fields; what its rows mean calc.bay.department says."""
from calc.base import display, entry
from calc.base.errors import CalcError
from calc.rig.check_fields import ADDED_ONLY, CHECK_FIELDS, INTERVALS, LIMITS, MOST_CHECKS, QUANTITIES
from calc.rig.rows import check_row, listed, note

_ADDED_NEEDS = ("name", "good", "lists", "place", "state")
_LEFT_OUT_HAS = ("item", "act", "whose", "reason")


def problems(checks, units):
    """Everything in a profile's `checks` whose form is wrong, each with its place.

    checks: anything that should be the list
    units: see calc.base.display

    Returns a list, each contract `problem`. Raises nothing.
    """
    faults = []
    for row, place in listed({"checks": checks}, "checks", faults, MOST_CHECKS):
        act = row.get("act")
        needed = {"add": _ADDED_NEEDS, "leave_out": ("reason",)}.get(act if isinstance(act, str) else None, ())
        check_row(row, CHECK_FIELDS, place, ({}, units), faults, ("item", "act") + needed)
        _check_act(row, act, place, faults)
        _check_limit(row, place, units, faults)
    return faults


def limit_of(row, units):
    """The limit of a sound row as calc.bay.limits takes it, or None where it has none.

    row: of `checks`
    units: see calc.base.display

    Raises CalcError naming least, most or aim for what is no number, and most, with code out_of_order, where it is under least.
    """
    amounts = {}
    for name in LIMITS:
        if row.get(name):
            amounts[name] = _amount(row, name, units)
    if not amounts:
        return None
    quantity = row["unit"] if row["unit"] in QUANTITIES else None
    if "aim" in amounts:
        return {"kind": "target", "value": amounts["aim"], "to": None, "quantity": quantity}
    if "least" in amounts and "most" in amounts:
        if amounts["most"] < amounts["least"]:
            raise CalcError("most", "out_of_order")
        return {"kind": "range", "value": amounts["least"], "to": amounts["most"], "quantity": quantity}
    kind = "min" if "least" in amounts else "max"
    return {"kind": kind, "value": amounts["least" if kind == "min" else "most"], "to": None, "quantity": quantity}


def _amount(row, name, units):
    if row["unit"] in QUANTITIES:
        return entry.quantity(units, row["unit"], name, row[name])
    return entry.number(name, row[name].split("@")[0], "count", display.decimal(units))


def _check_act(row, act, place, faults):
    """Note what a row of its act cannot have."""
    for field in CHECK_FIELDS:
        name = field[0]
        if not row.get(name):
            continue
        if act == "leave_out" and name not in _LEFT_OUT_HAS:
            note(faults, place + name, "left_out_has_none")
        elif act == "change" and name in ADDED_ONLY:
            note(faults, place + name, "added_only")
    if act == "change" and not any([row.get(field[0]) for field in CHECK_FIELDS if field[0] not in _LEFT_OUT_HAS]):
        note(faults, place + "act", "changes_nothing")
    for name in INTERVALS:
        amount = row.get(name)
        if amount and not (isinstance(amount, str) and amount.isdigit()) and not _is_noted(faults, place + name):
            note(faults, place + name, "not_whole")


def _check_limit(row, place, units, faults):
    """Note a limit without its unit, a unit without its limit, an aim beside a bound, and what is no limit."""
    bounds = [name for name in LIMITS if row.get(name)]
    if bool(row.get("unit")) != bool(bounds):
        note(faults, place + ("unit" if bounds else "least"), "missing")
    elif "aim" in bounds and len(bounds) > 1:
        note(faults, place + "aim", "aim_alone")
    elif bounds and not any([_is_noted(faults, place + name) for name in ("unit",) + LIMITS]):
        try:
            limit_of(row, units)
        except CalcError as error:
            note(faults, place + error.field, error.code, **error.facts)


def _is_noted(faults, field):
    return any([fault["field"] == field for fault in faults])
