"""The air: how hard it presses at a height above the sea."""
from calc.base.errors import check_within

SEA_LEVEL_PSI = 14.696
LOWEST_FT, HIGHEST_FT = -1500, 20000
# Standard atmosphere below 36,089 ft: p = p0 (1 - h / 145442)^5.25588
SCALE_FT = 145442.16
POWER = 5.25588


def pressure_psi(altitude_ft):
    """Pressure of the standard atmosphere, absolute, in psi.

    altitude_ft: height above the sea, feet, -1,500 to 20,000

    Weather moves it by a few per cent. Raises CalcError naming altitude_ft.
    Source: International Standard Atmosphere (1976), lowest layer, from memory.
    """
    check_within("altitude_ft", altitude_ft, LOWEST_FT, HIGHEST_FT)
    return SEA_LEVEL_PSI * (1 - altitude_ft / SCALE_FT) ** POWER
