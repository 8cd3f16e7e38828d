"""The answer of one hose bed of a rig, as every page that lists beds takes it."""
from calc.base import display, entry, rounding
from calc.base.errors import CalcError
from calc.hydraulics import caution
from calc.layout import answer as layout_answer
from calc.rig import profile as rig_profile

STOPS = ("above_test_pressure", "high_pressure", "device_over")
BLANK = {"faulty_profile": "faulty_hose", "beyond_any_hose": "beyond"}  # why a bed has no number
BLANK.update({code: code for code in STOPS})


def solved(bed, shelf, units):
    """The line of a bed on level ground, its limits, and its answer without the parts that only the Pressure page shows.

    A bed that is stopped on Pressure has no number here, nor has one that is piped to the pump where any of its tips is.

    bed: a usable row, see calc.rig.profile
    shelf: see calc.base.shelf
    units: see calc.base.display

    Returns the line of calc.layout.typed, its limits as calc.hydraulics.caution takes them, and contract `layout_answer`.
    Raises CalcError; of those in BLANK the bed has no number. Source: calc.layout.pressure.
    """
    variants = [bed] if bed.get("hose") else rig_profile.beds_of({"beds": [bed]})
    solutions = [layout_answer.solved(rig_profile.layout_of(variant), shelf, units) for variant in variants]
    for _, limits, report in solutions:
        code = stop(caution.cautions(limits, report))
        if code:
            raise CalcError("bed", code)
    plain_layout, limits, _ = solutions[0]
    return plain_layout["lines"][0], limits, layout_answer.read(solutions[0], shelf, units, ())


def stop(cautions):
    """The code of what stops a layout, or None.

    cautions: of its answer, or as calc.hydraulics.caution lists them

    Raises nothing. Source: calc.hydraulics.caution.
    """
    codes = [row["code"] for row in cautions if row["level"] == caution.STOP]
    return codes[0] if codes else None


def blank_code(error):
    """Why a bed has no number, as a code for the page.

    error: what solved raised

    Raises CalcError, the same one, where it is none of BLANK.
    """
    if error.code not in BLANK:
        raise error
    return BLANK[error.code]


def is_over(cautions):
    """Whether the hose of a bed could reach its working limit when its nozzle shuts.

    cautions: see stop

    Raises nothing. Source: calc.hydraulics.caution.
    """
    return any(row["code"] == "above_working_pressure" for row in cautions)


def panel_step_psi(profile, units):
    """The step to which a rig's panel card rounds, in psi; None where its profile has none.

    profile: a sound one, see calc.rig.profile
    units: see calc.base.display

    Raises CalcError naming panel_step. Source: common practice (the marks of a panel's gauges).
    """
    return entry.quantity(units, "pressure", "panel_step", profile["panel_step"]) if profile.get("panel_step") else None


def on_card(units, psi, step_psi):
    """A pressure to set as the panel card has it.

    units: see calc.base.display
    psi: the pressure
    step_psi: see panel_step_psi

    Returns text. Raises CalcError naming value or units. Source: common practice (as panel_step_psi).
    """
    if step_psi is None:
        return display.setting(units, psi)
    here = display.scale(units, units["shown"], "pressure")
    shown = rounding.to_step(display.converted(here, psi), display.step(units, "pressure", step_psi))
    return display.rounded(units, shown, here["places"])
