"""The lists of a profile, row by row: what of a row is foreign, missing, or cannot be used, each with its place."""
from calc.base.errors import CalcError
from calc.rig.fields import MOST_ROWS, MOST_TEXT, check_field


def check_row(row, fields, place, context, faults, needed, others=()):
    """Note what of a row is foreign, missing, or cannot be used.

    row: an object, of a list of a profile
    fields: rows as FIELDS of calc.rig.fields
    place: of the row, such as "beds.2."
    context: as calc.rig.fields.check_field takes it
    faults: list that problems are added to
    needed, others: names that it must have, and names that are looked at elsewhere

    Raises nothing.
    """
    names = [field[0] for field in fields]
    for key in row:
        if key not in names and key not in others:
            note(faults, place + str(key)[:MOST_TEXT], "unknown_field")
    for name in needed:
        if not row.get(name):
            note(faults, place + name, "missing")
    check_fields(row, fields, place, context, faults)


def check_fields(row, fields, place, context, faults):
    """Note each field that is there and cannot be used.

    row, fields, place, context, faults: as for check_row

    Raises nothing.
    """
    for field in fields:
        value = row.get(field[0])
        if value is None or value == "":
            continue
        try:
            check_field(value, field, context)
        except CalcError as error:
            note(faults, place + error.field, error.code, **error.facts)


def listed(profile, name, faults, most=MOST_ROWS):
    """The rows of a list of a profile, each with its place; notes what is no row.

    profile: see calc.rig.profile
    name: of the list
    faults: list that problems are added to
    most: how many rows it may have

    Raises nothing.
    """
    rows = profile.get(name, [])
    if not isinstance(rows, list):
        note(faults, name, "damaged")
        return []
    if len(rows) > most:
        note(faults, name, "too_many", most=most)
        return []
    sound = []
    for count, row in enumerate(rows):
        place = name + "." + str(count) + "."
        if isinstance(row, dict):
            sound.append((row, place))
        else:
            note(faults, place[:-1], "damaged")
    return sound


def problem(field, code, facts):
    """A problem, contract `problem`.

    field: its place, such as "beds.2.length"
    code: what is wrong
    facts: more of it, by name

    Raises nothing.
    """
    fault = {"field": field, "code": code}
    fault.update(facts)
    return fault


def note(faults, field, code, **facts):
    """Note a problem at its place.

    faults: list that it is added to
    field, code, facts: as for problem

    Raises nothing.
    """
    faults.append(problem(field, code, facts))
