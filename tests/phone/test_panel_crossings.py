"""What crosses to the interpreter for one change on the Pressure, Rig and water pages: one question, and what does not change is held."""
import json
import re

import pytest
from playwright.sync_api import expect

from site_src.content import fleet
from tests.phone.crossings import bytes_of, count, crossings
from tests.phone.history import held
from tests.phone.sheet import first_entry
from tests.phone.words import SITE

MOST_BYTES = 20_000
BED = fleet.load()["tollgate-engine-1"]["beds"][0]
SIX_BEDS = {**fleet.load()["tollgate-engine-1"], "beds": [{**BED, "name": f"Line {number}"} for number in range(6)]}
DRAWS = """() => {
  window.shownFigures = [];
  const drawn = new MutationObserver(() => window.shownFigures.push(document.querySelector("output").textContent.trim()));
  drawn.observe(document.querySelector("output"), { childList: true, subtree: true, characterData: true });
}"""


def asked(page, act):
    """The doors that were opened meanwhile, and the bytes both ways."""
    found = crossings(page, act)
    return [crossing["door"] for crossing in found], sum(crossing["bytes"] for crossing in found)


def typed(page, name, text):
    """Type into a field and let what follows come."""
    page.locator(name).fill(text)
    page.wait_for_timeout(300)  # nothing to wait for: a second question would come late


def opened(handset, address, ready):
    count(handset)
    page = handset.open(address)
    page.locator(ready).first.wait_for()
    page.locator("body").evaluate("""() => new Promise((done) => {
      const look = () => (performance.getEntriesByName("live-answer").length ? done() : setTimeout(look, 20));
      look();
    })""")
    return page


PARTS = {"at_pump": SITE["at_pump"]["title"], "bounds": SITE["bounds"]["title"], "workings": SITE["pressure"]["figures"]}


@pytest.mark.parametrize("unfolded", [{}, PARTS])
def test_pressure(handset, unfolded):
    """One question and one number a keystroke, dashes at most before it, whatever is unfolded; it asks for no part that is folded."""
    page = opened(handset, "pressure/", "#A-length")
    for title in unfolded.values():
        page.locator("summary", has_text=title).first.tap()
    page.wait_for_timeout(300 if unfolded else 0)  # each asks as it unfolds
    page.evaluate(DRAWS)
    crossed = crossings(page, lambda: typed(page, "#A-length", "250"))
    assert page.locator("output").inner_text().split()[0] == "187"  # by hand: 15.5 x 1.5^2 x 2.5 + 100 = 187.19
    assert [crossing["door"] for crossing in crossed] == ["layout_page.answer"]
    assert bytes_of(crossed) < MOST_BYTES
    assert set(json.loads(crossed[0]["text"])["parts"]) == set(unfolded)
    assert page.evaluate("window.shownFigures")[-1] == "187 psi"
    assert set(page.evaluate("window.shownFigures")[:-1]) <= {"– – –"}


def test_pressure_turned_over(handset):
    """What flows now is asked with the answer in one question, and only while the picture is turned over."""
    page = opened(handset, "pressure/", "#A-length")
    page.get_by_role("button", name=SITE["now"]["title"], exact=True).tap()
    page.locator("#now-gauge").wait_for()
    page.wait_for_timeout(300)  # it asks as it is turned
    page.evaluate(DRAWS)
    crossed = crossings(page, lambda: typed(page, "#now-gauge", "40"))
    assert [crossing["door"] for crossing in crossed] == ["layout_page.answer"]
    assert json.loads(crossed[0]["text"])["parts"] == {"flowing": True}
    assert page.evaluate("window.shownFigures")[-1] == "40 psi"
    assert set(page.evaluate("window.shownFigures")[:-1]) <= {"– – –"}


@pytest.mark.parametrize("address", ["water/hydrant/", "water/tank/", "water/draft/", "water/relay/", "foam/"])
def test_water(handset, address):
    """One question a keystroke, without what is held."""
    page = opened(handset, address, ".entry-row")
    first = first_entry(page).get_attribute("id")
    doors, size = asked(page, lambda: typed(page, f"[id='{first}']", "60"))
    assert doors == ["water_page.answer"]
    assert size < MOST_BYTES


def test_rig_of_six_beds(handset):
    """One question under 20 kB a keystroke, each bed's pressure with it."""
    held(handset, rig=SIX_BEDS).close()
    count(handset)
    page = handset.open("rig/")
    page.locator(".bed-answer").nth(5).wait_for()
    page.locator(".rig-bed summary").nth(2).tap()
    expect(page.locator(".bed-answer")).to_have_text([re.compile(r"[0-9]+ psi")] * 6)
    before = page.locator(".bed-answer").all_inner_texts()
    doors, size = asked(page, lambda: typed(page, "#field-beds-2-length", "50"))
    after = page.locator(".bed-answer").all_inner_texts()
    assert [place for place in range(6) if before[place] != after[place]] == [2]
    assert doors == ["rig_page.answer"]
    assert size < MOST_BYTES
