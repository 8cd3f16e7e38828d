"""The answer of the Pressure page: a lay as typed in, every figure as read out with its working."""
from calc import caution, display, entry, layout, water
from calc.errors import CalcError, check_positive
from calc.nozzle import FOG_REACTION_CONSTANT, SMOOTH_REACTION_CONSTANT, TIP_CONSTANT

DEEPEST = 20  # wyes behind wyes; the phone's interpreter stands about 60
MOST_PSI = 2000  # above this no fire hose is left to speak of; the entry is a slip

# typed field of a line's end by its kind: (typed, calc's field, quantity)
_ENDS = {
    "smooth": (("tip", "tip_in", "diameter"), ("pressure", "nozzle_psi", "pressure")),
    "fog": (("flow", "rated_gpm", "flow"), ("pressure", "rated_psi", "pressure")),
}


def answer(lay, shelf, units):
    """What the pump must show for this lay, ready to be read.

    lay: `{"crew", "lines": [{"id", "hose", "length", "rise", "end"}]}`; `hose` and `crew` are names on the shelf;
        `length`, `rise` and a nozzle's `tip`, `flow` and `pressure` are text as typed, in the page's units;
        an `end` is such a nozzle with its `kind`, "smooth" or "fog", or `{"lines": [...]}` for a wye
    shelf: what is at hand: `hoses` by name (`coefficient`, `bore_in` and the limits of calc.caution), `crews` by
        name (`limit_lbf`), and `wye_steps`, [[from_gpm, psi], ...], the loss of a wye by the flow through it
    units: the page's units, see calc.display

    Returns `{"pressure_psi", "pressure", "flow", "wye_rule", "lines", "cautions"}`: per line `id`, `feeder`,
    texts of each figure, their `workings`, and `gate` where it must be gated.
    Raises CalcError naming the typed field and, as a fact, the line.
    Source: layout.discharge_pressure.
    """
    plain_layout, limits = translated(lay, shelf, units)
    report = layout.discharge_pressure(plain_layout)
    if _set_appliances(limits, report, shelf["wye_steps"]):
        report = layout.discharge_pressure(plain_layout)
    for line in report["lines"]:
        if max(abs(line["inlet_psi"]), line["friction_per_100_ft_psi"]) > MOST_PSI:
            raise CalcError("lay", "beyond_any_hose", line=line["id"])
    return {
        "pressure_psi": report["discharge_psi"],
        "pressure": display.text(units, "pressure", report["discharge_psi"]),
        "flow": display.text(units, "flow", report["flow_gpm"]),
        "wye_rule": [
            {"from": display.text(units, "flow", from_gpm), "loss": display.text(units, "pressure", loss_psi)}
            for from_gpm, loss_psi in shelf["wye_steps"]
        ],
        "lines": [_read(line, limits[line["id"]], units) for line in report["lines"]],
        "cautions": [_told(found, units) for found in caution.cautions(limits, report)],
    }


def translated(lay, shelf, units):
    """A typed lay as calc.layout takes it.

    lay, shelf, units: as for answer

    Returns the layout and, by line id, its lines with their limits (see calc.caution).
    Raises CalcError naming the typed field and, as a fact, the line. Source: common practice.
    """
    if not isinstance(lay, dict) or not isinstance(lay.get("crew"), str) or lay["crew"] not in shelf["crews"]:
        raise CalcError("crew", "unknown")
    crew = {"crew": lay["crew"], "crew_limit_lbf": shelf["crews"][lay["crew"]]["limit_lbf"]}
    limits = {}
    return {"lines": _translated(lay, (shelf, units, crew), limits, DEEPEST)}, limits


def _translated(parent, context, limits, depth):
    """The typed lines of a lay or a wye as layout lines with their limits; notes each by its id."""
    shelf, units, crew = context
    if not isinstance(parent.get("lines"), list):
        raise CalcError("lay", "damaged")
    if depth == 0:
        raise CalcError("lay", "too_deep", most=DEEPEST)
    found = []
    for typed in parent["lines"]:
        if not isinstance(typed, dict) or not isinstance(typed.get("end"), dict):
            raise CalcError("lay", "damaged")
        name = typed.get("id")
        if not isinstance(name, str):
            raise CalcError("lay", "damaged")
        hose = typed.get("hose")
        if not isinstance(hose, str) or hose not in shelf["hoses"]:
            raise CalcError("hose", "unknown", line=name)
        line = {"id": name}
        line.update(shelf["hoses"][hose])
        line.update(crew)
        try:
            line["length_ft"] = entry.quantity(units, "length", "length", typed.get("length"))
            line["rise_ft"] = entry.quantity(units, "length", "rise", typed.get("rise"))
            if line["length_ft"] < 0:
                raise CalcError("length", "negative")
            line["end"] = _end(typed["end"], context, limits, depth)
        except CalcError as error:
            if "line" in error.facts:
                raise
            raise CalcError(error.field, error.code, line=name, **error.facts)
        limits[name] = line
        found.append(line)
    return found


def _end(typed, context, limits, depth):
    if "lines" in typed:
        return {"lines": _translated(typed, context, limits, depth - 1)}
    kind = typed.get("kind")
    if not isinstance(kind, str) or kind not in _ENDS:
        raise CalcError("kind", "unknown")
    end = {"kind": kind}
    for name, field, quantity in _ENDS[kind]:
        end[field] = entry.quantity(context[1], quantity, name, typed.get(name))
        check_positive(name, end[field])
    return end


def _set_appliances(lines, report, wye_steps):
    """Give each wye the loss its rule asks at the flow through it; tells whether any has one."""
    any_loss = False
    for reported in report["lines"]:
        if reported["nozzle"] is None:
            for from_gpm, loss_psi in wye_steps:
                if reported["flow_gpm"] >= from_gpm:
                    lines[reported["id"]]["appliance_psi"] = loss_psi
                    any_loss = any_loss or loss_psi > 0
    return any_loss


def _read(line, limits, units):
    """One line of the report as texts, with the terms of its workings."""
    nozzle = line["nozzle"]
    end = limits["end"]
    friction = {
        "coefficient": display.working(units, "coefficient", limits["coefficient"]),
        "hundreds_flow": display.working(units, "flow", line["flow_gpm"] / limits.get("parallel", 1), 100),
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
    read = {
        "id": line["id"],
        "feeder": line["feeder"],
        "flow": display.text(units, "flow", line["flow_gpm"]),
        "inlet": display.text(units, "pressure", line["inlet_psi"]),
        "outlet": display.text(units, "pressure", line["outlet_psi"]),
        "gate": _unless_nothing(display.text(units, "pressure", line["gate_psi"])),
        "friction": display.text(units, "pressure", line["friction_psi"]),
        "friction_rate": display.text(units, "friction_rate", line["friction_per_100_ft_psi"]),
        "elevation": display.text(units, "pressure", line["elevation_psi"]),
        "appliance": display.text(units, "pressure", line["appliance_psi"]),
        "velocity": display.text(units, "velocity", line["velocity_ft_per_s"]),
        "water": display.text(units, "volume", line["water_gal"]),
        "reaction": None if nozzle is None else display.text(units, "force", nozzle["reaction_lbf"]),
        "end": "wye" if nozzle is None else nozzle["kind"],
        "workings": {"friction": friction, "elevation": elevation, "inlet": inlet},
    }
    if nozzle is not None:
        terms = {
            "flow": display.working(units, "flow", line["flow_gpm"]),
            "pressure": display.working(units, "pressure", nozzle["nozzle_psi"]),
            "reaction": display.working(units, "force", nozzle["reaction_lbf"]),
        }
        if nozzle["kind"] == "smooth":
            terms["tip"] = display.working(units, "diameter", end["tip_in"])
            terms["flow_constant"] = display.text(units, "tip_constant", TIP_CONSTANT)
            terms["constant"] = display.text(units, "smooth_reaction_constant", SMOOTH_REACTION_CONSTANT)
        else:
            terms["constant"] = display.text(units, "fog_reaction_constant", FOG_REACTION_CONSTANT)
        read["workings"]["nozzle"] = terms
    return read


def _unless_nothing(text):
    return None if float(text) == 0 else text


def _told(found, units):
    told = {"level": found["level"], "code": found["code"], "line": found["line"], "crew": found["crew"]}
    told["amount"] = display.text(units, found["kind"], found["amount"])
    told["limit"] = display.text(units, found["kind"], found["limit"])
    return told
