"""Taps from the icon to an answer, counted: a person in gloves has no more to spare."""
import re

import pytest
from playwright.sync_api import expect

from site_src.content import data, fleet
from tests import service_records as records
from tests.phone.card import beside
from tests.phone.diagnosis import begin, open_fresh
from tests.phone.proof import START_MS, begun, store
from tests.phone.words import SITE

RIG = fleet.load()["tollgate-engine-1"]
START = data.words("start")["start"]
TEST = data.words("service")
DOOR = "|".join([data.words("start")["danger"]["title"], data.words("start")["danger"]["door"], data.orders()["moved"]["title"]])


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


def _card(handset):
    return handset.open("shift/scene/")


def _diagnosis(handset):
    """A diagnosis in hand: the first sign said."""
    page = open_fresh(handset)
    begin(page, "no_clunk")
    expect(page.locator(".look")).to_be_visible()
    return page


def _run(handset, seconds=0, *keys):
    """The capacity run, its clock started."""
    record = store(handset, begun(records.a_record(), START_MS))
    page = handset.open(f"test/run/#{record['id']}/capacity")
    for key in (TEST["run"]["begin"], *keys):
        page.get_by_role("button", name=key, exact=True).tap()
    return page


def _part(handset):
    """Another part of a test while its clock runs."""
    page = _run(handset)
    page.evaluate("location.hash = location.hash.replace('capacity', 'interlock')")
    expect(page.locator("h1")).to_have_text(TEST["test_name"]["interlock"])
    return page


def _elsewhere(address):
    def opened(handset):
        _run(handset)
        return handset.open(address)
    return opened


@pytest.mark.parametrize("opened", [
    _card, _diagnosis, _run, lambda handset: _run(handset, 0, TEST["run"]["stop"]), _part, _elsewhere("water/"), _elsewhere("pressure/"), _elsewhere(""),
], ids=["card", "diagnosis", "run", "stopping", "part", "water", "pressure", "start"])
def test_danger_takes_one_where_something_runs(handset, opened):
    """One red door in sight, and behind it what to do first."""
    hand = Hand(opened(handset))
    hand.tap(hand.page.locator(".key-danger:visible").filter(has_text=re.compile(DOOR)).first)
    expect(hand.page.get_by_text(data.orders()["moved"]["do"][0]).first).to_be_in_viewport(ratio=1)
    assert hand.taps == 1


def test_a_reading_of_a_test_takes_three(handset):
    """The figure that the gauge shows, the key that keeps it, and a touch for the gauges that were not read."""
    hand = Hand(_run(handset))
    hand.tap(hand.page.locator(".tray").get_by_role("button", name="146"))
    hand.tap(hand.page.get_by_role("button", name=TEST["run"]["take_at"].format(at="5:00")).or_(hand.page.get_by_role("button", name=TEST["run"]["take"], exact=True)))
    carry = hand.page.get_by_role("button", name=TEST["run"]["carry"], exact=True)
    expect(carry).to_be_visible()
    hand.page.wait_for_timeout(500)  # real time: it is to be read before it is touched
    hand.tap(carry)
    expect(hand.page.locator(".cell").first).to_contain_text(TEST["run"]["as_before"])
    assert hand.taps == 3
