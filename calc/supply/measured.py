"""What hose as it was measured would make of a water page's answer: beside the one by the handbook's, never in its place."""
from calc.base.errors import CalcError
from calc.hydraulics import measured_hose


def read(answering, entries, shelf, units, answer):
    """The answers by a department's own hose, or else by hose as it was measured of late, the least and the most.

    answering: the page's own function from entries, shelf and units to its answer
    entries, shelf, units: as it takes them
    answer: by the handbook's figures

    Returns contract `measured_answers`; None where no hose has such a figure, where the answer is the same by it, or where there is none by it.
    Raises nothing. Source: calc.hydraulics.measured_hose.
    """
    hoses = shelf.get("hoses", {})
    for whose in ("department", "modern"):
        others = {name: measured_hose.others(hoses[name], whose) for name in hoses if name in entries.values()}
        others = {name: others[name] for name in others if others[name]}
        answers = [_answered(answering, entries, shelf, units, {name: others[name][side] for name in others})
                   for side in range(max([len(others[name]) for name in others] + [0]))]
        if answers and None not in answers and any(_differs(other, answer) for other in answers):
            return {"whose": whose, "answers": [_beside(other, answer) for other in answers],
                    "hoses": {name: measured_hose.texts(hoses[name], units) for name in sorted(others)}}
    return None


def _answered(answering, entries, shelf, units, coefficients):
    other = dict(shelf)
    other["hoses"] = dict(shelf["hoses"])
    for name in coefficients:
        other["hoses"][name] = dict(shelf["hoses"][name])
        other["hoses"][name]["coefficient"] = coefficients[name]
    try:
        return answering(entries, other, units)
    except CalcError:
        return None


def _differs(other, answer):
    return other["figure"] != answer["figure"] or other["facts"] != answer["facts"] or bool(_changed_rows(other, answer))


def _beside(other, answer):
    """Of an answer by other hose its figure and sentence, and the rows that it has otherwise."""
    return {"sum": other["sum"], "facts": other["facts"], "figure": other["figure"], "rows": _changed_rows(other, answer)}


def _changed_rows(other, answer):
    own = {row["name"]: row["text"] for row in answer["rows"]}
    return {row["name"]: row["text"] for row in other["rows"] if row["text"] != own.get(row["name"])}
