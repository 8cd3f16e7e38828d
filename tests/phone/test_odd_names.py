"""Addresses, choices and names that no page would make: the page says what it has to say, and no fault of its own."""
import re

import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests.phone.card import beside
from tests.phone.layout import fresh_layout
from tests.phone.rounds import MIDSHIP
from tests.phone.sheet import open_sheet
from tests.phone.test_bad_input import WATCH, assert_unharmed

B = data.words("bay")
R = data.words("rig")


@pytest.mark.parametrize("rig", [None, MIDSHIP], ids=["no rig", "rig"])
@pytest.mark.parametrize("address", ["checks/round/", "checks/defect/", "checks/record/", "checks/release/", "test/years/"])
def test_odd_fragments(take, address, rig):
    """Half an escape, a name that every object has, or a text without end: the page says what it has to say, and no fault of its own."""
    handset = take()
    handset.context.add_init_script(WATCH)
    if rig:
        beside(handset, **rig)
    page = handset.context.new_page()
    for fragment in ("%", "%E0%A4", "__proto__", "constructor", "x" * 20_000):
        page.goto("about:blank")
        page.goto(f"{handset.host.origin}{address}#{fragment}")
        expect(page.get_by_role("main")).to_contain_text(re.compile(r"\w+ \w+ \w+"))
        expect(page.locator("[aria-busy=true]")).to_have_count(0)
        expect(page.locator("#down")).to_be_hidden()
        assert_unharmed(page)


@pytest.mark.parametrize(("fragment", "words"), [("%", B["defect"]["lost"]), ("nobody", B["record"]["none"]), ("", None)])
def test_link_to_a_defect_that_is_not_here(take, fragment, words):
    """The form of a new defect says why it stands in the place of one."""
    handset = take()
    beside(handset, **MIDSHIP)
    page = handset.open(f"checks/defect/#{fragment}")
    expect(page.get_by_role("heading", name=B["defect"]["new"])).to_be_visible()
    alert = page.get_by_role("main").get_by_role("alert")
    expect(alert).to_have_text([words] if words else [])


@pytest.mark.parametrize("system", ["constructor", "__proto__", "toString"])
def test_units_that_every_object_has(take, system):
    """Units that are none are the language's own: Pressure says its figure, the phone's check its units, and Tank its minutes."""
    handset = take()
    handset.open("404.html").evaluate("(system) => localStorage.setItem('units', system)", system)
    fresh_layout(handset)
    open_sheet(handset, "water/tank/").shows("4.0", "min")
    expect(handset.open("all/phone/").get_by_text(re.compile("^en, "))).not_to_contain_text(re.compile("undefined|function"))


LEFTS = """(node, tail) => {
  const range = document.createRange();
  const whole = document.createTreeWalker(node, NodeFilter.SHOW_TEXT);
  for (let part; (part = whole.nextNode());) {
    const place = part.data.lastIndexOf(tail);
    if (place < 0) continue;
    return [...tail].map((_, count) => { range.setStart(part, place + count); range.setEnd(part, place + count + 1); return range.getBoundingClientRect().left; });
  }
}"""


@pytest.mark.parametrize("name", ["\u202eEngine 9", "\u05d0\u05d1\u05d2 9", "Engine \u2067 9"])
def test_a_name_turns_nothing_beside_it(take, name):
    """What a sentence says after a name that reads from the right, or has a mark that turns text, stands in its order."""
    handset = take()
    beside(handset, **{**MIDSHIP, "name": name})
    page = handset.open("rig/")
    page.get_by_role("button", name=R["rig"]["remove"], exact=True).tap()
    key = page.locator(".rig-remove .key-danger")
    lefts = key.evaluate(LEFTS, R["rig"]["remove_sure"].split("{name}")[1].strip())
    assert lefts == sorted(lefts)
    assert page.locator(".standing b").evaluate("(node) => getComputedStyle(node).unicodeBidi") == "isolate"
