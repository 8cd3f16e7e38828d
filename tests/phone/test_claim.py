"""The Pressure page as a claim: whatever is tapped and typed, its biggest number follows from what a person reads there."""
import os

import pytest

from tests.phone.claim import chance, desk, rig, walks
from tests.phone.claim.walk import Walk

WALKS = 200
STEPS = 25


@pytest.mark.parametrize("number", walks(WALKS))
def test_number_follows_from_what_stands_beside_it(take, number):
    """After each of 25 touches the pump pressure is the one that the labels and numbers on the page give at the desk.

    Every fourth walk is made for a rig, whose hose figures are read on the Rig page.
    """
    handset = take()
    coefficients = rig.coefficients(handset, chance("rig", number)) if number % 4 == 3 else {}
    page = open_afresh(handset)
    walk = Walk(page, chance("pressure", number))
    try:
        shown = walk.read()
        desk.check(shown, coefficients)
        for _ in range(STEPS):
            walk.step(shown)
            shown = walk.read()
            desk.check(shown, coefficients)
    except AssertionError as why:
        raise AssertionError(f"{why}\nSEED={os.environ['SEED']}, walk {number}: " + "; ".join(walk.steps)) from why
    page.close()


def open_afresh(handset):
    """The Pressure page of a phone on which no layout was entered yet."""
    page = handset.open("pressure/")
    page.locator("button.lay-line").first.wait_for()
    return page
