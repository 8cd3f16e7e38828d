"""Water itself: weight, vapour pressure, and the pressure of its height."""
import math

from calc.base.errors import check_number, check_within

PSI_PER_FT = 0.434  # pressure of one foot of fresh water
COLDEST_F = 32
HOTTEST_F = 212


def elevation_psi(rise_ft):
    """Pressure that a rise of the hose takes, in psi; below zero when the hose runs downhill.

    rise_ft: height of the outlet above the inlet, feet, either sign

    Valid for fresh water. Raises CalcError naming rise_ft.
    Source: Fire Hydraulic Calculations, community-college course notes, chapter 1 (0.434 psi per ft).
    """
    check_number("rise_ft", rise_ft)
    return PSI_PER_FT * rise_ft


def head_ft(pressure_psi):
    """Height of water that stands for a pressure, in feet.

    pressure_psi: gauge pressure, psi, either sign

    Valid for fresh water. Raises CalcError naming pressure_psi.
    Source: the inverse of elevation_psi (2.304 ft per psi in driver/operator study cards).
    """
    check_number("pressure_psi", pressure_psi)
    return pressure_psi / PSI_PER_FT


def vapour_pressure_psi(water_f):
    """Absolute pressure at which water of this temperature boils, in psi.

    water_f: water temperature, degrees F, 32 to 212

    Within 0.1 % of the steam tables to 140 F. Raises CalcError naming water_f.
    Source: A. L. Buck, J. Applied Meteorology 20 (1981) and 1996 revision, over water, from memory.
    """
    check_within("water_f", water_f, COLDEST_F, HOTTEST_F)
    celsius = _celsius(water_f)
    at_freezing_psi = 0.0886486
    return at_freezing_psi * math.exp((18.678 - celsius / 234.5) * celsius / (257.14 + celsius))


def density_lb_per_ft3(water_f):
    """Weight of a cubic foot of water at this temperature, in pounds.

    water_f: water temperature, degrees F, 32 to 212

    Fresh water at atmospheric pressure, within 0.05 %. Raises CalcError naming water_f.
    Source: G. S. Kell, J. Chemical and Engineering Data 20 (1975), as a ratio to the densest water,
    from memory; the densest water, at 39 F, weighs 62.426 lb per cubic foot.
    """
    check_within("water_f", water_f, COLDEST_F, HOTTEST_F)
    densest_lb_per_ft3 = 62.426
    return densest_lb_per_ft3 * _kell(_celsius(water_f)) / _kell(_DENSEST_CELSIUS)


_DENSEST_CELSIUS = 3.983


def _celsius(water_f):
    """The scale in which the two correlations were published."""
    return (water_f - 32) / 1.8


def _kell(celsius):
    series = (999.83952, 16.945176, -7.9870401e-3, -46.170461e-6, 105.56302e-9, -280.54253e-12)
    total = 0
    for factor in reversed(series):
        total = total * celsius + factor
    return total / (1 + 16.879850e-3 * celsius)
