"""A lay: hose lines that branch at wyes and manifolds, from the pump to its nozzles.

A layout is plain data, `{"lines": [LINE, ...]}`, the lines that leave the pump. A LINE holds
    coefficient    psi per 100 ft at 100 gpm, for one hose, above 0
    length_ft      feet, 0 or more
    end            a nozzle (see calc.outlet), or `{"lines": [LINE, ...]}` for a wye or manifold
and, where they apply,
    id             the name of the line in the report; without one, its place ("1", "1.2")
    shut           true where its valve or nozzle is shut: nothing passes; open without it
    bore_in        inches, above 0; without it, velocity and water held are reported as None
    rise_ft        feet, outlet above inlet, either sign; level without it
    parallel       equal hoses that share the run, 1 to 12; one without it
    appliance_psi  loss of the wye, manifold or device at the outlet, psi; none without it
    gate_psi       what its valve takes off at the inlet, psi; open without it (for flows alone)
Appliances and gates take their pressure at the rated flow of all that is behind them, lines that are shut included,
and with the square of the flow away from it: a valve left as it stands takes less when one of two nozzles is shut.
"""
from calc import hose, outlet, tree, water
from calc.errors import CalcError, check_not_negative

MOST_LINES = 500  # ends any layout, a cyclic one included


def discharge_pressure(layout):
    """What the pump must show so that every open nozzle has its rated pressure.

    layout: as the module says; any depth of branching, up to 500 lines

    Returns `{"discharge_psi", "flow_gpm", "lines"}`, 0 and 0 where all is shut. Lines stand each after the line that
    feeds it: `id`, `feeder` (id or None at the pump), `shut` (nothing can pass: it, one before it or all behind it is
    shut), `flow_gpm`, `friction_psi`, `friction_per_100_ft_psi`, `elevation_psi`, `appliance_psi`, `inlet_psi` (after
    gating), `outlet_psi` (at the nozzle or joint, behind the appliance), `gate_psi` (what must be gated off at the
    inlet), `velocity_ft_per_s`, `water_gal`, and `nozzle` (`kind`, `nozzle_psi`, `flow_gpm`, `reaction_lbf`) or None.
    A shut line stands at the pressure it is fed with, as one that is charged and shut at its far end.

    Raises CalcError naming the field, with the fact `line` where it is a line's.
    Source: driver/operator handbook study cards (PDP = nozzle + friction + elevation + appliance;
    at a wye, the pump serves the line that needs most and the other is gated).
    """
    runs = _runs(layout)
    for run in reversed(runs):
        _ask(run)
    pump_psi = max([run.inlet_psi for run in runs if run.feeder is None and not run.is_shut] or [0])
    for run in runs:
        if run.is_shut:
            _stand(run, pump_psi if run.feeder is None else run.feeder.outlet_psi)
    return _report(runs, pump_psi)


def flows(layout, discharge_psi):
    """What really comes out of every nozzle when the pump shows this pressure.

    layout: as the module says; any depth of branching, up to 500 lines
    discharge_psi: pump discharge pressure, psi, 0 or more

    Returns a report of the same form as discharge_pressure: what flows, and the pressure at each joint.
    A nozzle too high for the pressure passes nothing. Raises CalcError as discharge_pressure does.
    Source: square-law hose and orifices, balanced at every joint (see calc.tree); agrees with a general network solver.
    """
    check_not_negative("discharge_psi", discharge_psi)
    runs = _runs(layout)
    branches = _branches_of(runs)
    tree.solve(branches, discharge_psi)
    for run, branch in zip(runs, branches):
        inlet_psi = discharge_psi if run.feeder is None else run.feeder.outlet_psi
        if run.is_shut:
            _stand(run, inlet_psi)
            continue
        _pass(run, branch.flow_gpm)
        run.inlet_psi = inlet_psi - run.gate_psi
        run.outlet_psi = run.inlet_psi - run.friction_psi - run.elevation_psi - run.appliance_psi
        if run.rating is not None:
            nozzle_psi = 0 if branch.is_shut else max(run.outlet_psi, 0)
            run.nozzle = outlet.passing(run.line["end"], run.flow_gpm, nozzle_psi)
    return _report(runs, discharge_psi)


def _branches_of(runs):
    """The runs as calc.tree takes them, their losses set by their rated flows."""
    places = {run.name: place for place, run in enumerate(runs)}
    branches = []
    for run in runs:
        _pass(run, run.rated_gpm)
        lost_psi = run.friction_psi + run.appliance_psi + run.gate_psi
        feeder = None if run.feeder is None else places[run.feeder.name]
        end = None if run.rating is None else tree.Outlet(*run.rating)
        branch = tree.Branch(feeder, run.elevation_psi, lost_psi / (run.rated_gpm * run.rated_gpm), end)
        branch.is_shut = run.is_shut
        branches.append(branch)
    return branches


class _Run:
    """One line while it is worked out; its branches are runs too."""

    def __init__(self, line, feeder, name):
        self.line = line
        self.feeder = feeder
        self.name = name
        self.branches = []
        self.rating = None  # a nozzle's: (least_gpm, most_gpm, nozzle_psi)
        self.nozzle = None


def _runs(layout):
    """Every line as a run, each after the run that feeds it, read and rated."""
    found = []
    names = set()
    pending = _branches(layout, None)
    while pending:
        run = pending.pop()
        if run.name in names:
            raise CalcError("id", "duplicate", line=run.name)
        names.add(run.name)
        found.append(run)
        if len(found) > MOST_LINES:
            raise CalcError("lines", "too_many", most=MOST_LINES)
        end = run.line.get("end")
        if not isinstance(end, dict):
            raise CalcError("end", "missing", line=run.name)
        if "lines" in end:
            run.branches = _branches(end, run)
            pending.extend(run.branches)
    for run in reversed(found):
        try:
            _rate(run, run.line)
        except CalcError as error:
            raise CalcError(error.field, error.code, line=run.name, **error.facts)
    for run in found:
        run.is_shut = run.is_shut or (run.feeder is not None and run.feeder.is_shut)
    return found


def _branches(parent, feeder):
    """The lines of a layout or a wye as runs, last first, so that a stack yields them in order."""
    lines = parent.get("lines") if isinstance(parent, dict) else None
    where = {} if feeder is None else {"line": feeder.name}
    if not isinstance(lines, (list, tuple)) or not lines:
        raise CalcError("lines", "missing", **where)
    if len(lines) > MOST_LINES:
        raise CalcError("lines", "too_many", most=MOST_LINES, **where)
    runs = []
    for place, line in enumerate(lines, 1):
        if not isinstance(line, dict):
            raise CalcError("lines", "not_a_line", place=place, **where)
        default = str(place) if feeder is None else feeder.name + "." + str(place)
        name = line.get("id", default)
        if not isinstance(name, str) or not name:
            raise CalcError("id", "not_a_name", place=place, **where)
        runs.append(_Run(line, feeder, name))
    runs.reverse()
    return runs


def _rate(run, line):
    """Read one line whose branches are read: what it holds, and the flow it is rated for."""
    run.is_shut = line.get("shut", False)
    if run.is_shut is not True and run.is_shut is not False:
        raise CalcError("shut", "not_true_or_false")
    if run.branches:
        run.rated_gpm = sum(branch.rated_gpm for branch in run.branches)
        run.is_shut = run.is_shut or all(branch.is_shut for branch in run.branches)
    else:
        run.rating = outlet.rating(line["end"])
        run.rated_gpm = run.rating[1]
    for required in ("coefficient", "length_ft"):
        if required not in line:
            raise CalcError(required, "missing")
    run.parallel = line.get("parallel", 1)
    if run.parallel not in range(1, hose.MOST_PARALLEL + 1) or run.parallel is True:
        raise CalcError("parallel", "out_of_range", least=1, most=hose.MOST_PARALLEL)
    for loss in ("appliance_psi", "gate_psi"):
        check_not_negative(loss, line.get(loss, 0))
    run.elevation_psi = water.elevation_psi(line.get("rise_ft", 0))
    bore_in = line.get("bore_in")
    run.water_gal = None if bore_in is None else run.parallel * hose.water_in_hose_gal(bore_in, line["length_ft"])
    _pass(run, run.rated_gpm)  # whatever can be refused of a line is refused, shut or open


def _ask(run):
    """Set a run whose branches are set to what its open nozzles ask of it."""
    if run.is_shut:
        return
    if run.branches:
        asking = [branch for branch in run.branches if not branch.is_shut]
        _pass(run, sum(branch.flow_gpm for branch in asking))
        run.outlet_psi = max([branch.inlet_psi for branch in asking])
    else:
        _, flow_gpm, run.outlet_psi = run.rating
        _pass(run, flow_gpm)
        run.nozzle = outlet.passing(run.line["end"], flow_gpm, run.outlet_psi)
    run.inlet_psi = run.outlet_psi + run.appliance_psi + run.friction_psi + run.elevation_psi


def _pass(run, flow_gpm):
    """Set what a run takes from this flow."""
    line = run.line
    share = flow_gpm / run.rated_gpm
    hose_gpm = flow_gpm / run.parallel
    run.flow_gpm = flow_gpm
    run.friction_psi = hose.friction_loss_psi(line["coefficient"], hose_gpm, line["length_ft"])
    run.friction_per_100_ft_psi = hose.friction_loss_psi(line["coefficient"], hose_gpm, 100)
    run.appliance_psi = line.get("appliance_psi", 0) * share * share
    run.gate_psi = line.get("gate_psi", 0) * share * share
    bore_in = line.get("bore_in")
    run.velocity_ft_per_s = None if bore_in is None else hose.velocity_ft_per_s(hose_gpm, bore_in)


def _stand(run, inlet_psi):
    """Set a run to the still water of a shut line."""
    _pass(run, 0)
    run.inlet_psi = inlet_psi
    run.outlet_psi = inlet_psi - run.elevation_psi
    if run.rating is not None:
        run.nozzle = outlet.passing(run.line["end"], 0, 0)


def _report(runs, pump_psi):
    return {
        "discharge_psi": pump_psi,
        "flow_gpm": sum(run.flow_gpm for run in runs if run.feeder is None),
        "lines": [_reported(run, pump_psi) for run in runs],
    }


def _reported(run, pump_psi):
    return {
        "id": run.name,
        "feeder": run.feeder and run.feeder.name,
        "shut": run.is_shut,
        "flow_gpm": run.flow_gpm,
        "friction_psi": run.friction_psi,
        "friction_per_100_ft_psi": run.friction_per_100_ft_psi,
        "elevation_psi": run.elevation_psi,
        "appliance_psi": run.appliance_psi,
        "inlet_psi": run.inlet_psi,
        "outlet_psi": run.outlet_psi,
        "gate_psi": (run.feeder.outlet_psi if run.feeder else pump_psi) - run.inlet_psi,
        "velocity_ft_per_s": run.velocity_ft_per_s,
        "water_gal": run.water_gal,
        "nozzle": run.nozzle,
    }
