"""A diagnosis as people answer it: no wrong direction, no look that must not be made, and the true cause on the page in the end.

Each cause once, by a fixed seed; tests/bench/diagnosis.py runs every case.
"""
import random

import pytest

from tests.unit.diagnosis import simulation

SEED = "a sample"
CASES = {}
for case in simulation.cases():
    CASES.setdefault(case[0], []).append(case)
SAMPLE = [random.Random(f"{SEED} {cause}").choice(CASES[cause]) for cause in CASES]
# The goals themselves: the sample is the same in every run.
EXACT, NOISY = {"top-1, %": 97, "top-3, %": 99}, {"top-3, %": 80}
MOST_LOOKS = 7  # nine exact diagnoses in ten
# Everyday faults that look like a broken pump: each is to be found wherever it may show.
EVERYDAY = ("fill_left_open", "hose_clamped", "kink_or_block", "tip_wrong", "panel_switched_off", "retarder_working", "intake_screen_blocked", "foam_left_on", "regeneration_runs")


def figures(noise):
    return simulation.figures([simulation.run(*case, noise, SEED) for case in SAMPLE])


@pytest.mark.parametrize(("noise", "least", "most_wrong", "most_looks"), [
    (simulation.EXACT, EXACT, 0, MOST_LOOKS), (simulation.NOISY, NOISY, 2, simulation.MOST_STEPS)], ids=["exact", "noisy"])
def test_a_person_is_led_to_the_cause(noise, least, most_wrong, most_looks):
    """By true answers and by noisy ones; what must never be is not, however it is answered."""
    measured = figures(noise)
    assert [name for name in least if measured[name] < least[name]] == []
    assert measured["wrong verdicts, %"] <= most_wrong and measured["looks, p90"] <= most_looks
    assert {name: measured[name] for name in simulation.NEVER} == dict.fromkeys(simulation.NEVER, 0)


@pytest.mark.parametrize("cause", EVERYDAY)
def test_an_everyday_fault_is_found(cause):
    """From each sign that may open its diagnosis, by each role, answered by its own signs: among the three causes that are shown."""
    runs = [simulation.run(*case, simulation.EXACT, SEED) for case in CASES[cause] if case[2] == "none"]
    assert runs and [(one["entry"], one["role"], one["listed"]) for one in runs if cause not in one["listed"]] == []


@pytest.mark.parametrize("entry", [entry for entry in simulation.ENTRIES if simulation.begun_way(entry) == "road"])
def test_a_failed_shift_to_road_is_never_asked_for_one_to_pump(entry):
    """Every cause of each failed shift to road, by every role."""
    runs = [simulation.run(*case, simulation.NOISY, SEED) for cases in CASES.values() for case in cases if case[1] == entry and case[2] == "none"]
    assert runs and not any(simulation.is_other_way(entry, look) for one in runs for look, _, _ in one["looks"])
