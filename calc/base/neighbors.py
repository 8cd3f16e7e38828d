"""The round figures on either side of what stands in an input, for keys that a needle creeps between."""
from calc.base import entry


def near(rows, decimal, below, above):
    """The round figures next to what stands in some inputs.

    rows: list of `{"text", "kind", "step"}`, each as for entry.stepped
    decimal: as for entry.number
    below, above: how many on either side

    Returns for each row `{"below", "above"}`: texts, the lowest first; none of a text that is no number, and none below zero.
    Raises nothing. Source: common practice (a gauge is read again near where it stood).
    """
    return [{"below": list(reversed(_steps(row, decimal, -1, below))), "above": _steps(row, decimal, 1, above)} for row in rows]


def _steps(row, decimal, direction, count):
    texts, text = [], row["text"]
    for _ in range(count):
        text = entry.stepped(text, row["kind"], decimal, row["step"], direction, 0)
        if text is None:
            break
        texts.append(text)
    return texts
