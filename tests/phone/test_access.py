"""Every page for eyes that see little and fingers in gloves: axe, contrast, size of targets, width."""
import itertools
import pathlib
import re

import pytest

from tests.browser import PHONE
from tests.phone.handset import phones
from tests.phone.keyboard import MEASURE, fault
from tests.phone.screens import SCREENS

AXE = (pathlib.Path(__file__).parent / "vendor" / "axe.min.js").read_text(encoding="utf-8")
VIOLATIONS = """async () => (await axe.run({ resultTypes: ["violations"] })).violations.flatMap(
  ({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 120)}`))"""
SIGNS = """[...document.querySelectorAll("summary")].map((summary) => [false, true].map((open) => {
  const details = summary.parentElement, before = details.open;
  details.open = open;
  const sign = getComputedStyle(summary, "::before").content;
  details.open = before;
  return sign.slice(0, 3);
}))"""
TARGET_PX = 56
APART_PX = 8
FRAMES = 60
SLACK_PX = 0.5  # of a fraction that layout rounds away
CONTRAST = 7
DRAWN = 3  # contrast of what is drawn, WCAG 2.2, 1.4.11
GROUND = ("fall-area", "line-bared")  # tints the ground under a line, or is the ground between a line and its frame, and says nothing itself
WIDE_PX, NARROW_PX = 1024, 320
NAMED = ("button", "link", "textbox", "radio", "checkbox", "combobox", "img", "region")
WIDTH_PX = PHONE["viewport"]["width"]


@pytest.fixture(scope="module", params=SCREENS)
def screen(request, browser, host):
    """One screen of the site on a phone of its own, with the measures at hand."""
    with phones(browser, host) as take:
        page = SCREENS[request.param](take())
        page.evaluate(MEASURE)
        page.evaluate(AXE)
        yield page


@pytest.fixture(params=["light", "dark"])
def look(request, screen):
    """The screen by day and by night."""
    screen.emulate_media(color_scheme=request.param)
    return screen


def test_axe_finds_nothing(look):
    """The axe rules find no violation, by day or by night."""
    assert look.evaluate(VIOLATIONS) == []


def test_text_stands_out(look):
    """Text has a contrast of at least 7 to 1 against what lies behind it."""
    measured = look.evaluate("measure.contrasts()")
    assert len(measured) > 2
    assert [f"{text['name']} {text['ratio']:.2f}" for text in measured if text["ratio"] < CONTRAST] == []


def test_what_is_drawn_stands_out(look):
    """Each line and shape of a picture, and the edge of each control, has a contrast of at least 3 to 1 to its ground."""
    drawn = [shape for shape in look.evaluate("measure.shapes()") if not shape["name"].endswith(GROUND)]
    assert [f"{each['name']} {each['ratio']:.2f}" for each in drawn + look.evaluate("measure.edges()") if each["ratio"] < DRAWN] == []


def test_focus_is_in_sight(screen):
    """Each stop of the Tab key has a ring that stands out, under nothing that stays at an edge of the screen."""
    screen.keyboard.press("Tab")  # rings are for who uses keys
    faults = [told for focus in screen.evaluate("measure.foci()") if (told := fault(focus))]
    screen.evaluate("document.activeElement.blur(), scrollTo(0, 0)")
    assert faults == []


def test_what_opens_has_its_sign(screen):
    """Whatever unfolds shows a plus while it is folded and a minus once it is open."""
    assert [signs for signs in screen.evaluate(SIGNS) if signs != ['"+"', '"\u2212"']] == []


def goes_against(before, after):
    """Whether a stop lies above the stop before it, or in the same row and before it."""
    one, other = before["box"], after["box"]
    in_row = min(one["bottom"], other["bottom"]) - max(one["top"], other["top"]) > min(one["height"], other["height"]) / 2
    return other["bottom"] <= one["top"] + SLACK_PX or (in_row and other["right"] <= one["left"] + SLACK_PX)


@pytest.mark.parametrize("width", [WIDTH_PX, WIDE_PX])
def test_focus_goes_down_the_page(screen, width):
    """The Tab key goes from the top down and from the start of a row to its end, in each pane of a page for itself."""
    screen.set_viewport_size({"width": width, "height": 9000})
    places = [place for place in screen.evaluate("measure.places()") if not place["isFixed"]]
    screen.set_viewport_size(PHONE["viewport"])
    assert places
    assert screen.locator("[tabindex]:not([tabindex='0'], [tabindex='-1'])").count() == 0
    assert [(one["name"], other["name"]) for one, other in itertools.pairwise(places) if one["pane"] == other["pane"] and goes_against(one, other)] == []
    panes = [pane for pane, _ in itertools.groupby(places, key=lambda place: place["pane"]) if pane]
    assert len(panes) == len(set(panes))  # each is left once


def test_is_read_in_order(screen):
    """One heading of the first level, none skipped below it; one main part, each navigation and each control by name."""
    tree = screen.locator("body").aria_snapshot()
    levels = [int(level) for level in re.findall(r"- '?heading .*\[level=(\d)\]", tree)]
    assert levels.count(1) == 1
    assert levels[0] == 1
    assert [pair for pair in itertools.pairwise(levels) if pair[1] > pair[0] + 1] == []
    assert len(re.findall(r"^- main\b", tree, re.MULTILINE)) == 1
    navigations = re.findall(r"- '?navigation(?: \"(.+?)\")?", tree)
    assert len(set(navigations)) == len(navigations) and "" not in navigations
    assert re.findall(rf"- (?:{'|'.join(NAMED)})(?=:| \[|$).*", tree, re.MULTILINE) == []


def gap_px(one, other):
    """Clear space between two targets, along whichever way they are further apart."""
    across = max(one["left"], other["left"]) - min(one["left"] + one["width"], other["left"] + other["width"])
    down = max(one["top"], other["top"]) - min(one["top"] + one["height"], other["top"] + other["height"])
    return max(across, down)


def is_small(target):
    return min(target["height"], target["width"]) < TARGET_PX - SLACK_PX


def settled_targets(screen):
    """Every target, once a picture that was drawn just now has the room that its pane leaves it: some frames later on a slow phone."""
    for _ in range(FRAMES):
        targets = screen.evaluate("measure.targets()")
        if not any(is_small(target) for target in targets):
            break
        screen.evaluate("new Promise(requestAnimationFrame)")
    return targets


def test_targets_fit_a_glove(screen):
    """Whatever is touched is at least 56 px each way, and 8 px from the next."""
    screen.set_viewport_size({"width": WIDTH_PX, "height": 9000})  # nothing sticks over anything else
    targets = settled_targets(screen)
    screen.set_viewport_size(PHONE["viewport"])
    assert targets
    assert [(t["name"], t["width"], t["height"]) for t in targets if is_small(t)] == []
    # rows that open lie one under another, each as wide as the page
    apart = [target for target in targets if not target["row"]]
    assert [(one["name"], other["name"], gap_px(one, other)) for one, other in itertools.combinations(apart, 2)
            if gap_px(one, other) < APART_PX - SLACK_PX] == []


def test_no_page_scrolls_sideways_or_cuts_its_words(screen):
    """Everything fits: on a narrow phone, there with longer words too, and with text at twice its size."""
    unfit = "(width) => measure.overhang(width).concat(measure.cut())"
    screen.set_viewport_size({"width": NARROW_PX, "height": 640})
    narrow = screen.evaluate(unfit, NARROW_PX)
    screen.evaluate("measure.lengthen()")
    longer = screen.evaluate(unfit, NARROW_PX)
    screen.evaluate("measure.restore()")
    screen.set_viewport_size(PHONE["viewport"])
    screen.evaluate("document.documentElement.style.fontSize = '200%'")
    large = screen.evaluate(unfit, WIDTH_PX)
    screen.evaluate("document.documentElement.style.fontSize = ''")
    assert (narrow, longer, large) == ([], [], [])
