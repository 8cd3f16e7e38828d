"""Parts of a service test that ask for what a rig has not: said by one touch, left out of the verdict, named on the sheet, and undone."""
import pytest
from playwright.sync_api import expect

from tests import service_records as records
from tests.phone.proof import START_MS, T, begun, kept_test, store

UNSAID = {"foam": "", "meters": "", "gauges": "", "pump_stages": ""}


def opened(handset, **rig):
    record = begun(records.a_record(), START_MS)
    record["rig"] = {**record["rig"], **rig}
    store(handset, record)
    return record, handset.open(f"test/run/#{record['id']}")


def part(page, record, name):
    page.evaluate("(part) => { location.hash = part; }", f"{record['id']}/{name}")
    expect(page.locator("h1")).to_have_text(T["test_name"][name])


@pytest.mark.parametrize(("name", "field", "none"), [
    ("foam", "foam", "none"), ("meters", "meters", "0"), ("line_gauges", "gauges", "0"), ("transfer", "pump_stages", "1"), ("intake_relief", "intake_relief", "none")])
def test_what_is_not_on_the_rig_is_not_asked(handset, name, field, none):
    """One touch at the part: it goes from the list, the sheet names it, and it comes back where that was a mistake."""
    record, page = opened(handset, **UNSAID)
    row = page.get_by_role("navigation").get_by_role("link", name=T["test_name"][name])
    expect(row).to_have_count(1)
    part(page, record, name)
    page.get_by_role("button", name=T["test"]["absent"], exact=True).tap()
    expect(page.get_by_text(f"{T['test']['absent']}: ")).to_contain_text(T["test_name"][name])
    expect(row).to_have_count(0)
    assert kept_test(page, record["id"])["rig"][field] == none
    sheet = handset.open(f"test/sheet/#{record['id']}")
    expect(sheet.locator(".exceptions").get_by_text(f"{T['test']['absent']}: ")).to_contain_text(T["test_name"][name])
    sheet.close()
    page.get_by_text(T["test"]["absent_undo"], exact=True).tap()
    page.get_by_role("button", name=T["test"]["fitted"].format(part=T["test_name"][name]), exact=True).tap()
    expect(row).to_have_count(1)


def test_what_the_profile_says_is_there_cannot_be_said_away(handset):
    """A second stage, meters, foam and a set intake relief of the rig's profile are tested, or left out with a reason."""
    record, page = opened(handset, foam="proportioner", meters="2", gauges="2", pump_stages="2", relief_set="125@US")
    for name in ("foam", "meters", "line_gauges", "transfer", "intake_relief"):
        part(page, record, name)
        expect(page.get_by_role("button", name=T["test"]["not_done"], exact=True)).to_be_visible()
        expect(page.get_by_role("button", name=T["test"]["absent"], exact=True)).to_have_count(0)


def test_no_priming_is_asked_on_a_hydrant(handset):
    """No pump is primed from a pressurized source: nothing to type, left out with its reason, and the way on passes it by."""
    record = begun(records.a_record(), START_MS)
    record["conditions"] = {**record["conditions"], "source": "pressurised"}
    store(handset, record)
    page = handset.open(f"test/run/#{record['id']}/priming")
    expect(page.get_by_text(T["test"]["no_priming"])).to_be_visible()
    expect(page.locator("#test input:not([type=file])")).to_have_count(0)
    page.evaluate("(part) => { location.hash = part; }", record["id"])
    expect(page.get_by_role("navigation").get_by_role("link", name=T["test_name"]["priming"]).locator(".station-state")).to_have_text(T["test"]["no_priming"])
