"""What a hose would see against what its class bears, as a caution of a water page."""
from calc.base import readout
from calc.hydraulics import caution


def cautions(units, hose, psi, where="hose"):
    """One caution where a hose is strained, else none.

    units: see calc.base.display
    hose: of the shelf, with `test_psi` and `work_psi` where they are known
    psi: what it would see
    where: which hose the sentence is of: "hose", "between" two engines, or a wildland "trunk"

    Returns a list of contract `water_caution`. Raises nothing. Source: calc.hydraulics.caution.
    """
    strain = caution.of_hose(psi, hose)
    if not strain:
        return []
    level, limit, limit_psi = strain
    return [readout.caution(units, level, where + "_above_" + limit, (("amount", "pressure", psi), ("limit", "pressure", limit_psi)))]
