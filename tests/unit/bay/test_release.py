"""What a release must prove, and lacks."""
import pytest

TABLE = [
    {"opened": "pump", "proofs": ["feed", "vacuum", "quick"]},
    {"opened": "shift", "proofs": ["states", "both_ways"]},
    {"opened": "priming", "proofs": ["vacuum"]},
]
WHOLE = {"opened": ["priming"], "passed": ["vacuum"], "repaired_by": "Moss", "by": "Hart", "done": "valve replaced"}


def test_proofs(run):
    """What was opened brings its tests, each once."""
    assert run("bay.release", "proofs", table=TABLE, opened=["priming", "pump"]) == ["feed", "vacuum", "quick"]
    assert run("bay.release", "proofs", table=TABLE, opened=[]) == []


@pytest.mark.parametrize(("change", "lacks"), [
    ({}, []),
    ({"opened": []}, ["opened"]),
    ({"passed": []}, ["proof:vacuum"]),
    ({"opened": ["shift"], "passed": ["states"]}, ["proof:both_ways"]),
    ({"by": ""}, ["by"]),
    ({"by": "MOSS "}, ["same_name"]),
    ({"repaired_by": "", "by": "", "done": ""}, ["done", "repaired_by", "by"]),
])
def test_lacks(run, change, lacks):
    assert run("bay.release", "lacks", table=TABLE, entered={**WHOLE, **change}) == lacks
