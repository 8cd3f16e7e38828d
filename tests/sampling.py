"""Which of the browser's cases are run: of those that are alike in kind one share, and with each commit the next.

SHARE=n runs the share that the n-th commit would, EXHAUSTIVE=1 all of them; each run prints which it was.
"""
import collections
import os
import pathlib
import subprocess

# how many runs share the cases of a test between them
SHARES = {
    **dict.fromkeys(("test_access.py", "test_bad_input.py", "test_slips.py", "test_hostile.py", "test_no_script.py", "test_page_opens_cold", "test_sign_that_does_not_come", "test_danger_from_a_step"), 3),
    **dict.fromkeys(("test_what_is_typed_after_a_tap", "test_slip_is_said_at_its_field", "test_whatever_is_taken_opens", "test_every_page_opens_marked", "test_no_label_over_another"), 3),
    **dict.fromkeys(("test_a_part_that_did_not_arrive", "test_uncaught_fault", "test_no_calculator"), 5),
    "test_claim.py": 5,
}
ROUND = 15  # runs after which every share was taken


def pytest_configure():
    """Settle the share once, for this process and those it starts."""
    os.environ.setdefault("SHARE", str(commits() % ROUND))


def commits():
    """How many commits led here; 0 where git cannot tell."""
    run = subprocess.run(["git", "rev-list", "--count", "HEAD"], cwd=pathlib.Path(__file__).parent, capture_output=True, encoding="utf-8")
    return int(run.stdout or 0)


def share():
    """The share that is run, or None where all of them are."""
    return None if os.environ.get("EXHAUSTIVE") else int(os.environ["SHARE"]) % ROUND


def pytest_terminal_summary(terminalreporter):
    """Say which share it was, whatever else is said."""
    terminalreporter.write_line(f"Browser cases that are alike: {said()}")


def said():
    return "all of them" if share() is None else f"SHARE={share()} of {ROUND} (EXHAUSTIVE=1 runs all)"


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
        shares = next((SHARES[name] for name in SHARES if "tests/phone/" in test and name in test), 1)
        if counts[test] % shares == chosen % shares:
            kept.append(item)
        counts[test] += 1
    return kept
