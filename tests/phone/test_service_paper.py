"""The sheet of a service test on paper, Letter and A4, in both languages: nothing crossed or cut, and signatures on the sheet of what they sign."""
import re

import pytest

from site_src.report import signed
from tests import service_records as records
from tests.phone.proof import START_MS, begun, store

PAPER_PX = 703  # Letter between margins of 12 mm, 96 to the inch
DIGEST = "a1b2c3d4" * 8
PANEL = {"pump_stages": "2", "other_control": "relief", "gauges": "12", "meters": "4"}
LESS = {"psi": "150@US", "in": "2@US", "gpm": "600@US"}  # what no made-up test reads, by its unit


def signed_twice(record):
    record["versions"] = [{"digest": DIGEST, "wall": record["finished_ms"], "what": "Tank flow", "why": "misread", "by": "A. Tester", "signed": ["A. Tester"]}]
    digest = signed.digest(record)
    record["signed"] = [{"role": role, "name": name, "wall": record["finished_ms"], "strokes": strokes, "digest": digest}
                        for role, name, strokes in (("tester", "A. Tester", "M20 60l10 -20l18 10l30 -20"), ("witness", "W. Witness", ""))]
    return record


def sheets(page):
    return len(re.findall(rb"/Type\s*/Page\b", page.pdf(prefer_css_page_size=True)))


def on_paper(page, size):
    page.evaluate("(chosen) => document.querySelectorAll('[id^=upright-]').forEach((sheet) => { sheet.media = sheet.id.endsWith(chosen) ? 'all' : 'not all'; })", size)
    return sheets(page)


@pytest.mark.parametrize("language", ["", "fr/"])
@pytest.mark.parametrize("make", [records.a_record, records.a_failed_record])
def test_a_signed_test_is_two_sheets(handset, make, language):
    """On either paper; the rules of headings end where the chart begins, and nothing is wider than the sheet."""
    record = store(handset, signed_twice(make()))
    page = handset.open(f"{language}test/sheet/#{record['id']}")
    page.locator(".signature").wait_for()
    assert [on_paper(page, size) for size in ("letter", "a4")] == [2, 2]
    page.set_viewport_size({"width": PAPER_PX, "height": 900})
    page.emulate_media(media="print")
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    chart = page.locator(".curve-block").bounding_box()
    beside = [box for box in (heading.bounding_box() for heading in page.locator(".exceptions h2, .exceptions h3").all()) if box["y"] < chart["y"] + chart["height"]]
    assert beside
    assert all(box["x"] + box["width"] <= chart["x"] for box in beside)


def test_a_panel_of_many_gauges_is_three_sheets(handset, monkeypatch):
    """Twelve line gauges and four meters are read in columns that are filled, and the signatures stand with the site."""
    value_of = records.value_of

    def read(field):
        try:
            return value_of(field)
        except (KeyError, IndexError):
            return LESS[field["id"].split("_")[-1]]

    monkeypatch.setattr(records, "value_of", read)
    record = store(handset, signed_twice(records.a_record(**PANEL)))
    page = handset.open(f"test/sheet/#{record['id']}")
    page.locator(".signature").wait_for()
    assert [on_paper(page, size) for size in ("letter", "a4")] == [3, 3]


@pytest.mark.parametrize("language", ["", "fr/"])
def test_a_plan_is_one_sheet(handset, language):
    """The parts of a test that nobody began, to be taken along on paper."""
    record = store(handset, {**begun(records.a_record(), START_MS), "tests": {}})
    page = handset.open(f"{language}test/run/#{record['id']}")
    page.locator(".stations").wait_for()
    assert sheets(page) == 1
