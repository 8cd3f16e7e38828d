"""The tank page's answer: how long a tank lasts at a flow, and when to say so."""
from calc.base import display, readout
from calc.supply import sources

USABLE = ("100", "90", "80")
MARKS = (0.75, 0.5, 0.25)
# least flow from tank to pump that a rig is built for, with a large tank and with a smaller
LARGE_TANK_GAL, LARGE_TANK_GPM, SMALL_TANK_GPM = 500, 500, 250


def answer(entries, shelf, units):
    """How long the tank lasts, ready to be read.

    entries: text as typed or chosen: `tank`, `usable` (percent), `flow`
    shelf: not used by this page
    units: see calc.base.display

    Returns contract `water_answer` with `tank_picture`. Raises CalcError naming the entry.
    Source: volume over flow; least flow from tank to pump NFPA 1901, from memory.
    """
    typed = readout.amounts(entries, units, (("tank", "volume", 1, 100000), ("flow", "flow", 1, 5000)))
    percent = readout.choice(entries, "usable", USABLE)
    usable_gal = typed["tank"] * float(percent) / 100
    minutes = sources.tank_minutes(usable_gal, typed["flow"])
    built_for_gpm = LARGE_TANK_GPM if typed["tank"] >= LARGE_TANK_GAL else SMALL_TANK_GPM
    cautions = []
    if typed["flow"] > built_for_gpm:
        cautions.append(readout.caution(units, "caution", "tank_to_pump", (
            ("amount", "flow", typed["flow"]), ("limit", "flow", built_for_gpm))))
    rows = [
        readout.row(units, "usable", "volume", usable_gal, (
            ("tank", "volume", typed["tank"]), ("percent", None, percent), ("usable", "volume", usable_gal)), ("usable",)),
        readout.row(units, "minutes", "time", minutes, (
            ("usable", "volume", usable_gal), ("flow", "flow", typed["flow"]), ("minutes", "time", minutes)), ("tank",)),
    ]
    return {
        "sum": "tank",
        "figure": {"kind": "time", "text": rows[1]["text"]},
        "facts": {"usable": rows[0]["text"], "flow": display.text(units, "flow", typed["flow"])},
        "rows": rows,
        "cautions": cautions,
        "picture": {
            "marks": [
                {"left": left, "volume": display.text(units, "volume", typed["tank"] * left),
                 "minutes": display.text(units, "time", typed["tank"] * (1 - left) / typed["flow"])} for left in MARKS],
            "flow": display.text(units, "flow", typed["flow"]),
            "stays": {"share": 1 - float(percent) / 100, "text": display.text(units, "volume", typed["tank"] - usable_gal)},
        },
    }
