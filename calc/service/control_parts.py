"""The parts of a service test that work a device: pressure governor and relief valve, intake relief, tank line, foam proportioner."""
from calc.service.part import field, limit, near, part
from calc.service.runs import step_for

DEVICES = {"governor": "governor", "relief_valve": "relief"}  # part of a test, and what of the rig it tries


def pressure_control(section, rig, conditions):
    """What holds the pressure as the discharges close, at three states: rated flow, throttled down from there, half flow.

    section, rig, conditions: as calc.service.plan says

    Returns contract `plan_test`, less its name and texts. Raises nothing. Source: the standard's data.
    """
    fields, limits = [], []
    has_flows = any("share_percent" in point for point in section["points"])
    for point in section["points"]:
        at = point["id"] + "."
        fields.append(field(at + "set_psi", "pressure"))
        limits.append(near(at + "set_psi", "pressure", point["pressure_psi"], section))
        if "share_percent" in point:
            fields.append(field(at + "flow_gpm", "flow"))
            limits.append(near(at + "flow_gpm", "flow", rig["rated_gpm"] * point["share_percent"] / 100, section))
        elif has_flows:  # its flow is what is left when only the throttle was moved
            fields.append(field(at + "throttle_only"))
        fields += [field(at + "peak_psi", "pressure"), field(at + "closing_s", "seconds")]
        limits += [
            limit(at + "rise_psi", "pressure", None, section["most_rise_psi"], "rise", (at + "set_psi", at + "peak_psi")),
            limit(at + "closing_s", "seconds", section["closing_least_s"], section["closing_most_s"]),
        ]
    return part(fields, limits)


def intake_relief(section, rig, conditions):
    """Whether the intake relief opens at this rig's own setting, and shuts again.

    section, rig, conditions: as calc.service.plan says; "relief_set_psi" of the rig, where its profile has it

    Returns contract `plan_test`, less its name and texts. Raises nothing. Source: the standard's data.
    """
    fields = [field("relief_setting_psi", "pressure"), field("relief_opened")]
    if "most_off_psi" not in section:
        return part(fields, [
            limit("relief_setting_psi", "pressure", section["setting_least_psi"], section["setting_most_psi"])])
    if "reseats" in section:
        fields.append(field("relief_reseated"))
        if rig.get("relief_set_psi"):
            least_psi, most_psi = [rig["relief_set_psi"] + side * section["most_off_psi"] for side in (-1, 1)]
            return part(fields, [limit("relief_setting_psi", "pressure", least_psi, most_psi)])
    pair = ("relief_set_psi", "relief_setting_psi")
    return part([field(pair[0], "pressure")] + fields, [
        limit("relief_off_psi", "pressure", None, section["most_off_psi"], "error", pair)])


def tank(section, rig, conditions):
    """The flow from the tank: against the rate when new, less what the instrument may err; else against what a new rig is built to.

    section, rig, conditions: as calc.service.plan says; "tank_new_gpm" of the rig, where its profile has it

    Returns contract `plan_test`, less its name and texts. Raises nothing.
    Source: the standard's data; no part of a pump is asked for more than the pump is rated at (common practice).
    """
    fields = [field("tank_flow_gpm", "flow")]
    if rig.get("tank_gal") is None:
        return part(fields, [], ["rig.tank_gal"])
    least_gpm = step_for(section["steps"], "below_gal", rig["tank_gal"])["least_gpm"]
    if section.get("when_new"):
        least_gpm = min(least_gpm, rig["rated_gpm"])
        if rig.get("tank_new_gpm") and rig["standard"]["kind"] != "acceptance":
            least_gpm = rig["tank_new_gpm"] * (1 - _meter_percent(rig, conditions) / 100)
    return part(fields, [limit("tank_flow_gpm", "flow", least_gpm)])


def _meter_percent(rig, conditions):
    own = (conditions.get("accuracy") or {}).get("meter_percent")
    return rig["standard"]["accuracy"]["meter_percent"] if own is None else own


def foam(section, rig, conditions):
    """A foam proportioner: its sample between two standards made of this rig's own water and concentrate, by whichever method.

    section, rig, conditions: as calc.service.plan says; "foam" of the rig: None where nobody said; "foam_by" of the conditions

    Returns contract `plan_test`, less its name and texts. No limit is the standard's: both ends are the tester's own solutions, or the least
    and most percentage that the maker allows. Raises nothing.
    Source: a municipal pumper's specification (two standard solutions; the sample reads between them); driver/operator study notes (methods).
    """
    if rig.get("foam") is None:
        return part([], [], ["rig.foam"])
    missing = [] if conditions.get("foam_by") in section["methods"] else ["foam_by"]
    names = ("foam_sample", "foam_least", "foam_most")
    fields = [field(name, "ratio") for name in ("foam_least", "foam_most", "foam_sample")] + [field("foam_flushed")]
    return part(fields, [limit("foam_sample", "ratio", how="between", of=names)], missing)
