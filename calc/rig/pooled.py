"""A department's own figure of a hose: what its rigs measured, pooled when the site is built, so that no rig's slip is anybody else's figure.

The rule, this tool's own:
- At least two rigs and three readings in all, or there is no figure.
- The same figure of a hose on two rigs is one that was carried over from rig to rig, and counts as one rig's.
- A rig whose figure lies more than a fifth from the median of all, each rig counted once, is left out: two panel gauges and a flow that
  is read err by a tenth and more, and hose of one size differs, but past a fifth it is another hose, a kink or a slip.
- The figure is the median of the others weighted by their readings; no rig weighs more than all others together.
"""
from calc.rig import profile as rig_profile

LEAST_RIGS = 2
LEAST_READINGS = 3
FAR = 0.2


def measured(profile, shelf, units):
    """The hose that a rig has measured.

    profile: see calc.rig.profile, sound or not; a row with a fault is left out
    shelf: what is at hand, see calc.base.shelf
    units: see calc.base.display

    Returns rows {"hose", "coefficient", "readings"}, of one reading where the profile does not say. Raises nothing.
    """
    at_hand = rig_profile.at_hand(profile, shelf, units)
    figures = at_hand["shelf"]["hoses"]
    return [{"hose": row["hose"], "coefficient": figures[row["hose"]]["coefficient"], "readings": int(float(row.get("readings") or 1))}
            for row in at_hand["rig"].get("hoses", []) if figures[row["hose"]].get("origin") == "measured" and not figures[row["hose"]].get("faulty")]


def pooled(rows):
    """A department's figure of one hose.

    rows: {"coefficient", "readings"} of each rig that measured it, in calc's unit and 1 or more

    Returns contract `department_hose`, or None where too little was measured or the rigs disagree. Raises nothing.
    Source: the rule of the module; the median is the weighted one of statistics, at an exact half the mean of the two beside it.
    """
    own = _own_figures(rows)
    middle = _median(own, [1] * len(own))
    near = [row for row in own if abs(row["coefficient"] - middle) <= FAR * middle]
    if not _suffice(near):
        return None
    coefficients = [row["coefficient"] for row in near]
    total = sum([row["readings"] for row in near])
    weights = [min(row["readings"], total - row["readings"]) for row in near]
    return {"coefficient": _median(near, weights), "least": min(coefficients), "most": max(coefficients),
            "readings": total, "rigs": len(near), "left_out": len(own) - len(near)}


def _own_figures(rows):
    """Each figure once, with the most readings that it was said to have, the smallest figure first."""
    most = {}
    for row in rows:
        most[row["coefficient"]] = max(row["readings"], most.get(row["coefficient"], 0))
    return [{"coefficient": coefficient, "readings": most[coefficient]} for coefficient in sorted(most)]


def _suffice(rows):
    return len(rows) >= LEAST_RIGS and sum([row["readings"] for row in rows]) >= LEAST_READINGS


def _median(rows, weights):
    """The weighted median of rows in the order of their figures; None of none."""
    below, half = 0, sum(weights) / 2
    for place, row in enumerate(rows):
        below += weights[place]
        if below == half:
            return (row["coefficient"] + rows[place + 1]["coefficient"]) / 2
        if below > half:
            return row["coefficient"]
    return None
