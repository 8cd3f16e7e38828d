"""How far the chosen line goes, and what it passes, as a person reads it."""
import pytest
from playwright.sync_api import expect

from tests.phone.layout import open_layout
from tests.phone.words import SITE

B = SITE["bounds"]
U = {f"u_{kind}": unit for kind, unit in SITE["unit"]["US"].items()}


@pytest.fixture
def reach(layout):
    layout.open(B["title"])
    return layout


def field(layout, name):
    return layout.page.locator("details.section", has_text=B["title"]).last.get_by_role("textbox", name=B[name], exact=True)


def test_a_distance_and_a_flow(reach):
    """Flow, pump pressure and pressure at the end give a length; a length gives the flow."""
    expect(field(reach, "pump")).to_have_value("270")  # nine tenths of attack hose's 300 psi
    expect(reach.page.get_by_text(B["limit"].format(limit=270, **U))).to_be_visible()
    # by hand: (270 - 100) / 34.875 = 487.5 ft of 1 3/4 in at 150 gpm; at 200 ft sqrt(170 / 31) x 100 = 234.2 gpm
    expect(reach.page.get_by_text(B["longest"].format(flow=150, longest=487, **U))).to_be_visible()
    expect(reach.page.get_by_text(B["passes"].format(length=200, passes=234, **U))).to_be_visible()
    field(reach, "pump").fill("200")
    field(reach, "flow").fill("125")
    # by hand: 100 psi left; 15.5 x 1.25^2 = 24.22 per 100 ft: 412.9 ft
    expect(reach.page.get_by_text(B["longest"].format(flow=125, longest=412, **U))).to_be_visible()
    field(reach, "length").fill("400")
    # by hand: 62 Q^2 = 100: 127.0 gpm
    expect(reach.page.get_by_text(B["passes"].format(length=400, passes=127, **U))).to_be_visible()
    reach.shows(170)  # the answer above follows from the layout alone
    field(reach, "pump").fill("90")
    expect(reach.page.get_by_text(B["nothing_left"].format(taken=100, **U))).to_be_visible()


def test_follows_the_line_until_it_is_typed(reach):
    """Flow, end and length are the line's own until something is typed here."""
    reach.type("flow", "95")
    expect(field(reach, "flow")).to_have_value("95")
    field(reach, "flow").fill("60")
    reach.type("flow", "125")
    expect(field(reach, "flow")).to_have_value("60")


def test_refused_beside_its_field(reach):
    """A slip is said at its field, takes its figures away and costs nothing that was typed."""
    field(reach, "length").fill("2o0")
    expect(reach.page.get_by_text(SITE["refusal"]["not_a_number"])).to_be_visible()
    expect(reach.page.locator(".verdict")).to_have_text(["", ""])
    expect(field(reach, "length")).to_have_value("2o0")
    reach.shows(170)
