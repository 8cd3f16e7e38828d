"""The panel card's figures."""
import pytest

from site_src import catalogue, fleet, units

RIG = fleet.load()["tollgate-engine-1"]  # of our own invention; every figure below is worked by hand from it


def card(run, profile=RIG, system="US", section="50@US"):
    return run("panel_card", "card", profile=profile, shelf=catalogue.shelf(), units=units.shown_in(system), section=section,
               tips=[tip for tip in catalogue.tip_choices() if tip["family"] == "customary"])


def block(told, code):
    return next(each for each in told["blocks"] if each["code"] == code)


@pytest.mark.parametrize(
    ("name", "cells"),
    [
        # C 11.4, 150 gpm: 25.65 psi per 100 ft; nozzle 75. Floors of 12 ft are 5.208 psi. To the nearest 5.
        # 100.65, 105.9, 111.1, 95.4; with 150 and 200 ft: 113.5, 126.3
        ("Front bumper", ["100", "105", "110", "95", "115", "125"]),
        # 250 ft at 150 gpm and 100 psi: 164.1, 169.3, 174.5, 158.9; 300 and 350 ft: 176.95, 189.8
        ("Crosslay 2", ["165", "170", "175", "160", "175", "190"]),
    ],
)
def test_beds(run, name, cells):
    """A bed stands with its pressure on the ground, at each floor, and with hose added, to the panel's step."""
    row = next(row for row in block(card(run), "set")["rows"] if row["name"] == name)
    assert row["cells"] == cells
    assert row["is_over_test"] is False


def test_supply_tips_and_heights(run):
    """Hose in no bed counts as supply; the rig's tips and master-stream tips stand with their flows."""
    told = card(run)
    # 5 in, C 0.08: 0.08 x 25 x 1 at 500 gpm, 0.08 x 100 at 1000
    assert ["500", "2"] in [row["cells"] for row in block(told, "supply")["rows"]]
    assert ["1000", "8"] in [row["cells"] for row in block(told, "supply")["rows"]]
    tips = {row["name"]: row["cells"] for row in block(told, "tips")["rows"]}
    assert tips["15/16"] == ["50", "185"]  # 29.7 x 0.8789 x 7.071 = 184.6
    assert tips["1 1/2"] == ["80", "598"]  # 29.7 x 2.25 x 8.944 = 597.7
    assert [row["cells"] for row in block(told, "heights")["rows"]][:2] == [["5"], ["10"]]  # 12 and 24 ft: 5.2, 10.4


def test_what_is_not_known_stays_blank(run):
    """Without a floor height no floor is guessed; without an owner or a date a line is left to fill in."""
    bare = {key: value for key, value in RIG.items() if key not in ("floor", "owner", "dated", "panel_step")}
    told = card(run, bare)
    assert block(told, "set")["rows"][0]["cells"] == ["101", None, None, None, "113", "126"]  # unrounded: 100.65, 113.5, 126.3
    codes = [note["code"] for note in told["notes"]]
    assert {"owner_none", "dated_none"} <= set(codes) and "rounded" not in codes
    assert "heights" not in [each["code"] for each in told["blocks"]]


def test_a_line_past_its_hose_is_marked(run):
    """A pressure over the hose's service test is marked on the card."""
    weak = {**RIG, "hoses": [{"hose": "attack-1.75", "coefficient": "15.5@US", "origin": "handbook", "test_pressure": "150@US"}]}
    marks = {row["name"]: row["is_over_test"] for row in block(card(run, weak), "set")["rows"]}
    assert marks == {"Front bumper": False, "Crosslay 1": True, "Crosslay 2": True, "Rear blitz": False}


def test_the_card_reads_in_metric(run):
    """The same rig in kPa: 100.65 psi rounded to the rig's own step of 5 psi is 100 psi, 689 kPa."""
    assert block(card(run, system="SI", section="15@SI"), "set")["rows"][0]["cells"][0] == "689"


@pytest.mark.parametrize(("rule", "is_noted"), [("", False), ("square", False), ("gpm_times_n", True)])
def test_own_friction_rule_is_noted(run, rule, is_noted):
    """A card worked by C Q^2 L says so where the department has another rule."""
    told = card(run, {**RIG, "friction_rule": rule})["notes"]
    assert ({"code": "other_rule"} in told) == is_noted


def test_a_pressure_past_any_fire_hose_is_left_blank(run):
    """By hand: C 15.5 at 150 gpm is 34.9 psi per 100 ft; 75 and 5,500 ft of it are 1993.1, 50 ft more 2010.6, past 2,000."""
    beds = [{**RIG["beds"][0], "length": "5500@US"}]
    weak = {**RIG, "beds": beds, "hoses": [{"hose": "attack-1.75", "coefficient": "15.5@US", "origin": "handbook"}]}
    assert block(card(run, weak), "set")["rows"][0]["cells"] == ["1995", "2000", None, "1990", None, None]  # floors: 5.2 psi


def test_two_beds_with_one_tip_print_it_once(run):
    """A tip stands once on the card, however many beds end in it."""
    end = next(bed["end"] for bed in RIG["beds"] if bed["end"]["kind"] == "smooth")
    beds = [{**RIG["beds"][0], "name": name, "end": end} for name in ("Left", "Right")]
    names = [row["name"] for row in block(card(run, {**RIG, "beds": beds}), "tips")["rows"]]
    assert names == [row["name"] for row in block(card(run, {**RIG, "beds": beds[:1]}), "tips")["rows"]]
    assert len(names) == len(set(names))
