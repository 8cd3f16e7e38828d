"""Every limit of the checks, both sides of it, on both Pythons; and what each row of the checks must say."""
import pathlib
import tomllib

import pytest

from calc.bay import records, rounds
from calc.rig import fields
from site_src.content import citing, checks, data, units

LIMITS = tomllib.loads((pathlib.Path(__file__).parent / "checks.toml").read_text(encoding="utf-8"))["limit"]
ROWS = data.by_id(checks.rows())
CASES = [(row["id"], text, is_good) for row in LIMITS for is_good, texts in ((True, row["good"]), (False, row["bad"]), (None, [row["aim"]] if "aim" in row else [])) for text in texts]
US = units.fine("US")


@pytest.mark.parametrize(("name", "text", "is_good"), CASES)
def test_both_sides(run, name, text, is_good):
    """The figure that the source prints is good, the next one past it is not."""
    answer = run("bay.limits", "judged", limit=ROWS[name]["limit"], text=f"{text}@US", own=None, earlier=[], units=US)
    assert answer["is_good"] is is_good


def test_every_limit_is_here():
    assert [row["id"] for row in LIMITS] == [row["id"] for row in checks.rows() if row["limit"]]
    for row in LIMITS:
        named = ROWS[row["id"]]["source"]
        assert citing.ids(row["source"]) == named
        assert citing.cited({**row, "source": named})["basis"] == ROWS[row["id"]]["basis"]


@pytest.mark.parametrize("name", ROWS)
def test_a_row_is_whole(name):
    """A row has its place, state, class, lists, sources and words, and asks only for what a profile can say."""
    row = ROWS[name]
    assert row["place"] in rounds.PLACES and row["state"] in rounds.STATES
    assert row["class"] in records.CLASSES and row["scope"] in records.SCOPES
    assert row["lists"] and set(row["lists"]) <= {each["id"] for each in checks.lists()}
    assert row["source"] and set(row["source"]) <= set(checks.sources())
    assert row["basis"] in data.words("site")["basis"]
    options = {field[0]: field[2] for field in fields.FIELDS if field[1] == "choice"}
    assert all(set(row["fits"][field]) <= set(options[field]) for field in row["fits"])
    words = data.words("bay")
    assert row["equipment"] is None or row["equipment"] in words["equipment"]
    assert row["restricts"] is None or row["restricts"] in words["restricts"]
    assert row["unit"] is None or row["unit"] in words["bay_unit"]


def test_words():
    """Every row has its words, every list, place, state, proof and due row too."""
    words = data.words("bay")
    assert set(checks.text()) == set(ROWS)
    assert set(words["list"]) == {row["id"] for row in checks.lists()}
    assert set(words["place"]) == set(rounds.PLACES) and set(words["engine_state"]) == set(rounds.STATES)
    assert set(words["kind"]) == set(records.BODIES)
    for row in checks.proofs():
        assert row["opened"] in words["opened"] if row["opened"] else row["after"] in words["origin"]
        assert all(proof in words["proof"] or proof in ROWS for proof in row["proofs"])
    for row in checks.due():
        assert row["id"] in words["list"] or row["id"] in words["due_name"]
        assert set(row["by"]) <= set(ROWS) | set(words["list"])
