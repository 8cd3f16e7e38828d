"""The pressure surge of shutting a nozzle, as an order of magnitude."""
from calc.base.errors import check_positive
from calc.hydraulics import hose, water

# speed of a pressure wave in charged lined hose, slow and fast, feet per second: jackets give, so it is far below the
# 4,800 of a rigid pipe; worked from hose that swells 5 to 0.3 percent in girth at 150 psi, both from memory
WAVE_FT_PER_S = (300, 1300)
GRAVITY_FT_PER_S2 = 32.174
WATER_F = 60


def rise(flow_gpm, bore_in, length_ft, shutting_s):
    """How far the pressure at a nozzle jumps when it is shut, between a soft hose and a stiff one.

    flow_gpm: flow that is stopped, US gallons per minute, above 0
    bore_in: inside diameter of the hose, inches, above 0
    length_ft: hose behind the nozzle to the pump or to a large manifold, feet, above 0
    shutting_s: time in which the nozzle shuts, seconds, above 0

    Returns `least_psi` and `most_psi` above the pressure while flowing, and `slowest_s`: shut in no less than this, the
    surge falls below its greatest in any such hose (the time of the wave there and back). Of a full hose whose water is
    all stopped, with no give in pump or other lines; worth its first figure, no more.
    Raises CalcError naming the input. Source: Joukowsky's rule (density x wave speed x change of speed) for a fast
    shutting, lessened by the wave's time over the shutting's for a slow one (Michaud); from memory.
    """
    check_positive("flow_gpm", flow_gpm)
    check_positive("length_ft", length_ft)
    check_positive("shutting_s", shutting_s)
    velocity_ft_per_s = hose.velocity_ft_per_s(flow_gpm, bore_in)
    least_psi, most_psi = [_rise_psi(velocity_ft_per_s, wave, length_ft, shutting_s) for wave in WAVE_FT_PER_S]
    return {
        "least_psi": least_psi,
        "most_psi": most_psi,
        "slowest_s": 2 * length_ft / WAVE_FT_PER_S[0],
    }


def _rise_psi(velocity_ft_per_s, wave_ft_per_s, length_ft, shutting_s):
    there_and_back_s = 2 * length_ft / wave_ft_per_s
    stopped = min(1, there_and_back_s / shutting_s)
    slugs_per_ft3 = water.density_lb_per_ft3(WATER_F) / GRAVITY_FT_PER_S2
    return slugs_per_ft3 * wave_ft_per_s * velocity_ft_per_s * stopped / 144
