"""A rig that is brought in: what is shown of it before it is taken, and names that two rigs may not share."""
import copy
import json

import pytest
from playwright.sync_api import expect

from site_src.content import data, fleet
from tests.phone.test_rig import bring, kept_rigs, press, taken, with_engine

R = data.words("rig")
ENGINE = fleet.load()["tollgate-engine-1"]


def changed():
    """The engine with a coefficient that is a tenth of the handbook's, less tank, a shorter bed, and one bed less."""
    profile = copy.deepcopy(ENGINE)
    profile["hoses"][0]["coefficient"] = "1.55@US"
    profile.update(tank="500@US", drive="pto")
    profile["beds"][1]["length"] = "150@US"
    del profile["beds"][2]
    return profile


def test_the_offer_shows_what_is_far_from_the_handbook(handset):
    """Before a rig is taken, its own hose figures stand beside the handbook's, a large difference is marked; by hand: 1.55 of 15.5 is 90 % less."""
    page = handset.open("rig/")
    bring(page, json.dumps(changed()).encode())
    far = page.locator(".offer .large")
    expect(far).to_have_text("1¾ in: C 1.55, measured. 90 % below the handbook's 15.5. Large difference: check it.")
    assert kept_rigs(page) == []
    expect(page.get_by_text(R["carry"]["changes"].format(name=ENGINE["name"]))).to_have_count(0)  # it replaces none
    bring(page, json.dumps(ENGINE).encode())  # C 11.4: a quarter less
    expect(page.locator(".offer")).to_contain_text("1¾ in: C 11.4, measured. 26 % below the handbook's 15.5.")
    expect(far).to_have_count(0)


def test_the_offer_shows_what_it_changes(handset):
    """Of a rig that is here already each changed field is shown in words, before it is replaced."""
    page = with_engine(handset)
    bring(page, json.dumps(changed()).encode())
    shown = page.locator(".offer")
    for line in ("Tank: 750 gal → 500 gal", "Pump drive: Midship, split shaft → PTO", "Own hose figures, 1¾ in, Coefficient: C 11.4 → C 1.55",
                 "Hose beds, Crosslay 1, Length: 200 ft → 150 ft", "Hose beds, Crosslay 2: removed"):
        expect(shown.get_by_role("listitem").filter(has_text=line)).to_be_visible()
    expect(shown.get_by_role("listitem")).to_have_count(6)  # and the figure beside the handbook's
    assert kept_rigs(page) == [ENGINE]
    press(page, "carry", "take_leave")
    assert kept_rigs(page) == [ENGINE]


def test_a_rig_of_the_same_name_takes_its_place_or_another_name(handset):
    """Another rig of the same name replaces the one here or comes as a copy under its own name: never two of one name."""
    page = with_engine(handset)
    twin = {**ENGINE, "id": "another", "name": ENGINE["name"].upper()}
    bring(page, json.dumps(twin).encode())
    press(page, "carry", "take_copy")
    expect(page.get_by_text(R["carry"]["taken"].format(name=twin["name"]))).to_be_visible()
    assert sorted(rig["name"].lower() for rig in kept_rigs(page)) == ["tollgate engine 1", "tollgate engine 1, copy"]
    bring(page, json.dumps(twin).encode())
    press(page, "carry", "take_replace")
    expect(page.get_by_text(R["carry"]["taken"].format(name=twin["name"]))).to_be_visible()
    assert sorted(rig["name"] for rig in kept_rigs(page)) == ["TOLLGATE ENGINE 1", "TOLLGATE ENGINE 1, copy"]


@pytest.mark.parametrize(
    ("content", "told"),
    [
        ([ENGINE, {**ENGINE, "id": "b"}], "two rigs in it are named Tollgate Engine 1. Give each its own name."),
        ({**ENGINE, "hoses": [ENGINE["hoses"][0]] * 2}, "Fix Own hose figures, row 2, Hose: Listed twice. Keep one row of it."),
        ({**ENGINE, "beds": [{**ENGINE["beds"][0], "length": "9000@US"}]}, f"Fix Hose beds, row 1, {ENGINE['beds'][0]['name']}, Length: 9000 stands there, 1 to 5000 ft is allowed."),
        ({**ENGINE, "tank": "many"}, "Fix Tank: many stands there. Digits only, such as 150 or 12.5."),
        ({**ENGINE, "drive": "steam"}, "Fix Pump drive: Choose one of these."),
    ],
)
def test_a_refusal_says_row_field_and_what_is_allowed(handset, content, told):
    """A refusal is a sentence with the row counted from 1, the field in words, and what is allowed."""
    page = handset.open("rig/")
    bring(page, json.dumps(content).encode())
    expect(page.locator("p.notice", has_text=R["carry"]["refused"].format(reason=told))).to_be_visible()
    assert kept_rigs(page) == []


def test_a_name_that_another_rig_has_is_said(handset):
    """New rigs get a name of their own; one that is typed and is another's is told at its field."""
    page = handset.open("rig/")
    bring(page, json.dumps(ENGINE).encode())
    taken(page, ENGINE["name"])
    press(page, "rig", "make")
    expect(page.locator("#field-name")).to_have_value(R["rig"]["new_name"])
    press(page, "rig", "make")
    expect(page.locator("#field-name")).to_have_value(R["rig"]["new_name"] + " 2")
    page.locator("#field-name").fill(" tollgate engine 1")
    expect(page.locator("#field-name-refused")).to_have_text(R["carry"]["same_name"])
    page.locator("#field-name").fill("Tollgate Engine 9")
    expect(page.locator("#field-name-refused")).to_have_count(0)
