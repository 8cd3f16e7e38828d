"""A wildland hose layout: a trunk line that climbs, laterals that leave it by gated wyes, and where its next pump stands."""
import math

from calc.base.errors import CalcError, check_not_negative, check_number, check_positive
from calc.hydraulics import hose, water

FITTING_PSI = 5  # of each wye, tee or valve
FIELD_PSI_PER_FT = 0.5
UNLINED_TIMES = 2  # what unlined hose loses of what lined does, roughly
INTAKE_PSI = 20  # left at the next pump's intake
MOST_LATERALS = 20
LAST_BIT = 1e-9


def trunk_loss_psi(coefficient, length_ft, spacing_ft, laterals, lateral_gpm):
    """Pressure lost to friction in a trunk, in psi: each stretch carries all that leaves beyond it.

    coefficient: of the trunk, psi per 100 ft at 100 gpm, above 0
    length_ft: from the pump to the last lateral, feet, above 0
    spacing_ft: between laterals, feet, 0 or more; all of them within the length
    laterals: that flow, the last at the trunk's end: 1 to 20
    lateral_gpm: of each, US gallons per minute, 0 or more

    Raises CalcError naming the input. Source: NWCG basic course S-130, module 8 (progressive layouts); that each flows alike, near ones gated: common practice.
    """
    return sum(hose.friction_loss_psi(coefficient, flow_gpm, stretch_ft)
               for flow_gpm, stretch_ft in _stretches(length_ft, spacing_ft, laterals, lateral_gpm))


def unlined_coefficient(coefficient):
    """Coefficient of unlined hose, in psi per 100 ft at 100 gpm: roughly twice that of lined.

    coefficient: of lined hose of that size, above 0

    Rough. Raises CalcError naming coefficient. Source: wildland hydraulics teaching, from memory (about 50 for 1 1/2 in, where lined has 24).
    """
    check_positive("coefficient", coefficient)
    return UNLINED_TIMES * coefficient


def fittings_psi(fittings):
    """Pressure that the fittings in a line take, in psi.

    fittings: wyes, tees and valves that the water to the last nozzle passes, 0 or more

    Raises CalcError naming fittings. Source: NWCG, Firefighter Math 3.4 (5 psi each, named a simplification there).
    """
    check_not_negative("fittings", fittings)
    return FITTING_PSI * fittings


def field_elevation_psi(rise_ft):
    """Pressure that height takes by the field rule, in psi; below zero downhill.

    rise_ft: height of the nozzle above the pump, feet, either sign

    Raises CalcError naming rise_ft. Source: NWCG, Firefighter Math 3.4 (half a psi for each foot).
    """
    check_number("rise_ft", rise_ft)
    return FIELD_PSI_PER_FT * rise_ft


def pumps_for(needed_psi, each_psi):
    """How many pumps in series give a pressure: a whole number, 1 or more.

    needed_psi: pump pressure the layout needs, psi, any
    each_psi: most that one pump adds at this flow, psi, above 0

    Raises CalcError naming the input. Source: pressures in series add; pump practice.
    """
    check_number("needed_psi", needed_psi)
    check_positive("each_psi", each_psi)
    return max(math.ceil(needed_psi / each_psi - LAST_BIT), 1)


def next_pump_ft(trunk, pump_psi):
    """How far along its trunk a pump leaves 20 psi for the next one's intake, in feet; the whole trunk where it leaves more at its end.

    trunk: `coefficient`, `length_ft`, `spacing_ft`, `laterals`, `lateral_gpm` as for trunk_loss_psi, with `rise_ft` and `fittings`, both spread evenly over it
    pump_psi: of the pump before, psi, 0 or more

    Raises CalcError naming the input. Source: pump practice (10 to 20 psi at the next intake), the higher taken.
    """
    check_not_negative("pump_psi", pump_psi)
    even_psi_per_ft = (water.elevation_psi(trunk["rise_ft"]) + fittings_psi(trunk["fittings"])) / trunk["length_ft"]
    at_ft, left_psi = 0, pump_psi
    if left_psi <= INTAKE_PSI:
        return 0
    for flow_gpm, stretch_ft in _stretches(trunk["length_ft"], trunk["spacing_ft"], trunk["laterals"], trunk["lateral_gpm"]):
        psi_per_ft = hose.friction_loss_psi(trunk["coefficient"], flow_gpm, 1) + even_psi_per_ft
        end_psi = left_psi - psi_per_ft * stretch_ft
        if end_psi < INTAKE_PSI:
            return at_ft + (left_psi - INTAKE_PSI) / psi_per_ft
        at_ft, left_psi = at_ft + stretch_ft, end_psi
    return trunk["length_ft"]


def _stretches(length_ft, spacing_ft, laterals, lateral_gpm):
    """[flow_gpm, length_ft] of each stretch of a trunk, from the pump on."""
    check_positive("length_ft", length_ft)
    check_not_negative("spacing_ft", spacing_ft)
    check_not_negative("lateral_gpm", lateral_gpm)
    check_positive("laterals", laterals)
    if laterals > MOST_LATERALS:
        raise CalcError("laterals", "too_many", most=MOST_LATERALS)
    first_ft = length_ft - spacing_ft * (laterals - 1)
    if first_ft < -LAST_BIT * length_ft:
        raise CalcError("spacing_ft", "past_trunk")
    return [[lateral_gpm * laterals, max(first_ft, 0)]] + [[lateral_gpm * beyond, spacing_ft] for beyond in range(laterals - 1, 0, -1)]
