"""A diagnosis whose cure was seen to work, and one gone on with: what is done is not told again, and what is old can be left."""
from playwright.sync_api import expect

from tests.phone.diagnosis import ASK, D, F, answer, asked, begin, log_of, open_fresh, truly
from tests.phone.test_diagnose import UNDER_THE_ACTS


def test_a_valve_found_shut_and_opened_is_done(away):
    """No pressure, the valve found shut, pressure once it is open: the end says that it worked and what remains, with no call for want of water."""
    page = open_fresh(away)
    page.get_by_role("radio", name=D["role"]["operator"]).tap()
    begin(page, "no_pressure")
    there = {"pump_stays_dry", "intake_near_zero", "valve_short", "valve_cures"}
    looks = 0
    while look := asked(page):
        truly(page, look, lambda sign: "seen" if sign in there else "not_seen")
        looks += 1
    assert looks > 2
    verdict = page.get_by_role("status").filter(has=page.get_by_role("heading", name=F["name"]["tank_valve_short"]))
    for words in (ASK["done"], F["remains"]["tank_valve_short"]):
        expect(verdict).to_contain_text(words)
    for words in (F["say"]["none_yet"], F["act"]["tank_valve_short"], ASK["say_first"]):
        expect(page.get_by_text(words)).to_have_count(0)
    expect(page.get_by_role("link", name=D["diagnose"]["kept"])).to_be_visible()
    [record] = [each for each in log_of(page) if each.get("cause") == "tank_valve_short"]
    assert record["act"] == F["remains"]["tank_valve_short"]
    page.close()


def test_gone_on_with_it_can_begin_anew(away):
    """After a reload the way to start again stands whole beside what says that it goes on, and no answer lies over it; an answer takes it away."""
    page = open_fresh(away)
    begin(page, "light_flickers")
    page.locator(".look").wait_for()
    page.reload()
    again = page.locator("#diagnose .notice").get_by_role("button", name=ASK["again"], exact=True)
    expect(again).to_be_in_viewport(ratio=1)
    expect(page.locator("#diagnose .notice")).to_contain_text(ASK["resumed"].split("{")[0])
    assert page.evaluate(UNDER_THE_ACTS) == []
    answer(page, "unknown")
    expect(again).to_have_count(0)
    page.reload()
    again.tap()
    expect(page.get_by_role("heading", name=ASK["where"])).to_be_visible()
    expect(again).to_have_count(0)
    page.close()
