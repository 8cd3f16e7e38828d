"""A made-up fleet's exported test results: some rigs wear, some fail, some are late."""
import copy
import json
import random

from tests import service_records

YEAR_MS = 31_557_600_000


def write_fleet(folder, rigs, years, seed=1):
    """One file a rig, a test a year up to September 2026. Returns what was meant: names of rigs by "failed", "late" and "worn"."""
    pick = random.Random(seed)
    base = service_records.a_record()
    folder.mkdir(parents=True, exist_ok=True)
    meant = {"failed": set(), "late": set(), "worn": set()}
    for number in range(rigs):
        name = f"Made-up Engine {number}"
        turn = number % 10
        kind = {3: "failed", 5: "late", 7: "worn"}.get(turn, "sound")
        meant.get(kind, set()).add(name)
        tests = [a_year(base, number, name, year, years, kind, pick) for year in range(years)]
        if kind == "late":
            tests = tests[:-2] or tests
        (folder / f"rig-{number:04}.json").write_text(json.dumps(tests), encoding="utf-8")
    return meant


def a_year(base, number, name, year, years, kind, pick):
    """One year's test of one rig, from a whole good one."""
    record = copy.deepcopy(base)
    ago_ms = (years - 1 - year) * YEAR_MS
    record.update(id=f"{number}-{year}", rig_id=f"rig-{number}", rig_name=name, begun_ms=base["begun_ms"] - ago_ms, finished_ms=base["finished_ms"] - ago_ms)
    wear = (0.012 * year if kind == "worn" else 0) + pick.uniform(-0.002, 0.002)
    for given in record["tests"].values():
        for attempt in given.get("attempts", []):
            for each in attempt["sets"]:
                rpm = int(each["values"]["engine_rpm"].partition("@")[0])
                each["values"].update(engine_rpm=f"{rpm * (1 + wear):.0f}@US", pump_rpm=f"{2 * rpm * (1 + wear):.0f}@US")
    if kind == "failed" and year == years - 1:
        record["tests"]["vacuum"]["values"]["vacuum_after_inhg"] = "11@US"
        record["result"] = None  # the report works it out
    return record
