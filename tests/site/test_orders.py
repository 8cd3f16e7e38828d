"""One hazard, one order: the orders are whole, in every language."""
import pytest

from site_src import data

ROWS = data.load("orders")["order"]
GRADES = {"danger", "hold", "note"}
# What the trade settled: each hazard, how grave it is, and how often the shift may be tried after it (common practice).
SETTLED = {
    "moved": ("danger", 0), "steam": ("danger", None), "line_lost": ("danger", None), "dead_throttle": ("hold", 1), "grinding": ("hold", 1),
    "pump_fails": ("hold", 1), "road_fails": ("hold", 1), "fed_shaft": ("hold", None), "override": ("hold", None), "plugged": ("hold", None),
    "hot_no_steam": ("hold", None), "lower_line": ("note", None), "trapped": ("note", None),
}


def test_each_hazard_once():
    """Every hazard has one row, with the grade and the tries that were settled for it."""
    assert [row["id"] for row in ROWS] == list(SETTLED)
    assert {row["id"]: (row["grade"], row.get("again")) for row in ROWS} == SETTLED


@pytest.mark.parametrize("language", data.languages())
def test_orders_are_whole(language):
    """An order says when it holds, what to do in which order, what never, and in one line what it is; no other has its words."""
    words = data.load(f"words/{language}/orders")
    assert set(words) - {"order"} == set(SETTLED)
    assert set(words["order"]) >= GRADES
    for name in SETTLED:
        assert set(words[name]) >= {"title", "when", "do", "never", "short"}, name
        assert len(words[name]["do"]) >= 3, name
        assert ("rig" in words[name]) or name == "lower_line", name
