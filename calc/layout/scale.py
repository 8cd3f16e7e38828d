"""The one scale over a layout's pump pressure: what it is now, where a hose comes to its working limit, what the pump is rated for."""
import math

from calc.base import display, entry
from calc.base.errors import CalcError
from calc.hydraulics import caution
from calc.layout import at_pump
from calc.pump import rating

MOST_STEPS = 5  # figures on the scale of a phone
ROOM = 1.04  # of the greatest pressure on it, so that its mark is not at the very end


def read(solution, layout, units, profile):
    """The scale of a layout that is worked out, its figures as numbers in the page's units.

    solution: of calc.layout.answer.solved
    layout: with where its water comes from, see calc.layout.at_pump, or without
    units: see calc.base.display
    profile: of the rig, or None; without a rated capacity the scale has no rating

    Returns contract `pressure_scale`. Raises nothing. Source: caution.of_hose for a hose, rating.rated_pressure_psi for a pump.
    """
    _, by_id, report = solution
    factor = display.scale(units, units["shown"], "pressure")["factor"]
    now_psi = report["discharge_psi"]
    limits = [limit for limit in (_of_hose(by_id, report), _of_pump(report, layout, units, profile)) if limit]
    most = max([now_psi] + [limit["psi"] for limit in limits]) * factor * ROOM
    step = _step(most)
    return {
        "now": now_psi * factor,
        "step": step,
        "end": step * max(math.ceil(most / step), 1),
        "limits": [
            {"code": limit["code"], "line": limit["line"], "at": limit["psi"] * factor, "text": display.text(units, "pressure", limit["psi"])}
            for limit in limits
        ],
    }


def _of_hose(by_id, report):
    """The pump pressure at which the first hose comes to its working limit with every nozzle shut; None where none is known."""
    first = None
    seen = caution.shut_psi(report)
    for line in report["lines"]:
        limit_psi = caution.working_psi(by_id[line["id"]])
        if limit_psi is None:
            continue
        at_psi = limit_psi + report["discharge_psi"] - seen[line["id"]]
        if at_psi > 0 and (first is None or at_psi < first["psi"]):
            first = {"code": "hose", "line": line["id"], "psi": at_psi}
    return first


def _of_pump(report, layout, units, profile):
    """The discharge pressure that the pump is rated for at this flow; None where its rating or its water is not known."""
    typed = profile.get("pump_rated") if isinstance(profile, dict) else None
    if not typed:
        return None
    try:
        net_psi = at_pump.net_psi(layout.get("source"), report["discharge_psi"], units)
        rated_gpm = entry.quantity(units, "flow", "pump_rated", typed)
        rated_psi = rating.rated_pressure_psi(rated_gpm, report["flow_gpm"])
    except CalcError:
        return None  # what is wrong is said where the entry stands
    at_psi = rated_psi + report["discharge_psi"] - net_psi
    return {"code": "pump", "line": None, "psi": at_psi} if rated_psi and at_psi > 0 else None


def _step(most):
    """A round step, of 1, 2 or 5 and zeros, that comes to a pressure in no more than MOST_STEPS."""
    step = 1
    while True:
        for times in (1, 2, 5):
            if step * times * MOST_STEPS >= most:
                return step * times
        step *= 10
