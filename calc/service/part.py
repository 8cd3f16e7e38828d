"""What a part of a service test is made of: its fields, its limits, and the part itself, contract `plan_test` less its texts."""


def part(name, kind, fields, limits, missing=(), hold_s=None, start=()):
    """A part of a test.

    name, kind: of the part, as the contract says
    fields, limits: of field and limit
    missing: names of what is not known
    hold_s: how long it is held, seconds, or None
    start: names of the fields that must stand before its time counts

    Raises nothing.
    """
    return {"id": name, "kind": kind, "fields": fields, "limits": limits, "missing": list(missing), "hold_s": hold_s, "start": list(start)}


def field(name, kind="check"):
    """Something to be entered: a check, or an amount of that kind.

    name, kind: of the field

    Raises nothing.
    """
    return {"id": name, "kind": kind, "needed": True}


def limit(name, kind, least=None, most=None, how="value", of=None):
    """What a figure is held to.

    name, kind: of the figure, and of its quantity
    least, most: in calc's unit, or None
    how: the figure is worked from its readings, as the contract says
    of: names of the readings, or None where it is one of that name

    Raises nothing.
    """
    return {"id": name, "kind": kind, "how": how, "of": list(of or [name]), "least": least, "most": most}
