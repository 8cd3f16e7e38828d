"""Hose as it was measured, by a department's own rigs or of late by others: offered beside the handbook's, never in its place."""
from calc.base import display


def texts(figures, units):
    """A department's figure of a hose as texts; None where it has none.

    figures: a hose of the shelf, or a line that was made with one
    units: see calc.base.display

    Returns contract `department_told`, or None. Raises CalcError naming units. Source: calc.rig.pooled.
    """
    own = figures.get("department")
    return own and {
        "coefficient": display.working(units, "coefficient", own["coefficient"]),
        "least": display.significant(units, "coefficient", own["least"]),
        "most": display.significant(units, "coefficient", own["most"]),
        "readings": str(own["readings"]),
        "rigs": str(own["rigs"]),
    }


def others(figures, whose):
    """The coefficients by which a hose goes besides the handbook's, in calc's unit; none where another figure than the handbook's stands, or its own has a fault.

    figures: as for texts
    whose: "department", one, as its rigs measured it; or "modern", the least and the most that was measured on hose of recent years

    Raises nothing. Source: calc.rig.pooled; the shelf, whose figures carry theirs.
    """
    own = figures.get(whose)
    if not own or figures.get("faulty") or figures.get("origin", "handbook") != "handbook":
        return []
    return [own["coefficient"]] if whose == "department" else own
