"""A layout's runs as a network, and what loops in it ask of the pump."""
from calc.base.errors import CalcError
from calc.hydraulics import network, outlet
from calc.hydraulics.branch import Branch, Draw, Outlet
from calc.layout import joint


def network_of(runs, draws=False):
    """Runs that carry their rated flows, as calc.hydraulics.network takes them.

    runs: of calc.layout.lines
    draws: whether nozzles take what they are rated for, whatever their pressure, and nothing is gated

    Returns the branches, and of each run the places of its hose and of its end, one and the same where nothing comes in between.
    Raises nothing.
    """
    branches, places, of_hose, of_end = [], [], {}, {}
    for run in runs:
        square = run.rated_gpm * run.rated_gpm
        loss, device = (run.friction_psi + (0 if draws else run.gate_psi)) / square, run.appliance_psi / square
        feeder = None if run.feeder is None else of_end[run.feeder.name]
        end = None
        if run.rating is not None:
            end = Draw(0 if run.is_shut else run.rating[1]) if draws else Outlet(*run.rating)
        of_hose[run.name] = len(branches)
        if run.guests:
            branches.append(Branch(feeder, run.elevation_psi, loss, None, run.is_shut))
            branches.append(Branch(of_hose[run.name], 0, device, end, run.is_shut))
        else:
            branches.append(Branch(feeder, run.elevation_psi, loss + device, end, run.is_shut))
        of_end[run.name] = len(branches) - 1
        places.append((of_hose[run.name], of_end[run.name]))
    for run in runs:
        if run.into:
            branches[of_hose[run.name]].into = of_hose[run.into.name]
    return branches, places


def ask(runs, rule):
    """Set every open run to what its open nozzles ask of it, where some come in at the end of others.

    runs: of calc.layout.lines
    rule: only "square": another rule does not say how a flow is shared

    Hoses that close a loop share their flow as their losses ask; none within a loop is gated, those that leave one place for it are gated alike.
    Raises CalcError naming rule, or lines as calc.hydraulics.network does. Source: as calc.hydraulics.network.
    """
    if rule != "square":
        raise CalcError("rule", "not_of_loops", line=[run.name for run in runs if run.into][0])
    branches, places = network_of(runs, True)
    network.solve(branches, 0)
    drops_psi = {None: 0}  # from the pump to the end of each run
    needed_psi = {}  # at the pump, for each run
    for run, (hose, end) in zip(runs, places):
        if not run.is_shut:
            run.carry(branches[hose].flow_gpm, branches[end].flow_gpm)
            drops_psi[run.name] = _start(run, drops_psi) + run.friction_psi + run.elevation_psi + run.appliance_psi
    for run in reversed(runs):
        if run.is_shut or run.into:
            continue
        if run.rating is not None:
            needed_psi[run.name] = drops_psi[run.name] + run.rating[2]
            run.nozzle = outlet.passing(run.line["end"], run.end_gpm, run.rating[2])
        else:
            needs = [needed_psi[branch.name] for branch in run.branches if needed_psi.get(branch.name) is not None]
            needed_psi[run.name] = max(needs) if needs else None  # a way round alone
    for names in _rings(runs):
        needs = [needed_psi[name] for name in names if needed_psi.get(name) is not None]
        for name in names:
            needed_psi[name] = max(needs) if needs else None
    needed_psi[None] = max([needed_psi[run.name] for run in runs if needed_psi.get(run.name) is not None] or [0])
    for run in runs:
        if not run.is_shut:
            if needed_psi[run.name] is None:
                needed_psi[run.name] = needed_psi[run.feeder.name if run.feeder else None]
            run.inlet_psi = needed_psi[run.name] - _start(run, drops_psi)
            run.outlet_psi = needed_psi[run.name] - drops_psi[run.name]


def _start(run, drops_psi):
    return drops_psi[run.feeder.name if run.feeder else None]


def _rings(runs):
    """Names of the runs that hang together by loops: each set one way round and the other from where they part."""
    rings = []
    for run in runs:
        if run.into and not run.is_shut:
            one, other = joint.way(run), joint.way(run.into)
            names = {passed.name for passed in one if passed not in other} | {passed.name for passed in other if passed not in one}
            for ring in [ring for ring in rings if ring & names]:
                rings.remove(ring)
                names |= ring
            rings.append(names)
    return rings
