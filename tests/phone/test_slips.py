"""A slip of the thumb in a number field of any page: said at the field, no number that needs it, and nothing else lost."""
import re

import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests.phone.numbers import PAGES, at, marked, opened, with_a_number
from tests.phone.test_leak import QUICK
from tests.phone.words import SITE

LEAK = data.words("diagnose")["leak"]
SAID = SITE["refusal"]
# what is typed, and what the field says of it: what is wrong, or what is allowed
SLIPS = {
    "15o": SAID["not_a_number"],
    "1,2,3": SAID["not_a_number"],
    "1.000": SAID["thousands_or_decimals"].format(thousands="1000", decimals="1"),
    "99999999999": re.compile(rf"^({re.escape(SAID['too_large'])}|From \S+ to \S+\.)$"),
}
ANYWHERE = ["15o", "1,2,3"]  # of every kind of number; 1.000 is one inch or one mile where thousandths are read
MOST = 6  # fields of one page: the others are drawn by the same helper
LEFT_OUT = ("why/speeds/", "test/", "rig/")  # pages on which an empty field is one that is not filled in yet


def said(page, field):
    """The message at a field."""
    return page.locator(f"[id='{field.get_attribute('id')}-refused']")


def assert_no_number(page):
    """No answer stands, of those that a page works out from its entries."""
    expect(page.locator("main output:visible").filter(has_text=re.compile(r"\d"))).to_have_count(0)


def slip(page, place, text, message):
    field = at(page, place)
    field.fill(text)
    expect(field).to_have_attribute("aria-invalid", "true")
    expect(said(page, field)).to_have_text(message)
    expect(said(page, field)).to_be_visible()
    expect(field).to_have_value(text)
    assert_no_number(page)


@pytest.mark.parametrize("name", [name for name in PAGES if not name.startswith(("pressure ", "diagnose/leak/"))])
def test_slip_is_said_at_its_field_and_costs_nothing_else(take, name):
    """A typo, two marks, a thousand or a one, far too much, nothing: each said where it stands; the rest is there after a reload."""
    page, standing = opened(take(), name)
    for text, message in SLIPS.items():
        slip(page, 0, text, message)
    at(page, 0).fill("")
    if not name.startswith(LEFT_OUT):
        expect(said(page, at(page, 0))).to_have_text(re.compile(f"^({re.escape(SAID['empty'])}|Missing\\.)$"))
    assert_no_number(page)
    at(page, 0).fill(standing[0])
    for place in range(1, min(MOST, len(standing))):
        text = ANYWHERE[place % len(ANYWHERE)]
        slip(page, place, text, SLIPS[text])
        at(page, place).fill(standing[place])
        expect(at(page, place)).to_have_value(standing[place])
    last = min(MOST, len(standing)) - 1
    slip(page, last, "15o", SAID["not_a_number"])
    page.reload()
    with_a_number(page)
    assert marked(page) == [*standing[:last], "15o", *standing[last + 1:]]
    expect(said(page, at(page, last))).to_have_text(SAID["not_a_number"])


def test_slip_in_the_leak_hunt(handset):
    """A minute does not begin, and is not entered, on a reading that is none: it is said at its field, and what was entered stays."""
    handset.context.add_init_script(QUICK)
    page = handset.open("diagnose/leak/")
    start, enter = (page.get_by_role("button", name=LEAK[key], exact=True) for key in ("start", "enter"))
    first = page.get_by_label(LEAK["from"])
    for text, message in SLIPS.items():
        first.fill(text)
        start.tap()
        expect(said(page, first)).to_have_text(message)
        expect(enter).to_have_count(0)
    page.reload()
    expect(first).to_have_value("99999999999")
    first.fill("22")
    start.tap()
    last = page.get_by_label(LEAK["to"])
    last.fill("1,2,3")
    enter.tap()
    expect(said(page, last)).to_have_text(SLIPS["1,2,3"])
    expect(first).to_have_value("22")
