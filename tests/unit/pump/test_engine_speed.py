"""Engine speed from a rig's own test: exact at the points, lawful between, refused beyond."""
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError

SPEEDS = [1650, 1730, 1850]  # of our own invention, for a 1,250 gpm pump


def a_test(run, speeds_rpm=SPEEDS, rated_gpm=1250):
    return run("pump.engine_speed", "at_rating", rated_gpm=rated_gpm, speeds_rpm=speeds_rpm)


def rpm(run, flow_gpm, net_psi, test=None):
    return run("pump.engine_speed", "estimated_rpm", test=test or a_test(run), flow_gpm=flow_gpm, net_psi=net_psi)


def pressure_psi(flow_gpm, engine_rpm, points=((1250, 150, 1650), (875, 200, 1730), (625, 250, 1850))):
    """By hand: pressure over speed squared, straight over flow over speed between the two points beside it, level before the first."""
    ratios = sorted((flow / rpm, psi / rpm**2) for flow, psi, rpm in points)
    ratio = max(flow_gpm / engine_rpm, ratios[0][0])
    (low, high_psi), (high, low_psi) = next(pair for pair in zip(ratios, ratios[1:]) if ratio <= pair[1][0] * (1 + 1e-9))
    return (high_psi + (low_psi - high_psi) * (ratio - low) / (high - low)) * engine_rpm**2


@pytest.mark.parametrize(("flow_gpm", "net_psi", "engine_rpm"), [(1250, 150, 1650), (875, 200, 1730), (625, 250, 1850)])
def test_at_the_points(run, flow_gpm, net_psi, engine_rpm):
    """At each recorded point the estimate is what was recorded."""
    assert rpm(run, flow_gpm, net_psi) == {"engine_rpm": pytest.approx(engine_rpm, rel=1e-9), "basis": "between_points"}


def test_between_two_points(run):
    """Halfway along the straight piece, by hand, at another speed by the affinity laws."""
    test = [{"flow_gpm": 1000, "net_psi": 160, "engine_rpm": 2000}, {"flow_gpm": 500, "net_psi": 240, "engine_rpm": 2000}]
    # by hand: 750 gpm at 2,000 rpm gives 200 psi; at half the speed half the flow and a quarter of the pressure
    assert rpm(run, 750, 200, test)["engine_rpm"] == pytest.approx(2000, rel=1e-9)
    assert rpm(run, 375, 50, test)["engine_rpm"] == pytest.approx(1000, rel=1e-9)


def test_below_the_tested_flow(run):
    """At little flow the curve is held level: 250 psi at 1,850 rpm, so 150 at 1,850 sqrt(150/250), and it is said."""
    told = rpm(run, 150, 150)
    assert (told["engine_rpm"], told["basis"]) == (pytest.approx(1850 * 0.6**0.5, rel=1e-9), "below_tested_flow")
    assert rpm(run, 0, 250) == {"engine_rpm": pytest.approx(1850, rel=1e-9), "basis": "below_tested_flow"}


@settings(max_examples=80, deadline=None)
@given(flow_gpm=st.floats(0, 1250), net_psi=st.floats(30, 250), share=st.floats(0.8, 1.2))
def test_there_and_back(run, flow_gpm, net_psi, share):
    """The pressure at the estimated speed is the one asked, and flow and pressure scaled by the laws scale the speed."""
    try:
        told = rpm(run, flow_gpm, net_psi)
    except CalcError as refusal:
        assert (refusal.code, refusal.field in ("flow_gpm", "net_psi")) == ("beyond_test", True)
        return
    if told["engine_rpm"] > 1850:
        return  # by a last bit
    assert pressure_psi(flow_gpm, told["engine_rpm"]) == pytest.approx(net_psi, rel=1e-9)
    scaled_rpm = told["engine_rpm"] * share
    if 830 < scaled_rpm < 1840:
        scaled = rpm(run, flow_gpm * share, net_psi * share * share)
        assert scaled["engine_rpm"] == pytest.approx(scaled_rpm, rel=1e-6)


def refused(run, function, **facts):
    with pytest.raises(CalcError) as refusal:
        run("pump.engine_speed", function, **facts)
    return refusal.value.field, refusal.value.code


def test_beyond_the_test(run):
    """Outside what was tested there is no estimate."""
    test = a_test(run)
    assert refused(run, "estimated_rpm", test=test, flow_gpm=1250, net_psi=100) == ("flow_gpm", "beyond_test")
    assert refused(run, "estimated_rpm", test=test, flow_gpm=625, net_psi=260) == ("net_psi", "beyond_test")
    assert refused(run, "estimated_rpm", test=test, flow_gpm=0, net_psi=40) == ("net_psi", "beyond_test")  # 740 rpm, under 825


@pytest.mark.parametrize(
    ("test", "code"),
    [
        ([], "too_few"), (None, "too_few"),
        ([{"flow_gpm": 500, "net_psi": 250, "engine_rpm": 1800}], "too_few"),
        ([{"flow_gpm": 500, "net_psi": 250, "engine_rpm": 1800}] * 13, "too_many"),
        ([{"flow_gpm": 500, "net_psi": 250, "engine_rpm": 1800}] * 2, "points_alike"),
        ([{"flow_gpm": 500, "net_psi": 150, "engine_rpm": 1800}, {"flow_gpm": 900, "net_psi": 200, "engine_rpm": 1800}], "pressure_rises_with_flow"),
        ([{"flow_gpm": 500, "net_psi": 150}, {"flow_gpm": 900}], "not_a_number"),
        (["1800", 7], "not_a_number"),
    ],
)
def test_bad_test(run, test, code):
    """A test that is none, or that contradicts every pump, is refused."""
    assert refused(run, "estimated_rpm", test=test, flow_gpm=500, net_psi=150) == ("test", code)


def test_speeds_not_recorded(run):
    """A speed that was not recorded leaves its point out; the other two still make a test."""
    assert [point["net_psi"] for point in a_test(run, [1650, None, 1850])] == [150, 250]
    assert refused(run, "at_rating", rated_gpm=1250, speeds_rpm=[1650]) == ("speeds_rpm", "not_one_each")
    assert refused(run, "at_rating", rated_gpm=1250, speeds_rpm=[1650, 0, 1850]) == ("speeds_rpm", "not_positive")


BY_HAND = [{"flow_gpm": 1000, "net_psi": 160, "engine_rpm": 2000}, {"flow_gpm": 500, "net_psi": 240, "engine_rpm": 2000}]


def beyond(run, function, **facts):
    with pytest.raises(CalcError) as refusal:
        run("pump.engine_speed", function, test=BY_HAND, **facts)
    assert refusal.value.code == "beyond_test"
    return refusal.value.field, refusal.value.facts


def test_how_far_it_goes_is_told(run):
    """By hand: 1,000 gpm at 2,000 rpm, 160 psi, is the most; at 40 psi, a quarter, 500."""
    assert beyond(run, "estimated_rpm", flow_gpm=600, net_psi=40) == ("flow_gpm", {"most": pytest.approx(500, rel=1e-9)})
    limits = {"least": 1000, "most": 2000}
    # by hand: level at 240 psi for 2,000 rpm, so 135 psi is 1,500 and 540 psi 3,000
    assert rpm(run, 100, 135, BY_HAND)["engine_rpm"] == pytest.approx(1500, rel=1e-9)
    field, facts = beyond(run, "estimated_rpm", flow_gpm=100, net_psi=540)
    assert (field, facts) == ("net_psi", {"engine_rpm": pytest.approx(3000, rel=1e-9), **limits})


def test_ends_of_the_test_are_in_it(run):
    """The slowest and the fastest speed are still within, and twelve points still a test."""
    assert rpm(run, 250, 60.15, BY_HAND)["engine_rpm"] == pytest.approx(2000 * (60.15 / 240) ** 0.5, rel=1e-9)  # 1,001 rpm, by hand
    twelve = [{"flow_gpm": 1000 - 50 * place, "net_psi": 100 + 10 * place, "engine_rpm": 2000} for place in range(12)]
    assert rpm(run, 1000, 100, twelve)["engine_rpm"] == pytest.approx(2000, rel=1e-9)


@pytest.mark.parametrize(
    ("function", "facts", "field", "told"),
    [
        ("at_rating", {"rated_gpm": 1250, "speeds_rpm": [1650]}, "speeds_rpm", {"most": 3}),
        ("estimated_rpm", {"test": BY_HAND[:1], "flow_gpm": 500, "net_psi": 150}, "test", {"least": 2}),
        ("estimated_rpm", {"test": BY_HAND * 7, "flow_gpm": 500, "net_psi": 150}, "test", {"most": 12}),
        ("estimated_rpm", {"test": BY_HAND, "flow_gpm": "500", "net_psi": 150}, "flow_gpm", {}),
        ("estimated_rpm", {"test": BY_HAND, "flow_gpm": 500, "net_psi": None}, "net_psi", {}),
        # points nearer than a thousandth say nothing of the curve between them
        ("estimated_rpm", {"test": [BY_HAND[0], {**BY_HAND[0], "flow_gpm": 999.1, "net_psi": 161}], "flow_gpm": 500, "net_psi": 150}, "test", {}),
        # level is no curve of a pump
        ("estimated_rpm", {"test": [BY_HAND[0], {**BY_HAND[1], "net_psi": 160}], "flow_gpm": 500, "net_psi": 150}, "test", {}),
    ],
)
def test_refusals_tell_what_would_do(run, function, facts, field, told):
    """Each input is refused by its own name, with the bound where there is one."""
    with pytest.raises(CalcError) as refusal:
        run("pump.engine_speed", function, **facts)
    assert (refusal.value.field, refusal.value.facts) == (field, told)
