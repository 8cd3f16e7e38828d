"""What crosses to the interpreter and how often a page draws: what does not change goes once, and one change is drawn once."""
import pytest
from playwright.sync_api import expect

from tests.phone.card import hasten, open_card
from tests.phone.crossings import bytes_of, count, crossings, draws
from tests.phone.diagnosis import tap_until

TICK_MOST = 1000  # bytes, both ways together


@pytest.fixture
def counting(handset):
    """A phone on whose pages what crosses and what is drawn is counted."""
    return count(handset)


def test_a_tick_of_a_pause(counting):
    """Five times a second, well into a run, under a thousand bytes cross, and the card is drawn once for each."""
    card = open_card(hasten(counting), "scene")
    card.run_to("centre")

    def wait():
        card.begin_pause()
        expect(card.button("seen")).to_be_enabled()

    drawn = draws(card.page)
    ticks = [each for each in crossings(card.page, wait) if each["door"] == "pause.ticked"]
    assert len(ticks) >= 4  # of 2 s, each of half a second at most
    assert max(each["bytes"] for each in ticks) < TICK_MOST
    assert draws(card.page) - drawn == 1 + len(ticks)  # one for the touch


def test_a_touch_of_a_card(counting):
    """A sign that was seen is one question, without the steps in it, and one draw."""
    card = open_card(hasten(counting), "scene")
    card.see()
    drawn = draws(card.page)
    crossed = [each for each in crossings(card.page, card.see) if each["door"] != "away.slept"]
    assert [each["door"] for each in crossed] == ["run.advance"]
    assert bytes_of(crossed) < 4000
    assert draws(card.page) - drawn == 1


def test_a_look_of_a_diagnosis(counting):
    """What a diagnosis knows of causes crosses when the page opens; each answer is one question without it, and one draw of the look and of its acts."""
    page = counting.open("diagnose/")
    page.locator(".place-key").first.tap()
    page.locator(".key-told").first.tap()
    page.locator(".look, .key-act").first.wait_for()
    while page.locator(".key-act").count():
        tap_until(page, page.locator(".key-act"), page.locator("#page").inner_text())
    asked = page.locator(".look h2")
    page.wait_for_timeout(500)  # a touch that follows at once is no answer
    drawn, was = draws(page), asked.inner_text()

    def answer():
        page.locator(".key-unsure").tap()
        expect(asked).not_to_have_text(was)

    crossed = crossings(page, answer)
    assert [each["door"] for each in crossed] == ["look.after"]
    assert bytes_of(crossed) < TICK_MOST
    assert draws(page) - drawn == 2  # the look, and the acts at the thumb
