"""Nozzles: flow from tip and pressure, and the push back on the crew."""
import math

from calc.base.errors import check_not_negative, check_positive, check_within

TIP_CONSTANT = 29.7  # fireground constant of a good smooth-bore tip
PITOT_CONSTANT = 29.84  # the same for a perfect orifice, used with a discharge coefficient
SMOOTH_REACTION_CONSTANT = 1.57
FOG_REACTION_CONSTANT = 0.0505


def smooth_bore_flow_gpm(tip_in, nozzle_psi):
    """Flow from a smooth-bore tip, in US gallons per minute.

    tip_in: diameter of the tip, inches, above 0
    nozzle_psi: pressure at the nozzle, psi, 0 or more

    Raises CalcError naming the input that is out of range.
    Source: driver/operator study cards, hose nozzles and flow rates (29.7 d^2 sqrt(P)).
    """
    check_positive("tip_in", tip_in)
    check_not_negative("nozzle_psi", nozzle_psi)
    return TIP_CONSTANT * tip_in * tip_in * math.sqrt(nozzle_psi)


def smooth_bore_pressure_psi(tip_in, flow_gpm):
    """Nozzle pressure at which a smooth-bore tip passes this flow, in psi.

    tip_in: diameter of the tip, inches, above 0
    flow_gpm: flow, US gallons per minute, 0 or more

    Raises CalcError naming the input that is out of range.
    Source: smooth_bore_flow_gpm solved for the pressure.
    """
    check_positive("tip_in", tip_in)
    check_not_negative("flow_gpm", flow_gpm)
    root = flow_gpm / (TIP_CONSTANT * tip_in * tip_in)
    return root * root


def fog_flow_gpm(rated_gpm, rated_psi, nozzle_psi):
    """Flow from a fixed-orifice fog nozzle away from its rated pressure, in US gallons per minute.

    rated_gpm: flow at the rated pressure, US gallons per minute, above 0
    rated_psi: rated pressure, psi, above 0
    nozzle_psi: pressure at the nozzle, psi, 0 or more

    Not for automatic nozzles, which hold their pressure. Raises CalcError naming the input.
    Source: orifice law, flow grows with the square root of pressure; from memory.
    """
    check_positive("rated_gpm", rated_gpm)
    check_positive("rated_psi", rated_psi)
    check_not_negative("nozzle_psi", nozzle_psi)
    return rated_gpm * math.sqrt(nozzle_psi / rated_psi)


def pitot_flow_gpm(bore_in, pitot_psi, discharge_coefficient):
    """Flow from an open outlet read with a pitot gauge, in US gallons per minute.

    bore_in: inside diameter of the outlet, inches, above 0
    pitot_psi: pitot reading, psi, 0 or more
    discharge_coefficient: 0.5 to 1 (0.90 smooth and rounded, 0.80 square and sharp, 0.70 projecting)

    Raises CalcError naming the input that is out of range.
    Source: NFPA 291 (29.84 c d^2 sqrt(p)), constant from memory.
    """
    check_positive("bore_in", bore_in)
    check_not_negative("pitot_psi", pitot_psi)
    check_within("discharge_coefficient", discharge_coefficient, 0.5, 1)
    return PITOT_CONSTANT * discharge_coefficient * bore_in * bore_in * math.sqrt(pitot_psi)


def smooth_bore_reaction_lbf(tip_in, nozzle_psi):
    """Push of a smooth-bore tip on whoever holds it, in pounds-force.

    tip_in: diameter of the tip, inches, above 0
    nozzle_psi: pressure at the nozzle, psi, 0 or more

    Raises CalcError naming the input that is out of range.
    Source: driver/operator study cards, hose nozzles and flow rates (1.57 d^2 P).
    """
    check_positive("tip_in", tip_in)
    check_not_negative("nozzle_psi", nozzle_psi)
    return SMOOTH_REACTION_CONSTANT * tip_in * tip_in * nozzle_psi


def fog_reaction_lbf(flow_gpm, nozzle_psi):
    """Push of a fog nozzle on whoever holds it, straight stream, in pounds-force.

    flow_gpm: flow, US gallons per minute, 0 or more
    nozzle_psi: pressure at the nozzle, psi, 0 or more

    Raises CalcError naming the input that is out of range.
    Source: driver/operator study cards, hose nozzles and flow rates (0.0505 Q sqrt(P)).
    """
    check_not_negative("flow_gpm", flow_gpm)
    check_not_negative("nozzle_psi", nozzle_psi)
    return FOG_REACTION_CONSTANT * flow_gpm * math.sqrt(nozzle_psi)
