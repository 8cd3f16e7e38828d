"""Throws of a seed: the published row of the generator, each face as often, and a picked or mixed row that loses nothing."""
import collections

import pytest

from calc.teaching.dice import Dice

LOSES = 2 ** 8  # the low bits are not thrown with: they go round too soon
# the row that this generator, state x 1103515245 + 12345 modulo 2^31, gives from 0 (a published example of it; from memory)
PUBLISHED = [12345, 1406932606, 654583775, 1449466924, 229283573, 1109335178, 1051550459, 1293799192, 794471793, 551188310]


def test_the_published_row():
    """Seed 0 begins at the first of the row and passes over four."""
    dice = Dice(0)
    assert [dice.below(2 ** 23) for _ in PUBLISHED[5:]] == [state // LOSES for state in PUBLISHED[5:]]


def test_seeds_side_by_side():
    """A seed is spread by the prime next to 2^32 over the golden ratio: by hand, seed 1 begins at 2654435761 + 12345 = 506964458 modulo 2^31."""
    state = 506964458
    for _ in range(5):
        state = (state * 1103515245 + 12345) % 2 ** 31
    assert Dice(1).below(2 ** 23) == state // LOSES
    firsts = collections.Counter(Dice(seed).below(6) for seed in range(600))
    assert all(60 <= firsts[face] <= 140 for face in range(6))  # 100 each, give or take four deviations of 9.1


def test_every_face_is_as_likely():
    """6,000 throws of a die: 1,000 of each face, give or take four deviations of 29."""
    dice = Dice(2026)
    thrown = collections.Counter(dice.below(6) for _ in range(6000))
    assert set(thrown) == set(range(6)) and all(abs(count - 1000) < 116 for count in thrown.values())


@pytest.mark.parametrize("seed", range(20))
def test_mixed_loses_nothing(seed):
    """A row mixed is the same row; one picked stands in it."""
    rows = ["a", "b", "c", "d", "e"]
    assert sorted(Dice(seed).mixed(rows)) == rows == ["a", "b", "c", "d", "e"]
    assert Dice(seed).pick(rows) in rows
