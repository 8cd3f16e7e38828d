"""The eductor's whole hose line, for the foam page: pump to eductor, eductor to nozzle, and what it bears behind it."""
from calc.base import readout, shelf as at_hand
from calc.base.errors import CalcError
from calc.hydraulics import hose, water
from calc.pump import rating
from calc.supply import foam, friction, strain

SHARE_PERCENT = 65  # of the inlet pressure, where no plate says otherwise
LIKE_SHARE = 0.05  # a nozzle within this of the eductor's flow is its match; our own judgment


def solved(entries, shelf, units, flow_gpm, eductors):
    """The line of one eductor of several alike on one pump, ready to be read.

    entries: text as typed or chosen: `inlet` pressure by its plate, `plate` (greatest back pressure, where it says); the `nozzle` pressure and
        its `nozzle_flow`, where that is not the eductor's; the hose behind: `hose`, `length`, `rise`; `stands` ("pump" or "line"), on a
        line with `to_hose`, `to_length`, `to_rise` from the pump; `rated`, capacity of the pump, where it is known
    shelf: `hoses` by name, see calc.base.shelf
    units: see calc.base.display
    flow_gpm: of each eductor, US gallons per minute, above 0
    eductors: how many, 1 or more

    Returns `rows`, `cautions`, and `inlet_psi`, `pump_psi`, `nozzle_psi`, `back_psi`, `most_psi`, `longest` as text, `length_ft`, `to_length_ft` (None at the pump), `is_drawing`: whether the
    eductor draws concentrate.
    Raises CalcError naming the entry. Source: calc.supply.foam; friction and elevation as for any line.
    """
    typed = readout.amounts(entries, units, (
        ("inlet", "pressure", 50, 400), ("nozzle", "pressure", 5, 300), ("length", "length", 0, 2000), ("rise", "rise", -300, 300)))
    line = _behind(entries, shelf, units, flow_gpm, typed)
    rows, cautions = _to_eductor(entries, shelf, units, flow_gpm, line)
    line["rows"] = rows + line["rows"]
    line["cautions"] += cautions
    is_matched = _nozzle(entries, units, flow_gpm, line["cautions"])
    line["is_drawing"] = is_matched and line["back_psi"] <= line["most_psi"]
    rated_gpm = readout.if_given(entries, units, "rated", "flow", 50, 6000)
    if rated_gpm is not None:
        flow_gpm *= eductors
        promised_psi = rating.rated_pressure_psi(rated_gpm, flow_gpm)
        if line["pump_psi"] > promised_psi:
            line["cautions"].append(readout.caution(units, "caution", "eductor_past_pump" if promised_psi > 0 else "past_capacity", (
                ("flow", "flow", flow_gpm), ("amount", "pressure", line["pump_psi"]), ("limit", "pressure", promised_psi))))
    return line


def _behind(entries, shelf, units, flow_gpm, typed):
    """From the eductor to its nozzle."""
    coefficient = readout.hose(entries, shelf)["coefficient"]
    friction_psi, friction_row = friction.read(units, "behind", (coefficient, 1), flow_gpm, typed["length"])
    plate_psi = readout.if_given(entries, units, "plate", "pressure", 10, 400)
    if plate_psi is not None and not plate_psi < typed["inlet"]:
        raise CalcError("plate", "not_below_inlet")
    most_psi = foam.most_back_pressure_psi(typed["inlet"], SHARE_PERCENT) if plate_psi is None else plate_psi
    back_psi = foam.back_pressure_psi(coefficient, flow_gpm, typed["length"], typed["rise"], typed["nozzle"])
    longest_ft = foam.longest_hose_ft(coefficient, flow_gpm, typed["rise"], typed["nozzle"], most_psi)
    nozzle = ("nozzle", "pressure", typed["nozzle"])
    elevation = ("elevation", "pressure", water.elevation_psi(typed["rise"]))
    rows = [
        readout.row(units, "most_back" if plate_psi is None else "most_back_plate", "pressure", most_psi, (
            ("inlet", "pressure", typed["inlet"]), ("percent", None, str(SHARE_PERCENT)), ("most", "pressure", most_psi)), ("eductor",)),
        readout.row(units, "back", "pressure", back_psi, (
            nozzle, ("friction", "pressure", friction_psi), elevation, ("back", "pressure", back_psi)), ("elevation",)),
        friction_row,
        readout.row(units, "longest", "length", longest_ft, (
            ("most", "pressure", most_psi), nozzle, elevation,
            ("rate", "friction_rate", hose.friction_loss_psi(coefficient, flow_gpm, 100)), ("longest", "length", longest_ft)),
            ("eductor", "friction"), 1),
    ]
    cautions = []
    if back_psi > most_psi:
        cautions.append(readout.caution(units, "stop", "back_pressure", (
            ("amount", "pressure", back_psi), ("limit", "pressure", most_psi), ("longest", None, rows[-1]["text"]))))
    return {"rows": rows, "cautions": cautions, "inlet_psi": typed["inlet"], "nozzle_psi": typed["nozzle"], "back_psi": back_psi, "most_psi": most_psi,
            "longest": rows[-1]["text"], "length_ft": typed["length"]}


def _to_eductor(entries, shelf, units, flow_gpm, line):
    """From the pump to the eductor: its rows and cautions; sets what the pump shows."""
    rows, cautions = [], []
    friction_psi = elevation_psi = 0
    line["to_length_ft"] = None
    if readout.choice(entries, "stands", ("pump", "line")) == "line":
        typed = readout.amounts(entries, units, (("to_length", "length", 0, 5000), ("to_rise", "rise", -300, 300)))
        feed = at_hand.hose(shelf, "to_hose", entries.get("to_hose"))
        friction_psi, row = friction.read(units, "to_eductor", (feed["coefficient"], 1), flow_gpm, typed["to_length"])
        rows.append(row)
        elevation_psi = water.elevation_psi(typed["to_rise"])
        line["to_length_ft"] = typed["to_length"]
        cautions += strain.cautions(units, feed, line["inlet_psi"] + friction_psi + max(elevation_psi, 0))
    line["pump_psi"] = pump_psi = max(line["inlet_psi"] + friction_psi + elevation_psi, 0)
    rows.insert(0, readout.row(units, "eductor_pump", "pressure", pump_psi, (
        ("inlet", "pressure", line["inlet_psi"]), ("friction", "pressure", friction_psi), ("elevation", "pressure", elevation_psi),
        ("pump", "pressure", pump_psi)), ("friction", "elevation")))
    return rows, cautions


def _nozzle(entries, units, flow_gpm, cautions):
    """Whether the nozzle lets the eductor draw; notes one that is not its match."""
    nozzle_gpm = readout.if_given(entries, units, "nozzle_flow", "flow", 1, 5000)
    if nozzle_gpm is None or abs(nozzle_gpm - flow_gpm) <= LIKE_SHARE * flow_gpm:
        return True
    level, code = ("stop", "nozzle_small") if nozzle_gpm < flow_gpm else ("caution", "nozzle_large")
    cautions.append(readout.caution(units, level, code, (("amount", "flow", nozzle_gpm), ("limit", "flow", flow_gpm))))
    return nozzle_gpm > flow_gpm
