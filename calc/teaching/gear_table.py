"""The answer of the speeds page: what each gear would show, and what a reading says; typed text in, text out."""
from calc.base import display, entry
from calc.base.errors import CalcError, check_not_negative, check_positive
from calc.pump import driveline, rating

# what each part of the answer needs of the entries, in the order in which it is asked for
NEEDS = {
    "pump": ("engine", "pump_ratio"),
    "speed": ("engine", "axle_ratio", "tyre_rev", "pump_gear_ratio"),
    "pressure": ("engine", "idle", "idle_pressure"),
    "wanted": ("idle", "idle_pressure", "wanted"),
}
QUANTITIES = {"idle_pressure": "pressure", "wanted": "pressure", "pressure_shown": "pressure", "speed_shown": "road_speed"}
FROM_ZERO = ("engine", "wanted", "pressure_shown", "speed_shown")


def answer(entries, gears, units):
    """What the rig should show at an engine speed, gear by gear, and what was read beside it.

    entries: text as typed, "" where nothing is known: `engine`, `idle` (rpm), `pump_ratio`, `axle_ratio`,
        `tyre_rev`, `pump_gear_ratio`, `governed` (rpm), `idle_pressure`, `wanted`, `pressure_shown`, `speed_shown`
    gears: the other gears of the transmission as typed, each contract `gear_entry`; the pump gear is not among them
    units: see calc.base.display

    Returns contract `gear_table`. Raises CalcError naming the entry, with the gear as a fact.
    Source: calc.pump.driveline; affinity laws, from memory.
    """
    known = {name: _amount(units, name, text) for name, text in entries.items() if text}
    lacking = {part: [name for name in needs if name not in known] for part, needs in NEEDS.items()}
    table = {"missing": lacking, "pump_rpm": None, "rows": [], "pressure": None, "wanted_rpm": None,
            "above_governed": False, "speed_match": None, "pressure_band": None}
    if not lacking["pump"]:
        table["pump_rpm"] = display.rounded(units, driveline.pump_rpm(known["engine"], known["pump_ratio"]), 0)
    expected_psi = None
    if not lacking["pressure"] and known["engine"] > 0:
        expected_psi = rating.pressure_at_speed_psi(known["idle_pressure"], known["idle"], known["engine"])
        table["pressure"] = display.text(units, "pressure", expected_psi)
    if not lacking["wanted"]:
        rpm = driveline.engine_rpm_for_pressure(known["wanted"], known["idle_pressure"], known["idle"])
        table["wanted_rpm"] = display.rounded(units, rpm, 0)
        table["above_governed"] = rpm > known.get("governed", rpm)
    if not lacking["speed"]:
        speeds = [_row(None, known["pump_gear_ratio"], known, expected_psi, units)]
        for typed in gears:
            if typed["ratio"]:
                speeds.append(_row(typed["gear"], _ratio(units, typed), known, expected_psi, units))
        table["rows"] = [row for _, row in speeds]
        if "speed_shown" in known and known["engine"] > 0:
            figures = [[row["gear"] or "", mph] for mph, row in speeds]
            table["speed_match"] = driveline.gear_of_speed(known["speed_shown"], figures, "")
    if "pressure_shown" in known and expected_psi:
        table["pressure_band"] = driveline.pressure_band(known["pressure_shown"], expected_psi)
    table["terms"] = {name: _term(units, name, amount) for name, amount in known.items()}
    return table


def _amount(units, name, text):
    if name in QUANTITIES:
        amount = entry.quantity(units, QUANTITIES[name], name, text)
    else:
        amount = entry.number(name, text, "ratio" if name.endswith("ratio") else "speed", display.decimal(units))
    if name in FROM_ZERO:
        check_not_negative(name, amount)
    else:
        check_positive(name, amount)
    return amount


def _ratio(units, typed):
    try:
        ratio = entry.number("ratio", typed["ratio"], "ratio", display.decimal(units))
        check_positive("ratio", ratio)
    except CalcError as error:
        raise CalcError(error.field, error.code, gear=typed["gear"])
    return ratio


def _row(gear, ratio, known, expected_psi, units):
    """What one gear shows at this engine speed: the figure in mph, and the row as text."""
    mph = driveline.indicated_mph(known["engine"], ratio, known["axle_ratio"], known["tyre_rev"])
    share = known["pump_gear_ratio"] / ratio
    turns = known["engine"] * known["pump_ratio"] * share if "pump_ratio" in known else None
    return mph, {
        "gear": gear,
        "ratio": display.rounded(units, ratio, 2),
        "speed": display.text(units, "road_speed", mph),
        "pump_rpm": None if turns is None else display.rounded(units, turns, 0),
        "pressure": None if expected_psi is None else display.text(units, "pressure", expected_psi * share * share),
    }


def _term(units, name, amount):
    return display.text(units, QUANTITIES[name], amount) if name in QUANTITIES else display.plain(units, amount, 2)
