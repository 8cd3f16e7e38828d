"""A test that is signed: nothing changes after that but by a new version; what was read with, and whether it was in date."""
import csv
import json

from playwright.sync_api import expect

from site_src.report import signed
from tests import service_records as records
from tests.phone.proof import FULL, RIG, T, keep_rig, kept_test, store
from tests.phone.store import do

SIGN = T["sign_off"]


def test_a_signed_test_and_its_new_version(take):
    """Drawn and by name alone; the digest is the report's own; a later version says what, why and by whom, and has to be signed again."""
    handset = take()
    page = handset.open("test/")
    keep_rig(page, RIG)
    record = records.a_record()
    record["equipment"][0]["due"] = "2026-09-01"  # by hand: the test was 21 September 2026
    do(page, "keepRecord", "tests", record)
    page.goto(f"{handset.host.origin}test/sheet/#{record['id']}")
    expect(page.locator(".paper")).to_contain_text(T["sheet"]["out_of_date"])
    page.get_by_text(SIGN["as"].format(role=T["condition"]["tester"])).tap()
    pad = page.locator(".pad").first
    pad.scroll_into_view_if_needed()
    box = pad.bounding_box()
    page.mouse.move(box["x"] + 20, box["y"] + 40)
    page.mouse.down()
    page.mouse.move(box["x"] + 120, box["y"] + 20, steps=8)
    page.mouse.up()
    page.get_by_role("button", name=SIGN["sign"]).first.tap()
    expect(page.locator(".signature")).to_be_visible()
    witness = page.locator(".signing")
    witness.locator("summary").tap()
    expect(witness.get_by_role("button", name=SIGN["sign"])).to_be_disabled()  # nobody is named
    witness.get_by_label(T["condition"]["witness"], exact=True).fill("W. Witness")
    witness.get_by_role("button", name=SIGN["sign"]).tap()
    expect(page.locator(".paper")).to_contain_text("W. Witness")
    expect(page.locator(".signs-off").get_by_text(SIGN["same"])).to_have_count(2)
    kept = kept_test(page, record["id"])
    assert {each["digest"] for each in kept["signed"]} == {signed.digest(kept)} and signed.broken(kept) == []
    assert "l" in kept["signed"][0]["strokes"] and kept["signed"][1]["strokes"] == ""
    page.evaluate("() => { navigator.canShare = undefined; }")
    with page.expect_download() as saved:
        page.get_by_role("button", name=T["sheet"]["csv"], exact=True).tap()
    with open(saved.value.path(), encoding="utf-8-sig", newline="") as file:
        rows = list(csv.reader(file))
    assert {len(row) for row in rows} == {8}
    told = {cell for row in rows for cell in row}
    assert {"W. Witness", "G-17", "1.75", "1 × 2", kept["signed"][0]["digest"], "2210", "Annual service", "governor"} <= told
    page.get_by_text(SIGN["reopen"]).tap()
    for name, text in (("what", "Tank flow"), ("why", "misread"), ("by", "A. Tester")):
        page.locator(f"#version-{name}").fill(text)
    page.get_by_role("button", name=SIGN["reopen_key"]).tap()
    page.wait_for_url("**/test/run/**")
    again = kept_test(page, record["id"])
    assert (again["finished_ms"], again["signed"], again["versions"][0]["digest"]) == (None, [], kept["signed"][0]["digest"])
    page.goto(f"{handset.host.origin}test/sheet/#{record['id']}")
    expect(page.locator(".paper")).to_contain_text("Tank flow")
    assert json.dumps(again)


def test_two_tabs_sign_one_test(take):
    """What another tab signed, or opened again, is not written over: this one shows it as it is kept, says so, and signs once that was seen."""
    handset = take()
    record = store(handset, records.a_record())
    one, other = (handset.open(f"test/sheet/#{record['id']}") for _ in range(2))

    def sign(page, role, name):
        part = page.locator(".signing", has_text=SIGN["as"].format(role=T["condition"][role]))
        if part.get_attribute("open") is None:
            part.locator("summary").tap()
        part.get_by_label(T["condition"][role], exact=True).fill(name)
        key = part.get_by_role("button", name=SIGN["sign"])
        key.evaluate("(key) => { key.click(); key.click(); }")  # a wet glove touches twice

    sign(one, "tester", "A. Tester")
    expect(one.locator(".signs-off")).to_contain_text(SIGN["same"])
    sign(other, "witness", "W. Witness")
    expect(other.get_by_role("alert").filter(has_text=SIGN["elsewhere"])).to_be_visible()
    expect(other.locator(".signs-off")).to_contain_text("A. Tester")
    assert [each["name"] for each in kept_test(other, record["id"])["signed"]] == ["A. Tester"]
    sign(other, "witness", "W. Witness")
    expect(other.locator(".signs-off").get_by_text(SIGN["same"])).to_have_count(2)
    expect(other.get_by_text(SIGN["elsewhere"])).to_have_count(0)
    assert [each["name"] for each in kept_test(other, record["id"])["signed"]] == ["A. Tester", "W. Witness"]


def test_a_full_phone_keeps_a_signature(handset):
    """With no room in the database a signature is noted, that is said, and it stands when the page comes back."""
    record = store(handset, records.a_record())
    page = handset.open(f"test/sheet/#{record['id']}")
    page.locator(".signing").first.locator("summary").tap()
    page.evaluate(FULL)
    page.locator("#sign-tester").fill("A. Tester")
    page.get_by_role("button", name=SIGN["sign"]).first.tap()
    expect(page.locator("#noted")).to_be_visible()
    expect(page.locator(".signs-off")).to_contain_text(SIGN["same"])
    page.reload()
    expect(page.locator(".signs-off")).to_contain_text(SIGN["same"])


def test_instruments_stand_on_the_due_list(take):
    """With the rig's newest test: named, by date, and one past its day as overdue."""
    handset = take()
    page = handset.open("test/")
    keep_rig(page, RIG)
    record = records.a_record()
    record["equipment"][0]["due"], record["equipment"][1]["due"] = "2020-01-01", "2199-01-01"
    do(page, "keepRecord", "tests", record)
    page.goto(f"{handset.host.origin}checks/due/")
    expect(page.locator(".group", has=page.locator(".due-overdue"))).to_contain_text("G-17")
    expect(page.locator(".group", has=page.locator(".due-later"))).to_contain_text("Pitot")
    page.evaluate("() => { navigator.canShare = undefined; }")
    with page.expect_download() as saved:
        page.get_by_role("button", name="Calendar file").tap()
    text = saved.value.path().read_text(encoding="utf-8")
    assert "DTSTART;VALUE=DATE:20200101" in text and "G-17" in text
