"""What to be careful of in a lay whose pressures are known: codes and facts, most serious first."""

STOP = "stop"
CAUTION = "caution"
# The study's limits go with the rule Q/2 for fog at 100 psi, which runs 1 % under the formula used here.
CREW_LIMIT_SLACK = 1.02


def cautions(lines, report):
    """Every caution a lay calls for.

    lines: by line id, the limits that are known: `test_psi` of the hose, `least_usual_gpm` and
        `most_usual_gpm` for one hose, `parallel`, `crew` and `crew_limit_lbf` at its nozzle;
        a limit that is absent or None raises no caution
    report: of layout.discharge_pressure for the same lay

    Returns a list of `{"level", "code", "line", "amount", "limit", "kind"}`; kind names the quantity of
    amount and limit. A hose is judged at the pressure it sees when every nozzle is shut: no friction, no gating.
    Raises nothing.
    Source: hose service-test pressures NFPA 1962 (2018) as excerpted by a hose distributor; reaction a
    crew can hold, an operational nozzle-reaction study quoted on a volunteer firefighters' safety page.
    """
    found = []
    outlets_psi = {None: report["discharge_psi"]}  # with no flow, at the outlet of each line
    for line in report["lines"]:
        inlet_psi = outlets_psi[line["feeder"]]
        outlets_psi[line["id"]] = inlet_psi - line["elevation_psi"]
        shut_psi = max(inlet_psi, outlets_psi[line["id"]])
        limits = lines[line["id"]]
        hose_gpm = line["flow_gpm"] / limits.get("parallel", 1)
        nozzle = line["nozzle"] or {}
        crew_limit_lbf = limits.get("crew_limit_lbf")
        held_lbf = None if crew_limit_lbf is None else crew_limit_lbf * CREW_LIMIT_SLACK
        checks = (
            (STOP, "above_test_pressure", "pressure", shut_psi, limits.get("test_psi"), 1),
            (CAUTION, "reaction_above_crew", "force", nozzle.get("reaction_lbf"), held_lbf, 1),
            (CAUTION, "flow_above_usual", "flow", hose_gpm, limits.get("most_usual_gpm"), 1),
            (CAUTION, "flow_below_usual", "flow", hose_gpm, limits.get("least_usual_gpm"), -1),
        )
        for level, code, kind, amount, limit, sense in checks:
            if amount is not None and limit is not None and sense * (amount - limit) > 0:
                named = crew_limit_lbf if kind == "force" else limit
                found.append({"level": level, "code": code, "line": line["id"], "kind": kind,
                              "amount": amount, "limit": named, "crew": limits.get("crew")})
    # two passes, not a sort: the phone's sort does not keep the order of equals
    return [told for told in found if told["level"] == STOP] + [told for told in found if told["level"] != STOP]

