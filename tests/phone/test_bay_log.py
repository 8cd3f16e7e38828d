"""The rig's log on a phone that is full, whose clock was wrong, or that has many photos."""
import re

from playwright.sync_api import expect

from tests.phone.card import beside
from tests.phone.handset import until
from tests.phone.rounds import MIDSHIP, T, TEXT, begin, good, key, of_kind, title
from tests.phone.store import do, in_database, put
from tests.phone.test_bay_paper import back, sheets
from tests.phone.test_failure import NO_PUT
from tests.phone.words import SITE
from tests.unit.bay.logs import defect, record

OF_RIG = {"rig_id": "rig-1", "rig_name": "Pump of the day"}
NOW = "Date.now()"
DAY_MS = 86400000


def photo(id, size, at_ms=1000):
    return {**record("photo", id, at_ms=at_ms, defect="d1", picture="data:image/jpeg;base64," + "A" * size), **OF_RIG}


def test_a_photo_is_noted_by_its_page_alone(take):
    """Where the database is full a photo does not fill the notes of all else; the page says it is not saved, and saves it once there is room."""
    handset = take()
    beside(handset, **MIDSHIP)
    page = handset.open("checks/log/")
    page.evaluate("() => { window.hadRoom = IDBObjectStore.prototype.put; }")
    page.evaluate(f"() => {{ {NO_PUT} }}")
    do(page, "keepRecord", "bay", photo("p1", 1000))
    expect(page.locator("#unkept:visible")).to_have_text(SITE["site"]["unkept"])
    assert not page.evaluate("() => Object.values(localStorage).some((value) => value.includes('base64'))")
    assert [row["id"] for row in do(page, "keptRecords", "bay")] == ["p1"]
    page.evaluate("() => { IDBObjectStore.prototype.put = window.hadRoom; }")
    do(page, "keepRecord", "bay", {**defect("d1"), **OF_RIG})
    until(page, "!document.querySelector('#unkept').checkVisibility()")
    assert sorted(row["id"] for row in in_database(page, "bay")) == ["d1", "p1"]
    page.close()


def test_a_clock_that_was_ahead(take):
    """A check begun by a clock a day ahead took no time below none; a defect from then is no older than today."""
    handset = take()
    beside(handset, **MIDSHIP)
    page = handset.open("404.html")
    now_ms = page.evaluate(NOW)
    ahead = {**OF_RIG, "at_ms": now_ms + DAY_MS}
    for made in (
        record("round", "r1", list="vacuum", items=["prime_hold"]) | ahead,
        record("answer", "a1", round="r1", item="prime_hold", answer="good", entry="22", amount=22) | ahead,
        defect("d1") | ahead,
    ):
        do(page, "keepRecord", "bay", made)
    page.close()
    page = handset.open("checks/round/#vacuum")
    key(page, T["round"]["end"]).tap()
    expect(title(page)).to_contain_text(T["list"]["vacuum"])
    expect(page.get_by_text(T["round"]["summary"].format(good=1, bad=0, here=0), exact=True)).to_be_visible()  # and no time
    assert [made["took_s"] for made in of_kind(page, "ended")] == [0]
    page.goto(handset.host.origin + "checks/")
    today = page.evaluate("() => new Date().toLocaleDateString('en-US', { year: 'numeric', month: 'short', day: 'numeric' })")
    expect(page.locator(".bay-sentence")).to_contain_text(today)
    page.close()


def test_more_photos_than_a_file_holds(take):
    """The page says what the first file leaves out and gives the rest; another phone has the whole log from them in any order."""
    handset = take()
    beside(handset, **MIDSHIP)
    put(handset, "keepRecords", "bay", [{**defect("d1"), **OF_RIG}, *[photo(f"p{count:02d}", 290_000, 1000 + count) for count in range(50)]])
    page = handset.open("checks/log/")
    # 12,000,000 over 290,175 and what a record adds: 41
    expect(page.get_by_text(T["log"]["left_out"].format(files=2, photos=41, left=9))).to_be_visible()
    files = []
    for part in (1, 2):
        with page.expect_download() as leaving:
            key(page, T["log"]["part"].format(part=part, files=2)).tap()
        files.append(leaving.value.path())
    page.close()
    second = take()
    beside(second, **MIDSHIP)
    other = second.open("checks/log/")
    other.locator("input[type=file]").set_input_files(files[::-1])
    expect(other.get_by_role("status").get_by_text(re.compile(r"\b42\b"))).to_be_visible()  # no part of a file's name, which a mark makes
    assert len(do(other, "keptRecords", "bay")) == 51
    other.close()


def test_an_ended_check_says_from_the_log_that_it_was_hurried(take):
    """Opened from the log and on paper it says, as its last screen did, how many items were answered faster than they can be read."""
    handset = take()
    beside(handset, **MIDSHIP)
    page = handset.open("checks/round/#vacuum")
    begin(page)
    good(page)
    while title(page).inner_text() != T["round"]["all"]:
        good(page)
    key(page, T["round"]["end"]).tap()
    expect(page.get_by_role("alert")).to_be_visible()
    count = of_kind(page, "ended")[0]["hurried"]
    assert count > 0
    said = T["round"]["hurried"].format(count=count)
    expect(page.get_by_text(said)).to_be_visible()
    assert sheets(page, "Letter") == 1
    expect(page.locator("#paper")).to_contain_text(said)
    back(page)
    page.goto(handset.host.origin + f"checks/record/#{of_kind(page, 'round')[0]['id']}")
    expect(page.get_by_text(said)).to_be_visible()
    page.close()


def test_nothing_is_driven_while_the_rig_is_out_of_service(take):
    """A check does not go on to what is done by driving: it says why, ends without it, and the paper says so. Once repaired it is asked."""
    handset = take()
    beside(handset, **MIDSHIP)
    driven = [TEXT[id]["title"] for id in ("brake_service", "brake_parking")]
    made = [record("round", "r1", list="weekly", items=["prime_oil", "brake_service", "brake_parking"]),
            defect("d1", "out_of_service", scope="apparatus", item="air_leak_released")]
    put(handset, "keepRecords", "bay", [{**each, **OF_RIG} for each in made])
    page = handset.open("checks/round/#weekly")
    expect(title(page)).to_have_text(TEXT["prime_oil"]["title"])
    good(page)
    expect(title(page)).to_have_text(T["round"]["all_held"])
    expect(page.get_by_role("alert")).to_have_text(T["round"]["held"].format(items=", ".join(driven)))
    key(page, T["round"]["end"]).tap()
    expect(title(page)).to_have_text(T["round"]["ended"].format(list=T["list"]["weekly"]))
    expect(page.get_by_text(T["round"]["held"].format(items=", ".join(driven)))).to_be_visible()
    sheets(page, "Letter")
    for name in driven:
        expect(page.locator("#paper tr").filter(has_text=name)).to_contain_text(T["round"]["held_paper"])
    back(page)
    page.close()
    repaired = [record("round", "r2", list="cab_air", items=["brake_parking"]), record("repair", "p1", by="Moss", defects=["d1"], done="Hose replaced", parts="", hours="")]
    put(handset, "keepRecords", "bay", [{**each, **OF_RIG} for each in repaired])
    page = handset.open("checks/round/#cab_air")
    expect(title(page)).to_have_text(TEXT["brake_parking"]["title"])
    page.close()
