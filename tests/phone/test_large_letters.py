"""Letters twice as large on a phone 320 wide: no page is wider than the screen, and no word runs out of what holds it."""
import pytest

from site_src.content import fleet
from tests.phone.card import beside
from tests.phone.folds import UNFOLDED
from tests.phone.keyboard import MEASURE
from tests.site import pages

SMALL = {"width": 320, "height": 568}
LARGE = "document.documentElement.style.fontSize = '200%'"
# the pages of one rig or one table many times over: one of each speaks for the others
MANY = ("rigs/", "tables/")
ADDRESSES = ["rigs/", "tables/", "tables/US/friction/", *(address for address in pages.addresses() if not address.startswith(MANY))]
GROUPS = {
    "water": ("foam/", "water/"), "checks": ("checks/", "log/"), "rig": ("rig/", "rigs/"), "shift": ("shift/",), "test": ("test/",), "why": ("why/", "practice/"), "help": ("help/",),
}
REST = [address for address in ADDRESSES if not address.startswith(tuple(start for starts in GROUPS.values() for start in starts))]


@pytest.mark.parametrize("group", [*GROUPS, "rest"])
def test_no_page_is_wider_than_the_screen(take, group):
    """Beside a rig, with what folds unfolded: a page scrolls down only. Tables scroll in boxes of their own."""
    handset = take(viewport=SMALL)
    beside(handset, **fleet.load()["tollgate-engine-1"])
    page = handset.open("all/")
    addresses = [address for address in ADDRESSES if address.startswith(GROUPS[group])] if group != "rest" else REST
    assert addresses
    wide = {}
    for address in addresses:
        page.goto(handset.host.origin + address)
        page.wait_for_load_state("networkidle")
        page.evaluate(UNFOLDED)
        page.evaluate(LARGE)
        page.evaluate(MEASURE)
        unfit = page.evaluate("measure.overhang(320).concat(measure.cut())")
        if unfit:
            wide[address] = unfit
    assert wide == {}


@pytest.mark.parametrize("address", ["", "danger/"])
def test_doors_of_an_emergency_hold_whole_words(take, address):
    """The keys in the dock of the start page and of Danger: no word broken, and the page has more of the screen than they."""
    page = take(viewport=SMALL).open(address)
    page.evaluate(LARGE)
    dock = page.locator(".dock")
    broken = dock.evaluate("""(dock) => [...dock.querySelectorAll('.key')].filter((key) => {
      key.style.overflowWrap = 'normal';
      return key.scrollWidth > key.clientWidth;
    }).map((key) => key.textContent)""")
    assert broken == []
    assert dock.bounding_box()["height"] <= SMALL["height"] / 2
