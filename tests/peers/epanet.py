"""Layouts given to EPANET: square-law hose and appliances as minor losses, nozzles as emitters.

A shut line is left out with all behind it: EPANET would let what is cut off drain through its own nozzles.

EPANET reads its own input file, written here as text; wntr brings the solver. Building a network in wntr's own classes
and reading its result tables takes ten times as long as solving it.
"""
import math

from wntr.epanet import toolkit

from calc.hydraulics.water import PSI_PER_FT

DEMAND = 9  # the solver's number for what leaves a node
TIP_CONSTANT = 29.7  # gpm of a 1 in tip at 1 psi, as published
METRES_PER_PSI = 0.3048 / PSI_PER_FT
LPS_PER_GPM = 3.785411784 / 60
GRAVITY = 8 / (math.pi**2 * 0.02517) * 0.3048  # EPANET writes a minor loss as 0.02517 K Q^2 / d^4, in feet
BORE_M = 1.0  # any bore does: the loss is carried by the minor-loss coefficient
OPTIONS = """[OPTIONS]
UNITS LPS
HEADLOSS H-W
ACCURACY 1e-9
TRIALS 500
EMITTER EXPONENT 0.5
[TIMES]
DURATION 0
[REPORT]
STATUS NO
[END]
"""


def rated(end):
    """Rated flow and pressure of a nozzle, in gpm and psi."""
    if end["kind"] == "smooth":
        return TIP_CONSTANT * end["tip_in"] ** 2 * math.sqrt(end["nozzle_psi"]), end["nozzle_psi"]
    return end["rated_gpm"], end["rated_psi"]


def rated_gpm(line):
    """What all nozzles behind a line are rated for, shut or open: an appliance takes its loss at this flow."""
    end = line["end"]
    return sum(rated_gpm(branch) for branch in end["lines"]) if "lines" in end else rated(end)[0]


def input_text(layout, pump_psi):
    """A layout as EPANET's input file, and the names of the nozzles it can reach."""
    junctions, pipes, emitters = [], [], []

    def add(line, name, feeder, height_m):
        if line["shut"]:
            return
        outlet_m = height_m + line["rise_ft"] * 0.3048
        loss_per_gpm2 = line["coefficient"] / 1e4 * line["length_ft"] / 100 / line["parallel"] ** 2
        loss_per_gpm2 += line["appliance_psi"] / rated_gpm(line) ** 2
        head_per_flow2 = loss_per_gpm2 * METRES_PER_PSI / (LPS_PER_GPM / 1000) ** 2
        minor = head_per_flow2 * math.pi**2 * GRAVITY * BORE_M**4 / 8
        junctions.append(f"{name} {outlet_m!r} 0")
        pipes.append(f"p{name} {feeder} {name} 0.001 {BORE_M * 1000} 1000 {minor!r}")
        end = line["end"]
        if "lines" in end:
            for place, branch in enumerate(end["lines"], 1):
                add(branch, f"{name}.{place}", name, outlet_m)
        else:
            flow_gpm, psi = rated(end)
            emitters.append((name, flow_gpm * LPS_PER_GPM / math.sqrt(psi * METRES_PER_PSI)))

    for place, line in enumerate(layout["lines"], 1):
        add(line, str(place), "pump", 0.0)
    parts = [
        "[JUNCTIONS]", *junctions, "[RESERVOIRS]", f"pump {pump_psi * METRES_PER_PSI!r}", "[PIPES]", *pipes,
        "[EMITTERS]", *(f"{name} {size!r}" for name, size in emitters), OPTIONS,
    ]
    return "\n".join(parts), [name for name, _ in emitters]


def flows_gpm(layout, pump_psi, folder):
    """The flow of each nozzle that is not shut off, by the name of its line, as EPANET finds it."""
    text, names = input_text(layout, pump_psi)
    file = folder / "layout.inp"
    file.write_text(text, encoding="utf-8")
    solver = toolkit.ENepanet(str(file), str(folder / "layout.rpt"), str(folder / "layout.bin"))
    solver.ENopen()
    try:
        solver.ENopenH()
        solver.ENinitH(0)
        solver.ENrunH()
        return {name: solver.ENgetnodevalue(solver.ENgetnodeindex(name), DEMAND) / LPS_PER_GPM for name in names}
    finally:
        solver.ENclose()
