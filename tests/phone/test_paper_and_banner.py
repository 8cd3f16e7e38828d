"""What stands beside a sheet takes no sheet of its own: the sentence of a rig out of service, on Practice's own ground too, and a card's marks."""
import json
import re

from playwright.sync_api import expect

from site_src.content import fleet
from tests.phone import ways
from tests.phone.card import beside
from tests.phone.handset import read_in

OUT = {"state": "out_of_service", "since_ms": 1790000000000, "stops_pump": True, "is_waiting": False, "what": "Packing leaks", "limits": "", "limiting": 2, "pump": None}


def out_of_service(page, rig):
    page.evaluate("([id, standing]) => { localStorage.setItem('rig', id); localStorage.setItem(`bay:${id}`, standing); }", [rig["id"], json.dumps(OUT)])
    page.reload()
    expect(page.locator("#rig-status")).to_be_visible()


def sheets(page, paper):
    return len(re.findall(rb"/Type\s*/Page\b", page.pdf(format=paper)))


def test_a_banner_takes_no_sheet_of_its_own(take):
    """A service test and Pressure come to as many sheets with the rig out of service as without; Pressure to one."""
    handset = take()
    rig = beside(handset, **fleet.load()["tollgate-engine-1"])
    page = ways.service("test/sheet/#{id}")(handset)
    page.evaluate("(id) => localStorage.removeItem(`bay:${id}`)", rig["id"])
    page.reload()
    expect(page.locator("#rig-status")).to_be_hidden()
    expect(page.locator(".paper")).to_be_visible()
    before = {paper: sheets(page, paper) for paper in ("Letter", "A4")}
    out_of_service(page, rig)
    expect(page.locator(".paper")).to_be_visible()
    assert {paper: sheets(page, paper) for paper in before} == before
    page.goto(handset.host.origin + "pressure/")
    expect(page.locator("button.lay-line").first).to_be_visible()
    expect(page.locator("#rig-status")).to_be_visible()
    assert [sheets(page, paper) for paper in before] == [1, 1]
    page.goto(handset.host.origin + "practice/")
    expect(page.locator("#rig-status")).to_be_visible()
    ground, gap = page.evaluate("""() => {
      const banner = document.getElementById('rig-status');
      return [getComputedStyle(banner).backgroundColor === getComputedStyle(document.querySelector('main')).backgroundColor,
        document.querySelector('.practice-banner').getBoundingClientRect().top - banner.querySelector('a').getBoundingClientRect().bottom];
    }""")
    assert ground and gap >= 4


def test_a_card_of_marks_stays_on_its_sheet(take):
    """Figures of four in kPa, all but the longest over the hose's working limit, keep their marks beside them on one sheet."""
    handset = take()
    engine = fleet.load()["tollgate-engine-1"]
    [bed] = [bed for bed in engine["beds"] if bed["name"] == "Crosslay 2"]
    weak = {**engine["hoses"][0], "test_pressure": "180@US"}
    beside(handset, **{**engine, "beds": [{**bed, "name": f"Crosslay {name}"} for name in "ABCDE"], "hoses": [weak]})
    page = handset.open("rig/card/")
    read_in(page, "SI")
    marked = page.locator(".sheet-set td", has=page.locator(".sheet-over"))
    expect(marked).to_have_count(30)
    assert [sheets(page, paper) for paper in ("Letter", "A4")] == [1, 1]
