"""PTO and front pumps drawn large: where power goes in each state, by drive, and the way there from a card."""
import re

from playwright.sync_api import expect

from site_src.content import data
from tests.phone.card import beside, hasten, open_card

WHY = data.words("why")
POWER, DRIVES = WHY["power"], WHY["drives"]


def flowing(page):
    """How many ways of each drawing carry power, in the order of the states."""
    return [drawing.locator(".path-way.line-flows").count() for drawing in page.get_by_role("img").all()]


def test_where_power_goes_state_by_state(take):
    """A PTO stands when out, a front pump's clutch turns with the engine; in pump both feed the pump, and rolling the wheels too."""
    page = take().open("why/drives/#pto")
    names = page.get_by_role("img")
    expect(names).to_have_count(3)
    # ways that carry power, by hand: engine to gearbox; and to the join; and to the pump; and to the wheels
    assert flowing(page) == [1, 3, 4]
    for place, said in enumerate((POWER["pto_road"], POWER["pto_pump"], POWER["pto_pump"])):
        assert said in names.nth(place).get_attribute("aria-label")
    assert POWER["wheels"] in names.nth(2).get_attribute("aria-label") and POWER["wheels"] not in names.nth(1).get_attribute("aria-label")
    page.get_by_role("radio", name=DRIVES["front"], exact=True).tap()
    expect(page.get_by_text(DRIVES["in_front"])).to_be_visible()
    assert flowing(page) == [2, 3, 4]  # the clutch's own side turns with the engine
    assert POWER["front_road"] in names.first.get_attribute("aria-label")


def test_a_split_shaft_and_what_moves_its_collar(take):
    """Power goes to the wheels or to the pump, never to both; air, a motor's screw and a lever's rod are each drawn and said."""
    page = take().open("why/drives/")
    drawings = page.get_by_role("img")
    expect(drawings).to_have_count(3)
    # by hand: on the road engine to gearbox, shaft, wheels; between the engine alone; in pump engine, shaft, pump
    assert flowing(page) == [3, 1, 3]
    for place, turns in enumerate((POWER["wheels"], None, POWER["pump"])):
        named = drawings.nth(place).get_attribute("aria-label").split(".")[0]
        assert [part for part in (POWER["wheels"], POWER["pump"]) if part in named] == ([turns] if turns else [])
    expect(drawings.last).to_have_accessible_name(re.compile(re.escape(POWER["air_pump"])))
    for shift in ("electric", "lever"):
        page.get_by_role("radio", name=DRIVES[shift], exact=True).tap()
        expect(page.get_by_text(DRIVES[f"lost_{shift}"])).to_be_visible()
        expect(drawings.last).to_have_accessible_name(re.compile(re.escape(POWER[f"by_{shift}"])))
    expect(page.get_by_text(POWER["rod"], exact=True)).to_have_count(3)


def test_a_card_leads_to_its_drive(take):
    """Below a step of a PTO rig stands the way to its own picture, large."""
    handset = hasten(take())
    beside(handset, drive="pto", transmission="manual")
    card = open_card(handset, "scene", rig={"drive": "pto", "transmission": "manual"})
    card.page.get_by_role("link", name=POWER["line_large"]).tap()
    expect(card.page.get_by_role("radio", name=DRIVES["pto"], exact=True)).to_be_checked()
