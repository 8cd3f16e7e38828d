"""Decimal commas, thousands and minus signs: what is typed is read one way, or asked about, and shown as the page's language writes it."""
import csv
import re

import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests.phone import ways
from tests.phone.folds import unfold
from tests.phone.handset import read_in
from tests.phone.words import SITE

FRENCH = data.shared_words("fr")


@pytest.mark.parametrize(
    ("text", "psi"),
    [
        # by hand: 15.5 x 1.5^2 x hundreds of feet + 100
        ("1,000", 449),
        ("1 000", 449),
        ("1\u202f000", 449),
        ("250,0", 187),
        ("0250.000", 187),
    ],
)
def test_a_length_by_any_spelling(layout, text, psi):
    """1,000 is a thousand feet, and stands in its field as it was typed."""
    layout.type("length", text)
    layout.shows(psi)
    expect(layout.field("length")).to_have_value(text)


def test_a_length_that_could_be_either_is_asked_about(layout):
    """1.000 may be one foot or a thousand: no number until it is said which, and both are offered as they are to be typed."""
    layout.type("length", "1.000")
    asked = SITE["refusal"]["thousands_or_decimals"].format(thousands="1000", decimals="1")
    expect(layout.refusal("length")).to_have_text(asked)
    expect(layout.answer).to_have_text(SITE["pressure"]["waiting"].format(entry=SITE["entry"]["length"]))
    layout.step("length", "more")  # no step from what is not known
    expect(layout.field("length")).to_have_value("1.000")
    layout.type("length", "1000")
    layout.shows(449)


def test_steps_go_from_what_is_typed_however_it_is_spelled(layout):
    """A key beside 1,000 goes to 1050, and beside a height with a typed minus to the next below."""
    layout.type("length", "1,000")
    layout.step("length", "more")
    expect(layout.field("length")).to_have_value("1050")
    layout.type("height", "\u221220")
    layout.step("height", "less")
    expect(layout.field("height")).to_have_value("-30")


def test_a_height_typed_with_a_minus_sign_is_drawn_below(layout):
    """The sign of a phone's keyboard counts: what is reckoned as below is drawn as below."""
    layout.type("height", "\u221220")
    below = SITE["pressure"]["height_down"].format(height="20", u_length=SITE["unit"]["US"]["length"])
    expect(layout.page.locator("button.lay-line").first).to_contain_text(below)


def test_french_shows_commas(take):
    """On a French page answers, inputs and workings have a decimal comma, either mark may be typed, and steps go on from it."""
    phone = take(locale="fr-CA")
    page = phone.open("fr/pressure/")
    read_in(page, "bar")
    answer = page.locator("output b")
    expect(answer).to_have_text(re.compile(r"^\d+,\d$"))
    page.locator(".tab", has_text=FRENCH["tab"]["nozzle"]).tap()
    pressure = page.get_by_role("textbox", name=FRENCH["pressure"]["nozzle_pressure"], exact=True)
    pressure.fill("6.5")
    expect(pressure).to_have_value("6,5")
    with_point = answer.inner_text()
    pressure.fill("9")
    pressure.fill("6,5")
    expect(answer).to_have_text(with_point)
    page.get_by_role("button", name=FRENCH["pressure"]["more"].format(what=FRENCH["pressure"]["nozzle_pressure"]), exact=True).tap()
    expect(pressure).to_have_value("7")
    unfold(page)
    page.locator(".working:visible").first.wait_for()
    words = page.locator("main").inner_text()
    assert not re.findall(r"(?<![\w.])\d+\.\d+(?! ×|[\w.])", words)  # but in a formula as its English source writes it
    flow = page.get_by_role("textbox", name=FRENCH["pressure"]["flow"], exact=True)
    for either in ("1,250", "1.250"):
        flow.fill(either)
        expect(page.get_by_text(FRENCH["refusal"]["thousands_or_decimals"].format(thousands="1250", decimals="1,25"))).to_be_visible()
    flow.fill("1\u00a0250")
    expect(page.get_by_text(FRENCH["refusal"]["thousands_or_decimals"].split("}")[-1])).to_have_count(0)


def test_a_french_spreadsheet_has_commas(take):
    """The sheet of a test in French shows commas; so has its CSV, parted at semicolons, as a spreadsheet of that language reads it, in bar too."""
    phone = take(locale="fr-CA")
    page = ways.service("fr/test/sheet/#{id}")(phone)
    words = data.words("service", "fr")["sheet"]
    for system in ("US", "bar"):
        page.evaluate("(system) => localStorage.setItem('units', system)", system)
        page.reload()
        expect(page.locator("main")).to_contain_text(re.compile(r"\d,\d"))
        with page.expect_download() as download:
            page.get_by_role("button", name=words["csv"]).tap()
        rows = list(csv.DictReader(download.value.path().read_text(encoding="utf-8-sig").splitlines(), delimiter=";"))
        figures = [row[words["value"]] for row in rows if row[words["unit"]]]
        assert [figure for figure in figures if re.fullmatch(r"-?\d+,\d+", figure)]
        assert not [figure for figure in figures if figure and not re.fullmatch(r"-?\d+(,\d+)?", figure)]
