"""The tour of a first visit: there once, gone for good, never in the way."""
import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests.phone.handset import Handset, Host
from tests.phone.test_failure import REFUSED
from tests.phone.test_steady import SHIFTS
from tests.phone.words import SITE

TOUR = data.words("help")["tour"]


def titles(told):
    """The headings of its parts, each with its place."""
    return [f"{part['title']} {place}/{len(told['part'])}" for place, part in enumerate(told["part"], 1)]


TITLES = titles(TOUR)


def tour(page):
    return page.get_by_role("region", name=TOUR["title"], exact=True)


def heading(page, title):
    return page.get_by_role("heading", name=title, exact=True)


def key(page, name):
    return page.get_by_role("button", name=TOUR[name], exact=True)


def shows(page, title):
    """The tour stands at this part, and at no other."""
    for other in TITLES:
        expect(heading(page, other)).to_be_visible(visible=other == title)


def gone(page):
    """The start page has opened without a tour."""
    expect(heading(page, SITE["start"]["title"])).to_be_visible()
    expect(page.locator("#look input:checked")).to_have_count(1)  # the page's script has run to its end
    expect(tour(page)).to_be_hidden()


def test_goes_through_its_parts_and_never_comes_again(handset):
    """At most three parts, one after another by touch; once ended it is gone, after a reload and on a new page too."""
    page = handset.open()
    assert 1 < len(TITLES) <= 3
    for title in TITLES[:-1]:
        shows(page, title)
        key(page, "next").tap()
    shows(page, TITLES[-1])
    expect(key(page, "skip")).to_be_hidden()
    key(page, "done").tap()
    gone(page)
    page.reload()
    gone(page)
    gone(handset.open())


def test_is_skipped_at_once(handset):
    """One touch on the first part ends it for good."""
    page = handset.open()
    key(page, "skip").tap()
    gone(page)
    gone(handset.open())


def test_stays_until_it_is_answered(handset):
    """A reload in its midst costs nothing: it is still there."""
    page = handset.open()
    key(page, "next").tap()
    page.reload()
    shows(page, TITLES[0])


def test_a_hurry_is_not_held_up(handset):
    """The first ways in are on the screen beside it, one touch away; whoever takes one is not asked again."""
    page = handset.open()
    shows(page, TITLES[0])
    for name in (SITE["nav"]["pressure"], SITE["card"]["scene"]["title"]):
        expect(page.get_by_role("link", name=name).first).to_be_in_viewport(ratio=0.9)
    page.get_by_role("link", name=SITE["nav"]["pressure"]).first.tap()
    expect(page.locator("output b")).to_have_text("170")  # by hand: 15.5 x 1.5^2 x 2 + 100 = 169.75
    page.go_back()
    gone(page)


@pytest.mark.parametrize("address", ["pressure/", "shift/scene/", "help/", "rig/"])
def test_only_on_the_start_page(handset, address):
    """A page that was opened by its address shows no tour, and does not use it up."""
    page = handset.open(address)
    expect(tour(page)).to_have_count(0)
    shows(handset.open(), TITLES[0])


def test_by_keys(handset):
    """With a keyboard alone: its keys come first on the page, and each new part's heading has the focus."""
    page = handset.open()
    page.locator(".bar-home").focus()
    page.keyboard.press("Tab")
    if not key(page, "skip").evaluate("key => key === document.activeElement"):
        page.keyboard.press("Tab")  # past the help link of the bar
    expect(key(page, "skip")).to_be_focused()
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    expect(heading(page, TITLES[1])).to_be_focused()
    page.keyboard.press("Shift+Tab")
    page.keyboard.press("Enter")
    shows(page, TITLES[2])
    page.keyboard.press("Shift+Tab")
    page.keyboard.press("Enter")
    gone(page)
    expect(page.get_by_role("main")).to_be_focused()


def test_keys_stay_where_the_finger_is(handset):
    """No part, however long, moves the key that was just touched."""
    page = handset.open()
    at = [key(page, "next").bounding_box()["y"]]
    key(page, "next").tap()
    at.append(key(page, "next").bounding_box()["y"])
    key(page, "next").tap()
    at.append(key(page, "done").bounding_box()["y"])
    assert at == [at[0]] * 3


def test_moves_nothing_when_it_comes(handset):
    """It stands in the page from the first paint: a script that is late shifts nothing under a thumb."""
    page = handset.context.new_page()
    page.route("**/tour.js", lambda route: (page.wait_for_timeout(600), route.continue_()))
    page.goto(handset.host.origin)
    shows(page, TITLES[0])
    page.locator("#look input:checked").wait_for(state="attached")
    assert page.evaluate(SHIFTS) < 0.01


def test_is_there_again_when_asked_for(handset):
    """The help page leads back to it, also once it was skipped; and a reload does not ask again."""
    page = handset.open()
    key(page, "skip").tap()
    page = handset.open("help/")
    page.get_by_role("link", name=data.words("help")["help"]["tour"], exact=True).tap()
    shows(page, TITLES[0])
    page.wait_for_load_state()  # a key answers once its script is there
    key(page, "skip").tap()
    gone(page)
    page.reload()
    gone(page)


def test_without_storage(handset):
    """Where storage is refused it is shown, ended, and not shown again in that page's life; nothing breaks."""
    handset.context.add_init_script(REFUSED)
    page = handset.open()
    shows(page, TITLES[0])
    key(page, "skip").tap()
    gone(page)
    page.get_by_role("radio", name=SITE["start"]["night"]).check(force=True)
    expect(tour(page)).to_be_hidden()


def test_without_scripts(take):
    """With scripts off nothing stands in the way, and the help page's link shows all of it at once."""
    handset = take(java_script_enabled=False)
    expect(tour(handset.open())).to_be_hidden()
    page = handset.open("help/")
    page.get_by_role("link", name=data.words("help")["help"]["tour"], exact=True).tap()
    for title in TITLES:
        expect(heading(page, title)).to_be_visible()
    expect(key(page, "skip")).to_be_hidden()


def test_after_the_host_is_gone(browser, built):
    """An installed phone that has lost its host shows it once, and not again."""
    handset = Handset(browser, Host(built), worker=True)
    handset.install().close()
    handset.lose_signal()
    page = handset.open()
    shows(page, TITLES[0])
    key(page, "skip").tap()
    gone(page)
    page.reload()
    gone(page)
    gone(handset.open())
    handset.close()


def test_in_the_phones_language(take):
    """A French phone is sent to the French page and finds the tour there; a change of language does not use it up."""
    handset = take(locale="fr-CA")
    page = handset.open()
    expect(heading(page, titles(data.load("words/fr/help")["tour"])[0])).to_be_visible()
    page.get_by_role("radio", name="English").check(force=True)
    shows(page, TITLES[0])
