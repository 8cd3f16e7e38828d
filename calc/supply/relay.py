"""The relay: how many pumpers for a distance, what each must show, and how long the hose takes to fill."""
import math

from calc.base.errors import CalcError, check_not_negative, check_number, check_positive
from calc.hydraulics import hose, water

MOST_PUMPERS = 50


def plan(coefficient, flow_gpm, distance_ft, rise_ft, most_psi, residual_psi):
    """The fewest pumpers, at equal distances, that carry a flow over a distance.

    coefficient: of the supply hose or hoses together, psi per 100 ft at 100 gpm, above 0
    flow_gpm: flow through the relay, US gallons per minute, above 0
    distance_ft: hose from the first pumper to the last, feet, above 0
    rise_ft: height of the last pumper above the first, feet, either sign, taken as an even slope
    most_psi: greatest pressure a pumper may show, psi, above residual_psi
    residual_psi: pressure wanted at each intake, psi, 0 or more

    Returns `{"pumpers", "leg_ft", "reach_ft", "friction_psi", "elevation_psi", "discharge_psi", "shut_psi"}`: the first
    pumper stands at the water and the last at the fire, and counts; reach_ft is the greatest distance between two,
    None where the slope alone carries the water; the pressures are of one leg; shut_psi is what the intake
    at its far end sees when the flow stops and the pumper before it holds its pressure; in engine-speed mode it is more. Raises CalcError naming the input.
    Source: driver/operator study cards, relay pumping (P = R/D + 1; friction, elevation and 20 psi residual).
    """
    check_positive("flow_gpm", flow_gpm)
    check_positive("distance_ft", distance_ft)
    check_number("rise_ft", rise_ft)
    check_positive("most_psi", most_psi)
    check_not_negative("residual_psi", residual_psi)
    if not residual_psi < most_psi:
        raise CalcError("most_psi", "not_above_residual", residual_psi=residual_psi)
    friction_psi = hose.friction_loss_psi(coefficient, flow_gpm, distance_ft)
    elevation_psi = water.elevation_psi(rise_ft)
    lost_psi = friction_psi + elevation_psi
    left_psi = most_psi - residual_psi
    if lost_psi > left_psi * (MOST_PUMPERS - 1):
        raise CalcError("distance_ft", "too_many_pumpers", most=MOST_PUMPERS)
    legs = max(math.ceil(lost_psi / left_psi - 1e-9), 1)
    discharge_psi = residual_psi + lost_psi / legs
    return {
        "pumpers": legs + 1,
        "leg_ft": distance_ft / legs,
        "reach_ft": distance_ft * left_psi / lost_psi if lost_psi > 0 else None,
        "friction_psi": friction_psi / legs,
        "elevation_psi": elevation_psi / legs,
        "discharge_psi": discharge_psi,
        "shut_psi": discharge_psi - elevation_psi / legs,
    }


def fill_minutes(bore_in, length_ft, hoses, flow_gpm):
    """Time until the hose is full, in minutes, the air let out as it goes.

    bore_in: inside diameter, inches, above 0
    length_ft: length of the layout, feet, 0 or more
    hoses: how many lie side by side, 1 or more
    flow_gpm: flow at which they are filled, US gallons per minute, above 0

    Raises CalcError naming the input. Source: volume over flow.
    """
    check_positive("hoses", hoses)
    check_positive("flow_gpm", flow_gpm)
    return hose.water_in_hose_gal(bore_in, length_ft) * hoses / flow_gpm
