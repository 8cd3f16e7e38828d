"""What a reading of a service test can be at all: past it the instrument has no mark or water is no liquid, so it was mistyped."""
from calc.hydraulics import air, water
from calc.pump import draft

BOUNDS = (  # name or ending: least and most in calc's unit
    ("air_f", -70, 140),  # coldest and hottest places people live in: common practice
    ("water_f", water.COLDEST_F, water.HOTTEST_F),  # water is liquid
    ("water_end_f", water.COLDEST_F, water.HOTTEST_F),
    ("barometer_inhg", 25, 32.5),  # lowest and highest ever read at sea level, 25.7 and 32.0: from memory
    ("altitude_ft", air.LOWEST_FT, air.HIGHEST_FT),  # as far as the standard atmosphere is taken here
    ("lift_ft", 0, 34),  # all the weight of the air lifts water 33.9 ft: physics
    ("suction_lines", 1, 4),
    ("pipe_in", 0.5, 12),  # past any pipe a panel's meter sits in: common practice
    ("foam_least", 0, 200000), ("foam_most", 0, 200000), ("foam_sample", 0, 200000),  # past any scale, in microsiemens too: common practice
    ("intake_psi", -14.7, 400),  # from a perfect vacuum, physics, to the end of a compound gauge: common practice
    ("pitot_psi", 0, 200),  # end of a pitot gauge's scale: common practice
    ("oil_psi", 0, 200),  # end of an engine's oil gauge: common practice
    ("inhg", 0, draft.MOST_VACUUM_INHG),  # a perfect vacuum
    ("psi", 0, 1000),  # end of the gauge of a high-pressure stage: common practice
    ("gpm", 0, 10000),  # past the greatest pump that is rated, 6,000: common practice
    ("rpm", 0, 15000),  # past any engine or stepped-up pump: common practice
    ("ft", 0, 1000),  # past any suction hose, and any water a strainer hangs in: common practice
    ("s", 0, 3600),  # an hour, for what is to take seconds: common practice
)
_BY_NAME = {name: (least, most) for name, least, most in BOUNDS}


def bounds_of(name):
    """Least and most that a reading can be, or None where it has no such bounds.

    name: of the reading, such as "pitot_psi" or "master.at_150.panel_psi"; its own bounds go before those of its ending

    Raises nothing.
    """
    last = name.split(".")[-1]
    return _BY_NAME.get(last) or _BY_NAME.get(last.split("_")[-1])
