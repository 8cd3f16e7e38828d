"""Foam for a spill by its area, against what is printed of it."""
import pytest

from calc.base.errors import CalcError
from tests.unit.supply.reckoned import ask, called_to_mind, row

POLAR = {"task": "spill", "spill_length": "75", "spill_width": "40", "rate": "0.2", "minutes": "15", "flow": "60", "concentrate": "270"}


def test_a_printed_spill(run):
    """A state university's training slides: 75 by 40 ft, polar, 0.20: 600 gpm, 18 gpm of 3 % concentrate, 270 gal for 15 minutes.

    By hand: 9,000 gal of solution less 270 are 8,730 gal of water; the 26,190 printed there takes 97 gal for each of concentrate.
    """
    told = ask(run, "foam", **POLAR)
    assert (row(told, "spill")["text"], row(told, "eductors")["text"]) == ("600", "10")
    assert (row(told, "foam_needed")["text"], row(told, "foam_water")["text"], row(told, "foam_minutes")["text"]) == ("270", "8730", "15.0")
    assert (told["figure"], told["facts"]) == (
        {"kind": "flow", "text": "600"},
        {"least": "600", "least_needed": "270", "eductors": "10", "each": "60", "wanted": "15.0", "water": "8730", "needed": "270", "percent": "3"})
    assert called_to_mind(told) == []  # 100 + 15.5 x 0.6^2 x 1.5 = 108 psi of back pressure, under 130; 270 gal is just enough


def test_an_eductor_too_many(run):
    """By hand: 600 gpm of 125 gpm eductors are five, and five draw 625 x 3 % = 18.75 gpm: 281 gal in 15 minutes."""
    told = ask(run, "foam", **{**POLAR, "flow": "125", "length": "0"})
    assert (row(told, "eductors")["text"], row(told, "foam_needed")["text"]) == ("5", "281")
    assert (told["facts"]["least"], told["facts"]["least_needed"], row(told, "foam_least")["text"]) == ("600", "270", "270")  # what the spill itself takes
    assert [(each["code"], each["level"], each["amount"], each["needed"]) for each in told["cautions"]] == [("foam_short", "stop", "270", "281")]


def test_area_of_one_eductor(run):
    """By hand: 125 gpm at 0.10 cover 1,250 square feet, a foot more takes a second one; 56 gal in 15 minutes at 3 %."""
    one = ask(run, "foam", task="spill", spill_length="125", spill_width="10", flow="125", minutes="15")
    assert (row(one, "eductors")["text"], row(one, "foam_needed")["text"]) == ("1", "56")
    assert row(ask(run, "foam", task="spill", spill_length="126", spill_width="10", flow="125"), "eductors")["text"] == "2"


def test_the_least_time(run):
    """The same slides: a spill takes at least 15 minutes."""
    assert "spill_minutes" not in called_to_mind(ask(run, "foam", **POLAR))
    assert "spill_minutes" in called_to_mind(ask(run, "foam", **{**POLAR, "minutes": "14.9"}))


def test_more_eductors_than_anyone_has(run):
    """Forty are enough to tell; the flow of one is what is to be changed."""
    assert row(ask(run, "foam", **{**POLAR, "flow": "15"}), "eductors")["text"] == "40"
    with pytest.raises(CalcError) as refusal:
        ask(run, "foam", **{**POLAR, "flow": "14"})
    assert (refusal.value.field, refusal.value.code) == ("flow", "too_many_eductors")


def test_hose_behind_an_eductor(run):
    """By hand, 200 psi inlet at 65 %: 125 gpm, 1 3/4 in: 123.9 ft with a 100 psi nozzle, 227.1 with 75; 2 1/2 in: 960 ft. Said is the last whole foot."""
    for changes, longest in (({}, "123"), ({"nozzle": "75"}, "227"), ({"hose": "attack-2.5"}, "960")):
        assert row(ask(run, "foam", flow="125", **changes), "longest")["text"] == longest
