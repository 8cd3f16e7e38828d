"""Fire flow by the quick rules of the trade: what a fire may ask for. They size up; none says what puts a fire out."""
import math

from calc.base.errors import check_not_negative, check_positive, check_within

AREA_DIVISOR, EXPOSURE_SHARE = 3, 0.25
AREA_MOST_GPM, AREA_MOST_PERCENT = 1000, 50  # past which the rule by area is not to be trusted
VOLUME_DIVISOR, VOLUME_MINUTES = 100, 0.5
HAZARDS, CONSTRUCTIONS = (3, 7), (0.5, 1.5)  # from the worst to the least hazard; from resistive to all wood
STORE_LEAST_GAL, STORE_LEAST_EXPOSED_GAL, STORE_EXPOSED = 2000, 3000, 1.5
DELIVERY = ((20000, 1000), (10000, 750), (2500, 500), (0, 250))  # gallons stored from which, gpm delivered
LAST_BIT = 1e-9


def by_area_gpm(length_ft, width_ft, floors, involved_percent, exposures):
    """Flow by the area rule, in US gallons per minute.

    length_ft, width_ft: of one floor, feet, above 0
    floors: that burn, 1 or more
    involved_percent: of them, percent, 1 to 100
    exposures: sides that are threatened, 0 or more, a quarter of the fire's own flow for each

    Made for an attack inside, up to half involved, and not to be trusted past 1,000 gpm. Raises CalcError naming the input.
    Source: National Fire Academy quick formula, as "Simple Ways to Determine Your Fire Flow Requirements" (Firefighter Nation) prints it.
    """
    check_positive("length_ft", length_ft)
    check_positive("width_ft", width_ft)
    check_within("floors", floors, 1, 100)
    check_within("involved_percent", involved_percent, 1, 100)
    check_not_negative("exposures", exposures)
    return length_ft * width_ft / AREA_DIVISOR * floors * involved_percent / 100 * (1 + EXPOSURE_SHARE * exposures)


def by_volume_gpm(volume_ft3):
    """Flow by the volume rule, in US gallons per minute, for about half a minute.

    volume_ft3: of the largest space that burns, cubic feet, above 0

    One closed room, its water turned to steam; tests of the 1950s, with the furniture of then. Raises CalcError naming volume_ft3.
    Source: Iowa rate of flow, as "How much water do we need?" (an Iowa fire service magazine) prints it; half a minute from memory.
    """
    check_positive("volume_ft3", volume_ft3)
    return volume_ft3 / VOLUME_DIVISOR


def store_gal(volume_ft3, hazard, construction, is_exposed):
    """Water to have on hand for a building without hydrants, in US gallons.

    volume_ft3: of the building, cubic feet, above 0
    hazard: occupancy hazard number, 3 (the worst) to 7
    construction: construction number, 0.5 to 1.5
    is_exposed: whether another building is near

    Raises CalcError naming the input. Source: NFPA 1142, from memory.
    """
    check_positive("volume_ft3", volume_ft3)
    check_within("hazard", hazard, HAZARDS[0], HAZARDS[1])
    check_within("construction", construction, CONSTRUCTIONS[0], CONSTRUCTIONS[1])
    gallons = volume_ft3 / hazard * construction
    return max(gallons * STORE_EXPOSED, STORE_LEAST_EXPOSED_GAL) if is_exposed else max(gallons, STORE_LEAST_GAL)


def delivery_gpm(stored_gal):
    """Flow that such a store is to be delivered at, in US gallons per minute.

    stored_gal: as store_gal, 0 or more

    Raises CalcError naming stored_gal. Source: NFPA 1142 delivery table, from memory.
    """
    check_not_negative("stored_gal", stored_gal)
    return next(gpm for least_gal, gpm in DELIVERY if stored_gal >= least_gal)


def lines_for(flow_gpm, line_gpm):
    """How many hose lines carry a flow: a whole number.

    flow_gpm: US gallons per minute, 0 or more
    line_gpm: of one line, US gallons per minute, above 0

    Raises CalcError naming the input. Source: flow over the flow of a line, rounded up; common practice.
    """
    check_not_negative("flow_gpm", flow_gpm)
    check_positive("line_gpm", line_gpm)
    return math.ceil(flow_gpm / line_gpm - LAST_BIT)
