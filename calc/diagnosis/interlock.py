"""What a pump's lights say of the inputs behind them: a truth table read backwards.

A table is `{"inputs": [names], "never_both": [[input, input]], "lights": [{"id", "paths": [[inputs]]}]}`: a light is lit
where every input of one of its paths is true. It is the table that counts, not the wiring: a lamp or a switch can fail.
"""
from calc.base.errors import CalcError

SHOWN = ("lit", "dark", "unknown")
MOST_INPUTS = 8


def rows(table):
    """The whole truth table: every state the inputs can be in, with the lights it gives.

    table: see the module

    Returns a list of `{"inputs": {name: bool}, "lights": {id: bool}}`. Raises CalcError naming table.
    """
    names = table["inputs"]
    if len(names) > MOST_INPUTS:
        raise CalcError("table", "too_large", most=MOST_INPUTS)
    states = []
    for count in range(2 ** len(names)):
        inputs = {name: bool(count >> place & 1) for place, name in enumerate(names)}
        if not any(inputs[one] and inputs[other] for one, other in table["never_both"]):
            lights = {light["id"]: any(all(inputs[name] for name in path) for path in light["paths"]) for light in table["lights"]}
            states.append({"inputs": inputs, "lights": lights})
    return states


def behind(table, lights):
    """What the inputs must be for the lights to be as they are.

    table: see the module
    lights: {id: "lit" | "dark" | "unknown"}; one that is absent is unknown

    Returns the answer of contract `interlock.behind`. Raises CalcError naming table or lights.
    """
    names = [light["id"] for light in table["lights"]]
    for name in lights:
        if name not in names or lights[name] not in SHOWN:
            raise CalcError("lights", "unknown", light=str(name)[:60])
    seen = [(name, lights[name] == "lit") for name in names if lights.get(name, "unknown") != "unknown"]
    fitting = [row["inputs"] for row in rows(table) if all(row["lights"][name] == lit for name, lit in seen)]
    state = {name: _state([inputs[name] for inputs in fitting]) for name in table["inputs"]}
    dark = []
    for light in table["lights"]:
        if lights.get(light["id"]) == "dark" and fitting:
            path = light["paths"][0]
            dark.append({"id": light["id"], "missing": [name for name in path if state[name] == "false"],
                         "perhaps": [name for name in path if state[name] == "open"]})
    return {"possible": len(fitting), "inputs": [{"id": name, "is": state[name]} for name in table["inputs"]], "dark": dark}


def _state(values):
    if not values or (any(values) and not all(values)):
        return "open"
    return "true" if values[0] else "false"
