"""Round figures along an axis."""
import pytest

from tests.service_records import US


@pytest.mark.parametrize(
    ("most", "step", "count"),  # by hand: the finest of 1, 2, 2.5 or 5 times a power of ten with at most six steps
    [(60, 10, 7), (120, 20, 7), (121, 25, 5), (150, 25, 7), (151, 50, 4), (300, 50, 7), (301, 100, 4), (600, 100, 7), (601, 200, 4), (1000, 200, 6), (1, 0.2, 6), (700, 200, 4)],
)
def test_marks(run, most, step, count):
    told = run("service.curve", "marks", most=most, units=US, kind="pressure")
    assert [mark["at"] for mark in told] == pytest.approx([place * step / most for place in range(count)])
    assert [float(mark["text"]) for mark in told] == pytest.approx([place * step for place in range(count)])
