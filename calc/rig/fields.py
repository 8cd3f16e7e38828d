"""The fields of a rig's profile, what each may hold, and the check of one."""
from calc.base import display, entry
from calc.base.errors import CalcError
from calc.hydraulics import friction_rule

MOST_ROWS = 40
MOST_TEXT = 60
MOST_TIPS = 6
HANDBOOK_SLACK = 0.01  # a figure within it of the handbook's is that figure, rounded; more is another figure

# name, kind, and for a choice its options; for a number least and most; for a quantity its kind, least and most,
# in calc's units. The bounds are what a fire pump can have: common practice.
FIELDS = (
    ("name", "text"),
    ("units", "choice", ("US", "SI", "bar", "imperial")),
    ("drive", "choice", ("midship", "pto", "front", "rear_shaft", "rear_pto")),
    ("shift_control", "choice", ("air", "electric", "manual")),
    ("transmission", "choice", ("automatic", "manual")),
    ("pump_rated", "quantity", "flow", 50, 6000),
    ("pump_stages", "choice", ("1", "2")),
    ("pressure_control", "choice", ("governor", "relief", "none")),
    ("pump_ratio", "number", 0.2, 10),
    ("tank", "quantity", "volume", 1, 20000),
    ("intakes", "text"),
    ("idle", "number", 300, 1500),
    ("governed", "number", 1000, 4000),
    ("speed_capacity", "number", 300, 4000),
    ("speed_seventy", "number", 300, 4000),
    ("speed_fifty", "number", 300, 4000),
    ("axle_ratio", "number", 1, 20),
    ("tyre_rev", "number", 200, 1500),
    ("pump_gear", "text"),
    ("pump_gear_ratio", "number", 0.3, 10),
    ("pump_light", "choice", ("before_drive", "after_drive")),
    ("speedometer", "choice", ("driveline", "wheels")),
    ("speed_in_pump", "text"),
    ("override_place", "text"),
    ("override_way", "text"),
    ("override_tool", "text"),
    ("stop_controls", "text"),
    ("floor", "quantity", "length", 5, 40),
    ("wye_from", "quantity", "flow", 0, 3000),
    ("wye_loss", "quantity", "pressure", 0, 100),
    ("panel_step", "quantity", "pressure", 0.1, 50),
    ("friction_rule", "choice", friction_rule.CODES),
    ("residual", "quantity", "pressure", 0, 150),
    ("standard", "choice", ("us", "canada", "europe")),
    ("owner", "text"),
    ("dated", "text"),
)
# Choices of older profiles that say too little: read, never taken for an answer.
UNSAID = {"drive": ("rear",)}
HOSE_FIELDS = (
    ("hose", "shelf"),
    ("coefficient", "quantity", "coefficient", 0.001, 5000),
    ("origin", "choice", ("handbook", "declared", "measured", "typed")),
    ("test_pressure", "quantity", "pressure", 50, 1500),
)
BED_FIELDS = (
    ("name", "text"),
    ("hose", "shelf"),
    ("length", "quantity", "length", 1, 5000),
    ("crew", "crew"),
    ("device", "choice", ("master", "aerial")),
    ("loss", "quantity", "pressure", 0, 150),
)
SUPPLY_FIELDS = (
    ("hose", "shelf"),
    ("length", "quantity", "length", 1, 20000),
    ("limit", "quantity", "pressure", 20, 1000),
)
END_FIELDS = {
    "fog": (("flow", "quantity", "flow", 1, 5000), ("pressure", "quantity", "pressure", 5, 1000)),
    "smooth": (("tip", "quantity", "diameter", 0.1, 6), ("pressure", "quantity", "pressure", 5, 1000)),
}
KEPT_ENTRIES = ("flow", "tip", "pressure")  # a bed keeps the entries of the nozzle kind it does not use now
LISTS = ("hoses", "beds", "supply")
FIXED = ("schema", "id", "hoses", "beds", "supply")
PIPED = "piped"  # in place of a hose: a device that is plumbed to the pump


def note(found, field, error):
    """Note a refusal at its place.

    found: the list of problems so far
    field: the place, such as "beds.2.length"
    error: a CalcError

    Raises nothing.
    """
    problem = {"field": field, "code": error.code}
    problem.update(error.facts)
    found.append(problem)


def rows(profile, name, found):
    """The rows of a list of a profile, each with its place; notes what is no row.

    profile: plain data
    name: one of LISTS
    found: the list of problems so far

    Raises nothing.
    """
    listed = profile.get(name, [])
    if not isinstance(listed, list):
        found.append({"field": name, "code": "damaged"})
        return []
    if len(listed) > MOST_ROWS:
        found.append({"field": name, "code": "too_many", "most": MOST_ROWS})
        return []
    sound = []
    for count, row in enumerate(listed):
        place = name + "." + str(count) + "."
        if isinstance(row, dict):
            sound.append((row, place))
        else:
            found.append({"field": place[:-1], "code": "damaged"})
    return sound


def check_row(row, fields, place, context, found, needed, others=()):
    """Note what of a row is foreign, missing, or cannot be used.

    row: plain data by name
    fields: what it may hold, see FIELDS
    place: of the row, such as "beds.2."
    context: the shelf and the units, see calc.rig.profile
    found: the list of problems so far
    needed: names that must hold something
    others: names that are checked elsewhere

    Raises nothing.
    """
    names = [field[0] for field in fields]
    for key in row:
        if key not in names and key not in others:
            found.append({"field": place + str(key)[:MOST_TEXT], "code": "unknown_field"})
    for name in needed:
        if not row.get(name):
            found.append({"field": place + name, "code": "missing"})
    check_fields(row, fields, place, context, found)


def check_end(end, place, context, found):
    """Note what of a nozzle cannot be used, the entries of the kind that it is not now included.

    end, place, context, found: as for check_row, the nozzle in place of the row

    Raises nothing.
    """
    kind = end.get("kind") if isinstance(end, dict) else None
    if not isinstance(kind, str) or kind not in END_FIELDS:
        found.append({"field": place + "kind", "code": "unknown"})
        return
    fields = END_FIELDS[kind]
    used = [field[0] for field in fields]
    for key in end:
        if key not in KEPT_ENTRIES and key != "kind":
            found.append({"field": place + str(key)[:MOST_TEXT], "code": "unknown_field"})
        elif key not in used and key != "kind":
            try:
                entry.check(context[1], key, end[key])
            except CalcError as error:
                note(found, place + key, error)
    for name in used:
        if not end.get(name):
            found.append({"field": place + name, "code": "missing"})
    check_fields(end, fields, place, context, found)


def is_text(value):
    """Whether a value is a person's own words, as long as a field takes.

    value: anything

    Raises nothing.
    """
    return isinstance(value, str) and len(value) <= MOST_TEXT


def check_fields(row, fields, place, context, found):
    """Note each field that is there and cannot be used.

    row, fields, place, context, found: as for check_row

    Raises nothing.
    """
    for field in fields:
        value = row.get(field[0])
        if value is None or value == "":
            continue
        try:
            check_field(value, field, context)
        except CalcError as error:
            note(found, place + error.field, error)


def check_field(value, field, context):
    """Refuse what a field cannot hold.

    value: anything
    field: a row of FIELDS
    context: the shelf and the units, see calc.rig.profile

    Raises CalcError naming the field.
    """
    shelf, units = context
    name, kind = field[0], field[1]
    if not is_text(value):
        raise CalcError(name, "not_text")
    if kind == "choice" and value not in field[2] and value not in UNSAID.get(name, ()):
        raise CalcError(name, "unknown")
    if kind == "shelf" and (value not in shelf["hoses"] or value == PIPED):
        raise CalcError(name, "unknown")
    if kind == "crew" and value not in shelf["crews"]:
        raise CalcError(name, "unknown")
    if kind == "number":
        amount = entry.number(name, value, "ratio" if name.endswith("ratio") else "speed", display.decimal(units))
        if not field[2] <= amount <= field[3]:
            raise CalcError(name, "out_of_range", least=field[2], most=field[3])
    elif kind == "quantity":
        amount = entry.quantity(units, field[2], name, value)
        if not field[3] <= amount <= field[4]:
            raise CalcError(name, "out_of_range", least=field[3], most=field[4])


def check_origin(row, place, context, found):
    """Note a figure that is not there, or one that is called the handbook's and is that of another size.

    row, place, context, found: as for check_row

    Raises nothing.
    """
    shelf, units = context
    if not row.get("coefficient"):
        if row.get("origin") in ("declared", "measured", "typed"):
            found.append({"field": place + "coefficient", "code": "missing"})
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
        found.append({"field": place + "coefficient", "code": "of_another_size", "handbook": handbook})


def is_handbooks(coefficient, figures):
    """Whether a figure is the handbook's, as it stands there or rounded.

    coefficient: psi per 100 ft at 100 gpm
    figures: a hose of the shelf

    Raises nothing.
    """
    return abs(coefficient - figures["coefficient"]) <= HANDBOOK_SLACK * figures["coefficient"]


def check_tips(row, place, context, found):
    """Note what of the other tips of a master stream cannot be used.

    row, place, context, found: as for check_row

    Raises nothing.
    """
    tips = row.get("tips", [])
    if not isinstance(tips, list) or (tips and not row.get("device")):
        found.append({"field": place + "tips", "code": "unknown_field"})
    elif len(tips) > MOST_TIPS:
        found.append({"field": place + "tips", "code": "too_many", "most": MOST_TIPS})
    else:
        for tip in tips:
            before = len(found)
            check_fields({"tip": tip or "?"}, (("tip", "quantity", "diameter", 0.1, 6),), "", context, found)
            for problem in found[before:]:
                problem["field"] = place + "tips"


def check_once(profile, name, found):
    """Note a hose that a list names twice, at its second row.

    profile, name, found: as for rows

    Raises nothing.
    """
    first = {}
    for row, place in rows(profile, name, []):
        hose = row.get("hose")
        if isinstance(hose, str) and hose in first:
            found.append({"field": place + "hose", "code": "duplicate", "row": first[hose]})
        elif isinstance(hose, str) and hose:
            first[hose] = int(place.split(".")[1]) + 1
