"""On a phone without keys the foot of the screen is the phone's own: what a person touches there stays above it."""
import pytest

from tests import service_records
from tests.phone import ways
from tests.phone.card import open_card

HOME_BAR = 34  # px, as such phones keep for themselves at the foot (common practice)
LOWEST = """(bar) => Math.max(...[...document.querySelectorAll(bar)].flatMap((part) =>
  [...part.querySelectorAll("button, a, input")].map((key) => key.getBoundingClientRect().bottom)))"""



@pytest.mark.parametrize(("opened", "bar"), [
    (lambda handset: open_card(handset, "scene").page, ".dock"),
    (ways.over_the_years, ".notice-low"),
    (ways.service("test/run/#{id}/capacity", service_records.an_unfinished_record), ".doing"),
], ids=["card", "undo", "run"])
def test_keys_at_the_foot_stay_above_the_home_bar(take, opened, bar):
    """A bar at the foot keeps its keys above the phone's own bar."""
    page = opened(take())
    page.locator(bar).first.wait_for()
    page.context.new_cdp_session(page).send("Emulation.setSafeAreaInsetsOverride", {"insets": {"bottom": HOME_BAR}})
    page.evaluate("new Promise(requestAnimationFrame)")
    page.evaluate("scrollTo(0, 0)")
    assert page.evaluate(LOWEST, bar) <= page.viewport_size["height"] - HOME_BAR
