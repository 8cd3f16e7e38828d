"""The share of the browser's cases that a run takes: none is left out of every run."""
import types

import pytest

from tests import sampling

CASES = [types.SimpleNamespace(nodeid=f"tests/phone/{name}") for name in (
    *(f"test_access.py::test_text[{case}]" for case in range(8)), *(f"test_hostile.py::test_link[{case}]" for case in range(2)), *(f"test_claim.py::test_number[{case}]" for case in range(11)), "test_rig.py::test_name[1]",
)]


def test_a_round_of_runs_takes_every_case():
    """Commits in a row run all that is alike, each as often as the others; what is alone in its kind is in each run."""
    taken = [[item.nodeid for item in sampling.in_share(CASES, chosen)] for chosen in range(sampling.ROUND)]
    for item in CASES:
        shares = next((shares for name, shares in sampling.SHARES.items() if name in item.nodeid), 1)
        assert sum(item.nodeid in names for names in taken) == sampling.ROUND / shares


@pytest.mark.parametrize(("variables", "expected"), [({"SHARE": "1"}, 1), ({"SHARE": "17"}, 2), ({"SHARE": "1", "EXHAUSTIVE": "1"}, None)])
def test_a_run_can_be_repeated(monkeypatch, variables, expected):
    """SHARE names the share, EXHAUSTIVE=1 all of them, and the run says which it took."""
    monkeypatch.delenv("EXHAUSTIVE", raising=False)
    for name, value in variables.items():
        monkeypatch.setenv(name, value)
    assert sampling.share() == expected
    assert ("all of them" if expected is None else f"SHARE={expected}") in sampling.said()
