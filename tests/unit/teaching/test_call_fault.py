"""The fault of a call: every picture of the three gauges, by hand."""
import pytest

from calc.teaching import call_fault
from site_src.content import units
from tests.unit.teaching.loaded import Loaded, offered

US = units.shown_in("US")


def pictures(intake_psi, master_psi, line_psi):
    return offered(lambda dice: call_fault.made(dice, intake_psi, master_psi, line_psi, "Crosslay", US))


def seen(step):
    return [(dial["gauge"], dial["quantity"], dial["value"], dial["sway"]) for dial in step["dials"]]


def needles(intake, master, line, sway=0, quantity="pressure"):
    return [("intake", quantity, pytest.approx(intake), sway), ("master", "pressure", pytest.approx(master), 0), ("line", "pressure", pytest.approx(line), 0)]


def test_from_a_hydrant_with_the_line_gated():
    """Intake 40, master 180, line 150. Half of it is left where the pump has less; a hose that burst leaves three tenths of that; a gate shut shows the master's."""
    steps = pictures(40, 180, 150)
    assert [(step["question"]["answer"]["right"], seen(step)) for step in steps] == [
        ("supply", needles(0, 90, 75)),
        ("supply", needles(-12, 90, 75, quantity="vacuum")),
        ("supply", needles(20, 90, 75, sway=15)),
        ("pump", needles(40, 90, 75)),
        ("pump", needles(40, 0, 0)),
        ("discharge", needles(40, 180, 0)),
        ("discharge", needles(40, 180, 180)),
        ("line", needles(40, 90, 22.5)),
    ]
    for step in steps:
        right = step["question"]["answer"]["right"]
        assert step["lamps"] is None and step["question"]["kind"] == "look" and step["question"]["habits"] == []
        assert step["question"]["facts"] == {"bed": "Crosslay", "intake": "40", "master": "180", "line": "150"}
        assert step["question"]["working"] == [{"code": f"side_{right}", "facts": {}}]
        assert step["question"]["answer"]["options"] == ["supply", "pump", "discharge", "line"]


def test_from_the_tank():
    """The intake stood at zero: zero says nothing, neither of a tank run dry nor of a pump, so that supply shows as vacuum or flutters about it."""
    steps = pictures(None, 180, 150)
    assert [(step["question"]["answer"]["right"], seen(step)[0]) for step in steps] == [
        ("supply", needles(-12, 0, 0, quantity="vacuum")[0]), ("supply", needles(0, 0, 0, sway=15)[0]),
        *((side, needles(0, 0, 0)[0]) for side in ("discharge", "discharge", "line")),
    ]
    assert {step["question"]["facts"]["intake"] for step in steps} == {"0"}


@pytest.mark.parametrize(("line_psi", "count"), [(180, 7), (165.1, 7), (165, 8)])
def test_a_line_that_is_not_gated(line_psi, count):
    """Less than 15 psi below the master is alike to a gauge: a line that shows the master's would say nothing."""
    assert len(pictures(40, 180, line_psi)) == count
