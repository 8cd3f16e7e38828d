"""Every page that takes a number, with the way to its number fields."""
import functools

from site_src.content import reckoners
from tests import service_records
from tests.phone import ways
from tests.phone.folds import UNFOLDED, unfold
from tests.phone.test_rig import with_engine

NUMBERS = "input[inputmode=decimal], input[inputmode=numeric], .cell input"  # a cell brings the keys up at its second touch
# Marks the number fields in sight, and says what stands in each.
MARKED = """(numbers) => {
  document.activeElement.blur();
  const inSight = [...document.querySelectorAll(numbers)].filter((field) => field.checkVisibility());
  inSight.forEach((field, place) => field.setAttribute("data-place", place));
  return inSight.map((field) => field.value);
}"""


def rig_page(handset):
    """A rig's profile with hose and beds, and the readings of a hose."""
    page = with_engine(handset)
    unfold(page)
    page.locator("#field-tank").wait_for(state="attached")
    return page


def unfinished(part):
    """A part of a service test that is still to be filled in."""
    return ways.service(f"test/run/#{{id}}/{part}", service_records.an_unfinished_record)


def water_page(address):
    """A water or foam page with the tray of its first number open: one is open at a time."""
    def opened(handset):
        return with_a_number(ways.plain(address)(handset))

    return opened


def with_a_number(page):
    """A page whose entries open one at a time, with the first open that takes a number, once its script has drawn it."""
    page.locator(", ".join(f"[data-drawn] {part}" for part in (".entry-row", "summary", *NUMBERS.split(", ")))).first.wait_for(state="attached")
    page.evaluate(UNFOLDED)
    rows = page.locator(".entry-row")
    for place in range(rows.count()):
        if page.locator(NUMBERS).count():
            break
        rows.nth(place).tap()
    page.locator(NUMBERS).first.wait_for(state="attached")
    return page


# every page that takes a number, and how many fields it has at least
PAGES = {
    **{f"pressure {tab}": (functools.partial(ways.wye, tab=tab), 4 if tab == "more" else 5) for tab in ("length", "nozzle", "height", "more")},
    **{f"water/{name}/": (water_page(f"water/{name}/"), 1) for name in reckoners.WATER},
    "foam/": (water_page("foam/"), 1),
    "rig/": (rig_page, 20),
    "why/speeds/": (ways.plain("why/speeds/"), 3),
    "why/heat/": (ways.plain("why/heat/"), 3),
    "diagnose/leak/": (ways.plain("diagnose/leak/"), 1),
    "test/quick/": (ways.raising, 1),
    **{f"test/run/{part}": (unfinished(part), least) for part, least in (("site", 5), ("capacity", 2), ("vacuum", 1), ("governed", 1))},
}


def opened(handset, name):
    """A page of PAGES with its number fields marked, and what stands in each."""
    opener, least = PAGES[name]
    page = opener(handset)
    standing = marked(page)
    assert len(standing) >= least
    return page, standing


def marked(page):
    """What stands in each number field, everything unfolded; each is marked with its place."""
    page.locator(NUMBERS).first.wait_for(state="attached")
    page.evaluate(UNFOLDED)
    return page.evaluate(MARKED, NUMBERS)


def at(page, place):
    return page.locator(f"[data-place='{place}']")
