"""A rig's own hose figures beside the handbook's: what stands on the Rig page, and before a rig is taken."""
from calc.base import display, rounding
from calc.hydraulics import measured_hose
from calc.rig import hose_test

LARGE = 1 / 3  # measured hose lies within a third of the handbook's: common practice; past it, look twice


def beside_handbook(at_hand, shelf, units):
    """Each hose that a rig has figures of, beside the handbook's.

    at_hand: of profile.at_hand; rows with a fault are left out
    shelf: what is at hand, see calc.base.shelf, as the handbook has it
    units: see calc.base.display

    Returns a list, each contract `beside_handbook`. Raises nothing. Source: the profile and the shelf.
    """
    rows = []
    for row in at_hand["rig"].get("hoses", []):
        own, handbook = at_hand["shelf"]["hoses"][row["hose"]], shelf["hoses"][row["hose"]]
        if own.get("faulty"):
            continue
        share = own["coefficient"] / handbook["coefficient"] - 1
        rows.append({
            "hose": row["hose"],
            "coefficient": display.working(units, "coefficient", own["coefficient"]),
            "handbook": display.working(units, "coefficient", handbook["coefficient"]),
            "origin": own["origin"],
            "readings": row.get("readings") or None if own["origin"] == "measured" else None,
            "percent": rounding.rounded(abs(share) * 100, 0),
            "is_lower": share < 0,
            "is_large": abs(share) > LARGE,
            "department": _department(own, units),
        })
    return rows


def _department(own, units):
    """What the department's rigs measured of a hose, with its entry where the rig goes by another figure; None where they did not."""
    texts = measured_hose.texts(own, units)
    if texts:
        is_used = own["origin"] == "pooled" and display.working(units, "coefficient", own["coefficient"]) == texts["coefficient"]
        texts["typed"] = None if is_used else hose_test.as_entry(units, own["department"]["coefficient"])
    return texts
