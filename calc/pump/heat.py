"""Heat: what the pump's power does to water that is shut in, and to water that goes round through the tank."""
from calc.base.errors import check_positive

BTU_PER_MIN_PER_HP = 42.4
LB_PER_GAL = 8.34  # with a specific heat of 1 Btu per lb and deg F


def shutoff_rise_f_per_min(power_hp, water_gal):
    """How fast water that is shut in warms, in deg F per minute.

    power_hp: power that goes into the water, horsepower, above 0
    water_gal: water that is shut in, US gallons, above 0

    All the power goes into the water and none into the metal, so that a real pump is a little slower.
    Raises CalcError naming the input.
    Source: a pump handbook page on minimum continuous flow (42.4 x power / weight); 42.4 Btu/min per hp from memory.
    """
    check_positive("power_hp", power_hp)
    check_positive("water_gal", water_gal)
    return power_hp * BTU_PER_MIN_PER_HP / (water_gal * LB_PER_GAL)


def circulation_gpm(power_hp, rise_f):
    """Flow that carries the power away at a rise from inlet to outlet, in US gallons per minute.

    power_hp: power that goes into the water, horsepower, above 0
    rise_f: how much warmer the water may leave than it came, deg F, above 0

    Raises CalcError naming the input.
    Source: a pump handbook page on minimum continuous flow (power / 2.95 for a rise of 15 deg F).
    """
    check_positive("power_hp", power_hp)
    check_positive("rise_f", rise_f)
    return power_hp * BTU_PER_MIN_PER_HP / (rise_f * LB_PER_GAL)


def tank_rise_f_per_min(power_hp, tank_gal, pump_gal):
    """How fast a tank warms while the pump only sends its water round, in deg F per minute.

    power_hp: power that goes into the water, horsepower, above 0
    tank_gal: water in the tank, US gallons, above 0
    pump_gal: water in pump and piping, US gallons, above 0

    Nothing is lost to the air. Raises CalcError naming the input.
    Source: shutoff_rise_f_per_min over all the water that goes round.
    """
    check_positive("tank_gal", tank_gal)
    check_positive("pump_gal", pump_gal)
    return shutoff_rise_f_per_min(power_hp, tank_gal + pump_gal)
