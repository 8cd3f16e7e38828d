"""The hydrant page's answer: a flow test as typed in, what the hydrant can give, and what reaches the pump."""
from calc.base import display, readout
from calc.base.errors import CalcError
from calc.hydraulics import caution, hose, nozzle, water
from calc.supply import hydrant, sources

LEAST_DROP_PSI = 0.01  # no gauge shows less: the same pressure, typed in two units
SMALL_DROP_PERCENT = 10  # a smaller drop is mostly gauge, and the projection from it a guess
COEFFICIENTS = ("0.9", "0.8", "0.7")
CURVE_POINTS = 16
NONE = "\u2013"  # for a pressure below none, which no intake has, and for no class


def answer(entries, shelf, units):
    """What a hydrant can give, from one flow test, ready to be read.

    entries: text as typed or chosen: `known` ("flow" or "pitot"), `static`, `residual`, `floor` (pressure to leave in
        the main), `flowing`, or `outlet`, `shape`, `pitot`, `outlets`; the supply hose `hose`, `lines`, `length`,
        `rise`, and the `wanted` flow through it
    shelf: `hoses` by name, see calc.base.shelf
    units: see calc.base.display

    Returns contract `water_answer` with `hydrant_picture`. Raises CalcError naming the entry. Source: calc.supply.hydrant, calc.supply.sources.
    """
    typed = readout.amounts(entries, units, (
        ("static", "pressure", 1, 300), ("residual", "pressure", 0, 300), ("floor", "pressure", 0, 100)))
    static_psi, residual_psi, floor_psi = typed["static"], typed["residual"], typed["floor"]
    if not residual_psi <= static_psi - LEAST_DROP_PSI:
        raise CalcError("residual", "not_below_static")
    if not floor_psi < static_psi:
        raise CalcError("floor", "not_below_static")
    rows = []
    test = {"static_psi": static_psi, "residual_psi": residual_psi, "flow_gpm": _flowing(entries, units, rows)}
    flow_gpm = sources.hydrant_flow_gpm(static_psi, residual_psi, test["flow_gpm"], floor_psi)
    lines = hydrant.more_lines(test, floor_psi)
    rows.append(readout.row(units, "available", "flow", flow_gpm, (
        ("flow", "flow", test["flow_gpm"]), ("static", "pressure", static_psi), ("floor", "pressure", floor_psi),
        ("residual", "pressure", residual_psi), ("available", "flow", flow_gpm)), ("hydrant_flow",)))
    hydrant_class = NONE
    if static_psi > sources.LEAST_RESIDUAL_PSI:
        at_psi = hydrant.class_residual_psi(static_psi)
        class_gpm = sources.hydrant_flow_gpm(static_psi, residual_psi, test["flow_gpm"], at_psi)
        hydrant_class = hydrant.hydrant_class(class_gpm)
        rows.append(readout.row(units, "class" if at_psi == sources.LEAST_RESIDUAL_PSI else "class_low", None, hydrant_class, (
            ("at", "pressure", at_psi), ("flow", "flow", class_gpm)), ("hydrant_class",)))
    rows.append(readout.row(units, "more", None, str(lines["safe"]), (
        ("percentage", None, str(lines["percentage"])), ("first_digit", None, str(lines["first_digit"])),
        ("squaring", None, str(lines["squaring"])), ("by_flow", None, str(lines["by_flow"])),
        ("test", "flow", test["flow_gpm"]), ("floor", "pressure", floor_psi)),
        ("percentage", "first_digit", "squaring", "hydrant_flow")))
    drop = (("static", "pressure", static_psi), ("residual", "pressure", residual_psi),
            ("drop", "pressure", static_psi - residual_psi), ("percent", None, display.rounded(units, lines["drop_percent"], 1)))
    for rule in ("percentage", "first_digit", "squaring"):
        rows.append(readout.row(units, rule, None, str(lines[rule]), drop, (rule,)))
    cautions = _test_cautions(units, typed, lines)
    at_pump, line = _at_pump(entries, shelf, units, test, floor_psi, cautions)
    rows += at_pump
    return {
        "sum": "hydrant" if lines["safe"] else "hydrant_none",
        "figure": {"kind": "flow", "text": display.text(units, "flow", flow_gpm)},
        "facts": {"class": hydrant_class, "safe": str(lines["safe"]), "floor": _text(units, floor_psi), "test": display.text(units, "flow", test["flow_gpm"])},
        "rows": rows,
        "cautions": cautions,
        "picture": _drawn(units, test, floor_psi, flow_gpm, line),
    }


def _text(units, pressure_psi):
    return display.text(units, "pressure", pressure_psi)


def _flowing(entries, units, rows):
    """Flow of the test, as typed or from the pitot; notes its working."""
    if readout.choice(entries, "known", ("flow", "pitot")) == "flow":
        return readout.amount(entries, units, "flowing", "flow", 1, 20000)
    bore_in = readout.amount(entries, units, "outlet", "diameter", 1, 8)
    pitot_psi = readout.amount(entries, units, "pitot", "pressure", 1, 200)
    coefficient = float(readout.choice(entries, "shape", COEFFICIENTS))
    outlets = readout.count(entries, "outlets", 1, hydrant.MOST_OUTLETS)
    try:
        flow_gpm = hydrant.outlets_flow_gpm(bore_in, pitot_psi, coefficient, outlets)
    except CalcError as error:  # all is within its bounds, so only the table can be left
        raise CalcError("pitot", error.code, least=_text(units, error.facts["least"]))
    is_large = bore_in > hydrant.LARGEST_PLAIN_IN
    factor = hydrant.large_outlet_factor(pitot_psi) if is_large else 1
    rows.append(readout.row(units, "test_large" if is_large else "test", "flow", flow_gpm, (
        ("constant", "tip_constant", nozzle.PITOT_CONSTANT), ("coefficient", None, display.plain(units, coefficient, 2)),
        ("bore", "diameter", bore_in), ("pitot", "pressure", pitot_psi), ("factor", None, display.plain(units, factor, 3)),
        ("outlets", None, str(outlets)), ("flow", "flow", flow_gpm)),
        ("pitot", "large_outlet") if is_large else ("pitot",)))
    return flow_gpm


def _test_cautions(units, typed, lines):
    cautions = []
    if typed["residual"] < typed["floor"]:
        cautions.append(readout.caution(units, "stop", "residual_below_floor", (
            ("amount", "pressure", typed["residual"]), ("limit", "pressure", typed["floor"]))))
    if lines["drop_percent"] < SMALL_DROP_PERCENT:
        cautions.append(readout.caution(units, "caution", "drop_small", (
            ("amount", None, display.rounded(units, lines["drop_percent"], 1)), ("limit", None, str(SMALL_DROP_PERCENT)))))
    return cautions


def _at_pump(entries, shelf, units, test, floor_psi, cautions):
    """What the supply hose leaves at the pump: its rows, and the texts that stand along the line."""
    supply_hose = readout.hose(entries, shelf)
    hoses = readout.count(entries, "lines", 1, hose.MOST_PARALLEL)
    typed = readout.amounts(entries, units, (
        ("length", "length", 0, 5000), ("rise", "rise", -500, 500), ("wanted", "flow", 1, 20000)))
    line = {"coefficient": hose.parallel_coefficient([supply_hose["coefficient"]] * hoses), "length_ft": typed["length"],
            "rise_ft": typed["rise"]}
    most_gpm = hydrant.flow_at_pump_gpm(test, line, floor_psi)
    intake_psi = hydrant.intake_psi(test, line, typed["wanted"])
    hydrant_psi = hydrant.residual_psi(test, typed["wanted"])
    rows = [readout.row(units, "at_pump", "flow", most_gpm, (("floor", "pressure", floor_psi),), ("hydrant_flow", "friction"), 1)]
    if intake_psi < floor_psi:
        cautions.append(readout.caution(units, "stop", "intake_below_floor", (
            ("flow", "flow", typed["wanted"]), ("limit", "pressure", floor_psi), ("most", None, rows[0]["text"]))))
    read = ("pressure", intake_psi) if intake_psi >= 0 else (None, NONE)
    rows += _layouts(units, test, floor_psi, supply_hose, line, hoses, typed["wanted"], most_gpm)
    rows += [
        readout.row(units, "intake", *read, (
            ("hydrant", "pressure", hydrant_psi),
            ("friction", "pressure", hose.friction_loss_psi(line["coefficient"], typed["wanted"], line["length_ft"])),
            ("elevation", "pressure", water.elevation_psi(line["rise_ft"])),
            ("flow", "flow", typed["wanted"]), ("intake", "pressure", intake_psi)), ("hydrant_flow", "friction", "elevation")),
    ]
    return rows, {"hydrant": _text(units, hydrant_psi) if hydrant_psi >= 0 else NONE, "intake": rows[-1]["text"],
                  "flow": display.text(units, "flow", typed["wanted"]), "length": display.text(units, "length", typed["length"]), "hoses": hoses}


def _layouts(units, test, floor_psi, supply_hose, line, hoses, wanted_gpm, most_gpm):
    """What another way of bringing the same water would give: one line more, the pumper at the hydrant, and how far; the fill."""
    rows = []
    if hoses < hose.MOST_PARALLEL:
        wider = {"coefficient": hose.parallel_coefficient([supply_hose["coefficient"]] * (hoses + 1)), "length_ft": line["length_ft"],
                 "rise_ft": line["rise_ft"]}
        both_gpm = hydrant.flow_at_pump_gpm(test, wider, floor_psi)
        rows.append(readout.row(units, "one_more", "flow", both_gpm, (
            ("lines", None, str(hoses + 1)), ("both", "flow", both_gpm), ("most", "flow", most_gpm), ("more", "flow", both_gpm - most_gpm)),
            ("hydrant_flow", "friction", "parallel")))
    limit_psi = caution.working_psi(supply_hose)
    if limit_psi is not None:
        reverse_gpm = hydrant.reverse_gpm(test, line, floor_psi, limit_psi)
        rows.append(readout.row(units, "reverse", "flow", reverse_gpm, (
            ("limit", "pressure", limit_psi), ("floor", "pressure", floor_psi)), ("hydrant_flow", "friction", "working_pressure")))
    reach_ft = hydrant.reach_ft(test, line, wanted_gpm, floor_psi)
    held_gal = hose.water_in_hose_gal(supply_hose["bore_in"], line["length_ft"]) * hoses
    return rows + [
        readout.row(units, "reach", "length", reach_ft, (
            ("hydrant", "pressure", hydrant.residual_psi(test, wanted_gpm)), ("floor", "pressure", floor_psi),
            ("elevation", "pressure", water.elevation_psi(line["rise_ft"])),
            ("rate", "friction_rate", hose.friction_loss_psi(line["coefficient"], wanted_gpm, 100)), ("reach", "length", reach_ft)),
            ("hydrant_flow", "friction")),
        readout.row(units, "fill", "time", held_gal / wanted_gpm, (
            ("held", "volume", held_gal), ("flow", "flow", wanted_gpm), ("minutes", "time", held_gal / wanted_gpm)), ("relay_fill",)),
    ]


def _drawn(units, test, floor_psi, flow_gpm, line):
    """The curve from no flow to an empty main, the points that carry numbers, as shares of the axes, and the line to the pump."""
    static_psi = test["static_psi"]
    end_gpm = sources.hydrant_flow_gpm(static_psi, test["residual_psi"], test["flow_gpm"], 0)
    curve = []
    for count in range(CURVE_POINTS + 1):
        share = count / CURVE_POINTS
        curve.append([share, 1 - share ** (1 / sources.HYDRANT_POWER)])
    return {
        "curve": curve,
        "line": line,
        "static": _text(units, static_psi),
        "test": {"x": test["flow_gpm"] / end_gpm, "y": test["residual_psi"] / static_psi,
                 "flow": display.text(units, "flow", test["flow_gpm"]), "pressure": _text(units, test["residual_psi"])},
        "floor": {"x": flow_gpm / end_gpm, "y": floor_psi / static_psi,
                  "flow": display.text(units, "flow", flow_gpm), "pressure": _text(units, floor_psi)},
    }
