"""The power path and practice by touch, with the network off and the host gone; time is the test's own."""
import re

import pytest
from playwright.sync_api import expect

from calc.teaching import powertrain
from site_src.content import data
from tests.phone.card import RIG, beside, steps_of
from tests.phone.handset import Handset, Host
from tests.phone.words import PRACTICE, SITE, STEPS

WHY = data.words("why")
NOTE = data.words("practice")["note"]
LOG = """() => new Promise((told) => {
  const opening = indexedDB.open("panelhand");
  opening.onsuccess = () => {
    const asked = opening.result.transaction("log").objectStore("log").getAll();
    asked.onsuccess = () => told(asked.result);
  };
})"""


@pytest.fixture(scope="module")
def away(browser, built):
    """A phone that installed the site and has then lost every way to it."""
    handset = Handset(browser, Host(built), worker=True)
    handset.install().close()
    handset.lose_signal()
    yield handset
    handset.close()


class Rig:
    """The made-up rig of a page whose clock is the test's."""

    def __init__(self, handset, address):
        self.page = handset.context.new_page()
        self.page.clock.install()
        self.page.goto(handset.host.origin + address)

    def choose(self, legend, name):
        self.page.get_by_role("group", name=legend, exact=True).get_by_role("radio", name=name, exact=True).tap()

    def press(self, key):
        self.page.get_by_role("button", name=PRACTICE[key], exact=True).tap()

    def start(self, task="to_pump", fault=None, see="path"):
        self.choose(PRACTICE["task"], PRACTICE[f"task_{task}"])
        self.choose(PRACTICE["see"], PRACTICE[f"see_{see}"])
        if fault:
            self.page.get_by_role("combobox").select_option(fault)
        self.press("start")

    def move(self, legend, name):
        """Touch one of a control's keys. Nothing is waited for: the rig's time runs on meanwhile."""
        self.page.get_by_role("group", name=PRACTICE[legend], exact=True).get_by_role("button", name=name, exact=True).tap()

    def turn(self, legend, name):
        """Touch a control that goes from one place to another, until it says that it is there."""
        key = self.page.get_by_role("button", name=re.compile("^" + re.escape(PRACTICE[legend])))
        if PRACTICE[name] not in key.inner_text():
            key.tap()
        expect(key).to_contain_text(PRACTICE[name])

    def select(self, place):
        self.move("selector", WHY["power"][f"at_{place}"])

    def gear(self, name):
        self.move("transmission", PRACTICE[name])

    def throttle(self, name):
        self.turn("throttle", name)

    def hold(self):
        """From now on only the seconds of `wait` pass."""
        self.page.clock.pause_at(self.page.evaluate("Date.now()") + 60_000)

    def wait(self, seconds):
        self.page.clock.run_for(seconds * 1000)

    def drawing(self):
        return self.page.get_by_role("img")

    def name(self, proof):
        """The proof that contradicts, asked before a stop counts."""
        words = data.words("practice")["proof"]
        expect(self.page.get_by_role("heading", name=words["ask"])).to_be_visible()
        self.page.get_by_role("button", name=words[proof], exact=True).tap()

    def ends(self, how, outcome, proof="unsure"):
        """End the run, and see its verdict; gives what stands in it. A stop names its proof."""
        self.press(how)
        if how == "stop":
            self.name(proof)
        expect(self.page.get_by_role("heading", level=2)).to_have_text(PRACTICE[f"outcome_{outcome}"])
        expect(self.page.get_by_text(PRACTICE["kept"])).to_be_visible()
        return self.page.get_by_role("main").inner_text()


def open_practice(away):
    rig = Rig(away, "practice/")
    expect(rig.page.get_by_text(PRACTICE["banner"], exact=True)).to_be_visible()
    return rig


def test_a_shut_tank_valve_is_found_and_opened(away):
    """No pressure at idle with everything else right: tank-to-pump, looked at, says Shut; opened, the gauge comes up and the run is finished."""
    rig = open_practice(away)
    rig.hold()
    rig.start(fault="tank_shut", see="seen")
    rig.select("centre")
    rig.wait(2)
    rig.select("pump")
    rig.wait(2)
    rig.gear("drive")
    rig.wait(3)
    key = rig.page.get_by_role("button", name=re.compile("^" + PRACTICE["tank"]))
    expect(key).to_contain_text(PRACTICE["look"])
    key.tap()
    expect(key).to_contain_text(PRACTICE["shut"])
    gauge = rig.page.locator(".bench-gauge").filter(has_text=PRACTICE["gauge_pressure"])
    none = re.compile(r"^0 ")
    expect(gauge.locator("b")).to_have_text(none)
    key.tap()
    rig.wait(1)
    expect(gauge.locator("b")).not_to_have_text(none)
    rig.turn("fill", "open")
    rig.turn("throttle", "raised")
    rig.wait(3)
    told = rig.ends("finished", "cured")
    rig.page.clock.resume()
    assert PRACTICE["told_tank_shut"] in told


def test_run_with_a_clash(away):
    """Back to road without waiting for the shaft: the teeth grind, it is said why, and the run is in the log."""
    rig = open_practice(away)
    rig.hold()  # a slow phone's own seconds would let the shaft run down
    rig.start("to_road")
    rig.throttle("idle")
    rig.wait(3)
    rig.gear("neutral")
    rig.select("centre")
    rig.wait(1.5)
    rig.select("road")
    rig.wait(1.3)
    expect(rig.drawing()).to_have_accessible_name(re.compile(re.escape(WHY["power"]["grinds"])))
    rig.wait(3)
    told = rig.ends("finished", "harm")
    rig.page.clock.resume()
    assert NOTE["turning"] in told and NOTE["clash"] in told and NOTE["above_idle"] not in told
    expect(rig.page.get_by_text(PRACTICE["banner"], exact=True)).to_be_visible()
    record = rig.page.evaluate(LOG)[-1]
    assert (record["kind"], record["outcome"], record["who"], record["notes"]) == ("practice", PRACTICE["outcome_harm"], "", "")
    assert {"id", "title", "rig", "began_at", "ended_at"} <= set(record)
    assert [entry["code"] for entry in record["entries"]][:3] == ["neutral", "turning", "clash"]
    took = SITE["lasted"]["seconds"].format(s=int(record["took_s"]))
    assert PRACTICE["took"].format(time=took) in told
    log = away.open("log/")
    expect(log.locator(".run-facts").first).to_contain_text(f" {took} ")  # said alike in both places
    log.close()
    rig.page.close()


def test_the_drawing_speaks_french(take):
    """What stands in the drawing comes from the words of the page's language, the unit of engine speed too."""
    page = take(locale="fr-CA").open("fr/why/")
    expect(page.get_by_role("img").get_by_text("tr/min")).to_be_visible()


def test_run_without_a_clash(away):
    """Into pump in the right order is confirmed act by act, and lights all three lamps."""
    rig = open_practice(away)
    rig.start("to_pump")
    rig.select("centre")
    rig.wait(2.5)
    rig.select("pump")
    rig.wait(2)
    expect(rig.drawing()).to_have_accessible_name(re.compile(re.escape(WHY["power"]["joined_pump"])))
    rig.gear("drive")
    rig.wait(2)
    rig.turn("fill", "open")
    rig.throttle("raised")
    rig.wait(3)
    expect(rig.drawing().get_by_text(WHY["power"]["lamp_is_on"], exact=True)).to_have_count(3)
    told = rig.ends("finished", "good")
    for code in ("sound_move", "home_pump", "gear_taken", "water_moved", "throttle_answered"):
        assert NOTE[code] in told
    assert PRACTICE["harm"] not in told
    rig.page.close()


def test_planted_fault_and_runaway(away):
    """With the switch stuck every lamp says pump and the rig drives off; stopped in time, a dead shift is found."""
    rig = open_practice(away)
    rig.start("to_pump", "switch_closed")
    rig.gear("drive")
    rig.wait(1)
    rig.throttle("raised")
    rig.wait(3)
    expect(rig.page.get_by_text(PRACTICE["runaway"])).to_be_visible()
    told = rig.ends("stop", "harm")
    assert NOTE["runaway"] in told and PRACTICE["told_switch_closed"] in told
    rig.press("again")
    rig.start("to_pump", "no_air")
    rig.select("centre")
    rig.wait(2)
    assert PRACTICE["told_no_air"] in rig.ends("stop", "found", "air")
    rig.press("again")
    rig.start("to_pump", "no_air")
    rig.select("centre")
    rig.wait(2)
    told = rig.ends("stop", "luck", "speed")  # stopped, and not by what was wrong: it is said what was
    proofs = data.words("practice")["proof"]
    assert proofs["wrong"].format(proof=proofs["speed"], proofs=", ".join(proofs[each] for each in ("air", "clunk", "engaged"))) in told
    rig.page.close()


SOUND = data.words("practice")["sound"]


def test_a_planted_fault_is_found_by_what_is_seen_and_heard(away):
    """Without the drawing there are lamps, gauges and sounds: a sound rig speaks, one without air stays silent and no lamp lights."""
    rig = open_practice(away)
    heard = rig.page.locator(".bench-heard li")
    lit = rig.page.locator('.bench-seen .lamp[data-state="lit"]')
    rig.start(see="seen")
    expect(rig.drawing()).to_have_count(0)
    rig.select("centre")
    expect(heard.first).to_have_text(SOUND["exhaust"])
    rig.wait(2.5)
    rig.select("pump")
    rig.wait(2)
    expect(heard.first).to_have_text(SOUND["clunk_pump"])
    expect(lit).to_contain_text([WHY["power"]["lamp_engaged"], WHY["power"]["lamp_throttle"]])
    assert WHY["power"]["joined_pump"] not in rig.page.get_by_role("main").inner_text()
    rig.ends("stop", "unneeded")
    rig.press("again")
    rig.start(fault="selector_stuck", see="seen")
    rig.select("centre")
    rig.wait(2.5)
    expect(heard).to_have_count(0)
    expect(lit).to_contain_text([WHY["power"]["lamp_throttle"]])
    rig.ends("stop", "found", "air")
    rig.page.close()


def test_power_path_plays(away):
    """The drawing follows the hand and says what each act did."""
    rig = Rig(away, "why/")
    expect(rig.drawing()).to_have_accessible_name(re.compile(re.escape(WHY["power"]["joined_road"])))
    rig.gear("drive")
    expect(rig.page.get_by_role("status").get_by_text(NOTE["strain"])).to_be_visible()
    expect(rig.drawing()).to_have_accessible_name(re.compile(re.escape(WHY["power"]["strains"])))
    rig.page.close()


def test_card_shows_its_step(away):
    """What turns stands under every step: the state before it, what is expected after it, and whether that was seen in this run."""
    power = WHY["power"]
    beside(away, **RIG)
    steps = steps_of("road")
    page = away.open("shift/road/")
    page.get_by_role("heading", level=2, name=STEPS[steps[0]]["act"]).wait_for()
    line = page.locator(".power-line")
    expect(line).to_have_accessible_name(re.compile(re.escape(power["as_begun"]) + ".*" + re.escape(power["joined_pump"])))
    expect(line).to_be_in_viewport(ratio=1)
    page.wait_for_timeout(450)
    page.get_by_role("button", name=SITE["shift"]["seen"], exact=True).tap()
    expect(page.get_by_role("heading", level=2)).to_have_text(STEPS["throttle_down"]["act"])
    expect(line).to_have_accessible_name(re.compile(re.escape(power["expected"])))
    expect(line.get_by_text(f"→ {power['line_engine_idle']}", exact=True)).to_be_visible()
    page.wait_for_timeout(450)
    page.get_by_role("button", name=SITE["shift"]["seen"], exact=True).tap()
    expect(line.get_by_text(power["line_engine_idle"], exact=True)).to_be_visible()
    expect(line).to_have_accessible_name(re.compile("^" + re.escape(power["as_seen"])))
    page.evaluate("localStorage.removeItem('rig')")
    page.close()


def test_every_fault_has_its_words():
    """Each fault that can be planted has its name and what it teaches."""
    for fault in powertrain.FAULT_CODES:
        assert PRACTICE[f"fault_{fault}"] and PRACTICE[f"told_{fault}"]


def test_practice_on_paper_says_that_it_is_practice(handset):
    """Its word stands in ink on white, and no control is printed."""
    page = handset.open("practice/")
    page.get_by_role("button", name=PRACTICE["start"], exact=True).tap()
    expect(page.locator(".bench-seen")).to_be_visible()
    page.emulate_media(media="print")
    expect(page.locator(".practice-banner b")).to_have_css("color", page.evaluate("getComputedStyle(document.body).color"))
    expect(page.locator(".bench-dock")).to_be_hidden()
    page.close()
