"""The panel card as it is printed: its heads, what each row is of, its notes, and a sentence for every code."""
import re

import pytest

from calc.base.errors import CalcError
from site_src.content import catalogue, data, units
from tests.unit.rig.test_panel_card import GUN, RIG, block, card

SENTENCES = data.words("rig")["card"]
UNIT_WORDS = {f"u_{kind}" for kind in data.words("units")["unit"]["US"]}
BUMPER, CROSSLAY = RIG["beds"][:2]
EMPTY = {key: value for key, value in RIG.items() if key not in ("beds", "hoses", "owner", "dated", "floor")}


def told_on(sheet):
    """Everything on a card that the page sets in words."""
    found = list(sheet["notes"])
    for each in sheet["blocks"]:
        found += [each, *each["head"], *(row["detail"] for row in each["rows"] if row["detail"])]
    return found


GUNS = [{**GUN, "end": {**GUN["end"], "kind": kind, "flow": "500@US"}, **hose, "name": kind, "device": "aerial", "tips": tips} for kind in ("fog", "smooth")
        for hose in ({}, {"hose": "supply-3", "length": "200@US"}) for tips in ([], ["1.5@US"])]
SPOILED = {**RIG, "beds": [*GUNS, {**BUMPER, "length": "0"}, {**BUMPER, "length": "5000@US", "end": {**BUMPER["end"], "flow": "500@US"}}],
           "supply": [{"hose": "supply-4", "length": "600@US"}, {"hose": "supply-5", "length": "600@US", "limit": "180@US"}],
           "hoses": [{**RIG["hoses"][0], "origin": ""}, {"hose": "attack-2.5", "coefficient": "1.8@US", "origin": "pooled"}, {"hose": "supply-3.5", "coefficient": "x"}]}




@pytest.mark.parametrize("system", ["US", "SI"])
@pytest.mark.parametrize("profile", [RIG, EMPTY, {**RIG, "friction_rule": "gpm_times_n", "hoses": [{**RIG["hoses"][0], "origin": "declared"}]}, {**RIG, "hoses": []},
                                     {**RIG, "hoses": [{**RIG["hoses"][0], "readings": "3"}]}, SPOILED],
                         ids=["whole", "empty", "own", "handbook", "counted", "spoiled"])
def test_every_code_has_its_sentence(run, profile, system):
    """Each code of a card has a sentence, the sentence has a gap for each fact, and each gap has its fact or is a unit."""
    for told in told_on(card(run, profile, system, "50@US")):
        gaps = set(re.findall(r"{(\w+)}", SENTENCES[told["code"]])) - UNIT_WORDS
        assert gaps == set(told) - {"code", "head", "rows"}, told


def test_heads(run):
    """The columns of each block, in their order: one floor down, the ground, one to three up, then with hose added."""
    heads = {each["code"]: each["head"] for each in card(run)["blocks"]}
    assert heads == {
        "set": [{"code": "line"}, {"code": "floor_down", "count": "1"}, {"code": "ground"}, {"code": "floor_up", "count": "1"},
                {"code": "floor_up", "count": "2"}, {"code": "floor_up", "count": "3"}, {"code": "added", "length": "50"}, {"code": "added", "length": "100"}],
        "supply": [{"code": "hose"}, {"code": "flow"}, {"code": "loss"}],
        "tips": [{"code": "tip"}, {"code": "tip_pressure"}, {"code": "flow"}],
        "heights": [{"code": "floors"}, {"code": "add"}],
    }


def test_what_a_bed_is_made_of(run):
    """Under its name a bed tells hose, length, nozzle, its pressure and flow, each in the page's units."""
    hose = catalogue.shelf()["hoses"]["attack-1.75"]["label"]

    def told(system):
        return [row["detail"] for row in block(card(run, system=system, section="15@SI"), "set")["rows"][:2]]

    # by hand: 29.7 x 0.8789 x 7.071 = 184.6 gpm
    assert told("US") == [{"code": "layout_fog", "hose": hose, "length": "100", "flow": "150", "nozzle": "75"},
                          {"code": "layout_smooth", "hose": hose, "length": "200", "flow": "185", "nozzle": "50", "tip": "15/16"}]
    # by the definitions of foot, gallon, psi: 30.48 m, 567.8 L/min, 517.1 kPa; 60.96 m, 698.8 L/min, 344.7 kPa
    assert told("SI") == [{"code": "layout_fog", "hose": hose, "length": "30", "flow": "568", "nozzle": "517"},
                          {"code": "layout_smooth", "hose": hose, "length": "61", "flow": "699", "nozzle": "345", "tip": "15/16"}]


def test_a_tip_without_a_name(run):
    """A tip that the page's list does not name stands by its diameter: 0.9375 in is 23.8 mm."""
    told = run("rig.panel_card", "card", profile=RIG, shelf=catalogue.shelf(), units=units.shown_in("SI"), section="15@SI",
               tips=[tip for tip in catalogue.tip_choices() if tip["family"] == "metric"])
    diameter = {row["name"]: row["detail"] for row in block(told, "set")["rows"]}["Crosslay 1"]["tip"]
    assert float(diameter) == pytest.approx(23.8125, abs=0.5)
    assert block(told, "tips")["rows"][0] == {"name": diameter, "detail": None, "cells": ["345", "699"], "over": [], "stopped": [], "line": None}


def test_unrounded_in_kpa(run):
    """By hand, 6.895 kPa a psi: 95.44, 100.65 and so on; floors of 5.208; and 49.21 ft (15 m) of 25.65 psi per 100 ft, 12.62, once and twice."""
    bare = {key: value for key, value in RIG.items() if key != "panel_step"}
    row = block(card(run, bare, "SI", "15@SI"), "set")["rows"][0]
    assert row["cells"] == ["660", "690", "730", "770", "800", "780", "870"]  # 116.27 x 6.895 = 801.7; 658, 694, 730, 766, 802, 781, 868 to 10


def test_supply_rows(run):
    """Only hose in no bed is supply; a rig that tells of no bed counts all of its own hose as such."""
    hoses = catalogue.shelf()["hoses"]
    rows = block(card(run), "supply")["rows"]
    assert {row["name"] for row in rows} == {hoses["supply-5"]["label"]}
    assert [row["detail"] for row in rows if row["detail"]] == [{"code": "carried_limit", "length": "1000", "limit": "180"}]  # once, at its first row
    assert not [row for row in rows if row["over"]]
    # by hand: C 0.08, 500 gpm is 1893 L/min, 100 m 328.1 ft: 0.08 x 25 x 3.281 = 6.562 psi, 45.2 kPa; at 1000, 181.0
    cells = [row["cells"] for row in block(card(run, system="SI"), "supply")["rows"]]
    assert ["1893", "45"] in cells and ["3785", "181"] in cells
    bedless = {key: value for key, value in RIG.items() if key != "beds"}
    names = {row["name"] for row in block(card(run, bedless), "supply")["rows"]}
    assert names == {hoses["supply-5"]["label"], hoses["attack-1.75"]["label"]}


def test_supply_that_a_fault_spoils(run):
    """Its hose stands there by its name, without a flow or a loss."""
    rows = block(card(run, {**RIG, "hoses": [RIG["hoses"][0], {"hose": "supply-5", "coefficient": "much"}]}), "supply")["rows"]
    label = catalogue.shelf()["hoses"]["supply-5"]["label"]
    assert rows == [{"name": label, "detail": {"code": "faulty_hose"}, "cells": [None, None], "over": [], "stopped": [], "line": None}]


def test_a_working_limit_in_metric(run):
    """By hand: 180 psi are 1,241 kPa; 1,000 ft are 305 m."""
    rows = block(card(run, system="SI", section="15@SI"), "supply")["rows"]
    assert rows[0]["detail"] == {"code": "carried_limit", "length": "305", "limit": "1241"}


@pytest.mark.parametrize("device", ["master", "aerial"])
def test_the_note_of_an_aerial(run, device):
    """Only a rig with an aerial is told of its waterway; both of the loss of a master stream."""
    codes = [note["code"] for note in card(run, {**RIG, "beds": [{**GUN, "device": device}]})["notes"]]
    assert ("aerial" in codes, "master_loss" in codes) == (device == "aerial", True)


def test_a_hose_that_a_fault_spoils_has_no_note(run):
    """No figure is told of a hose whose own row, or whose supply's limit, has a fault; the next is told."""
    own = {"hose": "supply-5", "coefficient": "0.09@US", "origin": "measured"}
    for row, supply in ((own, "much"), ({**own, "coefficient": "much"}, "180@US")):
        told = card(run, {**RIG, "hoses": [row, RIG["hoses"][0]], "supply": [{"hose": "supply-5", "length": "600@US", "limit": supply}, {"hose": "supply-4", "length": "600@US"}]})
        assert [note["hose"] for note in told["notes"] if "coefficient" in note] == [catalogue.shelf()["hoses"]["attack-1.75"]["label"]]
    assert {row["name"] for row in block(told, "supply")["rows"]} == {catalogue.shelf()["hoses"][name]["label"] for name in ("supply-5", "supply-4")}


def test_a_rig_that_tells_of_no_supply(run):
    """Its card has what its beds and its own hose give."""
    bare = {key: value for key, value in RIG.items() if key != "supply"}
    assert {row["name"] for row in block(card(run, bare), "supply")["rows"]} == {catalogue.shelf()["hoses"]["supply-5"]["label"]}
    assert card(run, bare)["notes"] == card(run)["notes"]


def test_one_tip_at_two_pressures(run):
    """The lower first, whatever the beds: 1½ in at 100 psi is 668 gpm by hand (29.7 x 2.25 x 10), at 80 psi 598."""
    gun = {**GUN, "end": {"kind": "smooth", "tip": "1.5@US", "pressure": "100@US"}, "tips": []}
    rows = block(card(run, {**RIG, "beds": [gun]}), "tips")["rows"]
    assert [row["cells"] for row in rows if row["name"] == "1½"] == [["80", "598"], ["100", "668"]]


def test_heights(run):
    """By hand, floors of 12 ft at 0.434 psi a foot: 5.2, 10.4, 15.6, 20.8, 26.0, up to the fifth."""
    rows = block(card(run), "heights")["rows"]
    assert [(row["name"], row["cells"]) for row in rows] == [("1", ["5"]), ("2", ["10"]), ("3", ["16"]), ("4", ["21"]), ("5", ["26"])]


def test_notes(run):
    """A card says by what rule, whose hose figures, whose rules and when, and ends with what comes first."""
    hoses = catalogue.shelf()["hoses"]
    assert card(run)["notes"] == [
        {"code": "rule"}, {"code": "rounded", "step": "5"}, {"code": "master_loss"},
        {"code": "own_measured", "hose": hoses["attack-1.75"]["label"], "coefficient": "11.4"},
        {"code": "own_handbook", "hose": hoses["supply-5"]["label"], "coefficient": "0.08"},
        {"code": "own_others"},  # the rear blitz lies on 2 1/2 in
        {"code": "owner", "owner": "Tollgate training office"}, {"code": "dated", "dated": "October 2026"}, {"code": "first"},
    ]
    counted = card(run, {**RIG, "hoses": [{**RIG["hoses"][0], "readings": "3"}, {**RIG["hoses"][1], "hose": "attack-2.5", "coefficient": ""}, RIG["hoses"][1]]})["notes"]
    assert {"code": "own_readings", "hose": hoses["attack-1.75"]["label"], "coefficient": "11.4", "readings": "3"} in counted
    assert {"code": "own_others"} not in counted  # each hose is named
    assert {"code": "own_none"} in card(run, {**RIG, "hoses": []})["notes"]
    assert [note["code"] for note in card(run, EMPTY)["notes"]] == ["rule", "rounded", "own_none", "owner_none", "dated_none", "first"]


@pytest.mark.parametrize(
    ("floor", "pressure", "flow", "length", "coefficient", "cells"),
    [
        # by hand: 1 gpm loses nothing; 5 psi less a floor of 11 ft, 4.77, is 0.2; less one of 12 ft, 5.21, nothing could be set
        ("11@US", "5@US", "1@US", "1@US", "0.08@US", {"ground": "5", "floor_down": "0"}),
        ("12@US", "5@US", "1@US", "1@US", "0.08@US", {"ground": "5", "floor_down": None}),
        # 20 x 1 x 24.75 = 495, and 1000 at the nozzle; a floor more, 1500.2, is past its test
        ("12@US", "1000@US", "100@US", "2475@US", "20@US", {"ground": "1495", "floor_up": None}),
    ],
)
def test_both_ends_of_what_can_be_set(run, floor, pressure, flow, length, coefficient, cells):
    """A pump can be set from nothing up to the test pressure of the hose; beyond either the cell stays blank."""
    bed = {**BUMPER, "length": length, "end": {"kind": "fog", "flow": flow, "pressure": pressure}}
    hose = {"hose": "attack-1.75", "coefficient": coefficient, "origin": "measured", "test_pressure": "1500@US"}
    told = block(card(run, {**RIG, "floor": floor, "panel_step": "", "beds": [bed], "hoses": [hose]}), "set")
    shown = {head["code"]: cell for head, cell in reversed(list(zip(told["head"][1:], told["rows"][0]["cells"], strict=True)))}
    assert {code: shown[code] for code in cells} == cells


def test_a_faulty_floor_or_step_gives_no_figure_of_its_own(run):
    """Without a floor that can be read no floor is guessed; without such a step nothing is rounded; both are told."""
    told = card(run, {**RIG, "floor": "high", "panel_step": "five"})
    assert block(told, "set")["rows"][0]["cells"] == [None, "101", None, None, None, "113", "126"]  # 100.65, 113.5, 126.3
    assert [each["field"] for each in told["faults"]] == ["floor", "panel_step"]


@pytest.mark.parametrize(
    ("profile", "section", "tip", "field"),
    [
        ({}, "long", {}, "section"), ({}, "50", {"id": "wide"}, "tip"), ({}, "50", {"usual": "hard"}, "pressure"),
    ],
)
def test_refused_by_name(run, profile, section, tip, field):
    """What is no number is refused at its own field."""
    tips = [{"id": "1.5", "label": "1 1/2", "usual": "80", "is_master": True, **tip}]
    with pytest.raises(CalcError) as refusal:
        run("rig.panel_card", "card", profile={**EMPTY, **profile}, shelf=catalogue.shelf(), units=units.shown_in("US"), section=section, tips=tips)
    assert (refusal.value.field, refusal.value.code) == (field, "not_a_number")
