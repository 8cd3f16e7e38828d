"""The plan of a service test: each test in order, with what is entered in it and the limits it is judged by.

A standard (contract `standard`) is plain data in calc's units, as site_src/content/standards.py makes it. A rig is
`{"rated_gpm", "standard"}` and, where known, "drive", "stages", "governed_rpm", "pump_ratio", "tank_gal",
"has_auxiliary_intake", "meters" (their names, [] for none), and "new" and "last": by run, what was read when the pump was new
and at its last test, `{"engine_rpm", "net_psi"}`.
Conditions are contract `conditions`, always with its source, and "accuracy" (what instruments' own certificates say, in place of
the standard's).
"""
from calc.base.errors import CalcError, check_within
from calc.service.runs import run_plan, runs_of, step_for

SCHEMA = 1
CHECKS = {  # answered yes or no, before or beside the figures
    "checks_dry": ("limits_confirmed", "chocks", "people_clear", "streams_secured", "hearing", "stop_control", "fluids"),
    "shift": ("shift_proved",),
    "gauges_zero": ("zero_discharge", "zero_intake", "zero_pitot"),
    "transfer": ("transfer_both_ways",),
    "leaks": ("leak_casing", "leak_shaft", "leak_valves", "leak_piping"),
}
AMOUNTS = ("air_f", "water_f", "barometer_inhg", "altitude_ft", "lift_ft", "depth_ft", "strainer_ft", "suction_size_in",
           "suction_length_ft", "suction_lines")
SITE = (  # condition, kind, its limits in the standard, whether only from draft
    ("air_f", "temperature", "air_least_f", "air_most_f", False),
    ("water_f", "temperature", "water_least_f", "water_most_f", False),
    ("water_end_f", "temperature", "water_least_f", "water_most_f", False),
    ("barometer_inhg", "barometer", "barometer_least_inhg", None, False),
    ("altitude_ft", "length", None, "altitude_most_ft", False),
    ("lift_ft", "length", None, "lift_most_ft", True),
    ("suction_length_ft", "length", "suction_length_least_ft", None, True),
    ("depth_ft", "length", "depth_least_ft", None, True),
    ("strainer_ft", "length", "strainer_least_ft", None, True),
)


def plan(rig, conditions):
    """The whole service test of a rig at a site.

    rig: as the module says; rated capacity 50 to 6,000 US gallons per minute
    conditions: as the module says, in calc's units

    Returns contract `plan`, less its texts; what is not known is named in it and nothing is put in its place.
    Raises CalcError naming the input.
    Source: the standard's data, where every section tells its own.
    """
    standard = rig.get("standard")
    if not isinstance(standard, dict):
        raise CalcError("standard", "missing")
    check_within("rated_gpm", rig.get("rated_gpm"), 50, 6000)
    if conditions.get("source") not in ("draft", "pressurised"):
        raise CalcError("source", "unknown")
    for name in AMOUNTS:
        if conditions.get(name) is not None:
            check_within(name, conditions[name], -1500, 20000)
    accuracy = dict(standard["accuracy"])
    accuracy.update(conditions.get("accuracy") or {})
    for name in accuracy:
        check_within(name, accuracy[name], 0, 1000)
    return {
        "schema": SCHEMA,
        "standard": standard["id"],
        "kind": standard["kind"],
        "rated_gpm": rig["rated_gpm"],
        "conditions": {name: value for name, value in conditions.items() if name != "accuracy"},
        "accuracy": accuracy,
        "unsure": standard["unsure"],
        "speed_rise_percent": standard.get("engine", {}).get("speed_rise_percent"),
        "pump_ratio": rig.get("pump_ratio"),
        "tests": _tests(rig, conditions, standard),
    }


def _tests(rig, conditions, standard):
    runs = {run["id"]: run for run in runs_of(standard, rig["rated_gpm"])}
    everywhere = [run["id"] for run in standard["runs"]]
    tests = []
    for name in standard["tests"]:
        if name in runs:
            tests.append(run_plan(runs[name], rig, conditions))
        elif name not in everywhere:
            made = _made(name, rig, conditions, standard)
            if made:
                tests.append(made)
    return tests


def _made(name, rig, conditions, standard):
    """One test that is no pumping run; None where the rig has nothing to test."""
    if name == "transfer" and rig.get("stages") == 1:
        return None
    if name == "meters" and rig.get("meters") == []:
        return None
    if name == "tank" and rig.get("tank_gal") == 0:
        return None
    if name in CHECKS:
        missing = ["rig.stages"] if name == "transfer" and not rig.get("stages") else []
        return _test(name, "checks", [_field(check) for check in CHECKS[name]], [], missing)
    section = standard.get(_SECTIONS.get(name, name))
    if section is None:
        return _test(name, "figures", [], [], [name])
    return _MAKERS[name](section, rig, conditions)


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
    for point in section["points"]:
        at = point["id"] + "."
        fields += [_field(at + "set_psi", "pressure"), _field(at + "peak_psi", "pressure"), _field(at + "closing_s", "seconds")]
        limits += [
            _limit(at + "set_psi", "pressure", point["pressure_psi"] * (1 - band), point["pressure_psi"] * (1 + band)),
            _limit(at + "rise_psi", "pressure", None, section["most_rise_psi"], "rise", (at + "set_psi", at + "peak_psi")),
            _limit(at + "closing_s", "seconds", section["closing_least_s"], section["closing_most_s"]),
        ]
    return _test("pressure_control", "figures", fields, limits)


def _intake_relief(section, rig, conditions):
    fields = [_field("relief_setting_psi", "pressure"), _field("relief_opened")]
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


_SECTIONS = {"governed": "engine"}
_MAKERS = {
    "conditions": _conditions,
    "interlock": _interlock,
    "governed": _governed,
    "vacuum": _vacuum,
    "priming": _priming,
    "pressure_control": _pressure_control,
    "intake_relief": _intake_relief,
    "tank": _tank,
    "gauges": _gauges,
    "meters": _meters,
    "hydrostatic": _hydrostatic,
}
