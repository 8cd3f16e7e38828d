"""What a fleet's report costs: time and size for 25, 50, 100 and 200 rigs, ten yearly tests each; and what the texts of
all their figures would cost beside the verdicts that a report asks for, taken in turns so that other work on the machine tells on both.

    python tests/bench/report.py [MOST]          stops at MOST rigs (200)
"""
import datetime
import pathlib
import sys
import tempfile
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[2]))

from calc.service import page, proof
from site_src.report import pages as report
from tests import service_records
from tests.service_fleet import write_fleet

YEARS = 10
TURNS = 200


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
    print(f"verdict with the texts of its page against the verdict alone: {with_texts():.1f} times", flush=True)


def with_texts():
    """The processor's time of a whole test with its texts, over that without."""
    record, spent = service_records.a_record(), {page.answer: 0, proof.proof: 0}
    for _ in range(TURNS):
        for judge in spent:
            start = time.process_time()
            judge(record, service_records.US)
            spent[judge] += time.process_time() - start
    return spent[page.answer] / spent[proof.proof]


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 200)
