"""The bay by touch: a weekly check with two defects, killed and gone on with; the status on other pages; release; the log to a second phone."""
import json

from playwright.sync_api import expect

from calc.bay import rounds
from site_src import bundle
from site_src.content import checks, data
from tests.phone.card import beside
from tests.phone.handset import kill
from tests.phone.rounds import GOOD, KINDS, MIDSHIP, PUMP_OUT, T, TEXT, at_item, begin, defect, good, key, title, touched_on
from tests.phone.store import do

START = data.words("start", "en")["start"]
PICTURE = bundle.STATIC / "icons/192.png"
WORD_S = 60 / 238  # silent reading of English (Brysbaert, 2019)
TAP_S = 1.1  # to point at a key (Card, Moran and Newell, 1980)
LETTER_S = 0.3  # of two thumbs on a phone, 36 words a minute (from memory)
OUT = data.words("shift", "en")["out_first"]


def test_a_weekly_check_and_what_comes_of_it(take, tmp_path):
    """Item by item by touch; killed in the middle, it goes on where it was; two defects take the pump out of service on every page."""
    handset = take()
    profile = beside(handset, **MIDSHIP)
    page = handset.open("checks/round/#weekly")
    begin(page)
    bad = {TEXT["shift_lockup"]["title"]: "range lost", TEXT["eng_belts"]["title"]: "frayed"}
    done = plain = 0
    while title(page).inner_text() != T["round"]["all"]:
        now = title(page).inner_text()
        if now in bad:
            defect(page, bad[now])
        else:
            plain += good(page)
        done += 1
        if done == 9:
            expect(title(page)).not_to_have_text(now)
            here = title(page).inner_text()
            kill(page)
            page = handset.open("checks/round/#weekly")
            expect(title(page)).to_have_text(here)
    assert done > 25
    key(page, T["round"]["end"]).tap()
    expect(page.get_by_text(T["round"]["summary"].format(good=plain, bad=2, here=0))).to_be_visible()
    expect(page.get_by_role("alert")).to_be_visible()  # nobody reads so fast
    for address in ("", "pressure/", "shift/road/"):
        other = handset.open(address)
        expect(other.locator("#rig-status")).to_contain_text(PUMP_OUT)
        expect(other.locator("#rig-status")).to_contain_text("range lost")
        other.close()
    card = handset.open("shift/bay/")
    expect(card.get_by_role("alert")).to_contain_text(PUMP_OUT)
    expect(card.get_by_text(PUMP_OUT).locator("visible=true")).to_have_count(1)  # said once
    expect(card.locator("#rig-status")).to_be_hidden()
    expect(card.locator(".step")).to_have_count(0)
    expect(card.get_by_label(OUT["name"])).to_have_value("")
    assert card.get_by_label(OUT["name"]).bounding_box()["height"] >= 44
    expect(key(card, OUT["waits"])).to_be_disabled()
    card.get_by_label(OUT["name"]).fill("Moss")
    key(card, OUT["go_on"]).dblclick()
    expect(key(card, OUT["sure"])).to_be_visible()
    expect(card.locator(".step")).to_have_count(0)
    card.wait_for_timeout(450)
    key(card, OUT["sure"]).tap()
    expect(card.locator(".step")).to_be_visible()
    card.goto(handset.host.origin + "shift/bay/read/")
    expect(card.get_by_text(OUT["read"])).to_be_visible()
    expect(card.locator("li[data-step]")).to_have_count(0)
    card.goto(handset.host.origin + "shift/road/read/")
    expect(card.locator("li[data-step]").last).to_be_visible()
    card.close()
    page.goto(handset.host.origin + "checks/")
    expect(page.locator(".defect")).to_have_count(2)
    page.locator(".defect a").first.tap()
    page.locator("input[type=file]").set_input_files(PICTURE)
    photos = page.get_by_role("img", name=T["defect"]["photo_of"])
    expect(photos).to_have_count(1)
    page.locator("input[type=file]").set_input_files(PICTURE)
    expect(photos).to_have_count(2)
    key(page, T["defect"]["photo_off"]).first.tap()
    expect(photos).to_have_count(1)
    page.goto(handset.host.origin + "checks/")

    release_pump(page, handset)
    page.goto(handset.host.origin + "checks/log/")
    with page.expect_download() as leaving:
        key(page, T["log"]["file"]).tap()
    leaving.value.save_as(tmp_path / "log.json")
    content = (tmp_path / "log.json").read_text(encoding="utf-8")
    records = do(page, "keptRecords", "bay")

    second = take()
    beside(second, **MIDSHIP)
    other = second.open("checks/log/")
    spoiled = json.loads(content)
    spoiled["records"] = [{**spoiled["records"][0], "id": "x", "kind": "spell"}, *spoiled["records"][:10]]
    for name, text in (("part.json", json.dumps(spoiled)), ("log.json", content), ("again.json", content)):
        other.locator("input[type=file]").set_input_files({"name": name, "mimeType": "application/json", "buffer": text.encode()})
        expect(other.get_by_role("status").filter(has_text=name)).to_be_visible()
        if name == "part.json":
            expect(other.get_by_text(T["log"]["refused"].format(at=1, field="kind", reason=T["log_reason"]["unknown"]))).to_be_visible()
    expect(other.get_by_text(T["log"]["taken"].format(file="again.json", taken=0, same=len(records)))).to_be_visible()
    assert sorted(do(other, "keptRecords", "bay"), key=lambda record: record["id"]) == sorted(records, key=lambda record: record["id"])
    with other.expect_download() as leaving:
        key(other, T["log"]["file"]).tap()
    leaving.value.save_as(tmp_path / "second.json")
    assert (tmp_path / "second.json").read_bytes() == (tmp_path / "log.json").read_bytes()
    assert profile["id"] == records[0]["rig_id"]


def test_a_weekly_check_takes_under_six_minutes():
    """By a person's pace: every word of each item read, each key touched, two defects typed, a photo; the looks at the rig and their clocks apart."""
    items = rounds.items(checks.rows(), "weekly", MIDSHIP, {}, [])["items"]
    limited = [row["id"] for row in checks.rows() if row["limit"]]
    words = sum(len(" ".join(TEXT[item][part] for part in ("title", "look", "good")).split()) for item in items)
    begun, ended, not_good, photo = 1, 1, 2 * 2, 5  # not good and written, twice; bay, defect, add, shutter, use
    taps = begun + len(items) + len([item for item in items if item in limited]) + not_good + ended + photo
    assert len(items) > 25
    assert words * WORD_S + taps * TAP_S + 2 * 15 * LETTER_S < 6 * 60


def weekly(take):
    """A phone beside a midship rig, and the first item of its weekly check."""
    handset = take()
    beside(handset, **MIDSHIP)
    page = handset.open("checks/")
    page.goto(handset.host.origin + "checks/round/#weekly")
    begin(page)
    return handset, page


def test_back_keeps_an_answer(take):
    """Back by the key shows the answer with its reading and changes nothing; back by the phone keeps what was typed."""
    handset, page = weekly(take)
    while title(page).inner_text() not in KINDS:
        good(page)
    item = title(page).inner_text()
    good(page)
    left = title(page).inner_text()
    before = do(page, "keptRecords", "bay")
    reading = next(record["entry"] for record in before if record.get("entry"))
    touched_on(page, T["round"]["back"])
    expect(title(page)).to_have_text(item)
    expect(page.locator("#reading")).to_have_value(reading.split("@")[0])
    expect(key(page, GOOD)).to_have_attribute("aria-pressed", "true")
    touched_on(page, GOOD)
    expect(title(page)).to_have_text(left)
    assert do(page, "keptRecords", "bay") == before
    while left not in KINDS:
        good(page)
        left = title(page).inner_text()
    page.locator(".tray .key").first.tap()
    expect(page.locator("#reading")).not_to_have_value("")
    typed = page.locator("#reading").input_value()
    page.go_back()
    page.goto(handset.host.origin + "checks/round/#weekly")
    expect(title(page)).to_have_text(left)
    expect(page.locator("#reading")).to_have_value(typed)
    page.close()


def test_what_is_put_off_comes_last(take):
    """Later leads to the next item and does not bring the one put off back between the others."""
    _, page = weekly(take)
    put_off = []
    for _ in range(2):
        put_off.append(title(page).inner_text())
        touched_on(page, T["round"]["later"])
    seen = []
    for _ in range(3):
        seen.append(title(page).inner_text())
        good(page)
    assert not {*put_off, title(page).inner_text()} & {*seen} and title(page).inner_text() not in put_off
    page.close()


def test_a_figure_no_gauge_shows_is_asked_again(take):
    """126 typed for 12.6 V is neither good nor not good until its point is set or it is said again; of lights out 0 stands first."""
    _, page = weekly(take)
    volts, lights = TEXT["cab_volts_rest"]["title"], TEXT["walk_warning_lights"]["title"]
    page.goto(page.url.replace("weekly", "daily"))
    expect(title(page)).to_be_visible()
    for wanted in (lights, volts):
        at_item(page, wanted)
        if wanted == lights:
            page.locator(".tray .key").first.tap()
            expect(page.locator("#reading")).to_have_value("0")
            expect(key(page, T["round"]["good"])).to_be_enabled()
            page.locator("#reading").fill("3")
            expect(page.get_by_role("status").filter(has_text=T["side"]["high"])).to_be_visible()
            expect(key(page, T["round"]["good"])).to_be_disabled()
    page.locator("#reading").fill("126")
    expect(page.get_by_text(T["round"]["asked_meant"].format(value=126, unit="V", meant="12.6"))).to_be_visible()
    expect(key(page, T["round"]["good"])).to_be_disabled()
    expect(key(page, T["round"]["not_good"])).to_be_disabled()
    key(page, T["round"]["asked_so"].format(value=126)).tap()
    expect(key(page, T["round"]["not_good"])).to_be_enabled()
    expect(key(page, T["round"]["good"])).to_be_disabled()
    page.locator("#reading").fill("127")
    expect(key(page, T["round"]["not_good"])).to_be_disabled()
    key(page, "12.7 V").tap()
    expect(page.locator("#reading")).to_have_value("12.7")
    expect(key(page, T["round"]["good"])).to_be_enabled()
    page.close()


def release_pump(page, handset):
    """An officer decides, a technician repairs, another puts it back; the pump is in service, the belts are open."""
    page.locator(".defect a").first.tap()
    key(page, T["defect"]["decide"]).tap()
    page.get_by_label(T["defect"]["officer"]).fill("Lane")
    key(page, T["defect"]["decide"]).tap()
    expect(page.get_by_text("Lane").first).to_be_visible()
    page.get_by_role("link", name=T["defect"]["release"]).tap()
    key(page, T["opened"]["shift"]).tap()
    for proof in ["shift_lockup", *next(row for row in checks.proofs() if row["opened"] == "shift")["proofs"]]:
        key(page, f"{TEXT[proof]['title']} {TEXT[proof]['look']}").tap()  # each says what to do
    page.get_by_label(T["release"]["done"]).fill("selector valve replaced")
    page.get_by_label(T["release"]["repaired_by"]).fill("Moss")
    page.get_by_label(T["release"]["by"]).fill("moss")
    expect(key(page, T["release"]["release"])).to_be_disabled()  # a second person's name
    page.get_by_label(T["release"]["by"]).fill("Hart")
    key(page, T["release"]["release"]).tap()
    expect(page.get_by_text(T["release"]["names"].format(repaired_by="Moss", by="Hart"))).to_be_visible()
    expect(page.get_by_text(T["release"]["then"][0])).to_be_visible()  # the belts do not limit the rig
    start = handset.open("")
    expect(start.locator("#rig-status")).to_be_hidden()
    start.close()


def test_what_was_done_before(take):
    """Done asks for the day before it writes: a day to come is refused, last May's is taken; a calendar without a date says so."""
    handset = take()
    beside(handset, **MIDSHIP)
    due, name = T["due"], T["due_name"]["road_test"]
    page = handset.open("checks/due/")
    key(page, due["calendar"]).tap()
    expect(page.get_by_text(due["no_dates"])).to_be_visible()
    page.get_by_role("button", name=name).tap()
    key(page, due["done"]).tap()
    assert do(page, "keptRecords", "bay") == []
    page.get_by_label(due["done_on"]).fill("2999-05-14")
    key(page, due["write_done"]).tap()
    expect(page.get_by_text(due["date_future"])).to_be_visible()
    page.get_by_label(due["done_on"]).fill("2026-05-14")
    key(page, due["write_done"]).tap()
    expect(page.get_by_role("button", name=name)).not_to_contain_text(due["never"])
    (record,) = do(page, "keptRecords", "bay")
    assert (record["kind"], record["due"]) == ("done", "road_test") and record["at_ms"] < 1779000000000  # May 17, 2026
    page.goto(handset.host.origin)
    expect(page.get_by_role("link", name=START["checks"], exact=True)).to_be_visible()
    page.goto(handset.host.origin + "checks/due/")
    page.get_by_role("button", name=name).tap()
    key(page, due["done"]).tap()
    page.get_by_label(due["done_on"]).fill("2024-05-14")  # before the other: the newer one holds, nothing is overdue
    key(page, due["write_done"]).tap()
    page.get_by_role("button", name=T["due_name"]["nozzles"]).tap()
    key(page, due["done"]).tap()
    page.get_by_label(due["done_on"]).fill("2024-05-14")
    key(page, due["write_done"]).tap()
    expect(page.locator("h2.due-overdue")).to_be_visible()
    page.goto(handset.host.origin)
    page.get_by_role("link", name=START["overdue"].format(count=1)).tap()  # one tap from start to the checks
    expect(page.locator(".bay-status")).to_be_visible()
    page.close()


def test_a_figure_that_is_aimed_at_is_asked_too(take):
    """Good needs the reading of an intake relief or a word that it could not be read; which limit held stays with the answer."""
    _, page = weekly(take)
    page.goto(page.url.replace("weekly", "yearly"))
    at_item(page, TEXT["irv_setting"]["title"])
    expect(key(page, T["round"]["good"])).to_be_disabled()
    key(page, T["round"]["unread"]).tap()
    expect(page.get_by_text(T["round"]["not_read"], exact=True)).to_be_visible()
    page.locator("#reading").fill("125")
    expect(page.get_by_text(T["side"]["aim"], exact=True)).to_be_visible()
    page.locator("#reading").fill("")
    expect(key(page, T["round"]["good"])).to_be_disabled()  # a reading begun and wiped says nothing
    key(page, T["round"]["unread"]).tap()
    touched_on(page, T["round"]["only_unread"])
    (answer,) = [record for record in do(page, "keptRecords", "bay") if record["kind"] == "answer"]
    assert (answer["item"], answer["answer"], answer["entry"], answer["reading"]) == ("irv_setting", "good", None, "not_read")
    assert "125 psi" in answer["limit"]
    page.close()
