"""Air and water against general-purpose libraries: the standard atmosphere and the steam tables."""
import math

import pytest

from calc import air, hydrant, water

GRAVITY = 9.80665
FT_PER_M = 1 / 0.3048
PA_PER_PSI = 6894.757293
CUBIC_METRES_PER_GALLON = 0.003785411784
LB_PER_FT3_PER_KG_PER_M3 = 0.3048**3 / 0.45359237


def kelvin(water_f):
    return (water_f - 32) / 1.8 + 273.15


@pytest.mark.parametrize("altitude_ft", range(-1000, 20001, 1000))
def test_atmosphere(altitude_ft):
    """The standard atmosphere agrees within 0.1 %, geometric height taken for geopotential."""
    atmosphere = pytest.importorskip("fluids.atmosphere").ATMOSPHERE_1976(altitude_ft / FT_PER_M)
    assert air.pressure_psi(altitude_ft) == pytest.approx(atmosphere.P / PA_PER_PSI, rel=1e-3)


@pytest.mark.parametrize("water_f", range(33, 141, 9))
def test_vapour_pressure(water_f):
    """The boiling pressure agrees with the steam tables within 0.1 %."""
    saturated = pytest.importorskip("iapws").IAPWS97(T=kelvin(water_f), x=0)
    assert water.vapour_pressure_psi(water_f) == pytest.approx(saturated.P * 1e6 / PA_PER_PSI, rel=1e-3)


@pytest.mark.parametrize("water_f", range(33, 141, 9))
def test_density(water_f):
    """The weight agrees with the steam tables within 0.05 %."""
    liquid = pytest.importorskip("iapws").IAPWS97(T=kelvin(water_f), P=0.101325)
    assert water.density_lb_per_ft3(water_f) == pytest.approx(liquid.rho * LB_PER_FT3_PER_KG_PER_M3, rel=5e-4)


@pytest.mark.parametrize("pitot_psi", [4, 25, 64])
def test_orifice(pitot_psi):
    """A perfect outlet passes what velocity and area say: the trade's 29.84 within 0.1 %."""
    head_m = pytest.importorskip("fluids.core").head_from_P(pitot_psi * PA_PER_PSI, 999.0)  # water at 60 F, in kg a cubic metre
    speed_m_per_s = math.sqrt(2 * GRAVITY * head_m)
    area_m2 = math.pi / 4 * (2.5 * 0.0254) ** 2
    gpm = speed_m_per_s * area_m2 / CUBIC_METRES_PER_GALLON * 60
    assert hydrant.outlets_flow_gpm(2.5, pitot_psi, 1, 1) == pytest.approx(gpm, rel=1e-3)
