"""A pump over the years: what a test leaves behind, the change against acceptance, and a plain trend.
"""
import math

from calc.base.errors import check_number
from calc.base.order import ordered

LEAST_TESTS = 3  # two points are a line through anything
LEAST_YEARS = 2
# twice the standard error holds 19 of 20 only for many tests; for few the factor is larger (Student's t, 95 %)
STUDENT = (12.71, 4.30, 3.18, 2.78, 2.57, 2.45, 2.36, 2.31, 2.26, 2.23)


def summary(plan, verdict):
    """What a test leaves behind to be compared with others.

    plan: of calc.service.plan
    verdict: of calc.service.verdict for it

    Returns contract `summary`. Raises nothing.
    """
    points = []
    for test in verdict["tests"]:
        if test["kind"] != "run":
            continue
        worst = None
        for row in test["sets"]:
            if None not in [figure["value"] for figure in row["figures"]]:
                margin = min(figure["margin"] / figure["least"] for figure in row["figures"])
                if worst is None or margin < worst[0]:
                    worst = (margin, row)
        point = {"id": test["id"], "status": test["status"], "flow_gpm": None, "net_psi": None, "net_band_psi": None,
                 "flow_band_gpm": None, "engine_rpm": None, "pump_rpm": None}
        if worst:
            flow, net = worst[1]["figures"]
            point.update({"flow_gpm": flow["value"], "net_psi": net["value"], "net_band_psi": net["band"], "flow_band_gpm": flow["band"],
                          "engine_rpm": worst[1]["engine_rpm"], "pump_rpm": worst[1]["pump_rpm"]})
        points.append(point)
    return {
        "status": verdict["status"],
        "standard": plan["standard"],
        "kind": plan["kind"],
        "rated_gpm": plan["rated_gpm"],
        "tests": [{"id": test["id"], "status": test["status"], "code": test["code"]} for test in verdict["tests"]],
        "points": points,
        "signs": [sign["id"] for sign in verdict["signs"]],
    }


def change_percent(point, base):
    """Net pressure against another test's, both at the same engine speed, in percent; None where it cannot be told.

    point, base: points of two summaries, of the same rated point

    An estimate: pressure goes with the square of speed at flows that follow the speed. Raises CalcError naming the input.
    Source: affinity laws, from memory.
    """
    for read in (point, base):
        if not read or not read.get("net_psi") or not read.get("engine_rpm"):
            return None
        check_number("net_psi", read["net_psi"])
        check_number("engine_rpm", read["engine_rpm"])
    ratio = base["engine_rpm"] / point["engine_rpm"]
    return (point["net_psi"] * ratio * ratio / base["net_psi"] - 1) * 100


def change_band_percent(point, base, speed_accuracy_rpm):
    """How far a change may be off, in percent either way.

    point, base: as for change_percent, where that is not None
    speed_accuracy_rpm: the most the engine speed may err, rpm, 0 or more

    Raises CalcError naming the input. Source: both bands of pressure, and twice both speeds' errors, as independent.
    """
    check_number("speed_accuracy_rpm", speed_accuracy_rpm)
    squares = 0
    for read in (point, base):
        pressure = (read.get("net_band_psi") or 0) / read["net_psi"]
        speed = 2 * speed_accuracy_rpm / read["engine_rpm"]
        squares += pressure * pressure + speed * speed
    return 100 * math.sqrt(squares)


def years(results, speed_accuracy_rpm):
    """Each rated point of a rig over its tests, against the first acceptance, or against the first test there is.

    results: [{"at": years as a number, such as 2024.4, "kind", "points"}], in any order; summaries with their date
    speed_accuracy_rpm: see change_band_percent

    Returns a list by point: `{"id", "base_at", "is_acceptance", "changes": [{"at", "status", "change_percent", "band_percent"}],
    "trend"}`; see trend. Raises CalcError naming the input.
    """
    by_time = ordered(results, lambda result: result["at"])
    accepted = [result for result in by_time if result["kind"] == "acceptance"]
    names = []
    for result in by_time:
        names += [point["id"] for point in result["points"] if point["id"] not in names]
    points = []
    for name in names:
        base, changes = None, []
        for result in (accepted[:1] or by_time):
            base = base or _usable(result, name)
        base_at = [result["at"] for result in by_time if base is not None and _usable(result, name) is base]
        for result in by_time:
            point = _usable(result, name)
            change = change_percent(point, base)
            changes.append({
                "at": result["at"], "status": ([read["status"] for read in result["points"] if read["id"] == name] or [None])[0],
                "change_percent": change,
                "band_percent": None if change is None else change_band_percent(point, base, speed_accuracy_rpm),
            })
        points.append({"id": name, "base_at": base_at[0] if base_at else None, "is_acceptance": bool(accepted), "changes": changes,
                     "trend": trend([(change["at"], change["change_percent"]) for change in changes if change["change_percent"] is not None])})
    return points


def _usable(result, name):
    """The point of a result, where its pressure and speed were read."""
    for point in result["points"]:
        if point["id"] == name and point["net_psi"] and point["engine_rpm"]:
            return point
    return None


def trend(points):
    """Change a year through several tests, with how far that may be off: `{"per_year", "band", "is_clear"}` or None.

    points: list of (years, percent)

    A straight line by least squares; its band is 19 of 20. None for fewer than three tests or less than two years: no line
    is drawn through two points. It says what was, and nothing of what comes. Raises CalcError naming points.
    Source: least squares and Student's t, from memory.
    """
    for at, value in points:
        check_number("points", at)
        check_number("points", value)
    count = len(points)
    if count < LEAST_TESTS:
        return None
    ats = [at for at, _ in points]
    if max(ats) - min(ats) < LEAST_YEARS:
        return None
    middle = sum(ats) / count
    spread = sum((at - middle) ** 2 for at in ats)
    per_year = sum((at - middle) * value for at, value in points) / spread
    level = sum(value for _, value in points) / count
    left = sum((value - level - per_year * (at - middle)) ** 2 for at, value in points)
    factor = STUDENT[count - 3] if count - 3 < len(STUDENT) else 2.2
    band = factor * math.sqrt(left / (count - 2) / spread)
    return {"per_year": per_year, "band": band, "is_clear": abs(per_year) > band}
