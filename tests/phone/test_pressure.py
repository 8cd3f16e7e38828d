"""The Pressure page answers as worked by hand, shows its workings, and forgets nothing."""
import re

import pytest
from playwright.sync_api import expect

from tests.phone.handset import kill
from tests.phone.layout import fresh_layout, open_layout
from tests.phone.words import SITE, said

PSI = SITE["unit"]["US"]["pressure"]


def test_opening_lay(handset):
    """The page opens on an answer, and the engine comes to the same one."""
    fresh_layout(handset)  # by hand: 15.5 x 1.5^2 x 2 + 100 = 169.75


@pytest.mark.parametrize(
    ("act", "given", "psi"),
    [
        # by hand: C (Q/100)^2 (L/100) + nozzle + 0.434 rise, from 200 ft of 1 3/4 in (C 15.5) at 150 gpm and 100 psi
        ("step", ("flow", "more"), 174),      # 15.5 x 1.55^2 x 2 + 100 = 174.48
        ("step", ("flow", "less"), 165),      # 15.5 x 1.45^2 x 2 + 100 = 165.18
        ("step", ("length", "more"), 187),    # 15.5 x 2.25 x 2.5 + 100 = 187.19
        ("step", ("length", "less"), 152),    # 15.5 x 2.25 x 1.5 + 100 = 152.31
        ("step", ("pressure", "more"), 175),  # 69.75 + 105 = 174.75
        ("step", ("pressure", "less"), 165),  # 69.75 + 95 = 164.75
        ("step", ("height", "more"), 174),      # 169.75 + 4.34 = 174.09
        ("step", ("height", "less"), 165),      # 169.75 - 4.34 = 165.41
        ("type", ("length", "75,5"), 126),    # 34.875 x 0.755 + 100 = 126.33
        ("type", ("flow", "95.5"), 128),      # 15.5 x 0.955^2 x 2 + 100 = 128.27
        ("hose", ("attack-2",), 136),         # 8 x 2.25 x 2 + 100 = 136
        ("hose", ("attack-2.5",), 109),       # 2 x 2.25 x 2 + 100 = 109
        ("hose", ("booster-1",), 775),        # 150 x 2.25 x 2 + 100 = 775, chosen from the list
    ],
)
def test_each_control_changes_the_answer(layout, act, given, psi):
    """One touch or entry, and the answer is the hand-worked one."""
    getattr(layout, act)(*given)
    layout.shows(psi)


@pytest.mark.parametrize(
    ("tip", "psi"),
    [
        # by hand: flow 29.7 d^2 sqrt(50), friction 15.5 (Q/100)^2 x 2 on 200 ft, and 50 at the tip
        ("15/16", 156),  # 184.58 gpm; 31 x 3.40696 = 105.62; 155.62
        ("7/8", 130),    # 160.79 gpm; 31 x 2.58534 = 80.15; 130.15
        ("5/8", 71),     # 82.03 gpm; 31 x 0.67297 = 20.86; 70.86; from the list
    ],
)
def test_smooth_bore(layout, tip, psi):
    """A smooth-bore tip at 50 psi draws its own flow, and the answer follows."""
    layout.choose("nozzle", SITE["pressure"]["smooth"])
    layout.tip(tip)
    assert layout.field("pressure").input_value() == "50"
    layout.shows(psi)


def test_held_key_repeats(layout):
    """A key held down goes on counting, and the release is not one more step."""
    layout.tab("length")
    key = layout.page.get_by_role("button", name=said("pressure", "more", what=SITE["pressure"]["length"]), exact=True)
    key.dispatch_event("pointerdown")
    expect(layout.field("length")).not_to_have_value("200")
    key.dispatch_event("pointerup")
    held = int(layout.field("length").input_value())
    assert held > 200 and held % 50 == 0  # whole steps of 50
    key.dispatch_event("click")
    layout.shows(re.compile(r"\d+").pattern)  # the answer is in: nothing more comes of the release
    assert layout.field("length").input_value() == str(held)
    key.tap()
    expect(layout.field("length")).to_have_value(str(held + 50))


def test_wye(layout):
    """At a wye the answer serves the line that needs most, and the easier line is throttled to what it needs."""
    layout.build("add_wye")
    layout.shows(188)  # by hand: 169.75 + 2 x 3^2 x 1 = 187.75; 300 gpm is under 350, so the wye takes nothing
    layout.line("B")
    layout.type("length", "100")
    layout.shows(188)  # line A still needs 169.75 at the wye
    line = said("pressure", "line", id="B")
    # by hand: B needs 15.5 x 2.25 x 1 + 100 = 134.875 of those 169.75
    joint = said("pressure", "at_wye", id="S")
    expect(layout.page.get_by_text(said("pressure", "gate", line=line, joint=joint, inlet=135))).to_be_visible()
    layout.line("A")
    assert layout.field("length").input_value() == "200"
    layout.press("undo")
    layout.press("undo")
    layout.shows(170)


def test_wye_takes_pressure_at_high_flow(layout):
    """From 350 gpm through the wye its loss is added."""
    layout.build("add_wye")
    for line in ("A", "B"):
        layout.line(line)
        layout.type("flow", "180")
    # by hand: 15.5 x 1.8^2 x 2 + 100 = 200.44; 2 x 3.6^2 = 25.92; 10 at the wye: 236.36
    layout.shows(236)


def test_workings(layout):
    """Each figure opens on its working and its source."""
    friction = layout.working("friction")
    expect(friction).to_contain_text("15.5 × 1.5² × 2 = 69.75 psi")  # the working of the hand calculation
    expect(friction).to_contain_text(SITE["basis"]["published"])
    for figure in ("reaction", "flow", "velocity", "water", "elevation", "inlet", "friction_rate"):
        layout.working(figure)
    # by hand: 0.0505 x 150 x sqrt(100) = 75.75
    expect(layout.page.get_by_text("0.0505 × 150 × √100 = 75.75 lbf")).to_be_visible()
    assert not re.search(r"undefined|NaN|\{\w+\}|\[object", layout.page.locator("main").inner_text())


def test_caution_above_test_pressure(layout):
    """Hose that could see more than its service test says so, with both figures."""
    line = said("pressure", "line", id="A")
    # by hand: 15.5 x 2.25 x 6 + 100 = 309.25, over 300 psi; at 550 ft 291.81 is under it
    told = layout.page.locator(".plate-careful").get_by_text(said("caution", "above_test_pressure", line=line, amount=309, limit=300))
    layout.type("length", "600")
    layout.shows(309)
    layout.careful()
    expect(told).to_be_visible()
    # 291.81 is past nine tenths of 300, its working limit: a caution; 500 ft ask 274.38, and 450 ft 256.94, under it
    worked = layout.page.locator(".plate-careful").get_by_text(said("caution", "above_working_pressure", line=line, amount=292, limit=270))
    layout.type("length", "550")
    layout.shows(292)
    expect(told).to_have_count(0)
    expect(worked).to_be_visible()
    expect(layout.page.get_by_text(SITE["pressure"]["would_need"], exact=True)).to_be_visible()
    layout.type("length", "450")
    layout.shows(257)
    expect(layout.page.get_by_text(SITE["caution_short"]["above_working_pressure"])).to_have_count(0)


def test_a_stop_stays_with_the_answer(layout):
    """Where a hose would be past its test pressure, the number is no order to set it, and says so wherever the page stands."""
    layout.type("flow", "300")  # 139.5 x 2 + 100 = 379
    layout.shows(379)
    layout.field("pressure").scroll_into_view_if_needed()
    layout.page.evaluate("scrollBy(0, 300)")
    expect(layout.page.get_by_text(SITE["caution_short"]["above_test_pressure"])).to_be_in_viewport(ratio=1)
    expect(layout.page.get_by_text(SITE["pressure"]["would_need"], exact=True)).to_be_in_viewport(ratio=1)
    expect(layout.page.get_by_text(SITE["pressure"]["set"], exact=True)).to_have_count(0)
    layout.type("flow", "150")
    expect(layout.page.get_by_text(SITE["pressure"]["set"], exact=True)).to_be_in_viewport(ratio=1)


def test_caution_for_the_crew(layout):
    """A reaction above what the crew can hold says so."""
    layout.choose("crew", "1")
    # by hand: 0.0505 x 150 x 10 = 75.75 lbf; the study's limit for one is 60
    line = said("pressure", "line", id="A")
    layout.careful()
    expect(layout.page.locator(".plate-careful").get_by_text(said("caution", "reaction_above_crew", line=line, amount=76, limit=60, crew=1))).to_be_visible()


def test_lay_travels_in_a_link(handset, take):
    """The link of a layout opens the same layout on another phone; the address changes only when it is shared."""
    layout = fresh_layout(handset)
    layout.type("length", "350")
    layout.hose("attack-2")
    layout.shows(163)  # by hand: 8 x 2.25 x 3.5 + 100
    assert layout.page.url == f"{handset.host.origin}pressure/"
    other = open_layout(take(), layout.link())
    other.shows(163)
    assert other.entries() == layout.entries()


def test_draft_survives_a_kill(handset):
    """A page killed as soon as its new answer shows opens again as it was left."""
    layout = fresh_layout(handset)
    layout.step("length", "more")
    layout.shows(187)  # by hand: 15.5 x 2.25 x 2.5 + 100 = 187.19
    kill(layout.page)
    open_layout(handset).shows(187)


def test_draft_survives_a_reload(handset):
    """A page loaded again as soon as a touch shows is as it was left, though its address was still of the layout before."""
    layout = fresh_layout(handset)
    layout.link()
    layout.step("length", "more")
    expect(layout.field("length")).to_have_value("250")
    layout.page.reload()
    layout.field("length").wait_for()
    layout.shows(187)  # by hand: 15.5 x 2.25 x 2.5 + 100 = 187.19


def test_automatic_nozzle_and_floors(layout):
    """An automatic nozzle is reckoned at its greatest flow, with every working; a floor up adds its height."""
    layout.choose("nozzle", SITE["pressure"]["automatic"])
    layout.shows(170)  # by hand: as the fog nozzle, 69.75 + 100
    for figure in ("reaction", "flow"):
        layout.working(figure)
    layout.press("floor_up")
    layout.shows(175)  # by hand: 12 ft x 0.434 = 5.21
    layout.press("floor_down")
    layout.press("floor_down")
    layout.shows(165)
