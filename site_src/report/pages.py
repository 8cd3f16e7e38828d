"""The fleet's report: a folder of exported test results and logs of rigs to plain pages that read and print anywhere.

Every result is worked out anew from its readings; nothing a file says of itself is believed, and nothing in it can be more than
text on a page: no script may run there, and all of it is escaped.
"""
import base64
import hashlib
import json
import pathlib
import re

import jinja2

from calc.base.errors import CalcError
from calc.service import due, file as service_file, history as service_history, texts
from site_src.content import data, former, standards, units
from site_src.report import days, entries, logs as report_logs, signed

PLACE = "report"  # the folder within the folder
MARK = '<meta name="generator" content="panelhand fleet report">'
TEMPLATES = pathlib.Path(__file__).parent.parent / "templates" / "report"


class ReportError(ValueError):
    """A folder that no report can be made of."""


def write(folder, on=None, system="US", language="en", zone=days.UTC, profiles=()):
    """Write the report of a folder into its subfolder `report`, and say what it is of.

    folder: path of a folder that holds results as the Test pages export them and logs of rigs, at any depth
    on: the day it is made for, as a date; today where none is given
    system: units it is read in, such as "US"
    language: of its words, such as "en"
    zone: the time zone by whose clock it counts days, see site_src.report.days; this computer's where it is None
    profiles: of the department's rigs; a log goes by the rows and limits of the one that has its id, or else its name

    Returns the path of its first page and counts: `{"page", "files", "tests", "rigs", "logs", "bad"}`. Raises ReportError where
    there is no such folder or no file in it. A file that cannot be used is named in the report.
    """
    folder = pathlib.Path(folder)
    out = folder / PLACE
    if not folder.is_dir():
        raise ReportError(f"{folder}: no such folder.")
    files = sorted(path for path in folder.rglob("*") if path.suffix.lower() == ".json" and out not in path.parents)
    if not files:
        raise ReportError(f"{folder}: no .json file of test results or logs in it.")
    clock = days.Days(zone)
    facts = told(files, folder, on or clock.today(), system, language, clock, profiles)
    render = renderer(system, language, clock)
    pages = {out / rig["page"]: render("rig.html", rig=rig, **facts) for rig in facts["rigs"]}
    pages.update({out / log["page"]: render("log.html", log=log, **facts) for log in facts["logs"]})
    pages[out / "index.html"] = render("index.html", **facts)
    clear(out, pages)
    for path, text in pages.items():
        page(path, text)
    return {"page": out / "index.html", "files": len(files), "tests": facts["tests"], "rigs": len(facts["rigs"]), "logs": len(facts["logs"]),
            "bad": len(facts["bad"]) + len(facts["bad_logs"])}


def clear(out, pages):
    """Make room for the pages of a report: those of an earlier one go, whatever else lies there stays."""
    if out.is_symlink() or out.exists() and not out.is_dir():
        raise ReportError(f"{out}: this is a file or a link, and the report is a folder of that name. Move it away.")
    for path in pages:
        if (path.exists() or path.is_symlink()) and not is_ours(path):
            raise ReportError(f"{path}: not a page of an earlier report. Move it away: it would be written over.")
    out.mkdir(exist_ok=True)
    for path in out.glob("*.html"):
        if is_ours(path):
            path.unlink()


def is_ours(path):
    """Whether a file is a page of an earlier report, by the mark in its head."""
    if path.is_symlink() or not path.is_file():
        return False
    with path.open("rb") as file:
        return MARK.encode() in file.read(2000)


def page(path, text):
    path.write_bytes(text.encode("utf-8", "replace"))  # half a character in a name is no reason to fail


def told(files, folder, on, system, language="en", clock=days.Days(), profiles=()):
    """Everything the report says, as plain data."""
    shown = units.fine(system, language)
    interval_days = data.load("service/common")["due"]["interval_days"]
    newest, bad, changed, turned, broken, older, logs = {}, [], [], [], [], 0, report_logs.Logs()
    for path in files:
        name = path.relative_to(folder).as_posix()
        content, fault = content_of(path)
        parts = [] if fault else entries.parts(content)
        for log in filter(report_logs.is_log, parts):
            logs.take(name, log)
        tests = [part for part in parts if not report_logs.is_log(part)]
        for record, reason, at in [(None, fault, None)] if fault else [row for part in tests for row in records(part, shown)]:
            if reason:
                bad.append({"file": name, "reason": reason, "at": at})
                continue
            if record["claimed"]:
                changed.append({"file": name, **record})
            if record["broken"]:
                broken.append({"file": name, **record})
            id = record["id"]
            older += id in newest
            if id in newest and newest[id]["revision"] == record["revision"] and newest[id]["readings"] != record["readings"]:
                bad.append({"file": name, "reason": "clash", "at": newest[id]["file"]})
            elif id not in newest or newest[id]["revision"] < record["revision"]:
                turned += turns(newest.get(id), record, name)
                newest[id] = {"file": name, **record}
            else:
                turned += turns(record, newest[id], newest[id]["file"])
    done = [record for record in newest.values() if record["at_ms"] is not None]
    by_rig = {}
    for record in sorted(done, key=lambda each: (each["at_ms"], each["id"])):
        by_rig.setdefault(record["rig_id"], []).append(record)
    end_ms = clock.end_ms(on)
    rigs = [rig_of(tests, end_ms, interval_days, shown) for tests in by_rig.values()]
    rigs.sort(key=lambda rig: (due.ORDER.index(rig["standing"]["status"]), in_turn(rig["name"]), rig["page"]))
    names = {id: tests[-1]["rig_name"] for id, tests in by_rig.items()}
    return {
        **report_logs.facts(logs, names, end_ms, shown, clock, profiles),
        "rigs": rigs, "bad": bad, "changed": changed, "turned": turned, "broken": broken, "older": older, "former": [record for record in done if record["edition"]], "files": len(files), "tests": len(done), "days": interval_days,
        "on": on.isoformat(), "zone": clock.name(), "unfinished": sorted((each for each in newest.values() if each["at_ms"] is None), key=lambda each: each["rig_name"]),
    }


def turns(earlier, later, file):
    """A finished test whose later version says another thing than an earlier one did; [] where none does."""
    if earlier is None or earlier["at_ms"] is None or earlier["status"] == later["status"] or earlier["revision"] == later["revision"]:
        return []
    return [{"file": file, "rig_name": later["rig_name"], "at_ms": later["at_ms"], "was": earlier["status"], "status": later["status"]}]


def content_of(path):
    """What a file holds, and None; or None, and why it cannot be read."""
    try:
        if path.is_symlink() or not path.is_file():  # a folder, a pipe, a link to anything
            return None, "unreadable"
        size = path.stat().st_size
        if size > entries.LARGEST_BYTES:
            return None, "too_large"
        content = json.loads(path.read_text(encoding="utf-8-sig"), parse_constant=_no_constant)
    except OSError:
        return None, "unreadable"
    except (ValueError, RecursionError):
        return None, "not_json"
    most = entries.LARGEST_BYTES if entries.is_entries(content) else report_logs.LARGEST_BYTES if report_logs.is_log(content) else service_file.LARGEST_BYTES
    if size > most:
        return None, "too_large"
    return content, None


def records(content, shown):
    """The tests of a file, one after another: (what the report needs of it, None, None) or (None, why not, where)."""
    listed = content if isinstance(content, list) else [content]
    if len(listed) > service_file.MOST_RECORDS:
        return [(None, "too_many", None)]
    return [_record(test, shown) for test in listed if not service_file.is_baseline(test)]


def _no_constant(name):
    raise ValueError(f"{name} is no JSON")


def _record(given, shown):
    try:
        judged = service_file.judged(given, standards.every(), former.every(), shown)
    except CalcError as fault:
        return None, fault.code, fault.facts.get("at")
    record, verdict = judged["record"], judged["verdict"]
    is_done = record.get("finished_ms") is not None
    if is_done and verdict is None:
        return None, "no_plan", None
    failed = [test for test in verdict["tests"] if test["status"] == "fail"] if verdict else []
    texts.add_texts([test["decided"] for test in failed], shown, {})  # the only figures of a verdict that are printed
    return {
        **{name: record[name] for name in ("id", "revision", "rig_id", "rig_name", "begun_ms")},
        **(record["result"] or {"points": [], "rated_gpm": None, "status": "not_proven"}),
        "at_ms": record["finished_ms"] if is_done else None,
        "kind": record["standard"]["kind"], "standard": record["standard"]["id"], "tester": record["people"]["tester"],
        "failed": [{"test": test["id"], "figure": test["decided"]} for test in failed],
        "signs": [sign["id"] for sign in verdict["signs"]] if verdict else [],
        "missing": [test["id"] for test in verdict["tests"] if test["status"] == "not_proven"] if verdict else [],
        "broken": signed.broken(given), "claimed": judged["claimed"], "edition": judged["edition"],
        "readings": hashlib.sha256(json.dumps([record["tests"], record["conditions"], record["rig"]], sort_keys=True).encode()).hexdigest(),
    }, None, None


def rig_of(tests, on_ms, interval_days, shown):
    """One rig with its tests, oldest first."""
    newest = tests[-1]
    speed_accuracy_rpm = data.load("service/common")["accuracy"]["speed_rpm"]
    history = service_history.history(tests, speed_accuracy_rpm, shown)
    proving = [test for test in tests if test["status"] != "not_proven" and test["at_ms"] <= on_ms]
    standing = due.standing(tests, on_ms, interval_days)
    return {
        "name": newest["rig_name"], "rated_gpm": newest["rated_gpm"], "tests": tests[::-1], "newest": newest,
        "page": f"rig-{hashlib.sha256(newest['rig_id'].encode('utf-8', 'replace')).hexdigest()[:16]}.html",  # never a name from a file
        "standing": standing, "failed": proving[-1] if standing["status"] == "failed" else None,
        "points": history["points"], "falling": [point for point in history["points"] if point["is_falling"] or point["is_below"]],
        "dates": {test["id"]: test["at_ms"] for test in tests},
    }


def renderer(system, language, clock):
    """A function that fills in a template of the report with the words of the site."""
    environment = jinja2.Environment(
        loader=jinja2.FileSystemLoader(TEMPLATES), autoescape=True, undefined=jinja2.StrictUndefined, trim_blocks=True, lstrip_blocks=True)
    environment.filters["day"] = lambda ms: clock.date(ms).isoformat()
    test, site = data.words("service", language), data.shared_words(language)
    style = (TEMPLATES / "report.css").read_text(encoding="utf-8")
    digest = base64.b64encode(hashlib.sha256(style.encode()).digest()).decode()
    shown = units.fine(system, language)
    given = {
        "mark": MARK, "t": test, "r": test["report"], "site": site["site"]["name"], "u": site["unit"][system], "style": style,
        "policy": f"default-src 'none'; style-src 'sha256-{digest}'; base-uri 'none'; form-action 'none'", "language": language,
        **report_logs.words(language), "colon": data.colon(language), "label": lambda name: label_of(name, test), "rating": lambda gpm: rating(gpm, shown),
    }
    return lambda name, **facts: environment.get_template(name).render(**given, **facts)


def in_turn(name):
    """A key that puts Engine 2 before Engine 10."""
    return [(part.isdecimal(), int(part) if part.isdecimal() and len(part) < 10 else 0, part) for part in re.split(r"(\d+)", name.casefold())]


def rating(rated_gpm, shown):
    """A rated capacity in the report's unit."""
    scale = shown["systems"][shown["shown"]]["flow"]
    return "" if rated_gpm is None else f"{rated_gpm * scale['factor']:.0f}"


def label_of(name, test):
    """ "master.at_150.panel_psi" as people read it."""
    *places, last = name.split(".")
    told_places = [test["at"].get(part, part).format(at=part.removeprefix("at_")) if part in test["at"] else part for part in places]
    return ", ".join([*told_places, test["field"].get(last) or test["check"].get(last, last)])
