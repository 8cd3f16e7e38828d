"""Every card by touch to its end, with no signal; the cards a rig is offered."""
import re

import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests.phone.card import Card, RIG, beside, hasten, open_card
from tests.phone.handset import Handset, Host
from tests.phone.words import SITE, STEPS
from tests.site import pages

SHIFT = SITE["shift"]
# each drive but the plain one of test_shift, each shift control and transmission; then the cards that ask little
RUNS = [
    ("bay", {"drive": "front", "transmission": "automatic"}),
    ("scene", {"drive": "rear_shaft", "shift_control": "manual", "transmission": "manual"}),
    ("road", {"drive": "midship", "shift_control": "electric", "transmission": "automatic"}),
    ("moving", {"drive": "pto", "transmission": "automatic"}),
    ("check", {"pump_stages": "2"}),
    ("stages", {"pump_stages": "2"}),
    ("override", {"transmission": "manual"}),
    *((card, {}) for card in pages.cards() if card not in ("bay", "scene", "road", "moving", "check", "stages", "override")),
]


@pytest.fixture(scope="module")
def away(browser, built):
    """A hurried phone that installed the site and has then lost every way to it."""
    handset = Handset(browser, Host(built), worker=True)
    handset.install().close()
    hasten(handset).lose_signal()
    yield handset
    handset.close()


@pytest.mark.parametrize(("name", "rig"), RUNS, ids=lambda part: part if isinstance(part, str) else "-".join(part.values()))
def test_card_to_its_end_without_a_signal(away, name, rig):
    """Each card, for each kind of rig, is followed by touch to its end; it shows that rig's steps and no others."""
    card = open_card(away, name, rig=rig)
    shown = card.run_out()
    made_needless = {"light_later", "prime", "freeze_heat", "roll_water"}  # the light, the pressure and the water are there, and the pump goes dry
    assert shown == [step for step in card.steps if step not in made_needless]
    card.page.get_by_text(SHIFT["record"]).tap()
    expect(card.page.get_by_role("listitem").nth(len(shown) - 1)).to_be_visible()
    card.page.close()


@pytest.fixture
def handset(take):
    return hasten(take())


def test_a_rig_is_offered_its_cards_first(handset):
    """The list puts behind the rest what is not for the chosen rig, and still opens it."""
    beside(handset, drive="pto", transmission="automatic", pump_stages="1")
    page = handset.open("shift/")
    others = page.get_by_role("heading", name=SHIFT["others"].format(name="Pump of the day"))
    expect(others).to_be_visible()
    titles = page.locator(".card-row b").all_text_contents()
    assert set(titles[-2:]) == {SITE["card"][card]["title"] for card in ("stages", "override")}
    assert titles[:3] == [SITE["card"][card]["title"] for card in ("scene", "bay", "road")]
    last = page.locator(".card-row").last
    expect(last).to_be_hidden()  # one tap away, so that no card of another rig is taken by mistake
    others.tap()
    expect(last).to_be_visible()


def test_what_the_rig_says_is_not_asked(handset):
    """A profile's drive and transmission are not asked again, and its capacity sets the primer's time."""
    beside(handset, drive="pto", transmission="manual", pump_rated="6000@SI")
    card = open_card(handset, "scene", rig={"drive": "pto", "transmission": "manual"})
    expect(card.page.get_by_text(SHIFT["step_about"].split(" of ")[0].format(number=1), exact=False)).to_be_visible()
    draft = open_card(handset, "draft")
    draft.run_to("prime_draft")
    draft.begin_pause()
    expect(draft.page.get_by_role("timer")).to_contain_text("4")  # 45 s, not 30: by hand 6,000 L/min is 1,585 US gpm


def test_the_right_card_is_offered_for_the_wrong_rig(handset):
    """A card that is not for the chosen rig leads to those that are, and serves another rig when asked."""
    beside(handset, drive="pto", transmission="automatic")
    page = handset.open("shift/override/")
    expect(page.get_by_role("alert")).to_contain_text(SITE["rig_answer"]["drive"]["pto"])
    expect(page.get_by_role("link", name=SITE["card"]["scene"]["title"])).to_be_visible()
    page.get_by_role("button", name=SHIFT["unlike_other"]).tap()
    expect(page.get_by_role("heading", level=2)).to_have_text(STEPS["which_drive"]["act"])


def test_an_answer_for_another_card_leads_to_it(handset):
    """A card that is not for the rig that was described says so, and leads to one that is, or asks again."""
    card = Card(handset.open("shift/stages/"), "stages")
    card.shows("which_stages")
    card.see("1")
    expect(card.stop).to_contain_text(SHIFT["other_title"])
    expect(card.page.get_by_role("link", name=SITE["card"]["scene"]["title"])).to_be_visible()
    expect(card.page.get_by_role("link", name=SITE["card"]["stages"]["title"])).to_have_count(0)
    card.press("ask_again")
    card.shows("which_stages")


def test_a_run_does_not_outlive_its_rig(handset):
    """A card under way is not taken up with another drive than it was begun with: it starts anew, and says why."""
    beside(handset, drive="midship", shift_control="air", transmission="automatic")
    card = open_card(handset, "road")
    card.run_to("lines_down")
    beside(handset, drive="pto", transmission="automatic")
    card.page.reload()
    card.shows("tell")
    drives = SITE["rig_answer"]["drive"]
    said = card.page.get_by_text(SHIFT["other_profile"].split("{")[0])
    for drive in ("midship", "pto"):
        expect(said).to_contain_text(drives[drive])
    seen = card.page
    seen.goto(handset.host.origin + "log/")
    expect(seen.locator(".run")).to_have_count(1)  # what was seen before stands there
    expect(seen.locator(".run li").filter(has_text=STEPS["tell"]["act"])).to_have_count(1)


@pytest.mark.parametrize("profile", [{"drive": "midship"}, {"drive": "midship", "pressure_control": "governor", "pump_rated": "1250@US"}])
def test_a_run_goes_on_with_more_known_of_its_rig(handset, profile):
    """A card under way stays at its step where another page enters what was answered on it, or what it never asked."""
    if "pump_rated" in profile:
        beside(handset)
    card = open_card(handset, "road")
    card.run_to("lines_down")
    seen = card.page.locator(".card-more ol li").count()
    beside(handset, **profile)
    card.page.reload()
    expect(card.page.locator(".resumed")).to_be_visible()
    expect(card.page.locator(".card-more ol li")).to_have_count(seen)
    assert card.step() != "tell"
    for said in ("other_rig", "other_profile"):
        expect(card.page.get_by_text(SHIFT[said].split("{")[0])).to_have_count(0)


def test_every_answer_to_the_first_question_is_on_the_screen(handset):
    """The five drives, "Can't tell" (a choice is never "not so") and the red key stand on a screen of 360 by 740 without a scroll."""
    card = Card(handset.open("shift/scene/"), "scene")
    card.shows("which_drive")
    assert card.page.locator(".dock button").all_inner_texts() == [*STEPS["which_drive"]["answer"].values(), SHIFT["unsure"], SHIFT["danger"]]
    for key in card.page.locator(".dock button").all():
        expect(key).to_be_in_viewport(ratio=1)
    expect(card.page.get_by_text(STEPS["which_drive"]["see"])).to_be_in_viewport(ratio=1)


def test_out_of_service_outlives_an_edited_profile(handset):
    """A rig that moved stays stopped, whatever its profile says now."""
    beside(handset, drive="midship", shift_control="air", transmission="automatic")
    card = open_card(handset, "scene")
    card.press("danger")
    for drive in ("rear_shaft", "pto"):
        beside(handset, drive=drive, transmission="automatic")
        card.page.reload()
        expect(card.title).to_have_text(data.orders()["moved"]["title"])
        expect(card.page.get_by_text(SHIFT["still_out"])).to_be_visible()
    expect(card.page.get_by_role("link", name=SHIFT["tag_open"], exact=True)).to_be_visible()
    expect(card.button("released")).to_have_count(0)  # its log ends it, by two names


def test_a_failed_try_outlives_an_edited_profile(handset):
    """One failed shift, then the profile is edited: the next failure is still the second."""
    beside(handset, drive="midship", shift_control="air", transmission="automatic")
    card = open_card(handset, "scene")
    card.run_to("pump")
    card.press("not_seen")
    beside(handset, drive="rear_shaft", shift_control="air", transmission="automatic")  # another than it was begun with
    card.page.reload()
    expect(card.stop).to_have_count(0)
    card.run_to("pump")
    card.press("not_seen")
    expect(card.title).to_have_text(SHIFT["twice_title"])
    card.page.get_by_role("link", name=SITE["rig_status_acts"]["write"], exact=True).tap()
    bay = data.words("bay")
    expect(card.page.get_by_label(bay["defect"]["what"])).to_have_value(data.words("orders")["pump_fails"]["title"])
    seen = SHIFT["defect_twice"].format(card=SITE["card"]["scene"]["title"], see=STEPS["pump"]["see"])
    expect(card.page.get_by_label(bay["defect"]["seen"])).to_have_value(seen)


@pytest.mark.parametrize(("rig", "is_said"), [(RIG, True), ({"drive": "pto", "transmission": "automatic"}, False)], ids=["midship", "pto"])
def test_a_figure_for_some_drives_is_said_of_no_other(handset, rig, is_said):
    """What a pump of one drive shows at idle is said beside that pump only, on the card."""
    beside(handset, **rig)
    card = open_card(handset, "scene", rig=rig)
    card.run_to("pressure")
    assert (STEPS["pressure"]["note"] in card.page.get_by_role("main").inner_text()) == is_said


SHORT = data.words("short")["short"]


def test_the_short_form_is_one_tap_away_and_says_where_one_is(handset):
    """Act and proof of this rig's steps and no others, what was seen marked, within two screens; a tap leads back to the step."""
    beside(handset, **RIG)
    card = open_card(handset, "scene")
    card.run_to("neutral")
    card.page.get_by_role("link", name=SHIFT["read"]).tap()
    rows = card.page.get_by_role("listitem")
    expect(rows.first).to_be_visible()
    expect(rows).to_have_text([re.compile("^" + re.escape(SHORT[step][0]) + r"\b.*" + re.escape(SHORT[step][1]) + "$") for step in card.steps])
    states = rows.evaluate_all("(rows) => rows.map((row) => row.dataset.state ?? '')")
    here = card.steps.index("neutral")
    assert states == ["proven"] * here + ["here"] + [""] * (len(card.steps) - here - 1)
    assert card.page.evaluate("document.documentElement.scrollHeight") <= 2 * 740
    card.page.get_by_role("link", name=SHIFT["to_card"]).tap()
    card.shows("idle")


def test_the_strip_of_other_pages_leads_back_to_an_open_card(handset):
    """From the first sign that was seen until its end a card stands in every other page's strip; a tap leads back to it."""
    card = open_card(handset, "freeze")
    expect(handset.open("shift/").locator("#strip")).to_be_hidden()
    card.see()
    page = handset.open("shift/")
    page.locator("#strip a").get_by_text(SITE["card"]["freeze"]["title"]).tap()
    expect(page.get_by_role("heading", level=2)).not_to_have_text("")
    assert page.url.endswith("/shift/freeze/")
    page.locator(".bar-key").first.tap()  # out of the card, and there one more touch to the order of a line that lost its water
    page.locator("main").get_by_role("link", name=SITE["start"]["line_lost"]).tap()
    expect(page).to_have_url(re.compile("/diagnose/water/"))
    page.close()
    card.page.bring_to_front()
    card.run_out()
    expect(handset.open("shift/").locator("#strip")).to_be_hidden()


@pytest.mark.parametrize(("stages", "is_asked"), [("1", False), ("2", True)])
def test_the_transfer_valve_is_named_beside_two_stages_only(handset, stages, is_asked):
    """At draft and in frost a pump that has no transfer valve is not asked of one; one that has is asked where it stands."""
    beside(handset, pump_stages=stages)
    for name, step in (("draft", "draft_stages"), ("freeze", "freeze_transfer")):
        card = open_card(handset, name, rig={"pump_stages": stages})
        assert (step in card.run_out()) == is_asked


def test_priming_stops_itself(handset):
    """When the primer's time is over the card stops, says what to do, and leads back to the same step."""
    card = open_card(handset, "draft")
    card.run_to("prime_draft")
    card.begin_pause()
    expect(card.title).to_have_text(SHIFT["time_up_title"])  # three seconds here, with hurried clocks
    expect(card.stop).to_contain_text(STEPS["prime_draft"]["not_seen"], use_inner_text=True)  # one act a line
    card.press("look_again")
    expect(card.stop).to_have_count(0)
