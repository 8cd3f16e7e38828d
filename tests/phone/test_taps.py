"""Taps from the icon to an answer, counted: a person in gloves has no more to spare."""
import re

import pytest
from playwright.sync_api import expect

from site_src.content import data, fleet
from tests.phone.card import beside
from tests.phone.words import SITE

RIG = fleet.load()["tollgate-engine-1"]
START = data.words("start")["start"]


class Hand:
    """A finger that counts its taps on what is in sight."""

    def __init__(self, page):
        self.page = page
        self.taps = 0

    def tap(self, control):
        expect(control).to_be_in_viewport(ratio=0.9)
        control.tap()
        self.taps += 1


@pytest.fixture
def hand(handset):
    beside(handset, **RIG)
    page = handset.open()
    expect(page.locator(".bed-figure").first).to_have_text("101")
    return Hand(page)


def shows(page, psi):
    expect(page.locator(".answer-figure b").first).to_have_text(psi)


def test_another_length_takes_two(hand):
    """The bed, then the length: 200 ft at 25.65 psi per 100 ft (11.4 x 1.5^2) and 75 at the nozzle, 126.3."""
    hand.tap(hand.page.locator(".bed", has_text="Front bumper"))
    shows(hand.page, "101")
    hand.tap(hand.page.locator("button", has_text=re.compile(r"^\s*200\s*$")))
    shows(hand.page, "126")
    assert hand.taps == 2


def test_a_wye_of_two_takes_at_most_six(hand):
    """The bed and a wye put before it: two lines alike are drawn, and a number for both."""
    hand.tap(hand.page.locator(".bed", has_text="Front bumper"))
    shows(hand.page, "101")
    hand.tap(hand.page.get_by_role("button", name=SITE["pressure"]["add_wye"], exact=True))
    expect(hand.page.locator(".answer-figure b").first).not_to_have_text("101")
    assert hand.taps <= 6


@pytest.mark.parametrize("sign", ["into_pump_scene", "into_pump_bay", "to_road"])
def test_a_card_s_first_act_takes_one(hand, sign):
    """A card's first act stands after one tap, its red door in sight."""
    hand.tap(hand.page.get_by_role("link", name=START[sign], exact=True))
    expect(hand.page.locator(".step-act")).to_be_in_viewport(ratio=1)
    expect(hand.page.locator(".key-danger").first).to_be_in_viewport(ratio=1)
    assert hand.taps == 1


def test_danger_takes_one_from_a_card(hand):
    """From a card, the red door's order."""
    hand.page.goto(hand.page.url + "shift/scene/")
    hand.tap(hand.page.locator(".key-danger").first)
    expect(hand.page.get_by_text(data.orders()["moved"]["do"][0]).first).to_be_in_viewport(ratio=1)
    assert hand.taps == 1
