"""A diagnosis as a person leads it: answers given to whatever is asked, the engine put as it is wanted."""
from calc.diagnosis import fault
from site_src.content import data, knowledge

BASE = knowledge.base()
SIGNS = {sign["id"]: sign for sign in BASE["signs"]}
CAUSES = {cause["id"]: cause for cause in BASE["causes"]}
QUESTIONS = {question["id"]: question for question in BASE["questions"]}
ENTRIES = [row["id"] for row in data.load("faults")["sign"] if "entry" in row and not row.get("alarm")]
MOST_TURNS = 4  # of the key, in one dialogue


def rig_of(cause):
    """The plainest rig that can have a cause."""
    rig = {question: known[0] for question, known in cause.get("applies", {}).items()}
    return {"shift_control": "air", **rig} if rig.get("drive") == "midship" else rig


def answers_of(cause):
    """What a person says truly where this cause alone is at work; what it can show or not, they cannot tell."""
    def answer(sign):
        if sign in cause["shows"] + cause.get("brings", []):
            return "seen"
        return "unknown" if sign in cause.get("may", ()) or SIGNS[sign].get("either") else "not_seen"

    return answer


def answer_of(look, answer):
    """The answer to a question of several signs by what is said of each: the first whose signs are all seen; None where nobody can tell."""
    possible = [each for each in QUESTIONS[look["question"]]["answers"] if each["id"] in look["answers"]]
    seen = [each for each in possible if each["seen"] and all(answer(sign) == "seen" for sign in each["seen"])]
    unsure = any(answer(sign) == "unknown" for each in possible for sign in each["seen"])
    rest = [each for each in possible if not each["seen"]]
    return seen[0]["id"] if seen else None if unsure or not rest else rest[0]["id"]


def settled(look, said):
    """What an answer to a question says of each of its signs that was still open; `said` is one of its answers or None."""
    answers = [each for each in QUESTIONS[look["question"]]["answers"] if each["id"] in look["answers"]]
    seen = [sign for each in answers if each["id"] == said for sign in each["seen"]]
    return {sign: "unknown" if said is None else "seen" if sign in seen else "not_seen" for each in answers for sign in each["seen"]}


def look_of(sign):
    """What asks for a sign: its question, or the sign itself."""
    return next((name for name, question in QUESTIONS.items() if any(sign in answer["seen"] for answer in question["answers"])), sign)


def talk(signs, answer, rig, role, engine, slip=None):
    """Lead a dialogue to its end; returns that end, the looks that were asked, and all that is known of the signs then.

    A look is a sign or a question; `slip` is a pair of a question and the wrong answer to it.
    """
    base = fault.for_rig(BASE, rig)
    signs, asked = dict(signs), []
    for _ in range(fault.MOST_QUESTIONS + MOST_TURNS + 1):
        told = fault.next_check(base, signs, role, engine, len(asked))
        if told["kind"] == "check":
            asked.append(told["question"] or told["sign"])
            if told["question"]:
                said = slip[1] if slip and slip[0] == told["question"] else answer_of(told, answer)
                signs = {**settled(told, said), **signs}
            else:
                signs[told["sign"]] = answer(told["sign"])
        elif told["kind"] == "engine" and told["engine"][0] != engine:
            engine = told["engine"][0]
        else:
            return told, asked, signs
    raise AssertionError(f"no end: {signs}")
