"""How far a lay can be pushed: the most it passes within the pressure of its hose, and the surge of a nozzle shut fast."""
import math

from calc import display, entry, layout, reading, surge
from calc.errors import check_positive
from calc.rounding import rounded

FAST_S = 0.5  # a bale slammed shut; common practice is to take seconds over it


def answer(lay, shelf, units, line, limit):
    """The greatest flow of a lay and the surge at one of its nozzles, ready to be read.

    lay, shelf, units: as for reading.answer
    line: id of the nozzle's line that is shut fast
    limit: most the pump may show, as typed; empty for the least service-test pressure of the hose laid

    Returns `{"limit", "flow", "percent", "line", "surge"}`: texts; `limit` is None where it is left open and no hose's test
    pressure is known, and so are the next three; `line` sets the limit. `surge` is None at a joint or without a known
    bore, else `{"least", "most", "slowest"}`, texts to their first figure and seconds.
    Raises CalcError naming the typed field. Source: layout.greatest_flow, surge.rise.
    """
    plain_layout, limits, report = reading.worked(lay, shelf, units)
    tested = [limits[name]["test_psi"] for name in limits if limits[name].get("test_psi")]
    limit_psi = min(tested) if tested else None
    if limit:
        limit_psi = entry.quantity(units, "pressure", "limit", limit)
        check_positive("limit", limit_psi)
    found = None if limit_psi is None else layout.greatest_flow(plain_layout, limit_psi)
    return {
        "limit": display.text(units, "pressure", limit_psi),
        "flow": None if found is None else display.text(units, "flow", found["flow_gpm"]),
        "percent": None if found is None else rounded(100 * found["share"], 0),
        "line": found and found["line"],
        "surge": _surge(report, limits, line, units),
    }


def _surge(report, limits, name, units):
    for line in report["lines"]:
        facts = limits[line["id"]]
        if line["id"] == name and line["nozzle"] and facts.get("bore_in") and facts["length_ft"] > 0:
            found = surge.rise(line["flow_gpm"] / facts["parallel"], facts["bore_in"], facts["length_ft"], FAST_S)
            return {
                "least": _first_figure(units, found["least_psi"]),
                "most": _first_figure(units, found["most_psi"]),
                "slowest": rounded(math.ceil(found["slowest_s"]), 0),
            }
    return None


def _first_figure(units, psi):
    """A pressure in the page's unit, to its first figure."""
    amount = psi * display.scale(units, units["shown"], "pressure")["factor"]
    step = 1e-3
    while step * 10 <= amount:
        step *= 10
    places = 0 if step >= 1 else display.scale(units, units["shown"], "pressure")["places"]
    return rounded(step * int(amount / step + 0.5), places)
