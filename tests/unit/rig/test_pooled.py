"""A department's own figure of a hose, pooled over its rigs; medians worked by hand."""
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.unit.rig.test_profile import SHELF, US, a_rig


def pooled(run, *rigs):
    """The figure of rigs, each a coefficient and its readings."""
    return run("rig.pooled", "pooled", rows=[{"coefficient": coefficient, "readings": readings} for coefficient, readings in rigs])


@pytest.mark.parametrize(
    ("rigs", "coefficient", "least", "most", "readings", "count"),
    [
        # two weigh alike, whatever their readings: the mean of 11 and 13
        ([(13, 5), (11, 2)], 12, 11, 13, 7, 2),
        ([(13, 1), (11, 2)], 12, 11, 13, 3, 2),  # three readings are enough
        # weights 2, 3, 4 of 9, half 4.5: 11 has 2, 12 has 5
        ([(11, 2), (12, 3), (13, 4)], 12, 11, 13, 9, 3),
        # weights 1, 1, 4 of 6, but 4 is held to the 2 of the others: half of 4 is 2, at 12 exactly, so the mean of 12 and 13
        ([(11, 1), (12, 1), (13, 4)], 12.5, 11, 13, 6, 3),
        # weights 3, 2, 1, 1 of 7, half 3.5: 11 has 3, 12 has 5
        ([(14, 1), (13, 1), (12, 2), (11, 3)], 12, 11, 14, 7, 4),
        # as much as a fifth from the median of 10 is taken: 8 and 12; 7.9 is not, and 10 and 12 are left
        ([(8, 2), (10, 2), (12, 2)], 10, 8, 12, 6, 3),
        ([(7.9, 2), (10, 2), (12, 2)], 11, 10, 12, 4, 2),
        # twenty readings of a slip do not carry it: 20 is out by the plain median of 12.9, and 11 and 12.9 are left
        ([(11, 2), (12.9, 2), (20, 20)], 11.95, 11, 12.9, 4, 2),
        # a slip of the point, 1.2, is left out of 11, 12 and 13: weights 1, 1, 2, half 2 at 12 exactly, so 12.5
        ([(1.2, 1), (11, 1), (12, 1), (13, 2)], 12.5, 11, 13, 4, 3),
        # the same figure on three rigs was carried over: it counts once, with the most readings it was said to have
        ([(11, 1), (11, 4), (11, 2), (13, 2)], 12, 11, 13, 6, 2),
    ],
)
def test_the_median_of_a_department(run, rigs, coefficient, least, most, readings, count):
    """The median weighted by readings, the spread, and how much stands behind it, in whatever order the rigs come."""
    for order in (rigs, rigs[::-1]):
        figure = pooled(run, *order)
        left_out = figure.pop("left_out")
        assert figure == pytest.approx({"coefficient": coefficient, "least": least, "most": most, "readings": readings, "rigs": count})
        assert left_out == len({figure for figure, _ in rigs}) - count


@pytest.mark.parametrize("rigs", [
    [], [(11, 20)],  # one rig, however often it read
    [(11, 1), (12, 1)],  # two readings
    [(11, 1), (11, 5)],  # one figure, on two rigs
    [(10, 3), (20, 3)],  # 15, both a third from it
    [(12.9, 3), (20, 3)],  # 16.45, both 0.216 from it
    [(1.2, 5), (11, 2), (11, 3)],  # 1.2 and 11 disagree
])
def test_too_little_is_no_figure(run, rigs):
    """One rig's figure alone, two readings, or rigs that disagree give a department nothing."""
    assert pooled(run, *rigs) is None


@settings(max_examples=40, deadline=None)
@given(figures=st.lists(st.tuples(st.floats(11, 12.9), st.integers(1, 20)), min_size=3, max_size=8, unique_by=lambda rig: rig[0]), slip=st.floats(0.001, 5000))
def test_no_slip_of_one_rig_carries_the_figure(run, figures, slip):
    """Whatever one rig more says, and with as many readings as it likes, the figure stays within a tenth of the others': half of a fifth."""
    figure = pooled(run, *figures, (slip, 20))
    coefficients = [coefficient for coefficient, _ in figures]
    assert 0.9 * min(coefficients) <= figure["coefficient"] <= 1.1 * max(coefficients)


def test_only_what_was_measured_counts(run):
    """A maker's figure, one typed, the handbook's and a row with a fault are nobody's measurement; no count is one reading."""
    hoses = [
        {"hose": "attack-1.75", "coefficient": "11.4@US", "origin": "measured", "readings": "3"}, {"hose": "attack-2.5", "coefficient": "1.8@US", "origin": "measured"},
        {"hose": "supply-4", "coefficient": "0.15@US", "origin": "declared"}, {"hose": "supply-5", "coefficient": "x", "origin": "measured"},
    ]
    assert run("rig.pooled", "measured", profile=a_rig(hoses=hoses), shelf=SHELF, units=US) == [
        {"hose": "attack-1.75", "coefficient": pytest.approx(11.4), "readings": 3}, {"hose": "attack-2.5", "coefficient": pytest.approx(1.8), "readings": 1}]
    limit = [{"hose": "attack-1.75", "length": "600@US", "limit": "much"}]  # of that hose too nothing is sure
    assert run("rig.pooled", "measured", profile=a_rig(hoses=hoses[:2], supply=limit), shelf=SHELF, units=US) == [
        {"hose": "attack-2.5", "coefficient": pytest.approx(1.8), "readings": 1}]
    assert run("rig.pooled", "measured", profile={"schema": 9}, shelf=SHELF, units=US) == []
