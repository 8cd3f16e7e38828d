"""Which of the browser's cases are run: of those that are alike in kind one share, and with each commit the next.

SHARE=0, 1 or 2 runs that share, EXHAUSTIVE=1 all of them; each run prints which it was.
"""
import collections
import os
import pathlib
import subprocess

ALIKE = ("test_access.py", "test_bad_input.py", "test_hostile.py", "test_no_script.py", "test_page_opens_cold", "test_sign_that_does_not_come", "test_danger_from_a_step")
SHARES = 3


def pytest_configure():
    """Settle the share once, for this process and those it starts."""
    os.environ.setdefault("SHARE", str(commits() % SHARES))


def commits():
    """How many commits led here; 0 where git cannot tell."""
    run = subprocess.run(["git", "rev-list", "--count", "HEAD"], cwd=pathlib.Path(__file__).parent, capture_output=True, text=True)
    return int(run.stdout or 0)


def share():
    """The share that is run, or None where all of them are."""
    return None if os.environ.get("EXHAUSTIVE") else int(os.environ["SHARE"]) % SHARES


def pytest_terminal_summary(terminalreporter):
    """Say which share it was, whatever else is said."""
    terminalreporter.write_line(f"Browser cases that are alike: {said()}")


def said():
    return "all of them" if share() is None else f"SHARE={share()} of {SHARES} (EXHAUSTIVE=1 runs all)"


def pytest_collection_modifyitems(config, items):
    """Keep the browser's time within bounds."""
    if share() is not None:
        kept = in_share(items, share())
        names = {item.nodeid for item in kept}
        config.hook.pytest_deselected(items=[item for item in items if item.nodeid not in names])
        items[:] = kept


def in_share(items, chosen):
    """The items of a share: those of the alike that are its own, and all that are not alike."""
    counts, kept = collections.Counter(), []
    for item in items:
        test = item.nodeid.partition("[")[0]
        if "tests/phone/" in test and any(name in test for name in ALIKE):
            counts[test] += 1
            if (counts[test] - 1) % SHARES != chosen:
                continue
        kept.append(item)
    return kept
