"""The parts of a service test that are no pumping runs: what is entered in each, and the limits it is judged by."""
from calc.service.runs import runs_of, step_for

CHECKS = {  # answered yes or no, before or beside the figures
    "checks_dry": ("limits_confirmed", "chocks", "people_clear", "streams_secured", "hearing", "stop_control", "fluids"),
    "shift": ("shift_proved",),
    "gauges_zero": ("zero_discharge", "zero_intake", "zero_pitot"),
    "transfer": ("transfer_both_ways",),
    "leaks": ("leak_casing", "leak_shaft", "leak_valves", "leak_piping"),
}
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
    if name == "transfer" and rig.get("stages") == 1:
        return None
    if name == "meters" and rig.get("meters") == []:
        return None
    if name == "tank" and rig.get("tank_gal") == 0:
        return None
    if name == "transfer":
        return _transfer(standard, rig)
    if name in CHECKS:
        return _test(name, "checks", [_field(check) for check in CHECKS[name]], [])
    section = standard.get(_SECTIONS.get(name, name))
    if section is None:
        return _test(name, "figures", [], [], [name])
    part = _MAKERS[name](section, rig, conditions)
    part["id"] = name
    if name == "conditions" and conditions["source"] == "draft":
        _hold_suction_to_rating(part, standard.get("suction_by_rating"), rig, conditions)
    return part


def _transfer(standard, rig):
    """The transfer valve: that it moves both ways, and in which position each point was pumped."""
    positions = standard.get("transfer", {}).get("positions", {})
    points = [run["id"] for run in runs_of(standard, rig["rated_gpm"]) if run["id"] in positions and rig.get("stages")]
    names = [name + ".transfer_" + positions[name] for name in points]
    missing = [] if rig.get("stages") else ["rig.stages"]
    return _test("transfer", "checks", [_field(check) for check in list(CHECKS["transfer"]) + names], [], missing)


def _hold_suction_to_rating(part, section, rig, conditions):
    """Hold lift and suction hose to what a pump of this rating is certified with; a standard without such rows leaves them."""
    rows = [row for row in (section or {}).get("rows", []) if rig["rated_gpm"] <= row["up_to_gpm"]]
    if not rows:
        return
    for limit in part["limits"]:
        if limit["id"] == "lift_ft":
            limit["most"] = rows[0]["lift_most_ft"]
    size_in = conditions.get("suction_size_in") or 0
    hoses = [hose for hose in rows[0]["hoses"] if size_in <= hose["size_in"]] or rows[0]["hoses"][-1:]
    for name, kind, most in (("suction_size_in", "diameter", hoses[0]["size_in"]), ("suction_lines", "ratio", hoses[0]["lines"])):
        part["fields"].append(_field(name, kind))
        part["limits"].append(_limit(name, kind, None, most))


def _test(name, kind, fields, limits, missing=(), hold_s=None, start=()):
    return {"id": name, "kind": kind, "fields": fields, "limits": limits, "missing": list(missing), "hold_s": hold_s, "start": list(start)}


def _field(name, kind="check"):
    return {"id": name, "kind": kind, "needed": True}


def _limit(name, kind, least=None, most=None, how="value", of=None):
    return {"id": name, "kind": kind, "how": how, "of": list(of or [name]), "least": least, "most": most}


def _conditions(section, rig, conditions):
    limits = [
        _limit(name, kind, section.get(least), section.get(most))
        for name, kind, least, most, is_draft in SITE
        if (least in section or most in section) and (conditions["source"] == "draft" or not is_draft)
    ]
    return _test("conditions", "conditions", [_field(limit["id"], limit["kind"]) for limit in limits], limits)


def _interlock(section, rig, conditions):
    drive = rig.get("drive")
    if not any(drive in row["drives"] for row in section):  # also of an older profile's "rear": which of the two it is, is asked
        return _test("interlock", "checks", [], [], ["rig.drive"])
    return _test("interlock", "checks", [_field(row["id"]) for row in section if drive in row["drives"]], [])


def _governed(section, rig, conditions):
    governed_rpm = rig.get("governed_rpm")
    field = _field("governed_rpm", "speed")
    if not governed_rpm:
        return _test("governed", "figures", [field], [], ["rig.governed_rpm"])
    tolerance_rpm = section["governed_tolerance_rpm"]
    limit = _limit("governed_rpm", "speed", governed_rpm - tolerance_rpm, governed_rpm + tolerance_rpm)
    return _test("governed", "figures", [field], [limit])


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
    fields = [_field("vacuum_reached_inhg", "vacuum"), _field("vacuum_after_inhg", "vacuum")]
    limits = [_limit("vacuum_lost_inhg", "vacuum", None, section["most_loss_inhg"], "loss", ("vacuum_reached_inhg", "vacuum_after_inhg"))]
    missing = ["altitude_ft"]
    if altitude_ft is not None:
        limits = [_limit("vacuum_reached_inhg", "vacuum", least_vacuum_inhg(section, altitude_ft))] + limits
        missing = []
    return _test("vacuum", "figures", fields, limits, missing, section["hold_s"], ["vacuum_reached_inhg"])


def _priming(section, rig, conditions):
    field = _field("prime_s", "seconds")
    if conditions["source"] != "draft":
        return _test("priming", "figures", [field], [], ["not_from_draft"])
    most_s = step_for(section["steps"], "below_gpm", rig["rated_gpm"])["most_s"]
    if rig.get("has_auxiliary_intake"):
        most_s += section.get("extra_s", 0)
    return _test("priming", "figures", [field], [_limit("prime_s", "seconds", None, most_s)])


def _pressure_control(section, rig, conditions):
    fields, limits = [], []
    band = section["set_band_percent"] / 100
    has_flows = any("share_percent" in point for point in section["points"])
    for point in section["points"]:
        at = point["id"] + "."
        fields.append(_field(at + "set_psi", "pressure"))
        limits.append(_limit(at + "set_psi", "pressure", point["pressure_psi"] * (1 - band), point["pressure_psi"] * (1 + band)))
        if "share_percent" in point:
            flow_gpm = rig["rated_gpm"] * point["share_percent"] / 100
            fields.append(_field(at + "flow_gpm", "flow"))
            limits.append(_limit(at + "flow_gpm", "flow", flow_gpm * (1 - band), flow_gpm * (1 + band)))
        elif has_flows:  # its flow is what is left when only the throttle was moved
            fields.append(_field(at + "throttle_only"))
        fields += [_field(at + "peak_psi", "pressure"), _field(at + "closing_s", "seconds")]
        limits += [
            _limit(at + "rise_psi", "pressure", None, section["most_rise_psi"], "rise", (at + "set_psi", at + "peak_psi")),
            _limit(at + "closing_s", "seconds", section["closing_least_s"], section["closing_most_s"]),
        ]
    return _test("pressure_control", "figures", fields, limits)


def _intake_relief(section, rig, conditions):
    fields = [_field("relief_setting_psi", "pressure"), _field("relief_opened")]
    if "most_off_psi" in section:  # against this rig's own setting
        pair = ("relief_set_psi", "relief_setting_psi")
        return _test("intake_relief", "figures", [_field(pair[0], "pressure")] + fields, [
            _limit("relief_off_psi", "pressure", None, section["most_off_psi"], "error", pair)])
    return _test("intake_relief", "figures", fields, [
        _limit("relief_setting_psi", "pressure", section["setting_least_psi"], section["setting_most_psi"])])


def _tank(section, rig, conditions):
    field = _field("tank_flow_gpm", "flow")
    if rig.get("tank_gal") is None:
        return _test("tank", "figures", [field], [], ["rig.tank_gal"])
    least_gpm = step_for(section["steps"], "below_gal", rig["tank_gal"])["least_gpm"]
    return _test("tank", "figures", [field], [_limit("tank_flow_gpm", "flow", least_gpm)])


def _gauges(section, rig, conditions):
    fields, limits = [], []
    band = section["set_band_percent"] / 100
    for point in section["points"]:
        at = "master." + point["id"] + "."
        pair = (at + "panel_psi", at + "reference_psi")
        fields += [_field(name, "pressure") for name in pair]
        limits += [
            _limit(pair[1], "pressure", point["pressure_psi"] * (1 - band), point["pressure_psi"] * (1 + band)),
            _limit(at + "error_psi", "pressure", None, section["most_error_psi"], "error", pair),
        ]
    return _test("gauges", "figures", fields, limits)


def _meters(section, rig, conditions):
    if rig.get("meters") is None:
        return _test("meters", "figures", [], [], ["meters"])
    fields, limits = [], []
    for meter in rig["meters"]:
        pair = (meter + ".shown_gpm", meter + ".pitot_gpm")
        fields += [_field(name, "flow") for name in pair]
        limits.append(_limit(meter + ".error_percent", "percent", None, section["most_error_percent"], "percent_error", pair))
    return _test("meters", "figures", fields, limits)


def _hydrostatic(section, rig, conditions):
    fields = [_field("hydrostatic_psi", "pressure"), _field("hydrostatic_held")]
    limit = _limit("hydrostatic_psi", "pressure", section["least_psi"])
    return _test("hydrostatic", "figures", fields, [limit], (), section["hold_s"], ["hydrostatic_psi"])


_SECTIONS = {"governed": "engine", "vacuum_valves": "vacuum"}
_MAKERS = {
    "conditions": _conditions,
    "interlock": _interlock,
    "governed": _governed,
    "vacuum": _vacuum,
    "vacuum_valves": _vacuum,
    "priming": _priming,
    "pressure_control": _pressure_control,
    "intake_relief": _intake_relief,
    "tank": _tank,
    "gauges": _gauges,
    "meters": _meters,
    "hydrostatic": _hydrostatic,
}
