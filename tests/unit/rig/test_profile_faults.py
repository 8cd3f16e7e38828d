"""A rig with a fault: what is sound of it is used, what hangs on the fault is marked, and nothing is replaced unseen."""
import copy
import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError
from calc.layout import answer as layout_answer
from calc.rig import check, profile as rig_profile
from site_src.content import catalogue
from tests.unit.rig.test_profile import SHELF, US, a_rig, problems

# 1 3/4 in hose of C 10, measured. By hand: 10 x 1.5^2 x 2 + 100 = 145; with the handbook's C 15.5 it would be 169.75.
OWN = [{"hose": "attack-1.75", "coefficient": "10@US", "origin": "measured"}]
LINE = {"id": "A", "hose": "attack-1.75", "length": "200@US", "height": "0", "end": {"kind": "fog", "flow": "150@US", "pressure": "100@US"}}
FAULTS = [
    {"idle": "70000"}, {"pump_rated": "1x250@US"}, {"wye_loss": "ten"}, {"friction_rule": "by eye"}, {"floor": "3@US"}, {"colour": "red"}, {"units": ""},
    {"beds": [{"name": "A", "hose": "attack-1.75", "length": "0@US", "end": {"kind": "fog", "flow": "150@US", "pressure": "100@US"}}]},
    {"hoses": [*OWN, {"hose": "attack-2.5", "coefficient": "", "origin": "measured"}]},
    {"hoses": [{"hose": "garden", "coefficient": "5@US"}, *OWN]},
    {"supply": [{"hose": "attack-1.75", "length": "far"}]},
    {"hoses.0": "x"},
]


def shelf_of(run, profile):
    return run("rig.profile", "at_hand", profile=profile, shelf=SHELF, units=US)["shelf"]


def pressure_psi(run, shelf, **changes):
    return run("layout.answer", "answer", layout={"crew": "2", "lines": [{**LINE, **changes}]}, shelf=shelf, units=US)["pressure_psi"]


@pytest.mark.parametrize("fault", FAULTS, ids=[next(iter(fault)) + str(place) for place, fault in enumerate(FAULTS)])
def test_a_fault_elsewhere_leaves_the_rigs_own_figures(run, fault):
    """Any one fault that a line does not need changes nothing of its pressure, and is told."""
    shelf = shelf_of(run, a_rig(**{"hoses": OWN, **fault}))
    assert pressure_psi(run, shelf) == pytest.approx(145, rel=1e-9)
    assert len(shelf["faults"]) == 1


@pytest.mark.parametrize(
    ("hoses", "place"),
    [
        ([{"hose": "attack-1.75", "coefficient": "10x@US", "origin": "measured"}], "hoses.0.coefficient"),
        ([{"hose": "attack-1.75", "coefficient": "", "origin": "measured"}], "hoses.0.coefficient"),
        ([{"hose": "attack-1.75", "coefficient": "24@US", "origin": "handbook"}], "hoses.0.coefficient"),  # that of 1 1/2 in
        ([{**OWN[0], "test_pressure": "lots"}], "hoses.0.test_pressure"),
        ([*OWN, {"hose": "attack-1.75", "coefficient": "12@US", "origin": "declared"}], "hoses.1.hose"),
        ("all", "hoses"),
    ],
)
def test_a_line_that_needs_the_fault_has_no_number(run, hoses, place):
    """Hose whose own row has a fault is refused, with the line and the place; other hose is as it was."""
    shelf = shelf_of(run, a_rig(hoses=hoses))
    with pytest.raises(CalcError) as refused:
        pressure_psi(run, shelf)
    assert (refused.value.field, refused.value.code, refused.value.facts) == ("hose", "faulty_profile", {"line": "A", "place": place})
    if place != "hoses":
        assert pressure_psi(run, shelf, hose="attack-2.5") == pytest.approx(109, rel=1e-9)  # by hand: 2 x 2.25 x 2 + 100


@pytest.mark.parametrize("fault", [{"wye_loss": "ten"}, {"wye_from": "some"}])
def test_a_wye_that_needs_the_fault_has_no_number(run, fault):
    """A wye whose own loss has a fault is refused; with a loss typed for it, it is not."""
    shelf = shelf_of(run, a_rig(**{"wye_loss": "15@US", "wye_from": "100@US", **fault}))
    wye = {"id": "S", "hose": "attack-2.5", "length": "0", "height": "0", "device": "wye", "end": {"lines": [{**LINE, "length": "0"}]}}
    with pytest.raises(CalcError) as refused:
        run("layout.answer", "answer", layout={"crew": "2", "lines": [wye]}, shelf=shelf, units=US)
    place = next(iter(fault))
    assert (refused.value.field, refused.value.code, refused.value.facts) == ("loss", "faulty_profile", {"line": "S", "place": place})
    answer = run("layout.answer", "answer", layout={"crew": "2", "lines": [{**wye, "loss": "12@US"}]}, shelf=shelf, units=US)
    assert answer["pressure_psi"] == 112  # by hand: 100 at the nozzle and 12


@pytest.mark.parametrize("page", ["relay", "joint", "hydrant"])
def test_a_water_page_that_needs_the_fault_has_no_number(run, page):
    """A page of supply hose refuses hose whose own row has a fault."""
    from site_src.content import reckoners
    shelf = shelf_of(run, a_rig(hoses=[{"hose": "supply-5", "coefficient": "much"}]))
    with pytest.raises(CalcError) as refused:
        run(f"supply.{page}_answer", "answer", entries=reckoners.opening(page, "customary"), shelf=shelf, units=US)
    assert (refused.value.field, refused.value.code, refused.value.facts) == ("hose", "faulty_profile", {"place": "hoses.0.coefficient"})


def test_a_handbook_figure_follows_the_size(run):
    """Without a figure of its own a row has the handbook's of its size; one that nobody signed stays, as typed."""
    for hose, coefficient in (("supply-4", 0.2), ("attack-1.5", 24)):  # the hydraulics handout
        own = shelf_of(run, a_rig(hoses=[{"hose": hose, "coefficient": "", "origin": "handbook"}]))["hoses"][hose]
        assert (own["coefficient"], own["origin"]) == (coefficient, "handbook")
    for row, origin in (({"coefficient": "12@US", "origin": "handbook"}, "typed"), ({"coefficient": "15.6@US"}, "handbook"), ({"coefficient": "12@US", "origin": "declared"}, "declared")):
        own = shelf_of(run, a_rig(hoses=[{"hose": "attack-1.75", **row}]))["hoses"]["attack-1.75"]
        assert (own["coefficient"], own["origin"]) == (float(row["coefficient"][:-3]), origin)


def test_what_is_no_profile_gives_no_number(run):
    """Of a profile of another version nothing is used, and no hose answers by the handbook in its place."""
    for profile, place in (({"schema": 2, "id": "a"}, "schema"), (None, "profile")):
        shelf = shelf_of(run, profile)
        assert [fault["field"] for fault in shelf["faults"]] == [place]
        with pytest.raises(CalcError) as refused:
            pressure_psi(run, shelf)
        assert refused.value.facts["place"] == place
        assert shelf["faulty_appliances"] == {"wye": place}
        assert run("rig.profile", "at_hand", profile=profile, shelf=SHELF, units=US)["rig"] == {}


def test_sound_leaves_out_what_is_faulty(run):
    """What can be used of a profile: its sound fields and rows."""
    profile = a_rig(idle="70000", colour="red")
    profile["beds"][1]["length"] = "0@US"
    both = run("rig.profile", "at_hand", profile=profile, shelf=SHELF, units=US)
    own = both["rig"]
    assert (own["schema"], own["id"]) == (1, profile["id"])
    assert "idle" not in own and "colour" not in own and own["tank"] == profile["tank"]
    assert [bed["name"] for bed in own["beds"]] == ["Front bumper", "Crosslay 2", "Rear blitz"] + [bed["name"] for bed in profile["beds"][4:]]
    assert problems(run, {**own, "id": "a"}) == []
    assert both == {"shelf": shelf_of(run, profile), "rig": own, "beds": run("rig.profile", "beds_of", profile=own),
                    "faulty_beds": [{"name": profile["beds"][1]["name"], "place": "beds.1.length", "before": 1}]}


def test_a_faulty_bed_without_a_name(run):
    """It is called by its row, counted from one, and stands after the sound ones before it."""
    profile = a_rig()
    profile["beds"][2] = {**profile["beds"][2], "name": "", "length": "0@US"}
    both = run("rig.profile", "at_hand", profile=profile, shelf=SHELF, units=US)
    assert [(bed["name"], bed["before"]) for bed in both["faulty_beds"]] == [("3", 2)]
    rows = run("rig.profile", "bed_rows", profile=profile, own=both["rig"])
    assert [name for name, bed, _ in rows if bed is None] == ["3"]


def test_rows_that_are_no_rows(run):
    """What is no row is told and left out; no hose is spoiled by it."""
    both = run.unheld("rig.profile", "at_hand", profile=a_rig(hoses=[7, *OWN], beds=["one"], supply=[None]), shelf=SHELF, units=US)
    assert [fault["field"] for fault in both["shelf"]["faults"]] == ["hoses.0", "beds.0", "supply.0"]
    assert ([bed["name"] for bed in both["faulty_beds"]], both["beds"], both["rig"]["supply"]) == (["1"], [], [])
    assert pressure_psi(run, both["shelf"]) == pytest.approx(145, rel=1e-9)


def test_a_row_that_says_something_unknown_is_not_used(run):
    """A word that this version does not know may change what the row means, so its figure gives no number."""
    shelf = shelf_of(run, a_rig(hoses=[{**OWN[0], "colour": "red"}]))
    with pytest.raises(CalcError) as refused:
        pressure_psi(run, shelf)
    assert refused.value.facts["place"] == "hoses.0.colour"


TEXT = st.sampled_from(["", "1", "0", "-5", "150", "1,250", "1.5@US", "5@nowhere", "7@SI", "9@US@SI", " 75 ", "75" + " " * 40, "1" * 31, "x" * 45, "\u22125@bar", "1e3", "5000@US"])
END = st.fixed_dictionaries({"kind": st.sampled_from(["fog", "smooth"])}, optional={"flow": TEXT, "tip": TEXT, "pressure": TEXT})
BED = st.fixed_dictionaries(
    {"name": st.just("A"), "end": END},
    optional={"hose": st.sampled_from(["attack-1.75", "supply-5", "", "piped", "garden"]), "length": TEXT, "crew": st.sampled_from(["", "2", "9"]),
              "device": st.sampled_from(["", "master", "aerial"]), "loss": TEXT, "tips": st.lists(TEXT, max_size=3)})
HOSE = st.fixed_dictionaries({"hose": st.sampled_from(["attack-1.75", "supply-5", "attack-2.5"])}, optional={"coefficient": TEXT, "test_pressure": TEXT})
PROFILE = st.fixed_dictionaries({"beds": st.lists(BED, max_size=4)}, optional={
    "hoses": st.lists(HOSE, max_size=3), "supply": st.lists(st.fixed_dictionaries({"hose": st.just("supply-5"), "length": TEXT}, optional={"limit": TEXT}), max_size=2),
    "wye_loss": TEXT, "wye_from": TEXT, "floor": TEXT, "panel_step": TEXT})


@settings(max_examples=400, deadline=None)
@given(changes=PROFILE)
def test_whatever_is_taken_opens_every_page(changes):
    """Of any profile, sound or not: the shelf, the card and each usable bed come to an answer or a refusal; one that is taken has entries that every page keeps."""
    profile = {"schema": 1, "id": "a", "name": "A", "units": "US", **copy.deepcopy(changes)}
    both = rig_profile.at_hand(profile, SHELF, US)
    json.dumps(both)
    from calc.rig import panel_card
    panel_card.card(profile, SHELF, US, "50@US", [tip for tip in catalogue.tip_choices() if tip["family"] == "customary"])
    if not check.problems(profile, SHELF, US):
        assert both["rig"] == profile and "faults" not in both["shelf"]
    for bed in rig_profile.beds_of(both["rig"]):
        layout = rig_profile.layout_of(bed)
        typed = [layout["lines"][0]["length"], layout["lines"][0].get("loss", ""), *(bed["end"].get(name, "") for name in ("flow", "tip", "pressure"))]
        assert all(isinstance(text, str) and len(text) <= 30 and text.partition("@")[2] in ("", *US["systems"]) for text in typed)
        try:
            assert layout_answer.answer(layout, both["shelf"], US)["pressure_psi"] >= 0
        except CalcError as refused:
            assert refused.code in ("beyond_any_hose", "faulty_profile")


def test_a_working_limit_of_the_rigs_own_is_where_the_caution_begins(run):
    """5 in hose at 175 psi: under nine tenths of 200, no word; past a working limit of 170 that the rig has for it, a caution naming that."""
    end = {"kind": "inlet", "flow": "100@US", "pressure": "175@US"}  # by hand: 0.08 x 1^2 x 1 = 0.08 psi more at the pump
    layout = {"crew": "2", "lines": [{"id": "A", "hose": "supply-5", "length": "100@US", "height": "0", "end": end}]}
    for limit, expected in (("", []), ("170@US", [("caution", "above_working_pressure", "170")]), ("190@US", [])):
        shelf = shelf_of(run, a_rig(supply=[{"hose": "supply-5", "length": "1000@US", "limit": limit}]))
        told = run("layout.answer", "answer", layout=layout, shelf=shelf, units=US)["cautions"]
        assert [(each["level"], each["code"], each["limit"]) for each in told if "pressure" in each["code"]] == expected
