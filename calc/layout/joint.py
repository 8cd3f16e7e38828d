"""Lines that come in at the end of another: two hoses, alike or not, into one device, a wye joined again, a second way to a manifold."""
from calc.base.errors import CalcError
from calc.hydraulics import network


def join(runs, coming):
    """Lead each such run to the one at whose end it comes in, with its height, what it is rated for, and whether anything can pass.

    runs: of calc.layout.lines, read and rated
    coming: those of them that go into another

    Raises CalcError naming into where there is no such line or it is none that has an end of its own beyond this one, lines where there are too many.
    """
    by_name = {run.name: run for run in runs}
    if len(coming) > network.MOST_LOOPS:
        raise CalcError("lines", "too_many_loops", most=network.MOST_LOOPS)
    for run in coming:
        name = run.line["end"]["into"]
        if not isinstance(name, str) or name not in by_name:
            raise CalcError("into", "unknown", line=run.name)
        run.into = by_name[name]
        if "into" in run.into.line["end"] or run.into in way(run):
            raise CalcError("into", "not_an_end", line=run.name)
        run.into.guests.append(run)
    heights_psi = {}
    for run in runs:
        heights_psi[run.name] = (heights_psi[run.feeder.name] if run.feeder else 0) + run.elevation_psi
    for run in coming:
        run.elevation_psi = heights_psi[run.into.name] - (heights_psi[run.feeder.name] if run.feeder else 0)
        for before in way(run):
            before.rated_gpm = _rated_gpm(before)
            before.carry(before.rated_gpm)
    _shut(runs)


def way(run):
    """A run, what feeds it, and so on to the pump.

    run: of calc.layout.lines

    Raises nothing.
    """
    runs = []
    while run is not None:
        runs.append(run)
        run = run.feeder
    return runs


def _rated_gpm(run):
    """What all nozzles are rated for that water can come to through this run, each once."""
    names, pending, total_gpm = [run.name], [run], 0
    while pending:
        passed = pending.pop()
        if passed.rating is not None:
            total_gpm += passed.rating[1]
        for following in passed.branches + ([passed.into] if passed.into else []):
            if following.name not in names:
                names.append(following.name)
                pending.append(following)
    return total_gpm


def _shut(runs):
    """Mark every run through which nothing can pass: it or one before it is closed, or it leads to nothing that is open, one way or the other."""
    for run in runs:
        run.is_shut = run.is_closed or (run.feeder is not None and run.feeder.is_shut)
    for run in runs:
        if run.into and run.into.is_shut:
            run.is_closed = run.is_shut = True
    for run in reversed(runs):
        if run.rating is None and not run.into and all([reached.is_shut for reached in run.branches + run.guests]):
            run.is_shut = True
