"""Journeys by what a screen reader has: roles, names and descriptions, and what it says unasked."""
import pathlib
import re

from playwright.sync_api import expect

from site_src.content import data
from tests import service_records
from tests.phone import diagnosis
from tests.phone.card import Card, hasten, open_card
from tests.phone.folds import unfold
from tests.phone.layout import open_layout
from tests.phone.proof import T
from tests.phone.store import put_test
from tests.phone.words import SITE, STEPS

HEARING = (pathlib.Path(__file__).parent / "hearing.js").read_text(encoding="utf-8")
FAULTS, DIAGNOSE, RIG = data.words("faults"), data.words("diagnose")["diagnose"], data.words("rig")


def heard(page):
    """What was said unasked since it was last asked."""
    return page.evaluate("heard()")


def button(page, name):
    return page.get_by_role("button", name=name, exact=True)


def test_the_answer_is_heard_as_it_changes(handset):
    """The answer has a name and is said when it changes, as are its cautions; a refusal is said at once and stands at its field."""
    layout = open_layout(handset)
    layout.shows(170)
    page = layout.page
    page.evaluate(HEARING)
    expect(page.get_by_role("status", name=SITE["pressure"]["set"], exact=True)).to_have_text(re.compile(r"170\s+psi"))
    length = layout.field("length")
    expect(length).to_have_accessible_description(SITE["unit"]["US"]["length"])
    length.fill("900")
    layout.shows(414)  # by hand: 15.5 x 1.5^2 x 9 + 100 = 413.9
    answer, caution = heard(page)
    assert answer == "414 psi"
    assert SITE["caution"]["stop"] in caution and SITE["caution_short"]["above_test_pressure"] in caution
    length.fill("abc")
    expect(page.get_by_role("alert")).to_be_visible()
    refusal = page.get_by_role("alert").inner_text()
    expect(length).to_have_accessible_description(re.compile(re.escape(refusal)))
    assert length.get_attribute("aria-invalid") == "true"
    waiting, *others = heard(page)
    assert waiting == SITE["pressure"]["waiting"].format(entry=SITE["entry"]["length"])
    assert refusal in others
    length.fill("200")
    layout.shows(170)
    assert heard(page) == ["170 psi"]
    layout.press("share")
    expect(page.get_by_text(SITE["link"]["copied"])).to_be_visible()
    assert heard(page) == [SITE["link"]["copied"]]


def test_a_card_is_read_from_its_heading(handset):
    """A step's heading brings what to see and its caution; a stop is an alert; nothing else is said."""
    card = open_card(hasten(handset), "road")
    page = card.page
    page.evaluate(HEARING)
    for step in card.steps[:3]:
        heading = page.get_by_role("heading", name=STEPS[step]["act"], level=2)
        expect(heading).to_have_accessible_description(re.compile(re.escape(STEPS[step]["see"])))
        if "caution" in STEPS[step]:
            expect(heading).to_have_accessible_description(re.compile(re.escape(STEPS[step]["caution"])))
        card.see()
    assert heard(page) == []
    step = card.step()
    card.press("not_seen")
    [stop] = heard(page)
    assert STEPS[step]["not_seen"] in stop
    card.press("look_again")
    card.press("danger")
    [danger] = heard(page)
    assert all(act in danger for act in data.orders()["moved"]["do"])


def test_a_pause_is_heard_twice(handset):
    """A pause is said when it begins and when it is over, and not as it counts."""
    card = open_card(handset, "road")
    page = card.page
    card.run_to("centre_back")
    page.evaluate(HEARING)
    card.begin_pause()
    expect(page.get_by_role("timer")).to_be_visible()
    expect(card.button("seen")).to_be_enabled()
    assert heard(page) == [STEPS["centre_back"]["holding"], STEPS["centre_back"]["over"]]


def test_a_diagnosis_is_read_from_its_heading(handset):
    """A look's heading brings where to look; who looks, and what the engine does, are choices by name; a danger is an alert."""
    page = hasten(handset).open("diagnose/")
    diagnosis.place(page, "lamp").click()
    button(page, FAULTS["sees"]["light_dark"]).click()
    button(page, DIAGNOSE["carried_out"]).click()
    page.evaluate(HEARING)
    heading = page.get_by_role("heading", level=2)
    while (look := diagnosis.asked(page)) not in FAULTS["look"]:
        diagnosis.answer(page, "unknown")
    expect(heading).to_have_accessible_description(re.compile(re.escape(FAULTS["look"][look])))
    button(page, data.orders()["moved"]["title"]).click()
    expect(page.get_by_role("alert")).to_be_visible()
    [danger] = heard(page)
    assert all(act in danger for act in data.orders()["moved"]["do"])


def test_a_run_is_heard_by_its_turns(handset):
    """The clock of a run says that it goes and stands still, and no second of it; a reading is said with its unit and verdict."""
    record = service_records.a_run_in_hand()
    run = record["tests"]["capacity"]
    run["attempts"][0]["clock"]["counted_s"] = 930
    run["draft"] = {**{key: run["attempts"][0]["sets"][0][key] for key in ("tip", "values")}, "touched": True}  # a reading stands
    put_test(handset, record)
    page = handset.open(f"test/run/#{record['id']}/capacity")
    resume = button(page, T["run"]["resume"])
    resume.wait_for()
    page.evaluate(HEARING)
    resume.click()
    timer = page.get_by_role("timer")
    was = timer.inner_text()
    expect(timer).not_to_have_text(was, use_inner_text=True)
    gauge = page.get_by_role("textbox", name=re.compile("^" + re.escape(T["field"]["discharge_psi"])))  # then what it should show
    expect(gauge).to_have_accessible_description(SITE["unit"]["US"]["pressure"])
    button(page, T["run"]["pause"]).click()
    expect(page.get_by_role("group", name=T["run"]["pause"])).to_be_visible()
    button(page, T["run"]["reasons_pause"][0]).click()
    resume.wait_for()
    turns = heard(page)
    said = [text for text in turns if text not in (T["run"]["going"], T["run"]["paused"])]
    assert turns[0] == T["run"]["going"] and turns.count(T["run"]["paused"]) == 1
    assert len(said) == 1 and T["stance"]["unread"] in said[0]  # the flow is to be read again


def test_a_rig_is_heard(handset):
    """A field of a rig says its unit, and its refusal as it is typed; what was taken out is told with the way back."""
    page = handset.open("rig/")
    button(page, RIG["rig"]["make"]).click()
    page.get_by_label(RIG["field"]["name"], exact=True).wait_for()
    unfold(page)
    tank = page.get_by_role("textbox", name=RIG["field"]["tank"], exact=True)
    tank.fill("500")
    page.evaluate(HEARING)
    expect(tank).to_have_accessible_description(SITE["unit"]["US"]["volume"])
    tank.fill("much")
    expect(tank).to_have_attribute("aria-invalid", "true")
    [refusal] = heard(page)
    expect(tank).to_have_accessible_description(re.compile(re.escape(refusal)))
    tank.fill("500")
    expect(tank).not_to_have_attribute("aria-invalid", "true")
    button(page, RIG["rig"]["add_bed"]).click()
    expect(page.get_by_role("button", name=RIG["rig"]["remove_bed"].format(name=""))).to_be_visible()
    heard(page)
    page.get_by_role("button", name=RIG["rig"]["remove_bed"].format(name="")).click()
    expect(button(page, RIG["rig"]["put_back"])).to_be_visible()
    assert heard(page) == [RIG["rig"]["taken_out"] + " " + RIG["rig"]["put_back"]]
