"""The foam page's answer: how long the concentrate lasts, and how much hose the eductor can push through."""
from calc.base import display, readout
from calc.base.errors import CalcError
from calc.hydraulics import hose, water
from calc.supply import foam

PERCENTS = ("0.1", "0.3", "0.5", "1", "3", "6")
SHARE_PERCENT = 65  # of the inlet pressure, where no plate says otherwise


def answer(entries, shelf, units):
    """Foam through an in-line eductor, ready to be read.

    entries: text as typed or chosen: `concentrate`, `percent`, `flow` of the eductor, `minutes` wanted; `inlet` pressure,
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
    minutes = foam.foam_minutes(typed["concentrate"], flow_gpm, percent)
    needed_gal = foam.concentrate_gal(typed["minutes"], flow_gpm, percent)
    if plate_psi is not None and not plate_psi < typed["inlet"]:
        raise CalcError("plate", "not_below_inlet")
    most_psi = foam.most_back_pressure_psi(typed["inlet"], SHARE_PERCENT) if plate_psi is None else plate_psi
    back_psi = foam.back_pressure_psi(coefficient, flow_gpm, typed["length"], typed["rise"], typed["nozzle"])
    longest_ft = foam.longest_hose_ft(coefficient, flow_gpm, typed["rise"], typed["nozzle"], most_psi)
    rows = [
        readout.row(units, "foam_minutes", "time", minutes, (
            ("concentrate", "volume", typed["concentrate"]), ("flow", "flow", flow_gpm), ("percent", None, percent_text),
            ("minutes", "time", minutes)), ("foam",)),
        readout.row(units, "foam_needed", "volume", needed_gal, (
            ("wanted", "time", typed["minutes"]), ("flow", "flow", flow_gpm), ("percent", None, percent_text),
            ("needed", "volume", needed_gal)), ("foam",)),
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
    cautions = []
    if back_psi > most_psi:
        cautions.append(readout.caution(units, "stop", "back_pressure", (
            ("amount", "pressure", back_psi), ("limit", "pressure", most_psi), ("longest", "length", longest_ft))))
    if minutes < typed["minutes"]:
        cautions.append(readout.caution(units, "caution", "foam_short", (
            ("amount", "volume", typed["concentrate"]), ("needed", "volume", needed_gal), ("wanted", "time", typed["minutes"]))))
    return {
        "sum": "foam",
        "figure": {"kind": "time", "text": rows[0]["text"]},
        "facts": {"percent": percent_text, "flow": display.text(units, "flow", flow_gpm), "longest": rows[4]["text"]},
        "rows": rows,
        "cautions": cautions,
        "picture": {"inlet": display.text(units, "pressure", typed["inlet"]), "back": rows[3]["text"], "most": rows[2]["text"],
                    "nozzle": display.text(units, "pressure", typed["nozzle"]), "length": display.text(units, "length", typed["length"]),
                    "concentrate": display.text(units, "volume", typed["concentrate"]), "percent": percent_text,
                    "is_over": back_psi > most_psi},
    }
