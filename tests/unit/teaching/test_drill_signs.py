"""Questions of signs: lamps of a split-shaft pump by what lights them, what a lamp proves, where to look first (common practice)."""
import itertools

import pytest

from calc.teaching import drill_signs
from site_src.routes import drill as drill_routes
from tests.unit.teaching.loaded import Loaded

GROUND = drill_routes.tables()
OPTIONS = ["none", "throttle", "engaged", "engaged_throttle", "engaged_ok_throttle"]
OPEN, CLOSED = "open", "closed"


@pytest.mark.parametrize(("throws", "switch", "brake", "gear", "right", "lit"), [
    ((0, 0, 0), OPEN, "off", "neutral", "none", []),
    ((0, 0, 1), OPEN, "off", "pump_gear", "none", []),
    ((0, 1, 0), OPEN, "set", "neutral", "throttle", ["throttle"]),
    ((0, 1, 1), OPEN, "set", "pump_gear", "none", []),
    ((1, 0, 0), CLOSED, "off", "neutral", "engaged", ["engaged"]),
    ((1, 0, 1), CLOSED, "off", "pump_gear", "engaged", ["engaged"]),
    ((1, 1, 0), CLOSED, "set", "neutral", "engaged_throttle", ["engaged", "throttle"]),
    ((1, 1, 1), CLOSED, "set", "pump_gear", "engaged_ok_throttle", ["engaged", "ok", "throttle"]),
])
def test_lamps(throws, switch, brake, gear, right, lit):
    """Engaged is the collar's switch alone; OK is switch, pump gear and brake; throttle ready is OK, or neutral with the brake set."""
    question = drill_signs.lamps("lamps", Loaded(*throws), GROUND, None)
    assert question["kind"] == "lamps" and question["facts"] == {"switch": switch, "brake": brake, "gear": gear}
    assert question["answer"] == {"way": "chosen", "options": OPTIONS, "right": right}
    assert [row["code"] for row in question["working"]] == [("lit_" if lamp in lit else "dark_") + lamp for lamp in ("engaged", "ok", "throttle")]
    assert all(row["facts"] == {} for row in question["working"])
    # throttle ready in neutral is taken for in pump; a lamp is missed where there is one
    habits = {"throttle": [("throttle_is_not_pump", "engaged_ok_throttle")], "none": []}.get(right, [("neutral_lights_throttle", "none")])
    assert [(row["code"], row["value"]) for row in question["habits"]] == habits


def test_every_state_is_as_likely():
    """Each of switch, brake and gear falls by a die of two."""
    dice = Loaded(0, 0, 0)
    drill_signs.lamps("lamps", dice, GROUND, None)
    assert dice.sides == [2, 2, 2]


@pytest.mark.parametrize(("lamp", "right"), [("engaged", "switch"), ("ok", "switch_gear_brake"), ("throttle", "gear_brake_or_neutral")])
def test_what_a_lamp_proves(lamp, right):
    """What lights it and no more; that a lamp proves pressure is the habit; the answers stand in any order."""
    question = drill_signs.proves(f"proves:{lamp}", Loaded(3, 0, 0, 0), GROUND, None)
    assert (question["kind"], question["facts"]) == ("proves", {"lamp": lamp})
    assert question["answer"] == {"way": "chosen", "options": ["pressure", "switch", "switch_gear_brake", "gear_brake_or_neutral"], "right": right}
    assert question["working"] == [{"code": f"proves_{lamp}", "facts": {}}] and question["habits"] == [{"code": "lamp_is_no_pressure", "value": "pressure"}]


def test_first_look():
    """Master as before: past the pump. Master low: the hose of a line that fell further; the intake gone too, supply; steady, the pump."""
    seen = set()
    for picture in range(4):
        for throws in itertools.product(range(4), range(2), range(3)):
            try:
                question = drill_signs.first_look("first_look", Loaded(picture, *throws), GROUND, None)
            except AssertionError:
                continue  # a row of the table that has fewer of them
            facts, right = question["facts"], question["answer"]["right"]
            side = "discharge" if facts["master"] == "usual" else "line" if facts["line"] == "below" else "pump" if facts["intake"] == "steady" else "supply"
            assert right == side and question["kind"] == "first_look" and question["habits"] == []
            assert question["answer"]["options"] == ["supply", "pump", "discharge", "line"]
            assert question["working"] == [{"code": f"side_{side}", "facts": {}}]
            assert facts["master"] != "none" or facts["line"] == "with"  # without pressure in the pump no line stands above it
            seen.add((right, facts["master"]))
    assert seen == {("discharge", "usual"), ("line", "low"), ("supply", "low"), ("supply", "none"), ("pump", "low"), ("pump", "none")}


@pytest.mark.parametrize(("claims", "is_lit"), [([], False), (["a"], False), (["a", "b"], True), (["c"], True), (["b"], False)])
def test_lit(claims, is_lit):
    """All claims of any one row."""
    assert drill_signs.lit([["a", "b"], ["c"]], claims) is is_lit
