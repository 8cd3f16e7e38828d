"""A leak hunt as a page asks for it, once a change: the next part to shut, what is left plugged, and its inputs."""
from calc.base import entry
from calc.diagnosis import leak


def answer(parts, plugs, runs, last, listed, opened, role, texts, units):
    """All that the page shows of a hunt.

    parts, runs, role: see calc.diagnosis.leak.hunt
    plugs, listed, opened: see calc.diagnosis.leak.restore
    last: the minute with everything open again, as a run has it; None before it
    texts: a vacuum as typed, for each input; empty where nothing is
    units: see calc.base.display

    Returns the answer of contract `leak_page.answer`. Raises CalcError as hunt, restore and calc.base.entry.shown do.
    """
    return {
        "hunt": leak.hunt(parts, runs, role, units),
        "left": leak.restore(plugs, listed, opened),
        "last_loss": leak.hunt(parts, [last], role, units)["losses"][0] if last else None,
        "shown": [entry.shown(units, "vacuum", text) for text in texts],
    }
