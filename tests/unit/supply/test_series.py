"""Two engines in series into a building's connection: every pressure against its limit.

Pressures in series add (driver/operator teaching on tandem pumping, from memory); a pump is rated to 250 psi net at the most, and
20 psi are left at an intake (driver/operator study cards).
"""
import pytest

from calc.base.errors import CalcError
from tests.unit.supply.reckoned import ask, called_to_mind, row

# 844 ft of height and 100 psi at the outlet, no feed hose: 0.434 x 844 + 100 = 466.3 (a trade community's post prints 470)
TOWER = {"by": "height", "climb": "844", "allowance": "0", "length": "0", "engines": "two", "between_length": "0", "supply": "50"}
# 4.5 in of 0.8 psi a hundred feet at 100 gpm, one line of 400 ft: 0.8 x 2.5^2 x 4 = 20 psi at 250 gpm
HOSE = {"between_lines": "1", "between_length": "400"}


def shown(answer):
    return [row(answer, name)["text"] for name in ("series_first", "series_intake", "series_second")]


def test_each_pressure(run):
    """By hand: (466.3 - 50) / 2 = 208.15 each; the first shows 258.15, the second 466.3."""
    answer = ask(run, "connection", **TOWER)
    assert shown(answer) == ["258", "258", "466"]
    assert row(answer, "series_first")["terms"] == {"intake": "50", "each": "208.15", "first": "258.15"}
    assert answer["facts"] == {"connection": "466", "first": "258", "intake": "258"}
    assert "series_over" not in called_to_mind(answer)


def test_the_hose_between(run):
    """By hand: 20 psi lost between make (466.3 + 20 - 50) / 2 = 218.15 each: 268.15 out, 248.15 in, 466.3 out."""
    answer = ask(run, "connection", **{**TOWER, **HOSE})
    assert row(answer, "series_intake")["terms"] == {"first": "268.15", "friction": "20", "intake": "248.15"}
    assert row(answer, "series_second")["terms"] == {"intake": "248.15", "each": "218.15", "pump": "466.3"}
    two_lines = row(ask(run, "connection", **{**TOWER, "between_length": "400"}), "series_intake")["terms"]
    assert two_lines["friction"] == "5"  # half the flow each: a quarter


def test_an_intake_that_is_not_read_counts_for_nothing(run):
    """By hand: half of 466.3."""
    assert row(ask(run, "connection", **{**TOWER, "supply": ""}), "series_first")["terms"] == {"intake": "0", "each": "233.15", "first": "233.15"}


def test_the_hose_between_by_its_class(run):
    """By hand: 3 in of 200 psi works to 0.9 of that (NFPA 1962); the first shows 180 where the second shows 310: (310 - 50) / 2 + 50."""
    assert "between_above_working_pressure" in called_to_mind(ask(run, "connection", **{**TOWER, "climb": "484.5"}))
    assert "between_above_working_pressure" not in called_to_mind(ask(run, "connection", **{**TOWER, "climb": "483"}))
    assert "between_above_test_pressure" in called_to_mind(ask(run, "connection", **TOWER))


def test_the_second_intake_may_see_less(run):
    """By hand: 248 psi at the most out of the first, so the second adds 466.3 - 248 = 218.3."""
    answer = ask(run, "connection", **TOWER, limit="248")
    assert shown(answer) == ["248", "248", "466"]
    assert [(each["level"], each["amount"], each["limit"], each["needed"]) for each in answer["cautions"] if each["code"] == "series_less_first"] == [
        ("caution", "258", "248", "218")]
    assert "series_less_first" not in called_to_mind(ask(run, "connection", **TOWER, limit="259"))


@pytest.mark.parametrize(("limit", "is_over"), [("216", True), ("217", False)])
def test_what_is_left_for_the_second(run, limit, is_over):
    """By hand: 466.3 - 216 is past 250, 466.3 - 217 is not."""
    assert ("series_over" in called_to_mind(ask(run, "connection", **TOWER, limit=limit))) is is_over


def test_the_supply_alone_is_too_much(run):
    """A strong supply of 120 psi and an intake good for 100: nothing the first engine does makes that less."""
    cautions = ask(run, "connection", **{**TOWER, "supply": "120"}, limit="100")["cautions"]
    assert [(each["level"], each["amount"], each["limit"]) for each in cautions if each["code"] == "series_intake_over"] == [("stop", "120", "100")]


def test_a_limit_that_nobody_read(run):
    """It is said, with what the intake sees when lines shut."""
    cautions = ask(run, "connection", **TOWER)["cautions"]
    assert [each["amount"] for each in cautions if each["code"] == "series_intake_unread"] == ["258"]
    assert "series_intake_unread" not in called_to_mind(ask(run, "connection", **TOWER, limit="300"))


def test_the_second_runs_dry(run):
    """By hand: 1,000 ft of one line lose 0.8 x 6.25 x 10 = 50 psi at 250 gpm."""
    starved = {**TOWER, "climb": "0", "needed": "60", "between_lines": "1", "between_length": "1000"}  # 50 + (60 + 50 - 50) / 2 = 80 out, 30 in
    assert "second_supply_low" not in called_to_mind(ask(run, "connection", **starved))
    assert "second_supply_low" in called_to_mind(ask(run, "connection", **{**starved, "needed": "39"}))  # 69.5 out, 19.5 in


def test_more_than_two_engines_add(run):
    """By hand: 0.434 x 1,000 + 100 = 534 psi are 267 each; with 50 psi at the intake 242."""
    tall = {**TOWER, "climb": "1000"}
    assert "series_over" in called_to_mind(ask(run, "connection", **{**tall, "supply": ""}))
    assert "series_over" not in called_to_mind(ask(run, "connection", **tall))
    assert "series_over" not in called_to_mind(ask(run, "connection", **{**TOWER, "supply": "", "climb": "0", "needed": "300", "sign": "500"}))  # exactly 250 each


@pytest.mark.parametrize(("supply", "is_past"), [("", True), ("25", True), ("26", False)])
def test_one_engine_is_enough(run, supply, is_past):
    """By hand: 405 ft and 100 psi are 275.77; less 25 it is past 250, less 26 it is not. Nothing is said of a second engine that is not there."""
    answer = ask(run, "connection", **{**TOWER, "climb": "405", "engines": "one", "supply": supply})
    assert ("in_series" in called_to_mind(answer)) is is_past
    assert not [each for each in answer["rows"] if each["name"].startswith("series")]


@pytest.mark.parametrize(("entry", "typed", "code"), [
    ("engines", "three", "unknown"), ("between", "rope", "unknown"), ("between_lines", "13", "out_of_range"), ("between_lines", "1.5", "not_whole"),
    ("between_length", "1001", "out_of_range"), ("between_length", "fifty", "not_a_number"), ("limit", "19", "out_of_range")])
def test_bad_input_at_its_field(run, entry, typed, code):
    """Each entry of the second engine is refused at its own field, and not looked at where there is one engine."""
    with pytest.raises(CalcError) as refusal:
        ask(run, "connection", **{**TOWER, entry: typed})
    assert (refusal.value.field, refusal.value.code) == (entry, code)
    if entry != "engines":
        assert ask(run, "connection", **{**TOWER, "engines": "one", entry: typed})["rows"]
