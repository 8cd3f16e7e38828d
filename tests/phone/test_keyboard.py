"""Whole journeys by keyboard alone: the focus is always seen, never lost by a page drawn anew, and a held key presses once."""
import re

import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests import service_records
from tests.phone.card import Card, hasten
from tests.phone.keyboard import Keys
from tests.phone.layout import open_layout
from tests.phone.proof import T
from tests.phone.store import put_test
from tests.phone.words import KINDS, SITE, STEPS, said

RIG = data.words("rig")
DIAGNOSE = data.words("diagnose")
FAULTS = data.words("faults")


def button(page, name):
    return page.get_by_role("button", name=name, exact=True)


def test_a_lay(handset):
    """A layout is made, changed, read and kept; a choice, a new line and a step back leave the focus where it was or beside it."""
    layout = open_layout(handset)
    layout.shows(170)
    page, keys = layout.page, Keys(layout.page)
    keys.type(layout.field("length"), "400")
    layout.shows(240)  # by hand: 15.5 x 1.5^2 x 4 + 100 = 239.5
    keys.press(button(page, said("pressure", "more", what=SITE["pressure"]["length"])))
    expect(layout.field("length")).to_have_value("450")
    keys.hold("Enter", 5)
    assert int(layout.field("length").input_value()) >= 600  # a stepper goes on while it is held
    keys.press(page.locator(".tab", has_text=SITE["tab"]["nozzle"]))
    keys.to(page.get_by_role("group", name=SITE["pressure"]["nozzle"]).get_by_role("radio", name=SITE["pressure"]["fog"]))
    page.keyboard.press("ArrowRight")
    expect(page.get_by_role("radio", name=SITE["pressure"]["smooth"])).to_be_focused()
    keys.press(button(page, SITE["pressure"]["add_wye"]))
    expect(page.get_by_role("group", name=SITE["pressure"]["picture"], exact=True).get_by_role("button")).to_have_count(6)  # pump, three hoses, two nozzles
    answer = layout.answer.inner_text()
    while (undo := button(page, SITE["pressure"]["undo"])).is_enabled():  # the last of them dims the key itself
        keys.press(undo)
    keys.press(button(page, SITE["pressure"]["add_wye"]))
    keys.press(button(page, SITE["pressure"]["afresh"]))
    layout.shows(170)
    keys.press(button(page, SITE["pressure"]["undo"]))
    told = layout.answer.inner_text()
    assert told != answer
    page.reload()
    expect(layout.answer).to_have_text(re.compile(told.replace("\n", r"\s*")))


def walk(keys, card, names):
    """Confirm steps by keys; each is read from its heading."""
    page = card.page
    shown = []
    while card.title.inner_text() not in names:
        step = card.step()
        shown.append(step)
        if KINDS[step] in ("hold", "limit"):
            keys.press(card._named(STEPS[step]["hold"]))
            expect(card.title).to_be_focused()
            expect(card.button("seen")).to_be_enabled()
        first = card._named(next(iter(STEPS[step]["answer"].values()))) if "answer" in STEPS[step] else card.button("seen")
        keys.press(first)
        expect(card.title).not_to_have_text(STEPS[step]["act"])
        expect(card.title).to_be_focused()
    return shown


def test_a_card(handset):
    """A card from its first question to done, through a pause and a stop: each screen is read from its heading."""
    card = Card(hasten(handset).open("shift/road/"), "road")
    expect(card.title).not_to_have_text("")
    keys = Keys(card.page)
    walk(keys, card, [STEPS["centre_back"]["act"]])
    keys.press(card.button("not_seen"))
    expect(card.stop).to_be_visible()
    expect(card.title).to_be_focused()
    keys.press(card.button("look_again"))
    assert "centre_back" in walk(keys, card, [SITE["shift"]["done"]])
    keys.press(card.button("danger"))
    expect(card.title).to_be_focused()


@pytest.mark.parametrize("key", ["Enter", "Space"])
def test_a_held_key_confirms_once(handset, key):
    """A key that is held down on "I see it" confirms that step and no other, nor does a second press that follows at once."""
    card = Card(handset.open("shift/road/"), "road")
    card.tell_rig()
    keys = Keys(card.page)
    card.settle()
    keys.to(card.button("seen"))
    keys.hold(key, 30)
    card.shows(card.steps[1])
    card.settle()
    keys.press(card.button("seen"), key)
    card.button("seen").press(key)
    card.shows(card.steps[2])


def test_a_held_enter_confirms_once_even_on_a_key_that_stays(handset):
    """Where the focus is on the key again while Enter is still down, its repeats press nothing."""
    card = Card(handset.open("shift/road/"), "road")
    card.tell_rig()
    card.settle()
    card.button("seen").focus()
    card.page.keyboard.down("Enter")
    card.button("seen").focus()
    Keys(card.page).hold("Enter", 30)
    card.shows(card.steps[1])


def test_a_diagnosis(handset):
    """A diagnosis from its first sign to its end: each look and the end are read from their heading; a choice keeps the focus."""
    page = hasten(handset).open("diagnose/")
    title = page.get_by_role("heading", level=2).first
    expect(title).to_have_text(DIAGNOSE["diagnose"]["where"])
    keys = Keys(page)
    keys.to(page.get_by_role("radio", name=DIAGNOSE["role"]["operator"]))
    page.keyboard.press("ArrowRight")
    expect(page.get_by_role("radio", name=DIAGNOSE["role"]["technician"])).to_be_focused()
    keys.press(button(page, DIAGNOSE["at"]["lamp"]))
    expect(title).to_have_text(DIAGNOSE["at"]["lamp"])
    expect(title).to_be_focused()
    keys.press(button(page, FAULTS["sees"]["light_dark"]))
    expect(title).to_have_text(data.orders()["pump_fails"]["title"])
    expect(title).to_be_focused()
    keys.press(button(page, DIAGNOSE["diagnose"]["carried_out"]))
    expect(title).to_be_focused()
    looks = []
    end = page.locator(".verdict, .hand-over")
    while not end.count():
        looks.append(title.inner_text())
        keys.press(button(page, DIAGNOSE["diagnose"]["unsure"]))
        expect(title).not_to_have_text(looks[-1])
        expect(title).to_be_focused()
    assert len(looks) > 2
    keys.press(button(page, DIAGNOSE["diagnose"]["back"]))
    expect(title).to_have_text(looks[-1])
    keys.press(button(page, data.orders()["moved"]["title"]))
    expect(page.get_by_role("alert").get_by_role("heading", level=2)).to_be_focused()
    keys.press(button(page, DIAGNOSE["diagnose"]["again"]))
    expect(title).to_be_focused()


def test_readings_of_a_run(handset):
    """Readings of a service test are typed and kept; keys that come and go under the focus hand it on."""
    record = service_records.a_run_in_hand()
    record["tests"]["capacity"]["attempts"][0]["clock"]["counted_s"] = 930  # no reading is due meanwhile
    put_test(handset, record)
    page = handset.open(f"test/run/#{record['id']}")
    link = page.get_by_role("navigation").get_by_role("link", name=re.compile(T["test_name"]["capacity"]))
    link.wait_for()
    keys = Keys(page)
    keys.press(link)
    [*_, before] = record["tests"]["capacity"]["attempts"][0]["sets"]
    for names in (("resume", "pause"), ("resume", "take")):  # a clock goes on only once its flow is read
        for name in ("discharge_psi", "pitot_psi", "engine_rpm"):
            for place, entry in enumerate(before["values"][name] if name == "pitot_psi" else [before["values"][name]]):
                keys.type(page.locator(f'input[name="{name}"]').nth(place), entry.split("@")[0])
        for name in names:
            expect(button(page, T["run"][name])).to_be_enabled()
            keys.press(button(page, T["run"][name]))
        if "pause" in names:
            keys.press(button(page, T["run"]["reasons_pause"][0]))
    keys.press(page.locator(".run-more > summary"))
    expect(page.get_by_role("table").first.get_by_role("row")).to_have_count(6)
    keys.press(page.get_by_role("link", name=T["test"]["back"]))


def test_a_rig(handset):
    """A rig is made, named, given a bed that is taken out and put back, copied, and deleted after a second thought."""
    page = handset.open("rig/")
    make = button(page, RIG["rig"]["make"])
    make.wait_for()
    keys = Keys(page)
    keys.press(make)
    name = page.get_by_label(RIG["field"]["name"], exact=True)
    keys.type(name, "Pump of the day")
    keys.type(page.locator("#field-beds-0-length"), "150")
    keys.press(button(page, RIG["rig"]["remove_bed"].format(name=RIG["rig"]["new_bed"].format(count=1))))
    keys.press(button(page, RIG["rig"]["put_back"]))
    keys.press(page.locator(".rig-bed summary"))
    expect(page.locator("#field-beds-0-length")).to_have_value("150")
    keys.press(button(page, RIG["rig"]["remove"]))
    keys.press(button(page, RIG["rig"]["remove_keep"]))
    keys.press(button(page, RIG["rig"]["remove"]))
    keys.press(button(page, RIG["rig"]["remove_sure"].format(name="Pump of the day")))
    expect(name).to_have_count(0)
    keys.stand()
