"""A rig's tests over the years as a person reads them: each rated point against acceptance, and how it went from test to test.
"""
from calc.base import display
from calc.base.order import ordered
from calc.service import years as service_years

MS_PER_YEAR = 365.25 * 86400000
FIRST_YEAR = 1970
LEAST_SHOWN_PERCENT = 5  # either way from the base, so that a steady pump does not look wild
ROOM = 1.1


def year_at(at_ms):
    """A time of a phone as years with a fraction.

    at_ms: milliseconds since 1970

    Raises nothing.
    """
    return FIRST_YEAR + at_ms / MS_PER_YEAR


def history(results, speed_accuracy_rpm, units):
    """Each rated point of one rig through its tests, with texts in the page's units and places from 0 to 1 for a picture.

    results: in any order, each contract `result`
    speed_accuracy_rpm: the most an engine speed may err, rpm, 0 or more
    units: see calc.base.display

    Returns the answer of contract `service.history`; only tests to the newest one's standard and rating are compared.
    Raises CalcError naming the input.
    """
    by_time = ordered(results, lambda result: result["at_ms"])
    if not by_time:
        return {"compared": [], "points": []}
    newest = by_time[-1]
    alike = [result for result in by_time if result["standard"] == newest["standard"] and result["rated_gpm"] == newest["rated_gpm"]]
    dated = [{"at": year_at(result["at_ms"]), "kind": result["kind"], "points": result["points"]} for result in alike]
    points = service_years.years(dated, speed_accuracy_rpm)
    return {"compared": [result["id"] for result in alike], "points": [_point(point, alike, dated, units) for point in points]}


def _point(point, alike, dated, units):
    rows = []
    for change, result in zip(point["changes"], alike):
        read = [reading for reading in result["points"] if reading["id"] == point["id"]]
        rows.append(_row(change, result["id"], read[0] if read else None, units))
    base = [result["id"] for result, test in zip(alike, dated) if test["at"] == point["base_at"]]
    trend = point["trend"]
    is_clear_fall = trend is not None and trend["is_clear"] and trend["per_year"] < 0
    sides = [row["side"] for row in rows if row["side"] is not None]
    return {
        "id": point["id"], "base": base[0] if base else None, "is_acceptance": point["is_acceptance"], "rows": rows,
        "trend": trend and {"text": signed(units, trend["per_year"]), "band_text": display.plain(units, trend["band"], 1), "is_clear": trend["is_clear"]},
        "is_below": bool(sides) and sides[-1] == "below", "is_falling": is_clear_fall, "picture": _picture(point, units),
    }


def _row(change, test, read, units):
    read = read or {}
    percent, width = change["change_percent"], change["band_percent"]
    side = None
    if percent is not None:
        side = "below" if percent < -width else "above" if percent > width else "same"
    return {
        "test": test, "status": change["status"], "net_text": display.figure(units, "pressure", read.get("net_psi")),
        "net_band_text": display.figure(units, "pressure", read.get("net_band_psi")),
        "flow_text": display.figure(units, "flow", read.get("flow_gpm")),
        "engine_text": display.figure(units, "speed", read.get("engine_rpm")),
        "change_text": None if percent is None else signed(units, percent), "band_text": None if width is None else display.plain(units, width, 1), "side": side,
    }


def signed(units, percent):
    """A change in percent with its sign, to one decimal.

    units: see calc.base.display
    percent: the change

    Raises CalcError naming value.
    """
    text = display.plain(units, percent, 1)
    return "\u2212" + text[1:] if text[0] == "-" else text if text == "0" else "+" + text


def _picture(point, units):
    """Where each change lies, and the trend between the first test and the last, never past them; None without two tests."""
    read = [change for change in point["changes"] if change["change_percent"] is not None]
    if len(read) < 2 or read[-1]["at"] == read[0]["at"]:
        return None
    first, span = read[0]["at"], read[-1]["at"] - read[0]["at"]
    most = ROOM * max([LEAST_SHOWN_PERCENT] + [abs(change["change_percent"]) + change["band_percent"] for change in read])

    def up(percent):
        return (percent + most) / (2 * most)

    marks = [
        {"x": (change["at"] - first) / span, "y": up(change["change_percent"]), "low": up(change["change_percent"] - change["band_percent"]),
         "high": up(change["change_percent"] + change["band_percent"]), "status": change["status"]}
        for change in read
    ]
    line = None
    if point["trend"]:
        level = sum(change["change_percent"] for change in read) / len(read)
        middle = sum(change["at"] for change in read) / len(read)
        line = [up(level + point["trend"]["per_year"] * (at - middle)) for at in (first, first + span)]
    years = [year for year in range(int(first) + 1, int(first + span) + 1)]
    every = len(years) // 6 + 1
    return {"marks": marks, "line": line, "top_text": display.plain(units, most, 0), "base": up(0),
            "years": [{"x": (year - first) / span, "text": str(year)} for place, year in enumerate(years) if place % every == 0]}
