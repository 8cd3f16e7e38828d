"""The check of a rig's profile: everything in it that cannot be used, each with its place."""
from calc.base import entry
from calc.base.errors import CalcError
from calc.rig.fields import (
    BED_FIELDS, END_ENTRIES, END_FIELDS, FIELDS, FIXED, GONE, HOSE_FIELDS, MOST_ROWS, MOST_TEXT, MOST_TIPS, SCHEMA, SUPPLY_FIELDS, UNSAID,
    check_field, is_handbooks, is_text,
)


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
        _note(faults, "id", "missing")
    names = [field[0] for field in FIELDS + GONE]
    for key in profile:
        if key not in names and key not in FIXED:
            _note(faults, str(key)[:MOST_TEXT], "unknown_field")
    _check_fields(profile, FIELDS + GONE, "", context, faults)
    for needed in ("name", "units"):
        if not profile.get(needed):
            _note(faults, needed, "missing")
    for row, place in _rows(profile, "hoses", faults):
        _check_row(row, HOSE_FIELDS, place, context, faults, ("hose",))
        _check_origin(row, place, context, faults)
    for row, place in _rows(profile, "beds", faults):
        needed = ("name",) if row.get("device") and not row.get("hose") and not row.get("length") else ("name", "hose", "length")
        _check_row(row, BED_FIELDS, place, context, faults, needed, ("end", "tips"))
        _check_end(row.get("end"), place + "end.", context, faults)
        _check_tips(row, place, context, faults)
    for row, place in _rows(profile, "supply", faults):
        _check_row(row, SUPPLY_FIELDS, place, context, faults, ("hose", "length"))
    for name in ("hoses", "supply"):
        _check_once(profile, name, faults)
    return faults


def all_problems(profile, shelf, units):
    """The problems of a profile, or the one problem of what is no profile.

    profile, shelf, units: as for problems

    Raises nothing.
    """
    try:
        return problems(profile, shelf, units)
    except CalcError as error:
        return [_problem(error.field, error.code, error.facts)]


def missing(profile):
    """Names of the fields of a profile that hold nothing yet, in their order.

    profile: see calc.rig.profile

    Raises nothing.
    """
    return [field[0] for field in FIELDS if not profile.get(field[0]) or profile[field[0]] in UNSAID.get(field[0], ())]


def _check_row(row, fields, place, context, faults, needed, others=()):
    """Note what of a row is foreign, missing, or cannot be used."""
    names = [field[0] for field in fields]
    for key in row:
        if key not in names and key not in others:
            _note(faults, place + str(key)[:MOST_TEXT], "unknown_field")
    for name in needed:
        if not row.get(name):
            _note(faults, place + name, "missing")
    _check_fields(row, fields, place, context, faults)


def _check_end(end, place, context, faults):
    """Note what of a nozzle cannot be used, the entries of the kind that it is not now included."""
    kind = end.get("kind") if isinstance(end, dict) else None
    if not isinstance(kind, str) or kind not in END_FIELDS:
        _note(faults, place + "kind", "unknown")
        return
    fields = END_FIELDS[kind]
    used = [field[0] for field in fields]
    for key in end:
        if key not in END_ENTRIES and key != "kind":
            _note(faults, place + str(key)[:MOST_TEXT], "unknown_field")
        elif key not in used and key != "kind":
            try:
                entry.check(context[1], key, end[key])
            except CalcError as error:
                _note(faults, place + key, error.code, **error.facts)
    for name in used:
        if not end.get(name):
            _note(faults, place + name, "missing")
    _check_fields(end, fields, place, context, faults)


def _check_fields(row, fields, place, context, faults):
    """Note each field that is there and cannot be used."""
    for field in fields:
        value = row.get(field[0])
        if value is None or value == "":
            continue
        try:
            check_field(value, field, context)
        except CalcError as error:
            _note(faults, place + error.field, error.code, **error.facts)


def _check_origin(row, place, context, faults):
    """Note a figure that is not there, or one that is called the handbook's and is that of another size."""
    shelf, units = context
    if not row.get("coefficient"):
        if row.get("origin") in ("declared", "measured", "typed"):
            _note(faults, place + "coefficient", "missing")
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
        _note(faults, place + "coefficient", "of_another_size", handbook=handbook)


def _check_tips(row, place, context, faults):
    """Note what of the other tips of a master stream cannot be used."""
    tips = row.get("tips", [])
    if not isinstance(tips, list) or (tips and not row.get("device")):
        _note(faults, place + "tips", "unknown_field")
    elif len(tips) > MOST_TIPS:
        _note(faults, place + "tips", "too_many", most=MOST_TIPS)
    else:
        for tip in tips:
            before = len(faults)
            _check_fields({"tip": tip or "?"}, (("tip", "quantity", "diameter", 0.1, 6),), "", context, faults)
            for problem in faults[before:]:
                problem["field"] = place + "tips"


def _check_once(profile, name, faults):
    """Note a hose that a list names twice, at its second row."""
    first = {}
    for row, place in _rows(profile, name, []):
        hose = row.get("hose")
        if isinstance(hose, str) and hose in first:
            _note(faults, place + "hose", "duplicate", row=first[hose])
        elif isinstance(hose, str) and hose:
            first[hose] = int(place.split(".")[1]) + 1


def _rows(profile, name, faults):
    """The rows of a list of a profile, each with its place; notes what is no row."""
    listed = profile.get(name, [])
    if not isinstance(listed, list):
        _note(faults, name, "damaged")
        return []
    if len(listed) > MOST_ROWS:
        _note(faults, name, "too_many", most=MOST_ROWS)
        return []
    sound = []
    for count, row in enumerate(listed):
        place = name + "." + str(count) + "."
        if isinstance(row, dict):
            sound.append((row, place))
        else:
            _note(faults, place[:-1], "damaged")
    return sound


def _problem(field, code, facts):
    problem = {"field": field, "code": code}
    problem.update(facts)
    return problem


def _note(faults, field, code, **facts):
    """Note a problem at its place, such as "beds.2.length"."""
    faults.append(_problem(field, code, facts))
