"""The base of faults as calc.diagnosis.fault takes it, and with its words as pages show it."""
from site_src.content import data

STATES = {
    "any": ["pumping", "idle", "off"], "run": ["pumping", "idle"], "none": [],
    "pumping": ["pumping"], "idle": ["idle"], "off": ["off"],
}
# How the engine most likely is when a diagnosis begins at that moment.
AT_MOMENT = {"in": "idle", "panel": "pumping", "water": "pumping", "out": "idle", "yard": "off"}
USUAL = {"engine": "any", "role": "operator", "effort": 1, "danger": 0}


def _sign(row):
    kept = ("id", "role", "under", "effort", "danger", "after", "unless", "either", "alarm", "applies", "shifts", "way", "stops", "cures")
    full = {**USUAL, **row}
    return {**{key: full[key] for key in kept if key in full}, "engine": STATES[full["engine"]]}


def moments(row):
    """The moments that this sign, a row of data/faults.toml, can open a diagnosis from."""
    entry = row.get("entry", [])
    return [entry] if isinstance(entry, str) else entry


def begins(row):
    """The state of the engine that a diagnosis opens with where it begins with this sign, a row of data/faults.toml.

    It is what the row itself says; or else what is usual at its moment, if the sign can be seen then, or else a state in which
    it can. What only a report tells of goes by the moment alone, idle where it has none.
    """
    usual = next((AT_MOMENT[moment] for moment in moments(row)), "idle")
    states = STATES[row.get("engine", USUAL["engine"])]
    return row.get("begins") or (states[0] if states and usual not in states else usual)


def order_names():
    """The orders that a sign or a cause names."""
    file = data.load("faults")
    return sorted({row["order"] for row in file["sign"] + file["cause"] if "order" in row})


def radio_words():
    """What is said on the radio before a look or a remedy: words of the faults' own, or of the order that is named."""
    file = data.load("faults")
    own = data.words("faults")["say"]
    named = {row["radio"] for row in file["sign"] + file["cause"] if "radio" in row} - set(own)
    return {**own, **{name: order["radio"] for name, order in data.orders(*sorted(named)).items()}}


def cautions():
    """What can hurt while a sign is looked for: words of the faults' own, or the one line of the order that is named."""
    named = {row["id"]: row["warns"] for row in data.load("faults")["sign"] if "warns" in row}
    orders = data.orders(*set(named.values()))
    return {**data.words("faults")["mind"], **{sign: orders[order]["short"] for sign, order in named.items()}}


def base():
    """The knowledge of calc.diagnosis.fault, from data/faults.toml."""
    file = data.load("faults")
    kept = ("id", "likelihood", "shows", "brings", "may", "applies")
    return {
        "signs": [_sign(row) for row in file["sign"]],
        "causes": [{key: row[key] for key in kept if key in row} for row in file["cause"]],
        "questions": file["question"],
        "excludes": [row["pair"] for row in file["exclusion"]],
        "facts": file["facts"],
    }
