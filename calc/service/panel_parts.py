"""The parts of a service test that set an instrument of the panel beside one that is known: gauges, meters, tachometer."""
from calc.service.part import field, limit, near, part


def governed(section, rig, conditions):
    """No-load engine speed by the independent counter, against the plate, and the panel's tachometer beside it.

    section, rig, conditions: as calc.service.plan says; "tachometer_most_off_rpm" of the section, where it is there

    Returns contract `plan_test`, less its name and texts. Raises nothing. Source: the standard's data.
    """
    governed_rpm = rig.get("governed_rpm")
    fields, limits = [field("governed_rpm", "speed")], []
    if governed_rpm:
        tolerance_rpm = section["governed_tolerance_rpm"]
        limits.append(limit("governed_rpm", "speed", governed_rpm - tolerance_rpm, governed_rpm + tolerance_rpm))
    if "tachometer_most_off_rpm" in section:
        fields.append(field("panel_rpm", "speed"))
        limits.append(limit("tachometer_off_rpm", "speed", None, section["tachometer_most_off_rpm"], "error", ("governed_rpm", "panel_rpm")))
    return part(fields, limits, [] if governed_rpm else ["rig.governed_rpm"])


def gauges(section, rig, conditions):
    """The master discharge gauge beside the test gauge, at each point.

    section, rig, conditions: as calc.service.plan says

    Returns contract `plan_test`, less its name and texts. Raises nothing. Source: the standard's data.
    """
    fields, limits = [], []
    for point in section["points"]:
        at = "master." + point["id"] + "."
        pair = (at + "panel_psi", at + "reference_psi")
        fields += [field(name, "pressure") for name in pair]
        limits += [near(pair[1], "pressure", point["pressure_psi"], section), limit(at + "error_psi", "pressure", None, section["most_error_psi"], "error", pair)]
    return part(fields, limits)


def line_gauges(section, rig, conditions):
    """Every other discharge gauge beside one reading of the test gauge, at each point.

    section, rig, conditions: as calc.service.plan says; "gauges" of the rig: their names, or None where nobody said how many

    Returns contract `plan_test`, less its name and texts. Raises nothing.
    Source: the standard's data; discharge capped, its valve open, no flow: all gauges show one pressure (physics).
    """
    names = rig.get("gauges")
    if names is None:
        return part([], [], ["gauges"])
    fields, limits = [], []
    for point in section["points"]:
        reference = point["id"] + ".reference_psi"
        fields.append(field(reference, "pressure"))
        limits.append(near(reference, "pressure", point["pressure_psi"], section))
        for name in names:
            at = point["id"] + "." + name + "."
            fields.append(field(at + "panel_psi", "pressure"))
            limits.append(limit(at + "error_psi", "pressure", None, section["most_error_psi"], "error", (reference, at + "panel_psi")))
    return part(fields, limits)


def compound(section, rig, conditions):
    """The intake's compound gauge beside a test gauge, once under pressure and once under vacuum.

    section, rig, conditions: as calc.service.plan says

    Returns contract `plan_test`, less its name and texts. Raises nothing. Source: the standard's data.
    """
    fields, limits = [], []
    for kind, unit in (("pressure", "psi"), ("vacuum", "inhg")):
        pair = ("compound.reference_" + unit, "compound.panel_" + unit)
        fields += [field(name, kind) for name in pair]
        limits.append(limit("compound.error_" + unit, kind, None, section["most_error_" + unit], "error", pair))
    return part(fields, limits)


def meters(section, rig, conditions):
    """Each flow meter of the panel beside the flow by pitot, at the flow that is its own by the size of its pipe.

    section, rig, conditions: as calc.service.plan says; "meters" of the rig: their names, or None where nobody said how many;
        "set_band_percent" of the section, where it is there

    Returns contract `plan_test`, less its name and texts. The flow of each size is entered: the standard's own table was not seen.
    Raises nothing. Source: the standard's data.
    """
    if rig.get("meters") is None:
        return part([], [], ["meters"])
    fields, limits = [], []
    for meter in rig["meters"]:
        pair = (meter + ".shown_gpm", meter + ".pitot_gpm")
        if "set_band_percent" in section:
            due = meter + ".due_gpm"
            fields += [field(meter + ".pipe_in", "diameter"), field(due, "flow")]
            limits.append(limit(meter + ".off_percent", "percent", None, section["set_band_percent"], "percent_error", (pair[1], due)))
        fields += [field(name, "flow") for name in pair]
        limits.append(limit(meter + ".error_percent", "percent", None, section["most_error_percent"], "percent_error", pair))
    return part(fields, limits)
