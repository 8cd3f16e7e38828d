"""What must be answered yes before the engine is raised on a pumping run, and who went on without it.

A record's "overrides" is a list of `{"name", "reason", "wall", "open"}`, each with the answers that were open when that person
went on; its "override" is the one being typed. An override covers those answers and no other: a check that turns to "no"
afterwards holds the run again.
"""
from calc.service.judge import PASS

PARTS = ("checks_dry", "interlock", "shift")


def before_run(judged, record):
    """The answers before water that are not yes, and who went on without them.

    judged: the verdict's tests
    record: contract `record_entered`

    Returns contract `before_run`. Raises nothing. Source: common practice (the engine is not raised before the rig is secured,
    people are clear, the interlock and the shift are shown).
    """
    rows = []
    for test in judged:
        if test["id"] in PARTS and test["status"] != PASS:
            rows += _rows(test)
    standing = [override for override in record.get("overrides") or [] if not wants(override) and _covers(override, rows)]
    return {"open": rows, "override": standing[-1] if rows and standing else None, "wants": wants(record.get("override"))}


def wants(override):
    """What an override still lacks: "name", "reason".

    override: as the module says, or None

    Raises nothing.
    """
    return [part for part in ("name", "reason") if not str((override or {}).get(part) or "").strip()]


def _rows(test):
    """Each answer of a part that is not yes; of one that was not done, or lacks a fact of its rig, that."""
    rows = [{"test": test["id"], "check": figure["id"], "value": figure["value"]} for figure in test["figures"] if figure["value"] != "yes"]
    named = [row["check"] for row in rows]
    facts = [name for name in test["missing"] if name not in named] + (["not_done"] if test["not_done"] else [])
    return rows + [{"test": test["id"], "check": name, "value": None} for name in facts]


def _covers(override, rows):
    return all(row in (override.get("open") or []) for row in rows)
