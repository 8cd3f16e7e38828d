"""What pumps give a wildland hose layout: by one figure, or by their curve at the flow it is to have and at full throttle."""
from calc.base import display, readout
from calc.base.errors import CalcError
from calc.pump import portable
from calc.supply import hoselay

KINDS = ("figure", "own") + tuple(portable.CLASSES)
MOST_PUMPS = 6


def read(entries, units, layout, trunk):
    """What the pumps give, ready to be read.

    entries: text as typed or chosen: `pump`: by one "figure" with `gives`, the most it adds at this flow; or by a curve, of a class of
        calc.pump.portable or its "own" by `shut`, `mid_flow`, `mid`, `end_flow` and `end`, with `arranged` ("one", "series" or "parallel") and `pumps`, 2 to 6
    units: see calc.base.display
    layout: the `flow` of all nozzles, the `pump` pressure it needs and, as text, by the `field` rule; the `fixed` part of that (height,
        fittings), what is `lost` besides with the square of the flow, and of that the `nozzle` pressure; in calc's units
    trunk: see calc.supply.hoselay.next_pump_ft

    Returns `{"rows", "cautions", "sum", "facts", "next_ft", "shut_psi"}`: next_ft is where the next pump stands at most, or None; shut_psi what the
    pumps show with every nozzle shut. Raises CalcError naming the entry. Source: calc.pump.portable, calc.supply.hoselay.
    """
    if readout.choice(entries, "pump", KINDS) == "figure":
        return _by_figure(readout.amount(entries, units, "gives", "pressure", 30, 600), units, layout, trunk)
    is_class = entries["pump"] != "own"
    points = portable.class_points(entries["pump"]) if is_class else _typed_points(entries, units)
    arranged = readout.choice(entries, "arranged", ("one", "series", "parallel"))
    pumps = 1 if arranged == "one" else readout.count(entries, "pumps", 2, MOST_PUMPS)
    answer = _by_curve(points, pumps, "parallel" if arranged == "parallel" else "series", units, layout, trunk)
    if is_class:
        for row in answer["rows"]:
            row["sources"] += ("pump_class",)
        answer["cautions"].append(readout.caution(units, "caution", "curve_of_class", ()))
    return answer


def _by_figure(gives_psi, units, layout, trunk):
    pumps = hoselay.pumps_for(layout["pump"], gives_psi)
    answer = {"rows": [], "cautions": [], "sum": "hoselay", "facts": {"field": layout["field"], "flow": display.text(units, "flow", layout["flow"])},
              "next_ft": None, "shut_psi": layout["pump"]}
    if pumps > 1:
        each_psi = layout["pump"] / pumps
        _in_series(answer, pumps, each_psi, units, layout, trunk)
        answer["sum"] = "hoselay_series"
        answer["facts"].update({"pumps": str(pumps), "each": display.text(units, "pressure", each_psi)})
        answer["cautions"].append(readout.caution(units, "stop", "hoselay_past_pump", (
            ("amount", "pressure", layout["pump"]), ("limit", "pressure", gives_psi), ("needed", None, str(pumps)), ("longest", None, answer["rows"][-1]["text"]))))
    return answer


def _in_series(answer, pumps, each_psi, units, layout, trunk):
    """Notes what each of several pumps in series adds, and how far the next may stand."""
    answer["next_ft"] = hoselay.next_pump_ft(trunk, each_psi)
    answer["rows"] += [
        readout.row(units, "hoselay_each", "pressure", each_psi, (
            ("pump", "pressure", layout["pump"]), ("pumps", None, str(pumps)), ("each", "pressure", each_psi)), ("pump_series",)),
        readout.row(units, "hoselay_next", "length", answer["next_ft"], (
            ("each", "pressure", each_psi), ("intake", "pressure", hoselay.INTAKE_PSI), ("distance", "length", answer["next_ft"])), ("pump_series",), 1),
    ]


def _typed_points(entries, units):
    """A pump's own three points; each has more flow and less pressure than the one before."""
    typed = readout.amounts(entries, units, (
        ("shut", "pressure", 10, 1000), ("mid_flow", "flow", 1, 2000), ("mid", "pressure", 1, 1000), ("end_flow", "flow", 1, 2000), ("end", "pressure", 0, 1000)))
    for after, before in (("mid", "shut"), ("end", "mid")):
        if not typed[after] < typed[before]:
            raise CalcError(after, "not_below_point")
    if not typed["end_flow"] > typed["mid_flow"]:
        raise CalcError("end_flow", "not_past_point")
    return [[0, typed["shut"]], [typed["mid_flow"], typed["mid"]], [typed["end_flow"], typed["end"]]]


def _by_curve(points, pumps, way, units, layout, trunk):
    flow_gpm, end_gpm = layout["flow"], portable.end_gpm(points, pumps, way)
    full_gpm = portable.full_flow_gpm(points, pumps, way, layout["fixed"], layout["lost"] / flow_gpm ** 2)
    full_psi = portable.together_psi(points, pumps, way, full_gpm)
    gives_psi = portable.together_psi(points, pumps, way, flow_gpm) if flow_gpm <= end_gpm else None
    shut_psi = portable.together_psi(points, pumps, way, 0)
    answer = {"rows": [], "cautions": [], "next_ft": None, "shut_psi": shut_psi}
    if gives_psi is not None:
        each_gpm, each_psi = (flow_gpm, gives_psi / pumps) if way == "series" else (flow_gpm / pumps, gives_psi)
        answer["rows"].append(readout.row(units, "hoselay_gives_" + way, "pressure", gives_psi, (
            ("pumps", None, str(pumps)), ("each", "pressure", each_psi), ("flow", "flow", each_gpm), ("gives", "pressure", gives_psi)), ("pump_curve",)))
    answer["rows"].append(readout.row(units, "hoselay_full", "flow", full_gpm, (
        ("fixed", "pressure", layout["fixed"]), ("lost", "pressure", layout["lost"]), ("wanted", "flow", flow_gpm),
        ("pump", "pressure", full_psi), ("flow", "flow", full_gpm)), ("pump_curve",)))
    if pumps > 1 and way == "series" and 0 < layout["pump"] <= (gives_psi or 0):
        _in_series(answer, pumps, layout["pump"] / pumps, units, layout, trunk)
    if pumps > 1 and way == "parallel":
        answer["cautions"].append(readout.caution(units, "caution", "pumps_parallel", ()))
    if not full_gpm:
        answer["cautions"].append(readout.caution(units, "stop", "curve_no_water", (("amount", "pressure", layout["fixed"]), ("limit", "pressure", shut_psi))))
    elif flow_gpm > end_gpm:
        answer["cautions"].append(readout.caution(units, "stop", "curve_ends", (("flow", "flow", flow_gpm), ("limit", "flow", end_gpm))))
    elif gives_psi < layout["pump"]:
        answer["cautions"].append(readout.caution(units, "stop", "curve_short", (
            ("flow", "flow", flow_gpm), ("amount", "pressure", layout["pump"]), ("limit", "pressure", gives_psi))))
    needed, enough_way = _enough(points, way, flow_gpm, layout["pump"])
    answer["sum"] = "hoselay_curve_short" if needed is None else "hoselay_past_curve" if full_gpm >= end_gpm else "hoselay_curve"
    answer["facts"] = {"needed": str(needed or MOST_PUMPS), "full": display.text(units, "flow", full_gpm), "full_pump": display.text(units, "pressure", full_psi),
                       "full_nozzle": display.text(units, "pressure", layout["nozzle"] * (full_gpm / flow_gpm) ** 2)}
    if needed is not None:
        answer["facts"]["way"] = enough_way
    return answer


def _enough(points, way, flow_gpm, pump_psi):
    """The fewest equal pumps that give a pressure at a flow, and how: the way that is chosen first. None where not even the most that are asked for do."""
    for pumps in range(1, MOST_PUMPS + 1):
        for each_way in (way, "parallel" if way == "series" else "series"):
            if flow_gpm <= portable.end_gpm(points, pumps, each_way) and portable.together_psi(points, pumps, each_way, flow_gpm) >= pump_psi:
                return pumps, "one" if pumps == 1 else each_way
    return None, None
