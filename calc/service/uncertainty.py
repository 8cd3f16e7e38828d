"""How far a figure may be off: what instruments may err, carried into net pressure and flow."""
import math

from calc.base.errors import CalcError, check_not_negative
from calc.pump.draft import FT_PER_PSI

COVERAGE = 2  # standard deviations: about 19 of 20 when several errors mix


def combined_band(widths):
    """The band of a sum of independent errors, each anywhere within its width, in the unit of the widths.

    widths: list of the most each may err either way, 0 or more

    Two standard deviations, and never more than all widths together. Raises CalcError naming widths.
    Source: rules for the uncertainty of measurement (errors even within their limits: width / sqrt 3), from memory.
    """
    if not isinstance(widths, list):
        raise CalcError("widths", "missing")
    for width in widths:
        check_not_negative("widths", width)
    return min(COVERAGE * math.sqrt(sum(width * width for width in widths) / 3), sum(widths))


def net_band_from_draft_psi(discharge_accuracy_psi, lift_accuracy_ft, loss_accuracy_ft):
    """How far a net pressure from draft may be off, in psi either way.

    discharge_accuracy_psi: the most the discharge gauge may err, psi, 0 or more
    lift_accuracy_ft: the most the measured lift may err, feet, 0 or more
    loss_accuracy_ft: the most the suction loss may err, feet of water, 0 or more

    Raises CalcError naming the input. Source: combined_band over draft.net_pump_pressure_psi.
    """
    check_not_negative("lift_accuracy_ft", lift_accuracy_ft)
    check_not_negative("loss_accuracy_ft", loss_accuracy_ft)
    check_not_negative("discharge_accuracy_psi", discharge_accuracy_psi)
    return combined_band([discharge_accuracy_psi, lift_accuracy_ft / FT_PER_PSI, loss_accuracy_ft / FT_PER_PSI])


def pitot_flow_band_gpm(flows_gpm, pitots_psi, pitot_accuracy_psi, tip_percent):
    """How far the flow of one or more tips may be off, in US gallons per minute either way.

    flows_gpm: flow of each tip, US gallons per minute, 0 or more
    pitots_psi: reading at each tip, psi, 0 or more
    pitot_accuracy_psi: the most the pitot reading may err, psi, 0 or more; one gauge, so the tips err together
    tip_percent: the most the tips' own rule may err, percent, 0 or more

    Raises CalcError naming the input.
    Source: flow grows with the root of pressure, so a small error halves; combined_band.
    """
    check_not_negative("pitot_accuracy_psi", pitot_accuracy_psi)
    check_not_negative("tip_percent", tip_percent)
    if len(flows_gpm) != len(pitots_psi):
        raise CalcError("pitots_psi", "not_as_many")
    read_gpm = 0
    for flow_gpm, pitot_psi in zip(flows_gpm, pitots_psi):
        check_not_negative("flows_gpm", flow_gpm)
        check_not_negative("pitots_psi", pitot_psi)
        is_lost = 2 * pitot_psi <= pitot_accuracy_psi  # a reading within its own error says nothing of the flow
        read_gpm += flow_gpm if is_lost else flow_gpm * pitot_accuracy_psi / (2 * pitot_psi)
    return combined_band([read_gpm, sum(flows_gpm) * tip_percent / 100])
