"""Installed once, with the network off and the host gone, the whole site opens and computes."""
import re

import pytest
from playwright.sync_api import expect

from tests.phone.card import open_card
from tests.phone.layout import fresh_layout
from tests.phone.words import SITE
from tests.site import pages


def cold(away, address):
    """A new page at an address, which must have come from the phone itself."""
    page = away.context.new_page()
    response = page.goto(away.host.origin + address)
    assert (response.status, response.from_service_worker) == (200, True)
    return page


@pytest.mark.parametrize("address", [
    *(address for address in pages.addresses() if not address.startswith("rigs/")), "404.html", "tables/US/friction/index.html", "tables/US/friction/?from=chief&at=3#attack-1.75",
    "shift/bay/?utm=x", "?source=home-screen",
])
def test_page_opens_cold(away, built, address):
    """Every page opens, with its own heading, with or without a query."""
    page = cold(away, address)
    file = built / address.partition("?")[0]
    text = (file if file.is_file() else file / "index.html").read_text(encoding="utf-8")
    assert f"<title>{page.title()}</title>" in text
    expect(page.get_by_role("heading", level=1)).to_be_visible()
    page.close()


@pytest.mark.parametrize("address", ["nothing-here", "tables/none/?x=1", "pressure/page/deep/down/"])
def test_unknown_address(away, address):
    """An address that is not of the site says so and leads back to the start."""
    page = cold(away, address)
    assert page.url == away.host.origin + "404.html"
    expect(page.get_by_role("heading", level=1)).to_have_text(SITE["missing"]["title"])
    page.get_by_role("link", name=SITE["missing"]["home"]).tap()
    expect(page.get_by_role("heading", level=1)).to_have_text(SITE["site"]["name"])
    page.close()


def test_pressure_computes(away):
    """The Pressure page answers a change, not only what was baked."""
    layout = fresh_layout(away)
    layout.step("length", "more")
    layout.shows(187)  # by hand: 15.5 x 2.25 x 2.5 + 100 = 187.19
    expect(layout.page).to_have_url(re.compile("/pressure/$"))  # an entry is in the phone, and in the address only once it is shared
    layout.page.reload()
    expect(layout.field("length")).to_have_value("250")
    layout.shows(187)
    layout.page.close()


def test_card_runs(away):
    """A card goes from step to step, and is where it was when it is opened again."""
    card = open_card(away, "road")
    card.see()
    card.page.close()
    open_card(away, "road", first=card.steps[1]).page.close()


def test_start_page_still_counts(away):
    """With no signal the start page counts what is held, and says Ready."""
    page = cold(away, "")
    expect(page.locator("#readiness")).to_have_attribute("data-state", "yes")
    page.close()


def test_nothing_foreign_was_asked_for(away):
    """In all of this nothing was requested from anywhere but the site."""
    assert len(away.requests) > 20
    assert away.foreign() == []


def test_an_address_without_its_slash_is_found(away):
    """Typed or shared without its last slash, a page that the phone carries opens; one that it does not is still named as none."""
    for address in ("pressure", "water/relay"):
        page = away.open(address)
        assert page.url == f"{away.host.origin}{address}/"
        page.close()
    page = away.open("presure")
    assert page.url == away.host.origin + "404.html"
    page.close()
