"""Ways into the diagnosis and out of it: hazards with their orders, what is handed over, directions that are never mixed."""
import json
from urllib.parse import unquote

import pytest
from playwright.sync_api import expect

from tests.phone.diagnosis import ASK, D, F, ORDER, ORDERS, SIGN, age, answer, asked, begin, button, carried_out, choose, log_of, open_at, open_fresh, place, truly
from tests.phone.test_rig import ENGINE, with_engine
from tests.phone.words import SITE


@pytest.mark.parametrize("name", ["moved", "steam"])
def test_danger_ends_it(away, name):
    """Danger is under the thumb at every look, before the first and while an order is carried out, and ends it with its own order."""
    for way in ("start", "place", "order", "look"):
        page = open_fresh(away)
        if way == "place":
            place(page, "pump").tap()
        elif way == "order":
            choose(page, "light_dark")
            expect(button(page, ASK["carried_out"])).to_be_visible()
        elif way == "look":
            begin(page, "light_flickers")
            page.locator(".look").wait_for()
        button(page, ORDERS[name]["title"]).tap()
        alert = page.get_by_role("alert")
        expect(alert).to_have_count(1)
        expect(alert.get_by_role("listitem")).to_have_text(ORDERS[name]["do"])
        for words in (ORDER["danger"], ORDERS[name]["never"], ORDERS[name]["rig"], ORDERS[name]["radio"]):
            expect(alert).to_contain_text(words)
        expect(page.locator("#acts .key-noun")).to_have_count(0)
        for said in (ASK["unsure"], ASK["carried_out"]):
            expect(button(page, said)).to_have_count(0)
        link = page.get_by_role("link", name=SITE["rig_status_acts"]["write"], exact=True)
        fragment = json.loads(unquote(link.get_attribute("href").split("#new=")[1]))
        assert (fragment["origin"], fragment["what"], fragment["class"]) == ("diagnosis", ORDERS[name]["title"], "out_of_service")
        assert fragment["scope"] == {"moved": "apparatus", "steam": "pump"}[name] and F["sees"][{"moved": "moves", "steam": "steam"}[name]] in fragment["seen"]
        page.close()


def test_dead_throttle_is_a_way_in(away):
    """A dead throttle stands among what is seen at the panel and is a hold, not a danger; made safe, it opens with an idling engine."""
    page = open_fresh(away)
    choose(page, "throttle_dead")
    alert = page.get_by_role("alert")
    expect(alert.get_by_role("listitem")).to_have_text(ORDERS["dead_throttle"]["do"])
    expect(alert).to_contain_text(ORDER["hold"])
    expect(alert).not_to_contain_text(ORDER["danger"])
    button(page, ASK["again"]).tap()
    choose(page, "throttle_made_safe")
    expect(page.get_by_text(f"{ASK['engine']}: {D['engine_state']['idle']}")).to_be_visible()
    page.close()
    page = open_fresh(away)
    choose(page, "throttle_dead")  # the whole shift once more was told: a second time it is out of service
    alert = page.get_by_role("alert").first
    expect(alert.get_by_role("listitem")).to_have_text(ORDERS["dead_throttle"]["safe"])
    expect(alert).to_contain_text(ORDERS["dead_throttle"]["rig_final"])
    page.close()


ROAD = ["no_clunk_road", "grinds_road", "lights_stay", "road_no_drive", "needle_never_zero"]


def without_an_answer(page):
    """Each look that is asked after a failed shift to road, until none is: none of them can be told."""
    while look := asked(page):
        assert "PUMP" not in F["look"].get(look, "") and look != "shift_felt"
        answer(page, "unknown")


@pytest.mark.parametrize("sign", ROAD)
def test_road_side_is_answered_as_such(away, sign):
    """Each failed shift to road has its order first, and ends with what the rig is: no word of a shift to PUMP."""
    page = open_fresh(away)
    choose(page, sign)
    carried_out(page, SIGN[sign]["order"])
    without_an_answer(page)
    if page.get_by_text(D["end"]["engine_title"]).count():  # what is left to look at wants it so
        button(page, D["engine_state"]["off"]).tap()
        without_an_answer(page)
    order = ORDERS[SIGN[sign]["order"]]
    expect(page.locator("#diagnose")).to_contain_text(order["rig_final" if order["do"] != order["safe"] else "rig"])  # its one try, if it has one, is made
    page.close()


def test_a_finished_diagnosis_outlasts_a_reload_alone(away):
    """Once it has ended, a reload shows its end again, with the way to a defect, for 20 minutes; the page opened anew its first screen. The log has it once."""
    page = open_fresh(away)
    begin(page, "light_flickers")
    button(page, ORDERS["moved"]["title"]).tap()
    page.get_by_role("link", name=ASK["kept"]).wait_for()
    logged = len(log_of(page))
    page.reload()
    expect(page.get_by_role("alert").get_by_role("listitem")).to_have_text(ORDERS["moved"]["do"])
    for name in (SITE["rig_status_acts"]["write"], ASK["kept"]):
        expect(page.get_by_role("link", name=name, exact=True)).to_be_visible()
    expect(page.get_by_text(ASK["resumed"].split("{")[0])).to_have_count(0)
    assert len(log_of(page)) == logged
    anew = away.open("diagnose/")
    expect(anew.get_by_role("heading", name=ASK["where"])).to_be_visible()
    expect(anew.get_by_role("alert")).to_have_count(0)
    anew.close()
    age(page, 21)
    page.reload()
    expect(page.get_by_role("heading", name=ASK["where"])).to_be_visible()
    page.close()


def test_what_is_handed_over_is_judged(away):
    """A link that holds no sign of ours, or nothing readable, leads to the first screen and says so."""
    for handed in ('{"signs": {"odd": "seen"}}', "%7B", "[1]", '{"facts": 3}'):
        page = away.context.new_page()
        page.goto(away.host.origin + "diagnose/#from=" + handed)
        expect(page.get_by_text(ASK["bad_link"])).to_be_visible()
        expect(place(page, "lamp")).to_be_visible()
        page.close()


def test_a_link_alone_writes_nothing(away):
    """What a link from elsewhere says was seen is shown and neither logged nor kept: the diagnosis that stood is there; an answer given here counts."""
    page = open_fresh(away)
    begin(page, "light_flickers")
    page.locator(".look").wait_for()
    logged = [each["id"] for each in log_of(page)]
    page.close()

    page = open_at(away, ["moves"])
    expect(page.get_by_text(ASK["from_link"])).to_be_visible()
    expect(page.get_by_role("alert").get_by_role("listitem")).to_have_text(ORDERS["moved"]["do"])
    page.goto(away.host.origin + "log/")
    expect(page.get_by_role("heading", level=1)).to_be_visible()
    assert [each for each in log_of(page) if each["id"] not in logged] == []
    page.goto(away.host.origin + "diagnose/")
    expect(page.locator(".look")).to_be_visible()
    expect(page.get_by_text(ASK["from_link"])).to_have_count(0)
    page.close()

    page = open_at(away, ["gravel_noise"])
    expect(page.get_by_text(ASK["from_link"])).to_be_visible()
    button(page, ORDERS["moved"]["title"]).tap()
    expect(page.get_by_role("link", name=ASK["kept"])).to_be_visible()
    assert len([each for each in log_of(page) if each["id"] not in logged]) == 1
    page.close()


def test_a_sign_that_the_rig_cannot_show_is_not_taken(take):
    """What a link says of a shift is not asked of a front-mounted pump: the page says that the profile rules it out."""
    handset = take()
    with_engine(handset, drive="front").close()
    page = handset.context.new_page()
    page.goto(handset.host.origin + "diagnose/#from=" + json.dumps({"signs": {"grinds": "seen"}}))
    expect(page.get_by_text(ASK["not_of_rig"].format(**ENGINE))).to_be_visible()
    for name in ("lamp", "selector", "display"):  # a front mount has no shift whose light, lever or gear could fail
        signs = [sign for sign, row in SIGN.items() if row.get("at") == name]
        if place(page, name).count():
            place(page, name).tap()
            for sign in {"light_dark", "no_clunk", "pto_dark"} & set(signs):
                expect(button(page, F["sees"][sign])).to_have_count(0)
            button(page, ASK["places"]).tap()
    expect(page.get_by_role("link", name=D["diagnose"]["collar"])).to_have_count(0)
    place(page, "engine").tap()
    expect(button(page, F["sees"]["stalls"])).to_be_visible()


@pytest.mark.parametrize(("repeat", "radio"), [("not_seen", "radio_final"), ("unknown", "radio")])
def test_a_repeat_that_failed_is_the_last(away, repeat, radio):
    """Once the one repeat brought no clunk no page says that a try is left; where it was not made, one is."""
    known = json.dumps({"signs": {"no_clunk": "seen", "repeat_clunk": repeat}})
    page = away.open(f"diagnose/#from={known}")
    order = ORDERS["pump_fails"]
    expect(page.get_by_text(order[radio]).first).to_be_visible()
    expect(page.get_by_text(order["radio" if radio == "radio_final" else "radio_final"])).to_have_count(0)
    page.close()


def test_the_try_that_was_made_is_not_left(away):
    """A dark light, its order carried out with the one more try, and no cause told: out of service as a pumper, and a call for another
    engine (ORDERS, pump_fails: "fails again: out of service as a pumper, tell command"; common practice). A defect has its title from what it began with."""
    order = ORDERS["pump_fails"]
    page = open_fresh(away)
    begin(page, "light_dark")
    for look, said in (("shift_felt", "clunk"), ("lamp_went_out", "seen")):
        while asked(page) != look:
            answer(page, "unknown")
        answer(page, said)
    while asked(page):
        answer(page, "unknown")
    expect(page.get_by_text(D["end"]["technician_title"])).to_be_visible()
    expect(page.get_by_text(order["rig_final"], exact=True)).to_be_visible()
    expect(page.get_by_text(order["radio_final"])).to_be_visible()
    expect(page.get_by_text(order["radio"])).to_have_count(0)
    link = page.get_by_role("link", name=SITE["rig_status_acts"]["write"], exact=True).get_attribute("href")
    assert json.loads(unquote(link.split("#new=")[1]))["what"] == F["sees"]["light_dark"]
    page.close()


def test_nothing_is_called_in_once_the_try_worked(away):
    """No clunk, and the one repeat brings clunk and light: what to do if it fails again, and neither call, for the pump is in."""
    order = ORDERS["pump_fails"]
    page = open_fresh(away)
    begin(page, "no_clunk")
    while look := asked(page):
        truly(page, look, lambda sign: "seen" if sign in ("no_clunk", "repeat_clunk", "repeat_light") else "not_seen")
    expect(page.get_by_role("heading", name=F["name"]["teeth_meet"])).to_be_visible()
    expect(page.get_by_text(order["rig"])).to_be_visible()
    for words in ("radio", "radio_final"):
        expect(page.get_by_text(order[words])).to_have_count(0)
    page.close()


def test_the_answer_that_conflicts_is_asked_again(away):
    """Where no cause fits whole, the one answer that is in the way is asked once more; then what is nearest stands there with what is against it."""
    page = open_fresh(away)
    begin(page, "tank_overflows")
    for look in ("stops_when_shut", "fill_not_shut"):
        assert asked(page) == look
        expect(page.get_by_text(ASK["conflicts"])).to_have_count(0)
        answer(page, "not_seen")
    expect(page.get_by_text(ASK["conflicts"])).to_be_visible()
    twice = asked(page)
    assert twice in ("stops_when_shut", "fill_not_shut")
    answer(page, "unknown")  # the first answer stands, and the other one is asked again
    expect(page.get_by_text(ASK["conflicts"])).to_be_visible()
    assert asked(page) in {"stops_when_shut", "fill_not_shut"} - {twice}
    answer(page, "not_seen")
    expect(page.get_by_role("heading", name=D["end"]["unlisted_title"])).to_be_visible()
    expect(page.get_by_role("heading", name=ASK["nearest"])).to_be_visible()
    for cause in ("fill_left_open", "tank_check_leaks"):
        expect(page.locator(".fault").filter(has_text=F["name"][cause])).to_contain_text(ASK["against_not_seen"])
    expect(page.locator(".fault")).to_have_count(2)
    assert page.evaluate("document.documentElement.scrollWidth") == 360
    page.close()
