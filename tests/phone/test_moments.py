"""At no moment does a figure stand beside entries it does not follow from: watched at a processor six times slowed."""
import re

import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests.phone.history import PROFILE, SEED, held
from tests.phone.handset import read_in
from tests.phone.layout import open_layout
from tests.phone.moments import numbers, watched
from tests.phone.sheet import first_entry, open_sheet
from tests.phone.words import SITE

W = data.words("water")


def live(page):
    """Until the page answers for itself."""
    page.locator("body").evaluate("""() => new Promise((done) => {
      const look = () => (performance.getEntriesByName("live-answer").length ? done() : setTimeout(look, 20));
      look();
    })""")


def stood(moments, place="answer"):
    return [re.sub(r"\s+", " ", text).strip() for text in numbers(moments, place)]


def beside_rig(handset):
    held(handset).close()


def typed(handset, length="100"):
    """A kept layout: the opening one with another length."""
    layout = open_layout(handset)
    layout.type("length", length)
    return layout


def test_nothing_kept(handset):
    """A phone's first open: one number, the example's, marked so whenever it stands."""
    page, moments = watched(handset, "pressure/", live)
    assert stood(moments) == ["170 psi"]  # by hand: 15.5 x 1.5^2 x 2 + 100 = 169.75
    for moment in moments:
        assert "170" not in moment["answer"] or SITE["pressure"]["example"] in moment["all"]
    assert SITE["engine"]["loading"] not in moments[-1]["all"]


@pytest.mark.parametrize("tab", ["same", "new"])
def test_kept_layout(handset, tab):
    """A layout that was worked on: its own number is the only one, from the first paint on, with its own entries beside it."""
    layout = typed(handset)
    layout.shows(135)  # by hand: 15.5 x 2.25 x 1 + 100 = 134.875
    layout.page.wait_for_timeout(100)  # the answer is kept a moment after it stands
    if tab == "same":
        moments = again(layout.page)
    else:
        layout.page.close()
        _, moments = watched(handset, "pressure/", live)
    assert stood(moments) == ["135 psi"]
    answering = [moment for moment in moments if moment["answer"].strip()[:1].isdigit()]
    assert {moment["fields"].get("A-length", "painted first") for moment in answering} <= {"100", "painted first"}
    assert all("100 ft" in moment["all"] for moment in answering)
    assert not any("135" in moment["answer"] and SITE["engine"]["loading"] in moment["all"] for moment in moments)


def again(page):
    """A reload of the same tab, watched."""
    from tests.phone.moments import PLACES, WATCH

    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": 6})
    page.add_init_script(WATCH.replace("PLACES", repr(PLACES)))
    page.reload(wait_until="commit")
    live(page)
    page.wait_for_timeout(700)
    return page.evaluate("window.moments")


def test_kept_layout_of_an_older_version(handset):
    """A layout without an answer kept with it: dashes, then its number."""
    layout = typed(handset)
    layout.shows(135)
    layout.page.wait_for_timeout(100)
    layout.page.evaluate("[sessionStorage, localStorage].forEach((store) => store.removeItem('answer:pressure'))")
    moments = again(layout.page)
    assert stood(moments) == ["135 psi"]
    assert any("–" in moment["answer"] for moment in moments)


def test_entry_before_the_calculator_runs(handset):
    """What is typed while the last answer still stands takes it down at once."""
    layout = typed(handset)
    layout.shows(135)
    layout.page.wait_for_timeout(100)
    layout.page.close()
    handset.context.route("**/calc.bin", hold := Held())
    page, _ = watched(handset, "pressure/", lambda page: expect(page.locator("output")).to_contain_text("135"))
    page.get_by_role("textbox", name=SITE["pressure"]["length"], exact=True).fill("250")
    expect(page.locator("output")).not_to_contain_text(re.compile(r"\d"))
    hold.let_go()
    expect(page.locator("output")).to_contain_text("187")
    texts = stood(page.evaluate("window.moments"))
    assert texts == ["135 psi", "187 psi"]  # by hand: 15.5 x 2.25 x 2.5 + 100 = 187.19


class Held:
    """A request that waits until it is let go."""

    def __init__(self):
        self.routes = []

    def __call__(self, route):
        self.routes.append(route)

    def let_go(self):
        for route in self.routes:
            route.continue_()


def test_rig_chosen(handset):
    """Beside a rig: its preconnect's number alone, first dashes, on the second open from the first drawing on."""
    beside_rig(handset)
    page, first = watched(handset, "pressure/", live)
    own = page.locator("output").inner_text()
    assert stood(first) == [re.sub(r"\s+", " ", own).strip()]
    page.close()
    _, second = watched(handset, "pressure/", live)
    assert stood(second) == stood(first)


def test_rig_changed_since(handset):
    """An answer that was kept beside another profile of the rig never stands again."""
    beside_rig(handset)
    page, first = watched(handset, "pressure/", live)
    page.close()
    page = handset.open("test/")
    bed = PROFILE["beds"][0]
    page.evaluate(SEED, {"tests": [], "rig": {**PROFILE, "beds": [{**bed, "length": "50@US"}, *PROFILE["beds"][1:]]}})
    page.close()
    _, second = watched(handset, "pressure/", live)
    assert len(stood(second)) == 1
    assert stood(second) != stood(first)


@pytest.mark.parametrize(("system", "figure"), [("SI", "1170 kPa"), ("bar", "11.7 bar")])
def test_other_units(handset, system, figure):
    """In other units the figure of the US opening never stands, and no entry stands with the wrong unit."""
    handset.open("404.html").evaluate("(system) => localStorage.setItem('units', system)", system)
    _, moments = watched(handset, "pressure/", live)
    assert not any("170 psi" in text for text in stood(moments))
    assert len(stood(moments)) == 1


def test_kept_entries_in_other_units(handset):
    """A layout typed in feet and opened in meters never shows the feet as meters."""
    layout = typed(handset)
    layout.shows(135)
    read_in(layout.page, "SI")
    expect(layout.field("length")).to_have_value(re.compile("^30"))  # 100 ft are 30.48 m
    layout.page.wait_for_timeout(100)
    moments = again(layout.page)
    assert {moment["fields"].get("A-length", "30.5")[:2] for moment in moments} == {"30"}
    assert len(stood(moments)) == 1


def test_followed_link(handset, take):
    """A link's number stands alone, and not its sender's or this phone's own."""
    sender = typed(take(), "300")
    sender.shows(205)  # by hand: 15.5 x 2.25 x 3 + 100 = 204.625
    link = sender.link()
    typed(handset).shows(135)
    _, moments = watched(handset, f"pressure/{link}", live)
    assert stood(moments) == ["205 psi"]


def test_folded_parts_wait_for_their_numbers(handset):
    """What flows now, in sight, never stands beside a gauge it does not follow from."""
    layout = open_layout(handset)
    layout.open(SITE["now"]["title"])
    layout.page.locator(".now").wait_for()
    layout.page.evaluate("""() => {
      window.beside = [];
      new MutationObserver(() => {
        const part = document.querySelector(".now");
        const gauge = document.querySelector("#now-gauge")?.value;
        const isSeen = part && getComputedStyle(part).visibility === "visible";
        if (isSeen) window.beside.push([gauge, part.innerText]);
      }).observe(document.querySelector("#pressure"), { childList: true, subtree: true, characterData: true, attributes: true });
    }""")
    layout.page.locator("#now-gauge").fill("679")
    layout.shows(679)
    expect(layout.page.locator(".now")).to_contain_text("300 gpm")  # by hand: four times the pressure, twice the flow
    beside = layout.page.evaluate("window.beside")
    assert beside
    assert all("300 gpm" in text or "gpm" not in text for gauge, text in beside if gauge == "679")


@pytest.mark.parametrize(("address", "field"), [("water/tank/", "tank"), ("foam/", None), ("water/hydrant/", None), ("water/draft/", None)])
def test_water_pages(handset, address, field):
    """A water page with an entry of one's own: its own number alone, with its own entries."""
    page = handset.open(address)
    box = first_entry(page)
    box.wait_for()
    opening = page.locator("output").inner_text()
    name = box.get_attribute("id")
    box.fill("77")
    expect(page.locator("output")).not_to_have_text(opening)
    expect(page.locator("output")).to_contain_text(re.compile(r"\w"))  # dashes until then
    own = re.sub(r"\s+", " ", page.locator("output").inner_text()).strip()
    page.close()
    page, moments = watched(handset, address, live)
    assert stood(moments) == ([own] if re.search(r"\d", own) else [])
    assert {moment["fields"][name] for moment in moments if name in moment["fields"]} == {"77"}


def test_water_menu(handset):
    """The rows show dashes until each has the number of what was entered, and never another."""
    sheet = open_sheet(handset, "water/tank/")
    for name, text in (("tank", "500"), ("flow", "100")):
        sheet.type(name, text)
    sheet.shows("4.0", "min")  # by hand: 500 x 0.8 / 100
    sheet.page.close()

    def drawn(page):
        expect(page.locator("[data-page=tank] [data-figure]")).to_have_text("4.0")

    page, moments = watched(handset, "water/", drawn)
    final = moments[-1]["tiles"]
    for moment in moments:
        for was, now in zip(moment["tiles"].split(" | "), final.split(" | ")):
            assert was == now or not re.search(r"\d", was), (was, now)


@pytest.mark.parametrize("address", ["", "rig/", "why/heat/", "why/speeds/", "diagnose/water/"])
def test_other_pages(handset, address):
    """Start, Rig and the pages of heat, speeds and water loss: no answer that is another a moment later."""
    beside_rig(handset)

    def drawn(page):
        page.wait_for_load_state("networkidle")
        page.locator("[data-drawn]:not(:empty)").first.wait_for()

    _, moments = watched(handset, address, drawn)
    answers = stood(moments)
    assert len(answers) <= 1, answers
