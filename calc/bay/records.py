"""A rig's log: records that are only added, never changed, so that two phones that swap them in any order end equal.

A record is `{"id", "rig_id", "rig_name", "at_ms", "by", "kind", "replaces", ...}` with the fields of its kind, see BODIES.
`replaces` holds the ids of the records whose word it takes the place of; they stay in the log.
"""
from calc.base.errors import CalcError
from calc.base.order import ordered
from calc.bay import record_fields
from calc.rig.check_fields import CLASSES, SCOPES

HALT = "halt"  # the origin of a defect that a card wrote when the rig moved, and where such a one was taken back
ANSWERS = ("good", "not_good", "not_here")
HEAD = {"id": "text", "rig_id": "text", "rig_name": "text", "at_ms": "time", "by": "text", "kind": "text", "replaces": "texts"}
# what a record of each kind holds beside its head, and what that is: see calc.bay.record_fields
BODIES = {
    "round": {"list": "text", "items": "texts"},
    "answer": {"round": "text", "item": "text", "answer": ANSWERS, "entry": "text?", "amount": "number?"},
    "ended": {"round": "text", "took_s": "number", "hurried": "number"},
    "defect": {"origin": "text", "item": "text?", "what": "text", "seen": "text", "place": "text", "state": "text", "limit": "text",
               "class": CLASSES, "scope": SCOPES, "rule": "text"},
    "decision": {"defect": "text", "class": CLASSES, "scope": SCOPES, "limits": "text"},
    "repair": {"defects": "texts", "done": "text", "parts": "text", "hours": "text"},
    "release": {"defects": "texts", "repaired_by": "text", "opened": "texts", "proofs": "texts", "limits": "text"},
    "setting": {"item": "text", "applies": "flag", "reason": "text", "limit": "limit?"},
    "meters": {"miles": "number?", "engine_h": "number?", "pump_h": "number?"},
    "done": {"due": "text"},
    "passed": {"card": "text"},
    "photo": {"defect": "text"},
    "withdrawn": {"reason": "text"},
    "erased": {"count": "number", "reason": "text"},
}
# what it may hold besides, where it was written since there is such a thing
MORE = {"answer": {"clock": ("run", "not_run"), "reading": ("not_read",), "limit": "text", "figures": "texts"}, "withdrawn": {"at": (HALT,)}}

_HEAD = record_fields.listed(HEAD)
_MORE = {kind: {name: record_fields.listed({name: MORE[kind][name]}) for name in MORE[kind]} for kind in MORE}
_FIELDS = {kind: record_fields.listed(dict(HEAD, **BODIES[kind])) for kind in BODIES}


def check(record):
    """Refuse what is no record of a log.

    record: anything

    Raises CalcError naming the field, with code not_a_record, missing, unknown_field, unknown, not_text, not_a_number,
    too_long or not_a_list.
    """
    if not isinstance(record, dict):
        raise CalcError("record", "not_a_record")
    kind = record.get("kind")
    if not isinstance(kind, str) or kind not in BODIES:
        record_fields.check(record, _HEAD)
        raise CalcError("kind", "unknown")
    record_fields.check(record, _FIELDS[kind])
    if not record["id"] or not record["rig_id"]:
        raise CalcError("id" if not record["id"] else "rig_id", "missing")
    count, more = len(HEAD) + len(BODIES[kind]), _MORE.get(kind, {})
    for name in more:
        if name in record:
            record_fields.check(record, more[name])
            count += 1
    if len(record) > count:
        raise CalcError([name for name in record if not (name in HEAD or name in BODIES[kind] or name in more)][0], "unknown_field")
    if kind == "release" and not two_names(record):
        raise CalcError("by", "same_name")


def fields():
    """What a record of each kind holds, for who reads many at once: `{kind: [what it must hold, what it may hold]}`, each by name.

    Raises nothing.
    """
    return {kind: [dict(HEAD, **BODIES[kind]), MORE.get(kind, {})] for kind in BODIES}


def two_names(release):
    """Whether a release has the name of who repaired it and another's who puts it back in service.

    release: a record of that kind

    Raises nothing.
    """
    repaired, back = release["repaired_by"], release["by"]
    return is_name(repaired) and is_name(back) and plain(repaired) != plain(back)


def is_name(text):
    """Whether a text can be somebody's name or initials: two different letters at least.

    text: text

    Raises nothing.
    """
    return len({letter for letter in text.lower() if letter.isalpha() or ord(letter) > 127}) > 1


def plain(name):
    """A name as it is compared: without capitals and idle spaces.

    name: text

    Raises nothing.
    """
    return " ".join(name.lower().split())


def taken(arriving, standing):
    """What of another phone's records is taken into a log.

    arriving: anything that should be records
    standing: the records here that have an id of theirs

    Returns `{"add": places of the records that are new, "change": places of those that take the place of one here with
    their id, "same": how many are here already, "refused": [{"at", "field", "code"}]}`. Of two records with one id, which
    no phone of ours makes, every phone takes the same one, whichever came first.
    Raises CalcError naming arriving.
    """
    if not isinstance(arriving, list):
        raise CalcError("arriving", "not_a_list", most=record_fields.MOST_LISTED)
    here = {record["id"]: record for record in standing}
    answer = {"add": [], "change": [], "same": 0, "refused": []}
    for place, record in enumerate(arriving):
        try:
            check(record)
        except CalcError as refusal:
            answer["refused"].append({"at": place, "field": refusal.field, "code": refusal.code})
            continue
        other = here.get(record["id"])
        if other is None:
            answer["add"].append(place)
        elif other == record or spelled(other) >= spelled(record):
            answer["same"] += 1
            continue
        else:
            answer["change"].append(place)
        here[record["id"]] = record
    return answer


def is_whole(answer):
    """Whether an answer says good by what was read and timed: one that was not says so, and counts for nothing that is due.

    answer: a record of that kind

    Raises nothing. Source: common practice (a timed test is its time, a reading what was read).
    """
    return answer["answer"] == "good" and answer.get("reading") != "not_read" and answer.get("clock") != "not_run"


def spelled(value):
    """Plain data as text in which nothing hangs on the order of an object's names.

    value: plain data

    Raises nothing.
    """
    if isinstance(value, dict):
        return "{" + ",".join([repr(key) + ":" + spelled(value[key]) for key in sorted(value)]) + "}"
    if isinstance(value, (list, tuple)):
        return "[" + ",".join([spelled(part) for part in value]) + "]"
    if isinstance(value, float) and value == int(value):
        value = int(value)
    return repr(value)


def merged(one, other):
    """Two sets of records as one, in the order of their ids: the same whichever comes first, and however often.

    one, other: lists of records

    Raises nothing: what is no record is left out.
    """
    here = {}
    for records in (one, other):
        answer = taken(records, list(here.values()))
        for place in answer["add"] + answer["change"]:
            here[records[place]["id"]] = records[place]
    return [here[id] for id in sorted(here)]


def in_force(records):
    """The records that nobody withdrew, in the order of their ids.

    records: a rig's log, in any order

    Raises nothing.
    """
    gone = set()
    for record in records:
        if record["kind"] == "withdrawn":
            gone.update(record["replaces"])
    standing_still = [record for record in records if record["kind"] == "withdrawn" or record["id"] not in gone]
    return ordered(standing_still, lambda record: record["id"])
