"""Where the water comes from: hydrant, relay, tank, shuttle."""
from calc.base.errors import CalcError, check_not_negative, check_number, check_positive, check_within
from calc.hydraulics import hose, water

USABLE_SHARE = 0.8  # of a tank on board, where nobody says otherwise; what the tank page opens on
HYDRANT_POWER = 0.54
# drop of pressure in percent of static, up to which this many more lines like the one flowing can be had
PERCENTAGE_ROWS = ((10, 3), (15, 2), (25, 1))
SHUTTLE_LOST_SHARE = 0.1
LEAST_RESIDUAL_PSI = 20  # to keep at an intake or in the main, and the residual that hydrants are classed at
MOST_LINES = 20
GAL_PER_FT3 = 7.4805
FLOAT_SHARE = 0.8  # a float shows the fast surface
MOST_POND_GAL = 1e10  # past a lake of a mile by a mile, 40 ft deep
STRAINER_COVER_FT = 2  # of water above the strainer that cannot be used: it whirls


def hydrant_flow_gpm(static_psi, residual_psi, test_flow_gpm, at_psi):
    """Flow that a hydrant can give at a residual pressure, from one flow test, in US gallons per minute.

    static_psi: pressure with nothing flowing, psi, above residual_psi
    residual_psi: pressure during the test, psi, 0 or more
    test_flow_gpm: flow of the test, US gallons per minute, above 0
    at_psi: residual pressure asked about, psi, 0 to static_psi

    Raises CalcError naming the input. Source: NFPA 291 (0.54-power formula), from memory.
    """
    check_flow_test(static_psi, residual_psi, test_flow_gpm)
    check_within("at_psi", at_psi, 0, static_psi)
    return test_flow_gpm * ((static_psi - at_psi) / (static_psi - residual_psi)) ** HYDRANT_POWER


def additional_lines(static_psi, residual_psi):
    """More lines like the one flowing that the hydrant can carry, by three rules of the trade.

    static_psi: pressure with nothing flowing, psi, above residual_psi
    residual_psi: pressure with one line flowing, psi, 0 or more

    Returns `{"percentage", "first_digit", "squaring", "drop_percent", "least", "most"}`; the rules are rough, and
    where least and most differ they disagree.
    Raises CalcError naming the input.
    Source: percentage and first digit, driver/operator study cards; squaring the lines, from memory.
    """
    _check_test(static_psi, residual_psi)
    drop_psi = static_psi - residual_psi
    drop_percent = 100 * drop_psi / static_psi
    percentage = 0
    for most_percent, lines in PERCENTAGE_ROWS:
        if drop_percent <= most_percent + 1e-9:
            percentage = lines
            break
    digit_psi = static_psi // 10 if static_psi >= 10 else static_psi
    first_digit = 0
    for times in (1, 2, 3):
        if drop_psi <= times * digit_psi:
            first_digit = 4 - times
            break
    squaring = 0
    while squaring < MOST_LINES and static_psi - drop_psi * (squaring + 2) * (squaring + 2) >= LEAST_RESIDUAL_PSI:
        squaring += 1
    estimates = (percentage, first_digit, squaring)
    return {"percentage": percentage, "first_digit": first_digit, "squaring": squaring, "drop_percent": drop_percent,
            "least": min(estimates), "most": max(estimates)}


def check_flow_test(static_psi, residual_psi, test_flow_gpm):
    """Refuse a flow test that tells nothing: no flow, or no drop of pressure.

    static_psi: pressure with nothing flowing, psi, above residual_psi
    residual_psi: pressure during the test, psi, 0 or more
    test_flow_gpm: flow of the test, US gallons per minute, above 0

    Raises CalcError naming the input.
    """
    _check_test(static_psi, residual_psi)
    check_positive("test_flow_gpm", test_flow_gpm)


def _check_test(static_psi, residual_psi):
    check_positive("static_psi", static_psi)
    check_not_negative("residual_psi", residual_psi)
    if not residual_psi < static_psi:
        raise CalcError("residual_psi", "not_below_static", static_psi=static_psi)


def tank_minutes(tank_gal, flow_gpm):
    """Time that the water in a tank lasts, in minutes.

    tank_gal: water that can be used, of a pond too, US gallons, 0 or more
    flow_gpm: flow, US gallons per minute, above 0

    Raises CalcError naming the input. Source: common practice.
    """
    check_not_negative("tank_gal", tank_gal, MOST_POND_GAL)
    check_positive("flow_gpm", flow_gpm)
    return tank_gal / flow_gpm


def relay_spacing_ft(coefficient, flow_gpm, discharge_psi, residual_psi, rise_ft):
    """Hose that one pumper of a relay can feed to the next, in feet; 0 where the rise alone takes the pressure.

    coefficient: of the supply hose, psi per 100 ft at 100 gpm, above 0
    flow_gpm: flow through the relay, US gallons per minute, above 0
    discharge_psi: greatest pressure the hose and pump may see, psi, above 0
    residual_psi: pressure wanted at the next intake, psi, 0 or more
    rise_ft: height of the next pumper above this one, feet, either sign

    Raises CalcError naming the input. Source: driver/operator handbook, relay table, from memory.
    """
    check_positive("coefficient", coefficient)
    check_positive("flow_gpm", flow_gpm)
    check_positive("discharge_psi", discharge_psi)
    check_not_negative("residual_psi", residual_psi)
    check_number("rise_ft", rise_ft)
    left_psi = discharge_psi - residual_psi - water.elevation_psi(rise_ft)
    return max(left_psi, 0) * 100 / hose.friction_loss_psi(coefficient, flow_gpm, 100)


def shuttle_gpm(tank_gal, cycle_minutes):
    """Flow that one tanker keeps up, a tenth of its load left behind, in US gallons per minute.

    tank_gal: load, US gallons, 0 or more
    cycle_minutes: travel, fill and dump together, minutes, above 0

    Raises CalcError naming the input. Source: a fire trade magazine's water shuttle drill.
    """
    check_not_negative("tank_gal", tank_gal)
    check_positive("cycle_minutes", cycle_minutes)
    return tank_gal * (1 - SHUTTLE_LOST_SHARE) / cycle_minutes


def pond_gal(length_ft, width_ft, above_strainer_ft):
    """Water of a pond that can be used, in US gallons; 0 where the strainer is not covered.

    length_ft, width_ft: of its surface, feet, above 0
    above_strainer_ft: water above the strainer, feet, 0 or more; the last 2 ft whirl and are not counted

    Raises CalcError naming the input. Source: geometry; 2 ft as a state's surveying and rating bureau counts drafting sites.
    """
    check_positive("length_ft", length_ft)
    check_positive("width_ft", width_ft)
    check_not_negative("above_strainer_ft", above_strainer_ft)
    return length_ft * width_ft * max(above_strainer_ft - STRAINER_COVER_FT, 0) * GAL_PER_FT3


def stream_gpm(width_ft, depth_ft, float_ft, float_s):
    """Flow of a stream by a float, in US gallons per minute.

    width_ft: of the stream, feet, above 0
    depth_ft: its mean depth, feet, above 0
    float_ft, float_s: how far a float went and in how many seconds, above 0

    Raises CalcError naming the input. Source: width times depth times speed; 0.8 of the surface's speed, from memory.
    """
    check_positive("width_ft", width_ft)
    check_positive("depth_ft", depth_ft)
    check_positive("float_ft", float_ft)
    check_positive("float_s", float_s)
    return width_ft * depth_ft * float_ft / float_s * GAL_PER_FT3 * 60 * FLOAT_SHARE
