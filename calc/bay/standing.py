"""A rig's status from its log, by one rule that no clock and no order of arrival changes.

A defect has opinions: its own proposed class, then what officers decided. Each decision, and each release, replaces the
opinions it saw. The strictest of the opinions that nothing replaced holds; once a release has replaced them all, the defect
is closed. An officer who decided on another phone, unseen by the release, keeps it open until somebody has seen that.
A defect written by mistake is withdrawn by name and with a reason; once an officer decided on one that limits the rig, only a
release ends it. A decision cannot be withdrawn: the next one replaces it.
A rig that moved on a card is such a defect too, of origin HALT: no decision makes it milder, and it ends by a release, or by the
withdrawal that the stop itself writes where the red key was touched by mistake.
"""
from calc.base.errors import CalcError
from calc.base.order import ordered
from calc.bay.records import CLASSES, HALT, in_force, is_name, two_names

STATES = ("out_of_service", "pump_out", "restricted", "open_items", "in_service")  # worst first


def of_rig(records):
    """The status of a rig.

    records: its log, each as calc.bay.records.check takes it, in any order; answers of checks may be left out

    Returns the answer of contract `standing.of_rig`: the state, since when, whether its pump may be engaged, whether all
    that sets the state is repaired and waits for release, and the open defects, worst first. Raises nothing.
    Source: common practice (a rig is as its worst open defect; back in service by a second name only).
    """
    withdrawn, live, opinions, seen, released, repaired = _written(records)
    names = {record["id"]: record for record in live if record["kind"] == "defect"}
    defects = []
    for id in sorted(names):
        heads = [opinion for opinion in opinions[id] if opinion["id"] not in seen]
        if not heads and id in released:
            continue
        defect = _open(names[id], heads or opinions[id], repaired.get(id))
        is_decided = any([opinion["kind"] == "decision" for opinion in opinions[id]])
        is_halt = defect["origin"] == HALT
        defect["may_withdraw"] = not is_halt and not (is_decided and defect["state"] != "open_items")
        if id not in withdrawn or not (defect["may_withdraw"] or is_halt and not is_decided):
            defects.append(defect)
    defects = ordered(defects, lambda defect: (STATES.index(defect["state"]), CLASSES.index(defect["class"]), defect["at_ms"], defect["id"]))
    state = defects[0]["state"] if defects else "in_service"
    worst = [defect for defect in defects if defect["state"] == state]
    return {
        "state": state, "since_ms": min([defect["at_ms"] for defect in worst]) if worst else None,
        "stops_pump": state in ("out_of_service", "pump_out"),
        "is_waiting": bool(worst) and all([defect["repaired_by"] is not None for defect in worst]),
        "defects": defects,
    }


def out_ms(records, from_ms, on_ms):
    """How long a rig, or its pump, was out of service.

    records: its log, as for of_rig
    from_ms, on_ms: the time that is looked at, milliseconds since 1970

    Returns milliseconds: of each defect from the word that took the rig out to the word that replaced it, times that run together
    counted once, by the clocks of the phones. What was withdrawn never took it out. Raises CalcError naming on_ms.
    Source: common practice (out of service from the tag to the release).
    """
    if not on_ms >= from_ms:
        raise CalcError("on_ms", "too_small", least=from_ms)
    withdrawn, _, opinions, seen, released, _ = _written(records)
    is_open = {defect["id"] for defect in of_rig(records)["defects"]}
    spans = []
    for id in opinions:
        if opinions[id][0]["kind"] != "defect" or id in withdrawn and id not in is_open:
            continue
        holds = id not in released and all([opinion["id"] in seen for opinion in opinions[id]])
        for opinion in opinions[id]:
            if _state(opinion) in STATES[:2]:
                spans.append((max(opinion["at_ms"], from_ms), on_ms if holds else min(seen.get(opinion["id"], on_ms), on_ms)))
    answer, last = 0, from_ms
    for begun, ended in ordered(spans):
        answer += max(ended - max(begun, last), 0)
        last = max(last, ended)
    return answer


def worst_first(rigs):
    """The rigs of a phone, the worst first.

    rigs: `{"id", "state", "overdue", "open", "next_day"}`: state as of_rig has it, how many rows are overdue, how many defects
        are open, and the day on which the next row is due, whole days since 1970, or None

    Returns ids: by state, then by what is overdue, then by open defects, then by the next day, then by id. Raises CalcError
    naming state, with code unknown. Source: common practice (what limits a rig comes before what is late).
    """
    for rig in rigs:
        if rig["state"] not in STATES:
            raise CalcError("state", "unknown")
    rows = [(STATES.index(rig["state"]), -rig["overdue"], -rig["open"], rig["next_day"] is None, rig["next_day"] or 0, rig["id"]) for rig in rigs]
    return [row[-1] for row in sorted(rows)]


def _written(records):
    """What was withdrawn, what lives, the opinions of each defect, its own first, when each was first seen by another, what was
    released, and who repaired what."""
    withdrawn, live = _withdrawn(records)
    opinions, seen, released, repaired = {}, {}, set(), {}
    halts = _halts(live)
    for record in live:
        kind = record["kind"]
        sees = []
        if kind == "defect":
            opinions.setdefault(record["id"], []).insert(0, record)
        elif kind == "decision":
            opinions.setdefault(record["defect"], []).append(record)
            sees = [id for id in record["replaces"] if id not in halts]
        elif kind == "release" and two_names(record):
            released.update(record["defects"])
            sees = record["replaces"]
        elif kind == "repair":
            for id in record["defects"]:
                repaired[id] = record["by"]
        for id in sees:
            seen[id] = min(seen.get(id, record["at_ms"]), record["at_ms"])
    return withdrawn, live, opinions, seen, released, repaired


def _withdrawn(records):
    """The ids of what was withdrawn by name and with a reason, and the records whose word holds but for that of a defect."""
    lasting = [record for record in records if record["kind"] in ("defect", "decision")]
    others = [record for record in records if record["kind"] not in ("defect", "decision")]
    halts = _halts(lasting)
    ids = set()
    for record in records:
        if record["kind"] != "withdrawn":
            continue
        if record.get("at") == HALT:
            ids.update([id for id in record["replaces"] if id in halts])
        elif is_name(record["by"]) and record["reason"].strip():
            ids.update([id for id in record["replaces"] if id not in halts])
    return ids, in_force(others) + ordered(lasting, lambda record: record["id"])


def _halts(records):
    """The ids of the stops of a rig that moved."""
    return {record["id"] for record in records if record["kind"] == "defect" and record["origin"] == HALT}


def _open(defect, heads, repaired_by):
    """An open defect as the strictest of its opinions has it."""
    head = min(heads, key=lambda opinion: (STATES.index(_state(opinion)), CLASSES.index(opinion["class"]), opinion["id"]))
    is_decided = head["kind"] == "decision"
    return {
        "id": defect["id"], "state": _state(head), "class": head["class"], "scope": head["scope"], "what": defect["what"],
        "seen": defect["seen"], "origin": defect["origin"], "at_ms": defect["at_ms"], "by": defect["by"], "item": defect["item"],
        "limits": head["limits"] if is_decided else "", "decided_by": head["by"] if is_decided else None,
        "decided_ms": head["at_ms"] if is_decided else None, "repaired_by": repaired_by,
        "heads": sorted([opinion["id"] for opinion in heads]),
    }


def _state(opinion):
    if opinion["class"] == "out_of_service":
        return {"apparatus": "out_of_service", "pump": "pump_out"}.get(opinion["scope"], "restricted")
    return {"restricted": "restricted"}.get(opinion["class"], "open_items")
