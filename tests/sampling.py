"""Which of the browser's cases are run: one share of them, and with each commit the next.

SHARE=n runs the share that the n-th commit would, EXHAUSTIVE=1 all of them, SEED=n walks as that run did, another with each commit; each run prints which it was.
"""
import collections
import os
import pathlib
import subprocess

# how many runs share the browser's cases between them; walks that are alike but for their seed, more
SHARES, WALKS, WALKED = 6, 30, "tests/phone/test_claim"
ROUND = 30  # runs after which every share was taken


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
    """Say which share it was, whatever else is said."""
    terminalreporter.write_line(f"Browser cases: {said()}")


def said():
    which = "all of them" if share() is None else f"SHARE={share()} of {ROUND} (EXHAUSTIVE=1 runs all)"
    return f"{which}; walks by SEED={os.environ['SEED']}"


def pytest_collection_modifyitems(config, items):
    """Keep the browser's time within bounds."""
    if share() is not None:
        kept = in_share(items, share())
        names = {item.nodeid for item in kept}
        config.hook.pytest_deselected(items=[item for item in items if item.nodeid not in names])
        items[:] = kept


def in_share(items, chosen):
    """The items of a share: one in SHARES of the browser's own cases, and all that need no browser."""
    counts, kept = collections.Counter(), []
    for item in items:
        shares = shares_of(item)
        if counts[shares] % shares == chosen % shares:
            kept.append(item)
        counts[shares] += 1
    return kept


def shares_of(item):
    """Between how many runs a case is shared."""
    if "tests/phone/" not in item.nodeid:
        return 1
    return WALKS if WALKED in item.nodeid else SHARES
