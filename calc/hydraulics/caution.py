"""What to be careful of in a layout whose pressures are known: codes and facts, most serious first."""
from calc.hydraulics import hose

STOP = "stop"
CAUTION = "caution"
# The study's limits go with the rule Q/2 for fog at 100 psi, which runs 1 % under the formula used here.
CREW_LIMIT_SLACK = 1.02
HIGH_PSI = 500  # what the trade calls high pressure begins here; a fire apparatus magazine on ultra-high pressure
LAST_BIT = 1e-9  # of a pressure: what sums and units leave on a limit that is just reached


def working_psi(limits):
    """The most that hose is worked at, in psi: its own limit where a rig's profile has one, or that of its test pressure; None where neither is known.

    limits: of the hose, `work_psi` and `test_psi`, above 0; either may be None or absent

    Raises nothing. Source: hose.working_pressure_psi.
    """
    if limits.get("work_psi") is not None:
        return limits["work_psi"]
    return None if limits.get("test_psi") is None else hose.working_pressure_psi(limits["test_psi"])


def of_hose(seen_psi, limits):
    """What a pressure calls for in hose: its level, what it reaches, and that in psi; None below both.

    seen_psi: the most the hose could see
    limits: see working_psi

    A caution from the working pressure on, "working_pressure"; a stop from the test pressure on, "test_pressure".
    Raises nothing. Source: hose.working_pressure_psi.
    """
    seen_psi += LAST_BIT * abs(seen_psi)
    for level, name, limit_psi in ((STOP, "test_pressure", limits.get("test_psi")), (CAUTION, "working_pressure", working_psi(limits))):
        if limit_psi is not None and seen_psi >= limit_psi:
            return level, name, limit_psi
    return None


def _of_device(limits):
    """What a device calls for whatever it sees: a loss that is the builder's to give, outlets that regulate themselves, a monitor to be held down.

    A monitor without hose, so without a bore, is plumbed to the rig.
    """
    device = limits.get("device")
    if device == "master" and limits.get("bore_in"):
        return "monitor_hold"
    if device == "aerial" and not limits.get("has_own_loss"):
        return "waterway_usual"
    return "regulated_outlets" if device == "standpipe" else None


def shut_psi(report):
    """The most each hose of a layout sees with every nozzle shut, psi by line id: no friction, no gating.

    report: of calc.layout.pressure

    Raises nothing. Source: static head, see calc.hydraulics.water.
    """
    seen = {}
    outlets_psi = {None: report["discharge_psi"]}  # with no flow, at the outlet of each line
    for line in report["lines"]:
        inlet_psi = outlets_psi[line["feeder"]]
        outlets_psi[line["id"]] = inlet_psi - line["elevation_psi"]
        seen[line["id"]] = max(inlet_psi, outlets_psi[line["id"]])
    return seen


def cautions(lines, report):
    """Every caution a layout calls for.

    lines: by line id, the limits that are known: `test_psi` and `work_psi` of the hose, `least_usual_gpm` and
        `most_usual_gpm` for one hose, `parallel`, `crew` and `crew_limit_lbf` at its nozzle,
        the `device` at its end, whether it `has_own_loss` and the most it is made for, `device_most_gpm`;
        a limit that is absent or None raises no caution
    report: of calc.layout.pressure for the same layout

    Returns a list of `{"level", "code", "line", "kind", "amount", "limit", "crew", "reaction"}`; kind names the quantity of
    amount and limit, reaction is the nozzle's in lbf or None. A hose is judged at the pressure it sees when every nozzle is shut: no friction, no gating.
    Raises nothing.
    A hose of which no limit is known is stopped where the pressure is a high one: ordinary hose and fittings are not made for it.
    Source: hose service-test pressures NFPA 1962 (2018) as excerpted by a hose distributor; reaction a
    crew can hold, an operational nozzle-reaction study quoted on a volunteer firefighters' safety page.
    """
    stops, others, of_devices = [], [], []  # lists, not a sort: the phone's sort does not keep the order of equals
    seen = shut_psi(report)
    for line in report["lines"]:
        limits = lines[line["id"]]
        hose_gpm = line["flow_gpm"] / limits.get("parallel", 1)
        nozzle = line["nozzle"] or {}
        crew_limit_lbf = limits.get("crew_limit_lbf")
        held_lbf = None if crew_limit_lbf is None else crew_limit_lbf * CREW_LIMIT_SLACK
        strain = of_hose(seen[line["id"]], limits)
        if strain:
            level, reached, limit_psi = strain
            (stops if level == STOP else others).append(_caution(line, limits, level, "above_" + reached, "pressure", seen[line["id"]], limit_psi))
        elif limits.get("bore_in") and working_psi(limits) is None and seen[line["id"]] >= HIGH_PSI:
            stops.append(_caution(line, limits, STOP, "high_pressure", "pressure", seen[line["id"]], HIGH_PSI))
        if limits.get("device_most_gpm") and line["end_gpm"] > limits["device_most_gpm"] * (1 + LAST_BIT):
            stops.append(_caution(line, limits, STOP, "device_over", "flow", line["end_gpm"], limits["device_most_gpm"]))
        checks = (
            ("reaction_above_crew", "force", nozzle.get("reaction_lbf"), held_lbf, 1),
            ("flow_above_usual", "flow", hose_gpm, limits.get("most_usual_gpm"), 1),
            ("flow_below_usual", "flow", hose_gpm, limits.get("least_usual_gpm"), -1),
        )
        for code, kind, amount, limit, sense in checks:
            if amount is not None and limit is not None and sense * (amount - limit) > 0:
                others.append(_caution(line, limits, CAUTION, code, kind, amount, crew_limit_lbf if kind == "force" else limit))
        code = _of_device(limits)
        if code == "monitor_hold":
            if nozzle.get("reaction_lbf"):
                of_devices.append(_caution(line, limits, CAUTION, code, "force", nozzle["reaction_lbf"], None))
        elif code:
            of_devices.append(_caution(line, limits, CAUTION, code, "pressure", line["appliance_psi"], None))
    return stops + others + of_devices


def _caution(line, limits, level, code, kind, amount, limit):
    return {"level": level, "code": code, "line": line["id"], "kind": kind, "amount": amount, "limit": limit, "crew": limits.get("crew"),
            "reaction": (line["nozzle"] or {}).get("reaction_lbf")}
