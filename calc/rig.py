"""A rig's profile: one truck's pump, engine, driveline, hose beds and its department's rules, as plain data.

A profile is `{"schema": 1, "id", "name", "units", ...}` with the FIELDS below, all text as typed ("1500@US"), and
    hoses    [{"hose", "coefficient", "origin", "test_pressure"}], what is known better than the handbook
    beds     [{"name", "hose", "length", "crew", "end"}], its preconnected lines; `end` as in calc.reading
Every field but the first four may be absent: a missing value is missing, never filled in.
"""
from calc import entry, rule
from calc.errors import CalcError

SCHEMA = 1
MOST_ROWS = 40
MOST_TEXT = 60

# name, kind, and for a choice its options; for a number least and most; for a quantity its kind, least and most,
# in calc's units. The bounds are what a fire pump can have: common practice.
FIELDS = (
    ("name", "text"),
    ("units", "choice", ("US", "SI", "bar", "imperial")),
    ("drive", "choice", ("midship", "pto", "front", "rear")),
    ("shift_control", "choice", ("air", "electric", "manual")),
    ("transmission", "choice", ("automatic", "manual")),
    ("pump_rated", "quantity", "flow", 50, 6000),
    ("pump_stages", "choice", ("1", "2")),
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
    ("friction_rule", "choice", rule.CODES),
    ("residual", "quantity", "pressure", 0, 150),
    ("standard", "choice", ("us", "canada", "europe")),
    ("owner", "text"),
    ("dated", "text"),
)
HOSE_FIELDS = (
    ("hose", "shelf"),
    ("coefficient", "quantity", "coefficient", 0.001, 5000),
    ("origin", "choice", ("handbook", "declared", "measured")),
    ("test_pressure", "quantity", "pressure", 50, 1500),
)
BED_FIELDS = (
    ("name", "text"),
    ("hose", "shelf"),
    ("length", "quantity", "length", 1, 5000),
    ("crew", "crew"),
)
END_FIELDS = {
    "fog": (("flow", "quantity", "flow", 1, 5000), ("pressure", "quantity", "pressure", 5, 1000)),
    "smooth": (("tip", "quantity", "diameter", 0.1, 6), ("pressure", "quantity", "pressure", 5, 1000)),
}
KEPT_ENTRIES = ("flow", "tip", "pressure")  # a bed keeps the entries of the nozzle kind it does not use now
FIXED = ("schema", "id", "hoses", "beds")


def problems(profile, shelf, units):
    """Everything in a profile that cannot be used, each with its place.

    profile: as the module says
    shelf: what is at hand, see calc.reading
    units: see calc.display

    Returns a list of `{"field", "code", ...facts}`, field such as "beds.2.length"; empty for a sound profile.
    Raises CalcError naming profile or schema where it is no profile at all or of another version.
    Source: common practice.
    """
    if not isinstance(profile, dict):
        raise CalcError("profile", "damaged")
    if profile.get("schema") != SCHEMA or profile["schema"] is True:
        raise CalcError("schema", "unknown_version", known=SCHEMA)
    found = []
    if not _is_text(profile.get("id")) or not profile["id"]:
        found.append({"field": "id", "code": "missing"})
    names = [field[0] for field in FIELDS]
    for key in profile:
        if key not in names and key not in FIXED:
            found.append({"field": str(key)[:MOST_TEXT], "code": "unknown_field"})
    _check_fields(profile, FIELDS, "", shelf, units, found)
    for needed in ("name", "units"):
        if not profile.get(needed):
            found.append({"field": needed, "code": "missing"})
    for row, place in _rows(profile, "hoses", found):
        _check_row(row, HOSE_FIELDS, place, shelf, units, found, ("hose", "coefficient"))
    for row, place in _rows(profile, "beds", found):
        _check_row(row, BED_FIELDS, place, shelf, units, found, ("name", "hose", "length"), ("end",))
        _check_end(row.get("end"), place + "end.", shelf, units, found)
    return found


def _rows(profile, name, found):
    """The rows of a list of a profile, each with its place; notes what is no row."""
    rows = profile.get(name, [])
    if not isinstance(rows, list):
        found.append({"field": name, "code": "damaged"})
        return []
    if len(rows) > MOST_ROWS:
        found.append({"field": name, "code": "too_many", "most": MOST_ROWS})
        return []
    sound = []
    for count, row in enumerate(rows):
        place = name + "." + str(count) + "."
        if isinstance(row, dict):
            sound.append((row, place))
        else:
            found.append({"field": place[:-1], "code": "damaged"})
    return sound


def _check_row(row, fields, place, shelf, units, found, needed, others=()):
    names = [field[0] for field in fields]
    for key in row:
        if key not in names and key not in others:
            found.append({"field": place + str(key)[:MOST_TEXT], "code": "unknown_field"})
    for name in needed:
        if not row.get(name):
            found.append({"field": place + name, "code": "missing"})
    _check_fields(row, fields, place, shelf, units, found)


def _check_end(end, place, shelf, units, found):
    kind = end.get("kind") if isinstance(end, dict) else None
    if not isinstance(kind, str) or kind not in END_FIELDS:
        found.append({"field": place + "kind", "code": "unknown"})
        return
    fields = END_FIELDS[kind]
    for key in end:
        if key != "kind" and (key not in KEPT_ENTRIES or not _is_text(end[key])):
            found.append({"field": place + str(key)[:MOST_TEXT], "code": "unknown_field"})
    for field in fields:
        if not end.get(field[0]):
            found.append({"field": place + field[0], "code": "missing"})
    _check_fields(end, fields, place, shelf, units, found)


def _is_text(value):
    return isinstance(value, str) and len(value) <= MOST_TEXT


def _check_fields(row, fields, place, shelf, units, found):
    """Note each field that is there and cannot be used."""
    for field in fields:
        value = row.get(field[0])
        if value is None or value == "":
            continue
        try:
            _check_field(value, field, shelf, units)
        except CalcError as error:
            note = {"field": place + error.field, "code": error.code}
            note.update(error.facts)
            found.append(note)


def _check_field(value, field, shelf, units):
    name, kind = field[0], field[1]
    if not _is_text(value):
        raise CalcError(name, "not_text")
    if kind == "choice" and value not in field[2]:
        raise CalcError(name, "unknown")
    if kind == "shelf" and value not in shelf["hoses"]:
        raise CalcError(name, "unknown")
    if kind == "crew" and value not in shelf["crews"]:
        raise CalcError(name, "unknown")
    if kind == "number":
        amount, least, most = entry.number(name, value), field[2], field[3]
    elif kind == "quantity":
        amount, least, most = entry.quantity(units, field[2], name, value), field[3], field[4]
    else:
        return
    if not least <= amount <= most:
        raise CalcError(name, "out_of_range", least=least, most=most)


def missing(profile):
    """Names of the fields of a profile that hold nothing yet, in their order.

    profile: as the module says

    Raises nothing. Source: common practice.
    """
    return [field[0] for field in FIELDS if not profile.get(field[0])]


def shelf_of(profile, shelf, units):
    """The shelf as this rig has it: its own coefficients, test pressures, wye loss and friction rule in place of the usual ones.

    profile: a sound one
    shelf, units: as for problems

    Returns a shelf; a hose with its own coefficient carries its `origin`. Raises CalcError naming the field.
    Source: the profile, which names whose each figure is.
    """
    hoses = dict(shelf["hoses"])
    for row in profile.get("hoses", []):
        own = dict(hoses[row["hose"]])
        own["coefficient"] = entry.quantity(units, "coefficient", "coefficient", row["coefficient"])
        own["origin"] = row.get("origin") or "handbook"
        if row.get("test_pressure"):
            own["test_psi"] = entry.quantity(units, "pressure", "test_pressure", row["test_pressure"])
        hoses[row["hose"]] = own
    appliances = dict(shelf["appliances"])
    if profile.get("wye_loss"):
        loss_psi = entry.quantity(units, "pressure", "wye_loss", profile["wye_loss"])
        from_gpm = entry.quantity(units, "flow", "wye_from", profile.get("wye_from") or "0")
        appliances["wye"] = [[0, 0], [from_gpm, loss_psi]] if from_gpm > 0 else [[0, loss_psi]]
    shown = {"hoses": hoses, "crews": shelf["crews"], "appliances": appliances}
    if profile.get("friction_rule"):
        shown["rule"] = profile["friction_rule"]
    return shown


def lay_of(bed):
    """The lay of one hose bed on level ground, as calc.reading takes it.

    bed: a row of a sound profile's beds

    Raises nothing. Source: the profile.
    """
    line = {"id": "A", "hose": bed["hose"], "length": bed["length"], "height": "0", "end": bed["end"]}
    return {"crew": bed.get("crew") or "2", "lines": [line]}
