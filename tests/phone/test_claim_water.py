"""The water and foam pages as claims: whatever is tapped and typed, the number follows from the rows that stand below it."""
import os

import pytest
from playwright.sync_api import Error

from site_src.content import reckoners, units
from tests.phone.claim import chance, walks, water
from tests.phone.sheet import open_sheet

WALKS, STEPS, TRIES = 8, 12, 25
AMOUNTS = ("0", "1", "2", "5", "12", "40", "65", "120", "250", "500", "1000", "2500", "7.5", "0.5")
SLIPS = ("", "12x", "1.2.3", "-5", "99999999", "1.000")
SYSTEMS = tuple(units.baked())


@pytest.mark.parametrize("walk", walks(WALKS))
@pytest.mark.parametrize("page", reckoners.PAGES)
def test_number_follows_from_its_rows(take, page, walk):
    """After each of 12 touches the number is the one that the desk works out from the rows, or the same row is refused."""
    luck = chance(page, walk)
    system = luck.choice(SYSTEMS)
    sheet, steps = open_sheet(take(), f"water/{page}/" if page in reckoners.WATER else f"{page}/"), [system]
    sheet.system(system)
    try:
        follows(sheet, system)
        for _ in range(STEPS):
            steps.append(step(sheet, luck))
            follows(sheet, system)
    except (AssertionError, Error) as why:
        raise AssertionError(f"{why}\nSEED={os.environ['SEED']}, {page} {walk}: " + "; ".join(steps)) from why


@pytest.mark.parametrize("page", reckoners.PAGES)
def test_every_row_is_walked(take, page):
    """Each row of a page in turn, after the choices that ask it: figure and sentence follow from it too."""
    luck = chance(page, 0)
    system = luck.choice(SYSTEMS)
    family, steps = units.family(system), [system]
    sheet = open_sheet(take(), f"water/{page}/" if page in reckoners.WATER else f"{page}/")
    sheet.system(system)
    fields = {field["name"]: field for field in reckoners.fields(page)}
    try:
        for name, field in fields.items():
            for other, wanted in field.get("when", {}).items():
                ids = [option["id"] for option in reckoners.choices(fields[other], family)]
                sheet.open(other)
                sheet.page.locator(".entry[data-open] .entry-tray label.chip").nth(ids.index(wanted if isinstance(wanted, str) else luck.choice(wanted))).tap()
            steps.append(touch(sheet, luck, name))
            follows(sheet, system)
    except AssertionError as why:
        raise AssertionError(f"{why}\nSEED={os.environ['SEED']}, {page}: " + "; ".join(steps)) from why


def follows(sheet, system):
    """What stands there follows from the rows, once the answer to the last touch is in; test_moments watches the time between."""
    sheet.page.wait_for_timeout(80)
    for tries_left in range(TRIES, -1, -1):
        try:
            return water.check(sheet.name, system, sheet.page.evaluate(water.READ))
        except AssertionError:
            if not tries_left:
                raise
        sheet.page.wait_for_timeout(200)


def step(sheet, luck):
    """Open a row that is asked and choose, nudge or type in it. Returns what was done."""
    return touch(sheet, luck, luck.choice(sheet.page.evaluate("[...document.querySelectorAll('.entry-row')].map((row) => row.dataset.entry)")))


def touch(sheet, luck, name):
    """Choose, nudge or type in one row. Returns what was done."""
    sheet.open(name)
    tray = sheet.page.locator(".entry[data-open] .entry-tray")
    tray.wait_for()
    chips = tray.locator("label.chip")
    if chips.count():
        place = luck.randrange(chips.count())
        chips.nth(place).tap()
        return f"choose {place} of {name}"
    if luck.random() < 0.3:
        tray.locator(".stepper button.key").nth(luck.randrange(2)).tap()
        return f"nudge {name}"
    typed = luck.choice(SLIPS if luck.random() < 0.1 else AMOUNTS)
    tray.get_by_role("textbox").fill(typed)
    return f"type {typed!r} into {name}"
