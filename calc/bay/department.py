"""A department's own list: what the `checks` of a rig's profile change in the published lists, limits and intervals.

Of two limits of one item the rig's own, of its manuals and plates, comes before the department's, and both before the published one;
what somebody set for the item on the phone comes before them all, see calc.bay.limits.
"""
from calc.rig import check_rows
from calc.rig.check_fields import INTERVALS, WHOSE
from calc.rig.rows import note

WORDS = {"name": "title", "look": "look", "good": "good"}  # of a row, and as the words of an item have them


def applied(rows, due, lists, checks, units):
    """The lists of a rig: the published ones with what its profile changes in them.

    rows: every published item, as calc.bay.rounds takes it and with its `limit` and `unit`
    due: the rows of the due board, as calc.bay.board takes them
    lists: ids of the lists
    checks: `checks` of the rig's profile, sound or not
    units: see calc.base.display

    Returns the answer of contract `department.applied`: the rows, due rows and lists; the words of items that are its own or renamed; what it leaves
    out, with whose reason; and the faults of its rows. A row with a fault changes nothing. Raises nothing.
    """
    faults = check_rows.problems(checks, units)
    sound = _sound(checks, faults)
    _check_meaning(sound, rows, due, lists, units, faults)
    spoiled = {fault["field"].split(".")[1] for fault in faults if "." in fault["field"]}
    usable = [row for place, row in sound if str(place) not in spoiled]
    items = {row["id"]: dict(row) for row in rows}
    order = [row["id"] for row in rows]
    rounds = {row["id"]: dict(row) for row in due}
    due_order = [row["id"] for row in due]
    text, left_out = {}, {}
    for row in [row for row in usable if row["act"] == "add"]:
        order.append(row["item"])
        items[row["item"]] = _added(row)
    for whose in WHOSE:  # the rig's own comes last, over the department's
        for row in [row for row in usable if (row.get("whose") or WHOSE[0]) == whose]:
            id = row["item"]
            if row["act"] == "leave_out":
                left_out[id] = {"id": id, "reason": row["reason"], "whose": whose}
                continue
            for name in WORDS:
                if row.get(name):
                    text.setdefault(id, {})[WORDS[name]] = row[name]
            if id in items:
                _change(items[id], row, whose, units)
            if any([row.get(name) for name in INTERVALS]):
                if id not in rounds:
                    due_order.append(id)
                    rounds[id] = {"id": id, "by": [id], "equipment": items[id]["equipment"]}
                for name in INTERVALS:
                    rounds[id][name] = int(row[name]) if row.get(name) else None
    for id in left_out:
        if id in items:
            items[id]["left_out"] = left_out[id]["reason"]
    return {
        "rows": [items[id] for id in order], "due": [rounds[id] for id in due_order if id not in left_out],
        "lists": [id for id in lists if id not in left_out], "text": text, "left_out": [left_out[id] for id in sorted(left_out)], "faults": faults,
    }


def _sound(checks, faults):
    """The rows whose form is sound, each with its place."""
    if any(["." not in fault["field"] for fault in faults]):
        return []
    spoiled = {fault["field"].split(".")[1] for fault in faults}
    return [(place, row) for place, row in enumerate(checks) if str(place) not in spoiled]


def _added(row):
    """An item of the department's own, complete."""
    return {
        "id": row["item"], "lists": row["lists"], "place": row["place"], "state": row["state"], "fits": {}, "equipment": None, "limit": None, "unit": None,
        "who": row.get("who") or "operator", "class": row.get("class") or "report", "scope": row.get("scope") or "apparatus",
        "clock_s": None, "tool": None, "reads": [], "restricts": None, "system": None, "source": [], "basis": row.get("whose") or WHOSE[0],
    }


def _change(item, row, whose, units):
    """Change an item by a row."""
    limit = check_rows.limit_of(row, units)
    if limit:
        limit["whose"] = "profile" if whose == "rig" else whose
        limit["reason"] = row.get("reason") or ""
        if item["limit"] and item["limit"].get("plausible"):
            limit["plausible"] = item["limit"]["plausible"]  # of the instrument, whoever limits it
        item["limit"] = limit
        item["unit"] = None if limit["quantity"] else row["unit"]
    if row.get("lists"):
        item["lists"] = row["lists"]


def _check_meaning(sound, rows, due, lists, units, faults):
    """Note what names no item or list that there is, says one thing twice, or limits what the item does not read."""
    items = {row["id"]: row for row in rows}
    others = [row["id"] for row in due] + lists
    first, added = {}, set()
    for place, row in sound:
        if row["act"] == "add" and row["item"] not in items and row["item"] not in others:
            added.add(row["item"])
    for place, row in sound:
        field = "checks." + str(place) + "."
        id, key = row["item"], (row["item"], row.get("whose") or WHOSE[0], row["act"] == "add")
        if key in first:
            note(faults, field + "item", "duplicate", row=first[key])
        first.setdefault(key, place + 1)
        if row["act"] == "add":
            if id not in added:
                note(faults, field + "item", "published")
        elif id not in items and id not in added:
            if id not in others:
                note(faults, field + "item", "no_such_item")
            elif row["act"] == "change":
                for name in ("name", "look", "good", "lists", "unit"):
                    if row.get(name):
                        note(faults, field + name, "item_only")
        if any([name not in lists for name in row.get("lists") or ()]):
            note(faults, field + "lists", "no_such_list")
        if id in items and row.get("unit"):
            _check_unit(items[id], row, field, units, faults)


def _check_unit(item, row, field, units, faults):
    """Note a limit of another unit or another kind than the item's own: what is read there is what it is."""
    if not item["limit"]:
        return
    unit = item["limit"]["quantity"] or item["unit"]
    if row["unit"] != unit:
        note(faults, field + "unit", "other_unit", unit=unit)
        return
    if check_rows.limit_of(row, units)["kind"] != item["limit"]["kind"]:
        note(faults, field + "unit", "other_kind", kind=item["limit"]["kind"])
