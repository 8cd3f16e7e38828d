"""A pump at the rear is driven by the shaft or by a PTO: two kinds, wherever its drive decides. Common practice."""
import pytest

from site_src.content import data, standards
from tests.unit.rig.test_profile import a_rig, problems


@pytest.mark.parametrize(("drive", "checks"), [
    ("midship", {"road_released", "road_set", "pump_neutral", "pump_gear", "pump_wrong_gear"}), ("rear_shaft", {"road_released", "road_set", "pump_neutral", "pump_gear", "pump_wrong_gear"}),
    ("pto", {"pto_off", "pto_on", "pto_released"}), ("rear_pto", {"pto_off", "pto_on", "pto_released"}), ("rear", set()), (None, set()),
])
def test_the_interlock_test_of_a_rear_mount(run, drive, checks):
    """A split shaft at the rear is tested as one amidships, a PTO as a PTO; what "rear" was is asked."""
    plan = run("service.plan", "plan", rig={"rated_gpm": 1250, "standard": standards.standard("us", "annual"), "drive": drive}, conditions={"source": "draft"})
    [interlock] = [test for test in plan["tests"] if test["id"] == "interlock"]
    asked = {field["id"] for field in interlock["fields"]}
    assert {check for check in asked if check.split("_")[0] in ("road", "pump", "pto")} == checks
    assert interlock["missing"] == ([] if checks else ["rig.drive"])


def test_an_older_profile_is_read_and_its_drive_asked(run):
    """ "rear" is no fault, and no answer: it is named among what is missing."""
    profile = {**a_rig(), "drive": "rear"}
    assert problems(run, profile) == []
    assert "drive" in run("rig.check", "missing", profile=profile)
    assert "drive" not in run("rig.check", "missing", profile={**profile, "drive": "rear_pto"})


@pytest.mark.parametrize("file", ["faults", "diagnose/interlocks", "diagnose/collar"])
def test_no_table_knows_a_plain_rear(file):
    """Wherever drives are listed, a shaft and a PTO at the rear stand with their like."""
    text = (data.FOLDER / f"{file}.toml").read_text(encoding="utf-8")
    assert '"rear"' not in text
    assert ('"midship", "rear_shaft"' in text) and (file == "diagnose/collar" or '"pto", "rear_pto"' in text)
