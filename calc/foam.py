"""Foam: how long the concentrate lasts."""
from calc.errors import check_not_negative, check_positive, check_within


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
