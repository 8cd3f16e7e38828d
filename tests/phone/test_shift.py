"""The shift cards by touch: from the first step to done, and every way of standing still."""
import re

import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests.phone.card import RIG, beside, hasten, open_card
from tests.phone.store import do
from tests.phone.words import SITE, STEPS, answer_of

SHIFT = SITE["shift"]
ORDERS = data.orders()
ORDER = data.words("orders")["order"]
ACT = re.compile(r"(?<=[.?!]) ")  # between the acts of a stop, each on its own line
PUMPING = [SITE["nav"]["pressure"], SITE["nav"]["water"], SITE["card"]["road"]["title"]]


@pytest.fixture
def handset(take):
    """A phone whose clocks hurry: the pause itself is timed elsewhere."""
    return hasten(take())


@pytest.mark.parametrize(
    ("name", "number", "needless", "told", "leads_to"),
    [
        # the light already on, and pressure that shows, leave nothing to look for later
        ("bay", 0, ["light_later", "prime"], "done_pump", PUMPING),
        # the light after drive, and no pressure yet, each bring their step
        ("scene", 1, [], "done_pump", PUMPING),
        ("road", 0, [], "done_road", [data.words("log")["title"], SITE["start"]["title"]]),
    ],
)
def test_card_from_first_step_to_done(handset, name, number, needless, told, leads_to):
    """A card run by touch shows each of its steps once, in order, with both ways out always at hand; done, it leads on."""
    beside(handset, **RIG)
    card = open_card(handset, name)
    for step in card.steps:
        if step in needless:
            continue
        card.shows(step)
        expect(card.page.get_by_text(STEPS[step]["see"])).to_be_visible()
        expect(card.button("not_seen")).to_be_enabled()
        expect(card.button("danger")).to_be_enabled()
        card.read()
        card.see(answer_of(step, number))
    expect(card.title).to_have_text(SHIFT["done"])
    expect(card.page.get_by_text(SHIFT[told])).to_be_visible()
    expect(card.button("danger")).to_be_enabled()
    ways = card.page.get_by_role("navigation", name=SHIFT["next"]).get_by_role("link")
    assert ways.all_inner_texts() == leads_to
    assert ways.first.bounding_box()["y"] > card.button("danger").bounding_box()["y"]
    card.page.get_by_text(SHIFT["record"]).tap()
    expect(card.page.get_by_role("listitem")).to_have_count(len(card.steps) - len(needless))


def assert_stopped(card, step, ways=("look_again", "danger", "start_over")):
    """The card stands at a sign that did not come, with the order of its hazard or that step's words, and the ways on."""
    order = ORDERS.get(data.steps()[step].get("order"))
    expect(card.title).to_have_text(order["title"] if order else SHIFT["stop_title"])
    for words in [*order["do"], order["never"]] if order else (*ACT.split(STEPS[step]["not_seen"]), STEPS[step]["never"]):
        expect(card.stop).to_contain_text(words)
    for key in ways:
        expect(card.button(key)).to_be_enabled()
    for key in {"look_again", "seen"} - set(ways):
        expect(card.button(key)).to_have_count(0)


# answers that leave no step out; the last card differs from the first only up to its chocks
@pytest.mark.parametrize(("name", "last"), [("bay", "raise"), ("road", "roll"), ("scene", "chock_scene")])
def test_sign_that_does_not_come(handset, name, last):
    """At every step "not seen" stops with that step's words, and looking again leads back to it through its guards."""
    card = open_card(handset, name)
    for step in card.steps[:card.steps.index(last) + 1]:
        card.run_to(step)
        if data.steps()[step].get("repeat") or step == "still":  # below; test_danger_from_a_step
            card.see(answer_of(step, 1))
            continue
        card.press("not_seen")
        assert_stopped(card, step)
        card.press("look_again")
        expect(card.stop).to_have_count(0)
        card.run_to(step)
        card.see(answer_of(step, 1))


def test_shift_that_fails_twice(handset):
    """A shift that does not show is repeated from idle, once; then the card says out of service and offers no third time."""
    card = open_card(handset, "bay")
    card.run_to("pump")
    card.press("not_seen")
    assert_stopped(card, "pump", ("danger", "start_over"))
    card.press("start_over")
    expect(card.page.get_by_text(SHIFT["step_second"])).to_have_count(0)
    card.run_to("light_first")
    expect(card.page.get_by_text(SHIFT["step_second"])).to_be_visible()
    card.press("not_seen")
    expect(card.title).to_have_text(SHIFT["twice_title"])
    failed = ORDERS["pump_fails"]
    expect(card.stop.get_by_role("listitem")).to_have_text([*failed["safe"], SHIFT["twice_do"]])
    for words in (SHIFT["twice_never"], failed["rig_final"], failed["radio_final"]):
        expect(card.stop).to_contain_text(words)
    expect(card.stop).not_to_contain_text("once more")
    for key in ("look_again", "start_over", "seen"):
        expect(card.button(key)).to_have_count(0)
    card.page.reload()
    expect(card.title).to_have_text(SHIFT["twice_title"])
    card.press("danger")
    expect(card.button("start_over")).to_have_count(0)


# the control that takes each drive out (common practice)
@pytest.mark.parametrize(("drive", "name", "step", "control"), [
    ("pto", "scene", "pto_on", "PTO control to OFF"), ("rear_pto", "road", "pto_off", "PTO control to OFF"),
    ("front", "scene", "front_in", "clutch lever or switch to OUT"), ("front", "road", "front_parted", "clutch lever or switch to OUT"),
])
def test_a_drive_without_a_selector_is_told_its_own_act(handset, drive, name, step, control):
    """Where the proof of a PTO or a front clutch does not come, the order takes that out and speaks of no selector."""
    rig = {"drive": drive, "transmission": "automatic", "pressure_control": "governor"}
    beside(handset, **rig)
    card = open_card(handset, name, rig=rig)
    card.run_to(step)
    card.press("not_seen")
    expect(card.stop.get_by_role("listitem").nth(1)).to_contain_text(control)
    expect(card.stop).not_to_contain_text("CENTER")


def assert_danger(card):
    """The card shows the order for a rig that moved, in its numbered acts, and offers no second shift."""
    moved = ORDERS["moved"]
    expect(card.title).to_have_text(moved["title"])
    expect(card.stop.get_by_role("listitem")).to_have_text(moved["do"])
    for words in (ORDER["danger"], moved["never"], moved["rig"], moved["radio"]):
        expect(card.stop).to_contain_text(words)
    for key in ("start_over", "look_again", "seen", "not_seen", "begin_again"):
        expect(card.button(key)).to_have_count(0)


@pytest.mark.parametrize(
    ("name", "step"),
    [(name, step) for name, steps in (("bay", ["kit", "before_start", "light_first", "tank_to_pump", "still"]), ("road", ["throttle_down", "centre_back", "drive"]))
     for step in steps],
)
def test_danger_from_a_step(handset, name, step):
    """Danger stops the card at any place in it with the one order, and no second shift is offered."""
    card = open_card(handset, name)
    card.run_to(step)
    card.press("not_seen" if step == "still" else "danger")
    assert_danger(card)


def test_danger_elsewhere(handset):
    """Danger is there during the pause and at a stop, and a reload does not clear it; where no rig was chosen, only a rig's log ends the second."""
    card = open_card(handset, "road")
    card.run_to("centre_back")
    card.begin_pause()
    card.press("danger")
    assert_danger(card)
    card.page.reload()
    assert_danger(card)
    expect(card.button("released")).to_have_count(0)  # the log of a rig ends it, see test_out.py
    card.press("mistouch")
    expect(card.page.get_by_text(SHIFT["mistouch_means"])).to_be_visible()
    card.press("mistouch_not")
    assert_danger(card)
    card.press("mistouch")
    card.press("mistouch_sure")
    first = card.step()
    card.press("not_seen")
    assert_stopped(card, first, ("look_again", "danger"))
    card.press("danger")
    assert_danger(card)
    expect(card.button("mistouch")).to_have_count(0)  # "it moved", said of a sign that did not come, is no slip
    expect(card.page.get_by_role("link", name=SHIFT["own_rig"], exact=True)).to_be_visible()


def test_danger_after_the_last_step(handset):
    """A card that is done still has its red key."""
    card = open_card(handset, "road")
    card.run_to("roll")
    card.see()
    expect(card.title).to_have_text(SHIFT["done"])
    card.press("danger")
    assert_danger(card)


def test_step_back(handset):
    """Stepping back shows the step before and takes its proof away."""
    beside(handset, **RIG)
    card = open_card(handset, "scene")
    expect(card.button("back")).to_have_count(0)
    card.run_to("neutral")
    card.press("back")
    card.shows("idle")
    card.see()
    card.shows("neutral")


def test_two_touches_before_the_phone_has_answered_are_one(handset):
    """A slow phone answers the first of two quick touches after the second: that one was meant for the step that stood there."""
    beside(handset, **RIG)
    card = open_card(handset, "scene")
    card.run_to("zero")
    card.settle()
    card.button("back").evaluate("(key) => { key.click(); key.click(); }")
    card.shows("brake")
    card.see()
    assert [line["event"] for line in do(card.page, "kept", "shift:scene")["run"]["entries"]].count("back") == 1
