"""What a part of a service test is made of: its fields, its limits, and the part itself, contract `plan_test` less its name and texts."""


def part(fields, limits, missing=(), hold_s=None, start=(), kind="figures"):
    """A part of a test, that has no name yet: one maker serves several.

    fields, limits: of field and limit
    missing: names of what is not known
    hold_s: how long it is held, seconds, or None
    start: names of the fields that must stand before its time counts
    kind: as the contract says

    Raises nothing.
    """
    return {"kind": kind, "fields": fields, "limits": limits, "missing": list(missing), "hold_s": hold_s, "start": list(start)}


def checks(names, missing=()):
    """A part of answers alone, each yes or no.

    names: of the answers
    missing: as for part

    Raises nothing.
    """
    return part([field(name) for name in names], [], missing, kind="checks")


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


def near(name, kind, aim, section):
    """A figure that is to be set near its aim.

    name, kind: as for limit
    aim: in calc's unit
    section: of the standard; "set_band_percent" is how far off it may be, either way

    Raises nothing. Source: the standard's data.
    """
    band = aim * section["set_band_percent"] / 100
    return limit(name, kind, aim - band, aim + band)
