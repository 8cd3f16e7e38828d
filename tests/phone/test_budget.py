"""Budgets of requests, by count: what a page asks for the first time it is opened, from the address to its answer.

Seen on 2026-11-30: Pressure 15 or, on a slow machine, 16, the bay card 20, with scripts and styles in two files and the terms it can explain. A budget is up to a tenth above.
"""
import pytest

MOST = {"pressure/": ("button.lay-line", 16), "shift/bay/": (".step-act", 21)}


@pytest.mark.parametrize("address", MOST)
def test_first_load(handset, address):
    """The first load of a page keeps to its requests."""
    answer, most = MOST[address]
    handset.open(address).locator(answer).first.wait_for()
    assert len(set(handset.requests)) <= most, len(set(handset.requests))
