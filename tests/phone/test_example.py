"""Figures that nobody entered say so, in words and by an edge, until all were entered; a rig's own are named as its."""
import pytest
from playwright.sync_api import expect

from site_src.content import reckoners
from tests.phone.handset import kill
from tests.phone.sheet import TOLD, open_sheet
from tests.phone.test_rig import ENGINE, with_engine

WORDS = TOLD["reckon"]
DASHES = "– – –"
STRIPES = "repeating-linear-gradient"


def mark(sheet):
    return sheet.page.locator(".answer .example-mark")


def examples(sheet, count):
    """So many entries are marked as an example's, and with any of them the picture, by an edge and in what a reader is told; else it is not."""
    expect(sheet.page.locator(".entry[data-from=example]")).to_have_count(count)
    pictured = sheet.page.locator(".pictured")
    expect(pictured).to_have_count(1)
    told = TOLD["picture"][sheet.name] + (f", {WORDS['example']}" if count else "")
    expect(pictured.get_by_role("img", name=told, exact=True)).to_be_visible()
    edge = pictured.evaluate("pictured => getComputedStyle(pictured).backgroundImage")
    assert edge.startswith(STRIPES) if count else edge == "none"


@pytest.mark.parametrize("page", reckoners.PAGES)
def test_every_page_opens_marked(shared, page):
    """Baked and live, the answer to opening figures is an example, and so are each figure and the picture."""
    address = "foam/" if page == "foam" else f"water/{page}/"
    sheet = open_sheet(shared, address)
    expect(mark(sheet)).to_have_text(f"{WORDS['example']} {WORDS['example_all']}")
    edge = sheet.page.locator(".answer").evaluate("answer => getComputedStyle(answer, '::before').backgroundImage")
    assert edge.startswith(STRIPES)
    opening = reckoners.opening(page, "customary")
    shown = [field for field in reckoners.fields(page) if all(opening[name] in (options if isinstance(options, list) else [options]) for name, options in field.get("when", {}).items())]
    examples(sheet, sum(1 for field in shown if field["customary"] and not field.get("rule")))


def still(*names):
    """The mark while the entries so named are not the user's."""
    return f"{WORDS['example']} {WORDS['example_left'].format(fields=', '.join(names))}"


def test_until_all_are_entered(handset):
    """The mark stays on the answer until the last example it rests on was entered, and names what is left, also when the page opens again."""
    sheet = open_sheet(handset, "water/tank/")
    sheet.type("tank", "1000")
    expect(mark(sheet)).to_have_text(still("flow"))
    examples(sheet, 1)
    kill(sheet.page)
    sheet = open_sheet(handset, "water/tank/")
    sheet.shows("5.3", "min")  # by hand: 800 / 150
    expect(mark(sheet)).to_have_text(still("flow"))
    sheet.type("flow", "200")
    sheet.shows("4.0", "min")
    expect(mark(sheet)).to_have_count(0)  # the usable share is a usual value
    examples(sheet, 0)
    expect(sheet.page.locator(".answer")).not_to_have_attribute("data-example", "")
    sheet.page.get_by_role("button", name=WORDS["afresh"]).tap()
    expect(mark(sheet)).to_be_visible()


def test_the_same_figure_entered_is_no_example(handset):
    """Whoever types 750 over the example's 750 has entered it."""
    sheet = open_sheet(handset, "water/tank/")
    for text in ("75", "750"):
        sheet.type("tank", text)
    for text in ("15", "150"):
        sheet.type("flow", text)
    expect(mark(sheet)).to_have_count(0)
    kill(sheet.page)
    expect(mark(open_sheet(handset, "water/tank/"))).to_have_count(0)


def test_a_choice_alone_is_no_entry(handset):
    """A touch of Pitot gauge or of a usable share leaves every figure the example's, on the page and on its tile."""
    sheet = open_sheet(handset, "water/hydrant/")
    sheet.choose("known", TOLD["option"]["known"]["pitot"])
    expect(mark(sheet)).to_have_text(f"{WORDS['example']} {WORDS['example_all']}")
    sheet.type("residual", "50")
    expect(mark(sheet)).to_have_text(still("static pressure", "outlet", "pitot reading"))
    sheet = open_sheet(handset, "water/tank/")
    sheet.choose("usable", "100 %")
    expect(mark(sheet)).to_have_text(f"{WORDS['example']} {WORDS['example_all']}")
    menu = handset.open("water/")
    menu.locator("#rig a").wait_for()
    for page in ("hydrant", "tank"):
        expect(menu.locator(f"[data-page={page}] [data-figure]")).to_have_text(DASHES)


def test_a_chosen_chip_touched_again_is_entered(handset):
    """Whoever's suction hose is the one marked says so with a touch."""
    sheet = open_sheet(handset, "water/draft/")
    sheet.type("altitude", "100")
    expect(mark(sheet)).to_have_text(still("lift", "rated capacity", "flow", "suction hose"))
    sheet.choose("suction", "6 in")
    expect(mark(sheet)).to_have_text(still("lift", "rated capacity", "flow"))


def test_what_stands_beside_the_answer(handset):
    """The flow at 20 psi is the user's without the supply hose; a stop that only example figures call for is under their mark."""
    sheet = open_sheet(handset, "water/hydrant/")
    for name, text in (("static", "60"), ("residual", "50"), ("flowing", "500")):
        sheet.type(name, text)
    expect(mark(sheet)).to_have_count(0)
    sheet = open_sheet(handset, "foam/")
    sheet.type("plate", "100")  # below the back pressure of the example: 121 psi
    expect(sheet.page.locator(".water-plate .warning-stop")).to_be_visible()
    expect(sheet.page.locator(".example-warnings")).to_have_count(0)  # the plate is the user's
    sheet = open_sheet(handset, "water/hydrant/")
    sheet.page.get_by_role("button", name=WORDS["afresh"]).tap()
    sheet.type("floor", "60")  # a rule, above the example's residual of 58
    marked = sheet.page.locator(".warning").filter(has=sheet.page.locator(".example-warnings"))
    expect(sheet.warns("residual_below_floor", amount=58, limit=60)).to_be_visible()
    expect(marked.filter(has_text="58")).to_have_count(1)
    sheet.type("residual", "55")
    expect(sheet.warns("residual_below_floor", amount=55, limit=60)).to_be_visible()
    expect(marked).to_have_count(0)


def test_the_rigs_own_are_named(handset):
    """With a rig its figures are said to be its own, and the answer is still an example in part."""
    with_engine(handset)  # 750 gal, of our own invention
    sheet = open_sheet(handset, "water/tank/")
    expect(mark(sheet)).to_have_text(still("flow"))
    expect(sheet.page.get_by_text(WORDS["rig_named"].format(name=ENGINE["name"], fields=sheet.label("tank")))).to_be_visible()
    examples(sheet, 1)


def test_the_menu(handset):
    """A row shows dashes until all that its answer rests on was entered."""
    menu = handset.open("water/")
    menu.locator("#rig a").wait_for()
    for page in reckoners.PAGES:
        expect(menu.locator(f"[data-page={page}] [data-figure]")).to_have_text(DASHES)
    sheet = open_sheet(handset, "water/tank/")
    sheet.type("flow", "100")
    menu.reload()
    menu.locator("#rig a").wait_for()
    expect(menu.locator("[data-page=tank] [data-figure]")).to_have_text(DASHES)
    open_sheet(handset, "water/tank/").type("tank", "500")
    menu.reload()
    expect(menu.locator("[data-page=tank] [data-figure]")).to_have_text("4.0")  # by hand: 400 / 100
    expect(menu.locator("[data-page=hydrant] [data-figure]")).to_have_text(DASHES)
