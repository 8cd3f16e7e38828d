"""The drill on the phone: five questions of the chosen rig, a slip refused, the working after each, what was missed first next time."""
from playwright.sync_api import expect

from site_src.content import data, fleet
from tests.phone.proof import keep_rig
from tests.phone.store import do

DRILL = data.load("words/en/drill")
WORDS, KINDS = DRILL["drill"], DRILL["kind"]


def answer_wrong(page):
    """A question answered by what is surely wrong; a typed one first by letters, which are refused and count for nothing."""
    entry = page.get_by_label(WORDS["typed"])
    if entry.count():
        entry.fill("ten")
        page.get_by_role("button", name=WORDS["check"]).tap()
        expect(page.get_by_role("alert").filter(has_text="Digits only")).to_be_visible()
        expect(entry).to_have_value("ten")
        entry.fill("9999")
        entry.press("Enter")
    else:
        page.get_by_role("group", name=WORDS["chosen"]).get_by_role("button").last.tap()
    expect(page.locator("#drill-verdict")).to_be_focused()
    expect(page.get_by_role("heading", name=WORDS["working"])).to_be_visible()
    expect(page.locator(".drill-working li").first).to_be_visible()
    is_wrong = page.locator("#drill-verdict").inner_text().startswith(WORDS["wrong"].split("{")[0])
    yours = page.locator(".drill-judged").get_by_text(WORDS["yours"].split("{")[0])  # what was answered stays to be compared
    expect(yours).to_have_count(int(is_wrong))
    return is_wrong


def test_what_was_missed_comes_first(handset):
    """Five questions with a rig of one's own; those missed are named, kept, and are what the next sitting begins with, after a reload too."""
    page = handset.open("practice/numbers/")
    keep_rig(page, fleet.load()["tollgate-engine-1"])
    page.reload()
    expect(page.get_by_text(WORDS["of_rig"].format(name="Tollgate Engine 1"))).to_be_visible()
    missed = []
    for place in range(5):
        kind = page.locator(".drill-place b").inner_text()
        if answer_wrong(page):
            missed.append(kind)
        page.get_by_role("button", name=WORDS["end" if place == 4 else "next"]).tap()
    assert missed and set(missed) <= set(KINDS.values())
    expect(page.get_by_role("heading", name=WORDS["missed"])).to_be_visible()
    assert set(page.locator(".drill-missed li").all_inner_texts()) == set(missed)
    page.reload()
    again = []
    for place in range(len(missed)):
        again.append(page.locator(".drill-place b").inner_text())
        answer_wrong(page)
        page.get_by_role("button", name=WORDS["end" if place == 4 else "next"]).tap()
    assert sorted(again) == sorted(missed)


def test_what_comes_back_is_said_with_its_day(handset):
    """After the five: what was missed first, then what was right before, with the day it is due; nothing of a score."""
    page = handset.open("practice/numbers/")
    rig = fleet.load()["tollgate-engine-1"]
    keep_rig(page, rig)
    today = page.evaluate("Math.floor((Date.now() - new Date().getTimezoneOffset() * 60000) / 86400000)")
    boxes = {"tip": {"box": 2, "due": today + 2}, "colors": {"box": 1, "due": today + 1}}
    do(page, "keep", f"drill:{rig['id']}", boxes)
    page.reload()
    expect(page.get_by_text(WORDS["of_rig"].format(name="Tollgate Engine 1"))).to_be_visible()
    for place in range(5):
        answer_wrong(page)
        page.get_by_role("button", name=WORDS["end" if place == 4 else "next"]).tap()
    rows = page.locator(".drill-standing li")
    expect(rows.filter(has_text=KINDS["colors"])).to_have_text(f"{KINDS['colors']}: {WORDS['tomorrow']}")  # with it one that was chosen and happened to be right
    expect(rows.filter(has_text=KINDS["tip"])).to_have_text(f"{KINDS['tip']}: {WORDS['in_days'].format(days=2)}")
