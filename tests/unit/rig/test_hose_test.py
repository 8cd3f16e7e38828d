"""A hose's coefficient from gauges."""
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError
from site_src.content import units

US = units.shown_in("US")


def readings(*rows):
    return [dict(zip(("loss_psi", "flow_gpm", "length_ft"), row, strict=True)) for row in rows]


@settings(max_examples=60, deadline=None)
@given(coefficient=st.floats(0.05, 200), rows=st.lists(st.tuples(st.floats(20, 500), st.floats(50, 600)), min_size=2, max_size=6))
def test_readings_that_agree_give_their_coefficient(run, coefficient, rows):
    """Readings made by the square law give the coefficient they were made with, and no spread."""
    made = readings(*((coefficient * (gpm / 100) ** 2 * feet / 100, gpm, feet) for gpm, feet in rows))
    fit = run("rig.hose_test", "fitted_coefficient", readings=made)
    assert fit["coefficient"] == pytest.approx(coefficient, rel=1e-9)
    assert fit["spread"] == pytest.approx(0, abs=1e-6)
    assert "readings_disagree" not in fit["cautions"]


def test_fit(run):
    """Least squares of the loss, by hand: x = 4.5 and 8, losses 50 and 80: (225 + 640) / (20.25 + 64) = 10.267."""
    fit = run("rig.hose_test", "fitted_coefficient", readings=readings((50, 150, 200), (80, 200, 200)))
    assert fit["coefficient"] == pytest.approx(865 / 84.25, rel=1e-9)
    assert fit["cautions"] == ["readings_disagree"]  # 11.1 against 10: more than a tenth of 10.27


@pytest.mark.parametrize(
    ("rows", "cautions"),
    [
        ([(50, 150, 200)], ["one_reading"]),
        ([(9.9, 150, 40), (50, 150, 200)], ["drop_too_small"]),
        ([(50, 150, 200), (50, 150, 200)], []),
    ],
)
def test_cautions(run, rows, cautions):
    """Too small a drop, readings that disagree, a single reading: each is told."""
    assert run("rig.hose_test", "fitted_coefficient", readings=readings(*rows))["cautions"] == cautions


def test_read_out(run):
    """By hand: 50 psi over 200 ft at 150 gpm is C 11.11, 28 % under 15.5; 100 ft loses 25 psi, not 35."""
    read = run("rig.hose_test", "read", units=US, handbook=15.5,
               readings=[{"inlet": "150@US", "outlet": "100@US", "flow": "150@US", "length": "200@US"}])
    assert (read["coefficient"], read["typed"], read["percent"], read["is_lower"], read["readings"]) == ("11.111", "11.111@US", "28", True, "1")
    assert read["example"] == {"flow": "150", "measured": "25", "handbook": "35"}


@pytest.mark.parametrize(
    ("change", "field", "code"),
    [
        ({"inlet": ""}, "inlet", "empty"),
        ({"outlet": "150"}, "outlet", "not_below_inlet"),
        ({"flow": "0"}, "flow", "not_positive"),
        ({"length": "far"}, "length", "not_a_number"),
    ],
)
def test_refused(run, change, field, code):
    """A reading that cannot be used is refused at its field."""
    sound = {"inlet": "150", "outlet": "100", "flow": "150", "length": "200"}
    with pytest.raises(CalcError) as refused:
        run("rig.hose_test", "read", units=US, handbook=15.5, readings=[sound, {**sound, **change}])
    assert (refused.value.field, refused.value.code, refused.value.facts["reading"]) == (field, code, 1)


@pytest.mark.parametrize(
    ("given_readings", "field", "code", "facts"),
    [
        ([], "readings", "missing", {}),
        ("50", "readings", "missing", {}),
        (readings(*[(50, 150, 200)] * 21), "readings", "too_many", {"most": 20}),
        (readings((50, 150, 200), (0, 150, 200)), "loss_psi", "not_positive", {"reading": 1}),
        (readings((50, 0, 200)), "flow_gpm", "not_positive", {"reading": 0}),
    ],
)
def test_refused_fit(run, given_readings, field, code, facts):
    """No readings, more than twenty, or one that measures nothing: refused, and which one is told."""
    with pytest.raises(CalcError) as refused:
        run("rig.hose_test", "fitted_coefficient", readings=given_readings)
    assert (refused.value.field, refused.value.code, refused.value.facts) == (field, code, facts)


def test_twenty_readings_are_taken(run):
    """By hand: twenty times 50 psi over 200 ft at 150 gpm is still C 50 / 4.5."""
    fit = run("rig.hose_test", "fitted_coefficient", readings=readings(*[(50, 150, 200)] * 20))
    assert fit["coefficient"] == pytest.approx(50 / 4.5, rel=1e-9) and fit["spread"] == pytest.approx(0, abs=1e-9)


def test_spread(run):
    """By hand: C 10 and 12 on like readings fit 11; each is a part in 11 off, and so is their spread: 9 %."""
    fit = run("rig.hose_test", "fitted_coefficient", readings=readings((10, 100, 100), (12, 100, 100)))
    assert (fit["coefficient"], fit["spread"]) == pytest.approx((11, 1 / 11), rel=1e-9)
    assert fit["cautions"] == ["readings_disagree"]  # 2 is more than a tenth of 11; and 10 psi is drop enough
    # by hand, 1.1 of 11 is just a tenth: nothing to tell
    assert run("rig.hose_test", "fitted_coefficient", readings=readings((10.5, 100, 100), (11.5, 100, 100)))["cautions"] == []


def test_weights(run):
    """The loss is fitted, so a reading of four times the loss counts sixteen times: (10 x 1 + 12 x 16) / 17, by hand."""
    fit = run("rig.hose_test", "fitted_coefficient", readings=readings((10, 100, 100), (48, 200, 100)))
    assert fit["coefficient"] == pytest.approx(202 / 17, rel=1e-9)


def test_all_that_is_read_out(run):
    """By hand: 110 and 90 psi in 100 ft at 100 gpm... as typed in metric: 30.48 m is 100 ft, and 30 m lose 0.984 of it."""
    typed = [{"inlet": inlet, "outlet": "100@US", "flow": "100@US", "length": "100@US"} for inlet in ("110@US", "112@US")]
    read = run("rig.hose_test", "read", units=US, handbook=11, readings=typed)
    assert (read["coefficient"], read["handbook"], read["percent"], read["is_lower"]) == ("11", "11", "0", False)
    assert (read["spread"], read["cautions"]) == ("9", ["readings_disagree"])
    metric = run("rig.hose_test", "read", units=units.shown_in("SI"), handbook=15.5, readings=[
        {"inlet": "1000@SI", "outlet": "700@SI", "flow": "600@SI", "length": "60@SI"}])
    assert (metric["coefficient"], metric["typed"]) == ("13.8889", "13.8889@SI")  # by hand: 300 / 6^2 / 0.6, kPa in 100 m at 100 L/min
    # by hand: 300 kPa over 60 m at 600 L/min; the example is 100 m at 600 L/min or what the page shows, by the same square law
    flow, loss = float(metric["example"]["flow"]), float(metric["example"]["measured"])
    assert loss == pytest.approx(300 * (flow / 600) ** 2 * 100 / 60, abs=1)


@pytest.mark.parametrize("name", ["inlet", "outlet", "flow", "length"])
def test_each_entry_by_its_name(run, name):
    """An entry that is no number is refused at its own field, and one of none where it must be more."""
    sound = {"inlet": "150", "outlet": "100", "flow": "150", "length": "200"}
    bad = [("x", "not_a_number"), ("", "empty")]
    if name in ("flow", "length"):
        bad.append(("0", "not_positive"))
        run("rig.hose_test", "read", units=US, handbook=15.5, readings=[{**sound, name: "0.5"}])
    for text, code in bad:
        with pytest.raises(CalcError) as refused:
            run("rig.hose_test", "read", units=US, handbook=15.5, readings=[{**sound, name: text}])
        assert (refused.value.field, refused.value.code) == (name, code)


def test_no_readings_to_read(run):
    """What is no list of readings is none."""
    with pytest.raises(CalcError) as refused:
        run("rig.hose_test", "read", units=US, handbook=15.5, readings="150")
    assert (refused.value.field, refused.value.code) == ("readings", "missing")


def test_spread_in_whole_percent(run):
    """By hand: losses of 5 and 15 in like readings are half their mean off, 50 %."""
    typed = [{"inlet": inlet, "outlet": "100", "flow": "100", "length": "100"} for inlet in ("105", "115")]
    assert run("rig.hose_test", "read", units=US, handbook=10, readings=typed)["spread"] == "50"
