"""The log: what a card, a diagnosis or a practice run leaves behind."""
import csv
import json

import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests.phone.card import beside, hasten, open_card
from tests.phone.sources import source
from tests.phone.words import SITE, STEPS

LOG = data.words("log")


@pytest.fixture
def handset(take):
    return hasten(take())


@pytest.fixture
def logged(handset):
    """The log after a run that was stopped by danger, with a rig."""
    beside(handset, name="=Rig 4", drive="midship")
    card = open_card(handset, "freeze")
    card.see()
    card.press("not_seen")
    card.press("danger")
    page = handset.open("log/")
    expect(page.get_by_role("heading", level=2)).to_have_text(SITE["card"]["freeze"]["title"])
    expect(page.get_by_label(LOG["notes"], exact=True)).to_be_hidden()  # folded until it is wanted
    page.get_by_text(LOG["notes_fold"], exact=True).tap()
    return page


def test_tries_are_told_apart_in_the_log(handset):
    """A card started over keeps its first try in the log, and says where the second begins."""
    card = open_card(handset, "road")
    card.run_to("throttle_down")
    card.press("not_seen")
    card.press("start_over")
    card.see()
    page = handset.open("log/")
    page.locator(".run summary").first.tap()
    said = [line.partition("\n")[2] or line for line in page.get_by_role("listitem").all_inner_texts()]
    begins = [place for place, line in enumerate(said) if LOG["try"].format(number=2) in line]
    assert begins == [len(said) - 2] and LOG["event"]["not_seen"] in said[begins[0] - 1] and LOG["event"]["seen"] in said[-1]


def downloaded(page, key):
    with page.expect_download() as download:
        page.get_by_role("button", name=LOG[key]).tap()
    return download.value.path().read_text(encoding="utf-8-sig")


def test_a_run_is_in_the_log(logged):
    """What was touched, when and how it ended; initials and notes are kept as they are typed."""
    expect(logged.get_by_text(LOG["outcome"]["danger"])).to_be_visible()
    logged.get_by_text(LOG["entries"].format(count=3)).tap()
    said = logged.get_by_role("listitem").all_inner_texts()
    assert [LOG["event"][event] in line for event, line in zip(["seen", "not_seen", "danger"], said, strict=True)] == [True] * 3
    assert STEPS["freeze_parted"]["act"] in said[0] and STEPS["winter_rule"]["act"] in said[1]
    logged.get_by_label(LOG["who"], exact=True).fill("AB")
    logged.get_by_label(LOG["notes"], exact=True).fill("@Drain stuck, \"left\" side\nsecond line")
    logged.reload()
    expect(logged.get_by_label(LOG["who"], exact=True)).to_have_value("AB")
    [record] = json.loads(downloaded(logged, "file_json"))
    assert (record["kind"], record["who"], record["rig"]["name"], record["outcome"]) == ("card", "AB", "=Rig 4", "danger")
    assert record["began_at"] == record["entries"][0]["at"] and record["ended_at"] == record["entries"][-1]["at"]


def test_what_was_typed_outlives_a_page_that_goes_first(logged):
    """Initials whose record was not written before the page went are there when it is opened again, and in the record then."""
    logged.evaluate("""() => {
      const { put } = IDBObjectStore.prototype;
      IDBObjectStore.prototype.put = function (...given) {
        if (this.name === "log") throw new DOMException("the page goes", "AbortError");
        return put.apply(this, given);
      };
    }""")
    logged.get_by_label(LOG["who"], exact=True).fill("CD")
    logged.reload()
    expect(logged.get_by_label(LOG["who"], exact=True)).to_have_value("CD")
    logged.reload()
    expect(logged.get_by_label(LOG["who"], exact=True)).to_have_value("CD")
    [record] = json.loads(downloaded(logged, "file_json"))
    assert record["who"] == "CD"


def test_the_spreadsheet_runs_no_formula(logged):
    """One line an entry, and nothing that a spreadsheet would take for a formula."""
    logged.get_by_label(LOG["notes"], exact=True).fill("@Drain stuck, \"left\" side\nsecond line")
    head, *rows = csv.reader(downloaded(logged, "file_csv").splitlines(keepends=True))
    assert len(rows) == 3 and {len(row) for row in rows} == {len(head)} == {15}
    assert rows[0][head.index(LOG["column"]["rig"])] == "'=Rig 4"
    assert rows[2][head.index(LOG["column"]["notes"])] == "'@Drain stuck, \"left\" side\nsecond line"
    assert not [cell for row in rows for cell in row if cell[:1] in tuple("=+-@")]


def test_deleting_takes_two_touches(logged):
    """The first touch asks, the second deletes, and it stays deleted."""
    logged.get_by_role("button", name=LOG["remove"], exact=True).tap()
    expect(logged.get_by_role("heading", level=2)).to_be_visible()
    logged.get_by_role("button", name=LOG["remove_sure"]).tap()
    expect(logged.get_by_text(LOG["removed"])).to_be_visible()
    logged.reload()
    expect(logged.get_by_text(LOG["none"])).to_be_visible()


OTHERS = """async (store) => {
  const { keepRecord } = await import(store);
  await keepRecord("log", { id: "2026-01-01T00:00:00Z-a", kind: "practice", title: "A drill", rig: null, who: "", began_at: "2026-01-01T00:00:00Z",
    ended_at: "2026-01-01T00:05:00Z", outcome: "clash", notes: "", entries: [{ at: "2026-01-01T00:01:00Z", code: "clash", told: "Teeth met" }] });
  await keepRecord("log", { id: "2026-01-02T00:00:00Z-b", kind: "diagnosis", title: "A cause", rig: null, who: "", began_at: "2026-01-02T00:00:00Z",
    ended_at: "2026-01-02T00:05:00Z", outcome: "stands", notes: "", entries: [{ at: "2026-01-02T00:01:00Z", sign: "dark", said: "not_seen", text: "Light out" }] });
}"""


def test_other_records_say_what_they_are(logged, handset):
    """Records of the diagnosis and of practice are listed too, each as what it is, and can be looked at apart."""
    logged.evaluate(OTHERS, source(logged, "shared/store.js"))
    logged.reload()
    expect(logged.get_by_text(LOG["is_practice"])).to_have_count(0)  # not of the rig's record
    expect(logged.get_by_text(LOG["outcome"]["stands"], exact=True)).to_be_visible()
    expect(logged.get_by_text(LOG["event"]["not_seen"] + ": Light out")).to_be_attached()
    expect(logged.get_by_text(SITE["lasted"]["minutes"].format(min=5, s=0))).to_have_count(1)
    logged.get_by_label(LOG["kind_training"], exact=True).check(force=True)
    expect(logged.get_by_text(LOG["is_practice"])).to_be_visible()
    expect(logged.get_by_role("heading", level=2)).to_have_text("A drill")


def test_long_notes_print_whole(logged):
    """Twelve lines of notes are all on the paper, and the field is as before when it has been printed."""
    notes = logged.get_by_label(LOG["notes"], exact=True)
    notes.fill("\n".join(f"line {number}" for number in range(1, 13)))
    before = notes.evaluate("(field) => field.clientHeight")
    logged.emulate_media(media="print")
    logged.evaluate("dispatchEvent(new Event('beforeprint'))")
    assert notes.evaluate("(field) => field.scrollHeight <= field.clientHeight && field.clientHeight > 12 * 15")
    logged.emulate_media(media="screen")
    logged.evaluate("dispatchEvent(new Event('afterprint'))")
    assert notes.evaluate("(field) => field.clientHeight") == before


def test_notes_that_are_cleared_stay_open(logged):
    """What is cleared of a run's notes can be written again where it stood."""
    notes = logged.get_by_label(LOG["notes"], exact=True)
    notes.fill("Drain stuck")
    logged.reload()
    expect(notes).to_be_visible()  # written notes are open
    notes.fill("")
    notes.fill("Drain free")
    expect(notes).to_be_visible()


def test_a_training_run_is_apart_from_the_rigs_record(take):
    """Reading a card writes nothing; a run says where in one tap on its card, and training is listed, sent and printed apart."""
    handset = take()  # its clocks as they are: a hurried one would have had time to read
    reading = handset.open("shift/freeze/read/")
    expect(reading.locator(".short > li").first).to_be_visible()
    page = handset.open("log/")
    expect(page.get_by_text(LOG["none"])).to_be_visible()
    card = open_card(handset, "freeze")
    card.see()
    card.page.get_by_label(LOG["run_place"]["place"]["ground"], exact=True).check(force=True)
    expect(card.page.get_by_role("button", name=LOG["run_place"]["training"])).to_have_attribute("aria-pressed", "true")
    card.see()  # what was said stays with the run as it goes on
    card = open_card(handset, "road")
    card.see()
    card.see()
    page = handset.open("log/")
    expect(page.get_by_role("heading", level=2)).to_have_text(SITE["card"]["road"]["title"])
    expect(page.get_by_text(LOG["unseen"])).to_be_visible()  # left, and faster than it can be read
    assert [record["title"] for record in json.loads(downloaded(page, "file_json"))] == [SITE["card"]["road"]["title"]]
    page.get_by_label(LOG["kind_training"], exact=True).check(force=True)
    expect(page.get_by_role("heading", level=2)).to_have_text(SITE["card"]["freeze"]["title"])
    expect(page.get_by_text(LOG["part_training"])).to_be_visible()
    [record] = json.loads(downloaded(page, "file_json"))
    assert (record["place"], record["training"], len(record["entries"])) == ("ground", True, 2)
    page.get_by_text(LOG["notes_fold"], exact=True).tap()
    page.get_by_role("button", name=LOG["run_place"]["training"]).tap()  # said by mistake
    expect(page.get_by_role("heading", level=2)).to_have_count(0)
    page.reload()
    expect(page.get_by_role("heading", level=2)).to_have_count(2)
