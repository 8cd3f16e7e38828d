"""Heat and Speeds as claims: whatever is typed, tapped and reloaded, the figures follow from the entries that stand below them."""
import os

import pytest
from playwright.sync_api import Error

from site_src.content import units
from tests.phone.claim import chance, typed, walks

WALKS, STEPS, TRIES = 30, 25, 25
AMOUNTS = ("0", "1", "2", "5", "12", "40", "65", "120", "250", "500", "700", "1000", "2500", "7.5", "0.5", "5.38", "2.3", "1.41")
# what a rig may have, of entries whose bounds leave little of these
OF_A_RIG = {"engine": ("0", "700", "1,200", "2000", "2800"), "idle": ("600", "700", "1000"), "governed": ("1000", "2200"), "tyre_rev": ("495", "700", "1000")}
SLIPS = ("", "12x", "1.2.3", "-5", "99999999", "1.000", " 40 ", "1,200")
SYSTEMS = tuple(units.baked())
# what a needle needs, at once, since figures come only with all of it
GEARED = {"engine": "700", "idle": "700", "pump_ratio": "2.3", "axle_ratio": "5.38", "tyre_rev": "495", "pump_gear_ratio": "1"}


@pytest.mark.parametrize("walk", walks(WALKS))
@pytest.mark.parametrize("name", typed.KINDS)
def test_figures_follow_from_entries(take, name, walk):
    """After each of 25 acts the figures are those that the desk works out from the inputs, or the same input is refused and no figure stands."""
    luck = chance(name, walk)
    system = luck.choice(SYSTEMS)
    page, steps = take().open(f"why/{name}/"), [system]
    page.evaluate("name => localStorage.setItem('units', name)", system)
    page.reload()
    try:
        if name == "speeds":
            for field, text in GEARED.items():
                page.locator(f"#speeds-{field}").fill(text)
        follows(page, name, system)
        for _ in range(STEPS):
            steps.append(step(page, luck))
            follows(page, name, system)
    except (AssertionError, Error) as why:
        raise AssertionError(f"{why}\nSEED={os.environ['SEED']}, {name} {walk}: " + "; ".join(steps)) from why


def follows(page, name, system):
    """What stands there follows from the entries, once the answer to the last act is in."""
    page.locator("main input").first.wait_for()
    for tries_left in range(TRIES, -1, -1):
        page.wait_for_timeout(80)
        try:
            return typed.check(name, system, page.evaluate(typed.READ))
        except AssertionError:
            if not tries_left:
                raise
        page.wait_for_timeout(200)


def step(page, luck):
    """Type into an input, or touch a key beside one. Returns what was done."""
    keys = page.locator("main .stepper button.key")
    if luck.random() < 0.1:
        page.reload()
        return "reload"
    if luck.random() < 0.3:
        place = luck.randrange(keys.count())
        keys.nth(place).tap()
        return f"key {place}"
    inputs = page.locator("main input:visible")
    place = luck.randrange(inputs.count())
    field = inputs.nth(place).get_attribute("id").replace("speeds-", "")
    text = luck.choice(SLIPS if luck.random() < 0.15 else AMOUNTS if luck.random() < 0.15 else OF_A_RIG.get(field, AMOUNTS))
    inputs.nth(place).fill(text)
    return f"type {text!r} into {field}"
