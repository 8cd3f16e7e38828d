"""Which of many like cases are run, the browser's above all: one share of them, and with each commit the next.

SHARE=n runs the share that the n-th commit would, EXHAUSTIVE=1 all of them, SEED=n walks as that run did, another with each commit; each run prints which it was.
"""
import collections
import os
import pathlib
import subprocess

# between how many runs cases are shared, by what their names begin with, the first that fits; walks are alike but for their seed
SHARED = {
    "tests/phone/test_claim": 60, "tests/phone/test_access": 20, "tests/phone/": 10,
    "tests/unit/shift/test_proof.py::test_no_reachable_state_offers_an_act_with_a_guard_missing": 4,
    "tests/unit/shift/test_proof.py::test_the_exploration_notices_a_guard_that_is_never_asked": 8,
}
PARTS = 5  # of the seeds of a test that takes thousands
ROUND = 120  # runs after which every share was taken


def pytest_configure():
    """Settle the share and the seed of the walks once, for this process and those it starts."""
    os.environ.setdefault("SHARE", str(commits() % ROUND))
    os.environ.setdefault("SEED", str(commits()))


def commits():
    """How many commits led here; 0 where git cannot tell."""
    run = subprocess.run(["git", "rev-list", "--count", "HEAD"], cwd=pathlib.Path(__file__).parent, capture_output=True, encoding="utf-8")
    return int(run.stdout or 0)


def share():
    """The share that is run, or None where all of them are."""
    return None if os.environ.get("EXHAUSTIVE") else int(os.environ["SHARE"]) % ROUND


def pytest_terminal_summary(terminalreporter):
    """Say last which share it was, and what could not be tested on this machine."""
    for reason in passed_over(terminalreporter.getreports("skipped")):
        terminalreporter.write_line(f"NOT PROVEN: {reason}")
    terminalreporter.write_line(f"Browser cases: {said()}")


def passed_over(reports):
    """Why tests were skipped, each reason once."""
    return sorted({report.longrepr[2].removeprefix("Skipped: ") for report in reports})


def said():
    which = "all of them" if share() is None else f"SHARE={share()} of {ROUND} (EXHAUSTIVE=1 runs all)"
    return f"{which}; walks by SEED={os.environ['SEED']}"


def pytest_collection_modifyitems(config, items):
    """Keep a run's time within bounds."""
    if share() is not None:
        kept = in_share(items, share())
        names = {item.nodeid for item in kept}
        config.hook.pytest_deselected(items=[item for item in items if item.nodeid not in names])
        items[:] = kept


def in_share(items, chosen):
    """The items of a share: of those that runs share between them one in so many, and all others."""
    counts, kept = collections.Counter(), []
    for item in items:
        shares = shares_of(item)
        if counts[shares] % shares == chosen % shares:
            kept.append(item)
        counts[shares] += 1
    return kept


def shares_of(item):
    """Between how many runs a case is shared."""
    return next((shares for beginning, shares in SHARED.items() if item.nodeid.startswith(beginning)), 1)


def seeds(count):
    """Of a test's seeds from 0 up to count those of this run: all, or a part of PARTS in a row, the next one with each commit."""
    if share() is None:
        return range(count)
    part = share() % PARTS
    return range(part * count // PARTS, (part + 1) * count // PARTS)
