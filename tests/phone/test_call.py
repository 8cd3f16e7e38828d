"""The call of the shift on the phone: set by a slider, answered in the middle of a reload, its debrief with the pages that told it."""
import re

from playwright.sync_api import expect

from site_src.content import data, fleet
from tests.phone.proof import keep_rig

DRILL = data.load("words/en/drill")
WORDS, CALL, KINDS = DRILL["drill"], DRILL["call"], DRILL["kind"]


def opened(handset):
    page = handset.open("practice/call/")
    keep_rig(page, fleet.load()["tollgate-engine-1"])
    page.reload()
    expect(page.get_by_text(CALL["of_rig"].format(name="Tollgate Engine 1"))).to_be_visible()
    return page


def answer(page):
    """A step answered by what is wrong where it is typed, by its first option where it is chosen."""
    entry = page.get_by_label(WORDS["typed"])
    if entry.count():
        entry.fill("9999")
        entry.press("Enter")
    else:
        page.get_by_role("group", name=WORDS["chosen"]).get_by_role("button").first.tap()
    expect(page.locator("#drill-verdict")).to_be_focused()


def go_on(page):
    page.locator(".dock .key-act").tap()


def test_slider_needle_and_keypad_are_one(handset):
    """What the slider sets stands in the entry and on the gauge, and what is typed moves both; letters are refused and count for nothing."""
    page = opened(handset)
    answer(page)
    go_on(page)
    entry, slider = page.get_by_label(WORDS["typed"]), page.get_by_role("slider", name=CALL["slide"])
    slider.fill("150")
    expect(entry).to_have_value("150")
    expect(page.get_by_role("img", name=re.compile("150 psi"))).to_be_visible()
    entry.fill("90")
    expect(slider).to_have_value("90")
    expect(page.get_by_role("img", name=re.compile(" 90 psi"))).to_be_visible()
    entry.fill("ten")
    go_on(page)
    expect(page.get_by_role("alert").filter(has_text="Digits only")).to_be_visible()
    expect(page.locator("#drill-verdict")).to_have_count(0)


def test_a_reload_loses_no_answer(handset):
    """A reload goes on at the next step of the same call; the debrief names each step that was missed, the answer, and the page that told it."""
    page = opened(handset)
    answer(page)
    page.reload()
    expect(page.locator(".drill-place")).to_contain_text(WORDS["count"].format(n=2, count=5))
    expect(page.locator(".drill-place")).to_contain_text(KINDS["pump"])
    answer(page)  # 9999
    for _ in range(3):
        go_on(page)
        answer(page)
    go_on(page)
    expect(page.locator("#call-debrief")).to_be_focused()
    pump = page.locator(".call-steps > li").nth(1)
    expect(pump).to_contain_text("9999 psi")
    expect(pump).to_contain_text("psi")
    link = pump.get_by_role("link")
    expect(link).to_contain_text(CALL["led"])
    page.reload()
    expect(page.locator(".call-steps > li")).to_have_count(5)
    link.tap()
    expect(page).to_have_url(re.compile("/pressure/$"))


def test_another_call_begins_anew(handset):
    """After the debrief another call begins at its first step, and stays over a reload."""
    page = opened(handset)
    for place in range(5):
        answer(page)
        go_on(page)
    page.get_by_role("button", name=CALL["again"]).tap()
    expect(page.locator(".drill-place")).to_contain_text(WORDS["count"].format(n=1, count=5))
    answer(page)
    page.reload()
    expect(page.locator(".drill-place")).to_contain_text(WORDS["count"].format(n=2, count=5))
