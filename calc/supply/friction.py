"""Friction loss of hose or pipe on a water page, with its working."""
from calc.base import readout
from calc.hydraulics import hose


def read(units, name, run, flow_gpm, length_ft, sources=("friction",)):
    """The loss, and its row.

    units: see calc.base.display
    name: of the row; the page has its words
    run: its coefficient, psi per 100 ft at 100 gpm, and how many such hoses share the flow
    flow_gpm: through all of them, US gallons per minute, 0 or more
    length_ft: of each, feet, 0 or more
    sources: the ids of the formulas it rests on

    Returns psi and contract `water_row`. Raises CalcError naming the input. Source: calc.hydraulics.hose.
    """
    of_one, hoses = run
    coefficient = hose.parallel_coefficient([of_one] * hoses)
    friction_psi = hose.friction_loss_psi(coefficient, flow_gpm, length_ft)
    return friction_psi, readout.row(units, name, "pressure", friction_psi, (
        ("coefficient", "coefficient", coefficient), ("hundreds_flow", "flow", flow_gpm / 100),
        ("hundreds_length", "length", length_ft / 100), ("friction", "pressure", friction_psi)),
        sources if hoses == 1 else sources + ("parallel",))
