"""A test of an edition before is planned as on its day: what came later is not asked of it."""
import pytest

from site_src.content import former
from tests.unit.service.made import a_rig
from tests.unit.service.test_plan_parts import fields, limits, parts, planned

OLDEST = former.limits("2026-11-25")["us"]["annual"]
WHEN_NEW = {"tank_new_gpm": 480, "relief_set_psi": 125}  # which nobody asked for then


# the figures of its data: a valve adjustable from 90 to 185 psi, 500 gpm of a new pumper's tank line, 10 percent of a meter
@pytest.mark.parametrize(
    ("name", "asked", "judged"),
    [("intake_relief", [("relief_setting_psi", "pressure"), ("relief_opened", "check")], [("relief_setting_psi", "pressure", "value", None, 90, 185)]),
     ("tank", [("tank_flow_gpm", "flow")], [("tank_flow_gpm", "flow", "value", None, 500, None)]),
     ("meters", [("main.shown_gpm", "flow"), ("main.pitot_gpm", "flow")], [("main.error_percent", "percent", "percent_error", ["main.shown_gpm", "main.pitot_gpm"], None, 10)]),
     ("governed", [("governed_rpm", "speed")], [("governed_rpm", "speed", "value", None, 2150, 2250)]),
     ("shift", [("shift_proved", "check")], [])],
)
def test_the_parts_of_its_day(run, name, asked, judged):
    part = parts(planned(run, a_rig(**WHEN_NEW) | {"standard": OLDEST}))[name]
    assert (part["id"], part["fields"], part["limits"], part["missing"]) == (name, fields(asked), limits(judged), [])


def test_the_pressure_control_of_its_day(run):
    """One of them, whichever the rig has, without flows."""
    plan = parts(planned(run, a_rig(controls=["governor", "relief"]) | {"standard": OLDEST}))
    assert [field["id"] for field in plan["pressure_control"]["fields"]] == [
        f"at_{psi}.{name}" for psi in (150, 90, 250) for name in ("set_psi", "peak_psi", "closing_s")]
    assert not {"governor", "relief_valve", "compound", "foam"} & set(plan)
