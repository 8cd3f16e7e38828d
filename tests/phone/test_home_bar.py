"""What a phone keeps for itself, a bar at the foot and a notch at the side when it is turned: what a person reads and touches stays clear of it."""
import json
import time

import pytest

from tests import service_records
from tests.phone import ways
from tests.phone.card import open_card
from tests.phone.screens import SCREENS

HOME_BAR = 34  # px, as such phones keep for themselves at the foot (common practice)
TURNED = {"left": 47, "right": 47, "bottom": 21}  # px, the same phones on their side (from memory)
LOWEST = """(bar) => Math.max(...[...document.querySelectorAll(bar)].flatMap((part) =>
  [...part.querySelectorAll("button, a, input")].map((key) => key.getBoundingClientRect().bottom)), 0)"""
# keys and texts that reach into a side; what scrolls in a frame of its own may
BESIDE = """(side) => {
  const scrolls = (element) => element && (getComputedStyle(element).overflowX === "auto" || scrolls(element.parentElement));
  const keys = [...document.querySelectorAll("button, input, select, .key, .bar-key")].map((element) => [element, element.getBoundingClientRect()]);
  const texts = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT, (node) => node.data.trim() ? NodeFilter.FILTER_ACCEPT : NodeFilter.FILTER_SKIP);
  while (walker.nextNode()) {
    const range = document.createRange();
    range.selectNodeContents(walker.currentNode);
    texts.push([walker.currentNode.parentElement, range.getBoundingClientRect()]);
  }
  return [...keys, ...texts].filter(([element, { width, left, right }]) => width > 1 && (left < side - 0.5 || right > innerWidth - side + 0.5)
      && element.checkVisibility({ visibilityProperty: true }) && !element.closest(".skip, noscript, script") && !scrolls(element.parentElement))
    .map(([element, { left, right }]) => `${element.tagName} ${element.className} "${element.textContent.trim().slice(0, 30)}" ${Math.round(left)} to ${Math.round(right)}`);
}"""


def inset(page, insets):
    page.context.new_cdp_session(page).send("Emulation.setSafeAreaInsetsOverride", {"insets": insets})
    page.evaluate("new Promise(requestAnimationFrame)")
    page.evaluate("scrollTo(0, 0)")


def lowest(page, bar):
    """How far down the keys of a bar reach, in px."""
    return page.evaluate(LOWEST, bar)


@pytest.mark.parametrize(("opened", "bar"), [
    (lambda handset: open_card(handset, "scene").page, ".dock"),
    (ways.over_the_years, ".notice-low"),
    (ways.service("test/run/#{id}/capacity", service_records.an_unfinished_record), ".doing"),
], ids=["card", "undo", "run"])
def test_keys_at_the_foot_stay_above_the_home_bar(take, opened, bar):
    """A bar at the foot keeps its keys above the phone's own bar."""
    page = opened(take())
    page.locator(bar).first.wait_for()
    inset(page, {"bottom": HOME_BAR})
    assert lowest(page, bar) <= page.viewport_size["height"] - HOME_BAR


def what_runs(handset):
    """The strip, with its door, above a page."""
    page = handset.open("404.html")
    now = int(time.time() * 1000)
    what = {"test": {"title": "Capacity run", "address": "test/run/#t.capacity", "began_at": now - 61000, "due_at": now - 1000}}
    page.evaluate("(text) => localStorage.setItem('running', text)", json.dumps(what))
    page.goto(handset.host.origin + "water/")
    page.locator("#strip .strip-line").wait_for()
    return page


@pytest.mark.parametrize("name", [
    what_runs, "start", "pressure/", "pressure, its hose", "card pausing", "card in danger", "test run", "diagnosis with radio words", "diagnosis at a place", "checks item", "checks due",
    "water answered", "practice running", "years of tests", "rigs/tollgate-engine-1/", "tables/US/friction/", "help searched",
])
def test_nothing_lies_beside_the_notch(take, name):
    """On its side a phone has the notch left or right: no key and no word reaches under it, and none of a dock into the bar at the foot."""
    page = SCREENS.get(name, name)(take())
    page.set_viewport_size({"width": 812, "height": 375})
    inset(page, TURNED)
    assert page.evaluate(BESIDE, TURNED["left"]) == []
    assert not page.viewport_size["height"] - TURNED["bottom"] < lowest(page, "main .dock") <= page.viewport_size["height"]
