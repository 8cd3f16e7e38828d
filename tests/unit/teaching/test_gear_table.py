"""The speeds page's answer: typed text in, every gear side by side, nothing guessed."""
import pytest

from calc.base.errors import CalcError
from site_src.content import units

ENTRIES = {
    "engine": "700", "idle": "700", "pump_ratio": "2.3", "axle_ratio": "5.38", "tyre_rev": "495", "pump_gear_ratio": "1",
    "governed": "2200", "idle_pressure": "50@US", "wanted": "200@US", "pressure_shown": "", "speed_shown": "",
}
GEARS = [{"gear": "1", "ratio": "3.5"}, {"gear": "2", "ratio": ""}, {"gear": "3", "ratio": "1.4"}]


def answer(run, gears=GEARS, system="US", **entries):
    return run("teaching.gear_table", "answer", entries={**ENTRIES, **entries}, gears=gears, units=units.shown_in(system))


def test_gears_side_by_side(run):
    """By hand: 42000 / 2663.1 = 15.77, over 3.5 = 4.51, over 1.4 = 11.26; 1610 rpm over 1.4 = 1150, 50 / 1.96 = 25.5."""
    told = answer(run)
    assert [(row["gear"], row["speed"], row["pump_rpm"], row["pressure"]) for row in told["rows"]] == [
        (None, "15.8", "1610", "50"), ("1", "4.5", "460", "4"), ("3", "11.3", "1150", "26"),
    ]
    assert told["pump_rpm"] == "1610"
    assert told["wanted_rpm"] == "1400"  # twice the speed for four times the pressure
    assert not told["above_governed"]


def test_pump_gear_that_is_not_direct(run):
    """The plate's ratio is that of the pump gear: in a gear twice as low the pump turns half as fast."""
    told = answer(run, pump_gear_ratio="0.7", gears=[{"gear": "3", "ratio": "1.4"}])
    assert [row["pump_rpm"] for row in told["rows"]] == ["1610", "805"]


def test_metric(run):
    """By hand: 15.77 mph x 1.609344 = 25.4 km/h; 50 psi is 345 kPa."""
    told = answer(run, system="SI")
    assert (told["rows"][0]["speed"], told["pressure"]) == ("25.4", "345")


@pytest.mark.parametrize(
    ("lost", "part", "gone"),
    [("pump_ratio", "pump", "pump_rpm"), ("idle_pressure", "pressure", "pressure"), ("idle", "wanted", "wanted_rpm")],
)
def test_what_is_not_known_is_asked_for(run, lost, part, gone):
    """A part that lacks an entry is not worked out, and says which entry it lacks."""
    told = answer(run, **{lost: ""})
    assert told["missing"][part] == [lost]
    assert told[gone] is None


@pytest.mark.parametrize("lost", ["axle_ratio", "tyre_rev", "pump_gear_ratio"])
def test_no_speed_is_guessed(run, lost):
    """Without a ratio there is no row at all."""
    told = answer(run, **{lost: ""})
    assert (told["rows"], told["missing"]["speed"]) == ([], [lost])


def test_readings_are_told(run):
    """A reading of 11 mph speaks for third, and 25 psi for a gear too low or a pump not full."""
    told = answer(run, speed_shown="11@US", pressure_shown="25@US")
    assert told["speed_match"] == {"code": "other_gear", "gear": "3"}
    assert told["pressure_band"] == "far_below"
    assert answer(run, speed_shown="16@US", pressure_shown="50@US")["speed_match"]["code"] == "pump_gear"


def test_past_the_governor(run):
    """By hand: 700 x sqrt(600 / 50) = 2425 rpm, above 2,200."""
    assert answer(run, wanted="600@US")["above_governed"]
    assert not answer(run, wanted="600@US", governed="")["above_governed"]


def test_refusals(run):
    """An entry that is no number is refused by its name, and a ratio by its gear."""
    for name, text, code in (("engine", "x", "not_a_number"), ("axle_ratio", "0", "not_positive"), ("wanted", "-1@US", "negative")):
        with pytest.raises(CalcError) as refusal:
            answer(run, **{name: text})
        assert (refusal.value.field, refusal.value.code) == (name, code)
    with pytest.raises(CalcError) as refusal:
        answer(run, gears=[{"gear": "3", "ratio": "-"}])
    assert (refusal.value.field, refusal.value.facts["gear"]) == ("ratio", "3")
