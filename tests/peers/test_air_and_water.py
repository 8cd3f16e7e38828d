"""Air and water against general-purpose libraries: the standard atmosphere and the steam tables."""
import math

import pytest

from tests import kept

GRAVITY = 9.80665
FT_PER_M = 1 / 0.3048
PA_PER_PSI = 6894.757293
CUBIC_METRES_PER_GALLON = 0.003785411784
LB_PER_FT3_PER_KG_PER_M3 = 0.3048**3 / 0.45359237


def _kelvin(water_f):
    return (water_f - 32) / 1.8 + 273.15


def _atmosphere_psi(altitude_ft):
    """The standard atmosphere of 1976, geometric height taken for geopotential."""
    from fluids.atmosphere import ATMOSPHERE_1976

    return ATMOSPHERE_1976(altitude_ft / FT_PER_M).P / PA_PER_PSI


def _boiling_psi(water_f):
    """The boiling pressure of the steam tables."""
    from iapws import IAPWS97

    return IAPWS97(T=_kelvin(water_f), x=0).P * 1e6 / PA_PER_PSI


def _density_lb_per_ft3(water_f):
    """The weight of water of the steam tables."""
    from iapws import IAPWS97

    return IAPWS97(T=_kelvin(water_f), P=0.101325).rho * LB_PER_FT3_PER_KG_PER_M3


def _perfect_outlet_gpm(pitot_psi):
    """What velocity and area say of a perfect 2 1/2 in outlet."""
    from fluids.core import head_from_P

    head_m = head_from_P(pitot_psi * PA_PER_PSI, 999.0)  # water at 60 F, in kg a cubic metre
    speed_m_per_s = math.sqrt(2 * GRAVITY * head_m)
    area_m2 = math.pi / 4 * (2.5 * 0.0254) ** 2
    return speed_m_per_s * area_m2 / CUBIC_METRES_PER_GALLON * 60


WATER_F = range(32, 141, 9)
# by quantity: points, what is allowed as a share, our answer, the library's
PEERS = {
    "atmosphere": (range(-1000, 20001, 1000), 1e-3, lambda run, x: run("hydraulics.air", "pressure_psi", altitude_ft=x), _atmosphere_psi),
    "boiling": (WATER_F, 1e-3, lambda run, x: run("hydraulics.water", "vapour_pressure_psi", water_f=x), _boiling_psi),
    "density": (WATER_F, 5e-4, lambda run, x: run("hydraulics.water", "density_lb_per_ft3", water_f=x), _density_lb_per_ft3),
    "outlet": (
        [4, 25, 64], 1e-3,
        lambda run, x: run("supply.hydrant", "outlets_flow_gpm", bore_in=2.5, pitot_psi=x, discharge_coefficient=1, outlets=1), _perfect_outlet_gpm,
    ),
}


def comparison(run, quantity):
    """How far our answers are from a library's: points, what is allowed, the worst deviation."""
    points, limit, ours, theirs = PEERS[quantity]
    worst = max(abs(ours(run, point) / theirs(point) - 1) for point in points)
    return {"points": len(points), "limit": limit, "worst": worst}


@pytest.mark.parametrize("quantity", PEERS)
def test_agrees(run, python, quantity):
    """Every answer agrees with the library's within what is allowed, as the site says."""
    pytest.importorskip("fluids")
    pytest.importorskip("iapws")
    found = comparison(run, quantity)
    assert found["worst"] < found["limit"]
    assert kept.is_fresh(quantity, python, found)
