"""The keys next to a reading."""
import pytest


@pytest.mark.parametrize(
    ("text", "decimal", "step", "below", "above"),
    [
        # by hand: the next whole steps on either side
        ("68", ".", 1, ["66", "67"], ["69", "70"]),
        ("145.5", ".", 1, ["144", "145"], ["146", "147"]),  # from between two steps to the steps
        ("1610", ".", 10, ["1590", "1600"], ["1620", "1630"]),
        ("6,9", ",", 0.5, ["6", "6.5"], ["7", "7.5"]),
        ("1", ".", 1, ["0"], ["2", "3"]),  # no gauge reads below zero here
        ("", ".", 1, [], []),
        ("abc", ".", 1, [], []),
    ],
)
def test_near(run, text, decimal, step, below, above):
    """Two figures below and two above, and none where no number stands."""
    rows = [{"text": text, "kind": "pressure", "step": step}]
    assert run("base.neighbors", "near", rows=rows, decimal=decimal, below=2, above=2) == [{"below": below, "above": above}]


@pytest.mark.parametrize(
    ("text", "kind", "decimal", "below", "above"),
    [
        # one mark before three digits: a thousand and a half in English, which a French page would ask about; a ratio is read to thousandths
        ("1,500", "flow", ".", ["1400"], ["1600"]),
        ("1,500", "flow", ",", [], []),
        ("100.000", "ratio", ".", ["0"], ["200"]),
        ("1.500", "flow", ".", [], []),
        ("1.500", "ratio", ".", ["0"], ["100"]),
    ],
)
def test_what_can_be_read_two_ways(run, text, kind, decimal, below, above):
    """By the page's decimal mark and the kind, as an entry is; none where it would be asked about."""
    rows = [{"text": text, "kind": kind, "step": 100}]
    assert run("base.neighbors", "near", rows=rows, decimal=decimal, below=1, above=1) == [{"below": below, "above": above}]
