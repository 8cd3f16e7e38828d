"""Portable pumps by their curve on a wildland layout, by hand: what they give at its flow, and where their curve meets it."""
import pytest

from calc.base.errors import CalcError
from tests.unit.supply.reckoned import ask, row
from tests.unit.supply.test_hoselay import SIMPLE

# with no rise it takes 186.4 psi at 60 gpm: 100 at the nozzle, 24 x 0.6^2 x 10 in the trunk. The pump is 300 - q^2 / 12, to 60 gpm
BY_CURVE = {**SIMPLE, "rise": "0", "pump": "own", "shut": "300", "mid_flow": "30", "mid": "225", "end_flow": "60", "end": "0", "limit": "800"}


def said(answer):
    """Each caution's code, with what it says of pressures and flow."""
    return [(each["level"], each["code"], each.get("flow"), each.get("amount"), each.get("limit")) for each in answer["cautions"]]


def test_one_pump(run):
    """300 - q^2 / 12 = 186.4 (q / 60)^2 at 47.12 gpm: 114.97 psi, and 100 x (47.12 / 60)^2 = 61.7 at the nozzle. At 60 gpm it gives nothing."""
    answer = ask(run, "hoselay", **BY_CURVE)
    assert (answer["figure"]["text"], answer["sum"], answer["facts"]) == ("186", "hoselay_curve", {"needed": "2", "way": "parallel", "full": "47", "full_pump": "115", "full_nozzle": "62"})
    assert row(answer, "hoselay_full")["terms"] == {"fixed": "0", "lost": "186.4", "wanted": "60", "pump": "114.97", "flow": "47.12"}
    assert said(answer) == [("stop", "curve_short", "60", "186", "0")]


def test_two_in_parallel(run):
    """30 gpm from each at 225 psi is enough. 300 - (q / 2)^2 / 12 = 186.4 (q / 60)^2 at 64.28 gpm, 213.9 psi."""
    answer = ask(run, "hoselay", **BY_CURVE, arranged="parallel", pumps="2")
    assert row(answer, "hoselay_gives_parallel")["terms"] == {"pumps": "2", "each": "225", "flow": "30", "gives": "225"}
    assert answer["facts"] == {"needed": "2", "way": "parallel", "full": "64", "full_pump": "214", "full_nozzle": "115"}
    assert said(answer) == [("caution", "pumps_parallel", None, None, None)]


def test_two_in_series(run):
    """Up 300 ft with 30 gpm: 130.2 + 100 + 21.6 = 251.8 psi of 2 x 225. 600 - q^2 / 6 = 130.2 + 121.6 (q / 30)^2 at 39.46 gpm: 340.5 psi.
    The next pump: 125.9 each, 0.0216 + 0.1302 psi a foot leave 20 after 697.6 ft. Shut, both are on the hose: 600 psi.
    """
    answer = ask(run, "hoselay", **{**BY_CURVE, "rise": "300", "flow": "30", "arranged": "series", "pumps": "2"})
    assert row(answer, "hoselay_gives_series")["terms"] == {"pumps": "2", "each": "225", "flow": "30", "gives": "450"}
    assert (answer["facts"]["full"], answer["facts"]["full_pump"]) == ("39", "341")
    assert row(answer, "hoselay_next")["text"] == "697"
    assert row(answer, "hoselay_shut")["text"] == "600"
    assert said(answer) == []
    assert answer["picture"]["next"] == pytest.approx(0.6976, abs=1e-3)
    assert ("stop", "hose_over", None, "600", "450") in said(ask(run, "hoselay", **{**BY_CURVE, "rise": "300", "flow": "30", "arranged": "series", "pumps": "2", "limit": "450"}))


def test_more_pumps_than_it_needs_say_no_place(run):
    """Where even two in series fall short no place of the next pump is promised."""
    answer = ask(run, "hoselay", **{**BY_CURVE, "arranged": "series", "pumps": "2"})  # at 60 gpm both give nothing
    assert [each for each in answer["rows"] if each["name"] in ("hoselay_next", "hoselay_each")] == []
    assert answer["picture"]["next"] is None


@pytest.mark.parametrize(("changes", "needed"), [
    ({"rise": "0", "flow": "30"}, ("1", "one")),  # 100 + 21.6 of 225
    ({"rise": "300", "flow": "30"}, ("2", "series")),  # 251.8 of 450; side by side each gives 281.25 with 15 gpm: also two, and the way that is chosen stands
    ({"rise": "300", "flow": "30", "arranged": "parallel", "pumps": "2"}, ("2", "parallel")),
    ({"rise": "700", "flow": "30"}, ("2", "series")),  # 425.4 of 450; side by side never past 300
    ({"rise": "1300", "flow": "30"}, ("4", "series")),  # 685.8: 675 of three, 900 of four
    ({"rise": "1300", "flow": "30", "arranged": "parallel", "pumps": "2"}, ("4", "series")),
])
def test_how_many_are_enough(run, changes, needed):
    """By hand, by the fewest; the pump is 300 - q^2 / 12."""
    answer = ask(run, "hoselay", **{**BY_CURVE, **changes})
    assert (answer["sum"], answer["facts"]["needed"], answer["facts"]["way"]) == ("hoselay_curve", *needed)


def test_not_even_six_are_enough(run):
    """By hand: 2,000 ft are 868 psi and 121.6 besides, six of 225 give 1,350; 3,000 ft are 1,302 and 1,423.6 in all."""
    assert ask(run, "hoselay", **{**BY_CURVE, "rise": "2000", "flow": "30"})["facts"]["needed"] == "5"
    for changes in ({"rise": "3000", "flow": "30"}, {"rise": "300"}):  # 316.6 at 60 gpm: in series the curve ends there, side by side it is 300 at most
        answer = ask(run, "hoselay", **{**BY_CURVE, **changes})
        assert (answer["sum"], answer["facts"]["needed"], "way" in answer["facts"]) == ("hoselay_curve_short", "6", False)


def test_too_high(run):
    """700 ft are 303.8 psi, the pump shut gives 300; 690 ft are 299.46, and a little runs."""
    answer = ask(run, "hoselay", **{**BY_CURVE, "rise": "700"})
    assert said(answer) == [("stop", "curve_no_water", None, "304", "300")]
    assert answer["facts"]["full"] == "0"
    assert "curve_no_water" not in [each["code"] for each in ask(run, "hoselay", **{**BY_CURVE, "rise": "690"})["cautions"]]


def test_past_the_end_of_the_curve(run):
    """A curve that is known to 50 gpm says nothing of 60; downhill it gives 50 and more."""
    known = {**BY_CURVE, "end_flow": "50", "end": "91.7"}
    assert said(ask(run, "hoselay", **known)) == [("stop", "curve_ends", "60", None, "50")]
    answer = ask(run, "hoselay", **{**known, "rise": "-400"})  # -173.6 + 186.4 (50 / 60)^2 is below 91.7
    assert (answer["sum"], answer["facts"]["full"]) == ("hoselay_past_curve", "50")


def test_a_class_is_from_memory(run):
    """Wildland pump literature, from memory: high pressure, 300 psi shut and 75 gpm free; it is said, and is a source of each figure."""
    answer = ask(run, "hoselay", **{**BY_CURVE, "pump": "high"})
    assert ("caution", "curve_of_class", None, None, None) in said(answer)
    assert row(answer, "hoselay_full")["sources"] == ["pump_curve", "pump_class"]
    assert row(answer, "hoselay_gives_series")["text"] == "108"  # 300 x (1 - 0.8^2)
    assert row(ask(run, "hoselay", **BY_CURVE), "hoselay_full")["sources"] == ["pump_curve"]


@pytest.mark.parametrize(("changes", "field", "code"), [
    ({"mid": "300"}, "mid", "not_below_point"), ({"end": "225"}, "end", "not_below_point"), ({"end_flow": "30"}, "end_flow", "not_past_point"),
    ({"mid_flow": "0"}, "mid_flow", "out_of_range"), ({"shut": ""}, "shut", "empty"), ({"mid": "220 psi"}, "mid", "not_a_number"),
    ({"arranged": "both"}, "arranged", "unknown"), ({"arranged": "series", "pumps": "1"}, "pumps", "out_of_range"), ({"pump": "float"}, "pump", "unknown"),
])
def test_bad_input_at_its_field(run, changes, field, code):
    """What does not fall, or is no figure, is refused at its own entry; what is not asked is not looked at."""
    with pytest.raises(CalcError) as refusal:
        ask(run, "hoselay", **{**BY_CURVE, **changes})
    assert (refusal.value.field, refusal.value.code) == (field, code)
    if field not in ("pump", "arranged", "pumps"):
        assert ask(run, "hoselay", **{**BY_CURVE, **changes, "pump": "figure"})["rows"]


def test_in_other_units(run):
    """The same pump typed in kPa and L/min meets the layout at the same flow: 47.12 gpm are 178 L/min."""
    metric = {"shut": "2068.43@SI", "mid_flow": "113.56@SI", "mid": "1551.32@SI", "end_flow": "227.12@SI", "end": "0@SI"}
    typed = {name: value if "@" in value or name in ("laterals", "wyes", "tip", "pump") else f"{value}@US" for name, value in {**BY_CURVE, **metric}.items()}
    assert ask(run, "hoselay", shown="SI", **typed)["facts"]["full"] == "178"
