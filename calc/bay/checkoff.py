"""The officer's check-off sheet: what a trainee was seen to do, by task, signed by both.

A record is `{"id", "trainee", "task", "at_ms", "date", "rig", "faults", "took_s", "on_rig", "by_trainee", "by_officer"}`. Records are only
added, so that two phones that swap them in any order end equal. What both have signed stands until both sign another.
"""
from calc.base.errors import CalcError
from calc.base.order import ordered
from calc.bay.record_fields import LATEST_MS, check_amount, check_text
from calc.bay.records import is_name, plain

TASKS = ("into_pump", "road", "hydrant", "draft", "relay", "water_loss", "gauge", "service")
CONTENT = ("date", "rig", "faults", "took_s", "on_rig")  # what a signature is under
SIGNERS = ("by_trainee", "by_officer")
TEXTS = ("id", "trainee", "date", "rig", "faults", "by_trainee", "by_officer")
MOST_TEXT = 400
MOST_TIMES = 3
LONGEST_S = 86400
_FIELDS = TEXTS + ("task", "at_ms", "took_s", "on_rig")


def check(record):
    """Refuse what is no record of a check-off.

    record: anything

    Raises CalcError naming the field, with code not_a_record, missing, not_text, too_long, unknown, unknown_field, not_a_number,
    out_of_range or same_name.
    """
    if not isinstance(record, dict):
        raise CalcError("record", "not_a_record")
    for field in _FIELDS:
        if field not in record:
            raise CalcError(field, "missing")
    for field in record:
        if field not in _FIELDS:
            raise CalcError(field, "unknown_field")
    for field in TEXTS:
        check_text(field, record[field], MOST_TEXT)
    for field in ("id", "trainee"):
        if not record[field].strip():
            raise CalcError(field, "missing")
    if record["task"] not in TASKS:
        raise CalcError("task", "unknown")
    if record["on_rig"] is not True and record["on_rig"] is not False:
        raise CalcError("on_rig", "unknown")
    check_amount("at_ms", record["at_ms"], LATEST_MS)
    if record["took_s"] is not None:
        check_amount("took_s", record["took_s"], LONGEST_S)
    for field in SIGNERS:
        if record[field] and not is_name(record[field]):
            raise CalcError(field, "missing")
    if record["by_officer"] and plain(record["by_officer"]) == plain(record["by_trainee"] or record["trainee"]):
        raise CalcError("by_officer", "same_name")


def is_signed(record):
    """Whether both have signed a record.

    record: of a check-off

    Raises nothing.
    """
    return all([record[field] for field in SIGNERS])


def _rank(record):
    return [record["at_ms"], record["id"]] + [str(record[field]) for field in _FIELDS]


def merged(one, other):
    """The records of two phones as one list, each once, the oldest first; what is no record is counted and left out.

    one, other: lists of anything

    Of two that are unlike under one id, which only a spoiled file has, every phone takes the same. Returns {"records", "refused"}.
    Raises nothing.
    """
    by_id, refused = {}, 0
    for record in list(one) + list(other):
        try:
            check(record)
        except CalcError:
            refused += 1
            continue
        there = by_id.get(record["id"])
        if there is None or _rank(there) < _rank(record):
            by_id[record["id"]] = record
    return {"records": ordered(by_id.values(), _rank), "refused": refused}


def entered(before, row, last_ms=0):
    """A row as it is added: a signature that was under other words falls away, and it comes after what is there, whatever the phone's clock says.

    before: the record that the row was begun from, or None
    row: a record
    last_ms: of the last record of its task, see standing

    Returns a record. Raises CalcError as check does, and naming by_officer, same_name, where the trainee whose sheet it is signs as the
    officer, or date, undated, where a row without a date is signed.
    """
    check(row)
    if row["by_officer"] and plain(row["by_officer"]) == plain(row["trainee"]):
        raise CalcError("by_officer", "same_name")
    if not row["date"] and any([row[field] for field in SIGNERS]):
        raise CalcError("date", "undated")
    after = dict(row)
    after["at_ms"] = min(max(row["at_ms"], last_ms + 1), LATEST_MS)
    if before is not None and any([before[field] != row[field] for field in CONTENT]):
        for field in SIGNERS:
            if before[field] and before[field] == row[field]:
                after[field] = ""
    return after


def standing(records, trainee):
    """Where a trainee stands, by task.

    records: of check-offs, see the module
    trainee: whose, as the name is written; capitals and idle spaces do not count

    Returns a row a task, in the sheet's order: {"task", "signed", "open", "earlier", "last_ms"}: the last record that both signed, what
    was entered since, how many signed ones came before, and when the last of all was entered. Raises nothing.
    """
    rows = []
    for task in TASKS:
        own = ordered([record for record in records if record["task"] == task and plain(record["trainee"]) == plain(trainee)], _rank)
        signed = [record for record in own if is_signed(record)]
        last = signed[-1] if signed else None
        later = own[-1] if own and own[-1] is not last and (last is None or _rank(own[-1]) > _rank(last)) else None
        rows.append({"task": task, "signed": last, "open": later, "earlier": max(0, len(signed) - 1), "last_ms": own[-1]["at_ms"] if own else 0})
    return rows


def times(runs, titles):
    """The times of a task that this phone has, the newest first, three at most.

    runs: of the log, each {"title", "began_ms", "ended_ms", "took_s", "is_whole"}; took_s: its own count in seconds or None;
        is_whole: it came to its end and could be read
    titles: of the cards and practice tasks that are this task

    Returns a list of {"took_s", "began_ms"}, seconds rounded down. Raises nothing.
    """
    taken = []
    for run in runs:
        took_s = run["took_s"] if run["took_s"] is not None else (run["ended_ms"] - run["began_ms"]) / 1000
        if run["is_whole"] and run["title"] in titles and 0 < took_s <= LONGEST_S:
            taken.append({"took_s": int(took_s), "began_ms": run["began_ms"]})
    return ordered(taken, lambda time: -time["began_ms"])[:MOST_TIMES]
