"""A hose measured on the Rig page as a claim: its C follows from the readings that stand above it, or there is none."""
import os

import pytest
from playwright.sync_api import Error

from calc.base.errors import CalcError
from calc.rig import hose_test
from site_src.content import data, units
from tests.phone.claim import chance, walks
from tests.phone.test_rig import press
from tests.phone.test_rig_faults import SOUND, chosen

WALKS, STEPS, TRIES, MOST = 15, 25, 25, 3
R = data.words("rig")
SYSTEM = "US"
HANDBOOK = data.by_id(data.named("hoses"))[SOUND["hoses"][0]["hose"]]["coefficient"]
NAMES = ("inlet", "outlet", "flow", "length")
AMOUNTS = {"inlet": ("100", "150", "180", "60"), "outlet": ("60", "52", "140", "0", "100"), "flow": ("200", "150", "95", "0"), "length": ("100", "200", "150", "50")}
SLIPS = ("", "12x", "1.2.3", "-5", "99999999")
READ = """() => ({
  readings: [...document.querySelectorAll(".reading")].map((reading) => [...reading.querySelectorAll("input")].map((input) => input.value)),
  result: document.querySelector(".measure-result b")?.innerText ?? null,
})"""


@pytest.mark.parametrize("walk", walks(WALKS))
def test_coefficient_follows_from_its_readings(take, walk):
    """After each of 25 acts the C and the handbook's beside it are what the desk works out from the readings, or no C stands."""
    luck, steps, handset = chance("rig", walk), [], take()
    chosen(handset, SOUND)
    page = handset.open("rig/")
    page.get_by_text(R["rig"]["section_hoses"], exact=True).tap()
    page.get_by_text(R["measure"]["title"], exact=True).first.tap()
    page.locator(".reading").first.wait_for()
    try:
        for place, name in enumerate(NAMES):
            page.locator(".reading input").nth(place).fill(AMOUNTS[name][0])
        for _ in range(STEPS):
            follows(page)
            steps.append(step(page, luck))
        follows(page)
    except (AssertionError, Error) as why:
        raise AssertionError(f"{why}\nSEED={os.environ['SEED']}, rig {walk}: " + "; ".join(steps)) from why


def follows(page):
    """What stands there follows from the readings, once the answer to the last act is in."""
    for tries_left in range(TRIES, -1, -1):
        page.wait_for_timeout(80)
        shown = page.evaluate(READ)
        expected = worked_out(shown["readings"])
        if shown["result"] == expected:
            return
        assert tries_left, (expected, shown)
        page.wait_for_timeout(200)


def worked_out(readings):
    typed = [{name: f"{text}@{SYSTEM}" if text.strip() else "" for name, text in zip(NAMES, reading, strict=True)} for reading in readings]
    try:
        return R["measure"]["result"].format(**hose_test.read(typed, HANDBOOK, units.shown_in(SYSTEM)))
    except CalcError:
        return None


def step(page, luck):
    """Type into an input of a reading, add a reading or take one away. Returns what was done."""
    readings = page.locator(".reading")
    count = readings.count()
    if luck.random() < 0.1 and count < MOST:
        press(page, "measure", "add")
        return "add"
    if luck.random() < 0.1 and count > 1:
        place = luck.randrange(count)
        readings.nth(place).get_by_role("button").tap()
        return f"remove {place}"
    reading, place = luck.randrange(count), luck.randrange(len(NAMES))
    text = luck.choice(SLIPS if luck.random() < 0.1 else AMOUNTS[NAMES[place]])
    readings.nth(reading).locator("input").nth(place).fill(text)
    return f"type {text!r} into {NAMES[place]} of {reading}"
