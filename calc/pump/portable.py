"""Portable pumps by their curve: what one gives, what several give together, and where that meets a layout."""
import math

from calc.base.errors import CalcError, check_not_negative, check_number, check_positive

CLASSES = {"high": (300, 75), "light": (200, 70), "volume": (100, 200)}  # psi shut, gpm free: the low end of each class
STEPS = 60  # halvings: past the last bit of any flow


def class_points(name):
    """Three points of a class of pump, [[gpm, psi], ...]: shut, at half its free flow, and free.

    name: "high" (pressure), "light" (weight) or "volume"

    Rough: a pump's plate or its own curve comes first. Raises CalcError naming name.
    Source: wildland pump literature and the square law between its ends, both from memory.
    """
    if name not in CLASSES:
        raise CalcError("name", "unknown")
    shut_psi, free_gpm = CLASSES[name]
    return [[0, shut_psi], [free_gpm / 2, shut_psi * 0.75], [free_gpm, 0]]


def pressure_psi(points, flow_gpm):
    """What one pump gives at a flow, psi, by the power curve through three of its points.

    points: [[0, psi], [gpm, psi], [gpm, psi]], each flow above the one before, each pressure below it, none below 0
    flow_gpm: through the pump, US gallons per minute, 0 or more; past the last point the curve is not known

    Raises CalcError naming points or flow_gpm. Source: EPANET 2.2 users manual, pump curves: psi = shut - B x gpm^C.
    """
    check_not_negative("flow_gpm", flow_gpm)
    (zero_gpm, shut_psi), (middle_gpm, middle_psi), (end_gpm, end_psi) = points
    if not (zero_gpm == 0 < middle_gpm < end_gpm and shut_psi > middle_psi > end_psi >= 0):
        raise CalcError("points", "not_falling")
    if flow_gpm > end_gpm * (1 + 1e-9):
        raise CalcError("flow_gpm", "past_curve", most_gpm=end_gpm)
    power = math.log((shut_psi - end_psi) / (shut_psi - middle_psi)) / math.log(end_gpm / middle_gpm)
    return shut_psi - (shut_psi - middle_psi) * (flow_gpm / middle_gpm) ** power


def together_psi(points, pumps, way, flow_gpm):
    """What equal pumps give together at a flow, psi.

    points: of one, see pressure_psi
    pumps: how many, 1 or more
    way: "series" (the same flow, pressures add) or "parallel" (the same pressure, flows add)
    flow_gpm: through all of them, US gallons per minute, 0 or more

    Raises CalcError naming the input. Source: pump practice.
    """
    check_positive("pumps", pumps)
    if way == "series":
        return pumps * pressure_psi(points, flow_gpm)
    if way == "parallel":
        return pressure_psi(points, flow_gpm / pumps)
    raise CalcError("way", "unknown")


def full_flow_gpm(points, pumps, way, fixed_psi, square_psi):
    """The flow at full throttle, gpm: where what the pumps give is what a layout takes.

    points, pumps, way: see together_psi
    fixed_psi: what the layout takes at any flow (height, fittings), psi, either sign
    square_psi: what it takes besides at 1 gpm, growing with the square of the flow, psi, above 0

    Returns 0 where the pumps give no more than fixed_psi shut; where they still give more than it takes at the end of their curve, that end.
    Raises CalcError naming the input. Source: a pump runs where its curve crosses the system's; hydraulics teaching.
    """
    check_number("fixed_psi", fixed_psi)
    check_positive("square_psi", square_psi)
    low_gpm, high_gpm = 0, end_gpm(points, pumps, way)
    for _ in range(STEPS):
        middle_gpm = (low_gpm + high_gpm) / 2
        if together_psi(points, pumps, way, middle_gpm) > fixed_psi + square_psi * middle_gpm ** 2:
            low_gpm = middle_gpm
        else:
            high_gpm = middle_gpm
    return high_gpm if low_gpm else 0


def end_gpm(points, pumps, way):
    """The flow at the end of the curve of equal pumps together, gpm.

    points, pumps, way: see together_psi

    Raises nothing. Source: pump practice.
    """
    return points[2][0] * (pumps if way == "parallel" else 1)
