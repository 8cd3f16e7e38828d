"""When something breaks: the host's files, the phone's storage, an older database, a second tab."""
import json
import shutil

import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests.phone.card import RIG, beside, hasten, open_card
from tests.phone.diagnosis import choose
from tests.phone.folds import unfold
from tests.phone.handset import Handset
from tests.phone.layout import fresh_layout, open_layout
from tests.phone.sheet import first_entry
from tests.phone.sources import source
from tests.phone.store import do, in_database, put_test, running_test
from tests.phone.test_rig import ENGINE, R, kept_rigs, press
from tests.phone.test_shift_away import HIDE
from tests.phone.test_update import CHANGED, OUTCOME, Release, apply_button, news
from tests.phone.words import SITE

FULL = "QuotaExceededError"
REFUSED = """
IDBFactory.prototype.open = () => { throw new DOMException("refused", "SecurityError"); };
Object.defineProperty(window, "localStorage", { get() { throw new DOMException("refused", "SecurityError"); } });
"""
NO_PUT = """
IDBObjectStore.prototype.put = () => { throw new DOMException("full", "QuotaExceededError"); };
"""
FILLED = NO_PUT + """
Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); };
"""
# a database as an older version of the site made it, or as a newer one left it, with values in its stores
MADE = """([version, stores]) => new Promise((done, failed) => {
  const opening = indexedDB.open("panelhand", version);
  opening.onerror = () => failed(opening.error);
  opening.onupgradeneeded = () => {
    for (const [name, values] of Object.entries(stores)) {
      const store = opening.result.createObjectStore(name);
      for (const [key, value] of Object.entries(values)) store.put(value, key);
    }
  };
  opening.onsuccess = () => { opening.result.close(); done(); };
})"""
SCHEMA = """() => new Promise((done) => {
  const opening = indexedDB.open("panelhand");
  opening.onsuccess = () => {
    const { version, objectStoreNames } = opening.result;
    opening.result.close();
    done([version, [...objectStoreNames].sort()]);
  };
})"""
LINE = {"id": "A", "hose": "attack-1.75", "length": "300@US", "height": "0@US", "end": {"kind": "fog", "flow": "150@US", "tip": "1@US", "pressure": "100@US"}}


# on pages that keep what is entered: one entry
ENTRIES = {
    "water/tank/": lambda page: first_entry(page).fill("500"),
    "why/heat/": lambda page: page.get_by_role("textbox").first.fill("50"),
    "diagnose/collar/": lambda page: page.get_by_role("radio").first.tap(),
    "diagnose/water/": lambda page: page.get_by_role("radio").first.tap(),
    "diagnose/leak/": lambda page: page.get_by_role("textbox").first.fill("20"),
}


def unkept(page, told):
    expect(page.get_by_text(told, exact=True)).to_be_visible()


@pytest.fixture(scope="module")
def release(built, tmp_path_factory):
    serving = Release(shutil.copytree(built, tmp_path_factory.mktemp("broken") / "dist"))
    yield serving
    serving.stop()


@pytest.fixture(scope="module")
def installed(browser, release):
    """A phone with the first version installed."""
    taken = Handset(browser, release, worker=True)
    taken.install().close()
    yield taken
    taken.close()


def lose(page):
    page.unlink()


def truncate(page):
    page.write_bytes(page.read_bytes()[:-20])


def alter(page):
    page.write_text(page.read_text(encoding="utf-8").replace("</main>", "<p>Altered.</p></main>"), encoding="utf-8")


def test_cleared_files_are_not_called_ready(installed):
    """Once the browser has thrown the files away the start page counts what is left, does not say Ready, and has them fetched again."""
    page, other = installed.open(), installed.open("404.html")
    expect(page.locator("#readiness")).to_have_attribute("data-state", "yes")
    page.evaluate("async () => { for (const name of await caches.keys()) await caches.delete(name); }")
    page.evaluate("document.getElementById('readiness').dataset.state = ''")
    # the page itself is gone too: it is counted again where it still stands
    told = other.evaluate("""async (script) => (await import(script)).holdings()""", source(other, "shared/offline.js"))
    other.close()
    assert told["have"] == 0 < told["want"]
    expect(page.locator("#readiness")).to_have_attribute("data-state", "yes", timeout=30000)
    page.close()


def test_broken_release_changes_nothing(installed, release):
    """A release with a listed file missing, cut short or altered is not taken: the old version serves on, also offline."""
    installed.expected += ["integrity", "404"]
    page = installed.open(CHANGED)
    changed = release.with_news()
    for breakage in (lose, truncate, alter):
        release.publish(breakage, changed)
        assert page.evaluate(OUTCOME) == "redundant", breakage
        expect(apply_button(page)).to_have_count(0)
    page.close()
    installed.lose_signal()
    for address in ("", CHANGED, "pressure/", "shift/bay/", "tables/US/friction/"):
        page = installed.open(address)
        expect(page.get_by_role("heading", level=1)).to_be_visible()
        expect(news(page)).to_have_count(0)
        page.close()


@pytest.mark.parametrize("trouble", [REFUSED, FILLED], ids=["refused", "full"])
def test_storage_that_takes_nothing(take, trouble):
    """Without storage every page still works for as long as it is open, and those that keep something say that it is not kept."""
    handset = hasten(take())
    record = running_test()
    if trouble is FILLED:
        beside(handset, **RIG)
        put_test(handset, record)
    handset.context.add_init_script(trouble)
    layout = fresh_layout(handset)
    layout.type("length", "250")
    layout.shows(187)  # by hand: 15.5 x 2.25 x 2.5 + 100 = 187.19
    unkept(layout.page, SITE["site"]["unkept"])
    for address, entered in ENTRIES.items():
        page = handset.open(address)
        entered(page)
        unkept(page, SITE["site"]["unkept"])
        page.close()
    card = open_card(handset, "road")
    card.see()
    unkept(card.page, SITE["site"]["unkept"])
    card.shows(card.steps[1])
    page = handset.open("diagnose/")
    choose(page, "light_dark")
    unkept(page, SITE["site"]["unkept"])
    page = handset.open("rig/")
    press(page, "rig", "make")
    unkept(page, SITE["site"]["unkept"])
    page.locator("#field-name").fill("For as long as it is open")
    expect(page.locator(".standing b")).to_have_text("For as long as it is open")
    if trouble is FILLED:
        page = handset.open(f"test/run/#{record['id']}/conditions")
        page.get_by_role("textbox").first.fill("71")
        unkept(page, SITE["site"]["unkept"])
    for address in ("", "water/", "water/tank/", "test/", "log/", "practice/", "why/speeds/", "rig/card/", "rig/recovery/"):
        page = handset.open(address)
        expect(page.get_by_role("heading", level=1)).to_be_visible()
        page.wait_for_load_state("networkidle")
        page.close()


def test_an_entry_the_database_refused_is_not_lost(take):
    """A field of a rig that could not be written, with the database full, is written by the next page that can."""
    handset = take()
    beside(handset, **{**ENGINE, "id": "rig-1"})
    page = handset.open("rig/")
    unfold(page)
    page.locator("#field-owner").wait_for(state="attached")
    page.evaluate(f"() => {{ {NO_PUT} }}")
    page.locator("#field-name").fill("Typed while full")
    unkept(page, SITE["site"]["noted"])
    page.reload()
    expect(page.locator(".standing b")).to_have_text("Typed while full")
    assert [rig["name"] for rig in kept_rigs(page)] == ["Typed while full"]


def test_storage_cleared_under_a_page(take):
    """What a page still holds when the browser clears its database is kept anew with the next entry."""
    handset = hasten(take())
    beside(handset, **{**ENGINE, "id": "rig-1"})
    rig = handset.open("rig/")
    unfold(rig)
    rig.locator("#field-owner").wait_for(state="attached")
    card = open_card(handset, "bay", rig=ENGINE)
    card.see()
    layout = open_layout(handset)
    session = handset.context.new_cdp_session(card.page)
    session.send("Storage.clearDataForOrigin", {"origin": handset.host.origin.rstrip("/"), "storageTypes": "indexeddb"})
    layout.type("length", "175")
    card.see()
    expect(card.page.get_by_text(SITE["site"]["unkept"])).not_to_be_visible()
    rig.locator("#field-name").fill("Kept anew")
    expect(rig.locator("main p.notice")).to_have_count(0)
    card.page.close()
    layout.page.close()
    assert open_layout(handset).field("length").input_value() == "175"
    open_card(handset, "bay", first=card.steps[2], rig=ENGINE)
    assert [(kept["name"], kept["beds"]) for kept in kept_rigs(rig)] == [("Kept anew", ENGINE["beds"])]


@pytest.mark.parametrize("version", [1, 2])
def test_older_database_opens_with_all_it_held(handset, version):
    """A database of the first or second version opens, with its layout and its rig, and gets the stores that came later."""
    stores = {"drafts": {"pressure": {"crew": "2", "lines": [LINE]}}, "rigs": {ENGINE["id"]: ENGINE}}
    page = handset.open("404.html")
    page.evaluate(MADE, [version, dict(list(stores.items())[:version])])
    page.close()
    layout = open_layout(handset)
    layout.shows(205)  # by hand: 15.5 x 2.25 x 3 + 100 = 204.63
    assert layout.page.evaluate(SCHEMA) == [5, ["bay", "drafts", "log", "photos", "rigs", "tests"]]
    assert kept_rigs(layout.page) == [ENGINE][:version - 1]


def test_newer_database_is_left_alone(handset):
    """After a step back to an older version of the site its pages work, say that they keep nothing, and touch nothing."""
    handset.keeps_anything = True
    page = handset.open("404.html")
    page.evaluate(MADE, [9, {"drafts": {"pressure": json.dumps(LINE)}}])
    page.close()
    fresh_layout(handset)
    page = handset.open("all/")
    expect(page.locator("#keeping")).to_have_text(SITE["start"]["unkept"])
    assert page.evaluate(SCHEMA) == [9, ["drafts"]]


def test_second_tab_of_a_card(take):
    """A card open in two tabs goes on from the later touch in both, and the log holds every touch of either."""
    handset = hasten(take())
    beside(handset, **RIG)
    one = open_card(handset, "bay")
    one.shows(one.steps[0])
    one.page.evaluate(HIDE, True)
    two = open_card(handset, "bay")
    for _ in range(2):
        two.see()
    two.shows(two.steps[2])
    while not any(len(draft["state"]["confirmed"]) == 2 for draft in in_database(two.page, "drafts") if "state" in draft):
        two.page.wait_for_timeout(50)  # until the database, and not only the note before it, has both
    one.page.evaluate(HIDE, False)
    one.shows(one.steps[2])
    one.see()
    [run] = do(one.page, "keptRecords", "log")
    assert [entry["step"] for entry in run["entries"] if entry["event"] == "seen"] == one.steps[:3]
