"""The base of faults as calc.fault takes it, and with its words as pages show it."""
from site_src import data

STATES = {
    "any": ["pumping", "idle", "off"], "run": ["pumping", "idle"], "none": [],
    "pumping": ["pumping"], "idle": ["idle"], "off": ["off"],
}
USUAL = {"engine": "any", "role": "operator", "effort": 1, "danger": 0}


def _sign(row):
    kept = ("id", "role", "under", "effort", "danger", "after", "either", "alarm")
    full = {**USUAL, **row}
    return {**{key: full[key] for key in kept if key in full}, "engine": STATES[full["engine"]]}


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
