"""Colours of the person's own (forced colours), by day and by night; and no motion for who wants none."""
import pytest
from playwright.sync_api import expect

from tests.phone.keyboard import MEASURE, fault
from tests.phone.screens import SCREENS
from tests.phone.test_access import GROUND
from tests.phone.words import PRACTICE

APART = 3  # contrast, WCAG 2.2, 1.4.11
READ = 7
# what is chosen, and the same thing not chosen
CHOICES = {
    "pressure with a wye": [(".tab[aria-pressed=true]", ".tab[aria-pressed=false]"), (".chip input:checked + span", ".chip input:not(:checked) + span")],
    "practice running": [(".key[aria-pressed=true]", ".key[aria-pressed=false]")],
    "test site": [(".chip input:checked + span", ".chip input:not(:checked) + span")],
    "tables/US/friction/": [(".chip-here span", ".chip:not(.chip-here) span")],
    "card stopped": [(".aids .key[aria-pressed=true]", ".dock a.key")],
}


@pytest.mark.parametrize("name", CHOICES)
def test_what_means_something_is_seen_in_forced_colours(take, name):
    """What is chosen differs from what is not, text reads, shapes, edges and the focus stand out."""
    page = SCREENS[name](take(forced_colors="active"))
    page.evaluate(MEASURE)
    for aid in page.locator(".aids .key").all():
        aid.click()
    for look in ("light", "dark"):
        page.emulate_media(color_scheme=look, forced_colors="active")
        for pair in CHOICES[name]:
            assert page.evaluate("([chosen, other]) => measure.between(chosen, other)", pair) >= APART, (look, pair)
        assert [each for each in page.evaluate("measure.contrasts()") if each["ratio"] < READ] == [], look
        drawn = page.evaluate("measure.shapes()") + page.evaluate("measure.edges()")
        assert [each for each in drawn if each["ratio"] < APART and not each["name"].endswith(GROUND)] == [], look
        page.keyboard.press("Tab")
        assert [told for focus in page.evaluate("measure.foci()") if (told := fault(focus))] == [], look


MOVING = """() => [...document.getAnimations().map(({ animationName }) => animationName),
  ...[...document.querySelectorAll("*")].filter((element) => parseFloat(getComputedStyle(element).transitionDuration) > 0).map(({ tagName }) => tagName),
  ...(getComputedStyle(document.documentElement).scrollBehavior === "auto" ? [] : ["scroll"])]"""


def test_nothing_moves_for_who_wants_no_motion(handset):
    """A pump turns in the picture unless the phone asks for less motion; then nothing moves by itself."""
    page = handset.open("practice/")
    for choice in ("task_to_road", "see_path"):
        page.get_by_role("radio", name=PRACTICE[choice], exact=True).tap()
    page.get_by_role("button", name=PRACTICE["start"], exact=True).tap()
    expect(page.locator(".path-turn")).not_to_have_count(0)
    assert page.evaluate(MOVING) == []
    page.emulate_media(reduced_motion="no-preference")
    assert len(page.evaluate(MOVING)) > 1
    for name in ("pressure with a wye", "card pausing", "start"):
        assert SCREENS[name](handset).evaluate(MOVING) == [], name
