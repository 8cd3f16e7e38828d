"""A diagnosis as people answer it: no wrong direction, no look that must not be made, and the true cause on the page in the end.

A share of the cases only; tests/bench/diagnosis.py runs them all.
"""
import random

import pytest

from tests.unit.diagnosis import simulation

SEED = "a sample"
CASES = random.Random(SEED).sample(list(simulation.cases()), 80)
# The goals, less three standard deviations of a share in 80 cases: 97 % by 1.9, 99 % by 1.1, 80 % by 4.5, 2 % by 1.6.
EXACT = {"top-1, %": 97 - 3 * 1.9, "top-3, %": 99 - 3 * 1.1}
NOISY = {"top-3, %": 80 - 3 * 4.5}


def figures(noise):
    return simulation.figures([simulation.run(*case, noise, SEED) for case in CASES])


@pytest.mark.parametrize(("noise", "least", "most_wrong"), [(simulation.EXACT, EXACT, 0), (simulation.NOISY, NOISY, 2 + 3 * 1.6)], ids=["exact", "noisy"])
def test_a_person_is_led_to_the_cause(noise, least, most_wrong):
    """By true answers and by noisy ones; what must never be is not, however it is answered."""
    measured = figures(noise)
    assert [name for name in least if measured[name] < least[name]] == []
    assert measured["wrong verdicts, %"] <= most_wrong
    assert {name: measured[name] for name in simulation.NEVER} == dict.fromkeys(simulation.NEVER, 0)


@pytest.mark.parametrize("entry", [entry for entry in simulation.ENTRIES if simulation.begun_way(entry) == "road"])
def test_a_failed_shift_to_road_is_never_asked_for_one_to_pump(entry):
    """Every cause of each failed shift to road, by every role."""
    runs = [simulation.run(*case, simulation.NOISY, SEED) for case in simulation.cases() if case[1] == entry and case[2] == "none"]
    assert runs and not any(simulation.is_other_way(entry, look) for one in runs for look, _, _ in one["looks"])
