"""The base of faults as calc.fault takes it, and with its words as pages show it."""
from site_src import data

STATES = {
    "any": ["pumping", "idle", "off"], "run": ["pumping", "idle"], "none": [],
    "pumping": ["pumping"], "idle": ["idle"], "off": ["off"],
}
# How the engine most likely is when a diagnosis begins at that moment.
AT_MOMENT = {"in": "idle", "panel": "pumping", "water": "pumping", "out": "idle", "yard": "off"}
USUAL = {"engine": "any", "role": "operator", "effort": 1, "danger": 0}


def _sign(row):
    kept = ("id", "role", "under", "effort", "danger", "after", "either", "alarm", "applies")
    full = {**USUAL, **row}
    return {**{key: full[key] for key in kept if key in full}, "engine": STATES[full["engine"]]}


def begins(row):
    """The state of the engine that a diagnosis opens with where it begins with this sign, a row of data/faults.toml.

    It is what the row itself says; or else what is usual at its moment, if the sign can be seen then, or else a state in which
    it can. What only a report tells of goes by the moment alone, idle where it has none.
    """
    usual = AT_MOMENT.get(row.get("entry"), "idle")
    states = STATES[row.get("engine", USUAL["engine"])]
    return row.get("begins") or (states[0] if states and usual not in states else usual)


def base():
    """The knowledge of calc.fault, from data/faults.toml."""
    file = data.load("faults")
    kept = ("id", "likelihood", "shows", "may", "applies")
    return {
        "signs": [_sign(row) for row in file["sign"]],
        "causes": [{key: row[key] for key in kept if key in row} for row in file["cause"]],
        "excludes": [row["pair"] for row in file["exclusion"]],
        "facts": file["facts"],
    }
