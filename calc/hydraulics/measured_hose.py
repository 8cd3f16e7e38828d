"""The hose of a department as its own rigs measured it, pooled when the site was built: offered beside the handbook's, never in its place."""
from calc.base import display


def texts(figures, units):
    """A department's figure of a hose as texts; None where it has none.

    figures: a hose of the shelf, or a line that was made with one
    units: see calc.base.display

    Returns contract `department_told`, or None. Raises CalcError naming units.
    """
    own = figures.get("department")
    return own and {
        "coefficient": display.working(units, "coefficient", own["coefficient"]),
        "least": display.significant(units, "coefficient", own["least"]),
        "most": display.significant(units, "coefficient", own["most"]),
        "readings": str(own["readings"]),
        "rigs": str(own["rigs"]),
    }


def coefficient(figures):
    """A department's coefficient of a hose where it has one, in calc's unit, else None.

    figures: as for texts

    Raises nothing. Source: calc.rig.pooled.
    """
    return figures["department"]["coefficient"] if figures.get("department") else None
