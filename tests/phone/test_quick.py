"""The check after a repair, as it opens."""
import pytest
from playwright.sync_api import expect

from site_src.content import fleet
from tests.phone.card import beside
from tests.phone.test_in_sight import in_sight


@pytest.mark.parametrize(("rig", "language"), [("tollgate-engine-1", "en"), ("tollgate-engine-1", "fr")])
def test_the_first_step_shows_its_orders_at_once(take, rig, language):
    """At 360 by 740, before any touch: each of the three orders, then the act, what is to be seen and the keys are on the screen."""
    handset = take(locale="fr-CA" if language == "fr" else "en-US")
    beside(handset, **fleet.load()[rig])
    page = handset.open("test/quick/" if language == "en" else "fr/test/quick/")
    orders = page.locator(".quick-beware .warning")
    expect(orders).to_have_count(3)
    for part in (*orders.all(), page.locator(".quick-act"), page.locator(".quick-see"), page.locator(".quick-answers .key-act")):
        assert in_sight(part)
    page.locator(".quick-answers .key-act").tap()
    expect(orders).to_have_count(0)  # from then on they are one touch away
    page.locator(".beware summary").tap()
    expect(page.locator(".beware .warning").first).to_be_visible()
