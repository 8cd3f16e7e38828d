"""What a link brings is shown, and nothing of it is written before somebody changes something here: a page opened plainly has the phone's own."""
import re

import pytest
from playwright.sync_api import expect

from calc.teaching import handed
from site_src.content import data, fleet
from tests.phone.card import beside
from tests.phone.diagnosis import ORDERS, begin
from tests.phone.layout import Layout, open_layout
from tests.phone.rounds import MIDSHIP, T
from tests.phone.sheet import TOLD, Sheet, open_sheet
from tests.phone.store import ALL, put
from tests.phone.test_bad_input import GOOD, coded
from tests.phone.test_hostile import TANK
from tests.phone.test_layouts_kept import PSI, P, with_length
from tests.phone.test_rig import ENGINE, R
from tests.phone.words import SITE
from tests.unit.bay.logs import defect

PAIR = data.words("practice")["debrief"]
OURS = {"rig_id": "rig-1", "rig_name": "Pump of the day"}
HANDED = {"what": "Oil below the pump", "seen": "drops", "origin": "diagnosis", "class": "out_of_service", "scope": "pump"}


def shows_text(text):
    return lambda page: expect(page.get_by_role("main").get_by_text(text, exact=True).first).to_be_visible()


def layout_shows(psi):
    return lambda page: Layout(page).shows(psi)


def tank_shows(minutes):
    return lambda page: Sheet(page, "tank").shows(minutes, "min")


def looks(page):
    expect(page.locator(".look")).to_be_visible()


def release_has(ticked):
    return lambda page: expect(page.get_by_role("button", name="Low gear oil")).to_have_attribute("aria-pressed", "true" if ticked else "false")


def what_is(text):
    return lambda page: expect(page.get_by_label(T["defect"]["what"])).to_have_value(text)


# what a page shows by a link, and opened plainly; by hand: 15.5 x 2.25 a hundred feet and 100 at the nozzle; 600 gal at 100 and 200 gpm
LINKS = {
    "layout": (f"pressure/#layout={coded(GOOD)}", layout_shows(205), "pressure/", layout_shows(135)),
    "water": (f"water/tank/#with={coded({**TANK, 'flow': '100@US'})}", tank_shows("6.0"), "water/tank/", tank_shows("3.0")),
    "diagnosis": (f"diagnose/#from={coded({'signs': {'moves': 'seen'}})}", shows_text(ORDERS["moved"]["do"][0]), "diagnose/", looks),
    "rig": (f"rig/{fleet.packed(ENGINE)}", shows_text(R["carry"]["take_title"]), "rig/", shows_text(OURS["rig_name"])),
    "defect": (f"checks/defect/#new={coded(HANDED)}", what_is(HANDED["what"]), "checks/defect/", what_is("Half written")),
    "release": ("checks/release/#d1", release_has(True), "checks/release/", release_has(False)),
    "hidden fault": (f"practice/#hid={handed.plant('to_pump', 'no_air', 7)}", shows_text(PAIR["taken"]), "practice/", shows_text(PAIR["who_alone"])),
}


@pytest.fixture(scope="module")
def phone(take_for_module):
    """A phone with a rig, a layout, a tank, a diagnosis under way, a defect in the log and one half written."""
    phone = take_for_module()
    beside(phone, **MIDSHIP)
    put(phone, "keepRecord", "bay", {**defect("d1"), **OURS})
    layout = open_layout(phone)
    layout.type("length", "100")
    layout.shows(135)
    layout.page.close()
    tank = open_sheet(phone, "water/tank/")
    tank.type("tank", "750")
    tank.type("flow", "200")
    tank.shows("3.0", "min")
    tank.page.close()
    page = phone.open("diagnose/")
    begin(page, "light_flickers")
    looks(page)
    page.close()
    page = phone.open("checks/defect/")
    page.get_by_label(T["defect"]["what"]).fill("Half written")
    page.close()
    return phone


def kept(page):
    """All that a phone holds: its database, and what stands in the notes of its browser."""
    return page.evaluate(ALL), page.evaluate("Object.entries(localStorage).sort()")


def has_its_own(phone, plain, own):
    """Opened plainly the page has what is this phone's own."""
    page = phone.open(plain)
    own(page)
    page.close()


@pytest.mark.parametrize(("link", "shown", "plain", "own"), LINKS.values(), ids=LINKS)
def test_a_link_alone_writes_nothing(phone, link, shown, plain, own):
    """It shows what it brings; database and notes are as they were, and a new tab has the phone's own."""
    page = phone.open(plain)
    own(page)
    page.wait_for_timeout(100)  # an answer is kept a moment after it stands
    before = kept(page)
    page.close()
    page = phone.open(link)
    shown(page)
    page.wait_for_timeout(100)
    assert kept(page) == before
    page.close()
    has_its_own(phone, plain, own)


@pytest.mark.parametrize("name", ["layout", "water"])
def test_a_link_stays_in_the_address_until_something_is_changed(phone, name):
    """A reload shows it again, a skip to the page leaves it, and Back brings the phone's own, with nothing written."""
    link, shown, plain, own = LINKS[name]
    page = phone.open(plain)
    own(page)
    page.wait_for_timeout(100)
    before = kept(page)
    page.evaluate("(fragment) => { location.hash = fragment; }", link.partition("#")[2])
    shown(page)
    page.reload()
    shown(page)
    page.evaluate("() => { location.hash = 'page'; }")
    shown(page)
    page.go_back()
    shown(page)
    page.go_back()
    own(page)
    assert kept(page) == before
    page.close()


@pytest.mark.parametrize("address", ["checks/round/#daily", "pressure/"])
def test_skip_to_the_page_changes_no_address(phone, address):
    """By keys: the focus is on the page, and what the address says it shows is still there."""
    page = phone.open(address)
    page.get_by_role("main").get_by_role("button").first.wait_for()
    skip = page.get_by_role("link", name=SITE["site"]["skip"])
    skip.focus()
    page.keyboard.press("Enter")
    expect(page.get_by_role("main")).to_be_focused()
    assert page.url == phone.host.origin + address
    page.close()


@pytest.mark.parametrize("name", ["layout", "water"])
def test_a_link_that_is_handed_on_untouched_stays_a_link(phone, name):
    """Share does not make it this phone's own: a reload shows it as a link's still."""
    link, shown, plain, own = LINKS[name]
    page = phone.open(link)
    shown(page)
    key = P["share"] if name == "layout" else TOLD["reckon"]["share"]
    page.get_by_role("button", name=key, exact=True).tap()
    expect(page.locator(".beside").get_by_text(re.compile("|".join(map(re.escape, SITE["link"].values()))))).to_be_visible()
    page.reload()
    shown(page)
    expect(page.get_by_text(P["is_linked"] if name == "layout" else TOLD["reckon"]["is_linked"])).to_be_visible()
    page.close()
    has_its_own(phone, plain, own)


@pytest.mark.parametrize("way", ["new tab", "same tab", "after a reload"])
def test_followed_link_is_one_undo_away(handset, take, way):
    """A link shows its layout; one Undo brings back what was worked on, and nothing of the link stays in the address."""
    link = with_length(take(), "300").link()
    layout = with_length(handset, "100")
    if way == "new tab":
        layout = open_layout(handset, link)
    else:
        layout.page.evaluate("(link) => { location.hash = link; }", link)
    layout.shows(PSI["300"])
    expect(layout.page.get_by_text(P["is_linked"])).to_be_visible()
    if way == "after a reload":
        layout.page.reload()
        layout.shows(PSI["300"])
    layout.press("undo")
    layout.shows(PSI["100"])
    assert "#" not in layout.page.url
    layout.page.reload()
    layout.shows(PSI["100"])


def test_followed_link_that_was_changed_is_two_undos_away(handset, take):
    """Once changed here it is this phone's, in every tab; one Undo brings the link's layout, one more what was worked on before."""
    link = with_length(take(), "300").link()
    with_length(handset, "100").page.close()
    layout = open_layout(handset, link)
    layout.shows(PSI["300"])
    layout.type("length", "350")
    layout.shows(PSI["350"])
    assert "#" not in layout.page.url
    open_layout(handset).shows(PSI["350"])
    layout.page.reload()
    layout.shows(PSI["350"])
    for psi in (PSI["300"], PSI["100"]):
        layout.press("undo")
        layout.shows(psi)


def test_followed_link_over_the_example(handset, take):
    """A phone on which nothing was worked on has its example back by one Undo, marked as one."""
    link = with_length(take(), "300").link()
    layout = open_layout(handset, link)
    layout.shows(PSI["300"])
    expect(layout.page.get_by_text(P["example"])).to_have_count(0)
    layout.press("undo")
    layout.shows(PSI["200"])
    expect(layout.page.get_by_text(P["example"]).first).to_be_visible()
    open_layout(handset).shows(PSI["200"])


def test_followed_figures_of_a_water_page_are_one_touch_away(handset):
    """Before and after one of a link's figures is changed, Put back has what was entered; until then a new tab has it too."""
    sheet = open_sheet(handset, "water/tank/")
    sheet.type("flow", "200")
    sheet.shows("3.0", "min")  # by hand: 600 / 200
    link = "#" + LINKS["water"][0].partition("#")[2]
    back = sheet.page.get_by_role("button", name=P["put_back"], exact=True)
    sheet.page.evaluate("(link) => { location.hash = link; }", link)
    sheet.shows("6.0", "min")
    open_sheet(handset, "water/tank/").shows("3.0", "min")
    back.tap()
    sheet.shows("3.0", "min")
    expect(sheet.page.get_by_text(TOLD["reckon"]["is_linked"])).to_have_count(0)
    sheet.page.evaluate("(link) => { location.hash = link; }", link)
    sheet.shows("6.0", "min")
    sheet.type("flow", "150")
    sheet.shows("4.0", "min")
    assert "#" not in sheet.page.url
    open_sheet(handset, "water/tank/").shows("4.0", "min")
    back.tap()
    sheet.shows("3.0", "min")
    sheet.page.reload()
    sheet.shows("3.0", "min")
