"""Foam: concentrate and time, what a spill asks, and what an eductor can push through the hose behind it."""
import math

from calc.base.errors import check_not_negative, check_number, check_positive, check_within
from calc.hydraulics import hose, water

SPILL_MINUTES = 15  # the least for a spill
MOST_EDUCTORS = 40
LAST_BIT = 1e-9


def spill_gpm(area_ft2, rate_gpm_per_ft2):
    """Solution that a spill asks, in US gallons per minute.

    area_ft2: of the spill, square feet, above 0
    rate_gpm_per_ft2: by fuel and foam, US gallons per minute for each square foot, 0.01 to 1; what the foam is listed for comes first

    Raises CalcError naming the input. Source: a state university's training slides on foam for ethanol blends (area times rate).
    """
    check_positive("area_ft2", area_ft2)
    check_within("rate_gpm_per_ft2", rate_gpm_per_ft2, 0.01, 1)
    return area_ft2 * rate_gpm_per_ft2


def eductors_for(solution_gpm, eductor_gpm):
    """How many eductors give a flow of solution: a whole number.

    solution_gpm: US gallons per minute, 0 or more
    eductor_gpm: of one eductor and its nozzle, US gallons per minute, above 0

    Raises CalcError naming the input. Source: flow over the flow of one, rounded up; common practice.
    """
    check_not_negative("solution_gpm", solution_gpm)
    check_positive("eductor_gpm", eductor_gpm)
    return math.ceil(solution_gpm / eductor_gpm - LAST_BIT)


def concentrate_gpm(flow_gpm, percent):
    """Concentrate drawn into a foam solution, in US gallons per minute.

    flow_gpm: flow of the solution, US gallons per minute, 0 or more
    percent: share of concentrate, percent, 0.1 to 6

    Raises CalcError naming the input. Source: driver/operator study cards, handbook chapter 14.
    """
    check_not_negative("flow_gpm", flow_gpm)
    check_within("percent", percent, 0.1, 6)
    return flow_gpm * percent / 100


def foam_minutes(concentrate_gal, flow_gpm, percent):
    """Time that the concentrate lasts, in minutes.

    concentrate_gal: concentrate at hand, US gallons, 0 or more
    flow_gpm: flow of the solution, US gallons per minute, above 0
    percent: share of concentrate, percent, 0.1 to 6

    Raises CalcError naming the input. Source: volume divided by draw.
    """
    check_not_negative("concentrate_gal", concentrate_gal)
    check_positive("flow_gpm", flow_gpm)
    return concentrate_gal / concentrate_gpm(flow_gpm, percent)


def concentrate_gal(minutes, flow_gpm, percent):
    """Concentrate that a time of foam takes, in US gallons.

    minutes: how long, minutes, 0 or more
    flow_gpm: flow of the solution, US gallons per minute, 0 or more
    percent: share of concentrate, percent, 0.1 to 6

    Raises CalcError naming the input. Source: draw times time.
    """
    check_not_negative("minutes", minutes)
    return minutes * concentrate_gpm(flow_gpm, percent)


def back_pressure_psi(coefficient, flow_gpm, length_ft, rise_ft, nozzle_psi):
    """Pressure that an eductor's outlet must work against, in psi.

    coefficient: of the hose from eductor to nozzle, psi per 100 ft at 100 gpm, above 0
    flow_gpm: flow of the solution, US gallons per minute, 0 or more
    length_ft: length of that hose, feet, 0 or more
    rise_ft: height of the nozzle above the eductor, feet, either sign
    nozzle_psi: nozzle pressure, psi, 0 or more

    Raises CalcError naming the input. Source: nozzle, friction and elevation together; common practice.
    """
    check_not_negative("nozzle_psi", nozzle_psi)
    return nozzle_psi + hose.friction_loss_psi(coefficient, flow_gpm, length_ft) + water.elevation_psi(rise_ft)


def longest_hose_ft(coefficient, flow_gpm, rise_ft, nozzle_psi, most_psi):
    """Hose from eductor to nozzle that keeps within a back pressure, in feet; 0 where none does.

    coefficient, flow_gpm, rise_ft, nozzle_psi: as for back_pressure_psi, the flow above 0
    most_psi: greatest back pressure of the eductor, psi, above 0

    Raises CalcError naming the input. Source: back_pressure_psi solved for the length.
    """
    check_positive("flow_gpm", flow_gpm)
    check_positive("most_psi", most_psi)
    check_number("rise_ft", rise_ft)
    left_psi = most_psi - back_pressure_psi(coefficient, flow_gpm, 0, rise_ft, nozzle_psi)
    return max(left_psi, 0) * 100 / hose.friction_loss_psi(coefficient, flow_gpm, 100)


def most_back_pressure_psi(inlet_psi, share_percent):
    """Greatest back pressure at which an eductor still draws, in psi.

    inlet_psi: pressure at its inlet, psi, above 0
    share_percent: what the maker allows, percent of the inlet pressure, 50 to 80

    Raises CalcError naming the input.
    Source: driver/operator handbook, chapter on foam equipment (65 to 70 % of the inlet pressure), from memory.
    """
    check_positive("inlet_psi", inlet_psi)
    check_within("share_percent", share_percent, 50, 80)
    return inlet_psi * share_percent / 100
