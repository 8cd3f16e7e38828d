"""A finger on a number field: what is typed next stands there alone, on every page that takes a number."""
import pytest
from playwright.sync_api import expect

from tests.phone.keyboard import Keys
from tests.phone.numbers import PAGES, at, marked, opened, rig_page

SELECTED = "(field) => field.value.slice(field.selectionStart, field.selectionEnd)"


@pytest.mark.parametrize("name", PAGES)
def test_what_is_typed_after_a_tap_stands_alone(take, name):
    """10 typed over 0 is 10: a tap selects the whole entry, in every number field of every page."""
    page, standing = opened(take(), name)
    for place, before in enumerate(standing):
        field = at(page, place)
        typed = "10" if before != "10" else "25"
        field.tap()
        page.keyboard.type(typed)
        expect(field).to_have_value(typed)


def test_a_second_tap_selects_again(layout):
    """150 typed into the field that was typed into a moment ago is 150, however it is reached."""
    field = layout.field("height")
    for typed in ("30", "-40", "150", "75"):  # taps that follow so fast are double taps, which choose a word
        field.tap()
        layout.page.keyboard.type(typed)
        expect(field).to_have_value(typed)


def test_an_answer_between_tap_and_digit(layout):
    """An entry that a late answer changed under the finger is replaced whole all the same; a caret that was put somewhere stays there."""
    field = layout.field("height")
    field.tap()
    expect(field).to_be_focused()
    field.evaluate("(field) => { field.value = '50'; }")
    layout.page.keyboard.type("10")
    expect(field).to_have_value("10")
    field.tap()
    field.evaluate("(field) => field.setSelectionRange(1, 1)")
    layout.page.keyboard.type("2")
    expect(field).to_have_value("120")


def test_focus_by_keyboard_selects(layout):
    """Tab, and the keyboard's own next key, come to an entry that the next digit replaces."""
    field = layout.field("length")
    expect(field).not_to_have_value("7")
    layout.page.locator(".tab").first.focus()  # one entry stands in the tray at a time, after the keys that choose it
    Keys(layout.page).type(field, "7")
    expect(field).to_have_value("7")


def test_text_is_not_selected(handset):
    """A name is added to, not replaced."""
    page = rig_page(handset)
    marked(page)
    field = page.locator("#field-name")
    field.tap()
    assert field.evaluate(SELECTED) == ""
