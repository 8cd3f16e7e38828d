"""Out of service because it moved: a slip of the finger has a way back that asks again, and no other card begins on one touch."""
import re

import pytest
from playwright.sync_api import expect

from site_src.content import checks, data
from tests.phone.card import RIG, beside, hasten, open_card
from tests.phone.diagnosis import ASK, ORDER, ORDERS, asked, begin, button, choose, open_fresh
from tests.phone.store import do, in_database
from tests.phone.test_rig import ENGINE
from tests.phone.words import SITE
from tests.unit.bay.logs import release

SHIFT = SITE["shift"]
BAY = data.words("bay")
LOG = data.words("log")["event"]


@pytest.fixture
def handset(take):
    return hasten(take())


def test_a_slip_of_the_finger_is_asked_again(handset):
    """It takes two touches, can be turned down, comes back to the same step with its proofs to be seen again, and is in the log."""
    beside(handset, **RIG)
    card = open_card(handset, "scene")
    card.run_to("gear")
    card.press("danger")
    expect(card.title).to_have_text(ORDERS["moved"]["title"])
    card.press("mistouch")
    expect(card.page.get_by_text(SHIFT["mistouch_means"])).to_be_visible()
    card.press("mistouch_not")
    expect(card.title).to_have_text(ORDERS["moved"]["title"])
    card.press("mistouch")
    card.press("mistouch_sure")
    assert card.step() != "gear", "what may have changed comes first"
    expect(card.page.get_by_text(SHIFT["again"].split("{")[0])).to_be_visible()
    card.run_to("gear")
    events = [entry["event"] for entry in in_database(card.page, "log")[-1]["entries"]]
    assert events.index("danger") < events.index("mistouch") and {"danger", "mistouch"} <= set(LOG)
    card.press("danger")
    card.page.reload()
    card.press("mistouch")  # it was left, and nothing else was done
    card.press("mistouch_sure")
    expect(card.stop).to_have_count(0)


def test_a_rig_that_moved_is_in_service_nowhere(handset):
    """Its log has the stop at once: every page says so, no other release clears it, and the card or a release of its own ends it."""
    beside(handset, **RIG)
    card = open_card(handset, "scene")
    card.press("danger")
    opened = card.page.get_by_role("link", name=SHIFT["tag_open"], exact=True)
    expect(opened).to_be_visible()
    expect(card.button("released")).to_have_count(0)
    banner = re.compile(f"{re.escape(SITE['rig_status']['out_of_service'])}.*{SHIFT['tag_what']}")
    for address in ("", "pressure/"):
        page = handset.open(address)
        expect(page.locator("#rig-status")).to_have_text(banner)
        page.close()
    page = handset.open("checks/")
    expect(page.locator(".bay-sentence")).to_have_text(banner)
    expect(page.locator("#rig-status")).to_be_hidden()  # said once
    page.close()
    other = handset.open("shift/bay/")
    expect(other.get_by_role("alert")).to_contain_text(SHIFT["tag_what"])
    other.close()
    card.page.reload()
    card.press("mistouch")
    card.press("mistouch_sure")
    expect(card.page.locator("#rig-status")).to_be_hidden()
    assert [record["kind"] for record in in_database(card.page, "bay")].count("withdrawn") == 1
    card.press("danger")
    opened.tap()
    expect(card.page.get_by_text(BAY["defect"]["halt_only"])).to_be_visible()
    expect(button(card.page, BAY["defect"]["decide"])).to_have_count(0)
    expect(button(card.page, BAY["defect"]["withdraw"])).to_have_count(0)
    card.page.get_by_role("link", name=BAY["defect"]["release"], exact=True).tap()
    button(card.page, BAY["opened"]["nothing"]).tap()
    expect(card.page.get_by_role("alert")).to_have_text(BAY["lacks"]["happened"])
    button(card.page, BAY["opened"]["other"]).tap()
    expect(card.page.get_by_role("alert")).to_have_count(0)
    button(card.page, BAY["proof"]["second_look"]).tap()
    for label, text in (("done", "brake adjusted"), ("repaired_by", "Moss"), ("by", "Hart")):
        card.page.get_by_label(BAY["release"][label]).fill(text)
    for proof in next(row["proofs"] for row in checks.proofs() if row["after"] == "halt"):
        expect(button(card.page, BAY["release"]["release"])).to_be_disabled()
        told = data.words("checks")[proof]
        button(card.page, f"{told['title']} {told['look']}").tap()
    button(card.page, BAY["release"]["release"]).tap()
    expect(card.page.get_by_role("heading", level=2).first).to_have_text(BAY["release"]["back"].format(rig="Pump of the day"))
    card.page.goto(handset.host.origin + "shift/bay/")
    expect(button(card.page, SHIFT["seen"])).to_be_visible()
    card.page.goto(handset.host.origin + "shift/scene/")
    expect(card.button("released")).to_be_visible()
    expect(card.button("mistouch")).to_have_count(0)


def test_a_rig_that_moved_before_one_was_chosen(handset):
    """No word alone ends that stop: the rig is chosen, its log gets the stop as of then, and a release there opens the card again."""
    card = open_card(handset, "scene")
    card.press("danger")
    expect(card.page.get_by_role("link", name=SHIFT["own_rig"], exact=True)).to_be_visible()
    expect(card.button("released")).to_have_count(0)
    beside(handset, **RIG)
    card.page.reload()
    expect(card.button("released")).to_have_count(0)
    button(card.page, SHIFT["own"].format(name="Pump of the day")).tap()
    expect(card.page.get_by_role("link", name=SHIFT["tag_open"], exact=True)).to_be_visible()
    [stop] = in_database(card.page, "bay")
    assert (stop["origin"], stop["class"], stop["rig_id"]) == ("halt", "out_of_service", "rig-1")
    assert in_database(card.page, "log")[-1]["rig"]["id"] == "rig-1"
    back = {**release("l1", [stop["id"]], [stop["id"]], at_ms=stop["at_ms"] + 1), "rig_id": "rig-1", "rig_name": "Pump of the day"}
    do(card.page, "keepRecord", "bay", back)
    card.page.reload()
    card.press("released")
    expect(card.page.get_by_text(SHIFT["release_means"])).to_be_visible()
    card.press("release_not")
    card.press("released")
    card.press("release_sure")
    card.shows("which_drive")  # the step that it was stopped at


def test_a_line_is_charged_to_no_rigs_pressure(handset):
    """Without a rig the step that throttles to a line's pressure has no figure."""
    card = open_card(handset, "scene")
    card.run_to("charge")
    expect(card.page.locator(".step-see")).to_be_visible()
    expect(card.page.locator(".step-beds")).to_have_count(0)


def test_a_line_is_charged_to_the_pressure_of_this_rig(handset):
    """The step that throttles to a line's pressure has the figures of the rig's own beds, those of the start page."""
    beside(handset, **RIG, beds=ENGINE["beds"])
    start = handset.open("")
    expect(start.locator(".bed-figure").first).to_have_text(re.compile(r"\d"))
    shown = start.locator(".bed-figure").all_inner_texts()
    start.close()
    card = open_card(handset, "scene")
    card.run_to("charge")
    expect(card.page.locator(".step-beds span > b")).to_have_text(shown)


def test_another_card_shows_the_halt_first(handset):
    """After It moved on one card, another shows that stop, starts on a second touch only, and Find the fault offers no second shift."""
    beside(handset, **RIG)
    card = open_card(handset, "scene")
    card.press("danger")
    stopped = SITE["card"]["scene"]["title"]
    other = handset.open("shift/road/")
    expect(other.get_by_role("heading", level=2)).to_have_text(SHIFT["out_title"])
    expect(other.get_by_role("alert")).to_contain_text(stopped)
    expect(other.get_by_role("alert")).to_contain_text(ORDERS["moved"]["title"])
    expect(button(other, SHIFT["seen"])).to_have_count(0)
    fault = open_fresh(handset)
    choose(fault, "light_dark")
    expect(fault.get_by_role("alert").get_by_text(ORDERS["pump_fails"]["rig_final"] if "rig_final" in ORDERS["pump_fails"] else ORDER["hold"]).first).to_be_visible()
    assert data.words("orders")["pump_fails"]["retry"] not in fault.get_by_role("main").inner_text()
    fault.close()
    other.bring_to_front()
    button(other, SHIFT["out_pass"]).tap()
    expect(other.get_by_text(SHIFT["out_means"])).to_be_visible()
    button(other, SHIFT["out_not"]).tap()
    expect(other.get_by_role("heading", level=2)).to_have_text(SHIFT["out_title"])
    button(other, SHIFT["out_pass"]).tap()
    button(other, SHIFT["out_sure"]).tap()
    expect(button(other, SHIFT["seen"])).to_be_visible()
    other.reload()
    expect(button(other, SHIFT["seen"])).to_be_visible()  # it was said once of this stop
    again = handset.open("shift/scene/")
    expect(again.get_by_role("heading", level=2)).to_have_text(ORDERS["moved"]["title"])  # its own card stays stopped


def test_a_slip_in_a_diagnosis_asks_the_look_again(handset):
    """The red key of a look, touched by mistake: the same look again, in two touches, with the stop still in the log."""
    page = open_fresh(handset)
    begin(page, "light_flickers")
    page.locator(".look").wait_for()
    look = asked(page)
    button(page, ORDERS["moved"]["title"]).tap()
    expect(page.get_by_role("alert").get_by_text(ORDERS["moved"]["title"])).to_be_visible()
    button(page, ASK["slip"]).tap()
    expect(page.get_by_text(ASK["slip_means"])).to_be_visible()
    button(page, ASK["slip_not"]).tap()
    button(page, ASK["slip"]).tap()
    button(page, ASK["slip_sure"]).tap()
    page.locator(".look").wait_for()
    assert asked(page) == look
    assert [record["outcome"] for record in in_database(page, "log")] == ["danger"]
