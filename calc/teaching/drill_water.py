"""Questions of water: tips, floors, hydrants, net pressure, vacuum, the pump's rating. `ground`: see calc.teaching.drill_line."""
from calc.base import display, entry
from calc.hydraulics import nozzle, water
from calc.pump import draft, rating
from calc.supply import hydrant, sources
from calc.teaching import drill_line as rigs, drill_parts as parts

TIP_SHARE = 0.05
RATING_SHARE = 0.03
FLOOR_SHARE = 0.18  # so that the 5 psi a floor that many are taught is right for floors of 10 ft, which take 4.3, and a floor too many never is
LOWEST_FLOOR, FLOORS = 3, 3  # that are asked for; from the sixth on the two would be too close in bar
PLAIN_PSI = 1
MASTER_PSI, HAND_PSI = 80, 50
COUNTS = ("3", "2", "1", "0")
CLASSES = ("AA", "A", "B", "C")
CLEAR = 0.02  # of a limit between two answers: how far from it a made-up figure stays


def tip(card, dice, ground, units):
    """Flow of a smooth-bore tip: the rig's own and the usual ones.

    card: "tip"
    dice: throws
    ground, units: as the module says

    Returns contract `drill_question`. Raises CalcError naming the tip. Source: calc.hydraulics.nozzle.
    """
    own = [bed["end"] for bed in ground["beds"] if bed["end"]["kind"] == "smooth"]
    usual = [{"tip": row["id"], "pressure": row["usual"]} for row in ground["tips"]]
    end = dice.pick(own if own and dice.below(2) else usual)
    psi = entry.quantity(units, "pressure", "pressure", end["pressure"])
    tip_in = entry.quantity(units, "diameter", "tip", end["tip"])
    flow_gpm = nozzle.smooth_bore_flow_gpm(tip_in, psi)
    facts = {"tip": rigs.tip_label(ground, units, end["tip"]), "pressure": display.text(units, "pressure", psi)}
    terms = {
        "constant": display.text(units, "tip_constant", nozzle.TIP_CONSTANT), "tip": parts.term(units, "diameter", tip_in),
        "pressure": parts.term(units, "pressure", psi), "flow": display.text(units, "flow", flow_gpm),
    }
    other_psi = HAND_PSI if psi > (HAND_PSI + MASTER_PSI) / 2 else MASTER_PSI
    return parts.typed("tip", units, "flow", flow_gpm, max(TIP_SHARE * flow_gpm, 1), facts, [("tip", terms)], [
        ("diameter_not_squared", flow_gpm / tip_in), ("no_root", flow_gpm * psi ** 0.5),
        ("other_pressure", nozzle.smooth_bore_flow_gpm(tip_in, other_psi)),
    ])


def floors(card, dice, ground, units):
    """What height takes, counted by floors from the street, which is the first.

    card: "floors"
    dice, ground, units: as for tip

    Returns contract `drill_question`. Raises CalcError naming floor. Source: calc.hydraulics.water.
    """
    floor = LOWEST_FLOOR + dice.below(FLOORS)
    floor_ft = rigs.floor_height_ft(ground, units)
    rise_ft = (floor - 1) * floor_ft
    rise_psi = water.elevation_psi(rise_ft)
    _, within_psi = parts.even(units, "pressure", FLOOR_SHARE * rise_psi, PLAIN_PSI)
    facts = {"floor": str(floor), "height": parts.term(units, "length", floor_ft)}
    terms = rigs.elevation_terms(units, rise_ft)
    terms["floors"] = str(floor - 1)
    return parts.typed("floors", units, "pressure", rise_psi, max(within_psi, PLAIN_PSI), facts, [("floors", terms)], [
        ("ground_floor_counted", water.elevation_psi(floor * floor_ft)), ("elevation_twice", 2 * rise_psi),
        ("feet_for_psi", rise_ft) if parts.is_customary(units) else None,
    ])


def lines(card, dice, ground, units):
    """More lines that a hydrant gives, by the drop in percent.

    card: "lines"
    dice, ground, units: as for tip

    Returns contract `drill_question`. Raises nothing. Source: calc.supply.sources.additional_lines, the percentage rule.
    """
    static, static_psi = parts.even(units, "pressure", 50 + 5 * dice.below(11), 5)
    drops = []
    for percent in range(4, 40):
        residual, residual_psi = parts.even(units, "pressure", static_psi * (1 - percent / 100), 1)
        exact = 100 * (static_psi - residual_psi) / static_psi
        if all([abs(exact - limit) > 100 * CLEAR / 2 for limit, _ in sources.PERCENTAGE_ROWS]):
            drops.append((residual, residual_psi, exact))
    residual, residual_psi, percent = dice.pick(drops)
    right = str(sources.additional_lines(static_psi, residual_psi)["percentage"])
    of_residual = str(sources.additional_lines(static_psi, static_psi - static_psi * (static_psi - residual_psi) / residual_psi)["percentage"])
    drop, _ = parts.even(units, "pressure", static_psi - residual_psi, 1)
    terms = {"drop": drop, "static": static, "percent": display.rounded(units, percent, 0), "lines": right}
    return parts.chosen("lines", list(COUNTS), right, {"static": static, "residual": residual}, [("lines", terms)], [("drop_of_residual", of_residual)])


def colors(card, dice, ground, units):
    """The color of a hydrant by what it gives at 20 psi.

    card: "colors"
    dice, ground, units: as for tip

    Returns contract `drill_question`. Raises nothing. Source: calc.supply.hydrant.hydrant_class.
    """
    flows = []
    for tens in range(20, 220, 5):
        text, flow_gpm = parts.even(units, "flow", tens * 10, 50)
        if all([abs(flow_gpm - limit) > CLEAR * limit for limit, _ in hydrant.CLASSES if limit]):
            flows.append((text, flow_gpm))
    flow, flow_gpm = dice.pick(flows)
    right = hydrant.hydrant_class(flow_gpm)
    return parts.chosen("colors", list(CLASSES), right, {"flow": flow}, [("color_" + right, {
        "low": display.text(units, "flow", 500), "middle": display.text(units, "flow", 1000), "high": display.text(units, "flow", 1500)})], [])


def net(card, dice, ground, units):
    """Net pump pressure, from a hydrant or from draft.

    card: "net:hydrant" or "net:draft"
    dice, ground, units: as for tip

    Returns contract `drill_question`. Raises nothing. Source: calc.pump.draft.
    """
    place = card.split(":")[1]
    discharge, discharge_psi = parts.even(units, "pressure", 120 + 5 * dice.below(25), 5)
    if place == "hydrant":
        intake, intake_psi = parts.even(units, "pressure", 20 + 5 * dice.below(11), 5)
        net_psi = draft.net_pump_pressure_from_intake_psi(discharge_psi, intake_psi)
        wrong = [("intake_added", discharge_psi + intake_psi), ("gross", discharge_psi)]
    else:
        intake, vacuum_inhg = parts.even(units, "vacuum", 6 + dice.below(13), 1)
        net_psi = draft.net_pump_pressure_psi(discharge_psi, draft.lift_from_vacuum_ft(vacuum_inhg), 0)
        wrong = [("vacuum_taken_off", 2 * discharge_psi - net_psi), ("gross", discharge_psi),
                 ("inches_for_psi", discharge_psi + vacuum_inhg) if parts.is_customary(units) else None]
    facts = {"discharge": discharge, "intake": intake, "place": place}
    terms = {"discharge": discharge, "intake": intake, "net": display.text(units, "pressure", net_psi),
             "vacuum": parts.term(units, "pressure", net_psi - discharge_psi)}
    return parts.typed("net", units, "pressure", net_psi, PLAIN_PSI, facts, [("net_" + place, terms)], wrong)


def vacuum(card, dice, ground, units):
    """What the intake gauge shows at draft, primed and nothing flowing.

    card: "vacuum"
    dice, ground, units: as for tip

    Returns contract `drill_question`. Raises nothing. Source: calc.pump.draft.vacuum_inhg.
    """
    lift, lift_ft = parts.even(units, "lift", 6 + dice.below(14), 1)
    inhg = draft.vacuum_inhg(lift_ft)
    shown = [display.scale(units, units["shown"], kind)["factor"] for kind in ("lift", "vacuum")]
    terms = {"lift": lift, "each": display.plain(units, lift_ft * shown[0] / (inhg * shown[1]), 3), "vacuum": display.text(units, "vacuum", inhg)}
    return parts.typed("vacuum", units, "vacuum", inhg, 1, {"lift": lift}, [("vacuum", terms)], [
        ("feet_for_inches", lift_ft * 1.0) if parts.is_customary(units) else None,
        ("psi_for_inches", water.elevation_psi(lift_ft)) if parts.is_customary(units) else None,
    ])


def rated(card, dice, ground, units):
    """What the rig's own pump must give at 200 or 250 psi net.

    card: "rated"
    dice, ground, units: as for tip

    Returns contract `drill_question`. Raises CalcError naming pump_rated. Source: calc.pump.rating.test_points.
    """
    rated_gpm = entry.quantity(units, "flow", "pump_rated", ground["rig"]["pump_rated"])
    points = rating.test_points(rated_gpm)
    place = 1 + dice.below(2)
    flow_gpm, net_psi = points[place]
    percent = rating.RATING[place][0]
    facts = {"rated": display.text(units, "flow", rated_gpm), "net": display.setting(units, net_psi)}
    terms = {"rated": facts["rated"], "percent": str(percent), "flow": display.text(units, "flow", flow_gpm)}
    terms.update({"at_" + str(share): display.setting(units, psi) for share, psi in rating.RATING})
    return parts.typed("rated", units, "flow", flow_gpm, max(RATING_SHARE * flow_gpm, 1), facts, [("rated", terms)], [
        ("full_rating", rated_gpm), ("other_point", points[3 - place][0]),
    ])
