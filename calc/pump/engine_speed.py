"""What the engine will turn: an estimate from the speeds recorded at this rig's own pump test.

A test is a list of points, `{"flow_gpm", "net_psi", "engine_rpm"}`, two to twelve, of one pump in one gear and stage. By
the affinity laws pressure over speed squared depends on flow over speed alone; that curve is drawn straight between
the points, and level at less flow for the speed than was tested, where a real pump gives as much or a little more.
"""
import math

from calc.base.errors import CalcError, check_not_negative, check_positive
from calc.pump import rating

MOST_POINTS = 12
SLOWEST_SHARE = 0.5  # of the slowest speed tested; slower than that the affinity laws no longer hold well enough
ALIKE = 1e-3  # points nearer than this in flow over speed say nothing of the curve between them


def at_rating(rated_gpm, speeds_rpm):
    """The points of a service test from the engine speeds recorded at each.

    rated_gpm: rated capacity, US gallons per minute, 50 to 6,000
    speeds_rpm: engine speeds at the points of rating.test_points, rpm, above 0, in their order; None where not recorded

    Returns the test as the module says, without the points not recorded. Raises CalcError naming the input.
    Source: rating.test_points.
    """
    points = rating.test_points(rated_gpm)
    if not isinstance(speeds_rpm, (list, tuple)) or len(speeds_rpm) != len(points):
        raise CalcError("speeds_rpm", "not_one_each", most=len(points))
    test = []
    for (flow_gpm, net_psi), engine_rpm in zip(points, speeds_rpm):
        if engine_rpm is not None:
            check_positive("speeds_rpm", engine_rpm)
            test.append({"flow_gpm": flow_gpm, "net_psi": net_psi, "engine_rpm": engine_rpm})
    return test


def estimated_rpm(test, flow_gpm, net_psi):
    """The engine speed at which this pump gives a flow at a net pressure.

    test: as the module says
    flow_gpm: flow, US gallons per minute, 0 or more
    net_psi: net pump pressure, psi, above 0

    Returns `engine_rpm`, an estimate for the gear and stage of the test and a pump as it was then, and `basis`:
    "between_points", or "below_tested_flow" (the true speed is as low or a little lower). Raises CalcError naming the input:
    flow_gpm "beyond_test" where the pump would have to give more for its speed than was tested, net_psi "beyond_test"
    where the speed would be below half the slowest tested or above the fastest.
    Source: affinity laws, from memory; straight lines between test points, common practice.
    """
    check_not_negative("flow_gpm", flow_gpm)
    check_positive("net_psi", net_psi)
    curve, slowest_rpm, fastest_rpm = _curve(test)
    least_ratio, level, _ = curve[0]
    engine_rpm, basis = math.sqrt(net_psi / level), "below_tested_flow"
    if flow_gpm > least_ratio * engine_rpm * (1 - 1e-12):
        engine_rpm, basis = _rpm_between(curve, flow_gpm, net_psi), "between_points"
    if not slowest_rpm <= engine_rpm <= fastest_rpm * (1 + 1e-9):
        raise CalcError("net_psi", "beyond_test", engine_rpm=engine_rpm, least=slowest_rpm, most=fastest_rpm)
    return {"engine_rpm": engine_rpm, "basis": basis}


def _curve(test):
    """The test as [(flow over speed, pressure over speed squared, slope to the next)], least flow first; its speeds."""
    if not isinstance(test, (list, tuple)) or len(test) < 2:
        raise CalcError("test", "too_few", least=2)
    if len(test) > MOST_POINTS:
        raise CalcError("test", "too_many", most=MOST_POINTS)
    points, speeds = [], []
    for point in test:
        for field in ("flow_gpm", "net_psi", "engine_rpm"):
            check_positive("test", point.get(field) if isinstance(point, dict) else None)
        engine_rpm = point["engine_rpm"]
        points.append((point["flow_gpm"] / engine_rpm, point["net_psi"] / engine_rpm / engine_rpm))
        speeds.append(engine_rpm)
    points.sort()
    curve = []
    for (ratio, height), (next_ratio, next_height) in zip(points, points[1:]):
        if next_ratio - ratio < ALIKE * next_ratio:
            raise CalcError("test", "points_alike")
        slope = (next_height - height) / (next_ratio - ratio)
        if slope >= 0:
            raise CalcError("test", "pressure_rises_with_flow")
        curve.append((ratio, height, slope))
    curve.append(points[-1] + (None,))
    return curve, SLOWEST_SHARE * min(speeds), max(speeds)


def _rpm_between(curve, flow_gpm, net_psi):
    """The speed at which a straight piece of the curve meets a flow and pressure: p = start n^2 + slope Q n."""
    for (ratio, height, slope), (next_ratio, next_height, _) in zip(curve, curve[1:]):
        at_next_rpm = flow_gpm / next_ratio
        if net_psi >= next_height * at_next_rpm * at_next_rpm * (1 - 1e-12):
            start = height - slope * ratio
            linear = slope * flow_gpm
            return (math.sqrt(linear * linear + 4 * start * net_psi) - linear) / (2 * start)
    raise CalcError("flow_gpm", "beyond_test", most=next_ratio * math.sqrt(net_psi / next_height))
