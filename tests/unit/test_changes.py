"""What a change does to a lay, and the most it can pass: by hand, and by law on random trees."""
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.errors import CalcError
from tests.unit.lays import TREES, flowing, fog, line, nozzles_of


def compared(run, lines, psi, changes):
    return run("layout", "compared", layout={"lines": lines}, discharge_psi=psi, changes=changes)


def greatest(run, lines, limit_psi):
    return run("layout", "greatest_flow", layout={"lines": lines}, limit_psi=limit_psi)


def a_pair(**supply):
    """Two equal lines of no loss of their own behind a supply that takes 60 psi at 200 gpm."""
    ends = [line(fog(100, 40), 2, 0, id=name) for name in ("left", "right")]
    return line({"lines": ends}, 15, 100, id="supply", **supply)


def test_shutting_one_of_two(run):
    """At 100 psi each has 40 psi and 100 gpm; alone, the one left has more."""
    told = compared(run, [a_pair()], 100, {"right": True})
    left, right = told["nozzles"]
    assert (left["id"], right["id"]) == ("left", "right")
    assert (left["before"]["flow_gpm"], left["before"]["nozzle_psi"]) == pytest.approx((100, 40), rel=1e-9)
    # by hand: Q^2 (40/100^2 + 15/100^2) = 100
    flow_gpm = 100 * (100 / 55) ** 0.5
    assert left["after"]["flow_gpm"] == pytest.approx(flow_gpm, rel=1e-9)
    assert left["after"]["nozzle_psi"] == pytest.approx(40 * 100 / 55, rel=1e-9)
    assert left["after"]["reaction_lbf"] == pytest.approx(0.0505 * flow_gpm * (40 * 100 / 55) ** 0.5, rel=1e-9)
    assert (right["after"]["flow_gpm"], right["after"]["reaction_lbf"]) == (0, 0)
    assert told["after"]["flow_gpm"] == left["after"]["flow_gpm"]


@settings(max_examples=40, deadline=None)
@given(lines=TREES, psi=st.integers(0, 300), data=st.data())
def test_compared_is_flows_twice(run, lines, psi, data):
    """Before is the lay as it stands and after the lay with the change written into it; the lay itself is left alone."""
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


def test_greatest_flow(run):
    """Within 280 psi: 240 are left for friction, four times the 60 of the rated flow, so twice that flow."""
    told = greatest(run, [a_pair()], 280)
    assert (told["share"], told["flow_gpm"], told["discharge_psi"]) == pytest.approx((2, 400, 280), rel=1e-9)
    assert [(each["id"], each["flow_gpm"]) for each in told["nozzles"]] == [("left", pytest.approx(200)), ("right", pytest.approx(200))]


def test_the_neediest_nozzle_sets_the_limit(run):
    """Of two lines from the pump the longer sets it: 15.5 x 2.25 x 2 = 69.75 psi at 150 gpm, and 100 left of 200."""
    told = greatest(run, [line(fog(), length_ft=100, id="short"), line(fog(), id="long")], 200)
    assert told["line"] == "long"
    assert told["share"] == pytest.approx((100 / 69.75) ** 0.5, rel=1e-9)


def test_no_flow_within_the_limit(run):
    """A nozzle that needs the whole limit at rest, or a lay that is shut, passes nothing."""
    assert greatest(run, [line(fog(), id="high", rise_ft=100)], 143.4)["flow_gpm"] == pytest.approx(0, abs=1e-3)  # 100 + 43.4
    told = greatest(run, [line(fog(), id="high", rise_ft=200)], 150)
    assert (told["flow_gpm"], told["discharge_psi"], told["line"]) == (0, 0, "high")
    told = greatest(run, [line(fog(), shut=True)], 150)
    assert (told["flow_gpm"], told["line"], told["nozzles"]) == (0, None, [])


def test_nothing_limits(run):
    """Where nothing takes pressure from a flow there is no greatest one, and that is said."""
    with pytest.raises(CalcError) as refusal:
        greatest(run, [line(fog(), length_ft=0)], 200)
    assert (refusal.value.field, refusal.value.code) == ("lines", "no_losses")


@settings(max_examples=40, deadline=None)
@given(lines=TREES, limit_psi=st.integers(50, 400))
def test_the_greatest_flow_needs_the_limit(run, lines, limit_psi):
    """A lay of nozzles rated for their share of the greatest flow needs the limit at the pump, no more and no less."""
    for each in nozzles_of(lines):  # of a kind that can be rated for any flow
        rated = [each["end"].get(name) for name in ("rated_gpm", "set_gpm", "max_gpm", "flow_gpm")]
        each["end"] = fog(next((gpm for gpm in rated if gpm), 150), 60)
    told = greatest(run, lines, limit_psi)
    if not told["flow_gpm"]:
        assert still_psi(lines) >= limit_psi - 60
        return
    for each, share in zip(nozzles_of(lines), told["nozzles"]):
        each["end"]["rated_gpm"] = share["flow_gpm"]
    set_appliances(lines, told["share"] ** 2)
    report = run("layout", "discharge_pressure", layout={"lines": lines})
    assert (report["discharge_psi"], report["flow_gpm"]) == (pytest.approx(limit_psi, rel=1e-6), pytest.approx(told["flow_gpm"], rel=1e-9))


def still_psi(lines):
    """What the highest nozzle's height takes."""
    return max(0.434 * each["rise_ft"] + (still_psi(each["end"]["lines"]) if "lines" in each["end"] else 0) for each in lines)


def set_appliances(lines, square):
    """Rate every appliance for the new flow: it is the same appliance."""
    for each in lines:
        each["appliance_psi"] *= square
        if "lines" in each["end"]:
            set_appliances(each["end"]["lines"], square)


@pytest.mark.parametrize(
    ("limit_psi", "parallel", "expected_gpm"),
    [
        (100.5, 1, 100 * 0.25**0.5),  # by hand: half a psi is left of the 2 that 100 gpm lose in 100 ft of C 2
        (102, 2, 200),                # two hoses lose half a psi: four times as much is twice the flow
        (100, 1, 0),                  # still water alone takes the limit
    ],
)
def test_greatest_flow_near_its_end(run, limit_psi, parallel, expected_gpm):
    """However little is left to lose, it is counted."""
    told = greatest(run, [line(fog(100, 100), 2, 100, parallel=parallel)], limit_psi)
    assert told["flow_gpm"] == pytest.approx(expected_gpm, rel=1e-9)


def test_greatest_flow_of_hose_that_loses_nothing_to_speak_of(run):
    """A flow of more than ten million is none: it is refused as a flow."""
    with pytest.raises(CalcError) as refusal:
        greatest(run, [line(fog(100, 100), 1e-8, 1)], 600)
    assert (refusal.value.field, refusal.value.code) == ("flow_gpm", "too_large")


def test_refused_by_name(run):
    """A pressure that is none is refused by its name, a line that is not there by its own."""
    for ask, name in ((compared, "discharge_psi"), (greatest, "limit_psi")):
        with pytest.raises(CalcError) as refusal:
            ask(run, [a_pair()], "100", *([{}] if ask is compared else []))
        assert (refusal.value.field, refusal.value.code) == (name, "not_a_number")
    with pytest.raises(CalcError) as refusal:
        compared(run, [a_pair()], 100, {"cellar": True})
    assert refusal.value.facts == {"line": "cellar"}
