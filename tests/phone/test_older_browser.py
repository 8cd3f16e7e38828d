"""A browser of early 2022 has no :has, no container queries, no dvh and none of the later functions: pages compute, nothing is cut off, each act can be touched."""
import pytest
from playwright.sync_api import expect

from tests import service_records
from tests.phone import older, ways
from tests.phone.card import beside, open_card
from tests.phone.proof import T as SERVICE
from tests.phone.rounds import MIDSHIP, T as BAY, key
from tests.phone.screens import SCREENS
from tests.phone.test_keyboard import test_a_lay as lay_by_keys
from tests.phone.words import SITE

# where most hangs on what such a browser does not know, and a screen of each kind
OPENED = [
    "start", "pressure/", "pressure, its more", "water/hydrant/", "card pausing", "card in danger", "test run", "test governor", "diagnosis with radio words",
    "diagnose/lights/", "checks item", "checks start", "practice by lamps", "rigs/tollgate-engine-1/",
]


@pytest.mark.parametrize("name", OPENED)
def test_a_screen(take, name):
    """It draws without a fault, is no wider than the phone, and no key of its dock lies under another thing or off the screen."""
    page = SCREENS[name](older.age(take()))
    expect(page.locator("main")).not_to_be_empty()
    expect(page.locator("#down")).to_be_hidden()
    assert page.evaluate("document.documentElement.scrollWidth") <= page.viewport_size["width"]
    for key in page.locator("main .dock :is(button, a):not(:disabled)").filter(visible=True).all():
        key.tap(trial=True)


def test_the_panel_card_shows_its_figures(take):
    """Where it cannot follow which column is chosen, it offers no choice and shows all of them, one way or the other in sight."""
    page = older.age(take()).open("rigs/tollgate-engine-1/")
    expect(page.locator(".sheet-columns")).to_be_hidden()
    for figure in page.locator(".sheet-set tbody tr").first.locator("td").all():
        figure.scroll_into_view_if_needed()
        expect(figure).to_be_in_viewport(ratio=0.9)


def test_focus_moves_without_a_fault(handset):
    """What has the focus is drawn anew and taken away as on any other."""
    lay_by_keys(older.age(handset))
    expect(handset.context.pages[0].get_by_text(SITE["down"]["fault"])).to_be_hidden()


def test_a_screen_that_may_sleep(take):
    """Where the screen cannot be held on, or the phone refuses it, a card and a test's run say so; where it can, the card says that."""
    refusing = take()
    refusing.context.add_init_script("if (navigator.wakeLock) navigator.wakeLock.request = () => Promise.reject(new DOMException('battery', 'NotAllowedError'));")
    for handset, sentence in ((older.age(take()), "sleeps"), (refusing, "sleeps"), (take(), "awake")):
        page = open_card(handset, "scene").page
        page.get_by_text(SITE["shift"]["record"]).tap()
        expect(page.get_by_text(SITE["shift"][sentence])).to_be_visible()
    run = ways.service("test/run/#{id}/capacity", service_records.an_unfinished_record)(older.age(take()))
    expect(run.get_by_text(SERVICE["test"]["sleeps"])).to_be_visible()


def test_no_key_for_a_camera_that_reads_no_codes(take):
    """Codes are shown, and read by the phone's own camera: the page has no key for what its browser cannot do."""
    handset = older.age(take())
    beside(handset, **MIDSHIP)
    page = handset.open("checks/log/")
    expect(key(page, BAY["codes"]["show"])).to_be_visible()
    expect(key(page, BAY["codes"]["read"])).to_have_count(0)
