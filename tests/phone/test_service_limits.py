"""Where the limits of a service test come from, and when they were last compared with the edition in force."""
import pytest
from playwright.sync_api import expect

from site_src.content import data, standards
from tests import service_records as records
from tests.phone.proof import NAME, RIG, T, begun, keep_rig, kept_test
from tests.phone.store import do


@pytest.mark.parametrize(("days", "edition", "is_asked"), [(10, "ours", False), (364, "ours", False), (366, "ours", True), (10, "another", True), (-2, "ours", True)])
def test_limits_are_compared_once_a_year(handset, days, edition, is_asked):
    """Who compared the limits with the edition in force need not again at the next test, for a year and for that edition; not by a clock ahead."""
    page = handset.open("")
    keep_rig(page, RIG)
    now = page.evaluate("Date.now()")
    before = records.a_record(rig="another-rig")
    dry = before["tests"]["checks_dry"]
    dry["values"]["limits_confirmed"], dry["at"] = "yes", {"limits_confirmed": now - days * 86_400_000}
    if edition == "another":
        before["standard"] = {**before["standard"], "edition": "2001-01-01"}
    do(page, "keepRecord", "tests", before)
    page.goto(handset.host.origin + "test/")
    page.get_by_role("button", name=f"{T['test']['begin']}: {NAME}").tap()
    page.get_by_text(T["test"]["site"], exact=True).wait_for()
    record = kept_test(page, page.url.split("#")[1].split("/")[0])
    values = record["tests"].get("checks_dry", {}).get("values", {})
    assert (values.get("limits_confirmed") is None) == is_asked


def test_a_test_says_when_limits_were_compared(handset):
    """The day stands on the checks before the run, where it was before the test was begun."""
    page = handset.open("test/")
    now = page.evaluate("Date.now()")
    record = begun(records.a_record(), now)
    record["tests"]["checks_dry"]["at"] = {"limits_confirmed": now - 10 * 86_400_000}
    do(page, "keepRecord", "tests", record)
    page.goto(handset.host.origin + f"test/run/#{record['id']}/checks_dry")
    expect(page.locator(".compared")).to_be_visible()


def test_where_limits_come_from_is_a_line_for_each_part(handset):
    """Three standards, the chosen one named; each part of it is one line that opens to its source, and the page is two screens and not nine."""
    page = handset.open("")
    keep_rig(page, RIG)
    page.goto(handset.host.origin + "test/")
    words = data.words("service")
    chosen = page.locator(".limits-chosen").filter(visible=True)
    page.get_by_text(words["sources"]["title"], exact=True).tap()
    expect(chosen).to_have_text(words["sources"]["chosen"].format(kind=words["kind"]["annual"]))
    assert page.evaluate("document.documentElement.scrollHeight") < 2 * 740
    page.get_by_role("radio", name=words["standard"]["europe"]).tap()
    group = page.locator(".limits-of").filter(has=chosen)
    expect(group).to_have_attribute("data-standard", "europe")
    expect(chosen).to_have_count(1)
    group.locator("> summary").tap()
    parts = {row["section"]: row for row in standards.sections() if row["standard"] == "europe"}
    expect(group.locator("details > summary")).to_have_text([words["section"][part] for part in parts])
    assert all(height <= 60 for height in group.locator("details > summary").evaluate_all("(lines) => lines.map((line) => line.offsetHeight)"))
    group.get_by_text(words["section"]["vacuum"], exact=True).tap()
    expect(group.get_by_text(parts["vacuum"]["source"][:30]).filter(visible=True).first).to_be_visible()
    page.close()
