"""A rig's own hose and its measurements, on the phone."""
import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests.phone.test_rig import press
from tests.phone.test_rig_faults import SOUND, chosen

R, SITE = data.words("rig"), data.shared_words()
NEAREST = {"SI": ("45", "1000 kPa"), "bar": ("45", "10.0 bar")}  # by hand: C 10 gives 145 psi, 999.7 kPa; the handbook's would give 1170


@pytest.mark.parametrize("system", NEAREST)
def test_own_hose_is_first_among_the_sizes(handset, system):
    """In any units the rig's own hose stands first by its own name, so that its measured C is one tap away when another size was tapped."""
    size, figure = NEAREST[system]
    chosen(handset, {**SOUND, "units": system})
    page = handset.open("pressure/")
    sizes = page.get_by_role("group", name=SITE["pressure"]["hose"]).locator(".chip")
    expect(sizes.nth(0)).to_have_text("1¾ in")
    expect(sizes.nth(1)).to_have_text("2½ in")
    answer = page.locator(".answer-figure")
    expect(answer).to_have_text(figure)
    page.get_by_role("radio", name=size, exact=True).tap()
    expect(answer).not_to_have_text(figure)
    page.get_by_role("radio", name="1¾ in", exact=True).tap()
    expect(answer).to_have_text(figure)


def apart(one, other):
    """Pixels between the lower edge of one and the upper of the other."""
    first, second = one.bounding_box(), other.bounding_box()
    return second["y"] - first["y"] - first["height"]


def test_keys_of_the_rig_page_stand_apart(handset):
    """The two cards are rows of their own height, and the two keys that add a line have 8 px between them, so that a glove presses one."""
    chosen(handset, SOUND)
    page = handset.open("rig/")
    links = [page.get_by_role("link", name=R["rig"][name], exact=True) for name in ("card", "recovery")]
    keys = [page.get_by_role("button", name=R["rig"][name], exact=True) for name in ("add_bed", "add_gun")]
    expect(keys[1]).to_be_visible()
    assert apart(*links) >= 0 and all(link.bounding_box()["height"] >= 56 for link in links)
    left, right = (key.bounding_box() for key in keys)
    assert right["x"] - left["x"] - left["width"] >= 8


def test_one_reading_has_no_spread(handset):
    """A single reading gives its C and no spread about it; with a second its spread is said."""
    chosen(handset, SOUND)
    page = handset.open("rig/")
    page.get_by_text(R["rig"]["section_hoses"], exact=True).tap()
    page.get_by_text(R["measure"]["title"], exact=True).tap()

    def read(count, *entries):
        for place, text in enumerate(entries):
            page.locator(".reading").nth(count).locator("input").nth(place).fill(text)

    read(0, "100", "60", "200", "100")  # by hand: 40 / (2^2 x 1) = 10
    expect(page.locator(".measure-result")).to_contain_text("C 10")
    expect(page.locator(".measure-result")).not_to_contain_text("spread")
    press(page, "measure", "add")
    read(1, "100", "52", "200", "100")  # by hand: 12; the fit is 11 and both are a part in 11 off
    expect(page.locator(".measure-result")).to_contain_text(R["measure"]["spread"].format(spread="9"))
    press(page, "measure", "use")
    expect(page.locator(".rig-hose")).to_contain_text(R["rig"]["figure_readings"].format(coefficient="11", readings="2"))
    page.get_by_label(R["field"]["coefficient"], exact=False).fill("12")  # no longer of those two
    expect(page.locator(".rig-hose")).to_contain_text(R["rig"]["figure_measured"].format(coefficient="12"))


def test_the_page_says_which_figures_were_measured(handset):
    """A rig with a hose measured by its department is not told that its figures are nominal hose's; another hose of the layout is as it was."""
    words = SITE["pressure"]
    chosen(handset, {**SOUND, "hoses": [{"hose": "attack-1.75", "coefficient": "10@US", "origin": "measured", "test_pressure": ""}]})
    page = handset.open("pressure/")
    said = page.locator(".smallprint", has_text=words["service"])
    own = words["own_figures"].format(hoses=words["own_figure"].format(hose="1¾", origin=words["origin_measured"]))
    expect(said).to_contain_text(own)
    expect(said).not_to_contain_text(words["nominal"])
    page.get_by_role("group", name=words["hose"]).locator(".chip", has_text="2½").first.tap()
    expect(said).to_contain_text(words["nominal"])
