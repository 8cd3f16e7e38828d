"""Help on the phone: answers as one types, the tapped one open, with no signal too."""
import re

import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests.phone.card import Card
from tests.phone.handset import Handset, Host

HELP = data.load("words/en/help")["help"]


def typing(page, text):
    page.get_by_role("searchbox", name=HELP["search"]).fill(text)
    return page.get_by_role("navigation", name=HELP["found"])


def test_an_answer_is_two_touches_away(handset):
    """What is typed brings its question first; a tap shows its answer, open, and the way on."""
    page = handset.open("help/")
    answers = typing(page, "primer runs but no water")
    question = data.load("words/en/help/diagnose")["no_prime"]
    expect(answers.get_by_role("link").first).to_contain_text(question["ask"])
    expect(page.get_by_role("status").filter(has_text="best first")).to_be_visible()
    expect(page.locator("#topics")).to_be_hidden()
    answers.get_by_role("link").first.tap()
    page.wait_for_url("**/help/diagnose/#no_prime")
    expect(page.get_by_text(question["answer"])).to_be_in_viewport()
    expect(page.locator("details[open]")).to_have_count(1)


def test_nothing_fits_and_nothing_is_typed(handset):
    """Where nothing fits the page says what to try, with its topics in sight; emptied, it is as it was."""
    page = handset.open("help/")
    typing(page, "zzzqq")
    expect(page.get_by_text(HELP["nothing"])).to_be_visible()
    expect(page.locator("#topics")).to_be_visible()
    typing(page, "")
    expect(page.get_by_text(HELP["nothing"])).to_have_count(0)
    expect(page.locator("#found")).to_be_hidden()


@pytest.mark.parametrize(("typed", "address"), [("firction loss", "tables/US/friction/"), ("foam", "foam/")])
def test_a_page_is_found_too(handset, typed, address):
    """A page is among the answers by its name."""
    page = handset.open("help/")
    answers = typing(page, typed)
    expect(answers.get_by_role("link").first).to_be_visible()
    links = [link.get_attribute("href") for link in answers.get_by_role("link").all()]
    assert any(link.endswith(f"/{address}") for link in links), links


def test_enter_goes_to_the_first(handset):
    """By keys: Enter in the search leads to the first answer."""
    page = handset.open("help/")
    first = typing(page, "cavitation").get_by_role("link").first
    page.keyboard.press("Enter")
    expect(first).to_be_focused()


def test_a_term_is_touched_where_it_stands(handset):
    """A touch on a term opens its sentences and the way to its place; closed, the reader is where he was; a key opens it too."""
    terms = data.load("words/en/terms")
    page = handset.open("help/panel/#usual_speed")
    term = page.locator("details[open] a.term").first
    split = terms["term"]["split_shaft"]
    expect(term).to_have_text("split shaft")
    term.tap()
    sheet = page.get_by_role("dialog", name=split["name"])
    expect(sheet).to_contain_text(split["says"])
    expect(sheet.get_by_role("link", name=terms["terms"]["title"])).to_have_attribute("href", re.compile("help/terms/(index.html)?#split_shaft$"))
    sheet.get_by_role("button", name=terms["terms"]["close"]).tap()
    expect(sheet).to_be_hidden()
    expect(term).to_be_focused()
    page.keyboard.press("Enter")
    sheet.get_by_role("link").tap()
    page.wait_for_url("**/help/terms/**#split_shaft")
    expect(page.get_by_text(split["says"])).to_be_in_viewport()


def test_a_card_under_way_explains_itself(handset):
    """The "?" of a step opens its question over the card, which stays where it is; a term of its sentences opens as well."""
    page = handset.open("shift/freeze/")
    ask = data.load("words/en/help/shift")["frost"]
    page.get_by_role("link", name=data.load("words/en/help")["help"]["title"]).tap()
    sheet = page.get_by_role("dialog", name=ask["ask"])
    expect(sheet).to_contain_text(ask["answer"].split(". ")[0])
    sheet.get_by_role("button", name=data.load("words/en/terms")["terms"]["close"]).tap()
    expect(sheet).to_be_hidden()
    assert page.url.endswith("shift/freeze/")


def test_back_closes_the_sheet(handset):
    """Back under an open sheet closes it and stays at the step; closed by touch nothing is left to go back through; what it leads to leads back to the step."""
    page = handset.open("help/")
    page.goto(handset.host.origin + "shift/scene/")
    card = Card(page, "scene")
    card.tell_rig()
    step = card.step()
    ask = page.get_by_role("link", name=data.load("words/en/help")["help"]["title"])
    sheet = page.get_by_role("dialog")
    page.evaluate("window.isSame = true")
    for _ in range(2):
        ask.tap()
        expect(sheet).to_be_visible()
        page.go_back()
        expect(sheet).to_be_hidden()
        card.shows(step)
    for _ in range(2):
        ask.tap()
        expect(sheet).to_be_visible()
        sheet.get_by_role("button", name=data.load("words/en/terms")["terms"]["close"]).tap()
        expect(sheet).to_be_hidden()
    assert page.evaluate("window.isSame")  # no page was loaded: the card's clock ran on
    ask.tap()
    sheet.locator("a.key").tap()
    page.wait_for_url("**/help/shift/**")
    page.go_back()
    page.wait_for_url("**/shift/scene/")
    expect(sheet).to_be_hidden()
    card.shows(step)
    page.go_back()
    page.wait_for_url("**/help/")


@pytest.mark.parametrize("address", ["help/", "checks/conditions/"])
def test_what_was_typed_comes_back(handset, address):
    """Back from what a search found, its words stand as they were typed, half a word too, with what they find."""
    page = handset.open(address)
    search = page.get_by_role("searchbox")
    search.fill("gear oi")
    found = page.locator("#found, #conditions").get_by_role("link").first
    expect(found).to_be_visible()
    first = found.inner_text()
    found.tap()
    page.wait_for_url(lambda url: not url.endswith(address))
    page.go_back()
    expect(search).to_have_value("gear oi")
    expect(found).to_have_text(first, use_inner_text=True)


def test_the_question_follows_the_step(handset):
    """Another step, another question; and a touched term of it says what it is."""
    page = handset.open("shift/scene/")
    card = Card(page, "scene")
    card.tell_rig()
    ask = page.get_by_role("link", name=data.load("words/en/help")["help"]["title"])
    for step, question in [("air", "shift/index.html#air_needed"), ("neutral", "shift/index.html#brake_or_neutral")]:
        card.run_to(step)
        expect(ask).to_have_attribute("href", re.compile(f"/help/{question}$"))
        if step == "air":
            page.locator(".step a.term").first.tap()
            collar = data.load("words/en/terms")["term"]["collar"]
            sheet = page.get_by_role("dialog", name=collar["name"])
            expect(sheet).to_contain_text(collar["says"])
            page.keyboard.press("Escape")
            expect(sheet).to_be_hidden()


def test_a_drawn_figure_explains_its_name(handset):
    """Pressure's figures, drawn by a script, have their terms to touch too."""
    page = handset.open("pressure/")
    friction = data.load("words/en/terms")["term"]["friction_loss"]
    page.locator("[data-part=workings] > summary").tap()
    page.locator("[data-part=workings] details summary").filter(has_text=friction["name"]).first.tap()
    page.locator("[data-part=workings] a.term").get_by_text(friction["forms"]).first.tap()
    expect(page.get_by_role("dialog", name=friction["name"])).to_contain_text(friction["says"])


def test_french_with_no_signal(browser, built):
    """Installed, with no signal and no host, the search answers in French without accents."""
    handset = Handset(browser, Host(built), worker=True, locale="fr-CA")
    handset.install().close()
    handset.lose_signal()
    page = handset.open("fr/help/")
    page.get_by_role("searchbox").fill("denivele")
    expect(page.locator("#found a").first).to_contain_text(data.load("words/fr/help/pressure")["height"]["ask"])
    handset.close()
