"""What is entered and not yet in the database: noted at once, there again in the next page, and written by it."""
import json

import pytest
from playwright.sync_api import expect

from tests import service_records
from tests.phone.card import beside, hasten, open_card
from tests.phone.handset import kill, until
from tests.phone.store import in_database, put
from tests.phone.test_failure import NO_PUT
from tests.phone.test_rig import ENGINE, R
from tests.phone.words import SITE

RUN = {"id": "run-1", "kind": "card", "title": "A card", "rig": None, "began_at": "2026-01-01T00:00:00Z", "ended_at": "2026-01-01T00:05:00Z",
       "outcome": "done", "entries": []}
TEST = service_records.an_unfinished_record(rig=ENGINE["id"])
# each user of the door to the database: its page, a field of it, an entry, and the store it ends in
USERS = {
    "draft": ("why/heat/", "#heat input, main input[inputmode]", "47", "drafts"),
    "tab's draft": ("pressure/", "input[name=length], #A-length, main input[inputmode]", "225", "drafts"),
    "water": ("water/tank/", "#tank", "480", "drafts"),
    "rig": ("rig/#field-name", "#field-name", "Typed as it died", "rigs"),
    "log": ("log/", f"#who-{RUN['id']}", "QX", "log"),
    "service test": (f"test/run/#{TEST['id']}/conditions", "input[name=water_end_f]", "63", "tests"),
    "repair check": ("test/quick/", "#repaired", "New packing", "drafts"),
}
BLOCKED = f"() => {{ window.hadRoom = IDBObjectStore.prototype.put; {NO_PUT} }}"
NO_NOTE = """() => {
  IDBObjectStore.prototype.put = window.hadRoom;
  Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); };
}"""
SET = "(notes) => Object.entries(notes).forEach(([name, note]) => localStorage.setItem(name, JSON.stringify(note)))"
NAMES = "() => Object.keys(localStorage).filter((name) => name.startsWith('note:') || name.startsWith('test-note:') || name === 'rig-entries' || name.startsWith('quick:'))"


@pytest.fixture
def stocked(take):
    """A phone beside its rig, with a run in its log and a test under way."""
    handset = take()
    beside(handset, **ENGINE)
    put(handset, "keepRecord", "log", RUN)
    put(handset, "keepRecord", "tests", TEST)
    return handset


def noted(handset, notes):
    page = handset.open("404.html")
    page.evaluate(SET, notes)
    page.close()


@pytest.mark.parametrize("name", ["note:[", "note:[1,2]", 'note:["drafts"]', 'note:["drafts",null]', 'note:[["drafts"],"x"]', 'note:["drafts","pressure"]', "rig-entries"])
@pytest.mark.parametrize("note", ["{", "7", "null", "[]", "[null]", '{"value": 7, "base": 1}'])
def test_a_note_that_is_none_is_passed_over(shared, name, note):
    """Whatever a note is named and says, the page opens, and what is typed beside it is kept."""
    shared.keeps_anything = True
    page = shared.open("404.html")
    page.evaluate("([name, note]) => { localStorage.clear(); localStorage.setItem(name, note); }", [name, note])
    page.goto(shared.host.origin + "water/tank/")
    page.locator("#why details").first.wait_for()
    page.evaluate("document.querySelector('.entry-row[data-entry=tank]').click()")
    page.locator("#tank").fill("481")
    comes_into_drafts(page, "481@")
    expect(page.locator("#down")).to_be_hidden()
    page.close()


def comes_into_drafts(page, text):
    for _ in range(100):
        if text in json.dumps(in_database(page, "drafts")):
            return
        page.wait_for_timeout(50)
    raise AssertionError(in_database(page, "drafts"))


def comes_into(page, store, text):
    """The database has the entry, and nothing is noted any more."""
    for _ in range(100):
        if text in json.dumps(in_database(page, store), ensure_ascii=False) and not page.evaluate(NAMES):
            return
        page.wait_for_timeout(50)
    raise AssertionError((in_database(page, store), page.evaluate(NAMES)))


def opened(handset, address, field):
    """A page with a field in sight, in the tray that it lies in."""
    page = handset.open(address)
    if address.startswith("water/"):
        page.locator(f".entry-row[data-entry={field.strip('#')}]").tap()
    if address == "pressure/":
        page.locator(".tab", has_text=SITE["tab"]["length"]).tap()
    if address == "log/":
        unfold(page)
    page.locator(field).first.wait_for()
    return page


def unfold(page):
    """Open the initials and notes of a run of the log; they stand open where something is written in them."""
    notes = page.locator(".run-notes")
    notes.wait_for()
    if notes.get_attribute("open") is None:
        notes.locator("summary").tap()


@pytest.mark.parametrize(("address", "field", "entry", "store"), USERS.values(), ids=USERS)
def test_page_killed_before_it_was_written(stocked, address, field, entry, store):
    """An entry that the database does not have when its page dies is there in the next one, which writes it."""
    page = opened(stocked, address, field)
    page.evaluate(BLOCKED)
    page.locator(field).first.fill(entry)
    expect(page.locator("#noted")).to_be_visible()
    assert entry not in json.dumps(in_database(page, store))
    kill(page)
    page = opened(stocked, address, field)
    expect(page.locator(field).first).to_have_value(entry)
    comes_into(page, store, entry)
    expect(page.locator("#noted")).to_be_hidden()


@pytest.mark.parametrize(("address", "field", "entry", "store"), USERS.values(), ids=USERS)
def test_a_note_never_outlives_a_later_entry(stocked, address, field, entry, store):
    """Where the note of an earlier entry stands and the later one goes to the database alone, the later one is what is kept."""
    page = opened(stocked, address, field)
    page.evaluate(BLOCKED)
    page.locator(field).first.fill(entry[:-1])
    expect(page.locator("#noted")).to_be_visible()
    page.evaluate(NO_NOTE)
    page.locator(field).first.fill(entry)
    expect(page.locator("#noted")).to_be_hidden()
    kill(page)
    page = opened(stocked, address, field)
    expect(page.locator(field).first).to_have_value(entry)


def test_card_killed_before_it_was_written(take):
    """A step confirmed as the page died is confirmed in the next one, and in the log."""
    handset = hasten(take())
    beside(handset, **ENGINE)
    card = open_card(handset, "bay", rig=ENGINE)
    card.see()
    card.page.evaluate(BLOCKED)
    card.see()
    expect(card.page.locator("#noted")).to_be_visible()
    kill(card.page)
    card = open_card(handset, "bay", first=card.steps[2], rig=ENGINE)
    page = handset.open("log/")
    comes_into(page, "log", card.steps[1])


# Questions put to the interpreter's thread from here on get no answer.
UNANSWERED = """
window.unanswered = null;
window.Worker = class extends Worker {
  postMessage(question) {
    if (window.unanswered === null) return super.postMessage(question);
    window.unanswered += 1;
  }
};
"""


@pytest.mark.parametrize("key", ["seen", "not_seen", "danger"])
def test_card_killed_before_its_touch_was_answered(take, key):
    """A touch that the interpreter had not answered as the page died is asked again: no step is passed over, none stands as done."""
    handset = hasten(take())
    beside(handset, **ENGINE)
    handset.context.add_init_script(UNANSWERED)
    card = open_card(handset, "bay", rig=ENGINE)
    card.see()
    card.shows(card.steps[1])
    page = card.page
    comes_into(page, "log", card.steps[0])
    page.evaluate("window.unanswered = 0")
    for _ in range(40):  # a step settles before it takes an answer
        card.button(key).tap()
        if page.evaluate("window.unanswered"):
            break
        page.wait_for_timeout(50)
    assert page.evaluate("window.unanswered") == 1
    card.shows(card.steps[1])
    kill(page)
    card = open_card(handset, "bay", first=card.steps[1], rig=ENGINE)
    expect(card.stop).to_have_count(0)
    comes_into(card.page, "log", '"resume"')
    [run] = in_database(card.page, "log")
    assert [(entry["event"], entry["step"]) for entry in run["entries"]] == [("seen", card.steps[0]), ("resume", card.steps[1])]
    card.see()
    card.shows(card.steps[2])


OLDER = {  # as versions of the site before this one left their notes, beside what the database had then
    "draft": ({"note:heat": {"pump_hp": "47@US"}}, "why/heat/", "drafts", "47@US"),
    "rig": ({"rig-entries": [{"id": ENGINE["id"], "key": "name", "value": "Noted before", "base": ENGINE["name"]}]}, "rig/", "rigs", "Noted before"),
    "service test": ({f"test-note:{TEST['id']}": {**TEST, "revision": TEST["revision"] + 1, "notes": "Noted before"}}, f"test/run/#{TEST['id']}", "tests", "Noted before"),
    "repair check": ({f"quick:{ENGINE['id']}": {
        "rig_id": ENGINE["id"], "revision": 3, "baseline": None, "earlier": [],
        "open": {"repaired": "Noted before", "seen": {}, "stopped": None, "begun_ms": None, "readings": [{"engine_rpm": "", "discharge_psi": ""}] * 3}}},
        "test/quick/", "drafts", "Noted before"),
}


@pytest.mark.parametrize(("notes", "address", "store", "entry"), OLDER.values(), ids=OLDER)
def test_notes_of_an_older_version(stocked, notes, address, store, entry):
    """A note that an older version of the site left is taken up as it would have been then."""
    noted(stocked, notes)
    comes_into(stocked.open(address), store, entry)


def test_log_entries_of_an_older_version(stocked):
    """Initials that an older version kept beside their record come into it."""
    put(stocked, "keep", "log-typed", {f"{RUN['id']} who": "OLD"})
    page = stocked.open("log/")
    expect(page.locator(f"#who-{RUN['id']}")).to_have_value("OLD")
    comes_into(page, "log", "OLD")
    page.reload()
    expect(page.locator(f"#who-{RUN['id']}")).to_have_value("OLD")
    assert "who" not in json.dumps(in_database(page, "drafts"))


def test_note_of_an_earlier_revision_stays_behind(stocked):
    """A note that is not newer than what the database has is dropped; that of a field another tab has changed likewise."""
    noted(stocked, {
        f"test-note:{TEST['id']}": {**TEST, "notes": "Stale"},
        "rig-entries": [{"id": ENGINE["id"], "key": "name", "value": "Stale", "base": "Another name"}],
    })
    page = stocked.open("rig/")
    expect(page.locator(".standing b")).to_have_text(ENGINE["name"])
    page.goto(stocked.host.origin + "test/")
    page.locator("#test .row").first.wait_for()
    until(page, "!Object.keys(localStorage).some((name) => name.startsWith('note:'))")
    assert "Stale" not in json.dumps([in_database(page, "rigs"), in_database(page, "tests")])


def test_log_in_two_tabs(stocked):
    """Initials typed over those of another tab that this one has not seen do not take their place: both are said."""
    one, two = stocked.open("log/"), stocked.open("log/")
    who = f"#who-{RUN['id']}"
    for page in (one, two):
        unfold(page)
        page.locator(who).wait_for()
    two.locator(who).fill("TWO")
    comes_into(two, "log", "TWO")
    one.locator(who).fill("ONE")
    expect(one.locator(who)).to_have_value("TWO")
    expect(one.locator("main [role=status] .notice")).to_be_visible()
    one.locator(who).fill("ONE")
    comes_into(one, "log", "ONE")


def test_deleted_for_good(stocked):
    """A run whose entries are noted goes with its notes."""
    page = stocked.open("log/")
    unfold(page)
    page.evaluate(BLOCKED)
    page.locator(f"#who-{RUN['id']}").fill("AB")
    expect(page.locator("#noted")).to_be_visible()
    page.locator(".run button").last.tap()
    page.locator(".run button").last.tap()
    expect(page.locator(".run")).to_have_count(0)
    page.reload()
    page.locator("#log p").first.wait_for()
    assert (in_database(page, "log"), page.evaluate(NAMES)) == ([], [])


def test_rig_that_cannot_be_deleted(stocked):
    """A rig that the database does not let go stays in the list, and the page says so."""
    page = stocked.open("rig/")
    page.locator(".standing").wait_for()
    page.evaluate("() => { IDBObjectStore.prototype.delete = () => { throw new DOMException('refused', 'InvalidStateError'); }; }")
    page.get_by_role("button", name=R["rig"]["remove"], exact=True).tap()
    page.get_by_role("button", name=R["rig"]["remove_sure"].format(name=ENGINE["name"])).tap()
    expect(page.get_by_text(R["rig"]["unremoved"])).to_be_visible()
    assert in_database(page, "rigs") == [ENGINE]
