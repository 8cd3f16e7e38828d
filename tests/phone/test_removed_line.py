"""A line removed on the Pressure page: what goes with it, and what may not go."""
from playwright.sync_api import expect

from tests.phone.layout import open_layout
from tests.phone.words import SITE


def test_the_line_that_all_hangs_on_stays(away):
    """A wye that all hangs on, and the last line behind it, cannot be removed: no layout is left without a line."""
    layout = open_layout(away)
    layout.ready("one")
    layout.build("add_wye")
    layout.shows(188)  # by hand: 169.75 + 2 x 3^2, the 2½ of the ready supply with 300 gpm
    remove = layout.page.get_by_role("button", name=SITE["pressure"]["remove"], exact=True)
    layout.line("S")
    layout.tab("more")
    expect(remove).to_have_count(0)
    layout.line("B")
    remove.evaluate("(key) => { key.click(); key.click(); }")  # two taps, the second before the answer to the first
    layout.shows(174)  # by hand: 169.75 + 2 x 1.5^2
    expect(layout.page.locator("button.lay-line")).to_have_count(2)
    layout.line("A")
    expect(remove).to_have_count(0)
    layout.build("add_line")
    layout.line("S")
    remove.tap()
    layout.shows(170)  # the line added is the ready one
    expect(remove).to_have_count(0)


def test_a_shut_line_that_is_removed_takes_its_shutting_with_it(away):
    """A line removed while shut: the number is for the lines there are, and a new line by its name stands open."""
    layout = open_layout(away)
    layout.ready("wye")
    layout.turn()
    shut = layout.page.locator(".lay-end[data-line=B]")
    shut.tap()
    expect(layout.page.locator(".line-bar")).to_have_count(1)
    layout.turn(over=False)
    expect(layout.page.locator("#answer-label")).to_have_text(SITE["pressure"]["set_all_open"])
    layout.line("B")
    layout.press("remove")
    expect(layout.page.locator("#answer-label")).to_have_text(SITE["pressure"]["set"])
    expect(layout.page.get_by_text(SITE["now"]["for_all_open"])).to_have_count(0)
    layout.build("add_line")
    layout.line("B")
    layout.turn()
    expect(shut).to_be_visible()
    expect(layout.page.locator(".line-bar")).to_have_count(0)
