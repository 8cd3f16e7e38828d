"""Departments' own friction rules: what each gives, where each ends, and that none is mixed in unnamed."""
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError
from tests.unit.layout.trees import fog, line


def loss(run, rule, flow_gpm, size_in=2.5, coefficient=2, length_ft=100):
    return run("hydraulics.friction_rule", "loss_psi", rule=rule, size_in=size_in, coefficient=coefficient, flow_gpm=flow_gpm, length_ft=length_ft)


@pytest.mark.parametrize(
    ("rule", "expected_psi"),
    # 400 gpm in 100 ft of 2 1/2 in, as the reference dossier sets the three rules side by side
    [("square", 32), ("two_q_squared_plus_q", 36), ("gpm_times_n", 30), ("rounded_10", 32), ("rounded_100", 32)],
)
def test_rules_disagree(run, rule, expected_psi):
    """Three rules give three answers for the same hose and flow."""
    loss_psi = run("hydraulics.friction_rule", "loss_psi", rule=rule, size_in=2.5, coefficient=2, flow_gpm=400, length_ft=100)
    assert loss_psi == pytest.approx(expected_psi)


@pytest.mark.parametrize(
    ("rule", "flow_gpm", "size_in", "expected_psi"),
    [
        ("two_q_squared_plus_q", 50, 2.5, 0.75),     # below 100 gpm: 2 x 0.25 + 0.25
        ("two_q_squared_plus_q", 100, 2.5, 3),       # from there: 2 + 1
        ("gpm_times_n", 150, 1.5, 50),               # 150 x 4 / 10 - 10
        ("gpm_times_n", 150, 2, 20),                 # 150 x 2 / 10 - 10
        ("gpm_times_n", 50, 2, 0),
        ("rounded_50", 265.8, 2.5, 12.5),            # 250 gpm: 2 x 6.25
        ("rounded_50", 275, 2.5, 18),                # halves upward, 300 gpm: 2 x 9
        ("rounded_25", 328.1, 2.5, 21.125),          # 325 gpm: 2 x 10.5625
        ("gpm_times_n", 0, 1.75, 0),
        ("two_q_squared_plus_q", 0, 2.5, 0),
    ],
)
def test_by_hand(run, rule, flow_gpm, size_in, expected_psi):
    """Each rule gives what its own words say."""
    assert loss(run, rule, flow_gpm, size_in) == pytest.approx(expected_psi, rel=1e-9, abs=1e-12)


@pytest.mark.parametrize(
    ("rule", "facts", "field", "code"),
    [
        ("two_q_squared_plus_q", {"size_in": 3}, "size_in", "not_for_this_rule"),
        ("gpm_times_n", {"size_in": 5}, "size_in", "not_for_this_rule"),
        ("gpm_times_n", {"size_in": None}, "size_in", "not_a_number"),
        ("gpm_times_n", {"size_in": 2.5, "flow_gpm": 99}, "flow_gpm", "too_small_for_this_rule"),
        ("best", {}, "rule", "unknown"),
        (["square"], {}, "rule", "unknown"),
        ("square", {"flow_gpm": -1}, "flow_gpm", "negative"),
        ("two_q_squared_plus_q", {"length_ft": "100"}, "length_ft", "not_a_number"),
    ],
)
def test_refused(run, rule, facts, field, code):
    """A hose or flow that a rule is not made for is refused, not guessed at."""
    with pytest.raises(CalcError) as refusal:
        loss(run, rule, **{"flow_gpm": 200, **facts})
    assert (refusal.value.field, refusal.value.code) == (field, code)


def test_rounding_takes_only_known_steps(run):
    """A step of 30 gpm is nobody's."""
    with pytest.raises(CalcError) as refusal:
        run("hydraulics.friction_rule", "rounded_flow_gpm", flow_gpm=100, step_gpm=30)
    assert (refusal.value.field, refusal.value.code) == ("step_gpm", "unknown")
    with pytest.raises(CalcError) as refusal:
        run("hydraulics.friction_rule", "rounded_flow_gpm", flow_gpm=-1, step_gpm=50)
    assert (refusal.value.field, refusal.value.code) == ("flow_gpm", "negative")


def required(run, lines, **rule):
    return run("layout.pressure", "discharge_pressure", layout={"lines": lines}, **rule)


def test_a_lay_by_a_rule_says_so(run):
    """The report names the rule; without one it is C Q^2 L. Two hoses side by side share the flow before the rule."""
    pair = line(fog(600, 80), 2, 100, parallel=2, size_in=2.5)
    assert (required(run, [pair])["rule"], required(run, [pair])["discharge_psi"]) == ("square", pytest.approx(98))  # 80 + 2 x 9
    by_rule = required(run, [pair], rule="two_q_squared_plus_q")
    assert (by_rule["rule"], by_rule["discharge_psi"]) == ("two_q_squared_plus_q", pytest.approx(101))  # 80 + 2 x 9 + 3
    assert run("layout.pressure", "flows", layout={"lines": [pair]}, discharge_psi=100)["rule"] == "square"


def test_a_lay_with_one_hose_of_another_size_is_refused(run):
    """One supply that the rule is not made for refuses the whole layout, by the line's name: nothing is mixed in."""
    supply = line({"lines": [line(fog(), size_in=1.75)]}, 0.8, 200, id="supply", size_in=3)
    with pytest.raises(CalcError) as refusal:
        required(run, [supply], rule="gpm_times_n")
    assert (refusal.value.field, refusal.value.code, refusal.value.facts["line"]) == ("size_in", "not_for_this_rule", "supply")


@settings(max_examples=50, deadline=None)
@given(flow_gpm=st.floats(100, 1000), more_gpm=st.floats(0, 200), length_ft=st.integers(0, 1000))
@pytest.mark.parametrize("rule", ["square", "rounded_50", "two_q_squared_plus_q", "gpm_times_n"])
def test_more_flow_never_loses_less(run, rule, flow_gpm, more_gpm, length_ft):
    """By every rule more flow loses as much or more, and nothing below nothing."""
    low, high = (loss(run, rule, each, length_ft=length_ft) for each in (flow_gpm, flow_gpm + more_gpm))
    assert 0 <= low <= high * (1 + 1e-12)


def test_what_a_rule_is_made_for(run):
    """The rules of C Q^2 L take any hose; gpm times N four sizes, 2Q^2 + Q one."""
    assert run("hydraulics.friction_rule", "sizes_in", rule="square") is None and run("hydraulics.friction_rule", "sizes_in", rule="rounded_50") is None
    assert run("hydraulics.friction_rule", "sizes_in", rule="gpm_times_n") == [1.5, 1.75, 2, 2.5]
    assert run("hydraulics.friction_rule", "sizes_in", rule="two_q_squared_plus_q") == [2.5]


@pytest.mark.parametrize(
    ("rule", "facts", "told"),
    [
        ("gpm_times_n", {"size_in": 5}, {"rule": "gpm_times_n", "sizes": [1.5, 1.75, 2, 2.5]}),
        ("two_q_squared_plus_q", {"size_in": 3}, {"rule": "two_q_squared_plus_q", "sizes": [2.5]}),
        # by hand: gpm x 2 / 10 - 10 is nothing at 50 gpm; x 4 at 25
        ("gpm_times_n", {"size_in": 2, "flow_gpm": 49}, {"rule": "gpm_times_n", "least": 50}),
        ("gpm_times_n", {"size_in": 1.5, "flow_gpm": 24}, {"rule": "gpm_times_n", "least": 25}),
    ],
)
def test_a_refusal_says_what_would_do(run, rule, facts, told):
    """The sizes that a rule is for, or the least flow it can reckon, stand in its refusal."""
    with pytest.raises(CalcError) as refusal:
        loss(run, rule, **{"flow_gpm": 200, **facts})
    assert refusal.value.facts == told


def test_friction_per_100_ft_by_a_rule(run):
    """By hand: 300 gpm in each of two hoses is 2 x 9 + 3 psi per 100 ft, however long they are; a refusal keeps its facts."""
    pair = line(fog(600, 80), 2, 250, parallel=2, size_in=2.5)
    told, = required(run, [pair], rule="two_q_squared_plus_q")["lines"]
    assert (told["friction_per_100_ft_psi"], told["friction_psi"]) == pytest.approx((21, 52.5), rel=1e-9)
    with pytest.raises(CalcError) as refusal:
        required(run, [line(fog(), size_in=3, id="A")], rule="two_q_squared_plus_q")
    assert refusal.value.facts == {"line": "A", "rule": "two_q_squared_plus_q", "sizes": [2.5]}
