"""The shuttle: what a number of tankers keeps up, and what holds it back."""
import math

from calc.base.errors import CalcError, check_not_negative, check_positive, check_within
from calc.supply import sources

MOST_TANKERS = 30
MOST_TANKS = 6  # portable tanks of one dump site; our own judgment of what a site has room for
# travel = 0.65 + 1.7 x miles: about 35 mph, with the start and the stop
PORTABLE_MARGIN_GAL = 500  # of a portable tank over the largest load that is dumped into it
SIPHON_GPM = 500  # through 6 in of suction hose
HALVINGS = 60
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


def mixed(kinds, road_minutes):
    """The flow that unlike tankers keep up, each kind with its own times, in turn at one fill site and one dump site.

    kinds: list of `{"tankers", "tank_gal", "fill_minutes", "dump_minutes"}`, each as for plan
    road_minutes: time on the road for one round trip, minutes, 0 or more

    Returns `{"flow_gpm", "wait_minutes", "held_by"}`: with more to do at a site than time there, every tanker waits alike until there is
    enough. Raises CalcError naming the input.
    Source: the sum of sources.shuttle_gpm; one at a time at each site, common practice.
    """
    check_not_negative("road_minutes", road_minutes)
    for kind in kinds:
        plan(kind["tankers"], kind["tank_gal"], road_minutes, kind["fill_minutes"], kind["dump_minutes"])  # refuses what it cannot use
    waits = {site: _wait_minutes(kinds, road_minutes, site + "_minutes") for site in ("fill", "dump")}
    wait_minutes = max(waits["fill"], waits["dump"])
    flow_gpm = 0
    for kind in kinds:
        cycle_minutes = road_minutes + kind["fill_minutes"] + kind["dump_minutes"] + wait_minutes
        flow_gpm += kind["tankers"] * sources.shuttle_gpm(kind["tank_gal"], cycle_minutes)
    held_by = "road" if wait_minutes < 1e-9 else "fill" if waits["fill"] >= waits["dump"] else "dump"
    return {"flow_gpm": flow_gpm, "wait_minutes": wait_minutes, "held_by": held_by}


def _wait_minutes(kinds, road_minutes, site):
    """How long each waits at a site until it is busy all the time and no more."""
    def busy(wait_minutes):
        return sum(kind["tankers"] * kind[site] / (road_minutes + kind["fill_minutes"] + kind["dump_minutes"] + wait_minutes) for kind in kinds)
    if busy(0) <= 1:
        return 0
    least, most = 0, sum(kind["tankers"] * kind[site] for kind in kinds)
    for _ in range(HALVINGS):
        middle = (least + most) / 2
        if busy(middle) > 1:
            least = middle
        else:
            most = middle
    return most


def portable_tanks(load_gal, portable_gal):
    """How many portable tanks take the largest load with its margin: a whole number.

    load_gal: largest load that is dumped, US gallons, above 0
    portable_gal: of one tank, US gallons, above 0; on a slope it holds less

    Raises CalcError naming the input. Source: load and 500 gallons more, NFPA 1142 practice, from memory.
    """
    check_positive("load_gal", load_gal)
    check_positive("portable_gal", portable_gal)
    return math.ceil((load_gal + PORTABLE_MARGIN_GAL) / portable_gal - 1e-9)


def siphons_for(flow_gpm):
    """How many jet siphons bring a flow from the other tanks to the pumper's: a whole number.

    flow_gpm: flow that is drawn, US gallons per minute, 0 or more

    Raises CalcError naming flow_gpm. Source: about 500 gpm each through 6 in suction hose, planning figure from memory.
    """
    check_not_negative("flow_gpm", flow_gpm)
    return math.ceil(flow_gpm / SIPHON_GPM - 1e-9)
