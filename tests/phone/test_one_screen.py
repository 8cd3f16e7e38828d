"""Pressure on one screen: the number, the layout, what is changed and the acts, without scrolling; drawn as thick and long as it is."""
import pytest
from playwright.sync_api import expect

from tests.phone.layout import Layout, open_layout
from tests.phone.test_in_sight import in_sight
from tests.phone.words import SITE, said

LENGTHS = """() => Object.fromEntries([...document.querySelectorAll("[data-pane=line] .lay-hose")].map((hose) => [hose.dataset.line, hose.querySelector(".line-pipe").getTotalLength()]))"""
THICK = """() => Object.fromEntries([...document.querySelectorAll("[data-pane=line] .lay-hose")].map((hose) => [hose.dataset.line, Number(hose.querySelector(".line-pipe").getAttribute("stroke-width"))]))"""


@pytest.mark.parametrize("ready", ["one", "wye"])
def test_all_on_one_screen(layout, ready):
    """One line, and two off a wye, on a phone of 360 x 740: every piece of the drawing, the open entry and the acts, nothing scrolled."""
    layout.ready(ready)
    layout.line("A")
    layout.tab("length")
    layout.page.evaluate("scrollTo(0, 0)")
    for part in (".answer", "button.lay-line", "button.lay-end", "button.lay-pump", ".tab", ".likely .key", "#A-length", ".dock .key"):
        for piece in layout.page.locator(part).all():
            assert in_sight(piece), part
    assert layout.page.evaluate("scrollY") == 0


@pytest.mark.parametrize("running", [0, 1, 2, 3])
def test_number_and_editor_never_overlap(layout, running):
    """Whatever runs elsewhere and stands above the page: the number's plate lies on no entry, on a phone less high."""
    layout.page.set_viewport_size({"width": 360, "height": 680})
    layout.ready("one")
    layout.page.evaluate("""count => {
      const all = ["card", "check", "test"].slice(0, count).map((kind) => [kind, { title: "Into pump, at a scene", address: `shift/${kind}/`, began_at: Date.now() }]);
      localStorage.setItem("running", JSON.stringify(Object.fromEntries(all)));
    }""", running)
    layout.page.reload()
    layout.shows(170)
    expect(layout.page.locator(".strip-line")).to_have_count(running)
    layout.line("A")
    layout.tab("hose")
    layout.page.evaluate("scrollTo(0, 0)")
    expect(layout.page.locator(".tray")).to_be_visible()
    plate, tray = (layout.page.locator(part).bounding_box() for part in (".pressure-plate", ".tray"))
    assert plate["y"] + plate["height"] <= tray["y"]


def test_a_likely_length_is_one_tap(layout):
    """300 ft by its chip; the chip is marked as long as that stands there."""
    layout.ready("one")
    chip = layout.page.get_by_role("button", name="300 ft", exact=True)
    layout.tab("length")
    chip.tap()
    layout.shows(205)  # by hand: 15.5 x 1.5^2 x 3 + 100 = 204.63
    expect(chip).to_have_attribute("aria-pressed", "true")
    layout.step("length", "more")
    expect(chip).to_have_attribute("aria-pressed", "false")


def test_drawn_to_scale(layout):
    """2 1/2 in is thicker than 1 3/4 in, and a longer line is drawn longer."""
    layout.ready("wye")
    layout.line("B")
    layout.type("length", "600")
    expect(layout.page.locator("[data-pane=line] .lay-hose[data-line=B] .line-flows")).to_have_count(1)
    long, thick = layout.page.evaluate(LENGTHS), layout.page.evaluate(THICK)
    assert long["B"] > long["A"] and thick["S"] > thick["A"] == thick["B"]


def test_pressure_stands_where_it_is(layout):
    """At the pump, the wye and the nozzles; by hand 152.31 and 170.31 psi for 150 ft of 1 3/4 in behind 100 ft of 2 1/2 in."""
    layout.ready("wye")
    layout.shows(170)
    expect(layout.page.locator("[data-pane=line] .lay-block")).to_have_text("170")
    expect(layout.page.locator("[data-pane=line] .lay-joint")).to_have_text("152")
    for end in layout.page.locator("button.lay-end").all():
        expect(end).to_contain_text("100 psi")


WRITTEN = """() => [...document.querySelectorAll("[data-pane=line] :is(.lay-label, .lay-note, .lay-joint)")].filter((piece) => piece.textContent.trim()).map((piece) => {
  const range = document.createRange();
  range.selectNodeContents(piece);
  return [piece.textContent.trim(), ...[...range.getClientRects()].reduce(([l, t, r, b], box) => [Math.min(l, box.left), Math.min(t, box.top), Math.max(r, box.right), Math.max(b, box.bottom)], [1e9, 1e9, 0, 0])];
})"""


@pytest.mark.parametrize("wide", [320, 360])
def test_no_figure_lies_over_a_note(layout, wide):
    """A wye uphill of the pump, its hose short: length, height and the pressure at the wye stand apart."""
    layout.page.set_viewport_size({"width": wide, "height": 740})
    layout.ready("wye")
    layout.line("S")
    layout.tab("height")
    layout.type("height", "10")
    expect(layout.page.locator("[data-pane=line] .lay-note").first).to_contain_text("10 ft")
    written = layout.page.evaluate(WRITTEN)
    over = [(one[0], other[0]) for place, one in enumerate(written) for other in written[place + 1:]
            if min(one[3], other[3]) - max(one[1], other[1]) > 1 and min(one[4], other[4]) - max(one[2], other[2]) > 1]
    assert len(written) >= 7 and over == []


def test_the_scale_names_its_limits(layout):
    """The hose's working limit stands on the scale, for eyes and in words: 270 psi, nine tenths of 300."""
    layout.ready("one")
    limit = SITE["pressure"]["limit_hose"].format(text="270")
    expect(layout.page.locator(".scale text", has_text=limit)).to_be_visible()
    expect(layout.page.locator(".pressure-plate .scale")).to_have_accessible_name(said("pressure", "scale", end=300) + ". " + limit)


def test_undo_has_its_place(handset):
    """Undo is there before there is anything to undo, dim, and stays where it is."""
    layout = open_layout(handset)
    undo = layout.page.get_by_role("button", name=SITE["pressure"]["undo"], exact=True)
    expect(undo).to_be_disabled()
    before = undo.bounding_box()
    layout.build("add_wye")
    expect(undo).to_be_enabled()
    assert undo.bounding_box() == before


def test_an_example_is_hatched(handset):
    """Opening figures that nobody entered stand under a hatched edge and say EXAMPLE, until something is entered."""
    layout = open_layout(handset)
    plate = layout.page.locator(".answer")
    expect(plate).to_have_class("answer plate pressure-plate hatched")
    expect(plate).to_contain_text(SITE["pressure"]["example"])
    layout.type("length", "150")
    expect(plate).not_to_contain_text(SITE["pressure"]["example"])


def test_the_sum_opens_every_figure(layout):
    """A tap on what the number is made of opens the figures with their workings."""
    layout.ready("one")
    layout.page.locator(".plate-sum").tap()
    expect(layout.page.get_by_text(said("pressure", "field_friction"), exact=True)).to_be_in_viewport()


@pytest.mark.parametrize("count", [12, 30])
def test_many_lines(handset, count):
    """Twelve lines and thirty nozzles: each is drawn, each can be touched, and the number stays in sight."""
    layout = open_layout(handset)
    for _ in range(count - 1):
        layout.build("add_line")
    keys = layout.page.locator("button.lay-line")
    expect(keys).to_have_count(min(count, layout.page.evaluate("fetch('page.json').then((file) => file.json()).then(({ bounds }) => bounds.lines)")))
    for key in (keys.first, keys.last):
        key.tap()
        expect(key).to_have_attribute("aria-pressed", "true")
        assert in_sight(layout.answer.locator("b"))


@pytest.mark.parametrize(("way", "psi"), [
    (("a[href*='pressure/']", "button[aria-label='300 ft']"), 205),  # another length: 15.5 x 1.5^2 x 3 + 100 = 204.63
    (("a[href*='pressure/']", ".dock .key >> nth=1"), 188),          # a wye of two: 169.75 + 2 x 3^2 x 1 = 187.75
], ids=["another length", "a wye of two"])
def test_two_taps_from_the_start(handset, way, psi):
    """From the start page to another length, or to a second line off a wye, in two taps."""
    page = handset.open("")
    for tapped in way:
        page.locator(tapped).first.tap()
    Layout(page).shows(psi)


def test_a_wye_alone_can_be_removed(layout):
    """Its two lines start at the pump then: by hand 15.5 x 1.5^2 x 1.5 + 100 = 152.31, without the 18 of its supply hose."""
    layout.ready("wye")
    layout.shows(170)
    layout.line("S")
    layout.press("unjoin")
    layout.shows(152)
    expect(layout.page.locator("button.lay-line")).to_have_count(2)
    layout.press("undo")
    layout.shows(170)


def test_what_flows_now_says_what_to_tap(layout):
    """Turned over, the page says that a tap shuts a nozzle, and the workings of what is required stand no more below."""
    layout.ready("wye")
    expect(layout.page.locator("[data-part=workings]")).to_have_count(1)
    layout.turn()
    layout.page.evaluate("scrollTo(0, 0)")
    expect(layout.page.get_by_text(SITE["now"]["tap"])).to_be_in_viewport()
    expect(layout.page.locator("[data-part=workings]")).to_have_count(0)
    layout.turn(over=False)


def test_three_panes(take):
    """At 1280 px: the plate with its picture, the tray, and the workings with the pump, side by side and open."""
    layout = open_layout(take(viewport={"width": 1280, "height": 800}, is_mobile=False))
    layout.ready("one")
    layout.shows(170)
    left = [layout.page.locator(f"[data-pane={name}]").bounding_box()["x"] for name in ("line", "tray", "work")]
    assert left[0] < left[1] < left[2] and left[2] > 800
    for part in ("workings", "at_pump", "bounds"):
        expect(layout.page.locator(f"[data-part={part}]")).to_have_attribute("open", "")
    expect(layout.page.locator("[data-part=workings] b").first).to_be_attached()
