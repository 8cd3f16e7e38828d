"""The parts of a service test that are no pumping runs: what is entered in each, and the limits it is judged by."""
from calc.service import control_parts, panel_parts
from calc.service.part import checks, field, limit, part
from calc.service.runs import runs_of, step_for

CHECKS = {  # answered yes or no, before or beside the figures
    "checks_dry": ("limits_confirmed", "chocks", "people_clear", "streams_secured", "hearing", "stop_control", "fluids"),
    "shift": ("shift_proved",),
    "gauges_zero": ("zero_discharge", "zero_intake", "zero_pitot"),
    "transfer": ("transfer_both_ways",),
    "leaks": ("leak_casing", "leak_shaft", "leak_valves", "leak_piping"),
    "tank_level": ("level_full", "level_three_quarters", "level_half", "level_quarter", "level_empty"),
}
_SPLIT, _PTO = ("shift_locked", "shift_gear_locked"), ("pto_locked",)  # what holds the pump in while it pumps
DRIVES = {"midship": _SPLIT, "rear_shaft": _SPLIT, "pto": _PTO, "front": _PTO, "rear_pto": _PTO}
SITE = (  # condition, kind, its limits in the standard, whether only from draft
    ("air_f", "temperature", "air_least_f", "air_most_f", False),
    ("water_f", "temperature", "water_least_f", "water_most_f", False),
    ("water_end_f", "temperature", "water_least_f", "water_most_f", False),
    ("barometer_inhg", "barometer", "barometer_least_inhg", None, False),
    ("altitude_ft", "length", None, "altitude_most_ft", False),
    ("lift_ft", "length", "lift_least_ft", "lift_most_ft", True),
    ("suction_length_ft", "length", "suction_length_least_ft", None, True),
    ("depth_ft", "length", "depth_least_ft", None, True),
    ("strainer_ft", "length", "strainer_least_ft", None, True),
)


def made(name, rig, conditions, standard):
    """One part of a test that is no pumping run; None where the rig has nothing to test.

    name: of the part
    rig, conditions, standard: as calc.service.plan says

    Returns contract `plan_test`, less its texts. Raises CalcError naming the input. Source: the standard's data.
    """
    if name in _HAS_NONE and rig.get(_HAS_NONE[name][0]) == _HAS_NONE[name][1]:
        return None
    if name in control_parts.DEVICES:
        devices = rig.get("controls")
        if devices is None and name == "governor":
            return _named(name, part([], [], ["rig.pressure_control"]))
        if devices is None or control_parts.DEVICES[name] not in devices:
            return None
    if name in _CHECK_MAKERS:
        return _named(name, _CHECK_MAKERS[name](standard, rig))
    if name in CHECKS:
        return _named(name, checks(CHECKS[name]))
    section = standard.get(_SECTIONS.get(name, name))
    if section is None:
        return _named(name, part([], [], [name]))
    whole = _named(name, _MAKERS[name](section, rig, conditions))
    if name == "conditions" and conditions["source"] == "draft":
        _hold_suction_to_rating(whole, standard.get("suction_by_rating"), rig, conditions)
    return whole


def _named(name, whole):
    whole["id"] = name
    return whole


def _shift(standard, rig):
    """The pump shift by the kind of drive, and its manual override where the rig has one; a split shaft is no PTO wherever it stands."""
    if not standard.get("shift"):
        return checks(CHECKS["shift"])
    if rig.get("drive") not in DRIVES:  # also of an older profile's "rear"
        return checks(CHECKS["shift"], ["rig.drive"])
    return checks(CHECKS["shift"] + DRIVES[rig["drive"]] + (("shift_override",) if rig.get("has_override") else ()))


def _transfer(standard, rig):
    """The transfer valve: that it moves both ways, and in which position each point was pumped."""
    if not rig.get("stages"):
        return checks(CHECKS["transfer"], ["rig.stages"])
    positions = standard.get("transfer", {}).get("positions", {})
    points = [run["id"] for run in runs_of(standard, rig["rated_gpm"]) if run["id"] in positions]
    return checks(list(CHECKS["transfer"]) + [name + ".transfer_" + positions[name] for name in points])


def _hold_suction_to_rating(whole, section, rig, conditions):
    """Hold lift and suction hose to what a pump of this rating is certified with; a standard without such rows leaves them."""
    rows = [row for row in (section or {}).get("rows", []) if rig["rated_gpm"] <= row["up_to_gpm"]]
    if not rows:
        return
    for row in whole["limits"]:
        if row["id"] == "lift_ft":
            row["most"] = rows[0]["lift_most_ft"]
    size_in = conditions.get("suction_size_in") or 0
    hoses = [hose for hose in rows[0]["hoses"] if size_in <= hose["size_in"]] or rows[0]["hoses"][-1:]
    for name, kind, most in (("suction_size_in", "diameter", hoses[0]["size_in"]), ("suction_lines", "ratio", hoses[0]["lines"])):
        whole["fields"].append(field(name, kind))
        whole["limits"].append(limit(name, kind, None, most))


def _conditions(section, rig, conditions):
    limits = [
        limit(name, kind, section.get(least), section.get(most))
        for name, kind, least, most, is_draft in SITE
        if (least in section or most in section) and (conditions["source"] == "draft" or not is_draft)
    ]
    return part([field(row["id"], row["kind"]) for row in limits], limits, kind="conditions")


def _interlock(section, rig, conditions):
    drive = rig.get("drive")
    if not any(drive in row["drives"] for row in section):  # also of an older profile's "rear": which of the two it is, is asked
        return checks([], ["rig.drive"])
    return checks([row["id"] for row in section if drive in row["drives"]])


def least_vacuum_inhg(section, altitude_ft):
    """Vacuum that a dry pump must reach at this height above the sea, in inches of mercury.

    section: the standard's limits of the vacuum test
    altitude_ft: height above the sea, feet

    Raises nothing. Source: the standard's data (1 inHg less for each 1,000 ft above 2,000, from memory, in proportion).
    """
    over_ft = max(altitude_ft - section.get("allowance_above_ft", 0), 0)
    return section["least_inhg"] - section.get("allowance_inhg_per_1000_ft", 0) * over_ft / 1000


def _vacuum(section, rig, conditions):
    altitude_ft = conditions.get("altitude_ft")
    fields = [field("vacuum_reached_inhg", "vacuum"), field("vacuum_after_inhg", "vacuum")]
    limits = [limit("vacuum_lost_inhg", "vacuum", None, section["most_loss_inhg"], "loss", ("vacuum_reached_inhg", "vacuum_after_inhg"))]
    missing = ["altitude_ft"]
    if altitude_ft is not None:
        limits = [limit("vacuum_reached_inhg", "vacuum", least_vacuum_inhg(section, altitude_ft))] + limits
        missing = []
    return part(fields, limits, missing, section["hold_s"], ["vacuum_reached_inhg"])


def _priming(section, rig, conditions):
    if conditions["source"] != "draft":
        return part([], [], ["not_from_draft"])
    fields = [field("prime_s", "seconds")]
    most_s = step_for(section["steps"], "below_gpm", rig["rated_gpm"])["most_s"]
    if rig.get("has_auxiliary_intake"):
        most_s += section.get("extra_s", 0)
    return part(fields, [limit("prime_s", "seconds", None, most_s)])


def _hydrostatic(section, rig, conditions):
    fields = [field("hydrostatic_psi", "pressure"), field("hydrostatic_held")]
    limits = [limit("hydrostatic_psi", "pressure", section["least_psi"])]
    return part(fields, limits, (), section["hold_s"], ["hydrostatic_psi"])


_HAS_NONE = {"transfer": ("stages", 1), "meters": ("meters", []), "line_gauges": ("gauges", []), "tank": ("tank_gal", 0),
             "tank_level": ("tank_gal", 0), "foam": ("foam", "none"), "intake_relief": ("intake_relief", "none")}
_SECTIONS = {"governed": "engine", "vacuum_valves": "vacuum", "governor": "pressure_control", "relief_valve": "pressure_control",
             "line_gauges": "gauges"}
_CHECK_MAKERS = {"shift": _shift, "transfer": _transfer}
_MAKERS = {
    "conditions": _conditions,
    "interlock": _interlock,
    "governed": panel_parts.governed,
    "vacuum": _vacuum,
    "vacuum_valves": _vacuum,
    "priming": _priming,
    "pressure_control": control_parts.pressure_control,  # of editions before 2026-11-29d
    "governor": control_parts.pressure_control,
    "relief_valve": control_parts.pressure_control,
    "intake_relief": control_parts.intake_relief,
    "tank": control_parts.tank,
    "foam": control_parts.foam,
    "gauges": panel_parts.gauges,
    "line_gauges": panel_parts.line_gauges,
    "compound": panel_parts.compound,
    "meters": panel_parts.meters,
    "hydrostatic": _hydrostatic,
}
