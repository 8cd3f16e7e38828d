"""The language follows the phone, can be forced, and costs no answer."""
import re

import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests.phone import history
from tests.phone.folds import UNFOLDED
from tests.phone.keyboard import MEASURE

FRENCH = data.shared_words("fr")
ENGLISH = data.shared_words("en")


def test_follows_the_phone_and_can_be_forced(take):
    """A French phone is sent to the French page, which computes in metric units; English, once chosen, holds on every page."""
    handset = take(locale="fr-CA")
    page = handset.open("pressure/")
    expect(page).to_have_url(re.compile("/fr/pressure/"))
    expect(page.locator("h1")).to_have_text(FRENCH["pressure"]["title"])
    expect(page.locator("output b")).to_have_text("1150")  # by hand: C 24.6 kPa: 24.6 x 5.5^2 x 0.6 + 700 = 1146, in SI, set to 10
    start = handset.open("fr/all/")
    start.get_by_role("radio", name="English").tap()
    expect(start.locator("h1")).to_have_text(ENGLISH["all"]["title"])
    page = handset.open("fr/water/")
    expect(page).not_to_have_url(re.compile("/fr/"))


@pytest.mark.parametrize(("locale", "home", "other", "name", "figure"), [
    ("fr-CA", "fr/", "", "English", "1150"),  # by hand, 45 mm: 24.6 x 5.5^2 x 0.6 + 700 = 1146 kPa, set to 10
    ("en-US", "", "fr/", "Français", "170"),  # by hand, 1 3/4 in: 15.5 x 1.5^2 x 2 + 100 = 169.75 psi
])
def test_another_language_keeps_the_units(take, locale, home, other, name, figure):
    """A first visit is read in the units usual with its language, and All pages says that none was chosen; another language that is chosen leaves them as they are."""
    handset = take(locale=locale)
    page = handset.open(f"{home}all/")
    expect(page.get_by_text((FRENCH if home else ENGLISH)["units"]["unchosen"])).to_be_visible()
    page.get_by_role("radio", name=name).tap()
    expect(page.locator("h1")).to_have_text((FRENCH if other else ENGLISH)["all"]["title"])
    expect(page.get_by_text((FRENCH if other else ENGLISH)["units"]["unchosen"])).to_be_hidden()
    expect(handset.open(f"{other}pressure/").locator("output b")).to_have_text(figure)


def test_a_link_keeps_its_lay(take):
    """A layout that was sent from an English phone opens on a French one as it was."""
    page = take(locale="fr-CA").open("pressure/#layout=%7B%22crew%22%3A%222%22%2C%22lines%22%3A%5B%7B%22id%22%3A%22A%22%2C%22hose%22%3A%22attack-2%22%2C%22length%22%3A%22350%40US%22%2C%22rise%22%3A%220%40US%22%2C%22end%22%3A%7B%22kind%22%3A%22fog%22%2C%22flow%22%3A%22150%40US%22%2C%22tip%22%3A%220.9375%40US%22%2C%22pressure%22%3A%22100%40US%22%7D%7D%5D%7D")
    expect(page).to_have_url(re.compile("/fr/pressure/"))
    expect(page.locator("output b")).to_have_text("1120")  # by hand: 8 x 2.25 x 3.5 + 100 = 163 psi, x 6.895 = 1124, set to 10


def test_longer_words_fit(take):
    """French words are longer; no page of them scrolls sideways or cuts one on a narrow phone, whatever is unfolded."""
    handset = take(locale="fr-CA", viewport={"width": 320, "height": 640})
    page = handset.open("fr/")
    for address in ("", "pressure/", "water/draft/", "shift/scene/", "diagnose/", "rig/", "shift/", "test/", "why/", "help/", "help/shift/", "tables/SI/friction/"):
        page.goto(f"{handset.host.origin}fr/{address}")
        page.wait_for_load_state("networkidle")
        page.evaluate(UNFOLDED)
        page.evaluate(MEASURE)
        assert page.evaluate("measure.overhang(320).concat(measure.cut())") == [], address


def test_a_rating_keeps_its_meaning_in_another_language(handset):
    """1,500 typed on an English phone is 1500 on the Rig page in French, with nothing asked."""
    page = history.held(handset, rig={**history.PROFILE, "pump_rated": "1250@US"})
    page.goto(handset.host.origin + "rig/#field-pump_rated")
    page.evaluate("localStorage.setItem('units', 'US'); localStorage.setItem('language', 'fr')")
    page.locator("#field-pump_rated").fill("1,500")
    page.goto(handset.host.origin + "fr/rig/#field-pump_rated")
    expect(page.locator("#field-pump_rated")).to_have_value("1500")
    expect(page.locator("#field-pump_rated")).not_to_have_attribute("aria-invalid", "true")
    page.close()
