"""A lay: hose lines that branch at wyes and manifolds, from the pump to its nozzles.

A layout is plain data, `{"lines": [LINE, ...]}`, the lines that leave the pump. A LINE holds
    coefficient    psi per 100 ft at 100 gpm, for one hose, above 0
    length_ft      feet, 0 or more
    end            a nozzle, or `{"lines": [LINE, ...]}` for a wye or manifold
and, where they apply,
    id             the name of the line in the report; without one, its place ("1", "1.2")
    bore_in        inches, above 0; without it, velocity and water held are reported as None
    rise_ft        feet, outlet above inlet, either sign; level without it
    parallel       equal hoses that share the run, 1 to 12; one without it
    appliance_psi  loss of the wye, manifold or device at the outlet, psi; none without it
    gate_psi       what its valve takes off at the inlet, psi; open without it (for flows alone)
A nozzle is `{"kind": "smooth", "tip_in", "nozzle_psi"}`, `{"kind": "fog", "rated_gpm", "rated_psi"}`,
`{"kind": "automatic", "min_gpm", "max_gpm", "rated_psi"}`, reckoned at its greatest flow, or
`{"kind": "open", "pressure_psi", "flow_gpm"}` for an inlet that needs this pressure at this flow.
"""
from calc import hose, nozzle, tree, water
from calc.errors import CalcError, check_not_negative, check_positive

MOST_LINES = 500  # ends any layout, a cyclic one included


def discharge_pressure(layout):
    """What the pump must show so that every nozzle has its rated pressure.

    layout: as the module says; any depth of branching, up to 500 lines

    Returns `{"discharge_psi", "flow_gpm", "lines"}`. Lines stand each after the line that feeds it:
    `id`, `feeder` (id or None at the pump), `flow_gpm`, `friction_psi`, `friction_per_100_ft_psi`,
    `elevation_psi`, `appliance_psi`, `inlet_psi` (after gating), `outlet_psi` (at the nozzle or joint,
    behind the appliance), `gate_psi` (what must be gated off at the inlet), `velocity_ft_per_s`,
    `water_gal`, and `nozzle` (`kind`, `nozzle_psi`, `flow_gpm`, `reaction_lbf`) or None.

    Raises CalcError naming the field, with the fact `line` where it is a line's.
    Source: driver/operator handbook study cards (PDP = nozzle + friction + elevation + appliance;
    at a wye, the pump serves the line that needs most and the other is gated).
    """
    runs = _runs(layout)
    for run in reversed(runs):
        _demand(run)
    pump_psi = max(run.inlet_psi for run in runs if run.feeder is None)
    return {
        "discharge_psi": pump_psi,
        "flow_gpm": sum(run.flow_gpm for run in runs if run.feeder is None),
        "lines": [_reported(run, pump_psi) for run in runs],
    }


def flows(layout, discharge_psi):
    """What really comes out of every nozzle when the pump shows this pressure.

    layout: as the module says; any depth of branching, up to 500 lines
    discharge_psi: pump discharge pressure, psi, 0 or more

    Returns a report of the same form as discharge_pressure: what flows, and the pressure at each joint. Appliances and
    gates take the pressure they are given at the rated flow behind them, and with the square of the flow away from it.
    A nozzle too high for the pressure passes nothing. Raises CalcError as discharge_pressure does.
    Source: square-law hose and orifices, balanced at every joint (see calc.tree); agrees with a general network solver.
    """
    check_not_negative("discharge_psi", discharge_psi)
    runs = _runs(layout)
    for run in reversed(runs):
        _demand(run)
    branches = _branches_of(runs)
    tree.solve(branches, discharge_psi)
    for run, branch in zip(runs, branches):
        _flow(run, branch, discharge_psi if run.feeder is None else run.feeder.outlet_psi)
    return {
        "discharge_psi": discharge_psi,
        "flow_gpm": sum(run.flow_gpm for run in runs if run.feeder is None),
        "lines": [_reported(run, discharge_psi) for run in runs],
    }


def _branches_of(runs):
    """The runs as calc.tree takes them, their losses set by their rated flows."""
    places = {run.name: place for place, run in enumerate(runs)}
    branches = []
    for run in runs:
        lost_psi = run.friction_psi + run.appliance_psi + run.gate_psi
        loss = lost_psi / (run.flow_gpm * run.flow_gpm)
        feeder = None if run.feeder is None else places[run.feeder.name]
        outlet = None if run.nozzle is None else tree.Outlet(*run.nozzle["held"])
        branches.append(tree.Branch(feeder, run.elevation_psi, loss, outlet))
    return branches


def _flow(run, branch, inlet_psi):
    """Set a run to what flows through it, from its rated figures."""
    share = branch.flow_gpm / run.flow_gpm
    run.flow_gpm = branch.flow_gpm
    for loss in ("friction_psi", "friction_per_100_ft_psi", "appliance_psi", "gate_psi"):
        setattr(run, loss, getattr(run, loss) * share * share)
    if run.velocity_ft_per_s is not None:
        run.velocity_ft_per_s *= share
    run.inlet_psi = inlet_psi - run.gate_psi
    run.outlet_psi = run.inlet_psi - run.friction_psi - run.elevation_psi - run.appliance_psi
    if run.nozzle is not None:
        run.nozzle = _nozzle_at(run.line["end"], max(run.outlet_psi, 0) if not branch.is_shut else 0, run.flow_gpm)


def _nozzle_at(end, nozzle_psi, flow_gpm):
    """A nozzle away from its rating."""
    if end["kind"] == "open":
        reaction_lbf = None
    elif end["kind"] == "smooth":
        reaction_lbf = nozzle.smooth_bore_reaction_lbf(end["tip_in"], nozzle_psi)
    else:
        reaction_lbf = nozzle.fog_reaction_lbf(flow_gpm, nozzle_psi)
    return {"kind": end["kind"], "nozzle_psi": nozzle_psi, "flow_gpm": flow_gpm, "reaction_lbf": reaction_lbf}


class _Run:
    """One line while it is worked out; its branches are runs too."""

    def __init__(self, line, feeder, name):
        self.line = line
        self.feeder = feeder
        self.name = name
        self.branches = []


def _runs(layout):
    """Every line as a run, each after the run that feeds it."""
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
            branches = _branches(end, run)
            run.branches = branches
            pending.extend(branches)
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


def _demand(run):
    """Work out one run whose branches are worked out: its flow, losses and the pressure it needs."""
    try:
        _demand_of(run, run.line)
    except CalcError as error:
        raise CalcError(error.field, error.code, line=run.name, **error.facts)


def _demand_of(run, line):
    run.nozzle = None
    if run.branches:
        run.flow_gpm = sum(branch.flow_gpm for branch in run.branches)
        run.outlet_psi = max(branch.inlet_psi for branch in run.branches)
    else:
        run.nozzle = _nozzle(line["end"])
        run.flow_gpm = run.nozzle["flow_gpm"]
        run.outlet_psi = run.nozzle["nozzle_psi"]
    for required in ("coefficient", "length_ft"):
        if required not in line:
            raise CalcError(required, "missing")
    run.parallel = line.get("parallel", 1)
    if run.parallel not in range(1, hose.MOST_PARALLEL + 1) or run.parallel is True:
        raise CalcError("parallel", "out_of_range", least=1, most=hose.MOST_PARALLEL)
    run.length_ft = line["length_ft"]
    run.appliance_psi = line.get("appliance_psi", 0)
    run.gate_psi = line.get("gate_psi", 0)
    check_not_negative("appliance_psi", run.appliance_psi)
    check_not_negative("gate_psi", run.gate_psi)
    hose_gpm = run.flow_gpm / run.parallel
    run.friction_psi = hose.friction_loss_psi(line["coefficient"], hose_gpm, run.length_ft)
    run.friction_per_100_ft_psi = hose.friction_loss_psi(line["coefficient"], hose_gpm, 100)
    run.elevation_psi = water.elevation_psi(line.get("rise_ft", 0))
    run.inlet_psi = run.outlet_psi + run.appliance_psi + run.friction_psi + run.elevation_psi
    bore_in = line.get("bore_in")
    run.velocity_ft_per_s = None if bore_in is None else hose.velocity_ft_per_s(hose_gpm, bore_in)
    run.water_gal = None if bore_in is None else run.parallel * hose.water_in_hose_gal(bore_in, run.length_ft)


def _reported(run, pump_psi):
    return {
        "id": run.name,
        "feeder": run.feeder and run.feeder.name,
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
        "nozzle": run.nozzle and {key: run.nozzle[key] for key in ("kind", "nozzle_psi", "flow_gpm", "reaction_lbf")},
    }


def _nozzle(end):
    """Pressure, flow and push of a nozzle at its rating."""
    kind = end.get("kind")
    if not isinstance(kind, str) or kind not in _KINDS:
        raise CalcError("kind", "unknown")
    needed, rating = _KINDS[kind]
    for field in needed:
        if field not in end:
            raise CalcError(field, "missing")
        check_positive(field, end[field])
    nozzle_psi, flow_gpm, reaction_lbf = rating(end)
    held = (end["min_gpm"] if kind == "automatic" else flow_gpm, flow_gpm, nozzle_psi)
    return {"kind": kind, "nozzle_psi": nozzle_psi, "flow_gpm": flow_gpm, "reaction_lbf": reaction_lbf, "held": held}


def _smooth(end):
    tip_in, nozzle_psi = end["tip_in"], end["nozzle_psi"]
    flow_gpm = nozzle.smooth_bore_flow_gpm(tip_in, nozzle_psi)
    return nozzle_psi, flow_gpm, nozzle.smooth_bore_reaction_lbf(tip_in, nozzle_psi)


def _fog(end):
    nozzle_psi, flow_gpm = end["rated_psi"], end["rated_gpm"]
    return nozzle_psi, flow_gpm, nozzle.fog_reaction_lbf(flow_gpm, nozzle_psi)


def _automatic(end):
    if end["min_gpm"] > end["max_gpm"]:
        raise CalcError("min_gpm", "above_max", most=end["max_gpm"])
    nozzle_psi, flow_gpm = end["rated_psi"], end["max_gpm"]
    return nozzle_psi, flow_gpm, nozzle.fog_reaction_lbf(flow_gpm, nozzle_psi)


def _open(end):
    return end["pressure_psi"], end["flow_gpm"], None


_KINDS = {
    "smooth": (("tip_in", "nozzle_psi"), _smooth),
    "fog": (("rated_gpm", "rated_psi"), _fog),
    "automatic": (("min_gpm", "max_gpm", "rated_psi"), _automatic),
    "open": (("pressure_psi", "flow_gpm"), _open),
}
