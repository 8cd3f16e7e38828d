"""The number and what each easier line is throttled to stay in sight while entries are worked, on any screen."""
import pytest
from playwright.sync_api import expect

from tests.phone.layout import open_layout
from tests.phone.words import SITE, said

SCREENS = {"upright": (360, 740), "on its side": (740, 360), "keyboard up": (360, 380)}


def in_sight(locator):
    """Whether it is in the screen and nothing lies over its middle."""
    expect(locator).to_be_in_viewport(ratio=1)
    return locator.evaluate("""(part) => {
        const { left, top, width, height } = part.getBoundingClientRect();
        return part.contains(document.elementFromPoint(left + width / 2, top + height / 2));
    }""")


def throttled(layout, **lines):
    """What is said of the lines that are throttled at the pump, each with what its gauge shall show."""
    rows = [said("pressure", "gate_row", line=said("pressure", "line", id=name), inlet=psi) for name, psi in lines.items()]
    return layout.page.get_by_text(said("pressure", "gates_pump", rows=" \u00b7 ".join(rows)), exact=True)


@pytest.mark.parametrize("screen", SCREENS)
def test_answer_and_throttles_in_sight(take, screen):
    """Three lines at the pump: the number and both readings to set, with any entry of the page in work."""
    width, height = SCREENS[screen]
    layout = open_layout(take(viewport={"width": width, "height": height}))
    layout.ready("draft")
    # by hand: A 15.5 x 1.5^2 x 2 + 100 = 169.75; B 2 x 2.5^2 x 2 + 100 = 125; C 15.5 x 0.95^2 x 1 + 100 = 113.99
    layout.build("add_line")
    layout.type("length", "100")
    layout.type("flow", "95")
    layout.shows(170)
    layout.open(SITE["bounds"]["title"])
    for field in (lambda: layout.field("length"), lambda: layout.field("height"), lambda: layout.field("pressure"), lambda: layout.page.get_by_role("textbox").last):
        field().focus()
        for part in (layout.answer.locator("b"), throttled(layout, B=125, C=114)):
            assert in_sight(part)
        assert in_sight(field())
    shown = layout.page.locator(".answer").bounding_box()["height"]
    assert shown <= 0.5 * height or (width > height and layout.page.locator(".answer").bounding_box()["width"] <= 0.5 * width)  # half of the screen is left to work in; on its side, the half beside it
    gauge = layout.turn().get_by_role("textbox", name=SITE["now"]["gauge"])
    gauge.focus()
    assert in_sight(layout.answer.locator("b"))
    assert in_sight(gauge)


def test_throttled_behind_a_wye(layout):
    """At a wye the reading is that of a gauge after its valve. By hand: B needs 134.875 there."""
    layout.build("add_wye")
    layout.line("B")
    layout.type("length", "100")
    line, joint = said("pressure", "line", id="B"), said("pressure", "at_wye", id="S")
    assert in_sight(layout.page.get_by_text(said("pressure", "gate", line=line, joint=joint, inlet=135), exact=True))


def test_nothing_to_throttle_says_nothing(layout):
    """One line needs no other throttled."""
    expect(layout.page.locator(".answer-gates p")).to_have_count(0)
    layout.shows(170)


@pytest.mark.parametrize("screen", SCREENS)
def test_many_to_throttle_leave_room_to_work(take, screen):
    """Three wyes with a line to throttle at each: the number stays in sight, the readings stand below it, and a field is reached."""
    width, height = SCREENS[screen]
    layout = open_layout(take(viewport={"width": width, "height": height}))
    layout.build("add_wye")
    layout.line("B")
    layout.type("length", "100")
    layout.line("S")
    for _ in range(2):
        layout.build("add_twin")
    expect(layout.page.locator(".answer-gates p")).to_have_count(3)
    field = layout.field("length")
    field.focus()
    assert in_sight(layout.answer.locator("b"))
    assert in_sight(field)
    shown = layout.page.locator(".answer").bounding_box()
    assert shown["height"] <= 0.5 * height or (width > height and shown["width"] <= 0.5 * width)
