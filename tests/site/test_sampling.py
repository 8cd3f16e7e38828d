"""The share of like cases that a run takes: none is left out of every run."""
import subprocess
import sys
import types

import pytest

import build
from tests import sampling

CASES = [types.SimpleNamespace(nodeid=f"tests/{name}") for name in (
    *(f"phone/test_{name}.py::test_text[{case}]" for name in ("access", "touch") for case in range(8)), *(f"phone/test_claim.py::test_number[{case}]" for case in range(17)), "phone/test_rig.py::test_name", "unit/test_laws.py::test_rooms",
    "unit/shift/test_proof.py::test_the_exploration_notices_a_guard_that_is_never_asked[road: throttle]",
    "unit/shift/test_proof.py::test_no_reachable_state_offers_an_act_with_a_guard_missing[road-any drive]",
)]

BETWEEN = {"laws": 1, "claim": 60, "access": 20, "phone": 10, "asked": 8, "missing": 4}


def test_a_round_of_runs_takes_every_case():
    """Commits in a row run every case of the browser, each as often as the others; what needs none is in each run."""
    taken = [[item.nodeid for item in sampling.in_share(CASES, chosen)] for chosen in range(sampling.ROUND)]
    for item in CASES:
        between = next(shares for part, shares in BETWEEN.items() if part in item.nodeid)
        expected = sampling.ROUND // between
        assert sum(item.nodeid in names for names in taken) == expected, item.nodeid


def test_a_round_of_runs_takes_every_seed(monkeypatch):
    """Five runs in a row take each of ten thousand seeds once; one that is to run all takes all."""
    monkeypatch.delenv("EXHAUSTIVE", raising=False)
    taken = []
    for chosen in range(11, 11 + sampling.PARTS):
        monkeypatch.setenv("SHARE", str(chosen))
        taken.extend(sampling.seeds(10_003))
    assert sorted(taken) == list(range(10_003))
    monkeypatch.setenv("EXHAUSTIVE", "1")
    assert sampling.seeds(10_003) == range(10_003)


@pytest.mark.parametrize(("variables", "expected"), [({"SHARE": "1"}, 1), ({"SHARE": "122"}, 2), ({"SHARE": "1", "EXHAUSTIVE": "1"}, None)])
def test_a_run_can_be_repeated(monkeypatch, variables, expected):
    """SHARE names the share, EXHAUSTIVE=1 all of them, and the run says which it took and by what seed it walked."""
    monkeypatch.delenv("EXHAUSTIVE", raising=False)
    monkeypatch.setenv("SEED", "12")
    for name, value in variables.items():
        monkeypatch.setenv(name, value)
    assert sampling.share() == expected
    assert ("all of them" if expected is None else f"SHARE={expected}") in sampling.said()
    assert "SEED=12" in sampling.said()


def test_what_a_machine_cannot_test_is_said_last(tmp_path):
    """An engine that is not there stops no run, and no run ends without saying so, once."""
    (tmp_path / "test_away.py").write_text("import pytest\n\n@pytest.mark.parametrize('case', range(3))\ndef test_away(case):\n    pytest.skip('an engine was NOT tested')\n", encoding="utf-8")
    run = subprocess.run([sys.executable, "-m", "pytest", "-q", "-p", "tests.sampling", "-p", "no:cacheprovider", "-n", "2", f"--rootdir={tmp_path}", str(tmp_path)], cwd=build.ROOT, capture_output=True, encoding="utf-8")
    *_, reason, share = [line for line in run.stdout.splitlines() if line.startswith(("NOT PROVEN", "Browser"))]
    assert (run.returncode, reason) == (0, "NOT PROVEN: an engine was NOT tested"), run.stdout
    assert run.stdout.count("NOT PROVEN") == 1 and share.startswith("Browser cases: ")
