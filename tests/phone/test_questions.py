"""What the pages themselves ask of calc, and what it answers them in the interpreter, is of the shapes that tests/contracts gives."""
import json

import pytest

from tests import contracts
from tests.phone.crossings import count
from tests.phone.handset import until
from tests.phone.screens import SCREENS

# screens that ask as they open
ASKING = [
    "diagnose/", "diagnose/collar/", "diagnose/leak/", "diagnose/lights/", "diagnose/water/", "diagnosis at a cause", "diagnosis contradicted",
    "pressure/", "pressure with a wye", "foam/", "water answered", *(f"water/{page}/" for page in ("connection", "draft", "fireflow", "hoselay", "hydrant", "joint", "relay", "shuttle", "tank")),
    "shift/draft/", "card pausing", "card asking", "card in danger", "practice running", "why/heat/", "why/speeds/",
    "check after repair", "years of tests", "test failed", "test site", "test run", "test sheet",
]


def drifts(crossed):
    """Where questions and answers are not of their doors' shapes; what is held stands in its place."""
    held, told = {}, []
    for crossing in crossed:
        if crossing["door"].startswith("hold "):
            held[crossing["door"].removeprefix("hold ")] = json.loads(crossing["text"])
            continue
        arguments = json.loads(crossing["text"])
        arguments.update({argument: held[name] for argument, name in arguments.pop("held", {}).items()})
        call = {"name": crossing["door"], "arguments_json": json.dumps(arguments)}
        told += contracts.drifts_of_call("phone", "call", call, crossing["answer"])
    return told


@pytest.mark.parametrize("name", ASKING)
def test_a_page_keeps_to_the_contracts(handset, name):
    """Each question that a screen came by, and each answer."""
    page = SCREENS[name](count(handset))
    until(page, "window.crossings?.some(({ door }) => !door.startsWith('hold '))")
    assert drifts(page.evaluate("() => window.crossings")) == []


def test_a_drift_is_seen():
    """An argument of another shape, one that is held, and an answer: each is named."""
    asked = {"door": "pump_size.size", "text": '{"rated": 1000, "held": {"units": "0"}}', "answer": '{"ok": 3}'}
    said = drifts([{"door": "hold 0", "text": '{"shown": 1, "systems": {}}'}, asked])
    assert [each.split(":")[0] for each in said] == ["pump_size.size arguments rated", "pump_size.size arguments units/shown", "pump_size.size answer"]
