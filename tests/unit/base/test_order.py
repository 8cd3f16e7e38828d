"""Rows in order on both Pythons, what was equal as it came, and no row looked at more often than it must be."""
import random

import pytest

from calc.base.order import ordered


class Counted:
    """A key that counts how often it is compared."""

    compared = 0

    def __init__(self, value):
        self.value = value

    def __lt__(self, other):
        Counted.compared += 1
        return self.value < other.value


@pytest.mark.parametrize("rows", [[], [3], [1, 2, 3], [3, 2, 1], [2, 1, 2, 1, 2], [5, 1, 4, 2, 3, 0, 6]])
def test_least_first(rows):
    """As Python's own sort has it, which is stable: each value with the place it came from."""
    placed = [(value, place) for place, value in enumerate(rows)]
    assert ordered(placed, lambda row: row[0]) == sorted(placed, key=lambda row: row[0])


def test_any_rows():
    """A thousand random lists with many equals among them."""
    made = random.Random(1)
    for _ in range(1000):
        placed = [(made.randrange(8), place) for place in range(made.randrange(40))]
        assert ordered(placed, lambda row: row[0]) == sorted(placed, key=lambda row: row[0])


@pytest.mark.parametrize(("values", "most"), [(range(1000), 1000), ([7] * 1000, 1000), (range(1000, 0, -1), 11000), ([(37 * place) % 1000 for place in range(1000)], 11000)])
def test_no_order_is_a_slow_one(values, most):
    """What is in order takes one look at each; any other at most one more a doubling: 1,000 x (1 + log2 1,000) = 10,966."""
    Counted.compared = 0
    ordered(values, Counted)
    assert Counted.compared <= most
