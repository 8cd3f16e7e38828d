"""The drawing of the power path by drive, on the screen and on paper."""
import re

import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests.phone.card import beside
from tests.phone.words import STEPS

WHY = data.words("why")


@pytest.mark.parametrize("drive", ["pto", "front"])
def test_another_drive_has_its_own_drawing(handset, drive):
    """Beside a PTO or a front mount the line says that drive's junction, and nothing of a collar."""
    power = WHY["power"]
    beside(handset, drive=drive, transmission="automatic")
    page = handset.open("shift/road/")
    page.get_by_role("heading", level=2, name=STEPS["tell"]["act"]).wait_for()
    line = page.locator(".power-line")
    expect(line).to_have_accessible_name(re.compile(re.escape(power[f"{drive}_pump"])))
    expect(line).to_contain_text(power[f"line_join_{drive}"])
    expect(line).not_to_contain_text(power["line_join_split"])


def test_no_drawing_of_a_drive_nobody_has_named(handset):
    """While the card asks how the pump is driven nothing is drawn."""
    page = handset.open("shift/scene/")
    page.get_by_role("heading", level=2, name=STEPS["which_drive"]["act"]).wait_for()
    expect(page.locator(".power-line")).to_have_count(0)


@pytest.mark.parametrize("family", ["split", "pto", "front"])
@pytest.mark.parametrize("paper", ["Letter", "A4"])
def test_a_drive_fills_one_sheet_of_paper(handset, family, paper):
    """On paper: which drive it is, three drawings on one page, and no control."""
    page = handset.open(f"why/drives/#{family}")
    drawings = page.locator(".drive-state svg")
    expect(drawings).to_have_count(3)
    page.emulate_media(media="print")
    expect(page.locator(".on-paper")).to_have_text(WHY["drives"][family])
    expect(page.locator(".chips").first).to_be_hidden()
    expect(page.locator(".chips").last).to_be_hidden()
    assert min(drawings.evaluate_all("(all) => all.map((each) => each.getBoundingClientRect().width)")) > 240  # 63 mm
    assert len(re.findall(rb"/Type\s*/Page\b", page.pdf(format=paper))) == 1
    page.close()
