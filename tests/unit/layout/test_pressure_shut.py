"""Lines that are shut, and nozzles that are set: by hand, and by law on random trees."""
import copy

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError
from tests.unit.layout.trees import TREES, fog, line, nozzle_flows, nozzles_of


def wye(near, far, **more):
    """A wye of two lines of 1 1/2 in hose behind 200 ft of 2 1/2 in."""
    return line({"lines": [line(fog(100), 24, 100, id="near", **near), line(fog(100), 24, 200, id="far", **far)]}, 2, 200, id="supply", **more)


def required(run, *lines):
    report = run("layout.pressure", "discharge_pressure", layout={"lines": list(lines)})
    return report, {told["id"]: told for told in report["lines"]}


def test_a_shut_line_asks_for_nothing(run):
    """With the far line shut the pump serves the near one alone; the report still lists the far one, at rest."""
    report, told = required(run, wye({}, {"shut": True, "rise_ft": 10}))
    # by hand: 100 + 24 x 1 x 1 = 124 at the wye, + 2 x 1 x 2 = 4 of supply
    assert (report["discharge_psi"], report["flow_gpm"]) == pytest.approx((128, 100), rel=1e-9)
    assert [told[name]["shut"] for name in ("supply", "near", "far")] == [False, False, True]
    # at rest: fed at 124 psi, 4.34 of it taken by height, nothing by friction
    far = told["far"]
    assert (far["flow_gpm"], far["friction_psi"], far["gate_psi"]) == (0, 0, 0)
    assert (far["inlet_psi"], far["outlet_psi"]) == pytest.approx((124, 119.66), rel=1e-9)
    assert far["nozzle"] == {"kind": "fog", "nozzle_psi": 0, "flow_gpm": 0, "reaction_lbf": 0}


def test_a_shut_valve_shuts_what_is_behind_it(run):
    """A shut supply shuts both nozzles, and a wye whose nozzles are both shut passes nothing either."""
    for layout in (wye({}, {}, shut=True), wye({"shut": True}, {"shut": True})):
        report, told = required(run, layout, line(fog(150), id="other"))
        assert (report["discharge_psi"], report["flow_gpm"]) == pytest.approx((169.75, 150), rel=1e-9)  # 100 + 15.5 x 2.25 x 2
        assert all(told[name]["shut"] and told[name]["flow_gpm"] == 0 for name in ("supply", "near", "far"))
        flowing = nozzle_flows(run, [layout, line(fog(150), id="other")], 169.75)
        assert flowing == pytest.approx({"near": 0, "far": 0, "other": 150}, rel=1e-9)


def test_all_shut(run):
    """With every line shut the pump need show nothing, and nothing flows whatever it shows."""
    report, _ = required(run, line(fog(), shut=True))
    assert (report["discharge_psi"], report["flow_gpm"]) == (0, 0)
    report = run("layout.pressure", "flows", layout={"lines": [line(fog(), shut=True)]}, discharge_psi=120)
    assert report["flow_gpm"] == 0
    assert (report["lines"][0]["inlet_psi"], report["lines"][0]["outlet_psi"]) == (120, 120)


def test_an_appliance_left_alone_takes_less(run):
    """A wye that takes 10 psi at 200 gpm takes 2.5 at 100, required and flowing alike."""
    layout = wye({}, {"shut": True}, appliance_psi=10)
    report, told = required(run, layout)
    assert told["supply"]["appliance_psi"] == pytest.approx(2.5, rel=1e-9)
    assert nozzle_flows(run, [layout], report["discharge_psi"])["near"] == pytest.approx(100, rel=1e-9)


@pytest.mark.parametrize("shut", [1, 0, "true", None, [True]])
def test_shut_is_true_or_false(run, shut):
    """Anything else is refused by its name and the line's."""
    with pytest.raises(CalcError) as refusal:
        required(run, line(fog(), id="A", shut=shut))
    assert (refusal.value.field, refusal.value.code, refusal.value.facts["line"]) == ("shut", "not_true_or_false", "A")


SELECTABLE = {"kind": "selectable", "settings_gpm": [95, 125, 150, 200], "set_gpm": 150, "rated_psi": 100}


@pytest.mark.parametrize("set_gpm", [95, 200])
def test_a_selectable_nozzle_is_a_fixed_one_where_it_is_set(run, set_gpm):
    """At each setting it asks for and passes what a fixed fog nozzle of that flow does."""
    selectable, fixed = line({**SELECTABLE, "set_gpm": set_gpm}), line(fog(set_gpm))
    asked, asked_fixed = required(run, selectable)[0], required(run, fixed)[0]
    assert (asked["discharge_psi"], asked["flow_gpm"]) == (asked_fixed["discharge_psi"], set_gpm)
    assert nozzle_flows(run, [selectable], 120) == nozzle_flows(run, [fixed], 120)


@pytest.mark.parametrize(
    ("facts", "field", "code"),
    [
        ({"set_gpm": 100}, "set_gpm", "not_a_setting"),
        ({"set_gpm": True}, "set_gpm", "not_a_number"),
        ({"settings_gpm": []}, "settings_gpm", "missing"),
        ({"settings_gpm": 150}, "settings_gpm", "missing"),
        ({"settings_gpm": [150, "200"]}, "settings_gpm", "not_a_number"),
        ({"settings_gpm": [150] * 21}, "settings_gpm", "too_many"),
        ({"rated_psi": 0}, "rated_psi", "not_positive"),
    ],
)
def test_bad_selectable(run, facts, field, code):
    """A setting the nozzle does not have is refused."""
    with pytest.raises(CalcError) as refusal:
        required(run, line({**SELECTABLE, **facts}))
    assert (refusal.value.field, refusal.value.code) == (field, code)


@settings(max_examples=60, deadline=None)
@given(lines=TREES, psi=st.integers(0, 300), data=st.data())
def test_opening_a_shut_nozzle_never_raises_anothers_flow(run, lines, psi, data):
    """Every other nozzle gives as much or less; the opened one gives no less than when it was shut."""
    shut = copy.deepcopy(lines)
    chosen = data.draw(st.sampled_from(nozzles_of(shut)))
    chosen["shut"], chosen["id"] = True, "chosen"
    before = nozzle_flows(run, shut, psi)
    chosen["shut"] = False
    opened = nozzle_flows(run, shut, psi)
    assert before["chosen"] == 0
    assert all(opened[name] <= before[name] + 1e-6 for name in before if name != "chosen")
