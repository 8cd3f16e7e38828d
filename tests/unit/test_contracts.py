"""The contracts of calc's doors: each has one, and what is not of its shape fails the test that calls it."""
import copy
import json

import jsonschema_rs
import pytest

from calc import phone
from calc.base.errors import CalcError
from site_src.content import reckoners, units
from tests import bridge, contracts
from tests.conftest import runner

CALL = {"entries": reckoners.opening("tank", "customary"), "shelf": {}, "units": units.shown_in("US")}


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
        (("sum",), None, '"sum" is a required property'),
        (("odd",), 1, "'odd' was unexpected"),
        (("figure", "text"), "None", "/figure/text"),
        (("figure", "text"), 12.5, "/figure/text"),
        (("facts", "flow"), ["150"], "/facts/flow"),
        (("rows", 0, "sources"), "tank", "/rows/0/sources"),
        (("rows", 0, "minutes"), 5, "/rows/0"),
        (("picture", "marks", 0, "left"), "0.5", "/picture"),
    ],
)
def test_a_drift_fails_the_test_that_calls(place, value, said):
    """A name gone or new, a number for a text, a text for a list: the call fails, and says where."""
    def drifting(request):
        return json.dumps({"ok": changed(json.loads(bridge.call(request))["ok"], place, value)})

    run = runner(drifting)
    with pytest.raises(AssertionError, match="tank.answer answer") as fault:
        run("supply.tank_answer", "answer", **CALL)
    assert said in str(fault.value)
    answer = run.unheld("supply.tank_answer", "answer", **CALL)
    through_the_door = runner(lambda _: json.dumps({"ok": json.dumps({"ok": answer})}))
    with pytest.raises(AssertionError, match="tank.answer answer"):
        through_the_door("phone", "call", name="tank.answer", arguments_json=json.dumps(CALL))


def test_arguments_of_an_answered_call_are_held(run):
    """What calc lets pass and no page sends is a drift of the arguments; what calc refuses is its own to refuse."""
    with pytest.raises(AssertionError, match="tank.answer arguments units"):
        run("supply.tank_answer", "answer", **{**CALL, "units": {**CALL["units"], "odd": 1}})
    with pytest.raises(CalcError):
        run("supply.tank_answer", "answer", **{**CALL, "entries": 3})
