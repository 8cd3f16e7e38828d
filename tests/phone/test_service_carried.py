"""Readings nobody took, or not at their time: a figure kept from the reading before it is named before it is kept, and marked on the sheet and in its files."""
import csv

from playwright.sync_api import expect

from tests import service_records as records
from tests.phone.proof import T, run_of, store  # noqa: F401  the fixture

RUN = T["run"]


def test_what_nobody_read_is_named_before_it_is_kept(run_of):
    """One touch keeps no figure that nobody touched since the last reading: each is named, a touch that follows at once counts for none, and the file says which were carried."""
    one = run_of(1)
    one.clock.passes(301)
    keep = one.page.get_by_role("button", name=RUN["take_at"].format(at="5:00"))
    carry = one.page.get_by_role("button", name=RUN["carry"], exact=True)
    one.type("pitot_psi", "72")
    keep.tap()
    expect(one.page.get_by_role("alert")).to_have_text(RUN["carry_ask"].format(cells="Discharge 145 psi, Engine 1600 rpm"))
    carry.evaluate("(key) => key.click()")
    expect(one.page.locator(".question")).to_be_in_viewport(ratio=1)
    one.press(RUN["carry_no"])
    keep.tap()
    one.carry()
    (first, second) = one.record()["tests"]["capacity"]["attempts"][0]["sets"]
    assert ("as_before" in first, second["as_before"]) == (False, ["discharge_psi", "engine_rpm"])
    one.says(RUN["kept_before"].format(cells="Discharge, Engine"))
    one.page.get_by_role("button", name=RUN["take_back"].format(at="5:02")).tap()  # as it was before it was kept: the pitot is read, the others are not
    expect(one.page.locator(".cell").filter(has_text=RUN["as_before"])).to_have_count(2)


def test_a_reading_a_run_can_do_without_is_not_carried_on(run_of):
    """A counter that was read once would stand beside every later engine speed, and turn the pump's ratio wrong."""
    one = run_of(1, is_started=False)
    one.page.get_by_text(RUN["more"], exact=True).tap()
    one.type("pump_rpm", "3200")
    one.press(RUN["begin"])
    expect(one.page.locator("input[name=pump_rpm]")).to_have_value("")
    one.clock.passes(300)
    for name, text in (("pitot_psi", "71"), ("discharge_psi", "146"), ("engine_rpm", "1610")):
        one.type(name, text)
    one.press(RUN["take_at"].format(at="5:00"))
    one.says(RUN["take_back"].format(at="5:00"))
    assert [each["values"].get("pump_rpm") for each in one.record()["tests"]["capacity"]["attempts"][0]["sets"]] == ["3200@US", None]


def test_a_carried_figure_is_marked_on_the_sheet_and_in_its_files(handset):
    """Beside each figure that was not read again, with how many there are of all; in the CSV in the last column."""
    record = records.a_record()
    attempt = record["tests"]["capacity"]["attempts"][0]
    attempt["sets"][1]["as_before"] = ["discharge_psi", "pitot_psi.0"]
    attempt["sets"][2]["as_before"] = ["engine_rpm"]
    store(handset, record)
    page = handset.open(f"test/sheet/#{record['id']}")
    rows = page.locator("table.runs tbody").first.locator("tr")
    expect(rows.nth(1)).not_to_contain_text("=")
    expect(rows.nth(2)).to_contain_text("= 145")
    expect(rows.nth(2)).to_contain_text("= 71")
    expect(rows.nth(3)).to_contain_text("= 1600")
    runs = [run for test in record["tests"].values() for run in test.get("attempts", [])]
    expect(page.get_by_text(T["sheet"]["carried"].format(count=3, of=3 * sum(len(run["sets"]) for run in runs)))).to_be_visible()
    page.evaluate("() => { navigator.canShare = undefined; }")
    with page.expect_download() as saved:
        page.get_by_role("button", name=T["sheet"]["csv"], exact=True).tap()
    with open(saved.value.path(), encoding="utf-8-sig") as file:
        written = [row for row in csv.reader(file) if row[0] == T["test_name"]["capacity"] and row[7] == RUN["as_before"]]
    assert [(row[2], row[5]) for row in written] == [("300", "145"), ("300", "71"), ("600", "1600")]


def test_a_reading_off_its_time_is_named(run_of):
    """More than half a minute before it is due its key says early, and its row says when it was read and what it counts for."""
    one = run_of(1)
    one.clock.passes(250)
    one.still()
    one.press(RUN["take_early"].format(at="5:00"))
    one.says(RUN["take_back"].format(at="4:10"))
    sheet = one.handset.open(f"test/sheet/#{one.id}")
    row = sheet.locator("table.runs tbody").first.locator("tr").nth(2)
    expect(row).to_contain_text("4:10 " + RUN["early"].format(at="5:00"))


def test_an_incomplete_test_says_what_has_no_result(handset):
    """One sentence beside the verdict, by name; the same where the finished test is looked at."""
    record = records.a_record()
    for name in ("vacuum", "priming"):
        record["tests"][name] = {}
    record = store(handset, records.judged(record))
    said = T["sheet"]["not_proven_told"].format(parts=f"{T['test_name']['vacuum']}, {T['test_name']['priming']}")
    for address in ("sheet", "run"):
        page = handset.open(f"test/{address}/#{record['id']}")
        expect(page.locator(".overall").first).to_contain_text(T["status"]["not_proven"])
        expect(page.get_by_text(said)).to_be_in_viewport()


def test_what_the_error_is_from_stands_in_words(handset):
    """Where ± stands on the sheet, each instrument's error: 3 psi of a gauge, half a foot of lift, 1 psi of a pitot, and this gauge's own by its certificate."""
    record = store(handset, {**records.a_record(), "accuracy": {"discharge_psi": "1.5@US"}})
    page = handset.open(f"test/sheet/#{record['id']}")
    names = T["accuracy"]
    expect(page.locator(".whose")).to_contain_text(f"{names['discharge_psi']} 1.5 psi, {names['lift_ft']} 0.5 ft, {names['pitot_psi']} 1 psi")
