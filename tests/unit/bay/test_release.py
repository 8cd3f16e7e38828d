"""What a release must prove, and lacks."""
import pytest

from site_src.content import checks

TABLE = [
    {"opened": "pump", "proofs": ["feed", "vacuum", "quick"]},
    {"opened": "shift", "proofs": ["states", "both_ways"]},
    {"opened": "priming", "proofs": ["vacuum"]},
]
WHOLE = {"opened": ["priming"], "checked": [], "passed": ["vacuum"], "repaired_by": "Moss", "by": "Hart", "done": "valve replaced"}


def test_proofs(run):
    """What was opened brings its tests, each once."""
    assert run("bay.release", "proofs", table=TABLE, opened=["priming", "pump"], checked=[]) == ["feed", "vacuum", "quick"]
    assert run("bay.release", "proofs", table=TABLE, opened=[], checked=[]) == []


def test_something_else(run):
    """Whatever was opened: what failed is tried again, with the tests of its system."""
    failed = [{"item": "leak_off", "system": "shift"}, {"item": "vacuum", "system": "priming"}, {"item": "seat", "system": None}]
    assert run("bay.release", "proofs", table=TABLE, opened=["other"], checked=failed) == ["leak_off", "vacuum", "seat", "states", "both_ways"]


def test_a_leak_of_the_brakes():
    """Air is lost with the brakes released or applied: after a repair both are tried (common practice: the commercial drivers' check does both)."""
    [brakes] = [row for row in checks.proofs() if row["opened"] == "brakes"]
    assert {"air_leak_released", "air_leak_applied"} <= set(brakes["proofs"])
    assert {row["system"] for row in checks.rows() if row["id"].startswith("air_leak")} == {"brakes"}


def test_each_system_has_its_tests():
    assert {row["system"] for row in checks.rows()} - {None} <= {row["opened"] for row in checks.proofs()}


@pytest.mark.parametrize(("change", "lacks"), [
    ({}, []),
    ({"opened": []}, ["opened"]),
    ({"passed": []}, ["proof:vacuum"]),
    ({"opened": ["shift"], "passed": ["states"]}, ["proof:both_ways"]),
    ({"by": ""}, ["by"]),
    ({"by": "x"}, ["by"]),
    ({"by": "xx"}, ["by"]),
    ({"checked": [{"item": "feed", "system": "priming"}]}, ["proof:feed"]),
    ({"by": "MOSS "}, ["same_name"]),
    ({"repaired_by": "", "by": "", "done": ""}, ["done", "repaired_by", "by"]),
])
def test_lacks(run, change, lacks):
    assert run("bay.release", "lacks", table=TABLE, entered={**WHOLE, **change}) == lacks
