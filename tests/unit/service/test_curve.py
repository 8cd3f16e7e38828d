"""The curve of a test as a picture, mark by mark: US standard, 1,250 gpm; axes end 15 % past what lies furthest out. By hand."""
import pytest

from calc.base.errors import CalcError
from site_src.content import units
from tests.unit.service.made import a_plan

PLAN = a_plan()


def a_point(name="capacity", flow_gpm=1250, net_psi=150, status="pass", flow_band_gpm=10, net_band_psi=3):
    return {"id": name, "status": status, "flow_gpm": flow_gpm, "net_psi": net_psi, "flow_band_gpm": flow_band_gpm, "net_band_psi": net_band_psi}


BLANK = a_point("overload", None, None, "not_proven", None, None)


def drawn(run, today=(), earlier=(), system="US"):
    return run("service.curve", "curve", plan=PLAN, summary={"points": list(today)}, earlier=list(earlier), units=units.fine(system))


def near(mark):
    return {name: pytest.approx(value) if isinstance(value, float) else value for name, value in mark.items()}


def test_what_is_asked(run):
    """Rated flow at 150, at 165, 70 % at 200, half at 250: in the standard's order, whether anything was read or not."""
    told = drawn(run, [BLANK])
    assert told["asked"] == [near({"id": name, "flow": share / 1.15, "net": psi / (1.15 * 250)})
                             for name, share, psi in (("capacity", 1.0, 150), ("overload", 1.0, 165), ("seventy", 0.7, 200), ("fifty", 0.5, 250))]
    assert (told["today"], told["earlier"]) == ([], [])


def test_what_was_read(run):
    """Each point with its status and bands, as large as the axes make them; a band that is not known is none."""
    told = drawn(run, [a_point(), BLANK, a_point("fifty", 630, 247, "fail", None, None)])
    assert told["today"] == [
        near({"id": "capacity", "flow": 1250 / 1437.5, "net": 150 / 287.5, "status": "pass", "flow_band": 10 / 1437.5, "net_band": 3 / 287.5}),
        near({"id": "fifty", "flow": 630 / 1437.5, "net": 247 / 287.5, "status": "fail", "flow_band": 0.0, "net_band": 0.0})]


def test_what_was_read_before(run):
    told = drawn(run, [a_point()], [{"name": "2024", "points": [a_point(net_psi=155), BLANK]}, {"name": "2025", "points": [a_point("fifty", 625, 251)]}])
    assert told["earlier"] == [near({"id": "capacity", "flow": 1250 / 1437.5, "net": 155 / (1.15 * 251), "name": "2024"}),
                               near({"id": "fifty", "flow": 625 / 1437.5, "net": 251 / (1.15 * 251), "name": "2025"})]


@pytest.mark.parametrize("is_today", [True, False])
def test_the_axes_reach_past_what_lies_furthest_out(run, is_today):
    """A flow and a pressure over every point, of today or of another year: 2,000 gpm and 300 psi end at 2,300 and 345."""
    far = [a_point(flow_gpm=2000, net_psi=300)]
    told = drawn(run, far) if is_today else drawn(run, (), [{"name": "2024", "points": far}])
    mark = (told["today"] or told["earlier"])[0]
    assert (mark["flow"], mark["net"]) == (pytest.approx(1 / 1.15), pytest.approx(1 / 1.15))
    assert [each["text"] for each in told["net_marks"]] == ["0", "100", "200", "300"]
    assert told["flow_marks"][1] == {"at": pytest.approx(500 / 2300), "text": "500"}


def test_in_other_units(run):
    """By Pint: 287.5 psi end the axis at 1,982 kPa, 1,437.5 gpm at 5,441.5 L/min; the points lie where they lay."""
    told = drawn(run, [a_point()], system="SI")
    assert [each["text"] for each in told["net_marks"]] == ["0", "500", "1000", "1500"]
    assert told["net_marks"][3]["at"] == pytest.approx(1500 / 1982.24, rel=1e-4)
    assert [each["text"] for each in told["flow_marks"]] == ["0", "1000", "2000", "3000", "4000", "5000"]
    assert told["today"] == drawn(run, [a_point()])["today"]


def test_no_curve_without_a_run(run):
    """A plan without pumping runs has no curve to draw."""
    with pytest.raises(CalcError) as refused:
        run("service.curve", "curve", plan={"tests": [test for test in PLAN["tests"] if test["kind"] != "run"]}, summary={"points": []}, earlier=[], units=units.fine("US"))
    assert (refused.value.field, refused.value.code) == ("plan", "no_runs")
