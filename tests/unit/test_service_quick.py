"""The quick check after a repair: the rig against its own baseline."""
import pytest

from calc.errors import CalcError

QUICK = {"tolerance_percent": 5}
ACCURACY = {"discharge_psi": 2, "speed_rpm": 10}
BASELINE = [{"engine_rpm": 1000, "discharge_psi": 60}, {"engine_rpm": 1500, "discharge_psi": 150}]


def compared(run, readings, baseline=BASELINE):
    return run("service_quick", "compare", baseline=baseline, readings=readings, quick=QUICK, accuracy=ACCURACY)


@pytest.mark.parametrize(
    ("rpm", "psi", "status"),
    [
        # constructed example K020: 150 psi at 1,500 rpm is 181.5 at 1,650; 5 % is 172.425 to 190.575
        (1650, 181.5, "as_baseline"), (1650, 172.5, "as_baseline"), (1650, 172.4, "below"), (1650, 190.5, "as_baseline"),
        (1650, 190.6, "above"),
        # the reading nearest in speed is the one compared with: 60 x 1.1^2 = 72.6 at 1,100
        (1100, 72.6, "as_baseline"), (1100, 60, "below"),
        (1650, None, "not_proven"), (None, 150, "not_proven"),
    ],
)
def test_compare(run, rpm, psi, status):
    """Pressure goes with the square of speed; a blank proves nothing."""
    told = compared(run, [{"engine_rpm": rpm, "discharge_psi": psi}])
    assert told["status"] == told["steps"][0]["status"] == status
    assert bool(told["enter"]) == (status in ("below", "above"))  # and so each leads into the diagnosis


def test_no_baseline(run):
    """Without a baseline nothing is as it was, and without a reading neither."""
    assert compared(run, [{"engine_rpm": 1500, "discharge_psi": 150}], [])["status"] == "not_proven"
    assert compared(run, [])["status"] == "not_proven"


def test_one_low_step_outweighs(run):
    """One step below outweighs the others, blank or sound."""
    readings = [{"engine_rpm": 1500, "discharge_psi": 150}, {"engine_rpm": 1000, "discharge_psi": 40}, {"engine_rpm": 1500, "discharge_psi": None}]
    assert compared(run, readings)["status"] == "below"


def test_band(run):
    """By hand at 1,500 rpm, 150 psi: gauge 2 psi twice, speed 2 x 150 x 10 / 1500 = 2 psi twice: 2 sqrt(16 / 3) = 4.619."""
    step = compared(run, [{"engine_rpm": 1500, "discharge_psi": 143}])["steps"][0]
    assert step["band_psi"] == pytest.approx(4.619, abs=0.001)
    assert step["is_close"] and step["percent"] == pytest.approx(-4.667, abs=0.001)


@pytest.mark.parametrize(
    ("reading", "field", "code"),
    [({"engine_rpm": 0, "discharge_psi": 5}, "engine_rpm", "not_positive"), ({"engine_rpm": 1500, "discharge_psi": -5}, "discharge_psi", "out_of_range")],
)
def test_refused(run, reading, field, code):
    """A reading that cannot be is refused by name and step."""
    with pytest.raises(CalcError) as refused:
        compared(run, [reading])
    assert (refused.value.field, refused.value.code, refused.value.facts["step"]) == (field, code, 0)
