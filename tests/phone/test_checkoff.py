"""The officer's check-off sheet: signed by two, sent to another phone, merged, printed on one sheet."""
import re

from playwright.sync_api import expect

from site_src.content import data
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
    expect(page.get_by_text(C["refused"]["same_name"])).to_be_visible()
    typed(row, by_officer="")
    expect(page.get_by_text(C["saved"], exact=True)).to_be_visible()
    expect(page.locator(".check-row", has_text=C["task_name"]["road"]).get_by_text(C["open"])).to_be_visible()

    officers = his.open("log/checkoff/")
    carried(page, officers, tmp_path / "one.json")
    typed(opened(officers, "road"), by_officer="Cal Dunn")
    expect(officers.locator(".check-row").get_by_text("Cal Dunn")).to_be_visible()
    carried(officers, page, tmp_path / "two.json")
    expect(page.locator(".check-row").get_by_text("Cal Dunn")).to_be_visible()
    page.reload()
    expect(page.locator(".check-row").get_by_text("Cal Dunn")).to_be_visible()
    (tmp_path / "other.json").write_text("[]", encoding="utf-8")
    page.locator("input[type=file]").set_input_files(tmp_path / "other.json")
    expect(page.get_by_text(C["not_one"].format(file="other.json"))).to_be_visible()

    paper = page.locator(".check-paper tbody tr", has_text=C["task_name"]["road"]).locator("td").all_text_contents()
    assert paper[2:] == ["Intake open", "5 min 0 s", C["no"], "Ann Bell", "Cal Dunn"]
    for size in ("a4", "letter"):
        page.get_by_label(C[size], exact=True).check(force=True)
        assert len(re.findall(rb"/Type\s*/Page\b", page.pdf(prefer_css_page_size=True))) == 1


def carried(page, other, path):
    """What one phone sends, taken in by another."""
    with page.expect_download() as download:
        page.get_by_role("button", name=C["send"]).tap()
    download.value.save_as(path)
    other.locator("input[type=file]").set_input_files(path)
    expect(other.get_by_text(path.name, exact=False)).to_be_visible()
