"""With scripts off the site still reads: tables, whole cards, help, and one baked answer."""
import re

import pytest
from playwright.sync_api import expect

from site_src.content import data
from site_src.routes import help
from tests.phone.words import SITE
from tests.site import pages

TABLES = [address for address in pages.addresses() if address.startswith("tables/") and address != "tables/"]


@pytest.fixture(scope="module")
def plain(take_for_module):
    """A phone that runs no scripts."""
    return take_for_module(java_script_enabled=False)


@pytest.mark.parametrize("address", TABLES)
def test_tables_read(plain, built, address):
    """Every table of a table page stands on the screen, with every figure that was baked."""
    page = plain.open(address)
    baked = pages.Page(built / address / "index.html").tables
    assert len(baked) == page.get_by_role("table").count() > 0
    for place, table in enumerate(baked):
        shown = page.get_by_role("table").nth(place)
        expect(shown).to_be_visible()
        cells = [cell for row in table["rows"] for cell in row]
        assert [text.split() for text in shown.locator("th, td").all_inner_texts()] == [cell.split() for cell in cells]
    page.close()


@pytest.mark.parametrize("name", pages.cards())
def test_short_card_reads(plain, name):
    """A card without scripts leads to its short form, with every step's act and proof, and what to do in danger."""
    page = plain.open(f"shift/{name}/")
    page.get_by_role("main").get_by_role("link", name=SITE["shift"]["read"]).tap()
    expect(page.get_by_role("listitem").first).to_be_visible()
    text = " ".join(page.get_by_role("main").inner_text().split())
    short = data.words("short")["short"]
    steps = [step["id"] for step in data.card_steps(name)]
    assert steps
    assert [told for step in steps for told in short[step] if told not in text] == []
    assert any(order["short"] in text for order in data.orders().values() if order["grade"] == "danger")
    page.close()


@pytest.mark.parametrize("topic", help.TOPICS)
def test_help_reads(plain, topic):
    """Every question of a help page opens on its answer, and its way on leads to a page."""
    page = plain.open(f"help/{topic}/")
    for question in data.words(f"help/{topic}").values():
        page.get_by_role("heading", name=question["ask"], exact=True).tap()
        expect(page.get_by_text(question["answer"], exact=True)).to_be_visible()
    page.locator(".asked .key").first.tap()
    expect(page.get_by_role("heading", level=1)).to_be_visible()
    page.close()


def test_help_prints(plain):
    """On paper every answer of a help page stands under its question, though none was opened."""
    page = plain.open("help/rig/")
    page.emulate_media(media="print")
    for question in data.words("help/rig").values():
        expect(page.get_by_text(question["answer"], exact=True)).to_be_visible()
    page.close()


def test_pressure_has_an_answer_and_a_way_on(plain):
    """The Pressure page shows the opening layout's answer, says what it needs, and links to the tables."""
    page = plain.open("pressure/")
    # by hand: 15.5 x 1.5^2 x 2 + 100 = 169.75
    expect(page.get_by_text(re.compile(r"^170\s*psi$"))).to_be_visible()
    expect(page.locator("noscript .answer-example")).to_have_text(SITE["pressure"]["example"])
    expect(page.locator("noscript .notice")).to_be_visible()
    expect(page.locator("noscript .notice")).to_contain_text(SITE["site"]["no_script_pressure"])
    for table in ("friction", "tips"):
        expect(page.get_by_role("link", name=SITE["tables"][table], exact=True)).to_be_visible()
    page.get_by_role("link", name=SITE["tables"]["friction"], exact=True).tap()
    expect(page.get_by_role("heading", level=1)).to_have_text(SITE["tables"]["friction"])
    page.close()
