"""Every layout that is ready, and layouts built by touch, with the network off; and again from their shared links."""
import re

import pytest
from playwright.sync_api import expect

from tests.phone.handset import read_in
from tests.phone.layout import open_layout
from tests.phone.words import SITE, said

PSI = SITE["unit"]["US"]["pressure"]
# by hand, C Q^2 L with C 15.5 (1¾), 2 (2½), 0.8 (3 on 2½), 0.08 (5), 0.434 psi a foot, 29.7 d^2 sqrt(P)
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
def offline_layout(away):
    return open_layout(away)


@pytest.mark.parametrize("name", READY)
def test_ready_lay(offline_layout, take, name):
    """One touch layouts it, with its answer worked by hand; its address opens the same on another phone."""
    offline_layout.ready(name)
    offline_layout.shows(READY[name])
    drawn = offline_layout.page.locator(".lay").first.inner_text()
    other = open_layout(take(), offline_layout.link())
    other.shows(READY[name])
    assert other.page.locator(".lay").first.inner_text() == drawn


def test_standpipe_built_by_touch(away):
    """From the opening layout to a standpipe, touch by touch."""
    layout = open_layout(away, "#layout=%7B%7D")  # a link that cannot be read: the page says so and keeps its layout
    layout.ready("one")
    layout.hose("attack-2.5")
    layout.choose("nozzle", SITE["pressure"]["smooth"])
    layout.tip("1-1/8")
    layout.type("length", "150")
    layout.shows(71)  # by hand: 50 + 2 x 7.0645 x 1.5
    layout.build("add_wye")
    layout.press("remove")
    layout.line("S")
    layout.hose("supply-3-on-2.5")
    layout.choose("device", SITE["device"]["standpipe"])
    layout.type("height", "108")
    layout.shows(149)  # 148.72: the nozzle stood level with the joint, and goes up with it
    layout.line("A")
    layout.type("height", "108")
    layout.shows(READY["standpipe"])


def test_tenth_floor_retyped(away):
    """The tenth floor's line reads 108 ft; typing 108 again changes nothing, and the fall picture ends at 108."""
    layout = open_layout(away)
    layout.ready("standpipe")
    layout.line("A")
    expect(layout.field("height")).to_have_value("108")
    layout.type("height", "107")
    layout.shows(148)  # by hand: 148.72 - 0.434
    layout.type("height", "108")
    layout.shows(READY["standpipe"])
    expect(layout.open(SITE["fall"]["title"])).to_contain_text(f"{SITE['fall']['ground']} 108 ft")


def test_a_joint_is_as_high_as_the_line_it_is_put_before(away):
    """A wye before a line on the third floor stands at its height: the pressures are those of a level wye there."""
    layout = open_layout(away)
    layout.ready("one")
    layout.type("height", "24")
    layout.shows(180)  # by hand: 169.75 + 0.434 x 24 = 180.17
    layout.build("add_wye")
    layout.shows(198)  # the ready supply: 100 ft of 2½ with 300 gpm, 2 x 3^2 = 18
    layout.line("S")
    expect(layout.field("height")).to_have_value("24")


def test_a_wye_before_a_wye_has_a_name_of_its_own(layout):
    """A wye put before a wye: seven lines, each by another name, and the number that all of them ask."""
    layout.ready("one")
    layout.build("add_wye")
    layout.line("S")
    layout.build("add_wye")
    names = layout.page.locator("button.lay-line").evaluate_all("(keys) => keys.map((key) => key.dataset.line)")
    assert sorted(names) == ["A", "B", "C", "D", "S", "T", "U"]
    # by hand: 100 + 69.75 + 2 x 3^2 = 187.75 at either wye; 600 gpm through the first: 10 in it and 2 x 6^2 = 72
    layout.shows(270)


def test_master_stream_built_by_touch(away):
    """Two hoses side by side to a master stream device, and back by undoing."""
    layout = open_layout(away)
    layout.ready("one")
    layout.shows(170)
    layout.hose("supply-3-on-2.5")
    layout.choose("nozzle", SITE["pressure"]["smooth"])
    layout.tip("1-1/2")
    layout.choose("runs", "2")
    layout.choose("device", SITE["device"]["master"])
    layout.shows(READY["master"])
    for _ in range(5):
        layout.press("undo")
    layout.shows(170)


def test_a_second_line_into_a_monitor(away):
    """A hose of another length beside the first into one device: each carries its share, a reload keeps it, and the second can be shut."""
    layout = open_layout(away)
    layout.ready("master")
    layout.choose("runs", "1")
    layout.press("add_second")
    layout.type("length", "800")
    # by hand: 597.7 gpm shared 2 to 1 by 200 and 800 ft of one hose, 398 and 199; 0.8 x 3.985^2 x 2 = 25.4 on 80 and 25
    layout.shows(130)
    picture = layout.page.locator("[data-pane=line]")
    expect(picture).to_contain_text("398 gpm")
    expect(picture.locator(".lay-line[data-line=B]")).to_contain_text("199 gpm")
    expect(picture.locator("button.lay-end")).to_have_count(1)
    expect(layout.page.locator(".tab")).to_have_count(3)  # hose, length, more: its height and nozzle are the first's
    layout.open(SITE["now"]["title"])
    picture.locator("button.lay-line[data-line=B]").tap()
    # by hand: of the pump's 130.4 one hose takes 0.8 x Q^2 x 2 and what stands there (105 / 5.977^2) x Q^2: Q = sqrt(130.4 / 4.539) = 5.36
    expect(picture.locator("button.lay-end[data-line=A]")).to_contain_text("536 gpm")
    layout.turn(over=False)
    layout.page.reload()
    layout.shows(130)
    expect(picture).to_contain_text("199 gpm")
    layout.line("A")
    layout.choose("device", SITE["device"]["none"])  # a bare nozzle takes one hose: 0.8 x 5.977^2 x 2 = 57.2 on 80
    layout.shows(137)
    expect(picture.locator("button.lay-line")).to_have_count(1)
    layout.press("undo")
    layout.shows(130)
    layout.line("A")
    layout.press("add_twin")  # of its own hose alone, under both that share an end: their hoses cross none
    expect(picture.locator("button.lay-line")).to_have_count(3)
    assert [key.get_attribute("data-line") for key in picture.locator("button.lay-line").all()] == ["A", "B", "C"]
    # by hand: C alone carries its 597.7 gpm: 57.2 on 80 and 25
    layout.shows(162)


def test_shutting_a_nozzle(away):
    """Shutting one of two nozzles shows what the other had and has; the pump section says what the pump adds."""
    layout = open_layout(away)
    layout.ready("wye")
    layout.shows(READY["wye"])
    now = layout.open(SITE["now"]["title"])
    now.locator("button.lay-end[data-line=B]").tap()
    # by hand: alone it would ask 100 + 52.31 + 2 x 1.5^2 = 156.81 for 150 gpm; at 170.31 it gets x sqrt(170.31 / 156.81)
    row = now.locator("button.lay-end[data-line=A]")
    expect(row).to_have_text(re.compile(r"156 gpm\s*109 psi\D*150"))
    expect(row).to_have_accessible_name(re.compile(r"156 gpm.*109 psi"))
    expect(now.locator("[data-pane=line] .lay-hose[data-line=B] .line-waits, .line-bar")).to_have_count(2)  # thin, with a bar across
    layout.turn(over=False)
    pump = layout.open(SITE["at_pump"]["title"])
    pump.get_by_role("radio", name=SITE["at_pump"]["fed"]).tap()
    # by hand: 170.31 - 50 = 120.31; 300 x 120.31 / 1714 = 21.06
    expect(pump).to_contain_text(said("at_pump", "net", net=120, power=21))


def test_bad_entry_below_the_answer(away):
    """A bad gauge reading is told at its field and named in the plate, and costs the answer nothing."""
    layout = open_layout(away)
    layout.ready("one")
    now = layout.open(SITE["now"]["title"])
    gauge = now.get_by_role("textbox", name=SITE["now"]["gauge"])
    gauge.fill("up")
    expect(now.get_by_text(SITE["refusal"]["not_a_number"])).to_be_visible()
    expect(layout.answer).to_have_text(said("pressure", "waiting", entry=SITE["entry"]["gauge"]))
    assert gauge.input_value() == "up"
    layout.turn(over=False)
    layout.shows(170)
    assert layout.turn().get_by_role("textbox", name=SITE["now"]["gauge"]).input_value() == "up"


def test_deep_lay(take):
    """A layout of six joints behind one another still fits a narrow phone, and every line can be touched."""
    layout = open_layout(take(viewport={"width": 320, "height": 740}))
    for _ in range(6):
        layout.build("add_wye")
    expect(layout.page.locator("button.lay-line")).to_have_count(13)
    assert layout.page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    for key in layout.page.locator("button.lay-line").all():
        key.tap()
        expect(key).to_have_attribute("aria-pressed", "true")


def test_each_line_shows_the_hose_chosen_for_it(layout):
    """Touching from a 2 1/2 in line to a 1 3/4 in line and back, the size of that line is the one marked."""
    layout.ready("wye")
    for name, size in (("S", "2½"), ("A", "1¾"), ("B", "1¾"), ("S", "2½")):
        layout.line(name)
        layout.tab("hose")
        chosen = layout.page.get_by_role("group", name=f"{SITE['pressure']['hose']}, in", exact=True).get_by_role("radio", checked=True)
        expect(chosen).to_have_accessible_name(size)


@pytest.mark.parametrize(("first", "then", "chip"), [("supply-3", "metric-38", "38"), ("supply-4.5", "metric-20", None)])
def test_the_size_that_was_touched_is_marked(layout, first, then, chip):
    """A size in inches leaves the choice of a metric page once another is touched; that one is marked and no other."""
    layout.hose(first)
    read_in(layout.page, "bar")
    layout.hose(then)
    layout.tab("hose")
    sizes = layout.page.get_by_role("group", name=f"{SITE['pressure']['hose']}, mm", exact=True)
    if chip:
        expect(sizes.get_by_role("radio", checked=True)).to_have_accessible_name(chip)
    else:
        expect(sizes.get_by_role("combobox")).to_have_value(then)
    read_in(layout.page, "US")


def test_what_stands_at_a_standpipe_goes_up_with_it(layout):
    """The outlet two floors higher takes the line on its floor along, whatever digits are typed on the way; one on the ground stays."""
    layout.ready("standpipe")
    layout.line("S")
    layout.press("floor_up")
    layout.press("floor_up")
    # by hand: 50 + 2 x 7.0645 x 1.5 + 25 + 0.8 x 7.0645 + 0.434 x 132 = 159.13
    layout.shows(159)
    layout.press("undo")
    layout.shows(149)
    layout.field("height").tap()
    layout.page.keyboard.type("132")
    layout.shows(159)
    layout.line("A")
    expect(layout.field("height")).to_have_value("132")
    layout.type("height", "13")
    layout.line("S")
    layout.field("height").tap()
    layout.page.keyboard.type("1320")  # past 13 on the way: what stands there by itself stays
    layout.line("A")
    expect(layout.field("height")).to_have_value("13")


def test_a_slip_put_right_leaves_the_picture_turned_over(layout):
    """The gauge's typo is typed over in its place: the picture stays as it is and takes every digit."""
    layout.open(SITE["now"]["title"])
    gauge = layout.page.get_by_role("textbox", name=SITE["now"]["gauge"], exact=True)
    for typed in ("12O", "203"):
        gauge.tap()
        layout.page.keyboard.type(typed)
        expect(gauge).to_have_value(typed)
    expect(layout.page.locator(".dock .key-act")).to_have_attribute("aria-pressed", "true")


def test_with_a_line_shut_the_number_says_what_it_is_for(layout):
    """One number is an order at a time: turned over it is the gauge's; with a line shut the order is for all lines open, and says so."""
    layout.ready("wye")
    label = layout.page.locator("#answer-label")
    expect(label).to_have_text(SITE["pressure"]["set"])
    layout.open(SITE["now"]["title"])
    expect(label).to_have_text(SITE["now"]["gauge"])
    layout.page.locator("button.lay-line[data-line=A]").tap()
    expect(layout.page.locator("button.lay-line[data-line=A]")).to_have_accessible_name(SITE["now"]["open_it"].format(line="Line A"))
    layout.turn(over=False)
    expect(label).to_have_text(SITE["pressure"]["set_all_open"])


def test_the_gauge_slides(layout):
    """The pump's gauge as a slider: at a quarter of what one line asks, half the flow, the nozzle's pressure a quarter of its own."""
    now = layout.open(SITE["now"]["title"])
    slide = layout.page.get_by_role("slider", name=SITE["now"]["gauge"])
    slide.fill("40")
    expect(layout.answer).to_have_text(re.compile(r"^\s*40\s+psi\s*$"))
    # by hand: 150 x sqrt(40 / 169.75) = 72.8; 100 x 40 / 169.75 = 23.6
    expect(now.locator("button.lay-end[data-line=A]")).to_have_text(re.compile(r"73 gpm\s*24 psi"))
    layout.page.get_by_role("button", name=said("now", "as_asked", pressure=170)).tap()
    expect(layout.answer).to_have_text(re.compile(r"^\s*170\s+psi\s*$"))
