"""Budgets of requests, by count: what a page asks for the first time it is opened, from the address to its answer.

Seen on 2026-11-28: Pressure 69, the bay card 50; each script is one file with one idea, and a phone asks for them once, when
it installs the site. A budget is up to a tenth above.
"""
import pytest

MOST = {"pressure/": ("button.lay-line", 84), "shift/bay/": (".step-act", 54)}


@pytest.mark.parametrize("address", MOST)
def test_first_load(handset, address):
    """The first load of a page keeps to its requests."""
    answer, most = MOST[address]
    handset.open(address).locator(answer).first.wait_for()
    assert len(set(handset.requests)) <= most, len(set(handset.requests))
