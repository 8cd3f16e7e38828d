"""A diagnosis as a person leads it: answers given to whatever is asked, the engine put as it is wanted."""
from calc.diagnosis import fault
from site_src.content import data, knowledge

BASE = knowledge.base()
SIGNS = {sign["id"]: sign for sign in BASE["signs"]}
CAUSES = {cause["id"]: cause for cause in BASE["causes"]}
ENTRIES = [row["id"] for row in data.load("faults")["sign"] if "entry" in row and not row.get("alarm")]
MOST_TURNS = 4  # of the key, in one dialogue


def rig_of(cause):
    """The plainest rig that can have a cause."""
    rig = {question: known[0] for question, known in cause.get("applies", {}).items()}
    return {"shift_control": "air", **rig} if rig.get("drive") == "midship" else rig


def answers_of(cause):
    """What a person says truly where this cause alone is at work; what it can show or not, they cannot tell."""
    def answer(sign):
        if sign in cause["shows"]:
            return "seen"
        return "unknown" if sign in cause.get("may", ()) or SIGNS[sign].get("either") else "not_seen"

    return answer


def talk(signs, answer, rig, role, engine):
    """Lead a dialogue to its end; returns that end and the signs that were asked."""
    base = fault.for_rig(BASE, rig)
    signs, asked = dict(signs), []
    for _ in range(fault.MOST_QUESTIONS + MOST_TURNS + 1):
        told = fault.next_check(base, signs, role, engine, len(asked))
        if told["kind"] == "check":
            asked.append(told["sign"])
            signs[told["sign"]] = answer(told["sign"])
        elif told["kind"] == "engine" and told["engine"][0] != engine:
            engine = told["engine"][0]
        else:
            return told, asked
    raise AssertionError(f"no end: {signs}")
