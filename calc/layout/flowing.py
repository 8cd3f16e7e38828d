"""What really flows in a layout at the pressure the pump shows now, and what shutting a nozzle does to the others."""
from calc.base import display, entry
from calc.base.errors import CalcError, check_not_negative
from calc.hydraulics import caution
from calc.layout import answer, pressure, typed


def now(layout, shelf, units):
    """Flow, pressure and reaction at every nozzle of a layout as it stands, beside those it is rated for.

    layout: as for calc.layout.answer, with how it stands now, contract `now`
    shelf, units: as for calc.layout.answer

    Returns what read does. Raises CalcError naming the typed field and, as a fact, the line. Source: calc.layout.pressure.
    """
    return read(answer.solved(layout, shelf, units), layout, units)


def read(solution, layout, units):
    """What flows in a layout that is worked out.

    solution: of calc.layout.answer.solved
    layout, units: as for now

    Returns contract `flowing`; the pump is taken to hold its pressure. Raises CalcError as now does. Source: calc.layout.pressure.
    """
    plain_layout, by_id, report = solution
    standing = layout.get("now")
    if not isinstance(standing, dict) or standing.get("gates") not in ("set", "open"):
        raise CalcError("now", "damaged")
    pump_psi = report["discharge_psi"]
    if standing.get("pressure"):
        pump_psi = entry.quantity(units, "pressure", "gauge", standing["pressure"])
        check_not_negative("gauge", pump_psi)
    pump_psi = max(pump_psi, 0)
    shut = {name: {"shut": True} for name in standing.get("shut", []) if name in by_id}
    if standing["gates"] == "set":
        plain_layout = typed.changed(plain_layout, {line["id"]: _gate(line) for line in report["lines"]})
    if shut:
        compared = pressure.compared(plain_layout, pump_psi, {name: True for name in shut})
        all_open, flowing = compared["before"], compared["after"]
    else:
        all_open = flowing = pressure.flows(plain_layout, pump_psi)
    return {
        "pressure": display.text(units, "pressure", pump_psi),
        "flow": display.text(units, "flow", flowing["flow_gpm"]),
        "asked": _asked(typed.changed(plain_layout, shut), units) if shut else None,
        "lines": [
            _read(rated, opened, line, line["shut"], bool(shut), units)
            for rated, opened, line in zip(report["lines"], all_open["lines"], flowing["lines"])
            if line["nozzle"] or line["into"]
        ],
        "cautions": [answer.caution_texts(row, units) for row in caution.cautions(by_id, flowing) if row["level"] == caution.STOP
                     or row["code"] in ("above_working_pressure", "reaction_above_crew")],
    }


def _gate(line):
    """How a line's valve stands once it is throttled as asked."""
    return {"gate_psi": line["gate_psi"], "gate_gpm": line["flow_gpm"]} if line["flow_gpm"] > 0 else {}


def _asked(plain_layout, units):
    report = pressure.discharge_pressure(plain_layout)
    return display.setting(units, report["discharge_psi"]) if report["flow_gpm"] else None


def _read(rated, opened, line, is_shut, is_compared, units):
    texts = {
        "id": line["id"],
        "is_shut": is_shut,
        "flow": display.text(units, "flow", _flow_gpm(line)),
        "outlet": display.text(units, "pressure", _end_psi(line)),
        "reaction": line["nozzle"] and display.text(units, "force", line["nozzle"]["reaction_lbf"]),
        "rated_flow": display.text(units, "flow", _flow_gpm(rated)),
        "rated_outlet": display.text(units, "pressure", rated["outlet_psi"]),
    }
    if is_compared:
        texts["open_flow"] = display.text(units, "flow", _flow_gpm(opened))
        texts["open_outlet"] = display.text(units, "pressure", _end_psi(opened))
    return texts


def _flow_gpm(line):
    """What comes out of a nozzle, by whatever hose; of a hose that goes into another line, its own flow."""
    return (line["nozzle"] or line)["flow_gpm"]


def _end_psi(line):
    return line["nozzle"]["nozzle_psi"] if line["nozzle"] else line["outlet_psi"]
