"""The checks of a rig as pages have them: lists, rows, words, sources, proofs and what is due."""
import functools

from site_src.content import citing, data, findable

FACTS = ("id", "place", "state", "lists", "who", "class", "scope")


def lists():
    """The lists of checks in the order they are offered."""
    return data.load("checks/lists")["list"]


@functools.cache
def rows():
    """Every item in the order of its area, each complete: what it has not is None or empty."""
    listed = data.load("checks/lists")
    return [{**_whole(row), "system": listed["systems"].get(area)} for area in listed["areas"] for row in data.load(f"checks/{area}")["check"]]


def _whole(row):
    limit = row.get("limit")
    return {
        **{name: row[name] for name in FACTS},
        "fits": row.get("fits", {}), "equipment": row.get("equipment"), "limit": limit and _whole_limit(limit),
        "unit": (limit or {}).get("unit"), "clock_s": row.get("clock_s"), "tool": row.get("tool"),
        "reads": [{"name": read["name"], "quantity": read.get("quantity")} for read in row.get("reads", [])], "after": row.get("after"), "restricts": row.get("restricts"),
        "source": row["source"], "basis": row["basis"],
    }


def _whole_limit(limit):
    """A limit as calc.bay.limits takes it; what is plausible is common practice, wide enough that a poor reading is never asked twice."""
    return {"kind": limit["kind"], "value": limit["value"], "to": limit.get("to"), "quantity": limit.get("quantity"), "plausible": limit["plausible"]}


def due():
    """What is due, as calc.bay.board takes it: the lists that come round, then the tests and services."""
    rounds = [{"id": row["id"], "months": row.get("months"), "days": row.get("days"), "hours": None, "miles": None, "by": [row["id"]], "equipment": None}
              for row in lists() if "months" in row or "days" in row]
    return rounds + [{"id": row["id"], "months": row["months"], "days": None, "hours": row.get("hours"), "miles": row.get("miles"),
                      "by": row.get("by", []), "equipment": row.get("equipment")} for row in data.load("checks/due")["due"]]


def proofs():
    """What proofs each thing opened brings, and each origin, as calc.bay.release takes it."""
    return [{"opened": row.get("opened"), "after": row.get("after"), "proofs": row["proofs"]} for row in data.load("checks/proofs")["proof"]]


def conditions():
    """What takes a rig out of service, limits it or is reported, each with what a person reads of it; `checks` are the items it is seen at."""
    words = data.words("conditions")["condition"]
    return [{**row, "checks": row.get("checks", []), "what": words[row["id"]]["what"], "note": words[row["id"]].get("note", ""), "also": words[row["id"]].get("also", "")}
            for row in data.load("checks/conditions")["condition"]]


def silent():
    """Words that say nothing to the search of conditions, in the language of the page that is being made."""
    return sorted(findable.silent_words() | set(findable.words_of(data.words("bay")["conditions"]["silent"])))


def differing():
    """Where sources differ: in what, what is taken here, and why."""
    words = data.words("conditions")["differ"]
    return [{**row, **words[row["id"]]} for row in data.load("checks/conditions")["differ"]]


def sources():
    """What the checks and conditions were read in, by id."""
    named = [row["source"] for row in [*rows(), *conditions(), *differing()]]
    return {id: citing.name(id) for id in sorted({id for source in named for id in source})}


def text():
    """What a person reads of each item, by its id."""
    return data.words("checks")
