"""What calc says of a name and of an answer is what the bay's scripts say: tests/scripts/agreed.test.js reads the same table."""
import json

import pytest

import build

CASES = json.loads((build.ROOT / "tests/agreed.json").read_text(encoding="utf-8"))
ARGUMENT = {"is_name": "text", "is_whole": "answer"}


@pytest.mark.parametrize(("rule", "given", "expected"), [(rule, *case) for rule, cases in CASES.items() for case in cases])
def test_agreed(run, rule, given, expected):
    """A name has two different letters, and anything beyond ASCII is one; a good answer was read and timed."""
    assert run("bay.records", rule, **{ARGUMENT[rule]: given}) is expected
