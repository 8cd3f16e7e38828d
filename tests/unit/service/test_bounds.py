"""What a reading can be at all: the ends of instruments and of nature, each from outside calc."""
import pytest

# name of a reading, least and most: coldest and hottest places people live in, water between freezing and boiling, the weight of
# the air at sea level, a gauge's scale, past the greatest pump that is rated; common practice but where physics says it
BOUNDS = [
    ("air_f", -70, 140), ("water_f", 32, 212), ("water_end_f", 32, 212), ("barometer_inhg", 25, 32.5), ("lift_ft", 0, 34), ("suction_lines", 1, 4),
    ("main.pipe_in", 0.5, 12), ("foam_least", 0, 200000), ("foam_most", 0, 200000), ("foam_sample", 0, 200000), ("intake_psi", -14.7, 400), ("pitot_psi", 0, 200),
    ("oil_psi", 0, 200), ("vacuum_reached_inhg", 0, 30), ("master.at_150.panel_psi", 0, 1000), ("discharge_psi", 0, 1000), ("tank_flow_gpm", 0, 10000),
    ("engine_rpm", 0, 15000), ("depth_ft", 0, 1000), ("prime_s", 0, 3600), ("at_90.closing_s", 0, 3600),
]


@pytest.mark.parametrize(("name", "least", "most"), BOUNDS)
def test_bounds(run, name, least, most):
    assert list(run("service.bounds", "bounds_of", name=name)) == pytest.approx([least, most])


@pytest.mark.parametrize("name", ["weather", "suction_size_in", "shift_proved", ""])
def test_what_has_none(run, name):
    """A name that is no reading's, or whose ending says no unit with an end, has no bounds."""
    assert run("service.bounds", "bounds_of", name=name) is None


def test_height_reaches_from_the_lowest_land_to_the_highest_town(run):
    """1,412 ft below the sea at the lowest shore, some 16,700 ft at the highest town: both from memory; no rig pumps at 30,000."""
    least, most = run("service.bounds", "bounds_of", name="altitude_ft")
    assert -2000 < least < -1412 and 16700 < most < 30000
