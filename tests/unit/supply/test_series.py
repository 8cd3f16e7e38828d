"""Two engines in series into a building's connection: every pressure against its limit."""
import pytest

from tests.unit.supply.reckoned import ask, called_to_mind, row

# 844 ft of height and 100 psi at the outlet, no hose: 0.434 x 844 + 100 = 466.3 (a trade community's post prints 470)
TOWER = {"by": "height", "climb": "844", "allowance": "0", "length": "0"}


def test_each_pressure(run):
    """By hand: (466.3 - 50) / 2 = 208.15 each; the first shows 258.15, the second 466.3."""
    answer = ask(run, "connection", **TOWER, supply="50")
    assert [row(answer, name)["text"] for name in ("series_each", "series_first", "series_second")] == ["208", "258", "466"]
    assert row(answer, "series_first")["terms"] == {"intake": "50", "each": "208.15", "first": "258.15"}
    assert "in_series" in called_to_mind(answer) and "series_over" not in called_to_mind(answer)


def test_an_intake_that_is_not_read_counts_for_nothing(run):
    """By hand: half of 466.3."""
    assert row(ask(run, "connection", **TOWER), "series_each")["terms"] == {"pump": "466.3", "intake": "0", "each": "233.15"}


@pytest.mark.parametrize(("limit", "is_over"), [("258", True), ("259", False), ("", False)])
def test_the_second_intake(run, limit, is_over):
    """By hand: it sees 258.15 psi."""
    cautions = ask(run, "connection", **TOWER, supply="50", limit=limit)["cautions"]
    assert [(each["level"], each["amount"]) for each in cautions if each["code"] == "series_intake_over"] == ([("stop", "258")] if is_over else [])


def test_more_than_two_engines_add(run):
    """By hand: 0.434 x 1,000 + 100 = 534 psi are 267 each; with 50 psi at the intake 242."""
    tall = {**TOWER, "climb": "1000"}
    assert "series_over" in called_to_mind(ask(run, "connection", **tall))
    assert "series_over" not in called_to_mind(ask(run, "connection", **tall, supply="50"))


@pytest.mark.parametrize(("supply", "is_series"), [("", True), ("25", True), ("26", False)])
def test_one_engine_is_enough(run, supply, is_series):
    """By hand: 405 ft and 100 psi are 275.77; less 25 it is past 250, less 26 it is not."""
    codes = called_to_mind(ask(run, "connection", **{**TOWER, "climb": "405"}, supply=supply))
    assert ("in_series" in codes) is is_series
