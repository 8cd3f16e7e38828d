"""This phone, checked: printed examples worked out on it with the host gone, what it holds, and an example that comes out wrong."""
import json
import re

from playwright.sync_api import expect

from site_src.content import data, evidence
from tests.phone.handset import Handset, Host

WORDS = data.words("phone")["phone"]
COUNT = len(evidence.examples())
ADDRESS = "all/phone/"


def said(sentence):
    return sentence.format(count=COUNT)


def test_with_no_signal(browser, built):
    """A phone that has lost every way to its host works all of them out, and hands on as text what it found and holds."""
    handset = Handset(browser, Host(built), worker=True)
    handset.install().close()
    handset.lose_signal()
    page = handset.open(ADDRESS)
    expect(page.locator(".answer-figure")).to_have_text(str(COUNT))
    expect(page.get_by_text(said(WORDS["agree"]), exact=True)).to_be_visible()
    expect(page.locator(".facts").get_by_text(re.compile(r"^[0-9a-f]{4}(-[0-9a-f]{4}){3} of \d{4}-\d\d-\d\d$"))).to_be_visible()
    files = page.locator(".facts div").filter(has=page.get_by_text(WORDS["files"], exact=True)).locator("dd").inner_text()
    have, want = re.fullmatch(r"(\d+) of (\d+)", files).groups()
    assert have == want
    page.evaluate("navigator.share = (what) => { window.handed = what; return Promise.resolve(); }")
    page.get_by_role("button", name=WORDS["share"]).tap()
    text = page.evaluate("window.handed.text")
    assert text.startswith(f"{WORDS['title']}\n{COUNT} {said(WORDS['agree'])}") and files in text
    assert text.count("\n") > 30
    handset.close()


def test_one_comes_out_wrong(handset):
    """An example that this phone works out otherwise than it is printed is counted, and no number of the phone is to be used."""
    def change(route):
        page = route.fetch().json()
        row = next(row for row in page["examples"] if row["topic"] == "pitot_flow")
        row["expected"]["flow_gpm"] += 10
        route.fulfill(body=json.dumps(page), content_type="application/json")

    page = handset.context.new_page()
    page.route("**/all/phone/page.json", change)
    page.goto(handset.host.origin + ADDRESS)
    expect(page.locator(".answer-figure")).to_have_text(str(COUNT - 1))
    expect(page.get_by_text(said(WORDS["differ"]), exact=True)).to_be_visible()
    page.close()


LEFT = """async () => ({
  databases: (await indexedDB.databases()).map(({ name }) => name), local: Object.keys(localStorage), session: Object.keys(sessionStorage),
  caches: await caches.keys(), workers: (await navigator.serviceWorker.getRegistrations()).length })"""


def test_a_phone_changes_hands(browser, built):
    """Two deliberate touches, the site open on a second page: no database, choice, file or worker of the site is left; those of another site are.

    The second page goes blank, and the sentence of the rig that was out of service goes from the first."""
    handset = Handset(browser, Host(built), worker=True)
    handset.install().close()
    other = handset.open("pressure/")
    other.locator("button.lay-line").first.wait_for()
    other.evaluate("localStorage.setItem('rig', 'engine-1'); localStorage.setItem('bay:engine-1', '{\"state\": \"out_of_service\", \"since_ms\": 1, \"what\": \"Leak\", \"limiting\": 1}');")
    page = handset.open(ADDRESS)
    expect(page.locator("#rig-status")).to_be_visible()
    expect(page.locator(".answer-figure")).to_have_text(str(COUNT))
    page.evaluate("async () => { localStorage.setItem('units', 'SI'); localStorage.setItem('/other/ units', 'SI'); await caches.open('files https://other.example/'); }")
    assert page.evaluate(LEFT)["workers"] == 1 and len(page.evaluate(LEFT)["caches"]) > 1
    page.get_by_role("button", name=WORDS["erase"]).tap()
    page.wait_for_timeout(500)
    page.get_by_role("button", name=WORDS["sure"]).tap()
    expect(page.get_by_text(WORDS["erased"])).to_be_visible()
    expect(page.locator("#rig-status")).to_be_hidden()
    assert other.url == "about:blank"
    assert page.evaluate(LEFT) == {"databases": [], "local": ["/other/ units"], "session": [], "caches": ["files https://other.example/"], "workers": 0}
    handset.close()
