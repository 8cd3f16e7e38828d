"""The answer of the Pressure page: a layout as typed in, every figure as read out with its working."""
from calc.base import display
from calc.base.errors import CalcError
from calc.hydraulics import caution, water
from calc.hydraulics.nozzle import FOG_REACTION_CONSTANT, SMOOTH_REACTION_CONSTANT, TIP_CONSTANT
from calc.layout import pressure as layout_pressure, typed

MOST_PSI = 2000  # above this no fire hose is left to speak of; the entry is a slip


def answer(layout, shelf, units):
    """What the pump must show for this layout, ready to be read, every figure with its working.

    layout, shelf: see calc.layout.typed
    units: the page's units, see calc.base.display

    Returns what read does. Raises CalcError naming the typed field and, as a fact, the line. Source: layout.discharge_pressure.
    """
    return read(worked(layout, shelf, units), shelf, units, ("workings", "fall"))


def read(work, shelf, units, parts):
    """A layout that is worked out, ready to be read.

    work: of worked
    shelf, units: as for answer
    parts: what of it is wanted beside the pressures, among "workings" and "fall"

    Returns `{"pressure_psi", "pressure", "flow", "by_rule", "rules", "lines", "cautions"}`: `by_rule` the pressure by
    the department's own friction rule, None where it has none; `rules` by device laid, the steps of its usual loss; per line `id`, `feeder`,
    texts of each figure, `gate` where it must be gated, and where they are wanted `fall`, numbers in the page's units to draw its pressure
    and height by, and `workings`, with the figures that stand beside them alone: `velocity` and `water`.
    Raises CalcError naming a loss where the rig's own has a fault. Source: layout.discharge_pressure.
    """
    plain_layout, limits, report = work
    lines = [_read(line, limits[line["id"]], units) for line in report["lines"]]
    if "workings" in parts:
        for line, texts in zip(report["lines"], lines):
            _add_workings(texts, line, limits[line["id"]], units)
    if "fall" in parts:
        starts = {None: (0, 0)}
        for line, texts in zip(report["lines"], lines):
            texts["fall"] = _fall(line, limits[line["id"]], starts, units)
    return {
        "pressure_psi": report["discharge_psi"],
        "pressure": display.text(units, "pressure", report["discharge_psi"]),
        "flow": display.text(units, "flow", report["flow_gpm"]),
        "by_rule": _by_rule(plain_layout, shelf, units),
        "rules": {device: _rule(shelf, device, units) for device in _devices(limits)},
        "lines": lines,
        "cautions": [told(found, units) for found in caution.cautions(limits, report)],
    }


def worked(layout, shelf, units):
    """A typed layout with the loss of every device set, and its report.

    layout, shelf, units: as for answer

    Returns the layout, its lines with their limits by id, and the report of layout.discharge_pressure.
    Raises CalcError as answer does.
    """
    plain_layout, limits = typed.translated(layout, shelf, units)
    report = layout_pressure.discharge_pressure(plain_layout)
    for line in report["lines"][::-1]:  # the farthest: what feeds it is beyond any hose by it
        if max(abs(line["inlet_psi"]), line["friction_per_100_ft_psi"]) > MOST_PSI:
            raise CalcError("layout", "beyond_any_hose", line=line["id"])
    return plain_layout, limits, report


def _by_rule(plain_layout, shelf, units):
    """The pressure by the department's rule, or why it gives none."""
    rule = shelf.get("rule")
    if not rule or rule == "square":
        return None
    try:
        discharge_psi = layout_pressure.discharge_pressure(plain_layout, rule)["discharge_psi"]
    except CalcError as error:
        return {"rule": rule, "code": error.code, "line": error.facts.get("line")}
    return {"rule": rule, "pressure": display.text(units, "pressure", discharge_psi)}


def _devices(limits):
    """Devices whose usual loss is reckoned with."""
    found = []
    for name in limits:
        device = limits[name]["device"]
        if device != typed.BARE and device not in found:
            found.append(device)
    return found


def _rule(shelf, device, units):
    return [
        {"from": display.text(units, "flow", from_gpm), "loss": display.text(units, "pressure", loss_psi)}
        for from_gpm, loss_psi in shelf["appliances"][device]
    ]


def _read(line, limits, units):
    """One line of the report as texts."""
    nozzle = line["nozzle"]
    return {
        "id": line["id"],
        "feeder": line["feeder"],
        "flow": display.text(units, "flow", line["flow_gpm"]),
        "inlet": display.text(units, "pressure", line["inlet_psi"]),
        "outlet": display.text(units, "pressure", line["outlet_psi"]),
        "gate": _unless_nothing(units, line["gate_psi"]),
        "friction": display.text(units, "pressure", line["friction_psi"]),
        "friction_rate": display.text(units, "friction_rate", line["friction_per_100_ft_psi"]),
        "elevation": display.text(units, "pressure", line["elevation_psi"]),
        "appliance": display.text(units, "pressure", line["appliance_psi"]),
        "height": None if limits["height_ft"] == 0 else display.working(units, "length", abs(limits["height_ft"])),
        "is_below": limits["height_ft"] < 0,
        "reaction": None if nozzle is None or nozzle["reaction_lbf"] is None else display.text(units, "force", nozzle["reaction_lbf"]),
        "end": "joint" if nozzle is None else nozzle["kind"],
        "device": limits["device"],
    }


def _add_workings(read_line, line, limits, units):
    """The terms of a line's workings, and of its nozzle where it ends in one, with the figures that stand there alone."""
    nozzle = line["nozzle"]
    friction = {
        "coefficient": display.working(units, "coefficient", limits["coefficient"]),
        "hundreds_flow": display.working(units, "flow", line["flow_gpm"] / limits["parallel"], 100),
        "hundreds_length": display.working(units, "length", limits["length_ft"], 100),
        "rate": display.working(units, "friction_rate", line["friction_per_100_ft_psi"]),
        "loss": display.working(units, "pressure", line["friction_psi"]),
    }
    elevation = {
        "rate": display.working(units, "elevation_rate", water.PSI_PER_FT),
        "rise": display.working(units, "length", limits["rise_ft"]),
        "elevation": display.working(units, "pressure", line["elevation_psi"]),
    }
    inlet = {
        "outlet": display.working(units, "pressure", line["outlet_psi"]),
        "friction": friction["loss"],
        "elevation": elevation["elevation"],
        "appliance": display.working(units, "pressure", line["appliance_psi"]),
        "inlet": display.working(units, "pressure", line["inlet_psi"]),
    }
    read_line["velocity"] = display.text(units, "velocity", line["velocity_ft_per_s"])
    read_line["water"] = display.text(units, "volume", line["water_gal"])
    read_line["workings"] = {"friction": friction, "elevation": elevation, "inlet": inlet}
    if nozzle is not None:
        terms = {
            "flow": display.working(units, "flow", line["flow_gpm"]),
            "pressure": display.working(units, "pressure", nozzle["nozzle_psi"]),
        }
        if nozzle["reaction_lbf"] is not None:
            terms["reaction"] = display.working(units, "force", nozzle["reaction_lbf"])
        if nozzle["kind"] == "smooth":
            terms["tip"] = display.working(units, "diameter", limits["end"]["tip_in"])
            terms["flow_constant"] = display.text(units, "tip_constant", TIP_CONSTANT)
            terms["constant"] = display.text(units, "smooth_reaction_constant", SMOOTH_REACTION_CONSTANT)
        else:
            terms["constant"] = display.text(units, "fog_reaction_constant", FOG_REACTION_CONSTANT)
        read_line["workings"]["nozzle"] = terms


def _fall(line, limits, starts, units):
    """Where a line starts and ends, in length from the pump and height above it, and its pressures on the way."""
    from_ft, from_height_ft = starts[line["feeder"]]
    to_ft, to_height_ft = from_ft + limits["length_ft"], limits["height_ft"]
    starts[line["id"]] = (to_ft, to_height_ft)
    length = display.scale(units, units["shown"], "length")["factor"]
    pressure = display.scale(units, units["shown"], "pressure")["factor"]
    return {
        "lengths": [from_ft * length, to_ft * length],
        "heights": [from_height_ft * length, to_height_ft * length],
        "pressures": [line["inlet_psi"] * pressure, (line["outlet_psi"] + line["appliance_psi"]) * pressure,
                      line["outlet_psi"] * pressure],
    }


def _unless_nothing(units, gate_psi):
    text = display.text(units, "pressure", gate_psi)
    return text if any(digit in "123456789" for digit in text) else None


def told(found, units):
    """A caution of calc.hydraulics.caution with its figures as texts.

    found: one of caution.cautions
    units: see calc.base.display

    Raises nothing.
    """
    return {
        "level": found["level"],
        "code": found["code"],
        "line": found["line"],
        "crew": found["crew"],
        "amount": display.text(units, found["kind"], found["amount"]),
        "limit": display.text(units, found["kind"], found["limit"]),
    }
