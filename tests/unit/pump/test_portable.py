"""Portable pumps by their curve, alone and together: against pump practice, by hand, and against EPANET's own pumps."""
import pytest

from calc.base.errors import CalcError
from tests.peers import epanet

SQUARE = [[0, 100], [50, 75], [100, 0]]  # by hand: 100 - q^2 / 100
OWN = [[0, 300], [40, 220], [70, 50]]


@pytest.mark.parametrize(("flow_gpm", "psi"), [(0, 100), (10, 99), (50, 75), (80, 36), (100, 0)])
def test_through_its_points(run, flow_gpm, psi):
    """By hand: three points of a square law give that law."""
    assert run("pump.portable", "pressure_psi", points=SQUARE, flow_gpm=flow_gpm) == pytest.approx(psi, abs=1e-9)


@pytest.mark.parametrize(("way", "flow_gpm", "psi"), [("series", 50, 225), ("series", 80, 108), ("parallel", 150, 75), ("parallel", 240, 36)])
def test_three_together(run, way, flow_gpm, psi):
    """Pump practice: in series the same flow, pressures add; in parallel the same pressure, flows add."""
    assert run("pump.portable", "together_psi", points=SQUARE, pumps=3, way=way, flow_gpm=flow_gpm) == pytest.approx(psi)


@pytest.mark.parametrize(("pumps", "way", "fixed_psi", "square_psi", "flow_gpm"), [
    (1, "series", 0, 0.01, 70.710678),  # 100 - q^2/100 = q^2/100
    (2, "series", 0, 0.01, 81.649658),  # 200 - q^2/50 = q^2/100
    (2, "parallel", 0, 0.01, 89.442719),  # 100 - q^2/400 = q^2/100
    (1, "series", 100, 0.01, 0), (1, "series", 120, 0.01, 0),  # height takes all it gives
    (1, "series", -400, 0.01, 100), (2, "parallel", -400, 0.001, 200),  # past the end of the curve
])
def test_where_it_meets_a_layout(run, pumps, way, fixed_psi, square_psi, flow_gpm):
    """By hand, of the square law."""
    assert run("pump.portable", "full_flow_gpm", points=SQUARE, pumps=pumps, way=way, fixed_psi=fixed_psi, square_psi=square_psi) == pytest.approx(flow_gpm, abs=1e-5)


@pytest.mark.parametrize("points", [SQUARE, OWN, [[0, 90], [150, 80], [400, 20]], [[0, 210], [20, 100], [60, 10]]])
@pytest.mark.parametrize(("pumps", "way"), [(1, "series"), (2, "series"), (3, "series"), (2, "parallel"), (4, "parallel")])
@pytest.mark.parametrize(("fixed_psi", "square_psi"), [(0, 0.02), (60, 0.005), (-40, 0.05)])
def test_as_epanet_runs_them(run, tmp_path, points, pumps, way, fixed_psi, square_psi):
    """EPANET 2.2, the same pumps each by its three-point curve, into one square-law pipe up to a tank: the flow within 0.1 %, up to the end of the curve."""
    end_gpm = points[2][0] * (pumps if way == "parallel" else 1)
    flow_gpm = run("pump.portable", "full_flow_gpm", points=points, pumps=pumps, way=way, fixed_psi=fixed_psi, square_psi=square_psi)
    assert flow_gpm == pytest.approx(min(epanet.pumped_gpm(points, pumps, way, fixed_psi, square_psi, tmp_path), end_gpm), rel=1e-3)


@pytest.mark.parametrize(("name", "shut_psi", "free_gpm"), [("high", 300, 75), ("light", 200, 70), ("volume", 100, 200)])
def test_classes(run, name, shut_psi, free_gpm):
    """Wildland pump literature, from memory: 75 to 100 gpm free and over 300 psi shut, about 70 gpm and up to 200 psi, 200 gpm and under 100 psi."""
    points = run("pump.portable", "class_points", name=name)
    assert (points[0], points[2]) == ([0, shut_psi], [free_gpm, 0])
    assert run("pump.portable", "pressure_psi", points=points, flow_gpm=free_gpm / 4) == pytest.approx(shut_psi * 15 / 16)  # the square law


@pytest.mark.parametrize(("function", "changes", "field", "code"), [
    ("pressure_psi", {"points": [[0, 100], [50, 100], [100, 0]]}, "points", "not_falling"),
    ("pressure_psi", {"points": [[0, 100], [50, 110], [100, 0]]}, "points", "not_falling"),
    ("pressure_psi", {"points": [[0, 100], [50, 75], [50, 0]]}, "points", "not_falling"),
    ("pressure_psi", {"points": [[0, 100], [50, 75], [100, -1]]}, "points", "not_falling"),
    ("pressure_psi", {"points": [[1, 100], [50, 75], [100, 0]]}, "points", "not_falling"),
    ("pressure_psi", {"flow_gpm": 100.1}, "flow_gpm", "past_curve"), ("pressure_psi", {"flow_gpm": -1}, "flow_gpm", "negative"),
    ("together_psi", {"way": "both"}, "way", "unknown"), ("together_psi", {"pumps": 0}, "pumps", "not_positive"),
    ("full_flow_gpm", {"square_psi": 0}, "square_psi", "not_positive"), ("class_points", {"name": "float"}, "name", "unknown"),
])
def test_refusals(run, function, changes, field, code):
    """A curve that does not fall, a flow past its end and an arrangement that is none."""
    usual = {"pressure_psi": {"points": SQUARE, "flow_gpm": 10}, "together_psi": {"points": SQUARE, "pumps": 2, "way": "series", "flow_gpm": 10},
             "full_flow_gpm": {"points": SQUARE, "pumps": 1, "way": "series", "fixed_psi": 0, "square_psi": 0.01}, "class_points": {"name": "high"}}[function]
    with pytest.raises(CalcError) as refusal:
        run("pump.portable", function, **{**usual, **changes})
    assert (refusal.value.field, refusal.value.code) == (field, code)


def test_the_end_of_a_curve_is_said(run):
    """Past its last point nothing is known of a pump: the refusal says how far it goes; at that point it still answers."""
    with pytest.raises(CalcError) as refusal:
        run("pump.portable", "pressure_psi", points=OWN, flow_gpm=70.1)
    assert (refusal.value.field, refusal.value.code, refusal.value.facts) == ("flow_gpm", "past_curve", {"most_gpm": 70})
    assert run("pump.portable", "pressure_psi", points=OWN, flow_gpm=70) == pytest.approx(50)


def test_no_flow_is_none(run):
    """Where height takes all that the pump gives the flow is nothing at all, and no trickle."""
    assert run("pump.portable", "full_flow_gpm", points=SQUARE, pumps=1, way="series", fixed_psi=120, square_psi=0.01) == 0


@pytest.mark.parametrize("fixed_psi", ["high", None])
def test_a_height_that_is_no_number(run, fixed_psi):
    """Refused by its name."""
    with pytest.raises(CalcError) as refusal:
        run.unheld("pump.portable", "full_flow_gpm", points=SQUARE, pumps=1, way="series", fixed_psi=fixed_psi, square_psi=0.01)
    assert (refusal.value.field, refusal.value.code) == ("fixed_psi", "not_a_number")
