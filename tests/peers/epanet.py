"""Layouts given to EPANET: square-law hose and appliances as minor losses, nozzles as emitters.

A shut line is left out with all behind it: EPANET would let what is cut off drain through its own nozzles.

EPANET reads its own input file, written here as text; wntr brings the solver. Building a network in wntr's own classes
and reading its result tables takes ten times as long as solving it.
"""
import contextlib
import math

from wntr.epanet import toolkit

from calc.hydraulics.water import PSI_PER_FT

DEMAND, FLOW = 9, 8  # the solver's numbers for what leaves a node, and what runs through a link
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


def everything(lines, before=""):
    """Each line of a layout by its name: places from the pump on, with points between."""
    for place, line in enumerate(lines, 1):
        name = f"{before}{place}"
        yield name, line
        yield from everything(line["end"].get("lines", []), name + ".")


def rated_gpm(name, by_name):
    """What all nozzles behind a line are rated for, shut or open, each once: an appliance takes its loss at this flow."""
    reached, pending = set(), [name]
    while pending:
        at = pending.pop()
        if at not in reached:
            reached.add(at)
            end = by_name[at]["end"]
            pending += [f"{at}.{place}" for place in range(1, len(end.get("lines", [])) + 1)] + ([end["into"]] if "into" in end else [])
    return sum(rated(by_name[at]["end"])[0] for at in reached if "kind" in by_name[at]["end"])


def square_pipe(name, inlet, outlet, loss_per_gpm2):
    """A pipe as EPANET's input, which loses this many psi at 1 gpm, and with the square of the flow."""
    head_per_flow2 = loss_per_gpm2 * METRES_PER_PSI / (LPS_PER_GPM / 1000) ** 2
    minor = head_per_flow2 * math.pi**2 * GRAVITY * BORE_M**4 / 8
    return f"{name} {inlet} {outlet} 0.001 {BORE_M * 1000} 1000 {minor!r}"


def input_text(layout, pump_psi):
    """A layout as EPANET's input file, and the names of the nozzles it can reach. A line that others go into has a node before its device."""
    junctions, pipes, emitters, heights_m = [], [], [], {}
    by_name = dict(everything(layout["lines"]))
    joined = {line["end"]["into"] for line in by_name.values() if "into" in line["end"]}

    def pipe(*ends_and_loss):
        pipes.append(square_pipe(*ends_and_loss))

    def friction(line):
        return line["coefficient"] / 1e4 * line["length_ft"] / 100 / line["parallel"] ** 2

    def add(line, name, feeder, height_m):
        if line["shut"] or "into" in line["end"]:
            return
        outlet_m = heights_m[name] = height_m + line["rise_ft"] * 0.3048
        device = line["appliance_psi"] / rated_gpm(name, by_name) ** 2
        junctions.append(f"{name} {outlet_m!r} 0")
        if name in joined:
            junctions.append(f"j{name} {outlet_m!r} 0")
            pipe(f"p{name}", feeder, f"j{name}", friction(line))
            pipe(f"d{name}", f"j{name}", name, device)
        else:
            pipe(f"p{name}", feeder, name, friction(line) + device)
        end = line["end"]
        if "lines" in end:
            for place, branch in enumerate(end["lines"], 1):
                add(branch, f"{name}.{place}", name, outlet_m)
        else:
            flow_gpm, psi = rated(end)
            emitters.append((name, flow_gpm * LPS_PER_GPM / math.sqrt(psi * METRES_PER_PSI)))

    for place, line in enumerate(layout["lines"], 1):
        add(line, str(place), "pump", 0.0)
    for name, line in by_name.items():
        feeder = name.rpartition(".")[0]
        if "into" in line["end"] and not line["shut"] and line["end"]["into"] in heights_m and (not feeder or feeder in heights_m):
            pipe(f"p{name}", feeder or "pump", f"j{line['end']['into']}", friction(line) + line["appliance_psi"] / rated_gpm(name, by_name) ** 2)
    parts = [
        "[JUNCTIONS]", *junctions, "[RESERVOIRS]", f"pump {pump_psi * METRES_PER_PSI!r}", "[PIPES]", *pipes,
        "[EMITTERS]", *(f"{name} {size!r}" for name, size in emitters), OPTIONS,
    ]
    return "\n".join(parts), [name for name, _ in emitters]


def flows_gpm(layout, pump_psi, folder):
    """The flow of each nozzle that is not shut off, by the name of its line, as EPANET finds it."""
    text, names = input_text(layout, pump_psi)
    with solved(text, folder) as solver:
        return {name: solver.ENgetnodevalue(solver.ENgetnodeindex(name), DEMAND) / LPS_PER_GPM for name in names}


def pumped_gpm(points, pumps, way, fixed_psi, square_psi, folder):
    """The flow of equal pumps, each by its three-point curve, in series or parallel, through a square-law pipe up to a tank, as EPANET finds it."""
    series = way == "series"
    places = ["low", *(f"n{count}" for count in range(1, pumps if series else 1)), "out"]
    ends = list(zip(places, places[1:])) if series else [("low", "out")] * pumps
    parts = [
        "[JUNCTIONS]", *(f"{name} 0 0" for name in places[1:]), "[RESERVOIRS]", "low 0", f"high {fixed_psi * METRES_PER_PSI!r}",
        "[PIPES]", square_pipe("pipe", "out", "high", square_psi),
        "[PUMPS]", *(f"p{count} {before} {after} HEAD curve" for count, (before, after) in enumerate(ends)),
        "[CURVES]", *(f"curve {gpm * LPS_PER_GPM!r} {psi * METRES_PER_PSI!r}" for gpm, psi in points), OPTIONS,
    ]
    with solved("\n".join(parts), folder) as solver:
        return solver.ENgetlinkvalue(solver.ENgetlinkindex("pipe"), FLOW) / LPS_PER_GPM


@contextlib.contextmanager
def solved(text, folder):
    """EPANET with an input that it has solved."""
    file = folder / "layout.inp"
    file.write_text(text, encoding="utf-8")
    solver = toolkit.ENepanet(str(file), str(folder / "layout.rpt"), str(folder / "layout.bin"))
    solver.ENopen()
    try:
        solver.ENopenH()
        solver.ENinitH(0)
        solver.ENrunH()
        yield solver
    finally:
        solver.ENclose()
