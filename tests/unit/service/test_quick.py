"""The quick check after a repair: the rig against its own baseline."""
import pytest

from calc.base.errors import CalcError
from site_src.content import data

QUICK = {"tolerance_percent": 5}
ACCURACY = {"discharge_psi": 2, "speed_rpm": 10}
BASELINE = [{"engine_rpm": 1000, "discharge_psi": 60}, {"engine_rpm": 1500, "discharge_psi": 150}]


def compared(run, readings, baseline=BASELINE):
    return run("service.quick", "compare", baseline=baseline, readings=readings, quick=QUICK, accuracy=ACCURACY)


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


def test_a_whole_step(run):
    """What a step tells: its own readings, what the nearest of the baseline gives there, and no more than is known."""
    read = {"engine_rpm": 1500, "discharge_psi": 150}
    [step] = compared(run, [read])["steps"]
    assert step == {**read, "expected_psi": 150, "band_psi": pytest.approx(4.619, abs=0.001), "percent": 0, "is_close": False,
                    "status": "as_baseline"}
    blank = {"expected_psi": None, "band_psi": None, "percent": None, "is_close": False, "status": "not_proven"}
    assert compared(run, [{"engine_rpm": None, "discharge_psi": 150}])["steps"] == [{"engine_rpm": None, "discharge_psi": 150, **blank}]
    assert compared(run, [{"engine_rpm": 1500, "discharge_psi": None}])["steps"] == [
        {"engine_rpm": 1500, "discharge_psi": None, **blank, "expected_psi": 150}]


def test_of_two_as_near_the_first_is_compared_with(run):
    """1,250 rpm lies half way: by the first, 60 x 1.25 squared = 93.75; by the other it would be 104.17."""
    [step] = compared(run, [{"engine_rpm": 1250, "discharge_psi": None}])["steps"]
    assert step["expected_psi"] == 93.75


@pytest.mark.parametrize(("psi", "status"), [(142.5, "as_baseline"), (157.5, "as_baseline"), (142.49, "below"), (157.51, "above")])
def test_the_tolerance_itself_is_within(run, psi, status):
    """Five per cent of 150 psi are 7.5."""
    assert compared(run, [{"engine_rpm": 1500, "discharge_psi": psi}])["status"] == status


@pytest.mark.parametrize(("status", "psi", "sign"), [("below", 100, "pressure_short"), ("above", 200, "pressure_over"), ("as_baseline", 150, None)])
def test_what_is_off_leads_to_a_sign_of_the_diagnosis(run, status, psi, sign):
    told = compared(run, [{"engine_rpm": 1500, "discharge_psi": psi}])
    assert (told["status"], told["enter"]) == (status, sign)
    assert sign is None or sign in {row["id"] for row in data.load("faults")["sign"]}


@pytest.mark.parametrize("psi", [0, 1000])
def test_pressures_at_their_bounds_are_read(run, psi):
    assert compared(run, [{"engine_rpm": 1500, "discharge_psi": psi}])["steps"][0]["percent"] is not None


def test_a_pressure_past_its_bound_is_refused(run):
    with pytest.raises(CalcError) as refused:
        compared(run, [{"engine_rpm": 1500, "discharge_psi": 1000.5}])
    assert refused.value.field == "discharge_psi"


@pytest.mark.parametrize("field", ["engine_rpm", "discharge_psi"])
def test_a_baseline_that_cannot_be_is_refused(run, field):
    with pytest.raises(CalcError) as refused:
        compared(run, [], [{**BASELINE[0], field: 0}])
    assert (refused.value.field, refused.value.code) == (field, "not_positive")


@pytest.mark.parametrize(("percent", "fits"), [(0, True), (50, True), (-0.1, False), (50.1, False)])
def test_tolerances(run, percent, fits):
    given = {"baseline": BASELINE, "readings": [], "quick": {"tolerance_percent": percent}, "accuracy": ACCURACY}
    if fits:
        assert run("service.quick", "compare", **given)["steps"] == []
    else:
        with pytest.raises(CalcError) as refused:
            run("service.quick", "compare", **given)
        assert refused.value.field == "tolerance_percent"
