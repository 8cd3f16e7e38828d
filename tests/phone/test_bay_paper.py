"""The bay on paper, Letter and A4: a check blank and filled, a defect, the tag, a release, what is due."""
import re

import pytest
from playwright.sync_api import expect

from tests.phone.card import beside
from tests.phone.rounds import MIDSHIP, T, TEXT, begin, defect, good, key, title, written
from tests.phone.store import do

PAPERS = ("Letter", "A4")
PAPER_PX = 703  # Letter between margins of 12 mm, 96 to the inch: the page's own margin in numbered.css
READ_AT_2M_PX = 37  # 10 mm of type: a letter of a 200th of the distance is read without effort (common practice)
SHEET = "[...document.querySelectorAll('#paper tr')]"


def sheets(page, paper):
    """How many sheets the page comes to; printed with nothing of it wider than the paper."""
    page.set_viewport_size({"width": PAPER_PX, "height": 900})
    count = len(re.findall(rb"/Type\s*/Page\b", page.pdf(format=paper)))
    page.emulate_media(media="print")
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    assert page.evaluate("document.documentElement.scrollWidth") <= PAPER_PX
    expect(page.locator("#bay .dock")).to_be_hidden()
    expect(page.locator("header.bar")).to_be_hidden()
    return count


def back(page):
    page.emulate_media(media="null")
    page.set_viewport_size({"width": 360, "height": 740})


def heads_and_ends(page, name):
    """Rig and date come again on each sheet, no row is broken, and the signature stands with what it signs."""
    head = page.locator("#paper thead")
    expect(head).to_contain_text(name)
    assert re.search(r"20\d\d", head.inner_text())
    assert head.evaluate("(part) => getComputedStyle(part).display") == "table-header-group"
    broken = page.evaluate("[...document.querySelectorAll('#paper tr, #paper .paper-last')].filter((row) => getComputedStyle(row).breakInside !== 'avoid').length")
    assert broken == 0
    assert page.locator("#paper .paper-signed").count() == page.locator("#paper .paper-last .paper-signed").count()


@pytest.mark.parametrize("language", ["", "fr/"])
def test_a_check_on_paper(take, language):
    """The whole list in the order it is walked, blank and then as answered: each limit with whose it is, a box each, a line to sign."""
    handset = take(locale="fr-CA" if language else "en-US")
    name = beside(handset, **MIDSHIP)["name"]
    page = handset.open(language + "checks/round/#weekly")
    if language:
        expect(page.locator(".bay-act")).to_be_visible()
        for paper in PAPERS:
            assert sheets(page, paper) <= 3
        return heads_and_ends(page, name)
    expect(key(page, T["bay"]["print"])).to_be_visible()
    begin(page)
    assert sheets(page, "Letter") == sheets(page, "A4") == 2
    heads_and_ends(page, name)
    rows = page.locator("#paper th[scope=row]")
    whole = rows.all_inner_texts()
    assert page.locator("#paper .paper-box").count() == 2 * len(whole)
    assert page.locator("#paper .paper-box i").filter(has_text="✓").count() == 0
    leak = page.locator("#paper tr").filter(has_text=TEXT["air_leak_released"]["title"])
    expect(leak).to_contain_text("2 psi or less")  # tests/published/checks.toml: the licence books' figure
    expect(leak).to_contain_text(T["round"]["list_limit"])
    expect(page.locator("#paper .paper-last")).to_contain_text(T["paper"]["signature"])
    back(page)
    first = title(page).inner_text()
    good(page)
    second = title(page).inner_text()
    defect(page, "loose at the hub")
    assert sheets(page, "Letter") == 2
    assert whole[:2] == [first, second]  # as they are walked
    ticked = page.evaluate(SHEET + ".filter((row) => row.querySelector('.paper-box')).map((row) => [...row.querySelectorAll('.paper-box')].map((box) => box.textContent.trim()).join())")
    assert ticked[:3] == ["✓,", ",✕", ","]
    expect(page.locator("#paper tr").filter(has_text=second).last).to_contain_text("loose at the hub")
    expect(page.locator("#paper .paper-last")).to_contain_text("Hart")


@pytest.mark.parametrize("paper", PAPERS)
def test_a_tag_and_the_forms_on_paper(take, paper):
    """Tag, defect report and release take one sheet each, the tag's letters are read from 2 m however much there is to say; what is due has its lines."""
    handset = take()
    name = beside(handset, **MIDSHIP)["name"]
    page = handset.open("checks/defect/")
    long = "Pump gear oil gray with metal on the magnet plug and a finger low at the dipstick; "
    for count in range(5):
        written(page, handset, f"{count} {long * 2}"[:190])
    record = next(record for record in do(page, "keptRecords", "bay") if record["what"] in title(page).inner_text())
    assert sheets(page, paper) == 1
    heads_and_ends(page, name)
    expect(page.locator("#paper")).to_contain_text(T["paper"]["told"])
    expect(page.locator("#paper thead")).to_contain_text(record["id"][:8].upper())
    expect(page.locator("#paper .paper-signed > div")).to_have_count(2)
    back(page)

    page.goto(handset.host.origin + "checks/tag/")
    expect(page.locator(".tag-what")).to_have_count(5)
    assert sheets(page, paper) == 1
    for part in ("rig", "state", "never"):
        assert page.locator(f".tag-{part}").evaluate("(part) => parseFloat(getComputedStyle(part).fontSize)") >= READ_AT_2M_PX
    back(page)

    page.goto(handset.host.origin + f"checks/release/#{record['id']}")
    key(page, T["opened"]["gear_case"]).tap()
    page.locator("#done").fill("Drained, magnet cleaned")
    page.locator("#repaired_by").fill("Vega Ruiz")
    assert sheets(page, paper) == 1
    heads_and_ends(page, name)
    expect(page.locator("#paper")).to_contain_text("Drained, magnet cleaned")
    expect(page.locator("#paper .paper-signed > div")).to_have_count(2)
    back(page)

    page.goto(handset.host.origin + "checks/due/")
    expect(page.locator(".due-rows .row").first).to_be_visible()
    assert sheets(page, paper) <= 2
    heads_and_ends(page, name)
    assert page.locator("#paper th[scope=row]").count() == page.locator(".due-rows .row").count()
