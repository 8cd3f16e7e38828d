"""What follows from the signs that are seen without a look: which shift failed, what cannot be beside them, what must not run."""

OTHER = {"pump": "road", "road": "pump"}


def implied(knowledge, signs):
    """The signs, and as not seen those that cannot stand beside one that is seen.

    knowledge, signs: see calc.diagnosis.fault

    Raises nothing.
    """
    whole, ids = dict(signs), [row["id"] for row in knowledge["signs"]]
    for one, other in knowledge["excludes"]:
        for sign, partner in ((one, other), (other, one)):
            if signs.get(sign) == "seen" and partner not in whole and partner in ids:
                whole[partner] = "not_seen"
    return whole


def failed(knowledge, signs):
    """The shift that failed, "pump" or "road", by what is seen; None where that says neither, or both.

    knowledge, signs: see calc.diagnosis.fault

    Raises nothing.
    """
    seen = [row["way"] for row in knowledge["signs"] if row.get("way") and signs.get(row["id"]) == "seen"]
    return seen[0] if seen and all(way == seen[0] for way in seen) else None


def of_other(knowledge, signs):
    """The ids of signs that are of the shift that did not fail; none where nothing says which did.

    knowledge, signs: see calc.diagnosis.fault

    Raises nothing.
    """
    other = OTHER.get(failed(knowledge, signs))
    return {row["id"] for row in knowledge["signs"] if other and row.get("way") == other}


def barred(knowledge, signs):
    """The ids of signs that are not looked for after what was seen: those of the other shift, and those that want the engine running.

    knowledge, signs: see calc.diagnosis.fault

    Raises nothing.
    """
    others = of_other(knowledge, signs)
    stopped = any(row.get("stops") and signs.get(row["id"]) == "seen" for row in knowledge["signs"])
    return {row["id"] for row in knowledge["signs"]
            if row["id"] in others or (stopped and row["engine"] and "off" not in row["engine"])}
