"""A run of a card as a phone carries it: a state of calc.shift.card less its `sequence`, which the phone holds."""
from calc.base.errors import CalcError
from calc.shift import card, pace


def advance(sequence, lengths, run, event):
    """The run after an event; what is handed over is left as it was.

    sequence: plain data, see calc.shift.laws
    lengths: how many words each step has, by step, see calc.shift.pace
    run: what calc.shift.card.start returned less its sequence, or what this returned
    event: see calc.shift.card

    Returns the run with `unseen`, whether it does not count as seen (calc.shift.pace), and, once it is done, `quick`: the steps that
    were answered faster than they can be read.
    Raises CalcError as calc.shift.card.advance does.
    """
    if not isinstance(run, dict):
        raise CalcError("state", "damaged")
    state = dict(run)
    state["sequence"] = sequence
    after = card.advance(state, event)
    del after["sequence"]
    quick = pace.too_quick(after["confirmed"], lengths)
    after["unseen"] = pace.is_unseen(after["status"], after["confirmed"], quick)
    if after["status"] == "done":
        after["quick"] = quick
    return after
