"""What the pump pressure of a layout is made of, as texts that add up as they are printed."""
from calc.base import display

PARTS = ("friction", "elevation", "appliance")  # of each line, beside what the end needs


def read(lines, units):
    """The parts of the pressure along the way that sets it, from the pump to its nozzle: at each joint the line that is throttled least.

    lines: of the report of calc.layout.pressure
    units: see calc.base.display

    Returns contract `pressure_sum`, parts that are nothing left out. Raises CalcError naming units.
    """
    way = _hardest_way(lines)
    end = way[-1]
    end_name = "inlet" if end["nozzle"] and end["nozzle"]["kind"] == "open" else "nozzle"
    names = [end_name] + [part for line in way for part in PARTS]
    total, texts = display.addends(units, "pressure", [end["outlet_psi"]] + [line[part + "_psi"] for line in way for part in PARTS])
    parts = {"total": total, "nozzle": [], "inlet": [], "friction": [], "elevation": [], "appliance": []}
    for name, text in zip(names, texts):
        if any(digit in "123456789" for digit in text):
            parts[name].append(text)
    return parts


def of_line(line, units):
    """The parts of the pressure where a line starts, and that pressure, each as it stands in a row of its own.

    line: of the report of calc.layout.pressure
    units: see calc.base.display

    Returns the texts by name. Raises CalcError naming units.
    """
    inlet, texts = display.addends(units, "pressure", [line["outlet_psi"]] + [line[part + "_psi"] for part in PARTS])
    return dict(zip(("inlet",) + PARTS, [inlet] + texts[1:]))


def _hardest_way(lines):
    way, feeder = [], None
    while True:
        following = [line for line in lines if line["feeder"] == feeder and not line["into"]]
        if not following:
            return way
        way.append(min(following, key=lambda line: line["gate_psi"]))
        feeder = way[-1]["id"]
