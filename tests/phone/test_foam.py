"""The Foam page answers as worked by hand, and says when the eductor would stop."""
import json
from urllib.parse import quote

from playwright.sync_api import expect

from site_src.content import data
from tests.phone.handset import Handset, Host
from tests.phone.sheet import TOLD, US, open_sheet
from tests.phone.test_rig_faults import SOUND, chosen
from tests.phone.words import SITE

WATER = data.words("water")["reckon"]


def test_concentrate(handset):
    """How long the concentrate lasts, by flow and percent."""
    sheet = open_sheet(handset, "foam/")
    sheet.shows("10.5", "min")  # by hand: 30 / (95 x 0.03)
    sheet.type("length", "100")
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


def test_stop(handset):
    """400 ft behind the eductor: by hand 100 + 13.99 x 4 = 156 psi against 130. A stop stands in the place of the number, as it does with a nozzle too small."""
    sheet = open_sheet(handset, "foam/")
    sheet.type("length", "400")
    expect(sheet.answer).to_have_text(TOLD["told"]["foam_none"])
    expect(sheet.warns("back_pressure", amount=156, limit=130, longest=214)).to_be_visible()
    sheet.type("length", "100")
    sheet.shows("10.5", "min")
    sheet.type("nozzle_flow", "60")
    expect(sheet.answer).to_have_text(TOLD["told"]["foam_none"])


def test_measured_hose(handset):
    """A hose that the rig's profile has a measured figure of is named, with whose figure it is; without one nothing is."""
    chosen(handset, SOUND)  # its 1 3/4 in hose was measured, its 2 1/2 in was not
    sheet = open_sheet(handset, "foam/")
    said = WATER["rig_hose_source"].format(hose="1¾ in", origin=SITE["pressure"]["origin_measured"])
    expect(sheet.page.locator(".entries .smallprint", has_text=said)).to_be_visible()
    sheet.choose("hose", "2½")
    expect(sheet.page.locator(".entries .smallprint", has_text=SITE["pressure"]["origin_measured"])).to_have_count(0)


def test_line(handset):
    """Touches: the eductor of 125 gpm, out on a line of 400 ft of 2 1/2 in; the pump shows what both take, and a nozzle that is no match stops it."""
    sheet = open_sheet(handset, "foam/")
    sheet.open("flow")
    sheet.page.get_by_role("radio", name="125 gpm", exact=True).tap()
    expect(sheet.row("flow")).to_contain_text("125")
    sheet.type("length", "100")
    sheet.choose("stands", TOLD["option"]["stands"]["line"])
    # by hand, C 2: 2 x 1.25^2 x 4 = 12.5 psi; (130 - 100) / (15.5 x 1.5625) = 123.9 ft, the last whole foot 123
    expect(sheet.page.locator(".answer-sum")).to_have_text(TOLD["told"]["foam"].format(**US, pump=213, percent=3, flow=125, longest=123))
    expect(sheet.figure("eductor_pump")).to_contain_text("200 at the eductor + 12.5 friction loss + 0 elevation = 212.5 psi")
    sheet.type("nozzle_flow", "95")
    expect(sheet.warns("nozzle_small", amount=95, limit=125)).to_be_visible()


def test_spill(handset):
    """A spill of 40 by 30 ft at 0.1: 120 gpm, 54 gal at 3 % in 15 minutes; two eductors of 95 are 190 gpm, 85.5 gal of concentrate and 2,764.5 of water."""
    sheet = open_sheet(handset, "foam/")
    sheet.choose("task", TOLD["option"]["task"]["spill"])
    sheet.type("minutes", "15")
    sheet.shows("190", "gpm")
    expect(sheet.page.locator(".answer-sum")).to_have_text(
        TOLD["told"]["foam_spill"].format(**US, least=120, least_needed=54, each=95, eductors=2, wanted="15.0", water=2765, needed=86, percent=3))


def test_a_link_from_before_the_line(handset):
    """A link that knows neither several eductors nor where one stands opens as one at the pump, which it meant."""
    entries = {"task": "hand", "spill_length": "40@US", "spill_width": "30@US", "rate": "0.1", "concentrate": "25@US", "percent": "3", "flow": "125@US",
               "minutes": "10@US", "hose": "attack-1.75", "length": "100@US", "rise": "0@US", "nozzle": "100@US", "inlet": "200@US", "plate": ""}
    sheet = open_sheet(handset, "foam/", "#with=" + quote(json.dumps(entries)))
    sheet.shows("6.7", "min")  # by hand: 25 / 3.75
    expect(sheet.row("eductors")).to_contain_text("1")


def test_offline(browser, built):
    """Installed, with no signal and no host, water and foam pages compute what is entered."""
    handset = Handset(browser, Host(built), worker=True)
    handset.install().close()
    handset.lose_signal()
    sheet = open_sheet(handset, "foam/")
    sheet.type("length", "100")
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
    for name in ("hose", "rise", "length", "minutes"):
        expect(plate).to_contain_text(WATER["example"])  # whether there is a number rests on them, or what is warned of
        expect(picture).to_have_attribute("data-from", "example")
        sheet.open(name)
        sheet.page.get_by_role("button", name=WATER["as_is"], exact=True).tap()
    expect(plate).not_to_contain_text(WATER["example"])
    expect(picture).not_to_have_attribute("data-from", "example")


def test_usual_values_begin_folded(handset):
    """A group of usual values and of what may stay empty is one row with its values; what is entered there stays in sight, and a refusal opens it, also after a reload."""
    sheet = open_sheet(handset, "foam/")
    folds = sheet.page.locator(".entry-fold")
    expect(folds.locator("summary b")).to_have_text(["200 psi", TOLD["option"]["stands"]["pump"]])
    expect(sheet.row("inlet")).to_be_hidden()
    expect(sheet.row("length")).to_be_visible()  # an example is nobody's yet
    sheet.type("inlet", "20")
    sheet.page.reload()
    expect(sheet.row("inlet")).to_be_visible()
    expect(sheet.page.locator("#inlet-refused")).to_be_visible()
    expect(folds.locator("summary b").first).to_have_text("20 psi")
    expect(sheet.row("stands")).to_be_hidden()


def test_on_paper(handset):
    """On paper stand the page's name, clear of the edge of what is an example, and each caution, a folded one too."""
    sheet = open_sheet(handset, "foam/")
    sheet.choose("task", TOLD["option"]["task"]["spill"])
    sheet.type("concentrate", "5")
    sheet.page.locator(".water-plate .warning-stop").wait_for()
    sheet.page.emulate_media(media="print")
    assert sheet.page.evaluate("""() => {
      scrollTo(0, 0);
      const name = document.querySelector("h1").getBoundingClientRect();
      return document.elementFromPoint(name.left + 8, name.top + 2).tagName;
    }""") == "H1"
    expect(sheet.page.locator(".water-plate .warning-caution")).to_be_visible()
