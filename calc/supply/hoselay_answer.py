"""The wildland hose layout's answer: the pump pressure for its farthest nozzle, and what hose and pump say to it."""
import math

from calc.base import display, readout, shelf as at_hand
from calc.base.errors import CalcError
from calc.hydraulics import hose, nozzle, water
from calc.supply import hoselay, hoselay_pumps, strain

TIPS_IN = ("0.1875", "0.25", "0.3125", "0.375", "0.5")
MOST_FITTINGS = 50


def answer(entries, shelf, units):
    """A trunk with laterals that flow, ready to be read.

    entries: text as typed or chosen: the trunk's `hose`, `lining` ("lined" or "unlined"), `length`, `rise` of the farthest nozzle and
        `wyes` on the way to it; `laterals` that flow, their `spacing`, hose `lateral` and `lateral_length`; `tip` (inches, with
        its `nozzle` pressure, or "fog" with `flow` and `fog` pressure); `limit` of the hose, if known; and its pumps, see calc.supply.hoselay_pumps
    shelf: `hoses` by name, see calc.base.shelf
    units: see calc.base.display

    Returns contract `water_answer` with `hoselay_picture`. Raises CalcError naming the entry. Source: calc.supply.hoselay.
    """
    trunk_hose, lateral_hose = readout.hose(entries, shelf), at_hand.hose(shelf, "lateral", entries.get("lateral"))
    typed = readout.amounts(entries, units, (
        ("length", "length", 1, 20000), ("rise", "rise", -3000, 3000), ("spacing", "length", 0, 5000),
        ("lateral_length", "length", 0, 2000)))
    limit_psi = readout.if_given(entries, units, "limit", "pressure", 50, 800)
    laterals = readout.count(entries, "laterals", 1, hoselay.MOST_LATERALS)
    fittings = readout.count(entries, "wyes", 0, MOST_FITTINGS)
    is_unlined = readout.choice(entries, "lining", ("lined", "unlined")) == "unlined"
    rows, cautions = [], []
    flow_gpm, nozzle_psi = _end(entries, units, rows)
    trunk = {"coefficient": hoselay.unlined_coefficient(trunk_hose["coefficient"]) if is_unlined else trunk_hose["coefficient"], "length_ft": typed["length"],
             "spacing_ft": typed["spacing"], "laterals": laterals, "lateral_gpm": flow_gpm, "rise_ft": typed["rise"], "fittings": fittings}
    if typed["spacing"] * (laterals - 1) > typed["length"] * (1 + hoselay.LAST_BIT):
        raise CalcError("spacing", "past_trunk")
    losses = _losses(units, trunk, lateral_hose["coefficient"], typed["lateral_length"], is_unlined, rows)
    head_psi, field_psi = water.elevation_psi(typed["rise"]), hoselay.field_elevation_psi(typed["rise"])
    without_psi = nozzle_psi + sum(losses)
    sum_psi = without_psi + head_psi
    pump_psi = max(sum_psi, 0)
    rows[:0] = [
        readout.row(units, "hoselay_pump", "pressure", pump_psi, (
            ("nozzle", "pressure", nozzle_psi), ("lateral", "pressure", losses[1]), ("trunk", "pressure", losses[0]),
            ("wyes", "pressure", losses[2]), ("elevation", "pressure", head_psi), ("pump", "pressure", sum_psi)), ("trunk", "elevation")),
        readout.row(units, "hoselay_field", "pressure", max(without_psi + field_psi, 0), (
            ("elevation", "pressure", field_psi), ("rise", "rise", typed["rise"])), ("field_height",)),
        readout.row(units, "hoselay_flow", "flow", flow_gpm * laterals, (
            ("laterals", None, str(laterals)), ("flow", "flow", flow_gpm)), ("trunk",)),
    ]
    pumps = hoselay_pumps.read(entries, units, {"flow": flow_gpm * laterals, "pump": pump_psi, "field": rows[1]["text"], "fixed": head_psi + losses[2],
                                                "lost": nozzle_psi + losses[0] + losses[1], "nozzle": nozzle_psi}, trunk)
    rows += pumps["rows"]
    shut_psi = pumps["shut_psi"] + max(-head_psi, 0)
    rows.append(readout.row(units, "hoselay_shut", "pressure", shut_psi, (
        ("pump", "pressure", pumps["shut_psi"]), ("elevation", "pressure", max(-head_psi, 0))), ("elevation",)))
    filled_gal = hose.water_in_hose_gal(trunk_hose["bore_in"], typed["length"]) + laterals * hose.water_in_hose_gal(lateral_hose["bore_in"], typed["lateral_length"])
    rows.append(readout.row(units, "hoselay_fill", "volume", filled_gal, (), ("hose_water",)))
    cautions += _hose_cautions(units, trunk_hose, shut_psi, limit_psi)
    if is_unlined:
        cautions.append(readout.caution(units, "caution", "unlined", ()))
    if sum_psi <= 0:
        pumps["sum"], pumps["facts"] = "hoselay_gravity", _wide_open(units, flow_gpm * laterals, nozzle_psi, -sum_psi, (head_psi, losses), rows)
        cautions.append(readout.caution(units, "caution", "gravity_feeds", (("amount", "pressure", -sum_psi), ("limit", "pressure", -head_psi))))
    elif head_psi < 0:
        cautions.append(readout.caution(units, "caution", "downhill", (("amount", "pressure", shut_psi), ("limit", "pressure", -head_psi))))
    return {
        "sum": pumps["sum"],
        "figure": {"kind": "pressure", "text": rows[0]["text"]},
        "facts": pumps["facts"],
        "rows": rows,
        "cautions": cautions + pumps["cautions"],
        "picture": {"pump": rows[0]["text"], "wye": display.text(units, "pressure", nozzle_psi + losses[1]), "nozzle": display.text(units, "pressure", nozzle_psi),
                    "flow": rows[2]["text"], "length": display.text(units, "length", typed["length"]), "rise": display.text(units, "rise", typed["rise"]),
                    "laterals": laterals, "slope": (typed["rise"] > 0) - (typed["rise"] < 0), "next": None if pumps["next_ft"] is None else pumps["next_ft"] / typed["length"]},
    }


def _end(entries, units, rows):
    """What one lateral flows, and its nozzle pressure; notes a tip's working."""
    tip = readout.choice(entries, "tip", TIPS_IN + ("fog",))
    if tip == "fog":
        fog = readout.amounts(entries, units, (("flow", "flow", 1, 300), ("fog", "pressure", 10, 200)))
        return fog["flow"], fog["fog"]
    nozzle_psi = readout.amount(entries, units, "nozzle", "pressure", 10, 150)
    flow_gpm = nozzle.smooth_bore_flow_gpm(float(tip), nozzle_psi)
    rows.append(readout.row(units, "hoselay_tip", "flow", flow_gpm, (
        ("tip", "diameter", float(tip)), ("nozzle", "pressure", nozzle_psi), ("flow", "flow", flow_gpm)), ("smooth_flow",)))
    return flow_gpm, nozzle_psi


def _losses(units, trunk, coefficient, length_ft, is_unlined, rows):
    """What trunk, lateral and fittings take, psi; notes their workings."""
    flow_gpm, laterals = trunk["lateral_gpm"], trunk["laterals"]
    trunk_psi = hoselay.trunk_loss_psi(trunk["coefficient"], trunk["length_ft"], trunk["spacing_ft"], laterals, flow_gpm)
    lateral_psi = hose.friction_loss_psi(coefficient, flow_gpm, length_ft)
    wyes_psi = hoselay.fittings_psi(trunk["fittings"])
    rows += [
        readout.row(units, "hoselay_trunk", "pressure", trunk_psi, (
            ("coefficient", "coefficient", trunk["coefficient"]), ("most", "flow", flow_gpm * laterals), ("least", "flow", flow_gpm),
            ("spacing", "length", trunk["spacing_ft"]), ("friction", "pressure", trunk_psi)),
            ("trunk", "friction", "unlined") if is_unlined else ("trunk", "friction")),
        readout.row(units, "hoselay_lateral", "pressure", lateral_psi, (
            ("coefficient", "coefficient", coefficient), ("flow", "flow", flow_gpm),
            ("hundreds_length", "length", length_ft / 100), ("friction", "pressure", lateral_psi)), ("friction",)),
        readout.row(units, "hoselay_wyes", "pressure", wyes_psi, (
            ("wyes", None, str(trunk["fittings"])), ("each", "pressure", hoselay.FITTING_PSI), ("loss", "pressure", wyes_psi)), ("fittings",)),
    ]
    return trunk_psi, lateral_psi, wyes_psi


def _wide_open(units, flow_gpm, nozzle_psi, spare_psi, height_and_losses, rows):
    """What is to be throttled where the fall feeds the layout, and what it would flow with nothing throttled; notes that working."""
    head_psi, (trunk_psi, lateral_psi, wyes_psi) = height_and_losses
    lost_psi = nozzle_psi + trunk_psi + lateral_psi  # with the square of the flow
    share = (-head_psi - wyes_psi) / lost_psi
    open_gpm = flow_gpm * math.sqrt(share)
    rows.append(readout.row(units, "hoselay_open", "flow", open_gpm, (
        ("fall", "pressure", -head_psi), ("wyes", "pressure", wyes_psi), ("lost", "pressure", lost_psi), ("wanted", "flow", flow_gpm),
        ("flow", "flow", open_gpm)), ("trunk", "elevation")))
    return {"spare": display.text(units, "pressure", spare_psi), "flow": display.text(units, "flow", flow_gpm), "nozzle": display.text(units, "pressure", nozzle_psi),
            "open": display.text(units, "flow", open_gpm), "open_nozzle": display.text(units, "pressure", nozzle_psi * share)}


def _hose_cautions(units, trunk_hose, shut_psi, limit_psi):
    """The hose by the limit that is typed, else by its class."""
    if limit_psi is None:
        return strain.cautions(units, trunk_hose, shut_psi, "trunk")
    if shut_psi < limit_psi * (1 - hoselay.LAST_BIT):
        return []
    return [readout.caution(units, "stop", "hose_over", (("amount", "pressure", shut_psi), ("limit", "pressure", limit_psi)))]
