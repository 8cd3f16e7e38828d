"""Where the shift collar can stand: what each separate proof allows, which agree, and which contradict.

A proof is `{"id", "answers": [{"id", "fits": [places], "alarm"}]}`; places are "road", "between" and "pump". An answer
that fits all three tells nothing. Lights are proofs like any other: they report switches, not the collar.
"""
from calc.base.errors import CalcError

PLACES = ("road", "between", "pump")
NEVER = "never"  # never in pump at all: always a candidate, since no proof on this list rules it out


def places(proofs, seen):
    """For each place what speaks for it and against it, and which proofs contradict each other.

    proofs: see the module
    seen: the answers by proof, {"light": "on"}; a proof that is absent was not looked at

    Returns contract `collar`. Raises CalcError naming seen.
    Source: what each instrument shows at each place, from memory.
    """
    fits = []
    alarms = []
    for proof in proofs:
        if proof["id"] in seen:
            answer = _answer(proof, seen[proof["id"]])
            fits.append((proof["id"], answer["fits"]))
            if answer.get("alarm"):
                alarms.append(proof["id"])
    if len(fits) != len(seen):
        raise CalcError("seen", "unknown_proof")
    telling = [(proof, fit) for proof, fit in fits if len(fit) < len(PLACES)]
    rows = [{"place": place, "for": [proof for proof, fit in telling if place in fit],
             "against": [proof for proof, fit in telling if place not in fit]} for place in PLACES]
    return {
        "alarms": alarms,
        "places": rows,
        "contradictions": [[one, other] for count, (one, fit) in enumerate(telling) for other, beside in telling[count + 1:]
                           if not any(place in beside for place in fit)],
        "silent": [proof for proof, fit in fits if len(fit) == len(PLACES)],
        "candidates": [row["place"] for row in rows if telling and not row["against"]] + [NEVER],
    }


def _answer(proof, chosen):
    for answer in proof["answers"]:
        if answer["id"] == chosen:
            return answer
    raise CalcError("seen", "unknown_answer", proof=proof["id"])
