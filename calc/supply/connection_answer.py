"""The answer for a fire department connection: standpipe or sprinkler, what one pump or two in series have to show, and what can spoil it."""
from calc.base import display, readout, shelf as at_hand
from calc.hydraulics import hose, water
from calc.supply import connection, friction, sources, strain

RISERS = ("within", "4", "5", "6")  # within the allowance, or its bore in inches
MOST_INLETS = 12
LAST_BIT = 1e-9


def answer(entries, shelf, units):
    """What to pump into a connection, ready to be read.

    entries: text as typed or chosen: `system` ("standpipe" or "sprinkler"); `sign`, the pressure on its sign, if there is
        one; the feed `hose`, `lines`, `length`, `flow`; `supply`, the first intake while water flows, if known;
        `engines` ("one" or "two" in series), of two the hose `between`, its `between_lines` and `between_length`, and `limit`, the most the second intake may see, if known; of a standpipe `needed` (pressure at the outlet), `by` ("floor" or
        "height") with `storey` or `climb`, `allowance` (inlet, valves, bends), `riser` ("within" the allowance, or its
        bore in inches), `device` ("none", "restrictor" or "set") and its `setting`, if known
    shelf: `hoses` by name, see calc.base.shelf
    units: see calc.base.display

    Returns contract `water_answer` with `connection_picture`. Raises CalcError naming the entry. Source: calc.supply.connection.
    """
    feed_hose = readout.hose(entries, shelf)
    lines = readout.count(entries, "lines", 1, MOST_INLETS)
    system = readout.choice(entries, "system", ("standpipe", "sprinkler"))
    typed = readout.amounts(entries, units, (("length", "length", 0, 2000), ("flow", "flow", 1, 5000)))
    supply_psi = readout.if_given(entries, units, "supply", "pressure", 0, 300)
    sign_psi = readout.if_given(entries, units, "sign", "pressure", 20, 800)
    rows, cautions = [], []
    upstairs = _upstairs(entries, units, typed["flow"], rows, cautions) if system == "standpipe" else None
    inlet_psi = _at_connection(units, sign_psi, upstairs, rows, cautions)
    friction_psi, feed = friction.read(units, "feed", (feed_hose["coefficient"], lines), typed["flow"], typed["length"])
    pump_psi = inlet_psi + friction_psi
    rows.insert(0, feed)
    rows.insert(0, readout.row(units, "pump", "pressure", pump_psi, (
        ("connection", "pressure", inlet_psi), ("friction", "pressure", friction_psi), ("pump", "pressure", pump_psi)),
        ("connection",)))
    if upstairs and upstairs["riser_in"]:
        rows.append(_fill(units, upstairs, feed_hose, lines, typed))
    cautions += _strains(units, typed, lines, feed_hose, inlet_psi, pump_psi)
    facts = {"connection": display.text(units, "pressure", inlet_psi)}
    is_series = readout.choice(entries, "engines", ("one", "two")) == "two"
    if is_series:
        facts["first"], facts["intake"] = _in_series(entries, shelf, units, {"pump": pump_psi, "intake": supply_psi or 0, "flow": typed["flow"]}, rows, cautions)
    elif pump_psi - (supply_psi or 0) > connection.MOST_NET_PSI:
        cautions.append(readout.caution(units, "caution", "in_series", (
            ("amount", "pressure", pump_psi), ("limit", "pressure", connection.MOST_NET_PSI), ("needed", "pressure", pump_psi - connection.MOST_NET_PSI))))
    return {
        "sum": "two_engines" if is_series else system,
        "figure": {"kind": "pressure", "text": rows[0]["text"]},
        "facts": facts,
        "rows": rows,
        "cautions": cautions,
        "picture": {"pump": rows[0]["text"], "connection": facts["connection"], "hoses": lines,
                    "outlet": display.text(units, "pressure", upstairs["needed"]) if upstairs else None,
                    "height": display.text(units, "rise", water.head_ft(upstairs["elevation_psi"])) if upstairs else None,
                    "flow": display.text(units, "flow", typed["flow"]), "length": display.text(units, "length", typed["length"])},
    }


def _upstairs(entries, units, flow_gpm, rows, cautions):
    """What the outlet and the pipe to it take, by its terms; notes their workings and what its valve may do."""
    taken = readout.amounts(entries, units, (("needed", "pressure", 0, 300), ("allowance", "pressure", 0, 200)))
    if readout.choice(entries, "by", ("floor", "height")) == "height":
        climb_ft = readout.amount(entries, units, "climb", "rise", -200, 2000)
        elevation_psi = water.elevation_psi(climb_ft)
        rows.append(readout.row(units, "head", "pressure", elevation_psi, (
            ("height", "rise", climb_ft), ("elevation", "pressure", elevation_psi)), ("elevation",)))
    else:
        storey = readout.count(entries, "storey", 1, 150)
        elevation_psi = connection.floors_psi(storey)
        rows.append(readout.row(units, "floors", "pressure", elevation_psi, (
            ("floor", None, str(storey)), ("each", "pressure", connection.FLOOR_PSI), ("elevation", "pressure", elevation_psi)),
            ("floors",)))
    riser = readout.choice(entries, "riser", RISERS)
    riser_in = None if riser == "within" else int(riser)
    length_ft = connection.riser_ft(elevation_psi)
    riser_psi = 0
    if riser_in:
        riser_psi, row = friction.read(units, "riser", (connection.COEFFICIENTS[riser_in], 1), flow_gpm, length_ft, ("riser",))
        rows.append(row)
    _at_outlet(entries, units, taken["needed"], cautions)
    needed_psi = connection.needed_psi(taken["needed"], taken["allowance"], riser_psi, elevation_psi)
    return {"needed": taken["needed"], "allowance": taken["allowance"], "riser_psi": riser_psi, "riser_in": riser_in,
            "elevation_psi": elevation_psi, "length_ft": length_ft,
            "at_connection_psi": needed_psi}


def _at_outlet(entries, units, needed_psi, cautions):
    """What a device in the outlet does to the pump's pressure."""
    device = readout.choice(entries, "device", ("none", "restrictor", "set"))
    if device == "restrictor":
        cautions.append(readout.caution(units, "caution", "restrictor", ()))
    if device != "set":
        return
    setting_psi = readout.if_given(entries, units, "setting", "pressure", 10, 400)
    if setting_psi is None:
        cautions.append(readout.caution(units, "caution", "device_unknown", ()))
    elif setting_psi < needed_psi:
        cautions.append(readout.caution(units, "stop", "device_low", (
            ("amount", "pressure", setting_psi), ("limit", "pressure", needed_psi))))


def _at_connection(units, sign_psi, upstairs, rows, cautions):
    """The pressure to hold at the connection: its sign's, else the outlet's need, else what is taught; notes its working."""
    computed_psi = upstairs["at_connection_psi"] if upstairs else None
    if sign_psi is not None:
        rows.insert(0, readout.row(units, "at_sign", "pressure", sign_psi, (("sign", "pressure", sign_psi),), ("connection",)))
        if upstairs and sign_psi < computed_psi:
            cautions.append(readout.caution(units, "caution", "sign_low", (
                ("amount", "pressure", sign_psi), ("limit", "pressure", computed_psi))))
        return sign_psi
    if not upstairs:
        rows.insert(0, readout.row(units, "taught", "pressure", connection.SPRINKLER_PSI, (
            ("taught", "pressure", connection.SPRINKLER_PSI),), ("sprinkler",)))
        return connection.SPRINKLER_PSI
    rows.insert(0, readout.row(units, "at_connection", "pressure", computed_psi, (
        ("needed", "pressure", upstairs["needed"]), ("system", "pressure", upstairs["allowance"]),
        ("riser", "pressure", upstairs["riser_psi"]), ("elevation", "pressure", upstairs["elevation_psi"]),
        ("connection", "pressure", computed_psi)), ("connection", "allowance")))
    return computed_psi


def _fill(units, upstairs, feed_hose, lines, typed):
    """Time until a dry pipe and its feed are full."""
    held_gal = (hose.water_in_hose_gal(upstairs["riser_in"], upstairs["length_ft"])
                + hose.water_in_hose_gal(feed_hose["bore_in"], typed["length"]) * lines)
    minutes = held_gal / typed["flow"]
    return readout.row(units, "fill", "time", minutes, (
        ("held", "volume", held_gal), ("flow", "flow", typed["flow"]), ("minutes", "time", minutes)), ("relay_fill",))


def _strains(units, typed, lines, feed_hose, inlet_psi, pump_psi):
    """What is asked too much: of the feed, of the building's pipe, of the inlets, of the pump."""
    cautions = strain.cautions(units, feed_hose, pump_psi)
    if inlet_psi > connection.SYSTEM_MOST_PSI:
        cautions.append(readout.caution(units, "stop", "system_over", (
            ("amount", "pressure", inlet_psi), ("limit", "pressure", connection.SYSTEM_MOST_PSI))))
    planned_gpm = connection.INLET_GPM * lines
    if typed["flow"] > planned_gpm:
        cautions.append(readout.caution(units, "caution", "more_inlets", (
            ("flow", "flow", typed["flow"]), ("limit", "flow", planned_gpm))))
    return cautions


def _in_series(entries, shelf, units, known, rows, cautions):
    """Two engines, one into the next: what each shows and adds, and each pressure against its limit. Returns what the first shows and the second gets, as texts."""
    between = at_hand.hose(shelf, "between", entries.get("between"))
    hoses = readout.count(entries, "between_lines", 1, MOST_INLETS)
    length_ft = readout.amount(entries, units, "between_length", "length", 0, 1000)
    limit_psi = readout.if_given(entries, units, "limit", "pressure", 20, 800)
    pump_psi, intake_psi = known["pump"], known["intake"]
    between_psi = hose.friction_loss_psi(hose.parallel_coefficient([between["coefficient"]] * hoses), known["flow"], length_ft)
    alike_psi = connection.series_psi(pump_psi, intake_psi, between_psi)
    first_psi = connection.series_psi(pump_psi, intake_psi, between_psi, limit_psi)
    second_psi = first_psi - between_psi
    adds_psi = {"first": first_psi - intake_psi, "second": pump_psi - second_psi}
    rows += [
        readout.row(units, "series_first", "pressure", first_psi, (
            ("intake", "pressure", intake_psi), ("each", "pressure", adds_psi["first"]), ("first", "pressure", first_psi)), ("joint",)),
        readout.row(units, "series_intake", "pressure", second_psi, (
            ("first", "pressure", first_psi), ("friction", "pressure", between_psi), ("intake", "pressure", second_psi)), ("joint", "friction")),
        readout.row(units, "series_second", "pressure", pump_psi, (
            ("intake", "pressure", second_psi), ("each", "pressure", adds_psi["second"]), ("pump", "pressure", pump_psi)), ("joint",)),
    ]
    cautions += strain.cautions(units, between, first_psi, "between")
    seen, may_see = ("amount", "pressure", first_psi), ("limit", "pressure", limit_psi)
    if limit_psi is None:
        cautions.append(readout.caution(units, "caution", "series_intake_unread", (seen,)))
    elif first_psi > limit_psi:
        cautions.append(readout.caution(units, "stop", "series_intake_over", (seen, may_see)))
    elif alike_psi > limit_psi:
        cautions.append(readout.caution(units, "caution", "series_less_first", (
            ("amount", "pressure", alike_psi), may_see, ("needed", "pressure", adds_psi["second"]))))
    if second_psi < sources.LEAST_RESIDUAL_PSI:
        cautions.append(readout.caution(units, "stop", "second_supply_low", (("limit", "pressure", sources.LEAST_RESIDUAL_PSI),)))
    most_psi = max(adds_psi["first"], adds_psi["second"])
    if most_psi > connection.MOST_NET_PSI * (1 + LAST_BIT):
        cautions.append(readout.caution(units, "stop", "series_over", (
            ("amount", "pressure", most_psi), ("limit", "pressure", connection.MOST_NET_PSI))))
    return display.text(units, "pressure", first_psi), display.text(units, "pressure", second_psi)
