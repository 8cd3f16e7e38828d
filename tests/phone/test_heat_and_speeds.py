"""How fast a pump heats, and what the speedometer shows in pump gear, by touch, with the network off and the host gone."""
import re

from playwright.sync_api import expect

from site_src.content import data
from tests.phone.words import SITE

WHY = data.words("why")
TIME = re.compile(r"\d\s*(min|minutes?|s|sec|seconds?|h|hours?)\b")


def test_heat_urges_and_never_allows(away):
    """The two orders, hot without steam and steam, stand first and largest, folded until a person's own figure passes the rise to be held; no time is given at all."""
    page = away.open("why/heat/")
    orders = data.orders("hot_no_steam", "steam")
    for shown, order in zip(page.locator(".order").all(), orders.values(), strict=True):
        expect(shown.locator("li")).to_have_text(order["do"])
    alarm = page.locator(".order h2", has_text=orders["hot_no_steam"]["title"])
    expect(page.locator("#heat-orders > summary")).to_be_visible()
    expect(alarm).to_be_hidden()  # the example's figure is nobody's
    # by hand: 5.084 x 5 / 10 = 2.5, and 5.084 x 60 / 10 = 30.5, beside the 15 to be held; no figure leaves what stands
    for power, is_shown in (("61", True), ("5", False), ("60", True), ("abc", True), ("300", True)):
        page.get_by_label(WHY["heat"]["power"], exact=True).fill(power)
        expect(alarm).to_be_visible() if is_shown else expect(alarm).to_be_hidden()
        text = page.get_by_role("main").inner_text()
        assert not TIME.search(text), TIME.search(text)
        assert "{" not in text
    # by hand: 5.084 x 300 / 10 = 152.5
    expect(page.get_by_role("status").first).to_have_text(re.compile(r"^15[23] °F"))
    size = "(element) => parseFloat(getComputedStyle(element).fontSize)"
    assert alarm.evaluate(size) >= page.locator("output b").first.evaluate(size)
    page.close()


def test_speeds_of_a_rig_typed_in(away):
    """Figures that no profile holds are asked for; once typed they give the needle, tell a wrong gear, and are kept."""
    said = WHY["speeds"]
    page = away.open("why/speeds/")

    def field(name):
        return page.get_by_label(said[name], exact=True)

    expect(page.get_by_role("status").first).to_contain_text(said["axle_ratio"])
    # by hand: 700 x 60 / (1 x 5.38 x 495) = 15.77, and 11.19 in a gear of 1.41
    for name, text in (("engine", "700"), ("idle", "700"), ("pump_ratio", "2.3"), ("axle_ratio", "5.38"), ("tyre_rev", "495"), ("pump_gear_ratio", "1")):
        field(name).fill(text)
    expect(page.get_by_role("status").first).to_have_text(re.compile("^15.8"))
    page.get_by_text(said["ratios"], exact=True).tap()
    page.get_by_label(said["ratio"].format(gear=3), exact=True).fill("1.41")
    field("speed_shown").fill("11")
    expect(page.get_by_text(said["told_other_gear"].format(gear=3))).to_be_visible()
    field("pressure_shown").fill("0")
    expect(page.get_by_text(said["told_none"])).to_be_visible()
    page.reload()
    expect(page.get_by_text(said["told_other_gear"].format(gear=3))).to_be_visible()
    field("axle_ratio").fill("x")
    expect(page.get_by_text(SITE["refusal"]["not_a_number"])).to_be_visible()
    expect(field("axle_ratio")).to_have_value("x")
    page.close()
