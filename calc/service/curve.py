"""The curve of a service test as a picture: what the standard asks, today's points with their bands, and earlier tests' points."""
from calc.base import display
from calc.base.errors import CalcError

MOST_MARKS = 6
ROOM = 1.15  # of the highest figure, so that a band has room above it


def curve(plan, summary, earlier, units):
    """Everything the picture shows, placed from 0 to 1 along flow and along net pressure, with texts in the page's units.

    plan: of calc.service.plan
    summary: of calc.service.years.summary for it
    earlier: points of earlier tests, each contract `earlier_test`
    units: see calc.base.display

    Returns contract `curve`; points that were not read are left out. Raises CalcError naming units or plan.
    """
    runs = [test for test in plan["tests"] if test["kind"] == "run"]
    if not runs:
        raise CalcError("plan", "no_runs")
    read = [point for point in summary["points"] if point["net_psi"] is not None]
    before = [(test["name"], point) for test in earlier for point in test["points"] if point["net_psi"] is not None]
    points = read + [point for _, point in before]
    most_gpm = ROOM * max([run["flow_gpm"] for run in runs] + [point["flow_gpm"] for point in points])
    most_psi = ROOM * max([run["net_psi"] for run in runs] + [point["net_psi"] for point in points])

    def placed(point):
        return {"id": point["id"], "flow": point["flow_gpm"] / most_gpm, "net": point["net_psi"] / most_psi}

    asked = [placed(run) for run in runs]
    today = []
    for point in read:
        mark = placed(point)
        mark["status"] = point["status"]
        mark["flow_band"] = (point["flow_band_gpm"] or 0) / most_gpm
        mark["net_band"] = (point["net_band_psi"] or 0) / most_psi
        today.append(mark)
    others = []
    for name, point in before:
        mark = placed(point)
        mark["name"] = name
        others.append(mark)
    return {"flow_marks": marks(most_gpm, units, "flow"), "net_marks": marks(most_psi, units, "pressure"),
            "asked": asked, "today": today, "earlier": others}


def marks(most, units, kind):
    """Round figures along an axis from nothing to the most, in the page's unit: [{"at", "text"}].

    most: end of the axis in calc's unit, above 0
    units: see calc.base.display
    kind: the quantity

    Raises CalcError naming units. Source: common practice (steps of 1, 2, 2.5 or 5 times a power of ten).
    """
    end = most * display.scale(units, units["shown"], kind)["factor"]
    step = 1.0
    while step < end:
        step *= 10
    step = next(step / share for share in (50, 40, 20, 10, 5) if end / (step / share) <= MOST_MARKS)
    return [{"at": count * step / end, "text": display.plain(units, count * step, 1)} for count in range(int(end / step + 1e-9) + 1)]
