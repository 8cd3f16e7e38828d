"""The made-up rig as a page asks for it: each act is one question, and its gauges come with the run."""
from calc.teaching import practice


def begin(task, parameters, lights, faults, units):
    """A run at its first moment, with its gauges.

    task, parameters, lights, faults: see calc.teaching.practice.begin
    units: see calc.base.display

    Returns `{"run", "gauges"}`. Raises CalcError as practice.begin does.
    """
    return _shown(practice.begin(task, parameters, lights, faults), units)


def advance(run, event, units):
    """The run after an event, with its gauges; the given run is left as it was.

    run: of what begin or advance returned
    event: see calc.teaching.practice
    units: see calc.base.display

    Returns `{"run", "gauges"}`. Raises CalcError as practice.advance does.
    """
    return _shown(practice.advance(run, event), units)


def _shown(run, units):
    return {"run": run, "gauges": practice.gauges(run, units)}
