"""The Pressure page as a claim: whatever is tapped and typed, its biggest number follows from what a person reads there."""
import os

import pytest

from tests.phone.claim import desk
from tests.phone.claim.walk import Walk

WALKS = 200
STEPS = 25


@pytest.mark.parametrize("seed", range(WALKS))
def test_number_follows_from_what_stands_beside_it(take_for_module, seed):
    """After each of 25 touches the pump pressure is the one that the labels and numbers on the page give at the desk."""
    page = open_afresh(take_for_module)
    walk = Walk(page, seed)
    try:
        shown = walk.read()
        desk.check(shown, {})
        for _ in range(STEPS):
            walk.step(shown)
            shown = walk.read()
            desk.check(shown, {})
    except AssertionError as why:
        raise AssertionError(f"{why}\nseed {seed}: " + "; ".join(walk.steps)) from why
    page.close()


def open_afresh(take):
    """The Pressure page of a phone on which nothing was entered yet."""
    page = take().open("pressure/")
    page.get_by_role("textbox").first.wait_for()
    return page
