"""The bay's part of a fleet's report: exported logs of rigs, joined, and what each comes to by the rules the phones go by.

Each record is judged before it counts; what is refused is named by file, place and reason. Pictures are left aside.
"""
import hashlib

from calc.base import display
from calc.bay import board, department, limits, records as log_records, rounds, standing
from site_src.content import checks, data
from site_src.report.days import DAY_MS

FORMAT = "bay-log"
LARGEST_BYTES = 16_000_000  # of one file, as a phone takes it
MOST_RECORDS = 50_000  # in one file
MOST_NAMED = 5  # refusals of one file that are named; the rest are counted
SILENT_DAYS = 30  # a rig that sent nothing for longer stands out
CHECKED_DAYS = 90  # that checks done are counted over
OUT_DAYS = 365


class Logs:
    """The logs of a folder: rigs by id, each with its records by id, and what of the files was refused."""

    def __init__(self):
        self.rigs, self.bad, self.refused = {}, [], []

    def take(self, file, content):
        """Let a file in; `file` is its name, `content` an object whose format says that it is a log."""
        rig_id, listed = content.get("rig_id"), content.get("records")
        fault = _fault(content.get("schema"), rig_id, listed)
        if fault:
            self.bad.append({"file": file, "reason": fault})
            return
        here = self.rigs.get(rig_id, {})
        arriving = [_bare(record) for record in listed]
        ids = {record["id"] for record in arriving if isinstance(record, dict) and isinstance(record.get("id"), str)}
        answer = log_records.taken(arriving, [here[id] for id in ids if id in here])
        refused = list(answer["refused"])
        for place in answer["add"] + answer["change"]:
            if arriving[place]["rig_id"] == rig_id:
                here[arriving[place]["id"]] = arriving[place]
            else:
                refused.append({"at": place, "field": "rig_id", "code": "unknown"})
        if here:
            self.rigs[rig_id] = here
        if refused:
            refused.sort(key=lambda refusal: refusal["at"])
            rows = [{"at": refusal["at"] + 1, "field": str(refusal["field"])[:60], "code": refusal["code"]} for refusal in refused[:MOST_NAMED]]
            self.refused.append({"file": file, "rows": rows, "more": len(refused) - len(rows)})


def is_log(content):
    """Whether what a file holds says that it is a rig's log."""
    return isinstance(content, dict) and content.get("format") == FORMAT


def _fault(schema, rig_id, listed):
    if schema != 1:
        return "newer"
    if not isinstance(rig_id, str) or not rig_id or not isinstance(listed, list):
        return "not_a_log"
    return "too_many" if len(listed) > MOST_RECORDS else None


def _bare(record):
    """A photo without its picture; anything else as it is."""
    return {name: record[name] for name in record if name != "picture"} if isinstance(record, dict) and record.get("kind") == "photo" else record


def facts(logs, tested, on_ms, shown, days, profiles):
    """What the report says of logs, as plain data.

    logs: Logs
    tested: {rig_id: name} of the rigs whose tests the folder holds
    on_ms: the end of the day the report is made for, milliseconds since 1970
    shown: units, as calc.base.display takes them
    days: Days of the department's time zone
    profiles: of the department's rigs, whose own rows and limits hold for their logs
    """
    by_id = {profile["id"]: profile for profile in profiles}
    by_name = {profile["name"].strip().casefold(): profile for profile in profiles}
    lists = [row["id"] for row in checks.lists()]
    rigs = {}
    for id, made in logs.rigs.items():
        records = list(made.values())
        profile = by_id.get(id) or by_name.get(_newest(records, on_ms)["rig_name"].strip().casefold()) or {}
        rigs[id] = _rig(id, records, on_ms, shown, days, department.applied(checks.rows(), checks.due(), lists, profile.get("checks", []), shown))
    order = standing.worst_first([
        {"id": id, "state": rig["standing"]["state"], "overdue": len(rig["overdue"]), "open": len(rig["defects"]), "next_day": None} for id, rig in rigs.items()])
    listed = [rigs[id] for id in order]
    return {
        "logs": listed, "silent": sorted((rig for rig in listed if rig["is_silent"]), key=lambda rig: rig["newest_ms"] or 0),
        "without": sorted(name for id, name in tested.items() if id not in rigs), "bad_logs": logs.bad, "refused": logs.refused,
        "days_of": {"silent": SILENT_DAYS, "checked": CHECKED_DAYS, "out": OUT_DAYS},
    }


def _newest(made, on_ms):
    """The newest record up to a moment; of a log that has none so old, the newest of all."""
    return max([record for record in made if record["at_ms"] <= on_ms] or made, key=lambda record: (record["at_ms"], record["id"]))


def _rig(id, made, on_ms, shown, days, own):
    """One rig; own: the lists as its department has them, see calc.bay.department.applied."""
    past = [record for record in made if record["at_ms"] <= on_ms]
    newest = _newest(made, on_ms)
    status = standing.of_rig(made)
    settings = rounds.settings(made)
    rows = [row for row in own["due"] if all(settings.get(name, {"applies": True})["applies"] for name in (row["id"], row["equipment"]))]
    of_lists = [row for row in rows if row["id"] in own["lists"]]
    newest_ms = newest["at_ms"] if past else None
    silent_days = None if newest_ms is None else days.between(newest_ms, on_ms)
    dated = [{**record, "at_ms": days.wall_ms(record["at_ms"])} for record in made]
    to_ms = days.wall_ms(on_ms)
    titles = {id: said["title"] for id, said in own["text"].items() if "title" in said}
    return {
        "name": newest["rig_name"], "page": f"log-{hashlib.sha256(id.encode('utf-8', 'replace')).hexdigest()[:16]}.html",
        "standing": status, "newest_ms": newest_ms, "ahead": len(made) - len(past), "count": len(made),
        "silent_days": silent_days, "is_silent": silent_days is None or silent_days > SILENT_DAYS, "titles": titles,
        "defects": sorted(({**defect, "days": max(days.between(defect["at_ms"], on_ms), 0)} for defect in status["defects"]), key=lambda defect: (-defect["days"], defect["id"])),
        "out_days": standing.out_ms(made, on_ms - OUT_DAYS * DAY_MS, on_ms) / DAY_MS,
        "done": [row for row in board.done_of_due(of_lists, dated, to_ms - (CHECKED_DAYS - 1) * DAY_MS, to_ms, 0) if row["due"]],
        "overdue": [row for row in board.due(rows, dated, to_ms, 0)["rows"] if row["standing"] == "overdue"],
        "readings": _readings(past, settings, shown, own["rows"]),
    }


def _readings(past, settings, shown, rows):
    """Items whose readings went three in a row toward their limit, or whose newest is beyond it; those beyond it first."""
    answers = [record for record in log_records.in_force(past) if record["kind"] == "answer" and record["amount"] is not None]
    replaced = {id for record in answers for id in record["replaces"]}
    by_item = {}
    for record in answers:
        if record["id"] not in replaced:
            by_item.setdefault(record["item"], []).append(record)
    found = []
    for row in rows:
        if not row["limit"] or row["id"] not in by_item:
            continue
        own = (settings.get(row["id"]) or {}).get("limit")
        course = limits.course(row["limit"], own, by_item[row["id"]])
        if course["side"] or course["trend"] == "toward":
            quantity = row["limit"]["quantity"]
            texts = [display.figure(shown, quantity, amount) if quantity else display.plain(shown, amount, 2) for amount in course["amounts"]]
            found.append({"item": row["id"], "side": course["side"], "trend": course["trend"], "texts": texts, "quantity": quantity, "unit": row["unit"],
                          "limit": limits.shown(row["limit"], own, shown)})
    return sorted(found, key=lambda reading: reading["side"] is None)


def words(language):
    """The words of this part: its own, the bay's and those of a rig's status."""
    return {"l": data.words("report", language), "bay": data.words("bay", language), "item": data.words("checks", language), "status": data.words("site", language)["rig_status"]}
