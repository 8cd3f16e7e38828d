"""A layout belongs to its tab, is never wiped without a way back, and can be saved by name, shared and printed."""
import re

import pytest
from playwright.sync_api import expect

from tests.phone.handset import read_in
from tests.phone.layout import open_layout
from tests.phone.sheet import TOLD, open_sheet
from tests.phone.sources import source
from tests.phone.words import SITE, said

P, S = SITE["pressure"], SITE["saved"]
# by hand, 15.5 x 2.25 a hundred feet and 100 at the nozzle
PSI = {"100": 135, "200": 170, "250": 187, "300": 205, "350": 222}
RIG = {"schema": 1, "id": "engine-9", "name": "Engine 9", "units": "US"}


def with_length(handset, length, fragment=""):
    layout = open_layout(handset, fragment)
    layout.type("length", length)
    layout.shows(PSI[length])
    return layout


def near(page, first, second, most=140):
    """Whether two things stand close together: not more than a hand's breadth apart on the page."""
    one, other = first.bounding_box(), second.bounding_box()
    return abs(one["y"] + one["height"] - other["y"]) <= most


def test_two_tabs(handset):
    """After a reload each tab shows its own layout under its own address; a new tab opens on the last worked on."""
    one, other = with_length(handset, "100"), with_length(handset, "300")
    address = one.page.url
    one.page.reload()
    one.shows(PSI["100"])
    assert one.field("length").input_value() == "100"
    assert one.page.url == address == other.page.url
    other.page.reload()
    other.shows(PSI["300"])
    open_layout(handset).shows(PSI["300"])
    one.type("length", "350")
    open_layout(handset).shows(PSI["350"])


def test_two_tabs_of_a_water_page(handset):
    """The same holds for the entries of a water page."""
    one, other = open_sheet(handset, "water/tank/"), open_sheet(handset, "water/tank/")
    one.type("flow", "100")
    one.shows("6.0", "min")  # by hand: 600 / 100
    other.type("flow", "200")
    other.shows("3.0", "min")
    one.page.reload()
    one.shows("6.0", "min")


def test_address_stays(handset):
    """The address changes with Share alone, and does not go on naming a layout that was changed since."""
    layout = with_length(handset, "100")
    bare = layout.page.url
    layout.build("add_wye")
    layout.press("undo")
    read_in(layout.page, "SI")
    assert layout.page.url == bare == f"{handset.host.origin}pressure/"
    assert "100" in layout.link()
    layout.type("length", "90")
    expect(layout.page).to_have_url(bare)


def test_shared_link_stays_mine_after_a_reload(handset):
    """A reload right after sharing goes on with this tab's layout."""
    layout = with_length(handset, "100")
    layout.link()
    layout.page.reload()
    layout.shows(PSI["100"])
    layout.type("length", "350")
    layout.page.reload()
    layout.shows(PSI["350"])


def test_back_to_the_opening_layout_can_be_undone(handset):
    """The work that it takes away comes back, beside the key, by Undo, and also after a reload."""
    layout = with_length(handset, "300")
    layout.press("afresh")
    layout.shows(PSI["200"])
    told = layout.page.get_by_text(P["is_opening"])
    expect(told).to_be_visible()
    key = layout.page.get_by_role("button", name=P["afresh"], exact=True)
    assert near(layout.page, key, told)
    layout.page.get_by_role("button", name=P["put_back"], exact=True).tap()
    layout.shows(PSI["300"])
    layout.press("afresh")
    layout.shows(PSI["200"])
    layout.page.reload()
    layout.shows(PSI["200"])
    layout.press("undo")
    layout.shows(PSI["300"])


def test_opening_key_stands_apart_from_share(handset):
    """No slip of the finger from Share wipes the layout: another control stands between them."""
    layout = open_layout(handset)
    share = layout.page.get_by_role("button", name=P["share"], exact=True).bounding_box()
    opening = layout.page.get_by_role("button", name=P["afresh"], exact=True).bounding_box()
    assert opening["y"] - share["y"] - share["height"] > 100


def test_opening_figures_of_a_water_page_can_be_undone(handset):
    """The same on the water pages."""
    sheet = open_sheet(handset, "water/tank/")
    sheet.type("flow", "100")
    sheet.shows("6.0", "min")
    sheet.page.get_by_role("button", name=TOLD["reckon"]["afresh"], exact=True).tap()
    sheet.shows("4.0", "min")  # by hand: 600 / 150
    sheet.page.get_by_role("button", name=P["put_back"], exact=True).tap()
    sheet.shows("6.0", "min")


@pytest.mark.parametrize(("address", "name"), [("pressure/", P["share"]), ("water/tank/", TOLD["reckon"]["share"])])
def test_link_is_told_at_its_key(take, address, name):
    """What became of the link is said under the finger, not at the top of the page."""
    phone = take(permissions=["clipboard-read", "clipboard-write"])
    page = phone.open(address)
    key = page.get_by_role("button", name=name, exact=True)
    key.tap()
    told = page.get_by_text(SITE["link"]["copied"], exact=True)
    expect(told).to_be_in_viewport()
    assert near(page, key, told)


def saved_part(layout):
    return layout.open(S["title"])


def save(layout, name):
    part = saved_part(layout)
    part.get_by_role("textbox", name=S["name"], exact=True).fill(name)
    part.get_by_role("button", name=S["save"], exact=True).tap()
    return part


def test_saved_by_name(handset):
    """A layout saved by name opens again in another tab, can be renamed and deleted, and a deleted one comes back."""
    layout = with_length(handset, "300")
    part = save(layout, "Rear of the mill")
    expect(part.get_by_text(said("saved", "saved", name="Rear of the mill"))).to_be_visible()
    layout.press("afresh")
    layout.page.close()
    layout = open_layout(handset)
    part = saved_part(layout)
    part.get_by_role("button", name=said("saved", "rename_it", name="Rear of the mill"), exact=True).tap()
    part.get_by_role("textbox", name=S["name"], exact=True).last.fill("Mill, side C")
    part.get_by_role("button", name=S["keep_name"], exact=True).tap()
    part.get_by_role("button", name=said("saved", "open_it", name="Mill, side C"), exact=True).tap()
    layout.shows(PSI["300"])
    layout.press("undo")
    layout.shows(PSI["200"])
    part = saved_part(layout)
    part.get_by_role("button", name=said("saved", "delete_it", name="Mill, side C"), exact=True).tap()
    expect(part.get_by_text(S["none"])).to_be_visible()
    part.get_by_role("button", name=P["put_back"], exact=True).tap()
    expect(part.get_by_text("Mill, side C", exact=True)).to_be_visible()
    layout.page.reload()
    expect(saved_part(layout).get_by_text("Mill, side C", exact=True)).to_be_visible()


def test_saved_twice_under_one_name(handset):
    """The newer takes the place of the older, and says so with a way back."""
    layout = with_length(handset, "300")
    save(layout, "Mill")
    layout.type("length", "100")
    part = save(layout, "Mill")
    expect(part.get_by_text(said("saved", "replaced", name="Mill"))).to_be_visible()
    expect(part.get_by_role("listitem")).to_have_count(1)
    part.get_by_role("button", name=P["put_back"], exact=True).tap()
    part.get_by_role("button", name=said("saved", "open_it", name="Mill"), exact=True).tap()
    layout.shows(PSI["300"])


def test_saving_without_a_name_or_room(handset):
    """A layout without a name is not saved, and one that the phone has no room for says so."""
    layout = with_length(handset, "300")
    part = save(layout, "  ")
    expect(part.get_by_text(S["unnamed"])).to_be_visible()
    layout.page.evaluate("() => { IDBObjectStore.prototype.put = () => { throw new DOMException('full', 'QuotaExceededError'); }; }")
    part = save(layout, "Mill")
    expect(part.get_by_text(S["unkept"])).to_be_visible()
    expect(part.get_by_role("listitem")).to_have_count(0)


def test_print(handset):
    """On paper: number, lines, date and the rig's name, and no control."""

    page = handset.open("404.html")
    page.evaluate("""async ([store, rig]) => {
      const door = await import(store);
      await door.keepRecord("rigs", rig);
      localStorage.setItem("rig", rig.id);
    }""", [source(page, "shared/store.js"), RIG])
    page.close()
    layout = open_layout(handset)
    layout.ready("wye")
    layout.shows(170)  # by hand: 15.5 x 2.25 x 1.5 + 100 = 152.31; 2 x 3^2 = 18
    layout.page.evaluate("() => { window.print = () => { window.printed = true; }; }")
    layout.press("print")
    assert layout.page.evaluate("window.printed")
    layout.page.evaluate("dispatchEvent(new Event('beforeprint'))")
    layout.page.emulate_media(media="print")
    paper = layout.page.locator("main").inner_text()
    for text in ("170", "Engine 9", said("pressure", "line", id="A"), said("pressure", "line", id="B"), "150 gpm"):
        assert text in paper
    assert re.search(r"20\d\d", paper)
    expect(layout.page.get_by_role("button", name=P["share"])).not_to_be_visible()
    expect(layout.page.get_by_role("textbox", name=P["length"])).not_to_be_visible()
    assert SITE["pressure"]["ready"] not in paper
    layout.page.emulate_media(media="screen")
    expect(layout.page.locator(".on-paper:visible")).to_have_count(0)


@pytest.mark.parametrize("height", ["−12,5", "-12,5", "12,5"])
def test_height_is_drawn_as_it_is_reckoned(handset, height):
    """A height typed with a comma or a minus of print stands on the line as calc reads it."""
    layout = open_layout(handset)
    layout.type("height", height)
    below = not height[0].isdigit()
    layout.shows(164 if below else 175)  # by hand: 169.75 -+ 0.434 x 12.5 = 164.33 and 175.18
    words = said("pressure", "height_down" if below else "height_up", height="12.5")
    expect(layout.page.locator(".lay")).to_contain_text(words)


def test_two_tabs_know_of_each_other(handset):
    """A change in one tab is said in the other, which keeps its own layout until a touch takes the other's; that too can be undone."""
    one = with_length(handset, "300")
    one.shows(PSI["300"])
    other = open_layout(handset)
    other.shows(PSI["300"])
    other.type("length", "100")
    other.shows(PSI["100"])
    expect(one.page.get_by_text(P["other_tab"])).to_be_visible()
    one.shows(PSI["300"])
    one.page.get_by_role("button", name=P["take_other"], exact=True).tap()
    one.shows(PSI["100"])
    one.press("undo")
    one.shows(PSI["300"])
    expect(other.page.get_by_text(P["other_tab"])).to_be_visible()
    other.shows(PSI["100"])
