"""The fault of a call: a crew loses water, and three gauges say which side of the pump to look at first."""
from calc.base import display
from calc.teaching import call_dials as dials, drill_line as lines, drill_parts as parts
from calc.teaching.drill_signs import SIDES

FALLEN = 0.5  # of its pressure, that a low gauge still shows
BURST = 0.3  # of its pressure, that a line which lost its hose still shows
MASTERS = None  # what the gauge of a gated line shows once nothing flows: the master's
VACUUM_INHG = 12
SWAY_PSI = 15
# side: intake, share of the master that is left, share of the line's own
PICTURES = (
    ("supply", "zero", FALLEN, FALLEN), ("supply", "vacuum", FALLEN, FALLEN), ("supply", "flutters", FALLEN, FALLEN),
    ("pump", "steady", FALLEN, FALLEN), ("pump", "steady", 0, 0),
    ("discharge", "steady", 1, 0), ("discharge", "steady", 1, MASTERS),
    ("line", "steady", FALLEN, FALLEN * BURST),
)


def made(dice, intake_psi, master_psi, line_psi, name, units):
    """The step of a fault.

    dice: throws
    intake_psi: at the intake before it, or None from the tank, where the intake shows zero
    master_psi, line_psi: on the gauges before it
    name: of the line that lost its water
    units: see calc.base.display

    A gated line reads below the master before and after, and falls in its share; no picture leaves all three as they were. From the tank the
    intake shows zero whether water comes or not, so that no picture there says pump.

    Returns contract `call_step`. Raises CalcError naming units.
    Source: trade articles on pump troubleshooting, as data/diagnose/water_loss.toml has them; `before` beside `now` from memory.
    """
    from_tank = intake_psi is None
    is_gated = master_psi - line_psi >= lines.APART_PSI
    side, intake, master_share, line_share = dice.pick([
        row for row in PICTURES if not (from_tank and (row[1] == "zero" or row[0] == "pump")) and (is_gated or row[3] is not MASTERS)
    ])
    now_psi = master_psi if line_share is MASTERS else line_psi * line_share
    was_psi = 0 if from_tank else intake_psi
    intakes = {
        "steady": dials.intake(units, was_psi), "zero": dials.intake(units, 0), "vacuum": dials.vacuum(units, VACUUM_INHG),
        "flutters": dials.intake(units, was_psi / 2, SWAY_PSI),
    }
    shown = [intakes[intake], dials.pressure(units, "master", master_psi * master_share), dials.pressure(units, "line", now_psi)]
    facts = {"bed": name, "intake": display.text(units, "pressure", was_psi), "master": display.setting(units, master_psi),
             "line": display.setting(units, line_psi)}
    return {"question": parts.chosen("look", list(SIDES), side, facts, [("side_" + side, {})], []), "dials": shown, "lamps": None}
