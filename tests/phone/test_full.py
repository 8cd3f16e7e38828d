"""A phone whose store is full, or refuses: each page says that nothing new is saved, and what is on the screen stays."""
import json

import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests.phone import ways
from tests.phone.card import RIG, beside, hasten, open_card
from tests.phone.folds import unfold
from tests.phone.store import do, in_database
from tests.phone.diagnosis import ASK, ORDERS, button
from tests.phone.test_failure import FILLED, NO_PUT, REFUSED
from tests.phone.test_log import downloaded
from tests.phone.test_rig import ENGINE, R
from tests.phone.words import SITE

LOG = data.words("log")
# the database is full, so that a note is all there is; or nothing takes anything
BOTH = pytest.mark.parametrize(("trouble", "state"), [(NO_PUT, "noted"), (FILLED, "unkept")], ids=["database", "everything"])
NOTED = """() => { window.hadRoom = IDBObjectStore.prototype.put; }"""
ROOM_AGAIN = """() => { IDBObjectStore.prototype.put = window.hadRoom; }"""


def banner(page):
    return page.locator("#noted:visible, #unkept:visible")


def told(page, state):
    """One sentence above the page says how entries are kept."""
    expect(banner(page)).to_have_text(SITE["site"][state])


def untold(page):
    expect(banner(page)).to_have_count(0)


def fill_up(page, trouble):
    """The store of an open page is full from now on."""
    page.evaluate(NOTED)
    page.evaluate(f"() => {{ {trouble} }}")


def in_next_page(handset, store):
    return do(handset.open("404.html"), "keptRecords", store)


@BOTH
def test_card_mid_run(take, trouble, state):
    """A card says so from the first touch that the log does not take to its end; with room again the log has the whole run."""
    handset = hasten(take())
    beside(handset, **RIG)
    card = open_card(handset, "freeze")
    card.see()
    untold(card.page)
    fill_up(card.page, trouble)
    card.see()
    told(card.page, state)
    card.shows(card.steps[2])
    shown = card.steps[:2]
    while card.step() != card.steps[-1]:
        shown.append(card.step())
        card.see()
        told(card.page, state)
    card.page.evaluate(ROOM_AGAIN)
    card.see()
    expect(card.title).to_have_text(SITE["shift"]["done"])
    untold(card.page)
    [run] = do(card.page, "keptRecords", "log")
    assert [entry["step"] for entry in run["entries"] if entry["event"] == "seen"] == [*shown, card.steps[-1]]


@BOTH
def test_finished_card(take, trouble, state):
    """The last touch of a card that the log does not take is said on the card, which stays at its end."""
    handset = hasten(take())
    beside(handset, **RIG)
    card = open_card(handset, "freeze")
    card.run_to(card.steps[-1])
    fill_up(card.page, trouble)
    card.see()
    expect(card.title).to_have_text(SITE["shift"]["done"])
    told(card.page, state)
    assert [run["outcome"] for run in in_database(card.page, "log")] == ["running"]
    [run] = in_next_page(handset, "log")
    assert (run["outcome"] == "done") is (state == "noted")


@BOTH
def test_diagnosis_that_ends(take, trouble, state):
    """A diagnosis that the log does not take says so at its end, links to no log that does not have it, and its end stays."""
    handset = take()
    page = ways.diagnosis("supply_soft", "grew_with_lines")(handset)
    fill_up(page, trouble)
    button(page, ORDERS["moved"]["title"]).tap()
    expect(page.get_by_role("alert").get_by_role("listitem")).to_have_text(ORDERS["moved"]["do"])
    told(page, state)
    expect(page.get_by_role("link", name=ASK["kept"])).to_have_count(1 if state == "noted" else 0)
    assert in_database(page, "log") == []
    assert len(in_next_page(handset, "log")) == (1 if state == "noted" else 0)


@BOTH
def test_log_page(take, trouble, state):
    """The log says that it takes nothing new; what is typed stays in its field and in the file, and goes in once there is room."""
    handset = hasten(take())
    card = open_card(handset, "freeze")
    card.press("danger")
    page = handset.open("log/")
    page.locator(".run-notes summary").tap()
    page.get_by_label(LOG["who"]).wait_for()
    untold(page)
    fill_up(page, trouble)
    page.get_by_label(LOG["who"]).fill("AB")
    told(page, state)
    expect(page.get_by_label(LOG["who"])).to_have_value("AB")
    [record] = json.loads(downloaded(page, "file_json"))
    assert record["who"] == "AB"
    page.evaluate(ROOM_AGAIN)
    page.get_by_label(LOG["who"]).fill("ABC")
    untold(page)
    page.reload()
    expect(page.get_by_label(LOG["who"])).to_have_value("ABC")


@pytest.mark.parametrize("trouble", [NO_PUT, FILLED, REFUSED], ids=["database", "everything", "refused"])
def test_pages_that_open_on_a_full_store(take, trouble):
    """All pages and the log say so as they open, and the log does not say that it is empty."""
    handset = take()
    handset.context.add_init_script(trouble)
    page = handset.open("all/")
    expect(page.locator("#keeping")).to_have_text(SITE["start"]["unkept"])
    page.goto(handset.host.origin + "log/")
    told(page, "unkept")
    expect(page.get_by_text(LOG["none"])).to_have_count(0)


@pytest.mark.parametrize("trouble", [FILLED, REFUSED], ids=["full", "refused"])
def test_choice_that_is_not_stored(take, trouble):
    """Night and units, chosen on All pages, hold on that page, which says they are not saved."""
    handset = take()
    handset.context.add_init_script(trouble)
    page = handset.open("all/")
    page.locator("#looks input[value=night]").check(force=True)
    told(page, "unkept")
    expect(page.locator("link[data-night]")).to_have_attribute("media", "all")
    page = handset.open("all/")
    page.locator("#units input[value=bar]").check(force=True)
    told(page, "unkept")


def test_rig_that_is_chosen_on_a_full_phone(take):
    """A rig chosen where the choice is not stored is chosen on that page, which says so."""
    handset = take()
    beside(handset, **{**ENGINE, "id": "rig-1", "name": "First"})
    beside(handset, **{**ENGINE, "id": "rig-2", "name": "Second"})
    page = handset.open("rig/")
    unfold(page)
    page.locator("#field-owner").wait_for(state="attached")
    fill_up(page, FILLED)
    page.get_by_role("button", name=R["rig"]["choose"] + ": First").tap()
    expect(page.locator(".standing b")).to_have_text("First")
    told(page, "unkept")
