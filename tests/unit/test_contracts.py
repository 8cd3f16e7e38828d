"""The contracts of calc's doors: each has one, and what is not of its shape fails the test that calls it."""
import copy
import json

import jsonschema_rs
import pytest

from calc import phone
from calc.base.errors import CalcError
from site_src.content import catalogue, fleet, units
from tests import bridge, contracts
from tests.conftest import runner

CALL = {"profile": {**fleet.load()["tollgate-engine-1"], "idle": "9"}, "shelf": catalogue.shelf(), "units": units.shown_in("US"), "section": "50@US",
        "tips": catalogue.tip_choices()}


@pytest.mark.parametrize("door", phone.DOORS)
def test_every_door_has_its_shapes(door):
    """A door's contract names its arguments, in order, and its answer, and is JSON Schema."""
    shapes = contracts.tables()[door]
    assert (set(shapes), tuple(shapes["arguments"])) == ({"arguments", "answer"}, phone.DOORS[door][1])
    jsonschema_rs.meta.validate(contracts.schema(door, "answer"))
    for name in shapes["arguments"]:
        jsonschema_rs.meta.validate(contracts.schema(door, "arguments", name))


def test_every_shape_is_of_use():
    """No shape stands in a table that nothing refers to."""
    text = json.dumps([contracts.expanded(shape) for shape in contracts.tables().values()])
    assert [name for name in contracts.tables() if contracts.is_shared(name) and f'"#/$defs/{name}"' not in text] == []


def changed(answer, place, value):
    """A copy of an answer with another value at a place; None: without it."""
    answer = copy.deepcopy(answer)
    *above, last = place
    part = answer
    for step in above:
        part = part[step]
    if value is None:
        del part[last]
    else:
        part[last] = value
    return answer


@pytest.mark.parametrize(
    ("place", "value", "said"),
    [
        (("notes",), None, '"notes" is a required property'),
        (("odd",), 1, "'odd' was unexpected"),
        (("blocks", 0, "code"), "None", "/blocks/0/code"),
        (("blocks", 0, "rows", 0, "over"), 1, "/blocks/0/rows/0/over"),
        (("blocks", 0, "head"), "tank", "/blocks/0/head"),
        (("notes", 0, "code"), 12.5, "/notes/0/code"),
        (("faults", 0, "least"), "300", "/faults/0/least"),
        (("faults", 0, "allowed", "least"), "None", "/faults/0/allowed/least"),
    ],
)
def test_a_drift_fails_the_test_that_calls(place, value, said):
    """A name gone or new, a number for a text, a text for a list: the call fails, and says where."""
    def drifting(request):
        return json.dumps({"ok": changed(json.loads(bridge.call(request))["ok"], place, value)})

    run = runner(drifting)
    with pytest.raises(AssertionError, match="panel_card.card answer") as fault:
        run("rig.panel_card", "card", **CALL)
    assert said in str(fault.value)
    answer = run.unheld("rig.panel_card", "card", **CALL)
    through_the_door = runner(lambda _: json.dumps({"ok": json.dumps({"ok": answer})}))
    with pytest.raises(AssertionError, match="panel_card.card answer"):
        through_the_door("phone", "call", name="panel_card.card", arguments_json=json.dumps(CALL))


def test_arguments_of_an_answered_call_are_held(run):
    """What calc lets pass and no page sends is a drift of the arguments; what calc refuses is its own to refuse."""
    with pytest.raises(AssertionError, match="panel_card.card arguments units"):
        run("rig.panel_card", "card", **{**CALL, "units": {**CALL["units"], "odd": 1}})
    with pytest.raises(CalcError):
        run("rig.panel_card", "card", **{**CALL, "section": "x"})
