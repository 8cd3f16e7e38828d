"""The Foam page answers as worked by hand, and says when the eductor would stop."""
from playwright.sync_api import expect

from site_src.content import data
from tests.phone.handset import Handset, Host
from tests.phone.sheet import open_sheet
from tests.phone.words import SITE

WATER = data.words("water")["reckon"]


def test_concentrate(handset):
    """How long the concentrate lasts, by flow and percent."""
    sheet = open_sheet(handset, "foam/")
    sheet.shows("10.5", "min")  # by hand: 30 / (95 x 0.03)
    sheet.type("concentrate", "25")
    sheet.type("flow", "125")
    sheet.shows("6.7", "min")  # by hand: 25 / (125 x 0.03) = 6.67
    expect(sheet.figure("foam_minutes")).to_contain_text("25 / (125 × 3 %) = 6.667 min")
    expect(sheet.warns("foam_short", amount=25, wanted="10.0", needed=38)).to_be_visible()  # 10 x 3.75
    sheet.choose("percent", "6")
    sheet.shows("3.3", "min")


def test_eductor(handset):
    """Too much hose behind the eductor stops the foam, and the page says how much would do."""
    sheet = open_sheet(handset, "foam/")
    sheet.type("length", "250")
    # by hand: 100 + 15.5 x 0.95^2 x 2.5 = 134.97 against 200 x 0.65; (130 - 100) / 13.99 per 100 ft = 214 ft
    expect(sheet.warns("back_pressure", amount=135, limit=130, longest=214)).to_be_visible()
    sheet.type("plate", "140")
    sheet.warns_not("back_pressure", amount=135, limit=130, longest=214)
    expect(sheet.figure("most_back_plate")).to_contain_text(SITE["basis"]["from memory"])


def test_offline(browser, built):
    """Installed, with no signal and no host, water and foam pages compute what is entered."""
    handset = Handset(browser, Host(built), worker=True)
    handset.install().close()
    handset.lose_signal()
    sheet = open_sheet(handset, "foam/")
    sheet.type("flow", "125")
    sheet.shows("8.0", "min")  # by hand: 30 / 3.75
    sheet = open_sheet(handset, "water/relay/")
    sheet.type("flow", "500")
    sheet.shows("80", "psi")  # by hand: 2 psi per 100 ft: 20 + 60
    handset.close()


def test_examples_go_as_they_are_owned(handset):
    """What nobody entered keeps its hatched edge, in the picture too; a figure that happens to be right is taken as it stands."""
    sheet = open_sheet(handset, "foam/")
    plate, picture = sheet.page.locator(".water-plate"), sheet.page.locator(".pictured")
    sheet.type("concentrate", "25")
    sheet.type("flow", "125")
    sheet.choose("percent", "6")
    for name in ("hose", "rise"):
        expect(plate).to_contain_text(WATER["example"])  # the longest hose in its sentence rests on them
        sheet.open(name)
        sheet.page.get_by_role("button", name=WATER["as_is"], exact=True).tap()
    expect(plate).not_to_contain_text(WATER["example"])
    expect(picture).to_have_attribute("data-from", "example")  # its length is nobody's yet
    for name in ("length", "minutes"):
        sheet.open(name)
        sheet.page.get_by_role("button", name=WATER["as_is"], exact=True).tap()
    expect(picture).not_to_have_attribute("data-from", "example")
