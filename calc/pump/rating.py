"""The pump: what its rating asks of it, the power in the water, and what speed does."""
from calc.base.errors import check_not_negative, check_positive, check_within

# percent of rated capacity, net pressure: driver/operator study cards, handbook chapters 9 and 16
RATING = ((100, 150), (70, 200), (50, 250))
GPM_PSI_PER_HP = 1714


def test_points(rated_gpm):
    """The points a rated pump must reach: [(flow_gpm, net_psi), ...], the greatest flow first.

    rated_gpm: rated capacity, US gallons per minute, 50 to 6,000

    Raises CalcError naming rated_gpm.
    Source: driver/operator study cards and a pump maker's manual (100 % at 150, 70 % at 200, 50 % at 250 psi).
    """
    check_within("rated_gpm", rated_gpm, 50, 6000)
    return [(rated_gpm * percent / 100, net_psi) for percent, net_psi in RATING]


def rated_pressure_psi(rated_gpm, flow_gpm):
    """Net pressure that the rating promises at a flow, in psi; 0 past rated capacity.

    rated_gpm: rated capacity, US gallons per minute, 50 to 6,000
    flow_gpm: flow, US gallons per minute, 0 or more

    Straight between the rating points, level below half capacity: no more than the rating says.
    Raises CalcError naming the input. Source: test_points; straight lines between them, common practice.
    """
    check_not_negative("flow_gpm", flow_gpm)
    points = test_points(rated_gpm)
    if flow_gpm > points[0][0]:
        return 0
    if flow_gpm <= points[-1][0]:
        return points[-1][1]
    (more_gpm, less_psi), (less_gpm, more_psi) = next(pair for pair in zip(points, points[1:]) if flow_gpm >= pair[1][0])
    share = (more_gpm - flow_gpm) / (more_gpm - less_gpm)
    return less_psi + share * (more_psi - less_psi)


def within_rating(rated_gpm, flow_gpm, net_psi):
    """Whether a rated pump must be able to give a flow at a net pressure, and how much is left.

    rated_gpm: rated capacity, US gallons per minute, 50 to 6,000
    flow_gpm: flow asked, US gallons per minute, 0 or more
    net_psi: net pump pressure asked, psi, 0 or more (see calc.pump.draft for what it is from a hydrant or from draft)

    Returns `within`, `limit` (None, "flow" past rated capacity, or "pressure"), `rated_psi` (promised at this flow, 0
    past capacity), `margin_psi` (what is left to it, below 0 what is lacking), and `extrapolated`: the flow is below the
    least tested, where 250 psi is all that is promised. What a pump can do beyond its rating is not said here.
    Raises CalcError naming the input. Source: rated_pressure_psi.
    """
    check_not_negative("net_psi", net_psi)
    rated_psi = rated_pressure_psi(rated_gpm, flow_gpm)
    limit = "flow" if flow_gpm > rated_gpm else "pressure" if net_psi > rated_psi else None
    return {
        "within": limit is None,
        "limit": limit,
        "rated_psi": rated_psi,
        "margin_psi": rated_psi - net_psi,
        "extrapolated": flow_gpm < test_points(rated_gpm)[-1][0],
    }


def rating_curve(rated_gpm):
    """The rating as a line to draw, least flow first: [(flow_gpm, net_psi), ...], level from no flow to the least tested.

    rated_gpm: rated capacity, US gallons per minute, 50 to 6,000

    Raises CalcError naming rated_gpm. Source: rated_pressure_psi.
    """
    return [(0, test_points(rated_gpm)[-1][1])] + list(reversed(test_points(rated_gpm)))


def water_power_hp(flow_gpm, net_psi):
    """Power that goes into the water, in horsepower.

    flow_gpm: flow, US gallons per minute, 0 or more
    net_psi: net pump pressure, psi, 0 or more

    Raises CalcError naming the input. Source: pump formula sheets (Q P / 1714).
    """
    check_not_negative("flow_gpm", flow_gpm)
    check_not_negative("net_psi", net_psi)
    return flow_gpm * net_psi / GPM_PSI_PER_HP


def pressure_at_speed_psi(pressure_psi, from_rpm, to_rpm):
    """Pressure of the same pump at another speed, in psi.

    pressure_psi: pressure at from_rpm, psi, 0 or more
    from_rpm, to_rpm: speeds, rpm, above 0

    An estimate for flows that follow the speed. Raises CalcError naming the input.
    Source: affinity laws, from memory.
    """
    check_not_negative("pressure_psi", pressure_psi)
    ratio = _ratio(from_rpm, to_rpm)
    return pressure_psi * ratio * ratio


def flow_at_speed_gpm(flow_gpm, from_rpm, to_rpm):
    """Flow of the same pump at another speed, in US gallons per minute.

    flow_gpm: flow at from_rpm, US gallons per minute, 0 or more
    from_rpm, to_rpm: speeds, rpm, above 0

    Raises CalcError naming the input. Source: affinity laws, from memory.
    """
    check_not_negative("flow_gpm", flow_gpm)
    return flow_gpm * _ratio(from_rpm, to_rpm)


def _ratio(from_rpm, to_rpm):
    check_positive("from_rpm", from_rpm)
    check_positive("to_rpm", to_rpm)
    return to_rpm / from_rpm
