"""What a change does to a layout: by hand, and by law on random trees."""
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError
from tests.unit.layout.trees import TREES, flowing, fog, line, nozzles_of


def compared(run, lines, psi, changes):
    return run("layout.pressure", "compared", layout={"lines": lines}, discharge_psi=psi, changes=changes)


def a_pair(**supply):
    """Two equal lines of no loss of their own behind a supply that takes 60 psi at 200 gpm."""
    ends = [line(fog(100, 40), 2, 0, id=name) for name in ("left", "right")]
    return line({"lines": ends}, 15, 100, id="supply", **supply)


def test_shutting_one_of_two(run):
    """At 100 psi each has 40 psi and 100 gpm; alone, the one left has more."""
    told = compared(run, [a_pair()], 100, {"right": True})
    before, left, right = [line["nozzle"] for line in (told["before"]["lines"][1], *told["after"]["lines"][1:])]
    assert (before["flow_gpm"], before["nozzle_psi"]) == pytest.approx((100, 40), rel=1e-9)
    # by hand: Q^2 (40/100^2 + 15/100^2) = 100
    flow_gpm = 100 * (100 / 55) ** 0.5
    assert left["flow_gpm"] == pytest.approx(flow_gpm, rel=1e-9)
    assert left["nozzle_psi"] == pytest.approx(40 * 100 / 55, rel=1e-9)
    assert left["reaction_lbf"] == pytest.approx(0.0505 * flow_gpm * (40 * 100 / 55) ** 0.5, rel=1e-9)
    assert (right["flow_gpm"], right["reaction_lbf"]) == (0, 0)
    assert told["after"]["flow_gpm"] == left["flow_gpm"]


@settings(max_examples=40, deadline=None)
@given(lines=TREES, psi=st.integers(0, 300), data=st.data())
def test_compared_is_flows_twice(run, lines, psi, data):
    """Before is the layout as it stands and after the layout with the change written into it; the layout itself is left alone."""
    chosen = data.draw(st.sampled_from(nozzles_of(lines)))
    chosen["id"] = "chosen"
    told = compared(run, lines, psi, {"chosen": True})
    assert told["before"] == flowing(run, lines, psi)
    chosen["shut"] = True
    assert told["after"] == flowing(run, lines, psi)
    assert compared(run, lines, psi, {"chosen": False})["after"] == told["before"]


@pytest.mark.parametrize(
    ("changes", "field", "code"),
    [({"cellar": True}, "changes", "unknown_line"), ({"left": 1}, "shut", "not_true_or_false"), (["left"], "changes", "not_an_object")],
)
def test_bad_change(run, changes, field, code):
    """A line that is not there, or a change that is none, is refused."""
    with pytest.raises(CalcError) as refusal:
        compared(run, [a_pair()], 100, changes)
    assert (refusal.value.field, refusal.value.code) == (field, code)


def test_refused_by_name(run):
    """A pressure that is none is refused by its name, a line that is not there by its own."""
    with pytest.raises(CalcError) as refusal:
        compared(run, [a_pair()], "100", {})
    assert (refusal.value.field, refusal.value.code) == ("discharge_psi", "not_a_number")
    with pytest.raises(CalcError) as refusal:
        compared(run, [a_pair()], 100, {"cellar": True})
    assert refusal.value.facts == {"line": "cellar"}
