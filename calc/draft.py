"""Drafting: how high water can be lifted, and what the pump then works against."""
from calc import air, water
from calc.errors import CalcError, check_not_negative, check_number, check_within

FT_PER_PSI = 2.3  # the rule of the trade for draft
FT_PER_INHG = 1.13
MOST_VACUUM_INHG = 30


def max_lift_ft(altitude_ft, water_f):
    """Greatest height to which the air can push water of this temperature, in feet: a perfect vacuum, no flow.

    altitude_ft: height above the sea, feet, -1,500 to 20,000
    water_f: water temperature, degrees F, 32 to 212

    No pump reaches it: about two thirds is practical. Raises CalcError naming the input.
    Source: standard atmosphere less vapour pressure, over the weight of the water.
    """
    pushed_psi = air.pressure_psi(altitude_ft) - water.vapour_pressure_psi(water_f)
    inches_per_foot_squared = 144
    return max(pushed_psi, 0) * inches_per_foot_squared / water.density_lb_per_ft3(water_f)


def net_pump_pressure_psi(discharge_psi, lift_ft, intake_loss_ft):
    """Net pump pressure from draft, in psi.

    discharge_psi: pump discharge gauge, psi, 0 or more
    lift_ft: height of the pump above the water, feet, 0 or more
    intake_loss_ft: friction of suction hose and strainer, feet of water, 0 or more

    Raises CalcError naming the input. Source: driver/operator study cards (PDP + (lift + loss) / 2.3).
    """
    check_not_negative("discharge_psi", discharge_psi)
    check_not_negative("lift_ft", lift_ft)
    check_not_negative("intake_loss_ft", intake_loss_ft)
    return discharge_psi + (lift_ft + intake_loss_ft) / FT_PER_PSI


def net_pump_pressure_from_intake_psi(discharge_psi, intake_psi):
    """Net pump pressure from a hydrant or another pump, in psi.

    discharge_psi: pump discharge gauge, psi, 0 or more
    intake_psi: pump intake gauge while flowing, psi, either sign

    Raises CalcError naming the input. Source: driver/operator study cards (PDP - intake).
    """
    check_not_negative("discharge_psi", discharge_psi)
    check_number("intake_psi", intake_psi)
    return discharge_psi - intake_psi


def lift_from_vacuum_ft(vacuum_inhg):
    """Height that a vacuum gauge reading stands for, lift and suction loss together, in feet.

    vacuum_inhg: reading, inches of mercury, 0 to 30

    Raises CalcError naming vacuum_inhg. Source: driver/operator study cards (1.13 ft per inHg).
    """
    check_within("vacuum_inhg", vacuum_inhg, 0, MOST_VACUUM_INHG)
    return FT_PER_INHG * vacuum_inhg


def suction_loss_ft(rows, size_in, flow_gpm, length_ft):
    """Loss of suction hose and strainer, in feet of water.

    rows: the table, [{"size_in", "gpm", "first_10ft_ft", "add_10_ft"}]
    size_in: size of the suction hose, inches, one of the table's
    flow_gpm: flow through one hose, US gallons per minute, 0 or more
    length_ft: length of hose, feet, 10 or more

    Scales the nearest row of that size with the square of the flow. Raises CalcError naming the input.
    Source: NFPA 1901/1911 annex table, from memory; square law.
    """
    check_not_negative("flow_gpm", flow_gpm)
    check_within("length_ft", length_ft, 10, 200)
    of_size = [row for row in rows if row["size_in"] == size_in]
    if not of_size:
        raise CalcError("size_in", "unknown")
    nearest = of_size[0]
    for row in of_size:
        if abs(row["gpm"] - flow_gpm) < abs(nearest["gpm"] - flow_gpm):
            nearest = row
    share = flow_gpm / nearest["gpm"]
    return share * share * (nearest["first_10ft_ft"] + nearest["add_10_ft"] * (length_ft - 10) / 10)
