"""A run at the panel: everything on one screen, and a mistyped reading put right on it."""
import pytest
from playwright.sync_api import expect

from tests.phone.proof import T, run_of  # noqa: F401  the fixture
from tests.phone.test_service_run import HOLDS

RUN = T["run"]


def fits(page):
    """Nothing scrolls. Asked from outside: the page's own clock stands still."""
    expect(page.locator("html")).to_have_js_property("scrollHeight", page.viewport_size["height"])
    expect(page.locator("html")).to_have_js_property("scrollWidth", page.viewport_size["width"])


@pytest.mark.parametrize("run_of", ["en", "fr"], indirect=True)
@pytest.mark.parametrize("tips", [None, 1], ids=["one pitot", "two pitots"])
def test_a_run_fits_its_screen(run_of, tips):
    """Clock, readings, what they come to, and keys: all on 360 by 740, before, while it runs, and while it is asked why."""
    one = run_of(1, is_started=False)
    words = one.words["run"]
    if tips:
        one.page.locator(".run-tips label.chip").nth(tips).tap()
        for place in range(2):
            one.type("pitot_psi", "48" if words["begin"] == RUN["begin"] else "331", place)  # 48 psi is 331 kPa
    fits(one.page)
    one.press(words["begin"])
    expect(one.page.get_by_role("button", name=words["pause"])).to_be_visible()
    fits(one.page)
    one.clock.passes(301)
    expect(one.page.get_by_role("button", name=words["take_at"].format(at="5:00"))).to_be_visible()
    fits(one.page)
    one.press(words["take_at"].format(at="5:00"))
    expect(one.page.get_by_role("button", name=words["carry"], exact=True)).to_be_in_viewport(ratio=1)
    fits(one.page)
    one.carry()
    expect(one.page.get_by_role("button", name=words["take_back"].format(at="5:02"))).to_be_in_viewport(ratio=1)
    fits(one.page)
    one.press(words["stop"])
    fits(one.page)


def test_a_mistyped_reading_is_taken_back_in_sight(run_of):
    """The key is there once a reading is kept, names it, and goes as the next is entered; after the last one too. The first figures stay in the record."""
    one = run_of(1)
    over = one.page.get_by_role("button", name=RUN["once_more"])

    def take(at_s, discharge_psi):
        one.clock.passes(at_s - (one.at_s - 1))
        one.at_s = at_s + 1
        one.type("discharge_psi", discharge_psi)
        one.still()
        one.press(RUN["take_at"].format(at=f"{at_s // 60}:00"))

    def back(at):
        key = one.page.get_by_role("button", name=RUN["take_back"].format(at=at))
        expect(key).to_be_in_viewport(ratio=1)
        key.tap()
        expect(key).to_be_hidden()

    one.at_s = 0
    back("0:00")
    one.press(RUN["take_at"].format(at="0:00"))
    take(300, "512")
    back("5:01")
    one.type("discharge_psi", "152")
    one.press(RUN["take_at"].format(at="5:00"))
    for at_s in (600, 900, 1200):
        take(at_s, "154")
    expect(over).to_be_visible()
    back("20:01")
    one.type("discharge_psi", "153")
    one.press(RUN["resume"])
    one.press(RUN["take_at"].format(at="20:00"))
    expect(over).to_be_visible()
    (attempt,) = one.record()["tests"]["capacity"]["attempts"]
    assert [each["values"]["discharge_psi"] for each in attempt["sets"]] == ["145@US", "152@US", "154@US", "154@US", "153@US"]
    assert [each["values"]["discharge_psi"] for each in attempt["taken_back"]] == ["145@US", "512@US", "154@US"]


def test_a_quick_hand_loses_no_step(run_of):
    """Touches on + faster than a slow phone answers: each is a step further, from 145 psi by one."""
    one = run_of(1)
    one.page.locator("input[name=discharge_psi]").tap()
    one.page.evaluate(HOLDS)
    one.page.locator(".tray-edge").last.evaluate("(key) => { key.click(); key.click(); key.click(); }")
    one.page.evaluate("answers()")
    expect(one.page.locator("input[name=discharge_psi]")).to_have_value("148")
    one.rests()
    assert one.record()["tests"]["capacity"]["draft"]["values"]["discharge_psi"] == "148@US"
