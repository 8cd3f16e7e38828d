"""A check of a rig: which items of a list it has, in the order in which nobody walks twice, and how far it is."""
from calc.base.errors import CalcError
from calc.bay.records import in_force
from calc.rig.check_fields import PLACES, STATES
from calc.shift import pace


AFTER = ("water", "foam", "frost")  # dirty or salt water pumped, foam used, frost about


def items(rows, name, profile, settings, after):
    """The items of a list that a rig has, in the order they are done.

    rows: every item: `{"id", "lists", "place", "state", "fits", "equipment"}`. fits: what the profile must say, values by field;
        equipment: what the rig must carry that no field of the profile says, or None;
        left_out, where the department has it: its reason, as calc.bay.department gives the row
    name: of the list
    profile: the rig's profile, or None. A field that says nothing leaves no item out
    settings: as calc.bay.rounds.settings gives them
    after: what there was of AFTER; a row with an `after` is asked only where there was that

    Returns `{"items": ids, "left_out": [{"id", "code"}]}`, code after where there was not what it comes
    after, fits where the profile says otherwise, department
    where its own list leaves the item out, setting where somebody said it is not on this rig. Raises CalcError with code unknown for a list, state or place that there is not.
    """
    listed = [(place, row) for place, row in enumerate(rows) if name in row["lists"]]
    if not listed:
        raise CalcError("list", "unknown")
    left_out, walked = [], []
    for place, row in listed:
        if row["state"] not in STATES or row["place"] not in PLACES:
            raise CalcError(row["id"], "unknown")
        code = _left_out(row, profile or {}, settings, after)
        if code:
            left_out.append({"id": row["id"], "code": code})
        else:
            walked.append((STATES.index(row["state"]), PLACES.index(row["place"]), place, row["id"]))
    return {"items": [walk[3] for walk in sorted(walked)], "left_out": left_out}


def _left_out(row, profile, settings, after):
    if row.get("after") and row["after"] not in after:
        return "after"
    if row.get("left_out"):
        return "department"
    for field in row["fits"]:
        if profile.get(field) and profile[field] not in row["fits"][field]:
            return "fits"
    for name in (row["id"], row["equipment"]):
        if name is not None and not settings.get(name, {"applies": True})["applies"]:
            return "setting"
    return None


def settings(records):
    """What was set for this rig: what it has not, and its own limits.

    records: its log, in any order

    Returns `{"applies", "reason", "limit", "by", "at_ms", "ids"}` by item or equipment. Where two phones set one thing
    unseen by each other, it stays on the list, and the limit is the one that comes first by its id until somebody sets it
    again. Raises nothing.
    """
    answer = {}
    for record in _standing(in_force(records), "setting"):
        before = answer.get(record["item"])
        answer[record["item"]] = {
            "applies": record["applies"] or (before is not None and before["applies"]),
            "reason": record["reason"], "limit": before["limit"] if before and before["limit"] else record["limit"],
            "by": record["by"], "at_ms": record["at_ms"], "ids": (before["ids"] if before else []) + [record["id"]],
        }
    return answer


def progress(records, id):
    """How far a check is, whoever answered and on whichever phone.

    records: the rig's log, in any order
    id: of the record that began the check

    Returns the answer of contract `rounds.progress`: the answer of each item (not good before good, where two phones say
    both), what is left, in order, and whether the check was ended. Raises CalcError with code unknown where no such check is.
    """
    live = in_force(records)
    begun = [record for record in live if record["id"] == id and record["kind"] == "round"]
    if not begun:
        raise CalcError("id", "unknown")
    answers = {}
    for record in _standing(live, "answer"):
        if record["round"] == id:
            before = answers.get(record["item"])
            if before is None or _gravity(record) < _gravity(before):
                answers[record["item"]] = record
    return {
        "list": begun[0]["list"], "answers": answers,
        "left": [item for item in begun[0]["items"] if item not in answers],
        "is_ended": any([record["kind"] == "ended" and record["round"] == id for record in live]),
    }


def _standing(live, kind):
    """The records of a kind that no other of it replaced."""
    of_kind = [record for record in live if record["kind"] == kind]
    gone = set()
    for record in of_kind:
        gone.update(record["replaces"])
    return [record for record in of_kind if record["id"] not in gone]


def _gravity(answer):
    return ("not_good", "good", "not_here").index(answer["answer"]), answer["id"]


def hurried(answers, words):
    """The items that were answered faster than they can be read.

    answers: `{"item", "took_s"}` in their order; took_s in seconds, None where nobody knows
    words: how many words each item has on its screen, by id

    Returns ids. Raises nothing.
    """
    return pace.too_quick([{"step": answer["item"], "took_s": answer["took_s"]} for answer in answers], words)
