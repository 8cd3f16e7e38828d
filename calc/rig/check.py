"""The check of a rig's profile: everything in it that cannot be used, each with its place."""
from calc.base import entry
from calc.base.errors import CalcError
from calc.rig import check_rows
from calc.rig.fields import (
    BED_FIELDS, END_ENTRIES, END_FIELDS, FIELDS, FIXED, GONE, HOSE_FIELDS, MOST_TEXT, MOST_TIPS, SCHEMA, SUPPLY_FIELDS, UNSAID, is_handbooks, is_text,
)
from calc.rig.rows import check_fields, check_row, listed, note, problem


def problems(profile, shelf, units):
    """Everything in a profile that cannot be used, each with its place.

    profile: see calc.rig.profile
    shelf: what is at hand, see calc.base.shelf
    units: see calc.base.display

    Returns a list, each contract `problem`; empty for a sound profile.
    Raises CalcError naming profile or schema where it is no profile at all or of another version.
    """
    if not isinstance(profile, dict):
        raise CalcError("profile", "damaged")
    if profile.get("schema") != SCHEMA or profile["schema"] is True:
        raise CalcError("schema", "unknown_version", known=SCHEMA)
    context = (shelf, units)
    faults = []
    if not is_text(profile.get("id")) or not profile["id"]:
        note(faults, "id", "missing")
    names = [field[0] for field in FIELDS + GONE]
    for key in profile:
        if key not in names and key not in FIXED:
            note(faults, str(key)[:MOST_TEXT], "unknown_field")
    check_fields(profile, FIELDS + GONE, "", context, faults)
    for needed in ("name", "units"):
        if not profile.get(needed):
            note(faults, needed, "missing")
    for row, place in listed(profile, "hoses", faults):
        check_row(row, HOSE_FIELDS, place, context, faults, ("hose",))
        _check_origin(row, place, context, faults)
    for row, place in listed(profile, "beds", faults):
        needed = ("name",) if row.get("device") and not row.get("hose") and not row.get("length") else ("name", "hose", "length")
        check_row(row, BED_FIELDS, place, context, faults, needed, ("end", "tips"))
        _check_end(row.get("end"), place + "end.", context, faults)
        _check_tips(row, place, context, faults)
    for row, place in listed(profile, "supply", faults):
        check_row(row, SUPPLY_FIELDS, place, context, faults, ("hose", "length"))
    for name in ("hoses", "supply"):
        _check_once(profile, name, faults)
    if "checks" in profile:
        faults += check_rows.problems(profile["checks"], units)
    return faults


def all_problems(profile, shelf, units):
    """The problems of a profile, or the one problem of what is no profile.

    profile, shelf, units: as for problems

    Raises nothing.
    """
    try:
        return problems(profile, shelf, units)
    except CalcError as error:
        return [problem(error.field, error.code, error.facts)]


def missing(profile):
    """Names of the fields of a profile that hold nothing yet, in their order.

    profile: see calc.rig.profile

    Raises nothing.
    """
    return [field[0] for field in FIELDS if not profile.get(field[0]) or profile[field[0]] in UNSAID.get(field[0], ())]


def _check_end(end, place, context, faults):
    """Note what of a nozzle cannot be used, the entries of the kind that it is not now included."""
    kind = end.get("kind") if isinstance(end, dict) else None
    if not isinstance(kind, str) or kind not in END_FIELDS:
        note(faults, place + "kind", "unknown")
        return
    fields = END_FIELDS[kind]
    used = [field[0] for field in fields]
    for key in end:
        if key not in END_ENTRIES and key != "kind":
            note(faults, place + str(key)[:MOST_TEXT], "unknown_field")
        elif key not in used:
            try:
                entry.check(context[1], key, end[key])
            except CalcError as error:
                note(faults, place + key, error.code, **error.facts)
    for name in used:
        if not end.get(name):
            note(faults, place + name, "missing")
    check_fields(end, fields, place, context, faults)


def _check_origin(row, place, context, faults):
    """Note a figure that is not there, or one that is called the handbook's and is that of another size."""
    shelf, units = context
    if not row.get("coefficient"):
        if row.get("origin") in ("declared", "measured", "pooled", "typed"):
            note(faults, place + "coefficient", "missing")
        return
    name = row.get("hose")
    if row.get("origin") != "handbook" or not isinstance(name, str) or name not in shelf["hoses"]:
        return
    try:
        own = entry.quantity(units, "coefficient", "coefficient", row["coefficient"])
    except CalcError:
        return  # noted at the field
    if not is_handbooks(own, shelf["hoses"][name]) and any(is_handbooks(own, shelf["hoses"][other]) for other in shelf["hoses"]):
        handbook = shelf["hoses"][name]["coefficient"]
        note(faults, place + "coefficient", "of_another_size", handbook=handbook)


def _check_tips(row, place, context, faults):
    """Note what of the other tips of a master stream cannot be used."""
    tips = row.get("tips", [])
    if not isinstance(tips, list) or (tips and not row.get("device")):
        note(faults, place + "tips", "unknown_field")
    elif len(tips) > MOST_TIPS:
        note(faults, place + "tips", "too_many", most=MOST_TIPS)
    else:
        for tip in tips:
            before = len(faults)
            check_fields({"tip": tip or "?"}, (("tip", "quantity", "diameter", 0.1, 6),), "", context, faults)
            for fault in faults[before:]:
                fault["field"] = place + "tips"


def _check_once(profile, name, faults):
    """Note a hose that a list names twice, at its second row."""
    first = {}
    for row, place in listed(profile, name, []):
        hose = row.get("hose")
        if isinstance(hose, str) and hose in first:
            note(faults, place + "hose", "duplicate", row=first[hose])
        elif isinstance(hose, str) and hose:
            first[hose] = int(place.split(".")[1]) + 1
