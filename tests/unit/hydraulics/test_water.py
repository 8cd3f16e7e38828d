"""Water: the pressure of its height, its boiling and its weight."""
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError

LB_PER_FT3_PER_KG_PER_M3 = 0.3048**3 / 0.45359237  # by the definitions of foot and pound


@pytest.mark.parametrize(
    ("rise_ft", "expected_psi"),
    [
        (100, 43.4),    # by hand: 0.434 x 100
        (-50, -21.7),   # downhill the hose gives back what it took
        (0, 0),         # level
    ],
)
def test_elevation(run, rise_ft, expected_psi):
    """A rise takes 0.434 psi a foot."""
    assert run("hydraulics.water", "elevation_psi", rise_ft=rise_ft) == pytest.approx(expected_psi, rel=1e-9)


@settings(deadline=None)
@given(rise_ft=st.floats(-3000, 3000))
def test_head_inverts_elevation(run, rise_ft):
    """The height that a pressure stands for is the height that makes it."""
    pressure_psi = run("hydraulics.water", "elevation_psi", rise_ft=rise_ft)
    assert run("hydraulics.water", "head_ft", pressure_psi=pressure_psi) == pytest.approx(rise_ft, rel=1e-9)


@pytest.mark.parametrize(
    ("water_f", "expected_psi", "within"),
    [
        # saturation pressure, customary steam tables printed to four figures, from memory
        (60, 0.2563, 1e-3),
        (70, 0.3632, 1e-3),
        (80, 0.5073, 1e-3),
        (100, 0.9503, 1e-3),
        (120, 1.695, 1e-3),
        (140, 2.892, 1e-3),
        # the docstring promises 0.1 % to 140 F only; the correlation was made for weather
        (180, 7.515, 2e-3),
        (212, 14.696, 2e-3),  # water boils at 212 F under one standard atmosphere: the old definition of the scale
    ],
)
def test_vapour_pressure(run, water_f, expected_psi, within):
    """Boiling pressure agrees with the steam tables."""
    assert run("hydraulics.water", "vapour_pressure_psi", water_f=water_f) == pytest.approx(expected_psi, rel=within)


KPA_PER_PSI = 0.45359237 * 9.80665 / 0.0254**2 / 1000  # by the definitions of pound, standard gravity and inch


@pytest.mark.parametrize(
    ("celsius", "expected_kpa"),
    [(20, 2.3383), (35, 5.6268), (50, 12.349), (75, 38.595), (100, 101.31)],  # a table of the formula's values, from memory
)
def test_vapour_pressure_is_the_named_formula(run, celsius, expected_kpa):
    """The formula is worked as it was published, to the five figures of a table of it."""
    told_psi = run("hydraulics.water", "vapour_pressure_psi", water_f=celsius * 1.8 + 32)
    assert told_psi * KPA_PER_PSI == pytest.approx(expected_kpa, rel=5e-5)


def test_densest_water(run):
    """Water is densest at 3.983 C, 39.1694 F, and then weighs 62.426 lb per cubic foot: 999.975 kg per cubic metre."""
    assert run("hydraulics.water", "density_lb_per_ft3", water_f=39.1694) == pytest.approx(62.426, rel=1e-7)
    assert 62.426 == pytest.approx(999.975 * LB_PER_FT3_PER_KG_PER_M3, rel=1e-5)
    for water_f in (38, 40.5):
        assert run("hydraulics.water", "density_lb_per_ft3", water_f=water_f) < 62.426


@pytest.mark.parametrize(("function", "field"), [("elevation_psi", "rise_ft"), ("head_ft", "pressure_psi")])
def test_refused_by_name(run, function, field):
    """What is no number is refused by the name it was given under."""
    with pytest.raises(CalcError) as refusal:
        run("hydraulics.water", function, **{field: "10"})
    assert (refusal.value.field, refusal.value.code) == (field, "not_a_number")


@pytest.mark.parametrize(
    ("water_f", "expected_kg_per_m3"),
    [
        # handbook densities of water at 0, 4, 20, 25, 40, 60, 80 and 100 C, from memory
        (32, 999.84),
        (39.2, 999.97),
        (68, 998.21),
        (77, 997.05),
        (104, 992.2),
        (140, 983.2),
        (176, 971.8),
        (212, 958.4),
    ],
)
def test_density(run, water_f, expected_kg_per_m3):
    """Weight agrees with handbook densities, within the four figures that the last of them carry."""
    expected_lb_per_ft3 = expected_kg_per_m3 * LB_PER_FT3_PER_KG_PER_M3
    density_lb_per_ft3 = run("hydraulics.water", "density_lb_per_ft3", water_f=water_f)
    assert density_lb_per_ft3 == pytest.approx(expected_lb_per_ft3, rel=1e-4)


@settings(deadline=None)
@given(water_f=st.floats(40, 211), warmer_f=st.floats(0.01, 1))
def test_warmer_water(run, water_f, warmer_f):
    """Above 40 F warmer water boils at a higher pressure and weighs less."""
    cold, warm = (
        [run("hydraulics.water", function, water_f=degrees) for function in ("vapour_pressure_psi", "density_lb_per_ft3")]
        for degrees in (water_f, water_f + warmer_f)
    )
    assert warm[0] > cold[0]
    assert warm[1] < cold[1]


@pytest.mark.parametrize("function", ["vapour_pressure_psi", "density_lb_per_ft3"])
@pytest.mark.parametrize("water_f", [31.9, 212.1, -40])
def test_refusal(run, function, water_f):
    """Ice and steam are refused; what is no number at all is tested in test_laws."""
    with pytest.raises(CalcError) as refusal:
        run("hydraulics.water", function, water_f=water_f)
    assert (refusal.value.field, refusal.value.code) == ("water_f", "out_of_range")
    assert (refusal.value.facts["least"], refusal.value.facts["most"]) == (32, 212)


@pytest.mark.parametrize(("altitude_ft", "fits"), [(-1500, True), (20000, True), (-1500.5, False), (20000.5, False)])
def test_how_high_the_air_is_known(run, altitude_ft, fits):
    """From below any road's lowest place to above its highest; beyond, nothing is said."""
    if fits:
        assert run("hydraulics.air", "pressure_psi", altitude_ft=altitude_ft) > 0
        return
    with pytest.raises(CalcError) as refusal:
        run("hydraulics.air", "pressure_psi", altitude_ft=altitude_ft)
    assert (refusal.value.field, refusal.value.code) == ("altitude_ft", "out_of_range")
