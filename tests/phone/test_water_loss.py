"""A line has lost its water: the order first, three gauges, and the side to look at, by touch and with no signal."""
from playwright.sync_api import expect

from tests.phone.diagnosis import ASK, D, F, ORDERS


def test_loss_of_water_in_one_look(away):
    """The order for a line that lost its water stands first; three gauges say supply, and the diagnosis goes on without it again."""
    page = away.open("diagnose/water/")
    expect(page.locator(".order").get_by_role("listitem")).to_have_text(ORDERS["line_lost"]["do"])
    for gauge, seen in (("intake", "zero"), ("master", "low"), ("line", "with")):
        page.get_by_role("radio", name=D["gauge_answer"][gauge][seen], exact=True).tap()
    expect(page.get_by_role("heading", name=D["side"]["supply"]["name"])).to_be_visible()
    expect(page.get_by_text(D["side"]["supply"]["say"])).to_be_visible()
    page.get_by_role("link", name=D["water"]["go_on"]).tap()
    page.locator(".look").wait_for()
    page.get_by_text(ASK["so_far"], exact=True).tap()
    expect(page.get_by_text(F["sees"]["water_lost"])).to_be_visible()
    expect(page.get_by_text(F["sees"]["intake_near_zero"])).to_be_visible()  # what the gauge said comes along
    page.close()
