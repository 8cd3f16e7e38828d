"""The foam page's answer: how long the concentrate lasts, and how much hose the eductor can push through."""
from calc.base import display, readout
from calc.base.errors import CalcError
from calc.hydraulics import hose, water
from calc.supply import foam

PERCENTS = ("0.1", "0.3", "0.5", "1", "3", "6")
RATES = ("0.1", "0.16", "0.2")  # gpm for each square foot, by fuel and foam
SHARE_PERCENT = 65  # of the inlet pressure, where no plate says otherwise


def answer(entries, shelf, units):
    """Foam through an in-line eductor, ready to be read.

    entries: text as typed or chosen: `task` ("hand": one eductor, or "spill"), of a spill its `spill_length`, `spill_width` and `rate`;
        `concentrate`, `percent`, `flow` of an eductor, `minutes` wanted; `inlet` pressure,
        `plate` (greatest back pressure, where its plate says), `nozzle` pressure, and the hose behind: `hose`, `length`, `rise`
    shelf: `hoses` by name, see calc.base.shelf
    units: see calc.base.display

    Returns contract `water_answer` with `foam_picture`. Raises CalcError naming the entry. Source: calc.supply.foam.
    """
    typed = readout.amounts(entries, units, (
        ("concentrate", "volume", 0.1, 20000), ("flow", "flow", 1, 5000), ("minutes", "time", 0.1, 600),
        ("inlet", "pressure", 50, 400), ("nozzle", "pressure", 5, 300), ("length", "length", 0, 2000),
        ("rise", "rise", -300, 300)))
    percent_text = readout.choice(entries, "percent", PERCENTS)
    plate_psi = readout.if_given(entries, units, "plate", "pressure", 10, 400)
    percent = float(percent_text)
    coefficient = readout.hose(entries, shelf)["coefficient"]
    flow_gpm = typed["flow"]
    rows, cautions = [], []
    is_spill = readout.choice(entries, "task", ("hand", "spill")) == "spill"
    eductors = _eductors(entries, units, flow_gpm, typed["minutes"], rows, cautions) if is_spill else 1
    solution_gpm = eductors * flow_gpm
    minutes = foam.foam_minutes(typed["concentrate"], solution_gpm, percent)
    needed_gal = foam.concentrate_gal(typed["minutes"], solution_gpm, percent)
    if plate_psi is not None and not plate_psi < typed["inlet"]:
        raise CalcError("plate", "not_below_inlet")
    most_psi = foam.most_back_pressure_psi(typed["inlet"], SHARE_PERCENT) if plate_psi is None else plate_psi
    back_psi = foam.back_pressure_psi(coefficient, flow_gpm, typed["length"], typed["rise"], typed["nozzle"])
    longest_ft = foam.longest_hose_ft(coefficient, flow_gpm, typed["rise"], typed["nozzle"], most_psi)
    lasting = readout.row(units, "foam_minutes", "time", minutes, (
        ("concentrate", "volume", typed["concentrate"]), ("flow", "flow", solution_gpm), ("percent", None, percent_text),
        ("minutes", "time", minutes)), ("foam",))
    rows.append(lasting)
    water_gal = typed["minutes"] * solution_gpm - needed_gal
    rows += [
        readout.row(units, "foam_needed", "volume", needed_gal, (
            ("wanted", "time", typed["minutes"]), ("flow", "flow", solution_gpm), ("percent", None, percent_text),
            ("needed", "volume", needed_gal)), ("foam",)),
        readout.row(units, "foam_water", "volume", water_gal, (
            ("wanted", "time", typed["minutes"]), ("flow", "flow", solution_gpm), ("needed", "volume", needed_gal),
            ("water", "volume", water_gal)), ("foam",)),
    ]
    behind = [
        readout.row(units, "most_back" if plate_psi is None else "most_back_plate", "pressure", most_psi, (
            ("inlet", "pressure", typed["inlet"]), ("percent", None, str(SHARE_PERCENT)), ("most", "pressure", most_psi)), ("eductor",)),
        readout.row(units, "back", "pressure", back_psi, (
            ("nozzle", "pressure", typed["nozzle"]),
            ("friction", "pressure", hose.friction_loss_psi(coefficient, flow_gpm, typed["length"])),
            ("elevation", "pressure", water.elevation_psi(typed["rise"])), ("back", "pressure", back_psi)),
            ("friction", "elevation")),
        readout.row(units, "longest", "length", longest_ft, (
            ("most", "pressure", most_psi), ("nozzle", "pressure", typed["nozzle"]),
            ("elevation", "pressure", water.elevation_psi(typed["rise"])),
            ("rate", "friction_rate", hose.friction_loss_psi(coefficient, flow_gpm, 100)), ("longest", "length", longest_ft)),
            ("eductor", "friction")),
    ]
    if back_psi > most_psi:
        cautions.append(readout.caution(units, "stop", "back_pressure", (
            ("amount", "pressure", back_psi), ("limit", "pressure", most_psi), ("longest", "length", longest_ft))))
    if minutes < typed["minutes"]:
        cautions.append(readout.caution(units, "stop" if is_spill else "caution", "foam_short", (
            ("amount", "volume", typed["concentrate"]), ("needed", "volume", needed_gal), ("wanted", "time", typed["minutes"]))))
    facts = {"percent": percent_text, "flow": display.text(units, "flow", solution_gpm)}
    if is_spill:
        facts.update({"eductors": str(eductors), "needed": display.text(units, "volume", needed_gal), "wanted": display.text(units, "time", typed["minutes"])})
    else:
        facts["longest"] = behind[2]["text"]
    return {
        "sum": "foam_spill" if is_spill else "foam",
        "figure": {"kind": "time", "text": lasting["text"]},
        "facts": facts,
        "rows": rows + behind,
        "cautions": cautions,
        "picture": {"inlet": display.text(units, "pressure", typed["inlet"]), "back": behind[1]["text"], "most": behind[0]["text"],
                    "nozzle": display.text(units, "pressure", typed["nozzle"]), "length": display.text(units, "length", typed["length"]),
                    "concentrate": display.text(units, "volume", typed["concentrate"]), "percent": percent_text,
                    "is_over": back_psi > most_psi},
    }


def _eductors(entries, units, flow_gpm, minutes, rows, cautions):
    """How many eductors the spill asks for, by its area and its rate; notes their workings and a time too short for any spill."""
    sides = readout.amounts(entries, units, (("spill_length", "length", 1, 1000), ("spill_width", "length", 1, 1000)))
    rate_text = readout.choice(entries, "rate", RATES)
    area_ft2 = sides["spill_length"] * sides["spill_width"]
    asked_gpm = foam.spill_gpm(area_ft2, float(rate_text))
    eductors = foam.eductors_for(asked_gpm, flow_gpm)
    if eductors > foam.MOST_EDUCTORS:
        raise CalcError("flow", "too_many_eductors", most=str(foam.MOST_EDUCTORS))
    rows += [
        readout.row(units, "spill", "flow", asked_gpm, (
            ("area", None, display.plain(units, area_ft2, 0)), ("rate", None, display.marked(units, rate_text)),
            ("gpm", None, display.plain(units, asked_gpm, 0))), ("spill",)),
        readout.row(units, "eductors", None, str(eductors), (
            ("asked", "flow", asked_gpm), ("flow", "flow", flow_gpm), ("eductors", None, str(eductors))), ("eductors",)),
    ]
    if minutes < foam.SPILL_MINUTES:
        cautions.append(readout.caution(units, "caution", "spill_minutes", (
            ("amount", "time", minutes), ("limit", "time", foam.SPILL_MINUTES))))
    return eductors
