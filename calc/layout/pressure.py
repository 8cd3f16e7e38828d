"""A layout: what the pump must show for it, what really flows, and what a change does. calc.layout.lines says what a layout is."""
from calc.base.errors import CalcError, check_not_negative
from calc.hydraulics import network, outlet
from calc.hydraulics.friction_rule import loss_psi as loss_by_rule_psi
from calc.layout import lines, loops


def discharge_pressure(layout, rule="square"):
    """What the pump must show so that every open nozzle has its rated pressure.

    layout: as calc.layout.lines says; any depth of branching, up to 500 lines
    rule: how friction is reckoned, a code of calc.hydraulics.friction_rule; any but those of C Q^2 L needs each line's `size_in`

    Returns `{"rule", "discharge_psi", "flow_gpm", "lines"}`, 0 and 0 where all is shut. Lines stand each after the line that
    feeds it: `id`, `feeder` (id or None at the pump), `into` (id of the line at whose end it comes in, or None), `shut` (nothing can pass: it, one before it or all behind it is
    shut), `flow_gpm`, `end_gpm` (through its end, with what comes in there), `friction_psi`, `friction_per_100_ft_psi`, `elevation_psi`, `appliance_psi`, `inlet_psi` (after
    gating), `outlet_psi` (at the nozzle or joint, behind the appliance), `gate_psi` (what must be gated off at the
    inlet), `velocity_ft_per_s`, `water_gal`, and `nozzle` (`kind`, `nozzle_psi`, `flow_gpm`, `reaction_lbf`) or None.
    A shut line stands at the pressure it is fed with, as one that is charged and shut at its far end. Where lines that start at different
    places close a loop, nothing in it is gated: a nozzle at it that needs less than another sees more, see its outlet_psi.

    Raises CalcError naming the field, with the fact `line` where it is a line's.
    Source: driver/operator handbook study cards (PDP = nozzle + friction + elevation + appliance;
    at a wye, the pump serves the line that needs most and the other is gated).
    """
    runs = lines.read(layout, {})
    _ask_all(runs, rule)
    pump_psi = max([run.inlet_psi for run in runs if run.feeder is None and not run.is_shut] or [0])
    for run in runs:
        if run.is_shut:
            run.stand(pump_psi if run.feeder is None else run.feeder.outlet_psi)
    return _report(runs, pump_psi, rule)


def flows(layout, discharge_psi):
    """What really comes out of every nozzle when the pump shows this pressure.

    layout: as calc.layout.lines says; any depth of branching, up to 500 lines
    discharge_psi: pump discharge pressure, psi, 0 or more

    Returns a report of the same form as discharge_pressure: what flows, and the pressure at each joint.
    A nozzle too high for the pressure passes nothing. Raises CalcError as discharge_pressure does.
    Source: square-law hose and orifices, balanced at every joint (see calc.hydraulics.network); agrees with a general network solver.
    """
    check_not_negative("discharge_psi", discharge_psi)
    return _flowing(lines.read(layout, {}), discharge_psi)


def compared(layout, discharge_psi, changes):
    """What shutting or opening lines does to every nozzle while the pump holds its pressure.

    layout: as calc.layout.lines says
    discharge_psi: pump discharge pressure, before and after, psi, 0 or more
    changes: True (shut) or False (open) by the id of a line

    Returns `{"before", "after"}`, a report of flows each. A pump that is not governed rises when a line is shut, so the others gain more than this says.
    Raises CalcError as flows does, and naming changes. Source: flows, twice.
    """
    check_not_negative("discharge_psi", discharge_psi)
    if not isinstance(changes, dict):
        raise CalcError("changes", "not_an_object")
    before, after = [_flowing(lines.read(layout, shut), discharge_psi) for shut in ({}, changes)]
    return {"before": before, "after": after}


def _ask_all(runs, rule):
    """Set every open run to what its open nozzles ask of it."""
    if any(run.into for run in runs):
        return loops.ask(runs, rule)
    for run in reversed(runs):
        if not run.is_shut:
            try:
                _ask(run, rule)
            except CalcError as error:
                raise CalcError(error.field, error.code, line=run.name, **error.facts)


def _ask(run, rule):
    if run.branches:
        asking = [branch for branch in run.branches if not branch.is_shut]
        run.carry(sum(branch.flow_gpm for branch in asking))
        run.outlet_psi = max([branch.inlet_psi for branch in asking])
    else:
        _, flow_gpm, run.outlet_psi = run.rating
        run.nozzle = outlet.passing(run.line["end"], flow_gpm, run.outlet_psi)
    if rule != "square":
        hose_gpm, line = run.flow_gpm / run.parallel, run.line
        run.friction_psi, run.friction_per_100_ft_psi = [
            loss_by_rule_psi(rule, line.get("size_in"), line["coefficient"], hose_gpm, length_ft)
            for length_ft in (line["length_ft"], 100)
        ]
    run.inlet_psi = run.outlet_psi + run.appliance_psi + run.friction_psi + run.elevation_psi


def _flowing(runs, discharge_psi):
    """Set the runs to what flows, and report it."""
    branches, places = loops.network_of(runs)
    network.solve(branches, discharge_psi)
    for run, (hose, end) in zip(runs, places):
        inlet_psi = discharge_psi if run.feeder is None else run.feeder.outlet_psi
        if run.is_shut:
            run.stand(inlet_psi)
            continue
        run.carry(branches[hose].flow_gpm, branches[end].flow_gpm)
        run.inlet_psi = inlet_psi - run.gate_psi
        run.outlet_psi = run.inlet_psi - run.friction_psi - run.elevation_psi - run.appliance_psi
        if run.rating is not None:
            nozzle_psi = 0 if branches[end].is_dry else max(run.outlet_psi, 0)
            run.nozzle = outlet.passing(run.line["end"], run.end_gpm, nozzle_psi)
    return _report(runs, discharge_psi, "square")


def _report(runs, pump_psi, rule):
    return {
        "rule": rule,
        "discharge_psi": pump_psi,
        "flow_gpm": sum(run.flow_gpm for run in runs if run.feeder is None),
        "lines": [_reported(run, pump_psi) for run in runs],
    }


def _reported(run, pump_psi):
    return {
        "id": run.name,
        "feeder": run.feeder and run.feeder.name,
        "into": run.into and run.into.name,
        "shut": run.is_shut,
        "flow_gpm": run.flow_gpm,
        "end_gpm": run.end_gpm,
        "friction_psi": run.friction_psi,
        "friction_per_100_ft_psi": run.friction_per_100_ft_psi,
        "elevation_psi": run.elevation_psi,
        "appliance_psi": run.appliance_psi,
        "inlet_psi": run.inlet_psi,
        "outlet_psi": run.outlet_psi,
        "gate_psi": (run.feeder.outlet_psi if run.feeder else pump_psi) - run.inlet_psi,
        "velocity_ft_per_s": run.velocity_ft_per_s(),
        "water_gal": run.water_gal,
        "nozzle": run.nozzle,
    }
