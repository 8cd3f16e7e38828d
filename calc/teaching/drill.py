"""The drill: five questions a sitting on numbers and signs, made from the rig's own figures; what was missed comes back.

`ground` is what they are made from, see calc.teaching.drill_line. A question follows from its name, a seed and the ground alone.
"""
from calc.base import entry
from calc.base.errors import CalcError, check_within
from calc.teaching import drill_hose, drill_line as rigs, drill_signs, drill_water, leitner
from calc.teaching.dice import Dice

MAKERS = {
    "pump": drill_hose.pump, "friction": drill_hose.friction, "gauges": drill_hose.gauges, "tank": drill_hose.tank,
    "tip": drill_water.tip, "floors": drill_water.floors, "lines": drill_water.lines, "colors": drill_water.colors, "net": drill_water.net,
    "vacuum": drill_water.vacuum, "rated": drill_water.rated,
    "lamps": drill_signs.lamps, "proves": drill_signs.proves, "first_look": drill_signs.first_look,
}
EVERYWHERE = ("tip", "floors", "lines", "colors", "net:hydrant", "net:draft", "vacuum", "first_look")
SPLIT_SHAFT = ("lamps", "proves:engaged", "proves:ok", "proves:throttle")
SPLIT_DRIVES = ("midship", "rear_shaft")
NAMED = 0.5  # of what counts as right: how near an answer is to what a habit gives, to be told that it is one


def cards(ground, units):
    """The names of all questions there are for a rig, "kind" or "kind:which".

    ground: as the module says
    units: see calc.base.display

    Raises nothing. Source: what the rig's profile has.
    """
    lines = rigs.usable(ground, units)
    names = ["pump:" + str(place) for place, _ in lines]
    names += ["friction:" + name for name in drill_hose.hoses(ground, units)]
    names += EVERYWHERE
    rig = ground["rig"]
    names += ["gauges"] if rigs.unlike(ground, units) else []
    names += ["tank"] if rig.get("tank") and lines else []
    names += ["rated"] if rig.get("pump_rated") else []
    return names + (list(SPLIT_SHAFT) if rig.get("drive", SPLIT_DRIVES[0]) in SPLIT_DRIVES else [])


def sitting(ground, boxes, on_ms, offset_min, seed, units):
    """Five questions for now.

    ground, units: as for cards
    boxes: what was asked before, see calc.teaching.leitner
    on_ms: now, milliseconds since 1970
    offset_min: minutes that the place's clock is ahead of UTC
    seed: whole number, another each time

    Returns contract `drill_sitting`. Raises CalcError naming seed or the clock. Source: calc.teaching.leitner.
    """
    check_within("seed", seed, 0, leitner.MOST_SEED)
    names = leitner.sitting(cards(ground, units), boxes, leitner.day_of(on_ms, offset_min), seed)
    return {"cards": names, "questions": [question(ground, name, seed + place, units) for place, name in enumerate(names)]}


def standing(ground, boxes, on_ms, offset_min, units):
    """What was asked before, by kind, the least known first, and when it comes back.

    ground, units: as for cards
    boxes, on_ms, offset_min: as for sitting

    Returns contract `[drill_standing]`. Raises CalcError naming the clock. Source: calc.teaching.leitner.
    """
    return leitner.standing(cards(ground, units), boxes, leitner.day_of(on_ms, offset_min))


def question(ground, card, seed, units):
    """One question, made from its name and a seed.

    ground, units: as for cards
    card: one of cards
    seed: whole number

    Returns contract `drill_question`. Raises CalcError naming card where the rig has no such question now.
    """
    if card not in cards(ground, units):
        raise CalcError("card", "unknown")
    return MAKERS[card.split(":")[0]](card, Dice(seed), ground, units)


def judged(question, reply, boxes, card, on_ms, offset_min, units):
    """Whether an answer is right, the habit that it looks like, and where the question goes.

    question: as it was asked
    reply: what was typed, or the option that was chosen
    boxes, on_ms, offset_min, units: as for sitting
    card: the question's name

    Returns contract `drill_judged`. Raises CalcError naming reply where it is no number or no option, or the clock. Source: calc.teaching.leitner.
    """
    answer = right(question, reply, units)
    answer["row"] = leitner.after(boxes.get(card), answer["is_right"], leitner.day_of(on_ms, offset_min))
    return answer


def right(question, reply, units):
    """Whether an answer is right, and the habit that it looks like.

    question, reply, units: as for judged

    Returns `{"is_right", "habit"}`. Raises CalcError naming reply where it is no number or no option.
    """
    answer = question["answer"]
    if answer["way"] == "chosen":
        if reply not in answer["options"]:
            raise CalcError("reply", "unknown")
        is_right = reply == answer["right"]
        habits = [row["code"] for row in question["habits"] if row["value"] == reply]
    else:
        value = entry.quantity(units, answer["quantity"], "reply", reply)
        slack = answer["within"] * 1e-6
        is_right = abs(value - answer["value"]) <= answer["within"] + slack
        near = sorted([(abs(value - row["value"]), row["code"]) for row in question["habits"]])
        habits = [code for off, code in near if off <= answer["within"] * NAMED + slack]
    return {"is_right": is_right, "habit": None if is_right or not habits else habits[0]}
