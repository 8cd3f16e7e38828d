"""What a rig's log costs as it grows: letting a file in, once and again, its status, its due board, and the fleet's report on it.

    python tests/bench/log.py [--keep] [RECORDS ...]          1,000 and 10,000 where none is named; --keep adds them to history.jsonl

The phone's own interpreter and scripts on this desk, but for the report, which is the desk's. Milliseconds are those of the processor:
other work on the machine takes none of them away, though it shares its caches. A phone six times as slow takes six times as long.
"""
import os
import pathlib
import sys
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[2]))

from site_src.content import checks, units
from site_src.report import days, logs as report_logs
from tests.bench import phone as history
from tests.conftest import Phone, runner
from tests.unit.bay.arrivals import let_in
from tests.unit.bay.logs import NOW_MS, RIG, long_log

OF_STATUS = ("defect", "decision", "repair", "release", "withdrawn")
OF_BOARD = ("round", "ended", "done", "meters", "withdrawn")
TIMES = 5
SLOWED = history.SLOWED


def cpu_ms(phone):
    """What a process has used of the processor, in ms; source: proc(5), fields 14 and 15."""
    used = pathlib.Path(f"/proc/{phone.process.pid}/stat").read_text(encoding="ascii").rpartition(")")[2].split()
    return 1000 * (int(used[11]) + int(used[12])) / os.sysconf("SC_CLK_TCK")


def asked(phone, module, name, **given):
    """CPU ms of one question, the mean of some, and its answer."""
    run = runner(phone.call).unheld
    answer = run(module, name, **given)
    start = cpu_ms(phone)
    for _ in range(TIMES):
        run(module, name, **given)
    return (cpu_ms(phone) - start) / TIMES, answer


def measure(count):
    made = long_log(count)
    for name, standing, files in (("let into an empty log", [], [made]), ("the same again", made, [made]), ("into its older half", made[: count // 2], [made])):
        [answer] = let_in([{"standing": standing, "files": files}])
        history.told(f"log of {count}, {name}", answer["cpu_ms"], "ms")
        if name == "let into an empty log":
            first = answer["cpu_ms"]
    phone = Phone()
    status, _ = asked(phone, "bay.standing", "of_rig", records=[record for record in made if record["kind"] in OF_STATUS])
    rows = [{name: value for name, value in row.items() if name != "equipment"} for row in checks.due()]
    due, _ = asked(phone, "bay.board", "due", rows=rows, records=[record for record in made if record["kind"] in OF_BOARD], on_ms=NOW_MS, offset_min=0)
    phone.close()
    history.told(f"log of {count}, status", status, "ms")
    history.told(f"log of {count}, due board", due, "ms")
    start = time.process_time()
    folder = report_logs.Logs()
    folder.take("log.json", {"format": report_logs.FORMAT, "schema": 1, "rig_id": RIG["rig_id"], "records": made})
    report_logs.facts(folder, {}, NOW_MS, units.fine("US"), days.Days(), ())
    report = 1000 * (time.process_time() - start)
    history.told(f"log of {count}, the fleet's report on it", report, "ms")
    history.told(f"log of {count}, let in, status and due board", first + status + due, "ms", "1000 for 10,000")
    history.told(f"log of {count}, opened: status and due board, {SLOWED}x slowed", SLOWED * (status + due), "ms", "300 for 1,000")


if __name__ == "__main__":
    for count in [int(count) for count in sys.argv[1:] if count.isdecimal()] or [1000, 10_000]:
        measure(count)
    if "--keep" in sys.argv[1:]:
        history.keep()
