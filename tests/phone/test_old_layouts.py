"""Layouts as older versions kept and linked them open right, and are saved the new way."""
import json
import re
from urllib.parse import quote, unquote

import pytest
from playwright.sync_api import expect

from tests.phone.layout import open_layout
from tests.phone.words import SITE

OLD_STANDPIPE = {"crew": "2", "lines": [{
    "id": "S", "hose": "supply-3-on-2.5", "length": "100@US", "rise": "30@SI", "runs": "1", "device": "standpipe", "loss": "",
    "end": {"lines": [{"id": "A", "hose": "attack-2.5", "length": "150@US", "rise": "10@US", "runs": "1", "device": "none", "loss": "",
                       "end": {"kind": "smooth", "flow": "150@US", "tip": "1.125@US", "pressure": "50@US"}}]}}]}
KEEP = """layout => new Promise((done) => {
  const opening = indexedDB.open("panelhand");
  opening.onsuccess = () => {
    const writing = opening.result.transaction("drafts", "readwrite");
    writing.objectStore("drafts").put(layout, "pressure");
    writing.oncomplete = () => { opening.result.close(); done(); };
  };
})"""


@pytest.mark.parametrize("way", ["link", "kept"])
def test_layout_of_the_old_kind(take, way):
    """An old link or kept layout, heights above the joint before and in two systems, opens right and is saved the new way."""
    phone = take()
    if way == "link":
        layout = open_layout(phone, "#layout=" + quote(json.dumps(OLD_STANDPIPE)))
    else:
        layout = open_layout(phone)
        layout.page.evaluate(KEEP, OLD_STANDPIPE)
        layout.page.close()
        layout = open_layout(phone)
    # by hand: 30 m are 98.4252 ft, and 10 more; 50 + 2 x 7.0645 x 1.5 + 25 + 0.8 x 7.0645 + 0.434 x 108.4252 = 148.90
    layout.shows(149)
    layout.line("A")
    expect(layout.field("height")).to_have_value("108.42519685")
    layout.line("S")
    expect(layout.field("height")).to_have_value("98")
    layout.type("length", "100")  # what a link brings is kept once it is touched
    layout.shows(149)
    again = open_layout(phone)
    again.shows(149)
    again.line("A")
    expect(again.field("height")).to_have_value("108.42519685")


def test_layout_of_the_old_kind_survives_a_start_that_was_cut_short(take):
    """Opened where the calculator did not come, it shows dashes and no elevation, and the next start still has it right."""
    phone = take()
    first = open_layout(phone)
    first.page.evaluate(KEEP, OLD_STANDPIPE)
    first.page.close()
    page = phone.context.new_page()
    page.route("**/micropython.wasm", lambda route: None)  # never answered
    page.goto(phone.host.origin + "pressure/")
    expect(page.locator(".answer-figure")).to_have_text(re.compile(r"^[\s–]+$"))
    expect(page.locator("main")).not_to_contain_text("elev.")
    page.close()
    again = open_layout(phone)
    again.shows(149)
    again.line("A")
    expect(again.field("height")).to_have_value("108.42519685")


def test_a_loss_with_its_flow_goes_as_one_text(take):
    """A phone that knows no flow of a loss took 60 psi at 1,000 gpm for 60 psi at whatever flows. What is after the first mark of an entry was
    always a system's name or no entry, so it refuses this link in words; this phone opens it, and links of before that have both apart.
    """
    apart = {"crew": "2", "lines": [{
        "id": "A", "hose": "supply-3-on-2.5", "length": "0@US", "height": "0@US", "runs": "2", "device": "master", "loss": "60@US", "loss_at": "1000@US", "device_most": "800@US",
        "end": {"kind": "fog", "flow": "500@US", "tip": "1.5@US", "pressure": "100@US"}}]}
    first = open_layout(take(), "#layout=" + quote(json.dumps(apart)))
    first.shows(115)  # by hand: 100 + 60 / 4
    link = first.link()
    assert json.loads(unquote(link.partition("=")[2]))["lines"][0]["loss"] == "60@US@1000@US"
    assert "loss_at" not in link
    again = open_layout(take(), link)
    again.shows(115)
    again.type("flow", "1000")
    again.shows(160)  # and over the 800 gpm its device is made for
    expect(again.page.get_by_text(SITE["caution_short"]["device_over"]).first).to_be_visible()
