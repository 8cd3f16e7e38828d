"""The quick check after a repair, as typed."""
import pytest

from calc.base.errors import CalcError
from site_src.content import units

QUICK, ACCURACY = {"tolerance_percent": 5, "step_psi": [50, 100]}, {"discharge_psi": 2, "speed_rpm": 10}
BASELINE = [{"engine_rpm": "1500", "discharge_psi": "150@US"}]


def told(run, readings, baseline=BASELINE, system="US"):
    return run("service.quick_answer", "answer", baseline=baseline, readings=readings, quick=QUICK, accuracy=ACCURACY, units=units.fine(system))


def test_in_any_units(run):
    """Constructed example K020: 150 psi at 1,500 rpm is 181.5 at 1,650, 12.51 bar; 172.4 psi, 11.886 bar, is below by 5 %."""
    found = told(run, [{"engine_rpm": "1650", "discharge_psi": "172.4@US"}], system="bar")
    step, = found["steps"]
    assert (found["status"], step["expected_text"], step["percent_text"]) == ("below", "12.51", "5")
    assert told(run, [{"engine_rpm": "1650", "discharge_psi": "12.5@bar"}])["status"] == "as_baseline"


def test_a_whole_answer(run):
    """By hand: at 1,650 rpm 181.5 psi, 1251.4 kPa; two gauges of 2 psi and twice 2 x 181.5 x 10 / 1650 = 2.2 psi err together by
    2 x root((4 + 4 + 4.84 + 4.84) / 3) = 4.855 psi, 33.5 kPa; 190 psi are 4.683 percent over. A gauge ends at 1,000 psi, 6894.8 kPa."""
    answer = told(run, [{"engine_rpm": "1650", "discharge_psi": "190@US"}, {"engine_rpm": "1500", "discharge_psi": "9999@SI"}], system="SI")
    assert answer == {
        "status": "not_proven", "enter": None, "has_baseline": True,
        "steps": [{"engine_rpm": 1650, "discharge_psi": 190, "expected_psi": pytest.approx(181.5), "expected_text": "1251", "band_psi": pytest.approx(4.855, abs=0.001),
                   "band_text": "33", "percent": pytest.approx(4.683, abs=0.001), "percent_text": "4.7", "is_close": True, "status": "as_baseline", "doubt": None},
                  {"engine_rpm": 1500, "discharge_psi": None, "expected_psi": 150, "expected_text": "1034", "band_psi": None,
                   "band_text": None, "percent": None, "percent_text": None, "is_close": False, "status": "not_proven", "doubt": None}],
        "problems": [{"place": "1.discharge_psi", "code": "out_of_range", "kind": "pressure", "is_below": False, "value": pytest.approx(1450.2, abs=0.1), "least": 0, "most": 1000,
                      "least_text": "0", "most_text": "6894"}]}


def test_twelve_steps_are_read(run):
    assert len(told(run, BASELINE * 12, BASELINE * 12)["steps"]) == 12


@pytest.mark.parametrize(
    ("reading", "place", "code"),
    [
        ({"engine_rpm": "fast", "discharge_psi": "50@US"}, "0.engine_rpm", "not_a_number"),
        ({"engine_rpm": "0", "discharge_psi": "50@US"}, "0.engine_rpm", "not_positive"),
        ({"engine_rpm": "1500", "discharge_psi": "-5@US"}, "0.discharge_psi", "out_of_range"),
        ({"engine_rpm": "1500", "discharge_psi": "5000@US"}, "0.discharge_psi", "out_of_range"),
    ],
)
def test_what_cannot_be_is_told_and_proves_nothing(run, reading, place, code):
    """An entry that cannot be used is named, counts as blank, and the step is not proven."""
    found = told(run, [reading])
    assert [(problem["place"], problem["code"]) for problem in found["problems"]] == [(place, code)]
    assert found["status"] == "not_proven"


@pytest.mark.parametrize("baseline", [[], [{"engine_rpm": "", "discharge_psi": "150@US"}], [{"engine_rpm": "1500", "discharge_psi": "0@US"}],
                                      [{"engine_rpm": "fast", "discharge_psi": "150@US"}]])
def test_half_a_baseline_is_none(run, baseline):
    """A baseline reading without its speed or its pressure is compared with nothing."""
    found = told(run, [{"engine_rpm": "1500", "discharge_psi": "150@US"}], baseline)
    assert found["status"] == "not_proven" and found["steps"][0]["expected_text"] is None
    assert found["has_baseline"] is False


# the steps are raised to about 50 and 100 psi; with a gauge in bar 100 psi are 6.9
@pytest.mark.parametrize("baseline", [[], BASELINE])
@pytest.mark.parametrize(("typed", "doubts"), [
    (("500@US", "1000@US"), ["point_slipped", "point_slipped"]), (("5@US", "10@US"), ["point_slipped", "point_slipped"]), (("3.4@bar", "68@bar"), [None, "point_slipped"]),
    (("50@US", "100@US"), [None, None]), (("90@US", "150@US"), [None, None]), (("0@US", ""), [None, None]), (("", "1000@US", "1000@US"), [None, "point_slipped", None]),
])
def test_a_pressure_far_off_its_step(run, baseline, typed, doubts):
    """1,000 psi at the step of 100 is asked about and refused nowhere, with a baseline or none; a step without a point of its own asks nothing (common practice)."""
    found = told(run, [{"engine_rpm": "850", "discharge_psi": text} for text in typed], baseline)
    assert ([step["doubt"] for step in found["steps"]], found["problems"]) == (doubts, [])


def test_every_step_wrong_is_still_told(run):
    """Twelve steps, each with a pressure that no gauge shows and a speed of none: both are told of each, and nothing is proven."""
    found = told(run, [{"engine_rpm": "0", "discharge_psi": "-5@US"}] * 12)
    places = [f"{place}.{field}" for place in range(12) for field in ("discharge_psi", "engine_rpm")]
    assert sorted(each["place"] for each in found["problems"]) == sorted(places)
    assert found["status"] == "not_proven"


@pytest.mark.parametrize("name", ["baseline", "readings"])
def test_too_many_steps(run, name):
    """A thirteenth step is refused, in the baseline as in the readings."""
    steps = {"baseline": BASELINE, "readings": BASELINE, name: BASELINE * 13}
    with pytest.raises(CalcError) as refused:
        told(run, steps["readings"], steps["baseline"])
    assert (refused.value.field, refused.value.code, refused.value.facts) == ("readings", "too_many", {"most": 12})


def test_refused_tolerance(run):
    """A tolerance past a half is no check: it is refused as itself, not as a reading."""
    with pytest.raises(CalcError) as refused:
        run("service.quick_answer", "answer", baseline=BASELINE, readings=BASELINE, quick={**QUICK, "tolerance_percent": 51}, accuracy=ACCURACY,
            units=units.fine("US"))
    assert (refused.value.field, refused.value.code) == ("tolerance_percent", "out_of_range")
