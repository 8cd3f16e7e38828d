"""The answer of the speeds page: what each gear would show, and what a reading says; typed text in, text out."""
from calc.base import display, entry
from calc.base.errors import CalcError, check_not_negative, check_positive, check_within
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
MOST_PSI = 2000  # past any fire pump: the entry is a slip
STANDS_RPM = 1  # an engine slower than this stands
# what each may be, in calc's units, and the ratio of any gear; a rig's are those of its profile (calc.rig.fields): common practice
BOUNDS = {
    "engine": (0, 4000), "idle": (300, 1500), "governed": (1000, 4000), "pump_ratio": (0.2, 10), "axle_ratio": (1, 20), "tyre_rev": (200, 1500),
    "pump_gear_ratio": (0.3, 10), "ratio": (0.3, 10), "idle_pressure": (1, MOST_PSI), "wanted": (0, MOST_PSI), "pressure_shown": (0, MOST_PSI),
    "speed_shown": (0, 200),
}


def answer(entries, gears, units):
    """What the rig should show at an engine speed, gear by gear, and what was read beside it.

    entries: text as typed, "" where nothing is known: `engine`, `idle` (rpm), `pump_ratio`, `axle_ratio`,
        `tyre_rev`, `pump_gear_ratio`, `governed` (rpm), `idle_pressure`, `wanted`, `pressure_shown`, `speed_shown`
    gears: the other gears of the transmission as typed, each contract `gear_entry`; the pump gear is not among them
    units: see calc.base.display

    Returns contract `gear_table`. Raises CalcError naming the entry, with the gear as a fact of field ratio: whatever an entry
    leads to past any fire pump is refused by that entry's name.
    Source: calc.pump.driveline; affinity laws, from memory.
    """
    known = {name: _amount(units, name, text) for name, text in entries.items() if text}
    lacking = {part: [name for name in needs if name not in known] for part, needs in NEEDS.items()}
    table = {"missing": lacking, "pump_rpm": None, "rows": [], "pressure": None, "wanted_rpm": None,
            "above_governed": False, "speed_match": None, "pressure_band": None}
    if not lacking["pump"]:
        table["pump_rpm"] = display.rounded(units, driveline.pump_rpm(known["engine"], known["pump_ratio"]), 0)
    expected_psi = None
    if not lacking["pressure"] and known["engine"] >= STANDS_RPM:
        expected_psi = rating.pressure_at_speed_psi(known["idle_pressure"], known["idle"], known["engine"])
        if expected_psi > MOST_PSI:
            raise CalcError("engine", "too_large", most=MOST_PSI)
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
        if "speed_shown" in known and known["engine"] >= STANDS_RPM:
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
    check_within(name, amount, *BOUNDS[name])
    return amount


def _ratio(units, typed):
    try:
        ratio = entry.number("ratio", typed["ratio"], "ratio", display.decimal(units))
        check_positive("ratio", ratio)
        check_within("ratio", ratio, *BOUNDS["ratio"])
    except CalcError as error:
        raise CalcError(error.field, error.code, gear=typed["gear"])
    return ratio


def _row(gear, ratio, known, expected_psi, units):
    """What one gear shows at this engine speed: the figure in mph, and the row as text."""
    mph = driveline.indicated_mph(known["engine"], ratio, known["axle_ratio"], known["tyre_rev"])
    share = known["pump_gear_ratio"] / ratio
    turns = known["engine"] * known["pump_ratio"] * share if "pump_ratio" in known else None
    pressure_psi = None if expected_psi is None else expected_psi * share * share
    if pressure_psi is not None and pressure_psi > MOST_PSI:
        raise CalcError("ratio", "too_small", gear=gear, most=MOST_PSI)
    return mph, {
        "gear": gear,
        "ratio": display.rounded(units, ratio, 2),
        "speed": display.text(units, "road_speed", mph),
        "pump_rpm": None if turns is None else display.rounded(units, turns, 0),
        "pressure": display.text(units, "pressure", pressure_psi),
    }


def _term(units, name, amount):
    return display.text(units, QUANTITIES[name], amount) if name in QUANTITIES else display.plain(units, amount, 2)
