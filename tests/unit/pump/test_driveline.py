"""The driveline against hand-worked figures."""
import pytest

from calc.base.errors import CalcError

GEARS = [["1", 4.52], ["3", 11.19], ["4", 15.77]]  # of the speeds worked by hand below, 700 rpm


@pytest.mark.parametrize(("engine_rpm", "pump_ratio", "expected_rpm"), [(700, 2.3, 1610), (1500, 1.5, 2250), (0, 2.3, 0)])
def test_pump_speed(run, engine_rpm, pump_ratio, expected_rpm):
    """The pump turns with the engine, by its ratio."""
    assert run("pump.driveline", "pump_rpm", engine_rpm=engine_rpm, pump_ratio=pump_ratio) == pytest.approx(expected_rpm)


@pytest.mark.parametrize(
    ("engine_rpm", "gear_ratio", "axle_ratio", "tyre_rev", "expected_mph"),
    [
        # by hand: 700 x 60 / (1 x 5.38 x 495) = 42000 / 2663.1
        (700, 1, 5.38, 495, 42000 / 2663.1),
        # by hand: one turn a second of a wheel that turns 60 times a mile is 60 miles an hour, over 4 x 3
        (60, 4, 3, 60, 5),
        (0, 1, 5.38, 495, 0),
    ],
)
def test_speedometer(run, engine_rpm, gear_ratio, axle_ratio, tyre_rev, expected_mph):
    """The needle counts the driveshaft as if it drove the wheels."""
    mph = run("pump.driveline", "indicated_mph", engine_rpm=engine_rpm, gear_ratio=gear_ratio, axle_ratio=axle_ratio,
              tyre_rev_per_mile=tyre_rev)
    assert mph == pytest.approx(expected_mph, rel=1e-12)


@pytest.mark.parametrize(
    ("pressure_psi", "known_psi", "known_rpm", "expected_rpm"),
    [
        (200, 50, 700, 1400),  # by hand: four times the pressure is twice the speed
        (150, 50, 700, 1212.4356),  # by hand: 700 x sqrt(3)
        (0, 50, 700, 0),
    ],
)
def test_engine_speed_of_a_pressure(run, pressure_psi, known_psi, known_rpm, expected_rpm):
    """Pressure goes with the square of speed; a healthy pump's 50 psi at idle is common practice."""
    rpm = run("pump.driveline", "engine_rpm_for_pressure", pressure_psi=pressure_psi, known_psi=known_psi, known_rpm=known_rpm)
    assert rpm == pytest.approx(expected_rpm, rel=1e-7)


@pytest.mark.parametrize(
    ("shown_mph", "code", "gear"),
    [
        (0, "zero", None),
        (16, "pump_gear", "4"),
        (11, "other_gear", "3"),
        (13.2, "no_gear", None),  # 18 % over third, 16 % under fourth
        (4.5, "other_gear", "1"),
        (30, "no_gear", None),
    ],
)
def test_gear_of_a_reading(run, shown_mph, code, gear):
    """A reading speaks for the nearest gear within a tenth, or for none."""
    assert run("pump.driveline", "gear_of_speed", shown_mph=shown_mph, gears=GEARS, pump_gear="4") == {"code": code, "gear": gear}


@pytest.mark.parametrize(
    ("shown_psi", "told"),
    [(0, "none"), (5, "none"), (6, "far_below"), (30, "far_below"), (31, "below"), (45, "below"), (46, "as_expected"),
     (57, "as_expected"), (58, "above")],
)
def test_what_a_shortfall_means(run, shown_psi, told):
    """Fifty expected: a tenth is none, up to 0.6 far below, up to 0.9 below, from 1.15 above."""
    assert run("pump.driveline", "pressure_band", shown_psi=shown_psi, expected_psi=50) == told


@pytest.mark.parametrize(
    ("function", "good", "zero_allowed"),
    [
        ("pump_rpm", {"engine_rpm": 700, "pump_ratio": 2}, {"engine_rpm"}),
        ("indicated_mph", {"engine_rpm": 700, "gear_ratio": 1, "axle_ratio": 5, "tyre_rev_per_mile": 500}, {"engine_rpm"}),
        ("engine_rpm_for_pressure", {"pressure_psi": 100, "known_psi": 50, "known_rpm": 700}, {"pressure_psi"}),
        ("pressure_band", {"shown_psi": 40, "expected_psi": 50}, {"shown_psi"}),
    ],
)
def test_refusals(run, function, good, zero_allowed):
    """Every input is refused by its own name where it is no number, below zero, or zero where that cannot be."""
    for name in good:
        bad = [("700", "not_a_number"), (None, "not_a_number"), (-1, "negative" if name in zero_allowed else "not_positive")]
        if name not in zero_allowed:
            bad.append((0, "not_positive"))
        for value, code in bad:
            with pytest.raises(CalcError) as refusal:
                run("pump.driveline", function, **{**good, name: value})
            assert (refusal.value.field, refusal.value.code) == (name, code)


def test_too_many_gears(run):
    """Twelve gears are compared; a thirteenth is refused."""
    gears = [[str(place), 10 + place] for place in range(13)]
    assert run("pump.driveline", "gear_of_speed", shown_mph=10, gears=gears[:12], pump_gear="0")["code"] == "pump_gear"
    with pytest.raises(CalcError) as refusal:
        run("pump.driveline", "gear_of_speed", shown_mph=10, gears=gears, pump_gear="0")
    assert (refusal.value.field, refusal.value.code, refusal.value.facts) == ("gears", "too_many", {"most": 12})


def test_just_a_tenth_off_is_still_that_gear(run):
    """By hand: 90 for 100 is a tenth below; just past it is no gear."""
    for shown_mph, code in ((90.0001, "pump_gear"), (89.9999, "no_gear"), (109.9999, "pump_gear"), (110.0001, "no_gear")):
        assert run("pump.driveline", "gear_of_speed", shown_mph=shown_mph, gears=[["4", 100]], pump_gear="4")["code"] == code
