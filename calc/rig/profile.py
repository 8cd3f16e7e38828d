"""A rig's profile: one truck's pump, engine, driveline, hose beds and its department's rules, as plain data.

A profile is `{"schema": 1, "id", "name", "units", ...}` with the FIELDS of calc.rig.fields, all text as typed ("1500@US"), and
    hoses    [{"hose", "coefficient", "origin", "readings", "test_pressure"}], what is known of a hose; without a coefficient it is
             the handbook's, whatever the size; with one, `origin` says whose: declared, measured, typed,
             pooled of a department's rigs as calc.rig.pooled does, or the handbook's
             where it is that (a figure that is called so and is not counts as typed); `readings`, of how many a measured one is
    beds     [{"name", "hose", "length", "crew", "end"}], its preconnected lines; `end` as in calc.layout.typed, smooth or fog.
             With a `device` ("master", "aerial") a bed is a master stream: `loss` of appliance and piping, without one
             the usual; no hose and no length where it is piped to the pump; `tips`, the others it is used with
    supply   [{"hose", "length", "limit"}], the supply hose it carries: all of one hose, and its working limit
Every field but the first four may be absent: a missing value is missing, never filled in. calc.rig.check tells what is wrong.
"""
from calc.base import entry
from calc.rig import check, fault_text
from calc.rig.fields import FIELDS, LISTS, PIPED, is_handbooks, is_text


def at_hand(profile, shelf, units):
    """What a page needs of its rig, in one question: the shelf as it has it, and what of its profile can be used.

    profile: as the module says, sound or not
    shelf: what is at hand, see calc.base.shelf
    units: see calc.base.display

    Returns the answer of contract `rig.at_hand`. The shelf has the rig's own coefficients, limits, wye loss and friction
    rule in place of the usual ones: a hose that the profile has figures of carries their `origin`, and `work_psi` where it
    has a working limit; what hangs on a fault is marked, see calc.base.shelf; `faults` are the problems where there are any.
    The rig is the profile without each faulty field and each row with a fault, empty where it is none; beds, see beds_of. Raises nothing.
    """
    return judged(profile, check.all_problems(profile, shelf, units), shelf, units)


def judged(profile, problems, shelf, units):
    """What a page needs of a rig whose problems are known.

    profile, shelf, units: as for at_hand
    problems: of check.all_problems

    Returns what at_hand does. Raises nothing.
    """
    faulty = _faulty(problems)
    own = _sound(profile, faulty)
    hoses = dict(shelf["hoses"])
    for row in own.get("hoses", []):
        hoses[row["hose"]] = _own_hose(row, hoses[row["hose"]], units)
    for row in own.get("supply", []):
        if row.get("limit"):
            figures = dict(hoses[row["hose"]])
            figures["work_psi"] = entry.quantity(units, "pressure", "limit", row["limit"])
            hoses[row["hose"]] = figures
    for name, place in _faulty_hoses(profile, faulty, shelf):
        figures = dict(hoses[name])
        figures["faulty"] = place
        hoses[name] = figures
    appliances = dict(shelf["appliances"])
    if own.get("wye_loss"):
        loss_psi = entry.quantity(units, "pressure", "wye_loss", own["wye_loss"])
        from_gpm = entry.quantity(units, "flow", "wye_from", own.get("wye_from") or "0")
        appliances["wye"] = [[0, 0], [from_gpm, loss_psi]] if from_gpm > 0 else [[0, loss_psi]]
    rigs = {"hoses": hoses, "crews": shelf["crews"], "appliances": appliances}
    spoiled = [faulty[name] for name in ("profile", "schema", "wye_loss", "wye_from") if name in faulty]
    if spoiled and (not own or profile.get("wye_loss")):
        rigs["faulty_appliances"] = {"wye": spoiled[0]}
    if own.get("friction_rule"):
        rigs["rule"] = own["friction_rule"]
    if problems:
        rigs["faults"] = fault_text.read(problems, profile, units)
    return {"shelf": rigs, "rig": own, "beds": beds_of(own), "faulty_beds": _faulty_beds(profile, own, faulty)}


def _faulty(faults):
    """The place of the first fault by the field, or the row ("beds.2"), that it is in."""
    places = {}
    for problem in faults:
        whole = problem["field"]
        parts = whole.split(".")
        if problem["code"] == "unknown_field" and len(parts) < 3:
            continue  # of no field and no row; left out by its name
        if len(parts) > 1 and parts[0] in LISTS:
            whole = parts[0] + "." + parts[1]
        if whole not in places:
            places[whole] = problem["field"]
    return places


def _sound(profile, faulty):
    if "profile" in faulty or "schema" in faulty:
        return {}
    own = {}
    names = [field[0] for field in FIELDS]
    for key in profile:
        if key in faulty:
            continue
        if key in names or key in ("schema", "id"):
            own[key] = profile[key]
        elif key in LISTS:
            own[key] = [row for place, row in enumerate(profile[key]) if key + "." + str(place) not in faulty]
    return own


def _own_hose(row, handbook, units):
    """A hose with the figures of a sound row."""
    figures = dict(handbook)
    figures["origin"] = "handbook"
    if row.get("coefficient"):
        figures["coefficient"] = entry.quantity(units, "coefficient", "coefficient", row["coefficient"])
        figures["origin"] = row.get("origin") or "handbook"
        if figures["origin"] == "handbook" and not is_handbooks(figures["coefficient"], handbook):
            figures["origin"] = "typed"
    if row.get("test_pressure"):
        figures["test_psi"] = entry.quantity(units, "pressure", "test_pressure", row["test_pressure"])
    return figures


def _faulty_hoses(profile, faulty, shelf):
    """Each hose that a fault spoils, with the place of the fault."""
    spoiled = []
    for whole in ("profile", "schema", "hoses"):
        if whole in faulty:
            spoiled += [(name, faulty[whole]) for name in shelf["hoses"]]
    for name in ("hoses", "supply"):
        listed = [] if "profile" in faulty or name in faulty else profile.get(name, [])
        for count, row in enumerate(listed):
            place = faulty.get(name + "." + str(count))
            hose = row.get("hose") if isinstance(row, dict) else None
            if place and isinstance(hose, str) and hose in shelf["hoses"] and (name == "hoses" or place.endswith(".limit")):
                spoiled.append((hose, place))
    return spoiled


def _faulty_beds(profile, own, faulty):
    """The beds that a fault leaves out, see at_hand."""
    left_out, before = [], 0
    for count, bed in enumerate(profile["beds"] if "beds" in own else []):
        place = faulty.get("beds." + str(count))
        if place is None:
            before += len(_with_tips(bed))
            continue
        left_out.append({"name": _name_of(bed, count), "place": place, "before": before})
    return left_out


def _name_of(bed, count):
    """The name of a bed of any kind, or its row counted from 1."""
    name = bed.get("name") if isinstance(bed, dict) else None
    return name if is_text(name) and name else str(count + 1)


def layout_of(bed):
    """The layout of one hose bed on level ground, as calc.layout.typed takes it.

    bed: a row of a sound profile's beds

    Raises nothing.
    """
    line = {"id": "A", "hose": bed.get("hose") or PIPED, "length": bed.get("length") or "0", "height": "0", "end": bed["end"]}
    if bed.get("device"):
        line["device"] = bed["device"]
        line["loss"] = bed.get("loss") or ""
        if bed.get("loss_at"):
            line["loss_at"] = bed["loss_at"]
        if bed.get("device_most"):
            line["device_most"] = bed["device_most"]
    return {"crew": bed.get("crew") or "2", "lines": [line]}


def beds_of(profile):
    """The beds of a sound profile, a master stream once for each of its tips.

    profile: as the module says

    Returns rows as of its beds. Raises nothing.
    """
    return [bed for row in profile.get("beds", []) for bed in _with_tips(row)]


def bed_rows(profile, own):
    """The beds of a profile in its order, each with its name: those that can be used, and None for those with a fault.

    profile: as the module says, sound or not
    own: what of it can be used, `rig` of at_hand

    Returns [name, bed, place in the profile] rows, a master stream on hose once for each of its tips; piped, all of them ask the same of the
    pump. Raises nothing.
    """
    usable = own.get("beds", [])
    listed = profile["beds"] if "beds" in own else []
    named = []
    for place, bed in enumerate(listed):
        if bed in usable:
            named += [[variant["name"], variant, place] for variant in (_with_tips(bed) if bed.get("hose") else [bed])]
        else:
            named.append([_name_of(bed, place), None, place])
    return named


def _with_tips(bed):
    """A bed, and the same with each other tip of its master stream."""
    beds = [bed]
    for tip in bed.get("tips", []) if bed["end"]["kind"] == "smooth" else []:
        if tip != bed["end"]["tip"]:
            other = dict(bed)
            other["end"] = dict(bed["end"])
            other["end"]["tip"] = tip
            beds.append(other)
    return beds
