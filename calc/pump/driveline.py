"""The driveline in pump gear: pump speed, what the speedometer should show, and the engine speed of a pressure."""
import math

from calc.base.errors import CalcError, check_not_negative, check_positive

MINUTES_PER_HOUR = 60
SPEED_AGREES = 0.1  # a needle read by eye; neighbouring gears lie 25 % and more apart: common practice
# shown pressure as a share of the expected one, and what that says: common practice
PRESSURE_BANDS = ((0.1, "none"), (0.6, "far_below"), (0.9, "below"), (1.15, "as_expected"))
MOST_GEARS = 12


def pump_rpm(engine_rpm, pump_ratio):
    """Speed of the pump's shaft in pump gear, in rpm.

    engine_rpm: engine speed, rpm, 0 or more
    pump_ratio: turns of the pump to one of the engine in pump gear, above 0

    Raises CalcError naming the input. Source: gearing; the ratio stands on the pump's plate.
    """
    check_not_negative("engine_rpm", engine_rpm)
    check_positive("pump_ratio", pump_ratio)
    return engine_rpm * pump_ratio


def indicated_mph(engine_rpm, gear_ratio, axle_ratio, tyre_rev_per_mile):
    """What a speedometer that reads the driveline shows while the pump turns, in miles per hour.

    engine_rpm: engine speed, rpm, 0 or more
    gear_ratio: turns of the engine to one of the transmission's output, above 0; 1 in direct
    axle_ratio: turns of the driveshaft to one of the wheel, above 0
    tyre_rev_per_mile: turns of the wheel in a mile, above 0

    Locked converter; one that slips shows a little less. Raises CalcError naming the input.
    Source: gearing.
    """
    check_not_negative("engine_rpm", engine_rpm)
    check_positive("gear_ratio", gear_ratio)
    check_positive("axle_ratio", axle_ratio)
    check_positive("tyre_rev_per_mile", tyre_rev_per_mile)
    return engine_rpm * MINUTES_PER_HOUR / (gear_ratio * axle_ratio * tyre_rev_per_mile)


def engine_rpm_for_pressure(pressure_psi, known_psi, known_rpm):
    """Engine speed at which to expect a pressure, from one reading of the same pump, in rpm.

    pressure_psi: pressure that is asked about, psi, 0 or more
    known_psi: pressure of the reading, psi, above 0
    known_rpm: engine speed of the reading, rpm, above 0

    Both above the intake's pressure, with little water flowing. Raises CalcError naming the input.
    Source: affinity laws, from memory (pressure goes with the square of speed).
    """
    check_not_negative("pressure_psi", pressure_psi)
    check_positive("known_psi", known_psi)
    check_positive("known_rpm", known_rpm)
    return known_rpm * math.sqrt(pressure_psi / known_psi)


def gear_of_speed(shown_mph, gears, pump_gear):
    """Which gear a reading of the speedometer speaks for.

    shown_mph: what it shows, miles per hour, 0 or more
    gears: [[name, mph], ...], the speed of each gear at this engine speed, none to twelve
    pump_gear: name of the gear the pump runs in

    Returns `{"code", "gear"}`: "zero"; "pump_gear" or "other_gear" for the nearest within a tenth; "no_gear".
    Raises CalcError naming the input. Source: common practice.
    """
    check_not_negative("shown_mph", shown_mph)
    if len(gears) > MOST_GEARS:
        raise CalcError("gears", "too_many", most=MOST_GEARS)
    if shown_mph == 0:
        return {"code": "zero", "gear": None}
    nearest, least = None, SPEED_AGREES
    for name, mph in gears:
        check_positive("gears", mph)
        apart = abs(shown_mph / mph - 1)
        if apart <= least:
            nearest, least = name, apart
    if nearest is None:
        return {"code": "no_gear", "gear": None}
    return {"code": "pump_gear" if nearest == pump_gear else "other_gear", "gear": nearest}


def pressure_band(shown_psi, expected_psi):
    """What a pressure says beside the one expected at this engine speed.

    shown_psi: what the gauge shows, less the intake's, psi, 0 or more
    expected_psi: pressure to expect, psi, above 0

    Returns "none" (a tenth and less), "far_below" (up to 0.6), "below" (up to 0.9), "as_expected" or "above"
    (from 1.15). Raises CalcError naming the input. Source: common practice.
    """
    check_not_negative("shown_psi", shown_psi)
    check_positive("expected_psi", expected_psi)
    for most, band in PRESSURE_BANDS:
        if shown_psi <= most * expected_psi:
            return band
    return "above"
