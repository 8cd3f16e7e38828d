"""Records that nobody can read, in each store: every page of them draws, names them, hands them on as a file, and nothing of them goes."""
import copy
import json
import re

import pytest
from playwright.sync_api import expect

from tests import service_records
from tests.phone.card import beside
from tests.phone.layout import fresh_layout
from tests.phone.rounds import MIDSHIP
from tests.phone.store import put
from tests.phone.test_checkoff import C
from tests.phone.test_layouts_kept import save
from tests.phone.words import SITE
from tests.unit.bay.logs import defect, record

RIG_ID = "rig-1"
OF_RIG = {"rig_id": RIG_ID, "rig_name": "Pump of the day"}
MOMENT = "2026-11-29T12:00:00.000Z"
# a record of each store that is sound
SOUND = {
    "bay": {**defect("sound"), **OF_RIG},
    "tests": {**service_records.a_record(rig=RIG_ID), "id": "sound"},
    "log": {"id": "sound", "kind": "practice", "title": "Into pump", "rig": {"id": RIG_ID, "name": "Pump"}, "began_at": MOMENT, "ended_at": MOMENT,
            "outcome": "good", "entries": [{"at": MOMENT, "event": "act", "text": "NEUTRAL"}]},
    "rigs": {"schema": 1, "id": "sound", "name": "Second", "units": "US", **MIDSHIP},
    "photos": {"id": "sound", "test": "sound", "part": "capacity", "at_ms": 1000, "picture": "data:image/jpeg;base64,AAAA"},
    "checkoff": {"id": "sound", "trainee": "Ann Bell", "task": "road", "at_ms": 1000, "date": "2026-11-29", "rig": "", "faults": "", "took_s": None,
                 "on_rig": True, "by_trainee": "", "by_officer": ""},
}
PAGES = {
    "bay": ["checks/log/", "checks/", "checks/board/", "checks/due/", "checks/round/#daily", "checks/record/", "checks/release/"],
    "tests": ["test/", "test/years/", "test/run/#wrong", "test/sheet/#wrong", "checks/board/", "log/checkoff/"],
    "log": ["log/", "log/checkoff/"],
    "rigs": ["rig/", "checks/board/"],
    "photos": ["test/sheet/#sound"],
    "checkoff": ["log/checkoff/"],
}
PUT = """([store, rows]) => new Promise((done) => {
  const opening = indexedDB.open("panelhand");
  opening.onsuccess = () => {
    const change = opening.result.transaction(store, "readwrite");
    for (const [key, value] of JSON.parse(rows)) change.objectStore(store).put(value, key);
    change.oncomplete = () => { opening.result.close(); done(); };
  };
})"""
KEPT = """(store) => new Promise((done) => {
  const opening = indexedDB.open("panelhand");
  opening.onsuccess = () => {
    const asked = opening.result.transaction(store).objectStore(store).getAll();
    asked.onsuccess = () => { opening.result.close(); done(JSON.stringify(asked.result)); };
  };
})"""


def spoiled(sound):
    """Six kinds of what no page can read, by key; the rig it is of is said wherever it can be."""
    known = {name: sound[name] for name in ("rig_id",) if name in sound}

    return {
        "no_record": 7,
        "half": {"id": "half", **known},
        "wrong": {**{name: 7 if isinstance(value, (str, list, dict)) else "x" for name, value in sound.items()}, "id": "wrong", **known},
        "huge": {**sound, "id": "huge", "note": "x" * 2_000_000},
        "number": {**sound, "id": 7},
        "deep": {**sound, "id": "deep", "odd": json.loads("[" * 400 + "]" * 400)},
    }


# forms of older and newer versions of the site
FORMS = {
    "bay": {"newer_kind": {"kind": "towed"}, "newer_field": {"insured": "yes"}, "older": {"class": None}},
    "tests": {"newer": {"schema": 2}, "older": {"tests": [], "standard": "us"}},
    "log": {"newer": {"kind": "drill"}, "older": {"entries": [{"at": "noon"}]}},
    "rigs": {"older": {"units": None}},
    "photos": {"older": {"picture": None}},
    "checkoff": {"newer": {"by_chief": {}}},
}


def poisoned(handset, store):
    """A phone whose store has one sound record and all these; returns the keys that are spoiled."""
    handset.keeps_anything = True
    beside(handset, **MIDSHIP)
    sound = SOUND[store]
    rows = spoiled(sound) | {key: {**copy.deepcopy(sound), "id": key, **more} for key, more in FORMS[store].items()}
    page = handset.open("404.html")
    if store == "photos":
        put(handset, "keepRecord", "tests", SOUND["tests"])
    if store == "checkoff":
        page.evaluate(PUT, ["drafts", json.dumps([["checkoff", [sound, *rows.values()]]])])
        page.evaluate("localStorage.setItem('trainee', 'Ann Bell')")
    else:
        page.evaluate(PUT, [store, json.dumps([["sound", sound], *rows.items()])])
    page.close()
    return [str(place) for place in range(1, len(rows) + 1)] if store == "checkoff" else list(rows)


@pytest.mark.parametrize(("store", "address"), [(store, address) for store, addresses in PAGES.items() for address in addresses])
def test_a_page_leaves_aside_what_cannot_be_read(take, store, address):
    """The page draws and says which entries it left aside; no error, and the database has every one as it was."""
    handset = take()
    keys = poisoned(handset, store)
    page = handset.open("404.html")
    before = page.evaluate(KEPT, "drafts" if store == "checkoff" else store)
    page.goto(handset.host.origin + address)
    strip = page.locator("#unreadable")
    expect(strip).to_be_visible()
    expect(strip).to_contain_text(f"{store}/")
    expect(page.get_by_role("main").locator("a, button, input").locator("visible=true").first).to_be_visible()
    with page.expect_download() as download:
        strip.get_by_role("button", name=SITE["site"]["unreadable_file"]).tap()
    saved = json.loads(download.value.path().read_text(encoding="utf-8"))
    assert set(saved) == {f"{store}/{key}" for key in keys}
    assert saved[f"{store}/{keys[0]}"] == 7
    assert page.locator("#down").is_hidden()
    assert page.evaluate(KEPT, "drafts" if store == "checkoff" else store) == before
    page.close()


def test_what_is_named_is_hidden_until_there_is_more(take):
    """Hide puts the strip away on every page that would show the same; one more that cannot be read brings it back with all of them."""
    handset = take()
    poisoned(handset, "log")
    page = handset.open("log/")
    strip = page.locator("#unreadable")
    strip.get_by_role("button", name=SITE["site"]["unreadable_hide"]).tap()
    expect(strip).to_be_hidden()
    page.goto(handset.host.origin + "log/checkoff/")
    expect(page.get_by_role("main").get_by_role("button").first).to_be_visible()
    expect(strip).to_be_hidden()
    page.goto(handset.host.origin + "log/")
    expect(page.get_by_text("Into pump").locator("visible=true").first).to_be_visible()
    expect(strip).to_be_hidden()
    page.evaluate(PUT, ["log", json.dumps([["one_more", 7]])])
    page.reload()
    expect(strip).to_be_visible()
    expect(strip).to_contain_text("log/half")


@pytest.mark.parametrize(("store", "address", "shown"), [
    ("bay", "checks/log/", "Low gear oil"), ("tests", "test/", "Tollgate Engine 1"), ("log", "log/", "Into pump"), ("rigs", "rig/", "Second"),
    ("checkoff", "log/checkoff/", C["send"]),
])
def test_what_can_be_read_stands(take, store, address, shown):
    """Beside spoiled records the sound one is there as it was."""
    handset = take()
    poisoned(handset, store)
    page = handset.open(address)
    expect(page.get_by_text(shown).locator("visible=true").first).to_be_visible()
    page.close()


@pytest.mark.parametrize("address", ["", "pressure/", "practice/", "shift/road/", "test/", "checks/"])
def test_a_rig_that_cannot_be_read_is_none(take, address):
    """The chosen rig's own profile is spoiled: pages say so and work as with no rig."""
    handset = take()
    poisoned(handset, "rigs")
    page = handset.open("404.html")
    page.evaluate("localStorage.setItem('rig', 'wrong')")
    page.goto(handset.host.origin + address)
    expect(page.locator("#unreadable")).to_contain_text("rigs/wrong")
    expect(page.get_by_role("main").locator("a, button, input").locator("visible=true").first).to_be_visible()
    page.close()


@pytest.mark.parametrize("value", [7, "x", {"a": 1}, [None, 7, [[]]]], ids=json.dumps)
def test_a_check_off_that_is_no_list(take, value):
    """What was kept in place of the check-off's records stays, an entry goes beside it."""
    handset = take()
    handset.keeps_anything = True
    page = handset.open("404.html")
    put(handset, "keep", "heat", {})
    page.evaluate(PUT, ["drafts", json.dumps([["checkoff", value]])])
    page.goto(handset.host.origin + "log/checkoff/")
    expect(page.locator("#unreadable")).to_contain_text("checkoff/0")
    page.close()


@pytest.mark.parametrize(("name", "value", "address"), [
    ("release:rig-1", {"defects": 7, "opened": "x", "done": 3}, "checks/release/"),
    ("release:rig-1", {"defects": ["d1"], "opened": None}, "checks/release/"),
    ("defect:rig-1", {"from": "", "form": {"what": 7}}, "checks/defect/"),
    ("pressure-past", [7, None, {}], "pressure/"),
    ("layouts", [{"name": "Mill", "layout": 3}], "pressure/"),
    ("layouts", [7, None], "pressure/"),
])
def test_a_draft_of_another_form_is_left_aside(take, name, value, address):
    """What was half written and cannot be read is named, and the page opens as if it were not there."""
    handset = take()
    handset.keeps_anything = True
    beside(handset, **MIDSHIP)
    page = handset.open("404.html")
    page.evaluate(PUT, ["drafts", json.dumps([[name, value]])])
    page.goto(handset.host.origin + address)
    expect(page.locator("#unreadable")).to_contain_text(f"drafts/{name}")
    expect(page.get_by_role("main")).to_contain_text(re.compile(r"\w+ \w+"))
    expect(page.locator("#down")).to_be_hidden()
    page.close()


def test_a_layout_is_saved_beside_a_list_that_cannot_be_read(take):
    """The list begins anew with it; what stood there is kept aside, and This phone names it and hands it on as a file."""
    handset = take()
    handset.keeps_anything = True
    layout = fresh_layout(handset)
    layout.page.evaluate(PUT, ["drafts", json.dumps([["layouts", [7, None]]])])
    save(layout, "Mill")
    expect(layout.page.locator(".saved li")).to_have_count(1)
    assert [7, None] in json.loads(layout.page.evaluate(KEPT, "drafts"))
    page = handset.open("all/phone/")
    expect(page.locator("#unreadable")).to_contain_text("drafts/aside:layouts")
    with page.expect_download() as handed:
        page.get_by_role("button", name=SITE["site"]["unreadable_file"]).tap()
    assert json.loads(handed.value.path().read_text(encoding="utf-8")) == {"drafts/aside:layouts": [7, None]}


def test_what_is_spoiled_of_another_rig_is_not_named(take):
    """A spoiled record of another rig is not named at this one's log."""
    handset = take()
    handset.keeps_anything = True
    beside(handset, **MIDSHIP)
    page = handset.open("404.html")
    page.evaluate(PUT, ["bay", json.dumps([["r", {**record("round", "r"), "rig_id": "rig-2"}], ["d1", {**defect("d1"), **OF_RIG}]])])
    page.goto(handset.host.origin + "checks/log/")
    expect(page.get_by_text("Low gear oil").first).to_be_visible()
    expect(page.locator("#unreadable")).to_be_hidden()
    page.close()
