"""The share of the browser's cases that a run takes: none is left out of every run."""
import types

import pytest

from tests import sampling

CASES = [types.SimpleNamespace(nodeid=f"tests/phone/{name}") for name in (
    *(f"test_access.py::test_text[{case}]" for case in range(8)), *(f"test_hostile.py::test_link[{case}]" for case in range(2)), "test_rig.py::test_name[1]",
)]


def test_three_runs_take_every_case():
    """Three commits in a row run all that is alike, once each; what is alone in its kind is in each run."""
    taken = [[item.nodeid for item in sampling.in_share(CASES, chosen)] for chosen in range(sampling.SHARES)]
    for item in CASES:
        assert sum(item.nodeid in names for names in taken) == (3 if "rig" in item.nodeid else 1)


@pytest.mark.parametrize(("variables", "expected"), [({"SHARE": "1"}, 1), ({"SHARE": "5"}, 2), ({"SHARE": "1", "EXHAUSTIVE": "1"}, None)])
def test_a_run_can_be_repeated(monkeypatch, variables, expected):
    """SHARE names the share, EXHAUSTIVE=1 all of them, and the run says which it took."""
    monkeypatch.delenv("EXHAUSTIVE", raising=False)
    for name, value in variables.items():
        monkeypatch.setenv(name, value)
    assert sampling.share() == expected
    assert ("all of them" if expected is None else f"SHARE={expected}") in sampling.said()
