"""The tables on a phone: one row of jumps on top, the head in sight while the rows go by, and nothing cut."""
import pytest
from playwright.sync_api import expect


@pytest.mark.parametrize("page", ["friction", "tips"])
def test_head_stays_in_sight(shared, page):
    """Scrolled to a table's last row, its head stands at the top of the screen."""
    opened = shared.open(f"tables/US/{page}/")
    table = opened.locator(".tables table").nth(5)
    table.locator("tbody tr").last.evaluate("row => scrollTo({ top: row.getBoundingClientRect().top + scrollY - 120, behavior: 'instant' })")
    head = table.locator("thead th").first.bounding_box()
    assert 0 <= head["y"] < 60


@pytest.mark.parametrize("page", ["friction", "tips"])
def test_jumps_are_one_row(shared, page):
    """The jumps take one row, which scrolls by itself; each leads to its table."""
    opened = shared.open(f"tables/US/{page}/")
    jumps = opened.locator(".jump a")
    assert jumps.count() > 8
    assert len({round(jumps.nth(place).bounding_box()["y"]) for place in range(jumps.count())}) == 1
    assert opened.evaluate("() => document.documentElement.scrollWidth") <= 360
    jumps.last.tap()
    expect(opened.locator(".tables table").last).to_be_in_viewport()
