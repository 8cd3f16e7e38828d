"""Layouts that nobody means end in an answer or a refusal on both Pythons; tests/bench/hostile.py tries a hundred thousand."""
import random

import pytest

from tests.bench.hostile import hostile, outcome


@pytest.mark.parametrize("seed", range(0, 1000, 250))
def test_hostile(run, seed):
    """An answer of finite numbers or a CalcError: a hang, NaN or any other error fails here."""
    outcomes = set()
    for number in range(seed, seed + 250):
        layout, psi = hostile(random.Random(number), is_json=True)
        outcomes.add(outcome(lambda: run("layout.pressure", "discharge_pressure", layout=layout)))
        outcomes.add(outcome(lambda: run("layout.pressure", "flows", layout=layout, discharge_psi=psi)))
    assert "answer" in outcomes and len(outcomes) > 10
