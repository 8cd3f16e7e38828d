"""Pressure's kept number stands before any module runs, marked as the last one, and only for exactly the layout that is kept."""
import pytest
from playwright.sync_api import expect

from tests.phone.handset import until
from tests.phone.layout import Layout, open_layout
from tests.phone.words import SITE, said

P = SITE["pressure"]
LAST = "JSON.parse(localStorage.getItem('answer:pressure') ?? '{}').first"


def worked_out(handset, length="100", psi=135):
    """A kept layout and its number; by hand: 15.5 x 1.5^2 x 1 + 100 = 134.875."""
    layout = open_layout(handset)
    layout.type("length", length)
    layout.shows(psi)
    until(layout.page, f"{LAST}?.pressure === '{psi}'")
    return layout.page


def without_modules(handset):
    """Pressure in a new tab, whose own script never comes."""
    handset.context.route("**/pages/pressure.js", lambda route: None)
    page = handset.context.new_page()
    page.goto(handset.host.origin + "pressure/", wait_until="commit")
    page.locator("noscript").last.wait_for(state="attached")
    return page


def test_the_kept_number_is_painted_before_any_module(handset):
    """With the picture of what it follows from, and said to be the last of this version, not an order."""
    worked_out(handset).close()
    page = without_modules(handset)
    expect(page.locator("output")).to_have_text("135 psi")
    expect(page.locator(".lay")).to_contain_text("100 ft")
    expect(page.locator("#answer-label")).to_have_text(P["last"])
    handset.context.unroute_all()
    page.close()
    page = handset.open("pressure/")
    until(page, "performance.getEntriesByName('live-answer').length > 0")
    expect(page.locator("#answer-label")).to_have_text(P["set"])
    expect(page.locator("output")).to_have_text("135 psi")
    expect(page.locator(".plate")).not_to_contain_text(said("pressure", "was", was="135"))


@pytest.mark.parametrize("change", [
    "localStorage.setItem('units', 'SI')",
    "localStorage.setItem('rig', 'another')",
    "localStorage.setItem('profiles', '1')",
    "localStorage.setItem('worked:pressure', JSON.stringify({ draft: null }))",
    "localStorage.removeItem('worked:pressure')",
    f"{{ const last = JSON.parse(localStorage.getItem('answer:pressure')); last.first.of[4] = 'older'; localStorage.setItem('answer:pressure', JSON.stringify(last)); }}",
])
def test_no_number_of_anything_else_is_painted(handset, change):
    """Other units, another rig, a rig that was changed, another layout, one not known, another version: dashes."""
    page = worked_out(handset)
    page.evaluate(f"() => {{ {change} }}")
    page.close()
    page = without_modules(handset)
    expect(page.locator(".plate").first).to_contain_text(SITE["engine"]["loading"])
    assert page.evaluate("window.painted ?? null") is None
    expect(page.locator("output")).to_have_count(0)
    handset.context.unroute_all()


def test_a_change_takes_the_painted_number_down(handset):
    """From the moment that a layout is another, before its own number is there, nothing is kept to be painted."""
    page = worked_out(handset)
    page.evaluate("""() => {
      window.kept = [];
      const put = Storage.prototype.setItem;
      Storage.prototype.setItem = function (name, value) {
        put.call(this, name, value);
        if (name === "worked:pressure") window.kept.push(localStorage.getItem("answer:pressure"));
      };
    }""")
    layout = Layout(page)
    layout.type("length", "200")
    layout.shows(170)  # by hand: 15.5 x 2.25 x 2 + 100 = 169.75
    assert set(page.evaluate("window.kept")) == {None}


def test_another_live_number_is_not_swapped_in_silently(handset):
    """Where what stood first is not what is worked out now, both are said, until the layout is another."""
    page = worked_out(handset)
    page.evaluate("""() => {
      const last = JSON.parse(localStorage.getItem("answer:pressure"));
      for (const part of [last.first, last.answer]) part.pressure = "125";
      for (const store of [localStorage, sessionStorage]) store.setItem("answer:pressure", JSON.stringify(last));
    }""")
    page.reload()
    layout = Layout(page)
    until(page, "performance.getEntriesByName('live-answer').length > 0")
    was = said("pressure", "was", was="125")
    layout.shows(135)
    expect(page.locator(".plate")).to_contain_text(was)
    layout.type("length", "200")
    layout.shows(170)
    expect(page.locator(".plate")).not_to_contain_text(was)
