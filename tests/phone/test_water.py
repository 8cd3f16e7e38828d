"""The water pages answer as worked by hand, warn in place, and forget nothing."""
import re

import pytest
from playwright.sync_api import expect

from site_src.content import catalogue
from tests.phone.handset import kill
from tests.phone.sheet import TOLD, open_sheet
from tests.phone.test_rig import ENGINE, with_engine
from tests.phone.words import SITE


def test_hydrant(handset):
    """Lines flowing, then a pitot: the flow at 20 psi, its class, and the least of the rules for more lines."""
    sheet = open_sheet(handset, "water/hydrant/")
    sheet.shows("683", "gpm")  # by hand: 250 x (45 / 7)^0.54
    expect(sheet.page.get_by_text(TOLD["told"]["hydrant"].format(**{"class": TOLD["text"]["class"]["B"]}, safe=1, test=250, u_flow="gpm"))).to_be_visible()
    expect(sheet.figure("more")).to_contain_text("percentage 2, first digit 2, squaring 1")
    sheet.choose("known", TOLD["option"]["known"]["pitot"])
    sheet.type("residual", "50")
    sheet.shows("1519", "gpm")  # by hand: 839.25 x 3^0.54
    expect(sheet.figure("test")).to_contain_text("29.84 × 0.9 × 2.5² × √25 × 1 = 839.25 gpm")
    expect(sheet.figure("class")).to_contain_text(TOLD["text"]["class"]["AA"])
    expect(sheet.figure("available")).to_contain_text(SITE["basis"]["from memory"])
    sheet.type("residual", "15")
    expect(sheet.warns("residual_below_floor", amount=15, limit=20)).to_be_visible()
    assert not re.search(r"undefined|NaN|\{\w+\}|\[object", sheet.page.locator("main").inner_text())


def test_tank(handset):
    """Minutes by steps and chips."""
    sheet = open_sheet(handset, "water/tank/")
    sheet.shows("4.0", "min")  # by hand: 750 x 0.8 / 150
    sheet.choose("usable", TOLD["option"]["usable"]["100"])
    sheet.shows("5.0", "min")
    sheet.step("tank", "more")
    sheet.shows("5.3", "min")  # by hand: 800 / 150


def test_draft(handset):
    """A lift past the rating leaves less; a gauge that reads too high is told."""
    sheet = open_sheet(handset, "water/draft/")
    sheet.type("lift", "15")
    sheet.shows("875", "gpm")  # by hand: 0.7 x 1250
    sheet.type("vacuum", "20")
    expect(sheet.warns("vacuum_high", amount=20, limit=16)).to_be_visible()  # by hand: (15 + 3.4) / 1.13 = 16.3
    sheet.type("lift", "22")
    expect(sheet.answer).to_have_text(TOLD["told"]["draft_none"].format(lift=22, counted="22.0", practical="22.2", u_lift="ft"))
    sheet.type("lift", "23")
    expect(sheet.answer).to_have_text(TOLD["told"]["draft_beyond"].format(practical="22.2", u_lift="ft"))
    expect(sheet.warns("beyond_practical", amount="23.0", limit="22.2")).to_be_visible()  # two thirds of 33.3 ft


@pytest.mark.parametrize("system", ["SI", "bar"])
def test_water_temperature_in_the_units_chosen(handset, system):
    """A temperature chosen in °F is said in °C once the units are: 80 °F is 26.7 °C by hand; the answer rests on the same water."""
    sheet = open_sheet(handset, "water/draft/")
    sheet.choose("water", "80 °F")
    sheet.system(system)
    expect(sheet.page.get_by_text("27 °C", exact=True).first).to_be_attached()
    expect(sheet.page.get_by_text("80 °F")).to_have_count(0)


def test_draft_past_the_figure(handset):
    """A lift within what is practical that altitude takes past the last figure says what it counts as, and the practical lift here."""
    sheet = open_sheet(handset, "water/draft/")
    for name, text in (("lift", "18"), ("altitude", "5000")):
        sheet.type(name, text)
    sheet.choose("water", "80 °F")
    # standard atmosphere, 27.82 inHg at 2,000 ft and 24.90 at 5,000: 3.3 ft less; two thirds of 27.0 ft less 1.2 of vapour
    expect(sheet.answer).to_have_text(TOLD["told"]["draft_none"].format(lift=18, counted="21.3", practical="18.1", u_lift="ft"))
    expect(sheet.page.locator(".answer-label")).to_have_text(TOLD["page"]["draft"]["label_none"].format(lift=18, u_lift="ft"))
    expect(sheet.warns("no_figure", amount="21.3", limit="20.0")).to_be_visible()


def test_two_engines_in_series(handset):
    """Past what one pumper adds the page says so; with two each shows its pressure, held to what the second intake may see; a slip is refused at its field."""
    sheet = open_sheet(handset, "water/connection/")
    sheet.type("storey", "60")
    sheet.shows("421", "psi")  # by hand: 100 + 25 + 59 x 5 at the connection, 1.25 in the feed
    expect(sheet.warns("in_series", amount=421, limit=250, needed=171)).to_be_visible()
    expect(sheet.row("between")).to_have_count(0)
    sheet.choose("engines", TOLD["option"]["engines"]["two"])
    expect(sheet.figure("series_first")).to_contain_text("0 at its intake + 210.94 it adds = 210.94 psi")  # (421.25 + 0.2 x 2.5^2 x 0.5) / 2
    sheet.type("limit", "200")
    expect(sheet.warns("series_less_first", amount=211, limit=200, needed=222)).to_be_visible()  # 421.25 - 200 + 0.625
    sheet.type("between_length", "fifty")
    expect(sheet.page.locator("#between_length-refused")).to_be_visible()


def test_pumps_by_their_curve(handset):
    """A class says that it is from memory; three points of one's own do not, and a curve that rises is refused at its field."""
    sheet = open_sheet(handset, "water/hoselay/")
    sheet.choose("pump", TOLD["option"]["pump"]["light"])
    expect(sheet.warns("curve_of_class")).to_be_visible()
    expect(sheet.row("gives")).to_have_count(0)
    sheet.choose("pump", TOLD["option"]["pump"]["own"])
    sheet.type("mid", "310")
    expect(sheet.page.locator("#mid-refused")).to_have_text(TOLD["refusal"]["not_below_point"])
    for name, text in (("mid", "225"), ("mid_flow", "30"), ("end_flow", "60"), ("end", "0")):
        sheet.type(name, text)
    sheet.choose("arranged", TOLD["option"]["arranged"]["parallel"])
    expect(sheet.warns("pumps_parallel")).to_be_visible()
    expect(sheet.figure("hoselay_gives_parallel")).to_contain_text("267.7 psi from each of 2, with 19.69 gpm each")  # 3 x 13.125 gpm of a 1/4 in tip at 50 psi; 300 - 19.69^2 / 12 = 267.7


# Of each drawing its frame, and the box of each of its texts.
TEXTS = """drawings => drawings.map(drawing => {
  const { width, height } = drawing.viewBox.baseVal;
  return [[width, height], [...drawing.querySelectorAll("text")].map(text => { const { x, y, width, height } = text.getBBox(); return [x, y, x + width, y + height]; })];
})"""


@pytest.mark.parametrize("width", [360, 320])
@pytest.mark.parametrize("page", ["hydrant", "tank", "relay", "draft", "joint", "connection", "shuttle", "fireflow", "hoselay", "foam"])
def test_texts_of_the_picture(handset, page, width):
    """Each text of a drawing is within its frame and clear of the others; minutes say that they are elapsed, pressures which they are."""
    sheet = open_sheet(handset, "foam/" if page == "foam" else f"water/{page}/")
    sheet.page.set_viewport_size({"width": width, "height": 740})
    if page == "tank":
        sheet.type("tank", "2500")
        sheet.type("flow", "150")
        expect(sheet.page.locator(".picture")).to_contain_text(TOLD["picture"]["after"].format(after="12.5", unit="min"))  # by hand: 1875 / 150
        assert TOLD["picture"]["after"].startswith("after ")
    if page == "relay":
        for name in ("discharge", "intake"):
            expect(sheet.page.locator(".picture")).to_contain_text(TOLD["picture"][name])
    expect(sheet.page.locator(".picture")).to_have_count(2 if page == "shuttle" else 1)
    for frame, boxes in sheet.page.locator(".picture").evaluate_all(TEXTS):
        assert all(x >= 0 and y >= 0 and right <= frame[0] and bottom <= frame[1] + 4 for x, y, right, bottom in boxes), boxes
        for place, one in enumerate(boxes):
            for other in boxes[place + 1:]:
                assert one[2] <= other[0] or other[2] <= one[0] or one[3] <= other[1] + 4 or other[3] <= one[1] + 4, (one, other)  # boxes are higher than their letters


@pytest.mark.parametrize("page", ["hydrant", "tank", "draft", "relay", "joint", "connection", "shuttle", "fireflow", "hoselay", "foam"])
def test_two_screens(shared, page):
    """The whole page is two screens at most; one tray is open at a time, with the number in sight and the tray's keys too."""
    sheet = open_sheet(shared, "foam/" if page == "foam" else f"water/{page}/")
    assert sheet.page.evaluate("() => document.documentElement.scrollHeight") <= 2 * 740
    for fold in sheet.page.locator(".entry-fold summary").all():
        fold.tap()
    rows = sheet.page.locator(".entry-row")
    for place in range(rows.count()):
        rows.nth(place).tap()
        expect(sheet.page.locator(".entry-row[aria-expanded=true]")).to_have_count(1)
        for seen in (sheet.page.locator(".answer-figure"), sheet.page.locator(".entry[data-open]")):
            box = seen.bounding_box()
            assert box["y"] >= 0 and box["y"] + box["height"] <= 741, (place, box)


def test_two_panes(take):
    """On its side a phone has the number beside the entries, in sight while the last of them is changed; a desktop has three panes."""
    phone = take(viewport={"width": 740, "height": 360})
    sheet = open_sheet(phone, "water/hydrant/")
    sheet.open("wanted")
    figure, tray = sheet.page.locator(".answer-figure").bounding_box(), sheet.page.locator(".entry[data-open]").bounding_box()
    assert 0 <= figure["y"] and figure["y"] + figure["height"] <= 360 and figure["x"] + figure["width"] <= tray["x"]
    assert tray["y"] + tray["height"] <= 361
    sheet.page.set_viewport_size({"width": 1280, "height": 800})
    lefts = [sheet.page.locator(part).bounding_box()["x"] for part in (".water-plate", ".entries", "#why")]
    assert lefts == sorted(lefts) and lefts[1] > lefts[0] + 300 and lefts[2] > lefts[1] + 300


def test_relay(handset):
    """Pressure, pumpers and time to fill; a longer way takes one pumper more."""
    sheet = open_sheet(handset, "water/relay/")
    sheet.shows("140", "psi")  # by hand: 8 psi per 100 ft; 3,000 ft in two legs: 20 + 120
    sheet.type("distance", "4500")
    sheet.shows("140", "psi")  # three legs of 120
    expect(sheet.page.get_by_text(TOLD["told"]["relay"].format(pumpers=4, leg=1500, fill=4.6, shut=140, u_length="ft", u_pressure="psi"))).to_be_visible()


def test_two_pumpers(handset):
    """What the second intake gets, and what it must not see."""
    sheet = open_sheet(handset, "water/joint/")
    sheet.shows("129", "psi")  # by hand: 130 - 0.08 x 5^2 x 0.5
    sheet.type("limit", "125")
    expect(sheet.warns("second_intake_over", amount=130, limit=125)).to_be_visible()


def test_shuttle(handset):
    """What three tankers keep up, and what the clock says instead of the distance."""
    sheet = open_sheet(handset, "water/shuttle/")
    sheet.shows("329", "gpm")  # by hand: 3 x 2250 / 20.5
    sheet.choose("way", TOLD["option"]["way"]["timed"])
    sheet.shows("321", "gpm")  # by hand: 3 x 2250 / 21
    sheet.step("tankers", "more")
    sheet.shows("429", "gpm")  # by hand: 4 x 2250 / 21


def test_units_change_what_is_shown(handset):
    """The same entries read in kPa and litres, and come back as typed."""
    sheet = open_sheet(handset, "water/tank/")
    sheet.type("tank", "1000")
    sheet.shows("5.3", "min")  # by hand: 800 / 150
    sheet.system("SI")
    sheet.shows("5.3", "min")
    assert sheet.field("tank").input_value() == "3785"  # 1,000 gal x 3.785412
    sheet.system("US")
    assert sheet.field("tank").input_value() == "1000"


def test_a_hose_of_other_units_carries_its_own(handset):
    """A metric hose that is still chosen among inches is no bare number beside them."""
    sheet = open_sheet(handset, "water/hydrant/")
    sheet.system("SI")
    sheet.choose("hose", "125")
    sheet.system("US")
    sheet.open("hose")
    expect(sheet.page.get_by_role("radio", name="125 mm", exact=True)).to_be_checked()


def test_kept_and_linked(handset, take):
    """A killed page opens as it was left, and its address opens the same on another phone."""
    sheet = open_sheet(handset, "water/tank/")
    sheet.type("flow", "100")
    sheet.shows("6.0", "min")  # by hand: 600 / 100
    assert sheet.page.url == f"{handset.host.origin}water/tank/"
    sheet.page.get_by_role("button", name=TOLD["reckon"]["share"], exact=True).tap()
    expect(sheet.page).to_have_url(re.compile("100%40US"))
    fragment = "#" + sheet.page.url.partition("#")[2]
    kill(sheet.page)
    open_sheet(handset, "water/tank/").shows("6.0", "min")
    open_sheet(take(), "water/tank/", fragment).shows("6.0", "min")
    # the list of the water pages shows the same answer, once the tank is the user's too
    sheet = open_sheet(handset, "water/tank/")
    for text in ("75", "750"):
        sheet.type("tank", text)
    expect(handset.open("water/").locator("[data-page=tank]")).to_contain_text("6.0")


@pytest.mark.parametrize("fragment", ["#with=", "#with=%7B%7D", "#with=null", '#with={"tank":"<img src=x onerror=h()>"}', "#with=" + "x" * 5000])
def test_damaged_link(handset, fragment):
    """A link that cannot be read says so, and the page opens as ever."""
    sheet = open_sheet(handset, "water/tank/", fragment)
    expect(sheet.page.get_by_text(TOLD["reckon"]["damaged_link"])).to_be_visible()
    sheet.shows("4.0", "min")


def test_bad_entry_at_its_field(handset):
    """A bad entry is told at its field, the rest stays, and mending it brings the answer back."""
    sheet = open_sheet(handset, "water/hydrant/")
    sheet.type("residual", "70")
    expect(sheet.refusal("residual")).to_have_text(TOLD["refusal"]["not_below_static"])
    expect(sheet.answer).to_have_text(TOLD["reckon"]["waiting"].format(entry=sheet.label("residual")))
    sheet.type("length", "9999")
    sheet.type("residual", "58")
    expect(sheet.refusal("length")).to_have_text(TOLD["refusal"]["out_of_range"].format(least=0, most=5000))
    sheet.type("length", "100")
    sheet.shows("683", "gpm")


def test_rig_opens_its_own(handset):
    """Beside a rig a page opens on what its profile says, and names it."""
    with_engine(handset)  # 750 gal and 1,500 gpm, of our own invention
    sheet = open_sheet(handset, "water/draft/")
    sheet.shows("1500", "gpm")  # all of the rating at 10 ft
    told = TOLD["reckon"]["rig_named"].format(name=ENGINE["name"], fields=sheet.label("rated"))
    expect(sheet.page.get_by_text(told)).to_be_visible()


@pytest.mark.parametrize(("address", "rule", "is_told"), [
    ("water/relay/", "two_q_squared_plus_q", True), ("foam/", "gpm_times_n", True), ("water/relay/", "square", False),
    ("water/tank/", "two_q_squared_plus_q", False),  # no hose, no friction
])
def test_says_which_friction_rule_it_is_by(take, address, rule, is_told):
    """Where the rig's department has a rule of its own, a page that reckons a hose says that it goes by C Q² L."""
    handset = take()
    with_engine(handset, friction_rule=rule)
    sheet = open_sheet(handset, address)
    told = TOLD["reckon"]["other_rule"].format(rule=catalogue.rule_names()[rule])
    expect(sheet.answer).to_be_visible()
    sheet.page.locator("[data-stale]").wait_for(state="detached")
    expect(sheet.page.get_by_text(told)).to_have_count(int(is_told))


def test_tables_in_the_units_that_are_chosen(handset):
    """The keys to the tables follow the units of the page, and so does the list of pages."""
    sheet = open_sheet(handset, "water/draft/")
    sheet.system("bar")
    link = sheet.page.locator("a[data-table=draft]")
    expect(link).to_have_attribute("href", re.compile("tables/bar/draft/"))
    link.tap()
    expect(sheet.page).to_have_url(re.compile("tables/bar/draft/"))
    expect(handset.open("water/").locator("a[data-table=supply]")).to_have_attribute("href", re.compile("tables/bar/supply/"))


@pytest.mark.parametrize("address", ["water/relay/", "water/hydrant/"])
def test_attack_hose_is_no_supply_hose(handset, address):
    """2 1/2 in that a profile has measured figures of may lie in an attack bed: without supply hose the page opens on its example, and says so."""
    with_engine(handset, hoses=[{**ENGINE["hoses"][0], "hose": "attack-2.5"}], supply=[])
    sheet = open_sheet(handset, address)
    sheet.page.locator("[data-stale]").wait_for(state="detached")
    sheet.open("hose")
    entry = sheet.page.locator(".entry").filter(has=sheet.row("hose"))
    expect(entry).to_have_attribute("data-from", "example")
    expect(entry.get_by_role("radio", name="5", exact=True)).to_be_checked()
