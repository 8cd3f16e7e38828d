"""Hose: what friction takes, what a test of it gives, how fast the water runs."""
import math

from calc.base.errors import CalcError, check_not_negative, check_positive

CUBIC_INCHES_PER_GALLON = 231  # the definition of the US gallon
MOST_PARALLEL = 12
WORKING_SHARE = 0.9  # of the service-test pressure


def friction_loss_psi(coefficient, flow_gpm, length_ft):
    """Pressure lost to friction in one hose line, in psi.

    coefficient: loss in psi per 100 ft at 100 gpm, for that hose, above 0
    flow_gpm: flow through the line, US gallons per minute, 0 or more
    length_ft: length of the line, feet, 0 or more

    Valid for water. Raises CalcError naming the input that is out of range.
    Source: driver/operator handbook study cards, theoretical pressure calculations (C Q^2 L).
    """
    check_positive("coefficient", coefficient)
    check_not_negative("flow_gpm", flow_gpm)
    check_not_negative("length_ft", length_ft)
    hundreds_gpm = flow_gpm / 100
    return coefficient * hundreds_gpm * hundreds_gpm * (length_ft / 100)


def working_pressure_psi(test_psi):
    """The most that hose is worked at, in psi: nine tenths of its service-test pressure.

    test_psi: service-test pressure of the hose, psi, above 0

    A service test is of hose that lies shut off with everyone clear of it. Raises CalcError naming test_psi.
    Source: NFPA 1962 (2018) as quoted in the trade (a relief for large hose at no more than 90 percent of the service-test
    pressure); a flow-test article prints 185 psi for 5 in hose tested at 200, and 275 for attack hose tested at 300.
    """
    check_positive("test_psi", test_psi)
    return WORKING_SHARE * test_psi


def flow_for_loss_gpm(coefficient, loss_psi, length_ft):
    """Flow that loses this much pressure to friction, in US gallons per minute.

    coefficient: loss in psi per 100 ft at 100 gpm, above 0
    loss_psi: pressure lost along the line, psi, 0 or more
    length_ft: length of the line, feet, above 0

    Valid for water. Raises CalcError naming the input that is out of range.
    Source: friction_loss_psi solved for the flow.
    """
    check_positive("coefficient", coefficient)
    check_not_negative("loss_psi", loss_psi)
    check_positive("length_ft", length_ft)
    return 100 * math.sqrt(loss_psi / (coefficient * (length_ft / 100)))


def coefficient_from_test(loss_psi, flow_gpm, length_ft):
    """Coefficient of a hose measured with two gauges and a known flow, in psi per 100 ft at 100 gpm.

    loss_psi: difference of the gauges on level ground, psi, above 0
    flow_gpm: flow during the reading, US gallons per minute, above 0
    length_ft: hose between the gauges, feet, above 0

    Valid for water. Raises CalcError naming the input that is out of range.
    Source: friction_loss_psi solved for the coefficient.
    """
    check_positive("loss_psi", loss_psi)
    check_positive("flow_gpm", flow_gpm)
    check_positive("length_ft", length_ft)
    hundreds_gpm = flow_gpm / 100
    return loss_psi / (hundreds_gpm * hundreds_gpm * (length_ft / 100))


def parallel_coefficient(coefficients):
    """Coefficient of several hoses of equal length side by side, for the total flow.

    coefficients: one per hose, psi per 100 ft at 100 gpm, above 0; one to twelve of them

    Valid where both ends are joined. Raises CalcError naming coefficients.
    Source: square-law hoses at equal loss, C = 1 / (sum of 1/sqrt(C))^2; agrees with the siamese
    coefficients of a fire department's hydraulics handout (two 2 1/2 in: 0.5; three: 0.22).
    """
    if not isinstance(coefficients, (list, tuple)) or not coefficients:
        raise CalcError("coefficients", "missing")
    if len(coefficients) > MOST_PARALLEL:
        raise CalcError("coefficients", "too_many", most=MOST_PARALLEL)
    ease = 0
    for coefficient in coefficients:
        check_positive("coefficients", coefficient)
        ease += 1 / math.sqrt(coefficient)
    return 1 / (ease * ease)


def velocity_ft_per_s(flow_gpm, bore_in):
    """Speed of the water in the hose, in feet per second.

    flow_gpm: flow through this hose, US gallons per minute, 0 or more
    bore_in: inside diameter, inches, above 0

    Raises CalcError naming the input that is out of range. Source: flow divided by area.
    """
    check_not_negative("flow_gpm", flow_gpm)
    cubic_inches_per_second = flow_gpm * CUBIC_INCHES_PER_GALLON / 60
    return cubic_inches_per_second / _area_in2(bore_in) / 12


def water_in_hose_gal(bore_in, length_ft):
    """Water that fills the hose, in US gallons.

    bore_in: inside diameter, inches, above 0
    length_ft: length, feet, 0 or more

    Raises CalcError naming the input that is out of range. Source: area times length.
    """
    check_not_negative("length_ft", length_ft)
    return _area_in2(bore_in) * length_ft * 12 / CUBIC_INCHES_PER_GALLON


def _area_in2(bore_in):
    check_positive("bore_in", bore_in)
    return math.pi * bore_in * bore_in / 4
