"""The answer of the Pressure page: a layout as typed in, every figure as read out with its working."""
from calc.base import display
from calc.base.errors import CalcError
from calc.hydraulics import caution, measured_hose, water
from calc.hydraulics.nozzle import FOG_REACTION_CONSTANT, SMOOTH_REACTION_CONSTANT, TIP_CONSTANT
from calc.layout import pressure as layout_pressure, summed, typed

MOST_PSI = 2000  # above this no fire hose is left to speak of; the entry is a slip


def answer(layout, shelf, units):
    """What the pump must show for this layout, ready to be read, every figure with its working.

    layout, shelf: see calc.layout.typed
    units: the page's units, see calc.base.display

    Returns what read does. Raises CalcError naming the typed field and, as a fact, the line. Source: calc.layout.pressure.
    """
    return read(solved(layout, shelf, units), shelf, units, ("workings", "fall"))


def read(solution, shelf, units, parts):
    """A layout that is worked out, ready to be read.

    solution: of solved
    shelf, units: as for answer
    parts: what of it is wanted beside the pressures, among "workings" and "fall"

    Returns contract `layout_answer`. Raises CalcError naming a loss where the rig's own has a fault. Source: calc.layout.pressure.
    """
    plain_layout, by_id, report = solution
    lines = [_read(line, by_id[line["id"]], units) for line in report["lines"]]
    if "workings" in parts:
        for line, texts in zip(report["lines"], lines):
            _add_workings(texts, line, by_id[line["id"]], units)
    if "fall" in parts:
        starts = {None: (0, 0)}
        for line, texts in zip(report["lines"], lines):
            texts["fall"] = _fall(line, by_id[line["id"]], starts, units)
    return {
        "pressure_psi": report["discharge_psi"],
        "pressure": display.setting(units, report["discharge_psi"]),
        "flow": display.text(units, "flow", report["flow_gpm"]),
        "by_rule": _by_rule(plain_layout, shelf, units),
        "modern": _modern(plain_layout, by_id, units),
        "department": _with(plain_layout, by_id, "department", 0, units),
        "loss_steps": {device: _loss_steps(shelf, device, units) for device in _devices(by_id)},
        "lines": lines,
        "sum": summed.read(report["lines"], units),
        "cautions": [caution_texts(row, units) for row in caution.cautions(by_id, report)],
    }


def solved(layout, shelf, units):
    """A typed layout with the loss of every device set, and its report.

    layout, shelf, units: as for answer

    Returns the layout, its lines by id, and the report of calc.layout.pressure.
    Raises CalcError as answer does.
    """
    plain_layout, by_id = typed.translated(layout, shelf, units)
    report = layout_pressure.discharge_pressure(plain_layout)
    farthest = report["lines"][::-1]  # what feeds it is beyond any hose by it, and what comes in at its end, too
    for line in [line for line in farthest if not line["into"]] + [line for line in farthest if line["into"]]:
        if max(abs(line["inlet_psi"]), line["friction_per_100_ft_psi"]) > MOST_PSI:
            raise CalcError("layout", "beyond_any_hose", line=line["id"])
    return plain_layout, by_id, report


def _by_rule(plain_layout, shelf, units):
    """The pressure by the department's rule, or why it gives none."""
    rule = shelf.get("rule")
    if not rule or rule == "square":
        return None
    try:
        discharge_psi = layout_pressure.discharge_pressure(plain_layout, rule)["discharge_psi"]
    except CalcError as error:
        return {"rule": rule, "code": error.code, "line": error.facts.get("line")}
    return {"rule": rule, "pressure": display.setting(units, discharge_psi)}


def _modern(plain_layout, by_id, units):
    """The least and the most pressure with hose as it was measured of late, where there is some with the handbook's own figure; None without."""
    least, most = [_with(plain_layout, by_id, "modern", side, units) for side in (0, 1)]
    return least and {"least": least, "most": most}


def _with(plain_layout, by_id, whose, side, units):
    """The pressure with other coefficients, see hydraulics.measured_hose, of the hose that has some; None where there is no such hose."""
    others = {name: measured_hose.others(by_id[name], whose) for name in by_id}
    changes = {name: {"coefficient": others[name][side]} for name in others if others[name]}
    if not changes:
        return None
    return display.setting(units, layout_pressure.discharge_pressure(typed.changed(plain_layout, changes))["discharge_psi"])


def _devices(by_id):
    """Devices whose usual loss is reckoned with."""
    devices = []
    for name in by_id:
        device = by_id[name]["device"]
        if device != typed.BARE and device not in devices:
            devices.append(device)
    return devices


def _loss_steps(shelf, device, units):
    return [
        {"from": display.text(units, "flow", from_gpm), "loss": display.text(units, "pressure", loss_psi)}
        for from_gpm, loss_psi in shelf["appliances"][device]
    ]


def _read(line, spec, units):
    """One line of the report as texts."""
    nozzle = line["nozzle"]
    return {
        "id": line["id"],
        "feeder": line["feeder"],
        "flow": display.text(units, "flow", line["flow_gpm"]),
        "gauge": display.setting(units, line["inlet_psi"]),
        "outlet": display.text(units, "pressure", line["outlet_psi"]),
        "gate": _unless_nothing(units, line["gate_psi"]),
        "friction_rate": display.text(units, "friction_rate", line["friction_per_100_ft_psi"]),
        "appliance": display.text(units, "pressure", line["appliance_psi"]),
        "height": None if spec["height_ft"] == 0 else display.working(units, "length", abs(spec["height_ft"])),
        "is_below": spec["height_ft"] < 0,
        "reaction": None if nozzle is None or nozzle["reaction_lbf"] is None else display.text(units, "force", nozzle["reaction_lbf"]),
        "length_ft": spec["length_ft"],
        "end": "into" if line["into"] else "joint" if nozzle is None else nozzle["kind"],
        "into": line["into"],
        "end_flow": display.text(units, "flow", line["end_gpm"]),
        "device": spec["device"],
    }


def _add_workings(read_line, line, spec, units):
    """The terms of a line's workings, and of its nozzle where it ends in one, with the figures that stand there alone."""
    nozzle = line["nozzle"]
    friction = {
        "coefficient": display.working(units, "coefficient", spec["coefficient"]),
        "hundreds_flow": display.working(units, "flow", line["flow_gpm"] / spec["parallel"], 100),
        "hundreds_length": display.working(units, "length", spec["length_ft"], 100),
        "rate": display.working(units, "friction_rate", line["friction_per_100_ft_psi"]),
        "loss": display.working(units, "pressure", line["friction_psi"]),
    }
    elevation = {
        "rate": display.working(units, "elevation_rate", water.PSI_PER_FT),
        "rise": display.working(units, "length", spec["rise_ft"]),
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
    read_line["workings"] = {"friction": friction, "elevation": elevation, "inlet": inlet, "parts": summed.of_line(line, units), "department": measured_hose.texts(spec, units)}
    if nozzle is not None:
        terms = {
            "flow": display.working(units, "flow", nozzle["flow_gpm"]),
            "pressure": display.working(units, "pressure", nozzle["nozzle_psi"]),
        }
        if nozzle["reaction_lbf"] is not None:
            terms["reaction"] = display.working(units, "force", nozzle["reaction_lbf"])
        if nozzle["kind"] == "smooth":
            terms["tip"] = display.working(units, "diameter", spec["end"]["tip_in"])
            terms["flow_constant"] = display.text(units, "tip_constant", TIP_CONSTANT)
            terms["constant"] = display.text(units, "smooth_reaction_constant", SMOOTH_REACTION_CONSTANT)
        else:
            terms["constant"] = display.text(units, "fog_reaction_constant", FOG_REACTION_CONSTANT)
        read_line["workings"]["nozzle"] = terms


def _fall(line, spec, starts, units):
    """Where a line starts and ends, in length from the pump and height above it, and its pressures on the way."""
    from_ft, from_height_ft = starts[line["feeder"]]
    to_ft, to_height_ft = from_ft + spec["length_ft"], spec["height_ft"]
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


def caution_texts(row, units):
    """A caution of calc.hydraulics.caution with its figures as texts.

    row: one of caution.cautions
    units: see calc.base.display

    Raises nothing.
    """
    return {
        "level": row["level"],
        "code": row["code"],
        "line": row["line"],
        "crew": row["crew"],
        "amount": display.text(units, row["kind"], row["amount"]),
        "limit": display.text(units, row["kind"], row["limit"]),
        "reaction": display.text(units, "force", row["reaction"]),
    }
