"""The foam page's answer: how long the concentrate lasts, what a spill takes, and the eductor's whole hose line."""
from calc.base import display, readout
from calc.base.errors import CalcError
from calc.supply import eductor_answer, foam

PERCENTS = ("0.1", "0.3", "0.5", "1", "3", "6")
RATES = ("0.1", "0.16", "0.2")  # gpm for each square foot, by fuel and foam


def answer(entries, shelf, units):
    """Foam through in-line eductors, ready to be read.

    entries: text as typed or chosen: `task` ("hand": so many `eductors`, or "spill"), of a spill its `spill_length`, `spill_width` and `rate`;
        `concentrate`, `percent`, `flow` of an eductor, `minutes` wanted; and of its line what calc.supply.eductor_answer takes
    shelf: `hoses` by name, see calc.base.shelf
    units: see calc.base.display

    Returns contract `water_answer` with `foam_picture`; the figure's text is None where the eductors draw nothing. Raises CalcError naming the entry. Source: calc.supply.foam.
    """
    typed = readout.amounts(entries, units, (
        ("concentrate", "volume", 0.1, 20000), ("flow", "flow", 1, 5000), ("minutes", "time", 0.1, 600)))
    percent_text = readout.choice(entries, "percent", PERCENTS)
    percent = float(percent_text)
    rows, cautions, facts = [], [], {"percent": percent_text}
    is_spill = readout.choice(entries, "task", ("hand", "spill")) == "spill"
    eductors = _eductors(entries, units, typed, percent_text, (rows, cautions, facts)) if is_spill else readout.count(entries, "eductors", 1, foam.MOST_EDUCTORS)
    line = eductor_answer.solved(entries, shelf, units, typed["flow"], eductors)
    cautions += line["cautions"]
    solution_gpm = eductors * typed["flow"]
    minutes = foam.foam_minutes(typed["concentrate"], solution_gpm, percent)
    needed_gal = foam.concentrate_gal(typed["minutes"], solution_gpm, percent)
    water_gal = typed["minutes"] * solution_gpm - needed_gal
    flowing = ("flow", "flow", solution_gpm)
    if line["is_drawing"]:
        rows.append(readout.row(units, "foam_minutes", "time", minutes, (
            ("concentrate", "volume", typed["concentrate"]), flowing, ("percent", None, percent_text), ("minutes", "time", minutes)), ("foam",)))
    rows += [
        readout.row(units, "foam_needed", "volume", needed_gal, (
            ("wanted", "time", typed["minutes"]), flowing, ("percent", None, percent_text), ("needed", "volume", needed_gal)), ("foam",)),
        readout.row(units, "foam_water", "volume", water_gal, (
            ("wanted", "time", typed["minutes"]), flowing, ("needed", "volume", needed_gal), ("water", "volume", water_gal)), ("foam",)),
    ]
    if minutes < typed["minutes"]:
        cautions.append(readout.caution(units, "stop" if is_spill else "caution", "foam_short", (
            ("amount", "volume", typed["concentrate"]), ("needed", "volume", needed_gal), ("wanted", "time", typed["minutes"]))))
    flow_text, pump_text = display.text(units, "flow", solution_gpm), display.setting(units, line["pump_psi"])
    if is_spill:
        facts.update({"eductors": str(eductors), "each": display.text(units, "flow", typed["flow"]), "wanted": display.text(units, "time", typed["minutes"]),
                      "needed": display.text(units, "volume", needed_gal), "water": display.text(units, "volume", water_gal)})
    else:
        facts.update({"pump": pump_text, "flow": flow_text, "longest": line["longest"]})
    figure = {"kind": "flow", "text": flow_text} if is_spill else {"kind": "time", "text": display.text(units, "time", minutes)}
    if not line["is_drawing"]:
        figure["text"] = None
        facts = {name: facts[name] for name in ("least", "least_needed") if name in facts}
    return {
        "sum": ("foam_spill" if is_spill else "foam") + ("" if line["is_drawing"] else "_none"),
        "figure": figure,
        "facts": facts,
        "rows": rows + line["rows"],
        "cautions": cautions,
        "picture": {"pump": pump_text, "inlet": display.text(units, "pressure", line["inlet_psi"]), "back": display.text(units, "pressure", line["back_psi"]),
                    "most": display.text(units, "pressure", line["most_psi"]), "nozzle": display.text(units, "pressure", line["nozzle_psi"]),
                    "length": display.text(units, "length", line["length_ft"]), "to_length": display.text(units, "length", line["to_length_ft"]),
                    "eductors": eductors, "concentrate": display.text(units, "volume", typed["concentrate"]), "percent": percent_text,
                    "is_drawing": line["is_drawing"]},
    }


def _eductors(entries, units, typed, percent_text, notes):
    """How many eductors the spill asks for, by its area and its rate; notes in rows, cautions and facts what it takes at least, and a time too short."""
    rows, cautions, facts = notes
    flow_gpm, minutes = typed["flow"], typed["minutes"]
    sides = readout.amounts(entries, units, (("spill_length", "length", 1, 1000), ("spill_width", "length", 1, 1000)))
    rate_text = readout.choice(entries, "rate", RATES)
    area_ft2 = sides["spill_length"] * sides["spill_width"]
    asked_gpm = foam.spill_gpm(area_ft2, float(rate_text))
    eductors = foam.eductors_for(asked_gpm, flow_gpm)
    if eductors > foam.MOST_EDUCTORS:
        raise CalcError("flow", "too_many_eductors", most=str(foam.MOST_EDUCTORS))
    least_gal = foam.concentrate_gal(minutes, asked_gpm, float(percent_text))
    facts.update({"least": display.text(units, "flow", asked_gpm), "least_needed": display.text(units, "volume", least_gal)})
    rows += [
        readout.row(units, "spill", "flow", asked_gpm, (
            ("area", None, display.plain(units, area_ft2, 0)), ("rate", None, display.marked(units, rate_text)),
            ("gpm", None, display.plain(units, asked_gpm, 0))), ("spill",)),
        readout.row(units, "foam_least", "volume", least_gal, (
            ("wanted", "time", minutes), ("flow", "flow", asked_gpm), ("percent", None, percent_text), ("needed", "volume", least_gal)), ("foam",)),
        readout.row(units, "eductors", None, str(eductors), (
            ("asked", "flow", asked_gpm), ("flow", "flow", flow_gpm), ("eductors", None, str(eductors))), ("eductors",)),
    ]
    if minutes < foam.SPILL_MINUTES:
        cautions.append(readout.caution(units, "caution", "spill_minutes", (
            ("amount", "time", minutes), ("limit", "time", foam.SPILL_MINUTES))))
    return eductors
