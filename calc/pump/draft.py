"""Drafting: how high water can be lifted, and what the pump then works against."""
from calc.base.errors import CalcError, check_not_negative, check_number, check_within
from calc.hydraulics import air, water

FT_PER_PSI = 2.3  # the rule of the trade for draft
FT_PER_INHG = 1.13
MOST_VACUUM_INHG = 30  # the whole weight of the air: 29.92 at the sea in the standard atmosphere (US, 1976)
USUAL_WATER_F = 60
# the conditions that a rating holds for: altitude as a published certificate page has it, water temperature from memory
RATED_ALTITUDE_FT, RATED_WATER_F = 2000, 90
PRACTICAL_SHARE = 2 / 3
TABLE_HOSE_FT = 20  # of suction hose, that the table of its loss is for
# lift in feet, share of rated capacity
LIFT_SHARES = ((0, 1), (10, 1), (15, 0.7), (20, 0.6))
# rated capacity in gpm up to which, size in inches and number of its suction hoses
SUCTIONS = ((500, 4, 1), (750, 4.5, 1), (1000, 5, 1), (1500, 6, 1), (2000, 6, 2))
DEPENDABLE_LIFT_FT = 14.7  # driver/operator study cards, handbook chapter 11


def max_lift_ft(altitude_ft, water_f):
    """Greatest height to which the air can push water of this temperature, in feet: a perfect vacuum, no flow.

    altitude_ft: height above the sea, feet, -1,500 to 20,000
    water_f: water temperature, degrees F, 32 to 212

    No pump reaches it, see practical_lift_ft. Raises CalcError naming the input.
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

    rows: the table, [{"size_in", "gpm", "loss_20ft_ft", "add_10_ft"}]
    size_in: size of the suction hose, inches, one of the table's
    flow_gpm: flow through one hose, US gallons per minute, 0 or more
    length_ft: length of hose, feet, 10 or more

    The table is for 20 ft of hose with its strainer; add_10_ft is added for each 10 ft more and taken off for each 10 ft
    less. Rows with "first_10ft_ft" are those of tests of before 28 November 2026, read as on their day: for 10 ft. Scales the
    nearest row of that size with the square of the flow. Raises CalcError naming the input.
    Source: NFPA 1901/1911 annex table, from memory (two recollections); square law.
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
    loss_ft, of_ft = (nearest["first_10ft_ft"], 10) if "first_10ft_ft" in nearest else (nearest["loss_20ft_ft"], TABLE_HOSE_FT)
    return share * share * (loss_ft + nearest["add_10_ft"] * (length_ft - of_ft) / 10)


def practical_lift_ft(altitude_ft, water_f):
    """Most lift that is practical at this height and with this water, in feet.

    altitude_ft, water_f: as for max_lift_ft

    Raises CalcError naming the input. Source: NWCG, Firefighter Math, 3.5 Drafting Guidelines: two thirds of what the air
    could lift, 22.5 of 33.9 ft.
    """
    return max_lift_ft(altitude_ft, water_f) * PRACTICAL_SHARE


def counted_lift_ft(lift_ft, altitude_ft, water_f):
    """The lift with what goes beyond the rating conditions counted as lift, in feet; never less than the lift itself.

    lift_ft: height of the pump above the water, feet, 0 or more
    altitude_ft, water_f: as for max_lift_ft

    A pump is rated at 10 ft of lift, up to 2,000 ft and up to 90 F: neither is counted again, and less of one is no
    credit for more of the other. Raises CalcError naming the input.
    Source: max_lift_ft at 2,000 ft and 90 F less max_lift_ft at what is beyond them; 90 F from memory. A pump maker's page
    counts lost lift likewise: 1.1 ft per 1,000 ft above 2,000; 1.1 ft at 90 F, 1.7 at 100 F.
    """
    check_not_negative("lift_ft", lift_ft)
    max_lift_ft(altitude_ft, water_f)  # refuses what is out of range on the side that does not count too
    beyond_ft = max_lift_ft(max(altitude_ft, RATED_ALTITUDE_FT), max(water_f, RATED_WATER_F))
    return lift_ft + max_lift_ft(RATED_ALTITUDE_FT, RATED_WATER_F) - beyond_ft


def rated_share(lift_ft):
    """Share of rated capacity that is left at a lift; a pure number.

    lift_ft: lift, feet, 0 to 20

    All of it to 10 ft, where pumps are rated; straight to seven tenths at 15 ft and to six tenths at 20 ft, past which
    no figure was found. Raises CalcError naming lift_ft.
    Source: driver/operator study cards, handbook chapter 11 (70 % at 15 ft, 60 % at 20 ft); straight lines between
    them, common practice.
    """
    check_within("lift_ft", lift_ft, 0, LIFT_SHARES[-1][0])
    (from_ft, from_share), (to_ft, to_share) = next(pair for pair in zip(LIFT_SHARES, LIFT_SHARES[1:]) if lift_ft <= pair[1][0])
    return from_share + (to_share - from_share) * (lift_ft - from_ft) / (to_ft - from_ft)


def vacuum_inhg(head_ft):
    """Vacuum that a gauge at the pump shows for this height of water, in inches of mercury.

    head_ft: lift and suction loss together, feet, 0 or more

    Raises CalcError naming head_ft. Source: driver/operator study cards (1.13 ft per inHg).
    """
    check_not_negative("head_ft", head_ft)
    return head_ft / FT_PER_INHG


def suction_size(rated_gpm):
    """Size and number of the suction hoses that go with a rating, or None past the largest known.

    rated_gpm: rated capacity, US gallons per minute, above 0

    Returns `{"size_in", "hoses"}`. Raises CalcError naming rated_gpm. Source: NFPA 1901 suction table, from memory.
    """
    check_within("rated_gpm", rated_gpm, 1, 10000)
    for most_gpm, size_in, hoses in SUCTIONS:
        if rated_gpm <= most_gpm:
            return {"size_in": size_in, "hoses": hoses}
    return None
