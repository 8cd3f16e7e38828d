"""The panel card's figures."""
import pytest

from site_src.content import catalogue, fleet, units

RIG = fleet.load()["tollgate-engine-1"]  # of our own invention; every figure below is worked by hand from it


def card(run, profile=RIG, system="US", section="50@US"):
    return run("rig.panel_card", "card", profile=profile, shelf=catalogue.shelf(), units=units.shown_in(system), section=section,
               tips=[tip for tip in catalogue.tip_choices() if tip["family"] == "customary"])


def block(told, code):
    return next(each for each in told["blocks"] if each["code"] == code)


@pytest.mark.parametrize(
    ("name", "cells"),
    [
        # C 11.4, 150 gpm: 25.65 psi per 100 ft; nozzle 75. Floors of 12 ft are 5.208 psi. To the nearest 5.
        # down 95.4, ground 100.65, up 105.9, 111.1, 116.3; with 150 and 200 ft: 113.5, 126.3
        ("Front bumper", ["95", "100", "105", "110", "115", "115", "125"]),
        # 250 ft at 150 gpm and 100 psi: 158.9, 164.1, 169.3, 174.5, 179.7; 300 and 350 ft: 176.95, 189.8
        ("Crosslay 2", ["160", "165", "170", "175", "180", "175", "190"]),
    ],
)
def test_beds(run, name, cells):
    """A bed stands with its pressure on the ground, at each floor, and with hose added, to the panel's step."""
    row = next(row for row in block(card(run), "set")["rows"] if row["name"] == name)
    assert row["cells"] == cells
    assert row["over"] == []


def test_what_a_bed_is_drawn_by(run):
    """A bed with hose says its bore and length; what is piped to the pump has none."""
    drawn = {row["name"]: row["line"] for row in block(card(run), "set")["rows"]}
    assert drawn["Crosslay 2"] == {"bore_in": pytest.approx(1.75), "length_ft": pytest.approx(250)}
    assert drawn["Deck gun"] is None


def test_supply_tips_and_heights(run):
    """Hose in no bed counts as supply; the rig's tips and master-stream tips stand with their flows."""
    told = card(run)
    # 5 in, C 0.08: 0.08 x 25 x 1 at 500 gpm, 0.08 x 100 at 1000
    assert ["500", "2"] in [row["cells"] for row in block(told, "supply")["rows"]]
    assert ["1000", "8"] in [row["cells"] for row in block(told, "supply")["rows"]]
    tips = {row["name"]: row["cells"] for row in block(told, "tips")["rows"]}
    assert tips["15/16"] == ["50", "185"]  # 29.7 x 0.8789 x 7.071 = 184.6
    assert tips["1½"] == ["80", "598"]  # 29.7 x 2.25 x 8.944 = 597.7
    assert [row["cells"] for row in block(told, "heights")["rows"]][:2] == [["5"], ["10"]]  # 12 and 24 ft: 5.2, 10.4


def test_tips_ascend(run):
    """Tips stand by their diameter, the smallest first, whatever the order of the beds."""
    names = [row["name"] for row in block(card(run, {**RIG, "beds": [GUN, *RIG["beds"]]}), "tips")["rows"]]
    assert names == ["15/16", "1\u00a01/8", "1\u00a03/8", "1½", "1\u00a05/8", "1¾", "1\u00a07/8", "2"]  # a line that ended in 1 would leave a 7/8 tip


def test_what_is_not_known_stays_blank(run):
    """Without a floor height no floor is guessed; without an owner or a date a line is left to fill in."""
    bare = {key: value for key, value in RIG.items() if key not in ("floor", "owner", "dated", "panel_step")}
    told = card(run, bare)
    assert block(told, "set")["rows"][0]["cells"] == [None, "101", None, None, None, "113", "126"]  # unrounded: 100.65, 113.5, 126.3
    codes = [note["code"] for note in told["notes"]]
    assert {"owner_none", "dated_none"} <= set(codes) and "rounded" not in codes
    assert "heights" not in [each["code"] for each in told["blocks"]]


# by hand, C 11.4: Crosslay 2 as above; an annual test at 180 makes the working limit 162: its 164.1 is past that, so are 158.9 and the 5.2 of a floor at its low
# end, and the longest is past 180; Crosslay 1 flows 184.7 gpm, 38.9 psi per 100 ft, and with 100 ft more 166.7
def test_a_line_past_its_hose_is_marked(run):
    """Each pressure over the hose's working limit is marked on the card; one at its service test has no number, and is told from what does not apply."""
    weak = {**RIG, "hoses": [{**RIG["hoses"][0], "test_pressure": "180@US"}]}
    rows = {row["name"]: row for row in block(card(run, weak), "set")["rows"]}
    assert {name: row["over"] for name, row in rows.items()} == {"Front bumper": [], "Crosslay 1": [6], "Crosslay 2": [0, 1, 2, 3, 4, 5], "Rear blitz": [], "Deck gun": []}
    assert rows["Crosslay 2"]["cells"] == ["160", "165", "170", "175", "180", "175", None]  # 179.7, and 189.8
    assert {name: row["stopped"] for name, row in rows.items() if row["stopped"]} == {"Crosslay 2": [6]}
    stopped = next(row for row in block(card(run, {**RIG, "hoses": [{**RIG["hoses"][0], "test_pressure": "160@US"}]}), "set")["rows"] if row["name"] == "Crosslay 2")
    assert (stopped["cells"], stopped["detail"]) == ([None] * 7, {"code": "above_test_pressure"})


def test_more_flow_than_a_device_is_made_for_has_no_number(run):
    """1,000 gpm through a gun made for 800: words and no number, whatever the height."""
    gun = {**GUN, "device_most": "800@US", "end": {"kind": "fog", "flow": "1000@US", "pressure": "100@US"}}
    on_hose = {**gun, "name": "Monitor", "hose": "supply-5", "length": "100@US"}
    for row in block(card(run, {**RIG, "beds": [gun, on_hose]}), "set")["rows"]:
        assert (row["cells"], row["detail"]) == ([None] * 7, {"code": "device_over"})


def test_the_card_reads_in_metric(run):
    """By hand: 100.65 psi is 693.96 kPa and 6.94 bar; a step of 5 psi (34.5 kPa) is one of 25 kPa, or of 0.5 bar. C 11.4 is 18.02 in kPa."""
    for system, cell, step, coefficient in (("SI", "700", "25", "18"), ("bar", "7.0", "0.5", "0.18")):
        told = card(run, system=system, section="15@SI")
        assert block(told, "set")["rows"][0]["cells"][1] == cell
        notes = {note["code"]: note for note in told["notes"]}
        assert (notes["rounded"]["step"], notes["own_measured"]["coefficient"]) == (step, coefficient)


def test_a_step_that_the_unit_shows_is_kept(run):
    """3 psi stays 3 psi, and 30 kPa typed as that stays 30 kPa. By hand: 100.65 psi to the nearest 3 is 102; 693.96 kPa to the nearest 30 is 690."""
    assert block(card(run, {**RIG, "panel_step": "3@US"}), "set")["rows"][0]["cells"][1] == "102"
    assert block(card(run, {**RIG, "panel_step": "30@SI"}, system="SI", section="15@SI"), "set")["rows"][0]["cells"][1] == "690"


@pytest.mark.parametrize(("rule", "is_noted"), [("", False), ("square", False), ("gpm_times_n", True)])
def test_own_friction_rule_is_noted(run, rule, is_noted):
    """A card worked by C Q^2 L says so where the department has another rule."""
    told = card(run, {**RIG, "friction_rule": rule})["notes"]
    assert ({"code": "other_rule"} in told) == is_noted


def test_a_pressure_past_any_fire_hose_is_left_blank(run):
    """By hand: C 17.05 at 150 gpm is 38.36 psi per 100 ft; 75 and 3,690 ft of it are 1490.6, two floors up 1501.0, past its own test at 1,500."""
    beds = [{**RIG["beds"][0], "length": "3690@US"}]
    strong = {**RIG, "beds": beds, "hoses": [{"hose": "attack-1.75", "coefficient": "17.05@US", "origin": "measured", "test_pressure": "1500@US"}]}
    [row] = block(card(run, strong), "set")["rows"]
    assert (row["cells"], row["stopped"]) == (["1485", "1490", "1495", None, None, None, None], [3, 4, 5, 6])  # floors: 5.2 psi


def test_two_beds_with_one_tip_print_it_once(run):
    """A tip stands once on the card, however many beds end in it."""
    end = next(bed["end"] for bed in RIG["beds"] if bed["end"]["kind"] == "smooth")
    beds = [{**RIG["beds"][0], "name": name, "end": end} for name in ("Left", "Right")]
    names = [row["name"] for row in block(card(run, {**RIG, "beds": beds}), "tips")["rows"]]
    assert names == [row["name"] for row in block(card(run, {**RIG, "beds": beds[:1]}), "tips")["rows"]]
    assert len(names) == len(set(names))


FAULTS = [({"idle": "70000"}, "idle"), ({"pump_rated": "1x250@US"}, "pump_rated"), ({"hoses": [*RIG["hoses"], {"hose": "attack-2.5", "coefficient": "", "origin": "measured"}]}, "hoses.2.coefficient")]


@pytest.mark.parametrize(("fault", "place"), FAULTS, ids=[place for _, place in FAULTS])
def test_a_fault_elsewhere_changes_no_figure(run, fault, place):
    """With a fault that a line does not need, the card is made with the rig's own C 11.4, as without it, and the fault is told."""
    told = card(run, {**RIG, **fault})
    cells = {row["name"]: row["cells"] for row in block(told, "set")["rows"]}
    assert cells["Crosslay 2"] == ["160", "165", "170", "175", "180", "175", "190"]  # by hand, see test_beds
    assert [each["field"] for each in told["faults"]] == [place]
    assert card(run)["faults"] == []


def test_rows_that_need_a_fault_stay_blank(run):
    """A bed of 0 ft, and one whose hose has a faulty figure, stand on the card without a number; the others as they are."""
    beds = [RIG["beds"][0], {**RIG["beds"][1], "length": "0@US"}, *RIG["beds"][2:]]
    blank = [None] * 7
    rows = block(card(run, {**RIG, "beds": beds}), "set")["rows"]
    assert [row["name"] for row in rows] == [bed["name"] for bed in beds]
    assert (rows[1]["cells"], rows[1]["detail"]) == (blank, {"code": "faulty_bed"})
    assert rows[2]["cells"] == ["160", "165", "170", "175", "180", "175", "190"]
    hoses = [{**RIG["hoses"][0], "coefficient": "11,x"}, RIG["hoses"][1]]
    rows = block(card(run, {**RIG, "hoses": hoses}), "set")["rows"]
    assert [row["cells"] == blank for row in rows[:4]] == [True, True, True, False]  # the three of 1¾ in, and not the blitz
    assert rows[0]["detail"] == {"code": "faulty_hose"}


GUN = {"name": "Deck gun", "device": "master", "end": {"kind": "smooth", "tip": "1.375@US", "pressure": "80@US"}, "tips": ["1.5@US"]}


def test_a_deck_gun_stands_on_the_card(run):
    """By hand: 80 and the handbook's 25 for a master-stream appliance are 105; the builder's own 40 makes it 120. No hose can be added to it."""
    rows = block(card(run, {**RIG, "beds": [GUN, {**GUN, "name": "Prepiped", "device": "aerial", "loss": "40@US", "tips": []}]}), "set")["rows"]
    assert [(row["name"], row["cells"]) for row in rows] == [("Deck gun", [None, "105", None, None, None, None, None]), ("Prepiped", [None, "120", None, None, None, None, None])]
    assert [row["stopped"] for row in rows] == [[], []]
    assert rows[0]["detail"] == {"code": "piped_tips", "tips": "1\u00a03/8, 1½", "nozzle": "80", "loss": "25"}
    # by hand: 29.7 x 1.8906 x 8.944 = 502.2
    assert rows[1]["detail"] == {"code": "piped_smooth", "tip": "1\u00a03/8", "nozzle": "80", "loss": "40", "flow": "502"}


def test_a_monitor_on_hose(run):
    """By hand, 200 ft of 3 in (C 0.8 x 5.022^2 x 2 = 40.35), 25 of the appliance, 80: 145.4; 50 ft more 155.4; floors of 5.21: 140.2, 150.6, 155.8, 161.0."""
    bed = {**GUN, "name": "Monitor", "hose": "supply-3-on-2.5", "length": "200@US"}
    rows = block(card(run, {**RIG, "beds": [bed]}), "set")["rows"]
    assert rows[0]["cells"] == ["140", "145", "150", "155", "160", "155", "165"]
    # its other tip, 597.7 gpm: 0.8 x 5.977^2 x 2 = 57.2, and 25 and 80: 162.2
    assert (rows[1]["cells"][1], rows[1]["detail"]["tip"]) == ("160", "1½")


def test_supply_hose_stands_with_its_length_and_limit(run):
    """The supply hose a rig carries is told once, with how much of it and its working limit, whatever its figures are."""
    rows = block(card(run, {**RIG, "supply": [{"hose": "supply-5", "length": "1000@US", "limit": "180@US"}, {"hose": "supply-3-on-2.5", "length": "400@US"}]}), "supply")["rows"]
    assert [row["detail"] for row in rows if row["detail"]] == [
        {"code": "carried_limit", "length": "1000", "limit": "180"}, {"code": "carried", "length": "400"}]
    assert ["1000", "8"] in [row["cells"] for row in rows]  # by hand: 0.08 x 10^2


def test_a_cap_stands_at_its_bed(run):
    """A bed whose cap has a color says it; one without says nothing."""
    profile = {**RIG, "beds": [{**RIG["beds"][0], "cap": "yellow"}, *RIG["beds"][1:]]}
    first, *others = block(card(run, profile), "set")["rows"]
    assert first["cap"] == "yellow"
    assert not any("cap" in row for row in others)
