"""A person who answers the looks of a diagnosis as the page puts them, exactly or with noise, while one cause is at work.

Only the doors of calc.phone are asked, as the page asks them. A WORLD is the set of signs that are there: what the cause always
shows, what the diagnosis opened with, and of what the cause can show each by the toss of a coin, as far as it can stand beside the
rest. With noise one answer in ten is wrong, and one in five is "can't tell".
"""
import json
import random
import re

from calc import phone
from site_src.content import data, fleet, knowledge

FILE = data.load("faults")
BASE = knowledge.base()
ROWS = {row["id"]: row for row in FILE["sign"]}
CAUSES = {row["id"]: row for row in FILE["cause"]}
QUESTIONS = {row["id"]: row for row in FILE["question"]}
WORDS = data.words("faults", "en")
ENTRIES = [row["id"] for row in FILE["sign"] if "entry" in row and not row.get("alarm")]
ROLES = ("operator", "technician")
EXACT, NOISY = {"wrong": 0, "unsure": 0}, {"wrong": 0.1, "unsure": 0.2}
SHOWN = 3  # of the causes that a page lists, those that count
MOST_STEPS = 40
WAYS = {"pump": r"to PUMP\b|PUMP\. Once|shift to pump|in PUMP\b", "road": r"to ROAD\b|then ROAD|shift to road|In ROAD and"}
NEVER = ("direction mistakes", "looks that must not run", "repeats of the entry", "dead ends")
STANDS = ("shaft_broken", "oil_cooler_cracked", "water_past_seal", "teeth_chipped", "pump_frozen")  # whose remedy says not to run it
RUNS = ("idle", "pumping", "run")


def ask(door, arguments, held=None):
    """What a door of calc answers."""
    answer = json.loads(phone.call(door, json.dumps({**arguments, **({"held": held} if held else {})})))
    assert "ok" in answer, answer
    return answer["ok"]


def rigs():
    """The rigs of the demonstration, and whoever chose none."""
    return {"none": {}, **{name: dict(profile) for name, profile in fleet.load().items()}}


def known(rig_name, rig):
    """The knowledge as far as it can be of this rig; held by the phone under the rig's name."""
    phone.hold("base", json.dumps(BASE))
    ours = ask("fault.for_rig", {"rig": rig}, {"knowledge": "base"})
    phone.hold(rig_name, json.dumps(ours))
    return ours


def can_have(cause, rig):
    return all(not rig.get(question) or rig[question] in answers for question, answers in CAUSES[cause].get("applies", {}).items())


def cases():
    """Each cause, what opens a diagnosis of it, each rig that can have it, each role that can see its opening."""
    fleet_rigs = rigs()
    for cause, row in CAUSES.items():
        for rig in fleet_rigs:
            shown = {sign["id"] for sign in _of(rig)["signs"]} if can_have(cause, fleet_rigs[rig]) else set()
            for entry in ENTRIES:
                if entry in shown and entry in row["shows"] + row.get("may", []):
                    for role in ROLES:
                        if role == "technician" or ROWS[entry].get("role") != "technician":
                            yield cause, entry, rig, role


_known = {}


def _of(rig):
    if rig not in _known:
        _known[rig] = known(rig, rigs()[rig])
    return _known[rig]


def way_of(sign):
    """Whether a sign is of a shift to pump or to road by its words, or of neither."""
    said = " ".join([WORDS["sees"][sign], WORDS["look"].get(sign, ""), WORDS["asks"].get(sign, [""])[0]])
    ways = [way for way, words in WAYS.items() if re.search(words, said)]
    return ways[0] if len(ways) == 1 else None


def begun_way(entry):
    """The shift that failed where a diagnosis opens with this sign: to pump or to road; None where it may be either, or none."""
    moments = knowledge.moments(ROWS[entry])
    return "road" if moments == ["out"] else "pump" if "in" in moments and "out" not in moments else None


def world(cause, entry, luck):
    """The signs that are there."""
    there = list(dict.fromkeys([entry] + CAUSES[cause]["shows"] + CAUSES[cause].get("brings", [])))
    way = begun_way(entry)
    for sign in CAUSES[cause].get("may", []):
        other = {"pump": "road", "road": "pump"}.get(way)
        if luck.random() < 0.5 and sign not in there and not (other and way_of(sign) == other) and not any(_apart(sign, one) for one in there):
            there.append(sign)
    return set(there)


def _apart(one, other):
    """Whether two signs cannot stand together."""
    if any({one, other} == set(row["pair"]) for row in FILE["exclusion"]):
        return True
    answers = [[answer["seen"] for answer in question["answers"]] for question in FILE["question"]]
    return any(sum(one in seen or other in seen for seen in each) > 1 for each in answers)


def truly(look, there):
    """The true answer to a look."""
    if not look["question"]:
        return "seen" if look["sign"] in there else "not_seen"
    answers = {answer["id"]: answer["seen"] for answer in QUESTIONS[look["question"]]["answers"] if answer["id"] in look["answers"]}
    full = [name for name, seen in answers.items() if seen and set(seen) <= there]
    none = [name for name, seen in answers.items() if not seen]
    return (full + none + ["unknown"])[0]


def said(look, there, luck, noise):
    """What the person says."""
    right = truly(look, there)
    chance = luck.random()
    if chance < noise["unsure"]:
        return "unknown"
    if chance < noise["unsure"] + noise["wrong"]:
        return luck.choice([answer for answer in (look["answers"] or ["seen", "not_seen"]) if answer != right])
    return right


def parts_of(look):
    """The signs that a look settles."""
    return [sign for row in QUESTIONS[look["question"]]["answers"] for sign in row["seen"]] if look["question"] else [look["sign"]]


def settled(look, answer, signs):
    """What an answer says of each sign that was still open, as static/js/diagnose/record.js has it."""
    if not look["question"]:
        return {look["sign"]: answer}
    rows = [row for row in QUESTIONS[look["question"]]["answers"] if row["id"] in look["answers"]]
    seen = [sign for row in rows if row["id"] == answer for sign in row["seen"]]
    return {sign: "unknown" if answer == "unknown" else "seen" if sign in seen else "not_seen"
            for row in rows for sign in row["seen"] if sign not in signs}


def run(cause, entry, rig, role, noise, seed):
    """One diagnosis to its end: what it asked, how it ended and what the page then lists."""
    luck = random.Random(f"{seed} {cause} {entry} {rig} {role}")
    _of(rig)
    there = world(cause, entry, luck)
    signs, engine, asked, looks, again = {entry: "seen"}, knowledge.begins(ROWS[entry]), 0, [], []
    for _ in range(MOST_STEPS):
        may_shift = not any(ROWS[sign].get("order") == "grinding" for sign in signs if signs[sign] == "seen")
        told = ask("look.after", {"signs": signs, "began": [entry], "again": again, "role": role, "engine": engine, "questions": asked, "may_shift": may_shift}, {"knowledge": rig})
        end = told["end"]
        if end["kind"] == "check":
            looks.append((end, dict(signs), engine))
            answer = said(end, there, luck, noise)
            if end["again"]:
                parts = [sign for sign in parts_of(end) if sign != entry]
                again = again + parts
                if answer == "unknown":  # the first answer stands
                    continue
                signs = {sign: signs[sign] for sign in signs if sign not in parts}
            else:
                asked += 1
            signs = {**signs, **settled(end, answer, signs)}
        elif end["kind"] == "engine" and end["engine"][0] != engine:
            engine = end["engine"][0]
        else:
            break
    listed = [end["cause"]] if end["cause"] else [row["id"] for row in (told["ranked"] or {"causes": []})["causes"] if row["for"]][:SHOWN]
    return {"cause": cause, "entry": entry, "rig": rig, "role": role, "end": end["kind"], "wants": end["engine"], "verdict": end["cause"],
            "looks": looks, "listed": listed, "signs": signs, "there": there}


def is_other_way(entry, look):
    """Whether a look is of the other shift than the one that failed as the diagnosis opened, by its words."""
    other = {"pump": "road", "road": "pump"}.get(begun_way(entry))
    rows = [row for row in QUESTIONS.get(look["question"], {"answers": []})["answers"] if row["id"] in look["answers"]]
    signs = [sign for row in rows for sign in row["seen"]] or [look["sign"]]
    return bool(other) and any(way_of(sign) == other for sign in signs)


def runs_what_must_stand(cause, look, signs):
    """Whether a look wants the engine running though what was seen, and this cause's remedy, say not to run it."""
    row = ROWS[look["sign"]]
    return CAUSES[cause]["id"] in STANDS and any(ROWS[sign].get("stops") for sign in signs if signs[sign] == "seen") and row.get("engine") in RUNS


def figures(runs):
    """What a set of runs comes to, by name; what is in NEVER is to be 0."""
    share = lambda some: round(100 * sum(map(bool, some)) / len(runs), 1)
    looks = [(one, *each) for one in runs for each in one["looks"]]
    return {
        "top-1, %": share(one["listed"][:1] == [one["cause"]] for one in runs),
        "top-3, %": share(one["cause"] in one["listed"] for one in runs),
        "looks, p90": sorted(len(one["looks"]) for one in runs)[int(0.9 * len(runs))],
        "wrong verdicts, %": round(100 * sum(one["verdict"] not in (None, one["cause"]) for one in runs) / len(runs), 2),
        "direction mistakes": sum(is_other_way(one["entry"], look) for one, look, _, _ in looks),
        "looks that must not run": sum(runs_what_must_stand(one["cause"], look, signs) for one, look, signs, _ in looks),
        "repeats of the entry": sum(is_repeat(one["entry"], look) for one, look, _, _ in looks),
        "dead ends": sum(one["wants"] == ["pumping"] or not one["listed"] for one in runs),
    }


def is_repeat(entry, look):
    """Whether a look asks for the opening sign, by itself or in its question, or for what cannot stand beside it."""
    return any(sign == entry or _apart(sign, entry) for sign in parts_of(look))
