"""Questions of signs: which lamps are lit, what a lamp proves, which look comes first. `ground`: see calc.teaching.drill_line."""
from calc.diagnosis import water_loss
from calc.teaching import drill_parts as parts

LAMPS = ("engaged", "ok", "throttle")
LIT = ("none", "throttle", "engaged", "engaged_throttle", "engaged_ok_throttle")
NEEDS = ("switch", "switch_gear_brake", "gear_brake_or_neutral", "pressure")
NEED_OF = {"engaged": "switch", "ok": "switch_gear_brake", "throttle": "gear_brake_or_neutral"}
SIDES = ("supply", "pump", "discharge", "line")


def lit(rows, claims):
    """Whether a lamp is lit: all claims of any one row hold.

    rows: of the lamp
    claims: what holds

    Raises nothing. Source: calc.diagnosis.interlock, the same logic.
    """
    return any([all([claim in claims for claim in row]) for row in rows])


def lamps(card, dice, ground, units):
    """Which of the three lamps are lit, with the switch, the gear and the brake as they are.

    card: "lamps"
    dice: throws
    ground, units: as the module says; units are not used

    Returns contract `drill_question`. Raises nothing. Source: site_src/data/practice.toml, the lights.
    """
    claims = [claim for claim in ("switch_closed", "parking_brake") if dice.below(2)]
    gear = "pump_gear" if dice.below(2) else "neutral"
    held = claims + [gear]
    right = "_".join([lamp for lamp in LAMPS if lit(ground["lights"][lamp], held)]) or "none"
    facts = {"switch": "closed" if "switch_closed" in claims else "open", "brake": "set" if "parking_brake" in claims else "off", "gear": gear}
    working = [(("lit_" if lit(ground["lights"][lamp], held) else "dark_") + lamp, {}) for lamp in LAMPS]
    return parts.chosen("lamps", list(LIT), right, facts, working, [
        ("throttle_is_not_pump", "engaged_ok_throttle") if right == "throttle" else ("neutral_lights_throttle", "none"),
    ])


def proves(card, dice, ground, units):
    """What it takes to light a lamp, and so all that it proves.

    card: "proves:<lamp>"
    dice, ground, units: as for lamps

    Returns contract `drill_question`. Raises nothing. Source: as lamps.
    """
    lamp = card.split(":")[1]
    return parts.chosen("proves", dice.mixed(NEEDS), NEED_OF[lamp], {"lamp": lamp}, [("proves_" + lamp, {})], [("lamp_is_no_pressure", "pressure")])


def first_look(card, dice, ground, units):
    """Which side of the pump to look at first, from three gauges in one look.

    card: "first_look"
    dice, ground, units: as for lamps

    Returns contract `drill_question`. Raises nothing. Source: calc.diagnosis.water_loss.
    """
    row = dice.pick(ground["gauges"])
    seen = {gauge: dice.pick(row[gauge]) for gauge in water_loss.GAUGES}
    if seen["master"] == "none":
        seen["line"] = "with"  # no line stands above a pump that makes nothing
    [right] = water_loss.side(ground["gauges"], seen)["sides"]
    return parts.chosen("first_look", list(SIDES), right, seen, [("side_" + right, {})], [])
