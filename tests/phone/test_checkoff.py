"""The officer's check-off sheet: signed by two, sent to another phone, merged, printed on one sheet."""
import json
import re

from playwright.sync_api import expect

from site_src.content import data
from tests import service_records
from tests.phone.handset import until
from tests.phone.sources import source

C = data.words("checkoff")["checkoff"]
RUN = """async (store) => {
  const { keepRecord } = await import(store);
  const [kind, rig, entries] = ["card", null, []];
  await keepRecord("log", { id: "2026-01-01T00:00:00Z-a", kind, title: "Back to road", rig, began_at: "2026-01-01T00:00:00Z", ended_at: "2026-01-01T00:05:00Z", outcome: "done", entries });
}"""


def opened(page, task):
    page.locator(".check-row > summary", has_text=C["task_name"][task]).tap()
    return page.locator(".check-row[open]")


def typed(row, **entries):
    for name, text in entries.items():
        row.get_by_label(C[name], exact=True).fill(text)
    row.get_by_role("button", name=C["save"]).tap()


def test_a_sheet_goes_from_phone_to_phone(take, tmp_path):
    """A trainee signs on her phone with the time of her run, the officer on his; back on hers it is signed, and one sheet on both papers."""
    hers, his = take(), take()
    page = hers.open("log/")
    page.evaluate(RUN, source(page, "shared/store.js"))
    page = hers.open("log/checkoff/")
    page.get_by_label(C["trainee"], exact=True).fill("Ann Bell")
    row = opened(page, "road")
    row.get_by_label(C["time"], exact=True).select_option("300")
    typed(row, faults="Intake open", by_trainee="Ann Bell", by_officer="ann bell")
    expect(row.locator("summary")).to_contain_text(C["refused"]["same_name"])
    expect(row.locator(".beside")).to_be_in_viewport()
    expect(row.get_by_text(C["open"])).to_have_count(0)
    typed(row, by_officer="")
    expect(row.get_by_text(C["refused"]["same_name"])).to_have_count(0)
    expect(page.get_by_text(C["saved"], exact=True)).to_be_visible()
    expect(page.locator(".check-row", has_text=C["task_name"]["road"]).get_by_text(C["open"])).to_be_visible()

    officers = his.open("log/checkoff/")
    carried(page, officers, tmp_path / "one.json")
    typed(opened(officers, "road"), by_officer="Cal Dunn")
    expect(officers.locator(".check-row").get_by_text("Cal Dunn")).to_be_visible()
    carried(officers, page, tmp_path / "two.json")
    status = page.locator(".check-row", has_text=C["task_name"]["road"]).locator("summary span")
    expect(status).to_contain_text(re.compile(C["by_off_rig"].split("{")[0] + ".*Cal Dunn"))
    page.reload()
    expect(page.locator(".check-row").get_by_text("Cal Dunn")).to_be_visible()
    (tmp_path / "other.json").write_text("[]", encoding="utf-8")
    page.locator("input[type=file]").set_input_files(tmp_path / "other.json")
    expect(page.get_by_text(C["not_one"].format(file="other.json"))).to_be_visible()

    line = page.locator(".check-paper tbody tr", has_text=C["task_name"]["road"])
    expect(line.locator("th")).to_contain_text(C["off_rig"])
    paper = page.locator(".check-paper tbody tr", has_text=C["task_name"]["road"]).locator("td").all_text_contents()
    assert paper[2:] == ["Intake open", "5 min 0 s", C["no"], "Ann Bell", "Cal Dunn"]
    for size in ("a4", "letter"):
        page.get_by_label(C[size], exact=True).check(force=True)
        assert len(re.findall(rb"/Type\s*/Page\b", page.pdf(prefer_css_page_size=True))) == 1


def test_the_wrong_way_round(take, tmp_path):
    """A signature without a day is refused; a file taken twice adds nothing; another's file brings a sheet to choose; a slow clock leaves no row open."""
    hers, his = take(), take()
    page, status = hers.open("log/checkoff/"), C["by_off_rig"].split("{")[0]
    page.get_by_label(C["trainee"], exact=True).fill("Ann Bell")
    row = opened(page, "road")
    typed(row, date="", by_trainee="Ann Bell")
    expect(row.locator("summary")).to_contain_text(C["refused"]["undated"])
    typed(row, date="2026-01-02")
    expect(page.get_by_text(C["saved"], exact=True)).to_be_visible()

    slow = his.context.new_page()
    slow.clock.install(time="2020-01-01T00:00:00Z")
    slow.goto(his.host.origin + "log/checkoff/")
    slow.get_by_label(C["trainee"], exact=True).fill("Eve Fox")  # who has no sheet here: the file is another's
    carried(page, slow, tmp_path / "ann.json")
    slow.get_by_role("radio", name="Ann Bell", exact=True).tap()
    typed(opened(slow, "road"), by_officer="Cal Dunn")
    summary = slow.locator(".check-row", has_text=C["task_name"]["road"]).locator("summary")
    expect(summary).to_contain_text(status)
    expect(summary).not_to_contain_text(C["open"])
    carried(slow, page, tmp_path / "signed.json")
    expect(page.get_by_text(C["brought"].format(file="signed.json", count=1))).to_be_visible()
    page.locator("input[type=file]").set_input_files(tmp_path / "signed.json")
    expect(page.get_by_text(C["brought"].format(file="signed.json", count=0))).to_be_visible()
    summary = page.locator(".check-row", has_text=C["task_name"]["road"]).locator("summary")
    expect(summary).to_contain_text(status)
    expect(summary).not_to_contain_text(C["open"])


def test_each_task_says_what_must_be_seen(take):
    """Opened, a task has its signs before its boxes: those of the card's short form, of the order, or its own; and the paper has them all."""
    page = take().open("log/checkoff/")
    page.get_by_label(C["trainee"], exact=True).fill("Ann Bell")
    act, sign = data.words("short")["short"]["ok_light"]
    must = {"into_pump": f"{act}: {sign}", "water_loss": data.orders("line_lost")["line_lost"]["do"][0], "gauge": C["see"]["gauge"][0]}
    for task, sentence in must.items():
        row = opened(page, task)
        expect(row.get_by_text(C["must"])).to_be_visible()
        expect(row.get_by_role("listitem").filter(has_text=sentence)).to_be_visible()
        row.locator("summary").tap()
    expect(page.locator(".check-see")).to_have_count(len(data.load("checkoff")["task"]))
    assert all(sentence in page.locator(".check-paper").text_content() for sentence in must.values())


def carried(page, other, path):
    """What one phone sends, taken in by another."""
    with page.expect_download() as download:
        page.get_by_role("button", name=C["send"]).tap()
    download.value.save_as(path)
    other.locator("input[type=file]").set_input_files(path)
    expect(other.get_by_text(path.name, exact=False)).to_be_visible()


KEPT = """async (store) => {
  const { keepRecord } = await import(store);
  const at = Date.parse("2026-01-01T00:00:00Z");
  const cause = { id: "2026-01-01T00:00:00Z-b", kind: "diagnosis", title: GAUGE, rig: null, began_at: "2026-01-01T00:00:00Z", ended_at: "2026-01-01T00:02:00Z", outcome: "stands", entries: [] };
  await keepRecord("log", cause);
  await keepRecord("tests", { ...TEST, begun_ms: at, finished_ms: at + 7_500_000 });
}"""


def test_a_time_is_the_records_or_not_timed(handset):
    """A fault found at a gauge and a finished service test give their times; a relay, which nothing here runs, says that it has none."""
    page = handset.open("log/")
    kept = KEPT.replace("GAUGE", repr(data.words("faults")["name"]["gauge_dead"])).replace("TEST", json.dumps(service_records.a_record()))
    page.evaluate(kept, source(page, "shared/store.js"))
    page = handset.open("log/checkoff/")
    page.get_by_label(C["trainee"], exact=True).fill("Ann Bell")
    for task, took in (("gauge", "120"), ("service", "7500")):
        row = opened(page, task)
        row.get_by_label(C["time"], exact=True).select_option(took)
        page.locator(".check-row > summary", has_text=C["task_name"][task]).tap()
    expect(opened(page, "relay").get_by_text(C["time_none"])).to_be_visible()


def test_two_tabs_lose_nothing(handset):
    """What one tab saves stands beside what another, opened before, saves after it."""
    one = handset.open("log/checkoff/")
    one.get_by_label(C["trainee"], exact=True).fill("Ann Bell")
    other = handset.open("log/checkoff/")
    expect(other.get_by_label(C["trainee"], exact=True)).to_have_value("Ann Bell")
    typed(opened(one, "road"), faults="Intake open")
    expect(one.get_by_text(C["saved"], exact=True)).to_be_visible()
    typed(opened(other, "draft"), faults="Drain open")
    expect(other.get_by_text(C["saved"], exact=True)).to_be_visible()
    one.reload()
    for task in ("road", "draft"):
        expect(one.locator(".check-row", has_text=C["task_name"][task]).get_by_text(C["open"])).to_be_visible()


def test_a_sheet_is_dropped_in_two_touches_and_put_back(handset):
    """One touch asks, the second takes the trainee's entries off the phone; a key puts them back, and another's were never touched."""
    page = handset.open("log/checkoff/")
    for trainee in ("Eve Fox", "Ann Bell"):
        page.get_by_label(C["trainee"], exact=True).fill(trainee)
        typed(opened(page, "road"), faults=trainee)
        expect(page.get_by_text(C["saved"], exact=True)).to_be_visible()
        page.locator(".check-row > summary", has_text=C["task_name"]["road"]).tap()
    status = page.locator(".check-row", has_text=C["task_name"]["road"]).locator("summary")
    page.get_by_role("button", name=C["remove"]).tap()
    expect(status.get_by_text(C["open"])).to_be_visible()
    asked = page.evaluate("performance.now()")
    until(page, f"performance.now() > {asked} + 400")  # a touch that follows at once is no second one
    page.get_by_role("button", name=C["remove_sure"].format(count=1)).tap()
    expect(page.get_by_text(C["removed"].format(trainee="Ann Bell"))).to_be_visible()
    expect(status.get_by_text(C["todo"])).to_be_visible()
    page.get_by_role("button", name=C["put_back"]).tap()
    expect(status.get_by_text(C["open"])).to_be_visible()
    page.reload()
    page.get_by_label(C["trainee"], exact=True).fill("Eve Fox")
    expect(status.get_by_text(C["open"])).to_be_visible()
