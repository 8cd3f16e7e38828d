"""A finger on a number field: what is typed next stands there alone, on every page that takes a number."""
import pytest
from playwright.sync_api import expect

from site_src import reckoners
from tests import service_records
from tests.phone import screens
from tests.phone.test_rig import with_engine

NUMBERS = "input[inputmode=decimal], input[inputmode=numeric]"
# Marks the number fields in sight, everything unfolded, and says what stands in each.
MARKED = """(numbers) => {
  document.activeElement.blur();
  for (const part of document.querySelectorAll("main details")) part.open = true;
  const inSight = [...document.querySelectorAll(numbers)].filter((field) => field.checkVisibility());
  inSight.forEach((field, place) => field.setAttribute("data-place", place));
  return inSight.map((field) => field.value);
}"""
SELECTED = "(field) => field.value.slice(field.selectionStart, field.selectionEnd)"


def rig_page(handset):
    """A rig's profile with hose and beds, and the readings of a hose."""
    page = with_engine(handset)
    page.locator("#field-tank").wait_for(state="attached")
    return page


def unfinished(part):
    """A part of a service test that is still to be filled in."""
    return screens.service(f"test/run/#{{id}}/{part}", service_records.an_unfinished_record)


# every page that takes a number, and how many fields it has at least
PAGES = {
    "pressure": (screens.wye, 5),
    **{f"water/{name}/": (screens.plain(f"water/{name}/"), 2) for name in reckoners.WATER},
    "foam/": (screens.plain("foam/"), 3),
    "rig/": (rig_page, 20),
    "why/speeds/": (screens.plain("why/speeds/"), 3),
    "why/heat/": (screens.plain("why/heat/"), 3),
    "diagnose/leak/": (screens.plain("diagnose/leak/"), 1),
    "test/quick/": (screens.raising, 1),
    **{f"test/run/{part}": (unfinished(part), least) for part, least in (("site", 5), ("capacity", 2), ("vacuum", 1), ("governed", 1))},
}


@pytest.mark.parametrize("name", PAGES)
def test_what_is_typed_after_a_tap_stands_alone(take, name):
    """10 typed over 0 is 10: a tap selects the whole entry, in every number field of every page."""
    opened, least = PAGES[name]
    page = opened(take())
    page.locator(NUMBERS).first.wait_for(state="attached")
    standing = page.evaluate(MARKED, NUMBERS)
    assert len(standing) >= least
    for place, before in enumerate(standing):
        field = page.locator(f"[data-place='{place}']")
        typed = "10" if before != "10" else "25"
        field.tap()
        page.keyboard.type(typed)
        expect(field).to_have_value(typed)


def test_a_second_tap_selects_again(lay):
    """150 typed into the field that was typed into a moment ago is 150, however it is reached."""
    field = lay.field("height")
    for typed in ("30", "-40", "150", "75"):  # taps that follow so fast are double taps, which choose a word
        field.tap()
        lay.page.keyboard.type(typed)
        expect(field).to_have_value(typed)


def test_focus_by_keyboard_selects(lay):
    """Tab, and the keyboard's own next key, come to an entry that the next digit replaces."""
    lay.field("length").focus()
    for _ in range(12):
        lay.page.keyboard.press("Tab")
        if lay.page.evaluate("document.activeElement.matches('input[inputmode]')"):
            break
    field = lay.page.locator("input:focus")
    field.press("7")
    expect(field).to_have_value("7")


def test_text_is_not_selected(handset):
    """A name is added to, not replaced."""
    page = rig_page(handset)
    page.evaluate(MARKED, NUMBERS)
    field = page.locator("#field-name")
    field.tap()
    assert field.evaluate(SELECTED) == ""
