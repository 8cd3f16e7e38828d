"""The shuttle: what a number of tankers keeps up, and what holds it back."""
import math

from calc.base.errors import CalcError, check_not_negative, check_positive, check_within
from calc.supply import sources

MOST_TANKERS = 30
# travel = 0.65 + 1.7 x miles: about 35 mph, with the start and the stop
TRAVEL_MINUTES, MINUTES_PER_MILE = 0.65, 1.7


def travel_minutes(distance_miles, is_round_trip):
    """Time on the road for one round trip, in minutes.

    distance_miles: distance, miles, 0 or more
    is_round_trip: whether it was measured there and back; otherwise one way, and is driven twice

    Each way takes 0.65 + 1.7 x its miles. Raises CalcError naming distance_miles.
    Source: the insurance rating method, each way, from memory; a fire trade magazine's water shuttle drill has the same
    figures, and its example fits the miles of the round trip counted once.
    """
    check_not_negative("distance_miles", distance_miles)
    one_way_miles = distance_miles / 2 if is_round_trip else distance_miles
    return 2 * (TRAVEL_MINUTES + MINUTES_PER_MILE * one_way_miles)


def plan(tankers, tank_gal, road_minutes, fill_minutes, dump_minutes):
    """The flow that like tankers keep up, in turn at one fill site and one dump site.

    tankers: how many, whole, 1 to 30
    tank_gal: load of each, US gallons, above 0; a tenth is left behind
    road_minutes: time on the road for one round trip, minutes, 0 or more
    fill_minutes: time at the fill site with all handling, minutes, above 0
    dump_minutes: time at the dump site with all handling, minutes, above 0

    Returns `{"flow_gpm", "each_gpm", "cycle_minutes", "wait_minutes", "held_by", "useful"}`: held_by is "road" while
    no tanker waits, else the site that has them waiting, "fill" or "dump"; useful is the number past which another
    tanker only waits. Raises CalcError naming the input.
    Source: a fire trade magazine's water shuttle drill (nine tenths of the load over the cycle); one at a time
    at each site, common practice.
    """
    check_within("tankers", tankers, 1, MOST_TANKERS)
    check_positive("tank_gal", tank_gal)
    check_not_negative("road_minutes", road_minutes)
    check_positive("fill_minutes", fill_minutes)
    check_positive("dump_minutes", dump_minutes)
    if tankers != int(tankers):
        raise CalcError("tankers", "not_whole")
    alone_minutes = road_minutes + fill_minutes + dump_minutes
    slowest_minutes = max(fill_minutes, dump_minutes)
    cycle_minutes = max(alone_minutes, tankers * slowest_minutes)
    waits = cycle_minutes > alone_minutes + 1e-9
    site = "fill" if fill_minutes >= dump_minutes else "dump"
    return {
        "flow_gpm": tankers * sources.shuttle_gpm(tank_gal, cycle_minutes),
        "each_gpm": sources.shuttle_gpm(tank_gal, cycle_minutes),
        "cycle_minutes": cycle_minutes,
        "wait_minutes": cycle_minutes - alone_minutes,
        "held_by": site if waits else "road",
        "useful": math.ceil(alone_minutes / slowest_minutes - 1e-9),
    }


def tankers_for(wanted_gpm, tank_gal, road_minutes, fill_minutes, dump_minutes):
    """How many like tankers keep up a flow; None where the sites do not allow it.

    wanted_gpm: flow wanted at the fire, US gallons per minute, above 0
    tank_gal, road_minutes, fill_minutes, dump_minutes: as for plan

    Raises CalcError naming the input. Source: plan, tried with one tanker more each time.
    """
    check_positive("wanted_gpm", wanted_gpm)
    for tankers in range(1, MOST_TANKERS + 1):
        shuttle = plan(tankers, tank_gal, road_minutes, fill_minutes, dump_minutes)
        if shuttle["flow_gpm"] >= wanted_gpm - 1e-9:
            return tankers
        if shuttle["held_by"] != "road":
            return None
    return None
