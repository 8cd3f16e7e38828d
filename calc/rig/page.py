"""The Rig page's one question: what is wrong with a profile, and what follows from it."""
from calc.base import entry, shelf as shelves
from calc.base.errors import CalcError
from calc.rig import bed_answer, check, fault_text, figures, hose_test, profile as rig_profile


def answer(profile, shelf, units, parts, texts):
    """All that the page shows of a profile.

    profile: see calc.rig.profile, sound or not
    shelf: what is at hand, see calc.base.shelf, as the handbook has it
    units: see calc.base.display
    parts: those that are in sight, contract `rig_parts`
    texts: [kind, text] of what stands in inputs and was typed in another system

    Returns the answer of contract `rig_page.answer`. Raises CalcError naming text where one is of no known system.
    """
    problems = check.all_problems(profile, shelf, units)
    at_hand = rig_profile.judged(profile, problems, shelf, units)
    sound = profile if at_hand["rig"] else {}
    return {
        "problems": fault_text.read(problems, profile, units),
        "missing": check.missing(sound),
        "beds": [_bed(bed, at_hand, units) for bed in sound.get("beds", [])] if parts.get("beds") and "beds" in at_hand["rig"] else [],
        "figures": figures.beside_handbook(at_hand, shelf, units) if parts.get("figures") else [],
        "measured": {place: _measured(sound["hoses"][int(place)], readings, shelf, units)
                     for place, readings in parts.get("measured", {}).items()},
        "texts": entry.all_shown(units, texts),
    }


def _bed(bed, at_hand, units):
    """What the pump must show for a bed, whether its hose could pass its working limit, or why there is no number; and what its device takes."""
    if bed not in at_hand["rig"]["beds"]:
        return None
    try:
        _, _, answer = bed_answer.solved(bed, at_hand["shelf"], units)
    except CalcError as error:
        return {"pressure": None, "is_over": False, "loss": None, "code": error.code} if error.code in bed_answer.STOPS else None
    return {"pressure": answer["pressure"], "is_over": bed_answer.is_over(answer["cautions"]), "loss": answer["lines"][0]["appliance"]}


def _measured(row, readings, shelf, units):
    """What readings of a hose give, or why they give nothing."""
    try:
        return {"result": hose_test.read(readings, shelves.hose(shelf, "hose", row.get("hose"))["coefficient"], units)}
    except CalcError as error:
        return {"refusal": error.as_data()}
