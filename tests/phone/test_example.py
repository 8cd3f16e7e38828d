"""Figures that nobody entered say so, in words and by an edge, until one was entered; a rig's own are named as its."""
import pytest
from playwright.sync_api import expect

from site_src import reckoners
from tests.phone.handset import kill
from tests.phone.sheet import TOLD, open_sheet
from tests.phone.test_rig import ENGINE, with_engine

WORDS = TOLD["reckon"]


def mark(sheet):
    return sheet.page.locator(".answer .example-mark")


@pytest.mark.parametrize("page", reckoners.PAGES)
def test_every_page_opens_marked(shared, page):
    """Baked and live, the answer to opening figures is an example, and so is each figure."""
    address = "foam/" if page == "foam" else f"water/{page}/"
    sheet = open_sheet(shared, address)
    expect(mark(sheet)).to_have_text(f"{WORDS['example']} {WORDS['example_all']}")
    edge = sheet.page.locator(".answer").evaluate("answer => getComputedStyle(answer).backgroundImage")
    assert edge.startswith("repeating-linear-gradient")
    marked = sheet.page.locator("[data-from=example]")
    assert marked.count() == sum(1 for field in reckoners.fields(page)
                                 if field["customary"] and all(each in ("flow", "tandem") for each in field.get("when", {}).values()))


def test_until_one_is_entered(handset):
    """The first entry takes the mark from the answer; what is still the example is named, also when the page opens again."""
    sheet = open_sheet(handset, "water/tank/")
    sheet.type("tank", "1000")
    expect(mark(sheet)).to_have_count(0)
    left = WORDS["example_left"].format(fields="; ".join(sheet.label(name) for name in ("flow", "usable")))
    expect(sheet.page.get_by_text(left)).to_be_visible()
    expect(sheet.page.locator("[data-from=example]")).to_have_count(2)
    kill(sheet.page)
    sheet = open_sheet(handset, "water/tank/")
    sheet.shows("5.3", "min")  # by hand: 800 / 150
    expect(mark(sheet)).to_have_count(0)
    sheet.page.get_by_role("button", name=WORDS["afresh"]).tap()
    expect(mark(sheet)).to_be_visible()


def test_the_same_figure_entered_is_no_example(handset):
    """Whoever types 750 over the example's 750 has entered it."""
    sheet = open_sheet(handset, "water/tank/")
    sheet.type("tank", "75")
    sheet.type("tank", "750")
    expect(mark(sheet)).to_have_count(0)
    kill(sheet.page)
    expect(mark(open_sheet(handset, "water/tank/"))).to_have_count(0)


def test_the_rigs_own_are_named(handset):
    """With a rig its figures are said to be its own, and the answer is still an example in part."""
    with_engine(handset)  # 750 gal, of our own invention
    sheet = open_sheet(handset, "water/tank/")
    expect(mark(sheet)).to_have_text(f"{WORDS['example']} {WORDS['example_part'].format(name=ENGINE['name'])}")
    expect(sheet.page.get_by_text(WORDS["rig_named"].format(name=ENGINE["name"], fields=sheet.label("tank")))).to_be_visible()
    expect(sheet.page.locator("[data-from=example]")).to_have_count(2)


def test_the_menu(handset):
    """A tile is an example until its page was entered."""
    menu = handset.open("water/")
    for page in reckoners.PAGES:
        expect(menu.locator(f"[data-page={page}] [data-example]")).to_have_text(WORDS["example"])
    open_sheet(handset, "water/tank/").type("flow", "100")
    menu.reload()
    expect(menu.locator("[data-page=tank] [data-example]")).to_be_hidden()
    expect(menu.locator("[data-page=hydrant] [data-example]")).to_be_visible()
