"""The call of the shift: a made-up call from one seed, step by step, the same to every phone of a station through a shift.

Into pump, the first line, its supply, a change in the middle, a fault. A step is `{"question", "dials", "lamps"}`: a question as the drill asks it
(calc.teaching.drill_parts), and the gauges and lamps that are drawn with it. `ground`: see calc.teaching.drill_line.
"""
from calc.base import display, entry
from calc.base.errors import CalcError
from calc.supply import sources
from calc.teaching import call_dials as dials, call_fault, drill, drill_hose, drill_parts as parts, drill_line as rigs, drill_signs, drill_water, leitner
from calc.teaching.dice import Dice

SHIFT_BEGINS_MIN = 7 * 60  # of the day; shifts of 24 hours and of 12 begin there, common practice
MOST_LINE_PSI = 225
IDLE_PSI = 50
CHANGES_OF_HYDRANT, CHANGES_OF_TANK = ("second", "intake"), ("second", "tank_low")
PROOFS = ("engaged", "ok", "gauge", "agree")
ACTS = ("hold", "down", "up", "shut")
TANK_ACTS = ("reaches", "tell", "shut_now")
QUARTERS = 4
LOW_QUARTERS = 1
LASTS, RUNS_OUT = 0.7, 1.5  # of the minutes left, that a hydrant takes: clear of a tie


def shift_seed(on_ms, offset_min):
    """The seed of the shift that is on: another each day at seven.

    on_ms, offset_min: see calc.teaching.leitner.day_of

    Returns a whole number. Raises CalcError naming day. Source: common practice (shifts change at seven or eight in the morning).
    """
    return leitner.day_of(on_ms, offset_min - SHIFT_BEGINS_MIN)


def call(ground, seed, replies, units):
    """A call with the answers that were given so far.

    ground: see the module
    seed: whole number, 0 to a million
    replies: what was typed or chosen at each step, in their order
    units: see calc.base.display

    Returns contract `call`. Raises CalcError naming beds where the rig has no line to make a call of, or reply.
    """
    made = steps(ground, seed, units)
    judged = [drill.right(step["question"], reply, units) for step, reply in zip(made, replies)]
    return {"steps": made, "judged": judged}


def steps(ground, seed, units):
    """The steps of a call.

    ground, seed, units: as for call

    Returns a list of contract `call_step`. Raises CalcError naming beds.
    """
    lines = [line for _, line in rigs.usable(ground, units) if line.length_ft and line.pump_psi() <= MOST_LINE_PSI]
    if not lines:
        raise CalcError("beds", "empty")
    dice = Dice(seed)
    first = dice.pick(lines)
    opening = [_proof(ground, dice, units)] if ground["rig"].get("drive", drill.SPLIT_DRIVES[0]) in drill.SPLIT_DRIVES else []
    pump = drill_hose.raised(first, dice.pick(drill_hose.FLOORS_UP), False, ground, units)
    first_psi = pump["answer"]["value"]
    others = [(line, line.pump_psi() + first_psi - first.pump_psi()) for line in lines if line.name != first.name]
    others = [row for row in others if abs(row[1] - first_psi) >= rigs.APART_PSI]

    has_tank = bool(ground["rig"].get("tank"))
    on_tank = has_tank and dice.below(2) == 0
    change = dice.pick([name for name in (CHANGES_OF_TANK if on_tank else CHANGES_OF_HYDRANT) if name != "second" or others])
    supply, intake_psi = _tank(ground, first, units) if on_tank else _hydrant(ground, dice, units)
    master_psi = first_psi
    if change == "second":
        middle, master_psi = _second(first, first_psi, dice.pick(others), intake_psi, units)
    elif change == "intake":
        middle, intake_psi = _intake(dice, units)
    else:
        middle = _tank_low(ground, first, dice, units)
    fault = call_fault.made(dice, intake_psi, master_psi, first_psi, first.name, units)
    return opening + [_step(pump, [dials.pressure(units, "master", None)]), supply, middle, fault]


def _step(question, shown, lamps=None):
    return {"question": question, "dials": shown, "lamps": lamps}


def _proof(ground, dice, units):
    """Into pump: which proof contradicts the others, if one does."""
    right = dice.pick(PROOFS)
    claims = ["switch_closed", "parking_brake"] + ([] if right == "ok" else ["pump_gear"])
    lamps = {lamp: drill_signs.lit(ground["lights"][lamp], claims) for lamp in drill_signs.LAMPS}
    if right == "engaged":
        lamps["engaged"] = False  # a bulb: OK needs the same switch, and is lit
    shown = dials.pressure(units, "master", 0 if right == "gauge" else IDLE_PSI)
    question = parts.chosen("proof", list(PROOFS), right, {}, [("proof_" + right, {})], [("one_outweighs", "agree")])
    return _step(question, [shown], lamps)


def _hydrant(ground, dice, units):
    question = drill_water.lines("lines", dice, ground, units)
    residual_psi = entry.quantity(units, "pressure", "residual", question["facts"]["residual"])
    return _step(question, [dials.intake(units, residual_psi)]), residual_psi


def _tank(ground, first, units):
    return _step(drill_hose.of_tank(ground, [first], units), [dials.tank(QUARTERS)]), None


def _second(first, first_psi, other, intake_psi, units):
    """A second line to the same floor: the pump serves the one that needs more."""
    line, line_psi = other
    rows = sorted([(line_psi, line.name), (first_psi, first.name)])
    question = drill_hose.of_two((rows[1][1], rows[1][0]), (rows[0][1], rows[0][0]), True, units)
    question["kind"] = "second"
    question["facts"] = {"first": first.name, "second": line.name, "needs": display.setting(units, line_psi)}
    intake = [] if intake_psi is None else [dials.intake(units, intake_psi)]
    return _step(question, intake + [dials.pressure(units, "master", None)]), rows[1][0]


def _intake(dice, units):
    """The intake falls: whether the main still gives, by what has to stay at the intake."""
    is_low = dice.below(2) == 0
    _, psi = parts.even(units, "pressure", (5 if is_low else 30) + 5 * dice.below(3), 5)
    limit = display.setting(units, sources.LEAST_RESIDUAL_PSI)
    terms = {"intake": display.setting(units, psi), "limit": limit}
    question = parts.chosen("intake", list(ACTS), "down" if is_low else "hold", {"limit": limit}, [("intake_low" if is_low else "intake_holds", terms)], [
        ("more_from_main", "up"), ("shut_untold", "shut"), ("gives_away", "down"), ("main_collapses", "hold"),
    ])
    return _step(question, [dials.intake(units, psi)]), sources.LEAST_RESIDUAL_PSI if is_low else psi


def _tank_low(ground, first, dice, units):
    """A quarter of the tank, and a hydrant some minutes away: whether it lasts."""
    tank_gal = entry.quantity(units, "volume", "tank", ground["rig"]["tank"])
    left = sources.tank_minutes(tank_gal * LOW_QUARTERS / QUARTERS, first.flow_gpm)
    needed_text, needed = parts.even(units, "time", left * (LASTS if dice.below(2) == 0 else RUNS_OUT), 0.1)
    lasts = needed < left
    facts = {"first": first.name, "flow": display.text(units, "flow", first.flow_gpm), "tank": display.text(units, "volume", tank_gal), "needed": needed_text}
    terms = {"tank": facts["tank"], "flow": facts["flow"], "minutes": display.text(units, "time", left), "needed": needed_text}
    question = parts.chosen("tank_low", list(TANK_ACTS), "reaches" if lasts else "tell", facts, [("tank_low", terms)], [
        ("shut_untold", "shut_now"), ("whole_tank", "reaches"),
    ])
    return _step(question, [dials.tank(LOW_QUARTERS)])
