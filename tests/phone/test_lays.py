"""Every lay that is ready, and lays built by touch, with the network off; and again from their shared links."""
import json
import re
from urllib.parse import quote

import pytest
from playwright.sync_api import expect

from tests.phone.lay import open_lay
from tests.phone.words import SITE, said

PSI = SITE["unit"]["US"]["pressure"]
# by hand, C Q^2 L with C 15.5 (1 3/4), 2 (2 1/2), 0.8 (3 on 2 1/2), 0.08 (5), 0.434 psi a foot, 29.7 d^2 sqrt(P)
READY = {
    "one": 170,        # 15.5 x 1.5^2 x 2 + 100 = 169.75
    "wye": 170,        # 15.5 x 1.5^2 x 1.5 + 100 = 152.31; 2 x 3^2 = 18; 300 gpm is under 350
    "blitz": 78,       # 265.79 gpm: 2 x 2.6579^2 x 2 + 50 = 78.26
    "master": 119,     # 597.70 gpm in two: 0.8 x 2.9885^2 x 2 = 14.29; 80 + 25
    "standpipe": 149,  # 50 + 2 x 7.0645 x 1.5 + 25 + 0.8 x 7.0645 + 0.434 x 108 = 148.72
    "sprinkler": 155,  # 0.8 x 2.5^2 + 150
    "supply": 60,      # 0.08 x 10^2 x 5 + 20
    "relay": 100,      # 0.08 x 10^2 x 10 + 20
    "draft": 170,      # line A as "one"; line B 2 x 2.5^2 x 2 + 100 = 125
}


@pytest.fixture(scope="module")
def offline_lay(away):
    return open_lay(away)


@pytest.mark.parametrize("name", READY)
def test_ready_lay(offline_lay, take, name):
    """One touch lays it, with its answer worked by hand; its address opens the same on another phone."""
    offline_lay.ready(name)
    offline_lay.shows(READY[name])
    drawn = offline_lay.page.locator(".map").inner_text()
    other = open_lay(take(), offline_lay.link())
    other.shows(READY[name])
    assert other.page.locator(".map").inner_text() == drawn


def test_standpipe_built_by_touch(away):
    """From the opening lay to a standpipe, touch by touch."""
    lay = open_lay(away, "#lay=%7B%7D")  # a link that cannot be read: the page says so and keeps its lay
    lay.ready("one")
    lay.hose("attack-2.5")
    lay.choose("nozzle", SITE["pressure"]["smooth"])
    lay.tip("1-1/8")
    lay.type("length", "150")
    lay.shows(71)  # by hand: 50 + 2 x 7.0645 x 1.5
    lay.build("add_wye")
    lay.press("remove")
    lay.line("S")
    lay.hose("supply-3-on-2.5")
    lay.choose("device", SITE["device"]["standpipe"])
    lay.type("height", "108")
    lay.shows(149)  # 148.72: the nozzle stood level with the joint, and goes up with it
    lay.line("A")
    lay.type("height", "108")
    lay.shows(READY["standpipe"])


def test_tenth_floor_retyped(away):
    """The tenth floor's line reads 108 ft; typing 108 again changes nothing, and the fall picture ends at 108."""
    lay = open_lay(away)
    lay.ready("standpipe")
    lay.line("A")
    expect(lay.field("height")).to_have_value("108")
    lay.type("height", "107")
    lay.shows(148)  # by hand: 148.72 - 0.434
    lay.type("height", "108")
    lay.shows(READY["standpipe"])
    expect(lay.open(SITE["fall"]["title"])).to_contain_text(f"{SITE['fall']['ground']} 108 ft")


def test_a_joint_is_as_high_as_the_line_it_is_put_before(away):
    """A wye before a line on the third floor stands at its height: the pressures are those of a level wye there."""
    lay = open_lay(away)
    lay.ready("one")
    lay.type("height", "24")
    lay.shows(180)  # by hand: 169.75 + 0.434 x 24 = 180.17
    lay.build("add_wye")
    lay.shows(198)  # the ready supply: 100 ft of 2 1/2 with 300 gpm, 2 x 3^2 = 18
    lay.line("S")
    expect(lay.field("height")).to_have_value("24")


OLD_STANDPIPE = {"crew": "2", "lines": [{
    "id": "S", "hose": "supply-3-on-2.5", "length": "100@US", "rise": "30@SI", "runs": "1", "device": "standpipe", "loss": "",
    "end": {"lines": [{"id": "A", "hose": "attack-2.5", "length": "150@US", "rise": "10@US", "runs": "1", "device": "none", "loss": "",
                       "end": {"kind": "smooth", "flow": "150@US", "tip": "1.125@US", "pressure": "50@US"}}]}}]}
KEEP = """lay => new Promise((done) => {
  const opening = indexedDB.open("panelhand");
  opening.onsuccess = () => {
    const writing = opening.result.transaction("drafts", "readwrite");
    writing.objectStore("drafts").put(lay, "pressure");
    writing.oncomplete = () => { opening.result.close(); done(); };
  };
})"""


@pytest.mark.parametrize("way", ["link", "kept"])
def test_layout_of_the_old_kind(take, way):
    """An old link or kept layout, heights above the joint before and in two systems, opens right and is saved the new way."""
    phone = take()
    if way == "link":
        lay = open_lay(phone, "#lay=" + quote(json.dumps(OLD_STANDPIPE)))
    else:
        lay = open_lay(phone)
        lay.page.evaluate(KEEP, OLD_STANDPIPE)
        lay.page.close()
        lay = open_lay(phone)
    # by hand: 30 m are 98.4252 ft, and 10 more; 50 + 2 x 7.0645 x 1.5 + 25 + 0.8 x 7.0645 + 0.434 x 108.4252 = 148.90
    lay.shows(149)
    lay.line("A")
    expect(lay.field("height")).to_have_value("108.42519685")
    lay.line("S")
    expect(lay.field("height")).to_have_value("98")
    again = open_lay(phone)
    again.shows(149)
    again.line("A")
    expect(again.field("height")).to_have_value("108.42519685")


def test_layout_of_the_old_kind_survives_a_start_that_was_cut_short(take):
    """Opened where the calculator did not come, it shows dashes and no elevation, and the next start still has it right."""
    phone = take()
    first = open_lay(phone)
    first.page.evaluate(KEEP, OLD_STANDPIPE)
    first.page.close()
    page = phone.context.new_page()
    page.route("**/micropython.wasm", lambda route: None)  # never answered
    page.goto(phone.host.origin + "pressure/")
    expect(page.locator(".answer-figure")).to_have_text(re.compile(r"^[\s–]+$"))
    expect(page.locator("main")).not_to_contain_text("elev.")
    page.close()
    again = open_lay(phone)
    again.shows(149)
    again.line("A")
    expect(again.field("height")).to_have_value("108.42519685")


def test_master_stream_built_by_touch(away):
    """Two hoses side by side to a master stream device, and back by undoing."""
    lay = open_lay(away)
    lay.ready("one")
    lay.shows(170)
    lay.hose("supply-3-on-2.5")
    lay.choose("nozzle", SITE["pressure"]["smooth"])
    lay.tip("1-1/2")
    lay.open(SITE["pressure"]["more_of_it"])
    lay.choose("runs", "2")
    lay.choose("device", SITE["device"]["master"])
    lay.shows(READY["master"])
    for _ in range(5):
        lay.press("undo")
    lay.shows(170)


def test_shutting_a_nozzle(away):
    """Shutting one of two nozzles shows what the other had and has; the pump section says what the pump adds."""
    lay = open_lay(away)
    lay.ready("wye")
    lay.shows(READY["wye"])
    now = lay.open(SITE["now"]["title"])
    now.get_by_role("button", name=said("now", "shut_it", line=said("pressure", "line", id="B"))).tap()
    # by hand: alone it would ask 100 + 52.31 + 2 x 1.5^2 = 156.81 for 150 gpm; at 170.31 it gets x sqrt(170.31 / 156.81)
    row = now.get_by_role("listitem").filter(has_text=said("pressure", "line", id="A"))
    expect(row).to_contain_text(re.compile(r"156 gpm\s*109 psi\D*150 gpm\s*100 psi"))
    pump = lay.open(SITE["at_pump"]["title"])
    pump.get_by_role("radio", name=SITE["at_pump"]["fed"]).tap()
    # by hand: 170.31 - 50 = 120.31; 300 x 120.31 / 1714 = 21.06
    expect(pump).to_contain_text(said("at_pump", "net", net=120, power=21))


def test_bad_entry_below_the_answer(away):
    """A bad gauge reading is told at its field and costs the answer nothing."""
    lay = open_lay(away)
    lay.ready("one")
    now = lay.open(SITE["now"]["title"])
    gauge = now.get_by_role("textbox", name=SITE["now"]["gauge"])
    gauge.fill("up")
    expect(now.get_by_text(SITE["refusal"]["not_a_number"])).to_be_visible()
    lay.shows(170)
    assert gauge.input_value() == "up"


def test_deep_lay(take):
    """A lay of six joints behind one another still fits a narrow phone, and every line can be touched."""
    lay = open_lay(take(viewport={"width": 320, "height": 740}))
    for _ in range(6):
        lay.build("add_wye")
    assert lay.page.locator(".map-key").count() == 13
    assert lay.page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    for key in lay.page.locator(".map-key").all():
        key.tap()
        expect(key).to_have_attribute("aria-pressed", "true")


def test_each_line_shows_the_hose_chosen_for_it(lay):
    """Touching from a 2 1/2 in line to a 1 3/4 in line and back, the size of that line is the one marked."""
    lay.ready("wye")
    for name, size in (("S", "2 1/2"), ("A", "1 3/4"), ("B", "1 3/4"), ("S", "2 1/2")):
        lay.line(name)
        chosen = lay.page.get_by_role("group", name=f"{SITE['pressure']['hose']}, in", exact=True).get_by_role("radio", checked=True)
        expect(chosen).to_have_accessible_name(size)


@pytest.mark.parametrize(("first", "then", "chip"), [("supply-3", "metric-38", "38"), ("supply-4.5", "metric-20", None)])
def test_the_size_that_was_touched_is_marked(lay, first, then, chip):
    """A size in inches leaves the choice of a metric page once another is touched; that one is marked and no other."""
    lay.hose(first)
    lay.choose_in(SITE["units"]["title"], SITE["units"]["bar"])
    lay.hose(then)
    sizes = lay.page.get_by_role("group", name=f"{SITE['pressure']['hose']}, mm", exact=True)
    if chip:
        expect(sizes.get_by_role("radio", checked=True)).to_have_accessible_name(chip)
    else:
        expect(sizes.get_by_role("combobox")).to_have_value(then)
    lay.choose_in(SITE["units"]["title"], SITE["units"]["US"])


def test_what_stands_at_a_standpipe_goes_up_with_it(lay):
    """The outlet two floors higher takes the line on its floor along, whatever digits are typed on the way; one on the ground stays."""
    lay.ready("standpipe")
    lay.line("S")
    lay.press("floor_up")
    lay.press("floor_up")
    # by hand: 50 + 2 x 7.0645 x 1.5 + 25 + 0.8 x 7.0645 + 0.434 x 132 = 159.13
    lay.shows(159)
    lay.build("undo")
    lay.shows(149)
    lay.field("height").tap()
    lay.page.keyboard.type("132")
    lay.shows(159)
    lay.line("A")
    expect(lay.field("height")).to_have_value("132")
    lay.type("height", "13")
    lay.line("S")
    lay.field("height").tap()
    lay.page.keyboard.type("1320")  # past 13 on the way: what stands there by itself stays
    lay.line("A")
    expect(lay.field("height")).to_have_value("13")


def test_a_slip_put_right_in_an_unfolded_part_keeps_it_open(lay):
    """The gauge's typo is typed over in its place: the part stays unfolded and takes every digit."""
    part = lay.open(SITE["now"]["title"])
    gauge = lay.page.get_by_role("textbox", name=SITE["now"]["gauge"], exact=True)
    for typed in ("12O", "203"):
        gauge.tap()
        lay.page.keyboard.type(typed)
        expect(gauge).to_have_value(typed)
    expect(part).to_have_attribute("open", "")


def test_with_a_line_shut_the_number_says_what_it_is_for(lay):
    """One number is an order at a time: with a line shut the great one is for all lines open, and says so."""
    lay.ready("wye")
    expect(lay.page.locator("#answer-label")).to_have_text(SITE["pressure"]["set"])
    lay.open(SITE["now"]["title"])
    lay.page.get_by_role("button", name=SITE["now"]["shut_it"].format(line="Line A"), exact=True).tap()
    expect(lay.page.locator("#answer-label")).to_have_text(SITE["pressure"]["set_all_open"])
