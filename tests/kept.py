"""The evidence that the site shows, kept in a data file, beside what a test has just found."""
import json
import pathlib

import pytest

DATA = pathlib.Path(__file__).resolve().parents[1] / "site_src" / "data"
FILE, EXAMPLES = DATA / "evidence.json", DATA / "examples.json"
SLACK = 0.05  # of a deviation: the last bits of two machines differ
TINY = 1e-5  # a deviation below this is the solver's own: the page says "under 0.01 %"


def close(kept, found):
    """Whether kept evidence says what was found: words and counts exactly, deviations nearly."""
    if isinstance(found, float) or isinstance(kept, float):
        return kept == pytest.approx(found, rel=SLACK, abs=TINY)
    if isinstance(found, dict):
        return kept.keys() == found.keys() and all(close(kept[name], found[name]) for name in found)
    if isinstance(found, list):
        return len(kept) == len(found) and all(map(close, kept, found))
    return kept == found


def is_fresh(part, python, found):
    """Whether the site's file says this of a part on one of the two Pythons; where not, run `python -m tests.evidence`."""
    return close(json.loads(FILE.read_text(encoding="utf-8"))[part][python], found)
