"""Questions of this rig's own hose and beds: pump pressure, friction, what the gauges show, how long the tank lasts.

`ground` is what they stand on, see calc.teaching.drill_line.
"""
from calc.base import display, entry, shelf as shelves
from calc.hydraulics import friction_rule, water
from calc.supply import sources
from calc.teaching import drill_line as rigs, drill_parts as parts

ADDED_PSI = 10  # of an appliance in the way
NEAR_PSI = 5
FLOORS_UP = (2, 3)  # one would be lost in what counts as right
MOST_CHANGED_PSI = 225  # past it the line is asked for as it lies
MINUTES_SHARE = 0.1
SECTIONS_FT = (100, 150, 200, 300, 400, 600)
LEAST_PSI, MOST_PSI = 8, 120  # of friction that is worth a question


def _slips(rule, coefficient, flow_gpm, length_ft, loss_psi):
    """The wrong friction that two habits give, as what is added to the right one."""
    is_square = rule == "square" or rule in friction_rule.STEPS_GPM
    rows = [("one_hundred", loss_psi * (100 / length_ft - 1) if length_ft else 0)]
    if is_square:
        rows.append(("not_squared", coefficient * flow_gpm / 100 * length_ft / 100 - loss_psi))
    return rows


def pump(card, dice, ground, units):
    """Pump pressure for a bed, some floors up or through an appliance.

    card: "pump:<place of the bed>"
    dice: throws
    ground, units: see calc.teaching.drill_line

    Returns contract `drill_question`. Raises CalcError naming the bed. Source: calc.layout.pressure.
    """
    line = dict(rigs.usable(ground, units))[int(card.split(":")[1])]
    floors, has_appliance = dice.pick((0,) + FLOORS_UP), dice.below(3) == 0
    return raised(line, floors, has_appliance, ground, units)


def raised(line, floors, has_appliance, ground, units):
    """The same for a line that is chosen; as it lies, where floors and appliance would take it past what is trained on, or where it has no hose to go up.

    line: see calc.teaching.drill_line
    floors: that the nozzle is up
    has_appliance: whether one more than its own is in the way
    ground, units: as for pump

    Returns contract `drill_question`. Raises CalcError naming floor.
    """
    floor_ft = rigs.floor_height_ft(ground, units)
    added_text, added_psi = parts.even(units, "pressure", ADDED_PSI, 1)
    raised_psi = water.elevation_psi(floor_ft * floors)
    if not line.length_ft or line.pump_psi() + raised_psi + added_psi > MOST_CHANGED_PSI:
        floors, raised_psi, has_appliance = 0, 0, False
    added_psi = line.device_psi + (added_psi if has_appliance else 0)
    total_psi = line.nozzle_psi + line.friction_psi + raised_psi + added_psi
    facts = line.facts(units)
    facts["floors"], facts["floor"] = str(floors), parts.term(units, "length", floor_ft)
    facts["added"] = added_text if has_appliance else ""
    facts["device"] = display.text(units, "pressure", line.device_psi) if line.device_psi else ""
    sum_terms = {
        "nozzle": parts.term(units, "pressure", line.nozzle_psi), "friction": parts.term(units, "pressure", line.friction_psi),
        "elevation": parts.term(units, "pressure", raised_psi), "appliance": parts.term(units, "pressure", added_psi),
        "sum": parts.term(units, "pressure", total_psi),
    }
    working = [rigs.friction_row(units, line.rule, line.coefficient, line.flow_gpm, line.length_ft, line.friction_psi)] if line.length_ft else []
    if floors:
        working.append(("elevation", rigs.elevation_terms(units, floor_ft * floors)))
    slips = _slips(line.rule, line.coefficient, line.flow_gpm, line.length_ft, line.friction_psi)
    return parts.typed("pump", units, "pressure", total_psi, NEAR_PSI, facts, working + [("sum", sum_terms)], [
        ("elevation_twice", total_psi + raised_psi), ("no_elevation", total_psi - raised_psi), ("no_appliance", total_psi - added_psi),
        ("no_nozzle", total_psi - line.nozzle_psi), ("no_friction", total_psi - line.friction_psi),
    ] + [(code, total_psi + more_psi) for code, more_psi in slips])


def gauges(card, dice, ground, units):
    """What a gauge shows with two lines out: the master, or that of the line that needs less.

    card: "gauges"
    dice, ground, units: as for pump

    Returns contract `drill_question`. Raises nothing. Source: study cards (the pump serves the line that needs most, the other is gated).
    """
    low, high = dice.pick(rigs.unlike(ground, units))
    is_master = dice.below(2) == 0
    return of_two((high.name, high.pump_psi()), (low.name, low.pump_psi()), is_master, units)


def of_two(high, low, is_master, units):
    """The same for two lines that are chosen.

    high, low: name of a line and what it asks of the pump, psi; the one that needs more, and the other
    is_master: whether the master gauge is asked for, or that of the other line
    units: as for pump

    Returns contract `drill_question`. Raises nothing.
    """
    (high_name, high_psi), (low_name, low_psi) = high, low
    facts = {"first": high_name, "first_needs": display.setting(units, high_psi), "second": low_name, "second_needs": display.setting(units, low_psi),
             "gauge": "master" if is_master else "line"}
    right_psi = high_psi if is_master else low_psi
    return parts.typed("gauges", units, "pressure", right_psi, NEAR_PSI, facts, [("gauge_" + facts["gauge"], dict(facts))], [
        ("pressures_added", low_psi + high_psi), ("pressures_averaged", (low_psi + high_psi) / 2), ("other_line", low_psi + high_psi - right_psi),
    ])


def friction(card, dice, ground, units):
    """Friction in some of a hose that the rig carries.

    card: "friction:<hose>"
    dice, ground, units: as for pump

    Returns contract `drill_question`. Raises CalcError naming hose. Source: calc.hydraulics.friction_rule.
    """
    name = card.split(":", 1)[1]
    figures = shelves.hose(ground["shelf"], "hose", name)
    flow_gpm, length_ft, loss_psi, rule, length = dice.pick(_runs(ground, units, figures))
    terms = rigs.friction_row(units, rule, figures["coefficient"], flow_gpm, length_ft, loss_psi)
    facts = {"hose": figures["label"], "length": length, "flow": display.text(units, "flow", flow_gpm),
             "own": rigs.own_coefficient(ground["shelf"], units, name)}
    slips = _slips(rule, figures["coefficient"], flow_gpm, length_ft, loss_psi)
    within_psi = min(max(int(loss_psi / 10), 2), NEAR_PSI)
    return parts.typed("friction", units, "pressure", loss_psi, within_psi, facts, [terms], [(code, loss_psi + more_psi) for code, more_psi in slips])


def _runs(ground, units, figures):
    """Flows and lengths of a hose that lose something to reckon with."""
    runs = []
    for usual_gpm in figures["card_gpm"]:
        _, flow_gpm = parts.even(units, "flow", usual_gpm, 5)
        rule = rigs.rule_of(ground["shelf"], units, figures["size_in"], flow_gpm)
        for sections in SECTIONS_FT:
            length, length_ft = parts.even(units, "length", sections, 50)
            loss_psi = friction_rule.loss_psi(rule, figures["size_in"], figures["coefficient"], flow_gpm, length_ft)
            if LEAST_PSI <= loss_psi <= MOST_PSI:
                runs.append((flow_gpm, length_ft, loss_psi, rule, length))
    return runs


def hoses(ground, units):
    """Hoses of the rig's beds and its supply that questions of friction can be made of.

    ground, units: see calc.teaching.drill_line

    Raises nothing.
    """
    names = []
    for row in ground["beds"] + ground["rig"].get("supply", []):
        name = row.get("hose")
        figures = ground["shelf"]["hoses"].get(name) if name else None
        if figures and not figures.get("faulty") and name not in names and _runs(ground, units, figures):
            names.append(name)
    return names


def tank(card, dice, ground, units):
    """How long the rig's own tank lasts for one bed, or for two.

    card: "tank"
    dice, ground, units: as for pump

    Returns contract `drill_question`. Raises CalcError naming tank. Source: calc.supply.sources.tank_minutes.
    """
    return of_tank(ground, dice.mixed([line for _, line in rigs.usable(ground, units)])[:1 + dice.below(2)], units)


def of_tank(ground, lines, units):
    """The same for one line or two that are chosen.

    ground, units: as for pump
    lines: see calc.teaching.drill_line

    Returns contract `drill_question`. Raises CalcError naming tank.
    """
    tank_gal = entry.quantity(units, "volume", "tank", ground["rig"]["tank"])
    flow_gpm = sum([line.flow_gpm for line in lines])
    minutes = sources.tank_minutes(tank_gal, flow_gpm)
    facts = {"tank": display.text(units, "volume", tank_gal), "first": lines[0].name, "first_flow": display.text(units, "flow", lines[0].flow_gpm),
             "second": "", "second_flow": ""}
    if len(lines) > 1:
        facts["second"], facts["second_flow"] = lines[1].name, display.text(units, "flow", lines[1].flow_gpm)
    terms = {"tank": facts["tank"], "flow": display.text(units, "flow", flow_gpm), "minutes": display.text(units, "time", minutes)}
    return parts.typed("tank", units, "time", minutes, max(minutes * MINUTES_SHARE, 0.1), facts, [("tank", terms)], [
        ("one_line", sources.tank_minutes(tank_gal, lines[0].flow_gpm)),
    ])
