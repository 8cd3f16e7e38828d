"""A failed test and the rig's status: the tester decides, the rig's log has it, and no later test is due for it."""
import re

import csv

from playwright.sync_api import expect

from site_src.content import data
from tests import service_records as records
from tests.phone.proof import RIG, T, keep_rig
from tests.phone.store import do

DECISION = T["decision"]
DUE = data.words("bay", "en")


def failed_sheet(take):
    """The sheet of a failed test, after one that passed a year ago; the rig is chosen."""
    handset = take()
    page = handset.open("test/")
    keep_rig(page, RIG)
    do(page, "keepRecord", "tests", records.a_record(1, begun_ms=records.BEGUN_MS - 300 * records.DAY_MS))
    record = records.a_failed_record(number=2)
    do(page, "keepRecord", "tests", record)
    page.goto(f"{handset.host.origin}test/sheet/#{record['id']}")
    return page


def choose(page, label):
    page.get_by_role("group", name=DECISION["status"]).get_by_role("radio", name=label, exact=True).tap()


def test_a_failed_test_changes_the_status_of_the_rig(take):
    """Restricted, with what it may not do, why and by whom; the status stands on every page, and again after a reload."""
    page = failed_sheet(take)
    write = page.get_by_role("button", name=DECISION["write"], exact=True)
    choose(page, DECISION["pump_out"])
    expect(write).to_be_disabled()  # no reason
    choose(page, DECISION["restricted"])
    page.get_by_label(DECISION["reason"], exact=True).fill("Capacity 7 psi short")
    expect(write).to_be_disabled()  # in service with limits, and none is named
    page.get_by_label(DECISION["limits"], exact=True).fill("no drafting")
    page.get_by_label(DECISION["name"], exact=True).fill("1")
    expect(write).to_be_disabled()  # nobody's name
    page.get_by_label(DECISION["name"], exact=True).fill("A. Tester")
    write.tap()
    said = page.locator("p.decision")
    for text in (DECISION["restricted"], "no drafting", "Capacity 7 psi short", "A. Tester"):
        expect(said).to_contain_text(text)
    expect(page.locator("#rig-status")).to_contain_text("no drafting")
    page.reload()
    expect(said).to_contain_text("no drafting")
    expect(write).to_have_count(0)
    defect, decision = sorted(do(page, "keptRecords", "bay"), key=lambda record: record["kind"], reverse=True)
    assert (defect["class"], defect["origin"], decision["limits"], decision["replaces"]) == ("restricted", "test", "no drafting", [defect["id"]])
    assert re.search(r"vacuum.* 13 .*inHg \(≤ 10\); Capacity.* psi \(≥ 150\)$", defect["limit"]), defect["limit"]  # by hand: 24 less 11 inHg; of 150 psi
    page.get_by_role("link", name=DECISION["see"], exact=True).tap()
    expect(page.locator("main")).to_contain_text(defect["limit"])


def test_the_pump_is_out_and_the_due_date_stays(take):
    """Out of service stops the pump; the years page says failed, and due a year after the test that passed."""
    page = failed_sheet(take)
    choose(page, DECISION["pump_out"])
    page.get_by_label(DECISION["reason"], exact=True).fill("Loses its vacuum")
    page.get_by_role("button", name=DECISION["write"], exact=True).tap()
    expect(page.locator("p.decision")).to_contain_text(DECISION["pump_out"])
    expect(page.locator("#rig-status")).to_have_attribute("data-state", "pump_out")
    page.get_by_role("link", name=DECISION["see"], exact=True).tap()
    expect(page.locator("main")).to_contain_text("Loses its vacuum")
    page.goto(page.url.split("checks/")[0] + "test/years/#rig-1")
    expect(page.locator("main")).to_contain_text("Nov 25, 2026")  # by hand: passed 300 days before 21 September 2026, and 365 days on


def test_a_failed_test_stands_out_until_it_is_decided(take):
    """The start page, Checks and the fleet's board say that nobody decided, and lead to the sheet; once decided, none does."""
    page = failed_sheet(take)
    sheet, origin = page.url, page.url.split("test/")[0]
    said = data.words("start")["start"]["undecided"]
    for address in ("", "checks/"):
        page.goto(origin + address)
        link = page.get_by_role("link", name=said)
        expect(link).to_be_in_viewport()
        expect(link).to_have_attribute("href", sheet)
    expect(page.get_by_text(DUE["bay"]["in_service"])).to_have_count(0)
    page.goto(origin + "checks/board/")
    expect(page.locator(".defects")).to_contain_text(said)
    page.goto(sheet)
    choose(page, DECISION["pump_out"])
    page.get_by_label(DECISION["reason"], exact=True).fill("Loses its vacuum")
    page.get_by_role("button", name=DECISION["write"], exact=True).tap()
    expect(page.locator("#rig-status")).to_have_attribute("data-state", "pump_out")
    page.goto(origin)
    expect(page.locator("#rig-status")).to_be_visible()
    expect(page.locator("#failed")).to_be_hidden()
    page.goto(origin + "checks/")
    expect(page.locator(".bay-sentence")).to_be_visible()
    expect(page.get_by_text(said)).to_have_count(0)


def test_a_new_version_of_a_failed_test_says_what_came_before(take):
    """Opened again, the years page and the sheet go on saying that it failed, and so does the start page, until it is finished anew."""
    page = failed_sheet(take)
    sheet, origin = page.url, page.url.split("test/")[0]
    page.locator(".signing summary").first.tap()
    page.get_by_role("button", name=T["sign_off"]["sign"]).first.tap()
    page.get_by_text(T["sign_off"]["reopen"], exact=True).tap()
    for name, text in (("what", "Tank flow"), ("why", "misread"), ("by", "A. Tester")):
        page.locator(f"#version-{name}").fill(text)
    page.get_by_role("button", name=T["sign_off"]["reopen_key"]).tap()
    page.wait_for_url("**/test/run/**")
    page.goto(origin + "test/years/#rig-1")
    expect(page.locator("main")).to_contain_text(T["years"]["before"].format(status=T["status"]["fail"]))
    page.goto(sheet)
    expect(page.locator(".paper")).to_contain_text(f"{T['sign_off']['came_to']}: {T['status']['fail']}")
    page.goto(origin)
    expect(page.get_by_role("link", name=data.words("start")["start"]["undecided"])).to_have_attribute("href", sheet.replace("sheet", "run"))


def test_due_says_that_the_last_test_failed(take):
    """Nobody wrote it done, and its last test failed: overdue, and not "never written"."""
    page = failed_sheet(take)
    page.goto(page.url.split("test/")[0] + "checks/due/")
    row = page.get_by_role("button", name=DUE["due_name"]["service_test"])
    expect(row).to_contain_text(DUE["due"]["failed"].split("{")[0])
    expect(row).not_to_contain_text(DUE["due"]["never"])
    expect(page.locator("section").filter(has=row)).to_contain_text(DUE["due"]["group_overdue"])


def test_the_spreadsheet_has_rig_and_site(take):
    """Each entry of rig and site in a row of its own, with its unit; of a test that goes on it says so and gives no verdict."""
    handset = take()
    page = handset.open("test/")
    keep_rig(page, RIG)
    record = records.an_unfinished_record()
    record["rig"].update(unit_number="E-7", year_built="2011", pump_serial="P 4417")
    record["conditions"].update(weather="Rain", engine_hours="6120", odometer="48 200 mi")
    do(page, "keepRecord", "tests", record)
    page.goto(f"{handset.host.origin}test/run/#{record['id']}/site")
    page.locator("summary").get_by_text(T["condition"]["about"]).tap()
    page.get_by_label(T["field"]["place"], exact=True).fill("Mill pond")
    page.get_by_label(T["field"]["weather"], exact=True).tap()
    page.goto(f"{handset.host.origin}test/sheet/#{record['id']}")
    for text in ("E-7", "2011", "P 4417", "Mill pond", "Rain", "6120", "48 200 mi"):
        expect(page.locator("dd", has_text=text).first).to_be_attached()
    page.evaluate("() => { navigator.canShare = undefined; }")
    with page.expect_download() as saved:
        page.get_by_role("button", name=T["sheet"]["csv"], exact=True).tap()
    with open(saved.value.path(), encoding="utf-8-sig", newline="") as file:
        rows = list(csv.reader(file))
    for part, name, figure, unit in ((T["sheet"]["rig"], "pump_rated", "1250", "gpm"), (T["sheet"]["rig"], "governed", "2200", "rpm"), (T["sheet"]["rig"], "tank", "750", "gal"),
                                     (T["test"]["site"], "suction_length_ft", "20", "ft")):
        assert [row[5:7] for row in rows if row[4] == T["field"][name] and row[0] in (part, T["test_name"]["conditions"])] == [[figure, unit]], name
    for name, text in (("unit_number", "E-7"), ("year_built", "2011"), ("pump_serial", "P 4417"), ("place", "Mill pond"), ("weather", "Rain"), ("engine_hours", "6120"), ("odometer", "48 200 mi")):
        assert [row[5] for row in rows if row[4] == T["field"][name]] == [text], name
    assert rows[-1][-1] == T["sheet"]["unfinished"]
