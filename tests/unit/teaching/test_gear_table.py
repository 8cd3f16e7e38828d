"""The speeds page's answer: typed text in, every gear side by side, nothing guessed."""
import pytest

from calc.base.errors import CalcError
from calc.rig.fields import FIELDS
from calc.teaching import gear_table
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


def test_everything_at_once(run):
    """By hand at 1,400 rpm, twice idle: 84000 / 2663.1 = 31.54 mph and 3,220 rpm of the pump at 200 psi; over 3.5 and 1.4 the speeds, over their
    squares the pressures."""
    assert answer(run, engine="1400", speed_shown="9@US", pressure_shown="205@US") == {
        "missing": {"pump": [], "speed": [], "pressure": [], "wanted": []},
        "pump_rpm": "3220", "pressure": "200", "wanted_rpm": "1400", "above_governed": False, "speed_match": {"code": "other_gear", "gear": "1"},
        "pressure_band": "as_expected",
        "rows": [{"gear": None, "ratio": "1.00", "speed": "31.5", "pump_rpm": "3220", "pressure": "200"},
                 {"gear": "1", "ratio": "3.50", "speed": "9.0", "pump_rpm": "920", "pressure": "16"},
                 {"gear": "3", "ratio": "1.40", "speed": "22.5", "pump_rpm": "2300", "pressure": "102"}],
        "terms": {"engine": "1400", "idle": "700", "pump_ratio": "2.3", "axle_ratio": "5.38", "tyre_rev": "495", "pump_gear_ratio": "1", "governed": "2200",
                  "idle_pressure": "50", "wanted": "200", "pressure_shown": "205", "speed_shown": "9.0"}}


def test_nothing_at_all(run):
    """Each part names all that it lacks, in the order in which it is asked for; nothing is worked out."""
    assert answer(run, **dict.fromkeys(ENTRIES, "")) == {
        "missing": {"pump": ["engine", "pump_ratio"], "speed": ["engine", "axle_ratio", "tyre_rev", "pump_gear_ratio"],
                    "pressure": ["engine", "idle", "idle_pressure"], "wanted": ["idle", "idle_pressure", "wanted"]},
        "pump_rpm": None, "rows": [], "pressure": None, "wanted_rpm": None, "above_governed": False, "speed_match": None, "pressure_band": None, "terms": {}}


def test_an_engine_that_stands(run):
    """Nothing turns: no speed and no turns, and no pressure or gear to compare with."""
    told = answer(run, engine="0", speed_shown="9@US", pressure_shown="50@US")
    assert (told["pump_rpm"], told["pressure"], told["speed_match"], told["pressure_band"]) == ("0", None, None, None)
    assert [(row["speed"], row["pump_rpm"], row["pressure"]) for row in told["rows"]] == [("0.0", "0", None)] * 3


@pytest.mark.parametrize("name", list(ENTRIES))
def test_what_may_be_nothing(run, name):
    """A reading and an engine may stand at nothing; a ratio, an idle and what is compared with may not."""
    if name in ("engine", "wanted", "pressure_shown", "speed_shown"):
        assert answer(run, **{name: "0"})["terms"][name] in ("0", "0.0")
    else:
        with pytest.raises(CalcError) as refusal:
            answer(run, **{name: "0"})
        assert (refusal.value.field, refusal.value.code) == (name, "not_positive")


def test_one_thousand_and_some(run):
    """A mark before three digits sets thousands apart in a speed, and in a ratio decimals."""
    assert answer(run, engine="1,400", pump_ratio="2,3")["pump_rpm"] == "3220"
    assert answer(run, pump_ratio="2.300")["pump_rpm"] == "1610"


@pytest.mark.parametrize(("rpm", "is_above"), [("2200", False), ("2199", True)])
def test_at_the_governor(run, rpm, is_above):
    """By hand: 50 x (2200 / 700) squared is 493.8776 psi; a governor just under those turns is in the way."""
    assert answer(run, wanted="493.877551@US", governed=rpm)["above_governed"] is is_above


def test_a_ratio_that_cannot_be(run):
    for text, code in (("0", "not_positive"), ("x", "not_a_number")):
        with pytest.raises(CalcError) as refusal:
            answer(run, gears=[{"gear": "5", "ratio": text}])
        assert (refusal.value.field, refusal.value.code, refusal.value.facts["gear"]) == ("ratio", code, "5")


def test_bounds_are_the_rigs():
    """What a rig's profile may hold may be typed here, and nothing else."""
    of_a_rig = {field[0]: field[2:] for field in FIELDS if field[1] == "number"}
    shared = set(of_a_rig) & set(ENTRIES)
    assert shared == {"idle", "pump_ratio", "axle_ratio", "tyre_rev", "pump_gear_ratio", "governed"}
    assert {name: gear_table.BOUNDS[name] for name in shared} == {name: of_a_rig[name] for name in shared}


@pytest.mark.parametrize("name", list(ENTRIES))
def test_bounds(run, name):
    """Both bounds are taken, and what is just past the upper one is refused by its name."""
    least, most = gear_table.BOUNDS[name]
    mark = "@US" if ENTRIES[name].endswith("@US") or name.endswith("shown") else ""
    lone = dict.fromkeys(ENTRIES, "")
    for text in (least, most):
        assert answer(run, gears=[], **{**lone, name: f"{text}{mark}"})["terms"][name]
    past = [most + 0.001] if name in gear_table.FROM_ZERO else [least - 0.001, most + 0.001]
    for text in past:
        with pytest.raises(CalcError) as refusal:
            answer(run, gears=[], **{**lone, name: f"{text:.4f}{mark}"})
        assert (refusal.value.field, refusal.value.code) == (name, "out_of_range")


@pytest.mark.parametrize("system", ["US", "SI", "bar", "imperial"])
def test_what_leads_past_any_pump_is_named(run, system):
    """By hand: 50 x (4000 / 600) squared is 2,222 psi, so the engine's speed is; 50 x (10 / 0.3) squared is 55,556, so that gear's ratio is.
    50 x (3794 / 600) squared, 1,999 psi, stands."""
    for entries, field, gear in (({"idle": "600", "engine": "4000"}, "engine", None), ({"pump_gear_ratio": "10", "gears": [{"gear": "2", "ratio": "0.3"}]}, "ratio", "2")):
        with pytest.raises(CalcError) as refusal:
            answer(run, system=system, **entries)
        assert (refusal.value.field, refusal.value.facts.get("gear")) == (field, gear)
    assert answer(run, gears=[], idle="600", engine="3794")["pressure"] == "1999"


@pytest.mark.parametrize(("engine", "turns"), [("0.99", False), ("1", True)])
def test_slower_than_a_turn_a_minute_it_stands(run, engine, turns):
    """Too slow to compare anything with is no speed at all, and no refusal of what nobody typed."""
    slow = answer(run, engine=engine, speed_shown="9@US", pressure_shown="50@US", idle="1500", idle_pressure="1@US")
    assert (slow["pressure"] is not None, slow["speed_match"] is not None, slow["pressure_band"] is not None) == (turns, turns, turns)
