"""What a release must prove, and lacks."""
import pytest

from calc.bay import records
from site_src.content import checks

TABLE = [{"opened": opened, "after": after, "proofs": proofs} for opened, after, proofs in (
    ("pump", None, ["feed", "vacuum", "quick"]), ("shift", None, ["states", "both_ways"]), ("priming", None, ["vacuum"]),
    ("nothing", None, ["seen_good"]), (None, "halt", ["states", "brake"]),
)]
WHOLE = {"opened": ["priming"], "defects": [], "passed": ["vacuum"], "repaired_by": "Moss", "by": "Hart", "done": "valve replaced"}
NOTHING = {**WHOLE, "opened": ["nothing"], "passed": ["seen_good"], "done": "cap was loose, tight now"}


def of(origin, item=None, system=None):
    return {"origin": origin, "item": item, "system": system}


def test_proofs(run):
    """What was opened brings its tests, each once."""
    assert run("bay.release", "proofs", table=TABLE, opened=["priming", "pump"], defects=[of("report")]) == ["feed", "vacuum", "quick"]
    assert run("bay.release", "proofs", table=TABLE, opened=[], defects=[]) == []


def test_something_else(run):
    """Whatever was opened: what failed is tried again, with the tests of its system."""
    failed = [of("check", "leak_off", "shift"), of("check", "vacuum", "priming"), of("check", "seat")]
    assert run("bay.release", "proofs", table=TABLE, opened=["other"], defects=failed) == ["leak_off", "vacuum", "seat", "states", "both_ways"]


def test_nothing_opened(run):
    """What a check found is tried again and seen good; the tests of a system that stayed shut are not asked for."""
    assert run("bay.release", "proofs", table=TABLE, opened=["nothing"], defects=[of("check", "leak_off", "shift"), of("report")]) == ["leak_off", "seen_good"]


def test_a_rig_that_moved(run):
    """It shows its shift and its parking brake, whatever was opened."""
    for opened, proofs in ((["other"], ["states", "brake"]), (["shift"], ["states", "both_ways", "brake"])):
        assert run("bay.release", "proofs", table=TABLE, opened=opened, defects=[of("halt")]) == proofs
    assert run("bay.release", "lacks", table=TABLE, entered={**WHOLE, "defects": [of("halt")]}) == ["proof:states", "proof:brake"]


def test_what_a_moved_rig_proves():
    """All that an opened shift proves, and the parking brake (common practice: a rig that moved in pump went by its shift or its brake)."""
    after = {row["after"]: row["proofs"] for row in checks.proofs() if row["after"]}
    [shift] = [row["proofs"] for row in checks.proofs() if row["opened"] == "shift"]
    assert after.keys() == {records.HALT} and set(after[records.HALT]) == {*shift, "brake_parking"}


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
    ({"defects": [of("check", "feed", "priming")]}, ["proof:feed"]),
    ({"done": "  "}, ["done"]),
    (NOTHING, []),
    ({**NOTHING, "defects": [of("check"), of("report")]}, []),
    ({**NOTHING, "done": " "}, ["reason"]),
    ({**NOTHING, "passed": []}, ["proof:seen_good"]),
    ({**NOTHING, "opened": ["nothing", "priming"], "passed": ["seen_good", "vacuum"]}, ["alone"]),
    *[({**NOTHING, "defects": [of("report"), of(origin)]}, ["happened"]) for origin in ("card", "test", "diagnosis", "override")],
    ({**NOTHING, "defects": [of("halt")]}, ["happened", "proof:states", "proof:brake"]),
    ({"by": "MOSS "}, ["same_name"]),
    ({"repaired_by": "", "by": "", "done": ""}, ["done", "repaired_by", "by"]),
])
def test_lacks(run, change, lacks):
    assert run("bay.release", "lacks", table=TABLE, entered={**WHOLE, **change}) == lacks
