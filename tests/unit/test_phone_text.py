"""How long and how deep a call's text may be, on both Pythons."""
import json

import pytest

from tests.unit.layout.test_answer import SHELF, UNITS, a_layout, a_line, a_wye
from tests.unit.test_phone import LOSS, SEQUENCE, loss_of, near, through


@pytest.mark.parametrize(("characters", "told"), [
    (1_000_000, {"ok": 69.75}),  # by hand: 15.5 x 1.5^2 x 2
    (1_000_001, {"error": {"field": "arguments", "code": "too_large", "most": 1_000_000}}),
])
def test_longest_text(run, characters, told):
    """Text of 1,000,000 characters is read, one more is not."""
    assert through(run, "hose.friction_loss_psi", LOSS + " " * (characters - len(LOSS))) == near(told)


DEEP = "[" * 20_000 + "]" * 20_000
NOT_READ = ("arguments", "too_deep")  # the desk's JSON reader stops; the phone's reads on, and the function refuses


@pytest.mark.parametrize(
    ("name", "arguments_json", "refusals"),
    [
        ("hose.friction_loss_psi", DEEP, {NOT_READ, ("arguments", "not_an_object")}),
        ("hose.friction_loss_psi", DEEP[:-1], {NOT_READ, ("arguments", "not_json")}),
        ("hose.friction_loss_psi", loss_of(DEEP), {NOT_READ, ("length_ft", "not_a_number")}),
        ("shift.advance", '{"event": {}, "state": ' + DEEP + "}", {NOT_READ, ("state", "damaged")}),
        # the answer holds the sequence, and would be as deep
        ("shift.start", json.dumps({"sequence": SEQUENCE, "rig": {}}).replace('"rig"', f'"x": {DEEP}, "rig"', 1),
         {NOT_READ}),
    ],
    ids=["bare", "cut", "argument", "state", "echo"],
)
def test_too_deep(run, name, arguments_json, refusals):
    """Text nested too deep is refused by field and code on both Pythons, never a crash."""
    error = through(run, name, arguments_json)["error"]
    assert (error["field"], error["code"]) in refusals


def test_too_deep_lay(run):
    """A layout deeper than the page allows is refused as such by both."""
    line = a_line()
    for number in range(40):
        line = a_wye(line, id=f"S{number}")
    asked = {"layout": a_layout(line), "shelf": SHELF, "units": UNITS, "profile": None, "parts": {}, "texts": []}
    error = through(run, "layout_page.answer", json.dumps(asked))["ok"]["refusal"]
    assert (error["field"], error["code"], error["most"]) == ("layout", "too_deep", 20)
