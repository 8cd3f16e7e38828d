"""A shift card out of sight: another app in front, Back and Forward, a screen that slept; and a hurried run that says so."""
import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests.phone.card import RIG, beside, hasten, open_card
from tests.phone.folds import unfold
from tests.phone.words import SITE, beginning, said

SHIFT = SITE["shift"]
HIDE = """(hidden) => {
  Object.defineProperty(document, "hidden", { configurable: true, value: hidden });
  Object.defineProperty(document, "visibilityState", { configurable: true, value: hidden ? "hidden" : "visible" });
  document.dispatchEvent(new Event("visibilitychange"));
}"""
MOVE_CLOCK = "(seconds) => { const now = Date.now.bind(Date); Date.now = () => now() + seconds * 1000; }"
GUARDS = ["idle", "neutral", "brake", "zero"]  # of every move of the pump shift control


@pytest.fixture
def at_pump(take):
    """The scene card where the pump shift control is about to move."""
    handset = hasten(take())
    beside(handset, **RIG)
    card = open_card(handset, "scene")
    card.run_to("pump")
    return card


def another_app(page, seconds=0):
    page.evaluate(HIDE, True)
    page.evaluate(MOVE_CLOCK, seconds)
    page.evaluate(HIDE, False)


def from_memory(page):
    page.evaluate("dispatchEvent(new PageTransitionEvent('pagehide', { persisted: true }))")
    page.evaluate("dispatchEvent(new PageTransitionEvent('pageshow', { persisted: true }))")


def back_and_forward(page):
    page.goto(page.url.replace("shift/scene/", "shift/"))
    page.go_back()


@pytest.mark.parametrize("leave", [
    another_app, lambda page: another_app(page, 3), lambda page: another_app(page, 600), from_memory, back_and_forward,
    lambda page: page.evaluate(MOVE_CLOCK, 600), lambda page: page.reload(),
], ids=["a glance", "three seconds", "ten minutes", "page memory", "back and forward", "a screen that slept", "a reload"])
def test_whoever_looked_away_looks_again(at_pump, leave):
    """No way of looking away leaves a guard standing: each is asked for before the control moves."""
    leave(at_pump.page)
    at_pump.shows("idle")
    expect(at_pump.page.get_by_text(beginning("shift", "resumed"))).to_be_visible()
    for step in GUARDS:
        at_pump.shows(step)
        at_pump.see()
    at_pump.shows("pump")


def test_the_first_touch_after_sleep_is_no_answer(at_pump):
    """A finger that lands before the page has noticed confirms nothing."""
    at_pump.page.evaluate("""(label) => {
      const now = Date.now.bind(Date);
      Date.now = () => now() + 600000;
      [...document.querySelectorAll("button")].find((key) => key.textContent.trim() === label).click();
    }""", SHIFT["seen"])
    at_pump.shows("idle")


@pytest.mark.parametrize("choice", ["left_again", "left_on"])
def test_half_an_hour_in_another_app_asks_first(at_pump, choice):
    """It says since when, offers a new run first, and either way nothing that could change is taken as seen."""
    another_app(at_pump.page, 1800)
    expect(at_pump.title).to_have_text(SHIFT["left_title"])
    for key in ("seen", "not_seen"):
        expect(at_pump.button(key)).to_have_count(0)
    keys = at_pump.page.locator(".dock button")
    expect(keys.first).to_have_text(SHIFT["left_again"])
    at_pump.page.reload()
    expect(at_pump.title).to_have_text(SHIFT["left_title"])
    at_pump.press(choice)
    at_pump.shows("full_stop" if choice == "left_again" else "idle")


def test_a_run_of_hours_ago_starts_at_its_first_step(at_pump):
    """Over two hours: a new run, and it says so."""
    another_app(at_pump.page, 7300)
    at_pump.shows("full_stop")
    expect(at_pump.page.get_by_text(SHIFT["left_new"])).to_be_visible()


def test_out_of_service_outlasts_everything(at_pump):
    """A rig that moved: no second shift, by no way back and at no age; its log alone ends it."""
    at_pump.press("danger")
    for seconds in (0, 1800, 7300):
        another_app(at_pump.page, seconds)
        for key in ("start_over", "look_again", "seen", "left_on", "begin_again"):
            expect(at_pump.button(key)).to_have_count(0)
    at_pump.page.reload()
    expect(at_pump.page.get_by_role("link", name=SHIFT["tag_open"], exact=True)).to_be_visible()
    expect(at_pump.button("released")).to_have_count(0)  # the rig's log ends it, by two names


def test_grinding_short_or_long(at_pump):
    """Teeth grind: the order for it; a short noise goes on from the first step, a long one ends in out of service."""
    at_pump.press("grinding")
    expect(at_pump.button("start_over_short")).to_be_visible()
    at_pump.press("not_short")
    expect(at_pump.title).to_have_text(SHIFT["twice_title"])
    expect(at_pump.button("start_over")).to_have_count(0)
    at_pump.page.get_by_role("link", name=SHIFT["diagnose"], exact=True).tap()
    page, faults = at_pump.page, data.words("faults")
    expect(page.get_by_text(data.words("diagnose")["diagnose"]["from_card"])).to_be_visible()
    unfold(page)
    expect(page.locator("#diagnose")).to_contain_text(faults["sees"]["grinds"])
    assert faults["sees"]["no_clunk"] not in page.locator("#diagnose").text_content()
    shifting = {faults["asks"][row["id"]][0] for row in data.load("faults")["sign"] if row.get("shifts") and row["id"] in faults["asks"]} | {faults["question"]["idle_try"]}
    for _ in range(8):
        look = page.locator(".look h2")
        unsure = page.get_by_role("button", name=data.words("diagnose")["diagnose"]["unsure"], exact=True)
        if not unsure.count():
            break
        before = look.inner_text()
        assert before not in shifting
        page.wait_for_timeout(450)  # a look settles before it takes an answer
        unsure.tap()
        page.wait_for_timeout(150)


def test_a_hurried_run_says_so(take):
    """Steps answered faster than they can be read: at its end it names them, in place of "every proof was seen"."""
    handset = take()
    card = open_card(handset, "freeze", rig={"pump_stages": "1"})
    card.run_out()
    expect(card.page.get_by_text(SHIFT["done_road"])).to_have_count(0)
    expect(card.page.get_by_text(SHIFT["hurried"].split("} steps")[1].strip()[:40], exact=False).first).to_be_visible()
    card.page.get_by_text(SHIFT["hurried_steps"]).tap()
    expect(card.page.locator(".step-done details li").first).to_be_visible()
    log = handset.open("log/")
    log.locator("summary").first.tap()
    expect(log.get_by_text("TOO QUICK TO BE READ", exact=False)).to_be_visible()


def test_the_card_names_its_rig_and_its_length(take):
    """The chosen rig stands on the start page and on the card; how many steps there are is said from the first."""
    handset = take()
    page = handset.open("")
    expect(page.get_by_role("heading", level=1)).to_have_text(SITE["site"]["name"])
    page.close()
    beside(handset, **RIG)
    page = handset.open("")
    expect(page.get_by_role("heading", level=1)).to_have_text("Pump of the day")
    card = open_card(handset, "scene")
    expect(card.page.get_by_text(said("shift", "beside", name="Pump of the day"))).to_be_visible()
    # by hand: 26 steps of the scene card: midship, air, automatic, governor known; light before drive, pressure there
    expect(card.page.get_by_text(said("shift", "step_about", number=1, about=26))).to_be_visible()
