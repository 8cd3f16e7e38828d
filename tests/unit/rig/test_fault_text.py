"""A problem made ready to be read: what was typed, and what would be taken, in the page's units."""
import pytest

from site_src.content import units
from tests.unit.rig.test_profile import SHELF, US, a_rig

SI = units.shown_in("SI")
HOSE = {"hose": "attack-1.75", "coefficient": "15.5@US"}


def faults(run, shown=US, **changes):
    return run("rig.profile", "at_hand", profile=a_rig(**changes), shelf=SHELF, units=shown)["shelf"]["faults"]


@pytest.mark.parametrize(
    ("shown", "changes", "typed", "allowed"),
    [
        (US, {"idle": " 200 "}, "200", ("300", "1500")), (US, {"pump_rated": "9@US"}, "9", ("50", "6000")),
        (US, {"hoses": [{**HOSE, "test_pressure": "40@US"}]}, "40", ("50", "2000")), (US, {"supply": [{"hose": "supply-5", "length": "600@US", "limit": "19@US"}]}, "19", ("20", "1000")),
        # 9 gpm are 34 L/min; 50 gpm are 189.3 and 6,000 gpm 22,712.5: the bounds are rounded inward
        (SI, {"pump_rated": "9@US"}, "34", ("190", "22712")),
    ],
)
def test_a_bound_that_was_passed(run, shown, changes, typed, allowed):
    """With what was typed come the least and the most."""
    [told] = faults(run, shown, **changes)
    assert (told["typed"], told["allowed"]["least"], told["allowed"]["most"]) == (typed, *allowed)


@pytest.mark.parametrize(("text", "typed"), [("5@nowhere", "5"), ("5@x@y", "5"), ("much", "much")])
def test_what_is_no_figure(run, text, typed):
    """What was typed comes without the mark of its system, and without bounds."""
    [told] = faults(run, tank=text)
    assert (told["typed"], "allowed" in told) == (typed, False)


@pytest.mark.parametrize("field", ["odd.key", "beds.4.length", "beds.x.length", "colour"])
def test_a_place_that_is_none(run, field):
    """A problem of no field, or of no row that there is, stays as it is."""
    told = [{"field": field, "code": "unknown_field"}]
    assert run("rig.fault_text", "read", problems=told, profile={"beds": [{}] * 4}, units=US) == told
