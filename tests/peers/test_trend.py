"""The trend of a pump against a general statistics library."""
import random

import pytest
from scipy import stats


@pytest.mark.parametrize("count", [3, 4, 5, 7, 10, 12, 13, 20, 40])
def test_trend_against_a_statistics_library(run, count):
    """Slope to nine figures; band of 95 % to half a percent up to 12 tests, and never narrower than the library's beyond."""
    pick = random.Random(count)
    points = [[2000 + each + pick.random(), pick.gauss(-0.7 * each, 1.5)] for each in range(count)]
    told = run("service.years", "trend", points=points)
    line = stats.linregress([at for at, _ in points], [value for _, value in points])
    band = stats.t.ppf(0.975, count - 2) * line.stderr
    assert told["per_year"] == pytest.approx(line.slope, rel=1e-9)
    assert told["band"] == pytest.approx(band, rel=5e-3) if count <= 12 else band * 0.9995 <= told["band"] <= band * 1.13
    assert told["is_clear"] == (abs(told["per_year"]) > told["band"])
