"""The shift cards and time: the pause, hurried fingers, a killed page, a clock that jumps."""
import time

import pytest
from playwright.sync_api import expect

from tests.phone.card import Card, RIG, beside, hasten, open_card
from tests.phone.handset import kill
from tests.phone.sources import source
from tests.phone.words import SITE, STEPS, beginning, said

PAUSE_S = 2
LONGEST_S = 60  # on a machine with much else to do
MOVE_CLOCK = "(seconds) => { const now = Date.now.bind(Date); Date.now = () => now() + seconds * 1000; }"


def touch(page, box):
    """A bare touch at the middle of a place on the screen, whatever is there by now."""
    page.touchscreen.tap(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)


@pytest.fixture
def at_pause(handset):
    """The scene card at its pause, not begun."""
    card = open_card(handset, "scene")
    card.run_to("centre")
    return card


def timed_pause(card, meanwhile):
    """Begin the pause and give how long "I see it" stayed shut; meanwhile(elapsed_s) is done over and over."""
    began = time.monotonic()
    card.begin_pause()
    seen = card.button("seen")
    expect(seen).to_be_disabled()
    while not seen.is_enabled():
        meanwhile(time.monotonic() - began)
        assert time.monotonic() - began < LONGEST_S, "it never opened"
    return time.monotonic() - began


def test_pause_cannot_be_hurried(at_pause):
    """For two seconds no touch moves the card on; then one does."""
    card = at_pause
    expect(card.button("seen")).to_have_count(0)

    def hurry(elapsed_s):
        if elapsed_s < 0.8 * PAUSE_S:
            touch(card.page, card.button("seen").bounding_box())

    assert timed_pause(card, hurry) >= PAUSE_S
    card.shows("centre")
    expect(card.page.get_by_text(STEPS["centre"]["over"])).to_be_visible()
    card.press("seen")
    card.shows("pump")


def test_reload_does_not_skip_the_pause(at_pause):
    """A page loaded again during the pause asks for the guards, and then for a whole pause."""
    card = at_pause
    card.begin_pause()
    card.page.reload()
    card.shows("idle")
    card.run_to("centre")
    expect(card.button("seen")).to_have_count(0)
    assert timed_pause(card, lambda elapsed_s: None) >= PAUSE_S


@pytest.mark.parametrize("seconds", [3600, -3600], ids=["an hour on", "an hour back"])
def test_a_clock_that_jumps_does_not_shorten_the_pause(at_pause, seconds):
    """A phone's clock that is set during the pause may mean that it slept: the card asks, and the pause is a whole one."""
    at_pause.begin_pause()
    at_pause.page.evaluate(MOVE_CLOCK, seconds)
    expect(at_pause.title).to_have_text(SITE["shift"]["left_title"])
    expect(at_pause.button("seen")).to_have_count(0)
    at_pause.press("left_on")
    expect(at_pause.title).not_to_have_text(STEPS["centre"]["act"])
    at_pause.run_to("centre")
    assert timed_pause(at_pause, lambda elapsed_s: None) >= PAUSE_S


def test_two_rapid_touches_confirm_one_step(handset):
    """A second touch that follows at once, on the same spot, does not confirm a step nobody has read."""
    beside(handset, **RIG)
    card = open_card(handset, "scene")
    box = card.button("seen").bounding_box()
    touch(card.page, box)
    touch(card.page, box)
    expect(card.title).not_to_have_text("")
    card.shows(card.steps[1])
    card.see()
    card.shows(card.steps[2])


def test_killed_page_resumes_and_says_so(handset):
    """A card killed right after a touch opens again at its step, and says that it resumes."""
    card = open_card(hasten(handset), "bay")
    card.run_to("walk_in")
    kill(card.page)
    again = open_card(handset, "bay", first="walk_in")
    expect(again.page.get_by_text(beginning("shift", "resumed"))).to_be_visible()
    again.see()
    again.shows("chock_bay")
    expect(again.page.get_by_text(beginning("shift", "resumed"))).to_have_count(0)


def test_killed_before_the_selector_moves(handset):
    """A step that moves the selector asks for its guards again, names them, and comes back only after all four."""
    card = open_card(hasten(handset), "scene")
    card.run_to("pump")
    kill(card.page)
    again = open_card(handset, "scene", first="idle")
    # the four guards of every selector move; the pause itself was seen and stands
    guards = ["engine_idle", "transmission_neutral", "parking_brake", "speed_zero"]
    for left, step in enumerate(["idle", "neutral", "brake", "zero"]):
        again.shows(step)
        beside_it = ["foot_on_brake"] if step in ("neutral", "zero") else []  # the foot holds the rig there too
        missing = ", ".join(SITE["guard"][guard] for guard in beside_it + guards[left:])
        expect(again.page.get_by_text(said("shift", "again", missing=missing))).to_be_visible()
        again.see()
    again.shows("pump")


def test_a_card_can_be_begun_again(handset):
    """From anywhere in it a card can be started afresh, and stays so."""
    beside(hasten(handset), **RIG)
    card = open_card(handset, "road")
    card.run_to("lines_down")
    card.page.get_by_text(SITE["shift"]["record"], exact=True).tap()
    card.press("begin_again")
    card.shows("tell")
    card.page.reload()
    card.shows("tell")


def test_cards_are_kept_apart(handset):
    """Two cards under way do not disturb each other."""
    one = open_card(hasten(handset), "bay")
    one.run_to("walk_in")
    two = open_card(handset, "scene")
    two.run_to("idle")
    one.page.reload()
    Card(one.page, "bay").shows("walk_in")


OLDER = """async (store) => {
  const { keep, kept } = await import(store);
  const left = await kept("shift:scene");
  await keep("shift:scene", { ...left, state: { ...left.state, sequence: JSON.parse(left.madeOf) } });
  return "sequence" in left.state;
}"""


def test_a_run_that_an_older_version_left_is_taken_up(handset):
    """Older versions kept the steps within the run; such a run goes on where it was left."""
    card = open_card(hasten(handset), "scene")
    card.run_to("neutral")
    card.page.close()
    page = handset.open("404.html")
    assert page.evaluate(OLDER, source(page, "shared/store.js")) is False
    page.close()
    left = Card(handset.open("shift/scene/"), "scene")
    expect(left.page.locator(".resumed")).to_be_visible()
    left.run_to("brake")
