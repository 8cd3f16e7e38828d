"""The gauges that a call of the shift is drawn on, in the page's own unit. A dial is contract `call_dial`; one without a value is still to be set."""
import math

from calc.base import display
from calc.teaching import drill_parts as parts

MASTER_STEP_PSI, MASTER_STEPS = 100, 4
INTAKE_PSI, VACUUM_INHG = 120, 30  # a compound gauge: a mark below zero is as much as there is, 30 inHg, 100 kPa or 1 bar, and lies as far down as that lies up
SETS_PSI = 5  # a slider is moved by what counts as right


def pressure(units, gauge, psi, sway=0):
    """A discharge gauge: the master, or that of a line.

    units: see calc.base.display
    gauge: "master" or "line"
    psi: what it shows, or None where it is to be set
    sway: how far it swings to each side, psi

    Raises CalcError naming units. Source: faces of panel gauges, 0 to 400 psi, common practice.
    """
    step = display.step(units, "pressure", MASTER_STEP_PSI)
    return _dial(units, gauge, psi, sway, (0, MASTER_STEPS * step, step), display.setting(units, psi))


def intake(units, psi, sway=0):
    """The intake gauge, at pressure.

    units, psi, sway: as for pressure

    Raises CalcError naming units. Source: faces of compound gauges, common practice.
    """
    step = display.step(units, "vacuum", VACUUM_INHG)
    steps = math.ceil(INTAKE_PSI * display.scale(units, units["shown"], "pressure")["factor"] / step - display.LAST_BIT)
    return _dial(units, "intake", psi, sway, (-step, steps * step, step), display.text(units, "pressure", psi))  # read, and never set


def vacuum(units, inhg):
    """The intake gauge, under vacuum: read in inches of mercury, or below zero where the gauge has one unit for both.

    units: as for pressure
    inhg: vacuum, inches of mercury

    Raises CalcError naming units. Source: as intake.
    """
    below, above = [display.scale(units, units["shown"], kind)["factor"] for kind in ("vacuum", "pressure")]
    dial = intake(units, -inhg * below / above)
    if parts.is_customary(units):
        dial["text"], dial["quantity"] = display.text(units, "vacuum", inhg), "vacuum"
    return dial


def tank(quarters):
    """A tank gauge.

    quarters: of a full tank, 0 to 4

    Raises nothing. Source: tank gauges show quarters, common practice.
    """
    return {"gauge": "tank", "value": quarters, "sway": 0, "least": 0, "end": 4, "step": 1, "text": str(quarters), "quantity": "quarters", "moves_by": None}


def _dial(units, gauge, psi, sway, face, text):
    least, end, step = face
    scale = display.scale(units, units["shown"], "pressure")
    return {
        "gauge": gauge, "value": None if psi is None else psi * scale["factor"], "sway": sway * scale["factor"],
        "least": least, "end": end, "step": step, "text": text, "quantity": "pressure",
        "moves_by": display.step(units, "pressure", SETS_PSI) if psi is None else None,
    }
