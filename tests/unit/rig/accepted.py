"""Rigs' profiles at random, within the bounds of their fields and at them, that the judge of profiles takes."""
from calc.rig import check, fields
from site_src.content import catalogue, units

SHELF, US = catalogue.shelf(), units.shown_in("US")
SYSTEMS = tuple(units.baked())
HOSES = sorted(SHELF["hoses"])
TEXTS = ("", "Tollgate", "Å·ß·漢", "<b>x</b>", "{name}", "=1+1", "'; --", "x" * fields.MOST_TEXT)
BEDS, TRIES = 5, 60


def amount(luck, least, most):
    return f"{luck.choice((least, most, luck.uniform(least, most), luck.uniform(least, least + (most - least) / 20))):.3f}".rstrip("0").rstrip(".")


def entered(luck, field):
    """One field as it may be typed or chosen."""
    _, kind, *asked = field
    if kind == "choice":
        return luck.choice(asked[0])
    if kind == "number":
        return amount(luck, *asked)
    if kind == "quantity":
        return amount(luck, *asked[1:]) + "@US"
    return luck.choice(HOSES) if kind == "shelf" else luck.choice(TEXTS)


def row(luck, row_fields, share):
    return {field[0]: entered(luck, field) for field in row_fields if field[1] != "crew" and luck.random() < share}


def bed(luck):
    kind = luck.choice(("fog", "smooth"))
    made = {**row(luck, fields.BED_FIELDS, 0.5), "name": luck.choice(TEXTS[1:]), "end": {"kind": kind, **row(luck, fields.END_FIELDS[kind], 0.95)}}
    if luck.random() < 0.8:
        made.update(hose=luck.choice(HOSES), length=amount(luck, 1, 1200) + "@US")
    return made


def accepted(luck):
    """A profile that has no problem; rows that the judge refuses are left out, one after another."""
    for _ in range(TRIES):
        profile = {**row(luck, fields.FIELDS, luck.random()), "schema": 1, "id": "any-rig", "name": luck.choice(TEXTS[1:]), "units": luck.choice(SYSTEMS),
                   "beds": [bed(luck) for _ in range(luck.randrange(BEDS))], "supply": [row(luck, fields.SUPPLY_FIELDS, 1) for _ in range(luck.randrange(2))],
                   "hoses": [{**row(luck, fields.HOSE_FIELDS, 0.8), "hose": hose} for hose in luck.sample(HOSES, luck.randrange(3))]}
        for _ in range(TRIES):
            problems = check.problems(profile, SHELF, US)
            if not problems:
                return profile
            profile = without(profile, problems[0])
    raise AssertionError("none in so many tries")


def without(profile, problem):
    """The profile less the field or row of a problem."""
    name, *place = problem["field"].split(".")
    if not place:
        return {field: profile[field] for field in profile if field != name}
    return {**profile, name: [row for count, row in enumerate(profile[name]) if str(count) != place[0]]}
