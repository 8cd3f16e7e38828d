"""What a question is made of: how near is right, which wrong ways can be told from it, and figures as people say them."""
import pytest

from calc.teaching import drill_parts
from site_src.content import units

US, SI, BAR = units.shown_in("US"), units.shown_in("SI"), units.shown_in("bar")


def test_typed():
    """170 psi within 5: the wye's 10 psi and what is just outside are wrong ways, what counts as right is none."""
    question = drill_parts.typed("pump", US, "pressure", 169.75, 5, {"bed": "A"}, [("sum", {"sum": "170"})], [
        ("far", 159.75), None, ("near", 174.9), ("on_the_edge", 175.0), ("outside", 175.1), ("below", 164.4),
    ])
    assert question == {
        "kind": "pump", "facts": {"bed": "A"},
        "answer": {"way": "typed", "quantity": "pressure", "value": 169.75, "within": 5, "text": "170", "within_text": "5"},
        "working": [{"code": "sum", "facts": {"sum": "170"}}],
        "habits": [{"code": "far", "value": 159.75}, {"code": "outside", "value": 175.1}, {"code": "below", "value": 164.4}],
    }


@pytest.mark.parametrize(("shown", "text", "within_text", "within_psi"), [(SI, "1190", "25", 3.626), (BAR, "11.9", "0.5", 7.252)])
def test_typed_in_metric(shown, text, within_text, within_psi):
    """As a gauge is set: 172 psi are 1,185.9 kPa and 11.86 bar; 5 psi are marks of 25 kPa and 0.5 bar. NIST SP 811: 6.894757 kPa to the psi."""
    answer = drill_parts.typed("pump", shown, "pressure", 172, 5, {}, [], [])["answer"]
    assert (answer["text"], answer["within_text"], answer["within"]) == (text, within_text, pytest.approx(within_psi, abs=0.001))


def test_what_is_no_pressure_is_rounded_as_it_is_read():
    """265.8 gpm as 266; minutes to a tenth."""
    assert drill_parts.typed("tip", US, "flow", 265.8, 10, {}, [], [])["answer"]["text"] == "266"
    assert drill_parts.typed("tank", US, "time", 4.98, 0.5, {}, [], [])["answer"]["text"] == "5.0"


def test_chosen():
    """A habit is an option, and not the right one."""
    question = drill_parts.chosen("lines", ["3", "2", "0"], "2", {"static": "60"}, [("lines", {"drop": "8"})], [("one_off", "3"), ("right", "2"), ("none_such", "1")])
    assert question == {
        "kind": "lines", "facts": {"static": "60"}, "answer": {"way": "chosen", "options": ["3", "2", "0"], "right": "2"},
        "working": [{"code": "lines", "facts": {"drop": "8"}}], "habits": [{"code": "one_off", "value": "3"}],
    }


@pytest.mark.parametrize(("shown", "quantity", "value", "step", "text", "amount"), [
    (US, "pressure", 57.6, 1, "58", 58), (US, "pressure", 57.6, 5, "60", 60),
    (SI, "pressure", 10, 1, "70", 10.1526),  # 68.9 kPa, to 5
    (BAR, "pressure", 10, 1, "0.7", 10.1526),
    (SI, "length", 200, 50, "60", 196.85),  # 60.96 m, to 10
])
def test_even(shown, quantity, value, step, text, amount):
    """A made-up figure is one that people say in their unit, and is worth what it says."""
    told, worth = drill_parts.even(shown, quantity, value, step)
    assert (told, worth) == (text, pytest.approx(amount, abs=0.001))


def test_term():
    """As it is worked with: 8.68 psi, 150 gpm as 1.5 hundreds."""
    assert [drill_parts.term(US, "pressure", 8.68), drill_parts.term(US, "flow", 150, 100)] == ["8.68", "1.5"]


@pytest.mark.parametrize(("system", "is_customary"), [("US", True), ("imperial", True), ("SI", False), ("bar", False)])
def test_is_customary(system, is_customary):
    """Gauges in psi."""
    assert drill_parts.is_customary(units.shown_in(system)) is is_customary
