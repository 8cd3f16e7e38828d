"""What a fleet's report costs: time and size for 25, 50, 100 and 200 rigs, ten yearly tests each.

    python tests/bench/report.py [MOST]          stops at MOST rigs (200)
"""
import datetime
import pathlib
import sys
import tempfile
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[2]))

from site_src.report import pages as report
from tests.service_fleet import write_fleet

YEARS = 10


def main(most):
    for rigs in (25, 50, 100, 200):
        if rigs > most:
            break
        with tempfile.TemporaryDirectory() as scratch:
            folder = pathlib.Path(scratch)
            write_fleet(folder, rigs, YEARS)
            read = sum(path.stat().st_size for path in folder.glob("*.json"))
            start = time.perf_counter()
            told = report.write(folder, datetime.date(2026, 11, 25))
            seconds = time.perf_counter() - start
            pages = list((folder / report.PLACE).glob("*.html"))
            written = sum(path.stat().st_size for path in pages)
            first = told["page"].stat().st_size
        print(f"{rigs:4} rigs, {told['tests']:5} tests, {read / 1e6:6.1f} MB read: {seconds:6.1f} s, {1000 * seconds / told['tests']:5.1f} ms a test, "
              f"{len(pages)} pages of {written / 1000:.0f} kB, the first {first / 1000:.0f} kB", flush=True)


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 200)
