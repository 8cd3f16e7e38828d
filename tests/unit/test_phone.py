"""The one door: JSON text in, JSON text out, nothing lost and nothing let through."""
import importlib
import inspect
import json

import pytest

from calc import phone as door
from calc.base.errors import CalcError
from calc.rig import profile as rig_profile
from calc.shift import card
from calc.teaching import drill, handed, practice
from site_src.content import catalogue, data, evidence, fleet, former, knowledge, reckoners, standards, units
from site_src.routes import why
from site_src.routes.drill import tables as drill_tables
from tests.service_records import a_record as a_whole_record
from tests.unit.bay import test_checkoff, test_department, test_limits, test_release, test_rounds
from tests.unit.bay.logs import NOW_MS, defect
from tests.unit.layout.test_answer import OTHER_UNITS, SHELF, UNITS, a_layout, a_line, a_wye, fog
from tests.unit.layout.test_flowing import UNITS as STANDING_UNITS
from tests.unit.service.made import a_plan
from tests.unit.service.test_history import a_dated
from tests.unit.service.test_page import a_record
from tests.unit.service.test_years import a_result
from tests.unit.teaching.test_gear_table import ENTRIES
from tests.unit.teaching.test_practice import LIGHTS, PARAMETERS

PROFILE = fleet.load()["tollgate-engine-1"]  # of our own invention
SEQUENCE = {
    "id": "look", "anchor": "wait", "rig": {"light": ["before", "after"]},
    "steps": [{"id": "wait", "kind": "hold", "hold_s": 3, "proves": ["still"]},
              {"id": "look", "kind": "confirm", "needs": ["still"], "proves": ["seen"]}],
}
STATE = card.start(SEQUENCE, {"light": "after"})
WAITING = card.advance(STATE, {"kind": "hold", "step": "wait", "at_s": 100.25})
AS_IT_STANDS = {**a_layout(a_wye(a_line(), a_line(id="B", height="30"))), "source": {"kind": "fed", "intake": "33"},
                "now": {"pressure": "177.7", "gates": "open", "shut": ["B"]}}
ENDED = practice.advance(practice.begin("to_road", PARAMETERS, LIGHTS, ["no_air"]), {"kind": "end", "how": "stopped"})
LEAKS = data.load("diagnose/water_loss")
GROUND = {**{name: rig_profile.at_hand(PROFILE, catalogue.shelf(), units.shown_in("US"))[name] for name in ("shelf", "rig", "beds")}, **drill_tables(),
          "tips": catalogue.tip_choices()}

CALLS = [
    ("collar.places", {"proofs": data.load("diagnose/collar")["proof"], "seen": {"light": "on", "speedometer": "zero"}}),
    ("examples.compared", {"examples": evidence.examples()[:3]}),
    ("call.shift_seed", {"on_ms": 1.7e12, "offset_min": -300}),
    ("call.call", {"ground": GROUND, "seed": 20786, "replies": [], "units": units.shown_in("US")}),
    ("drill.sitting", {"ground": GROUND, "boxes": {"floors": {"box": 0, "due": 1}}, "on_ms": 1.7e12, "offset_min": -300, "seed": 19, "units": units.shown_in("US")}),
    ("drill.standing", {"ground": GROUND, "boxes": {"floors": {"box": 1, "due": 3}}, "on_ms": 1.7e12, "offset_min": -300, "units": units.shown_in("US")}),
    ("drill.judged", {"question": drill.question(GROUND, "floors", 3, units.shown_in("US")), "reply": "20", "boxes": {}, "card": "floors", "on_ms": 1.7e12,
                      "offset_min": 0, "units": units.shown_in("US")}),
    ("fault.entered", {"knowledge": knowledge.base(), "facts": ["air_up"], "missing": ["pump_light"]}),
    ("fault.for_rig", {"knowledge": knowledge.base(), "rig": PROFILE}),
    ("fault.next_check", {"knowledge": knowledge.base(), "signs": {"light_dark": "seen"}, "role": "operator", "engine": "idle",
                          "questions": 0}),
    ("look.after", {"knowledge": knowledge.base(), "signs": {"light_dark": "seen"}, "began": ["light_dark"], "again": [], "role": "operator", "engine": "idle",
                    "questions": 8, "may_shift": False}),
    ("fault.rank", {"knowledge": knowledge.base(), "signs": {"light_dark": "seen", "no_puff": "unknown"}}),
    ("water_loss.side", {"rows": LEAKS["row"], "seen": {"intake": "zero", "master": "low"}}),
    ("interlock.behind", {"table": data.load("diagnose/interlocks")["table"][0], "lights": {"engaged": "lit", "ok": "dark"}}),
    ("leak.hunt", {"parts": LEAKS["part"], "runs": [{"shut": [], "from": "22", "to": "12"}], "role": "operator", "units": units.shown_in("US")}),
    ("leak_page.answer", {"parts": LEAKS["part"], "plugs": [{"id": "relief", "first": True}], "runs": [{"shut": [], "from": "22", "to": "12"}],
                          "last": None, "listed": ["relief"], "opened": [], "role": "operator", "texts": ["22", ""], "units": units.shown_in("US")}),
    ("leak.vacuum_inhg", {"field": "from", "text": "110@SI", "units": units.shown_in("US")}),
    ("hose.friction_loss_psi", {"coefficient": 15.5, "flow_gpm": 137.3, "length_ft": 333.3}),
    ("hose.friction_loss_psi", {"coefficient": 15.5, "flow_gpm": -1, "length_ft": 333.3}),
    ("entry.added", {"units": OTHER_UNITS, "kind": "pressure", "text": "100@ours", "other": "5", "sign": -1}),
    ("entry.near", {"rows": [{"text": "68", "kind": "pitot", "step": 1}], "decimal": ".", "below": 2, "above": 1}),
    ("entry.stepped", {"text": "6,9", "kind": "pressure", "decimal": ",", "step": 0.5, "direction": 1, "least": None}),
    ("beds_page.answer", {"profile": {**PROFILE, "tank": "big"}, "shelf": catalogue.shelf(), "units": units.shown_in("SI")}),
    ("panel_card.card", {"profile": PROFILE, "shelf": catalogue.shelf(), "units": units.shown_in("SI"), "section": "50@US",
                         "tips": catalogue.tip_choices()}),
    ("rig_page.answer", {"profile": {**PROFILE, "tank": "big", "odd": "1"}, "shelf": catalogue.shelf(), "units": units.shown_in("US"), "texts": [["length", "61@SI"]],
                         "parts": {"beds": True, "figures": True, "measured": {"0": [{"inlet": "150", "outlet": "100", "flow": "150", "length": "200"}]}}}),
    ("rig.at_hand", {"profile": PROFILE, "shelf": catalogue.shelf(), "units": units.shown_in("US")}),
    ("beds_page.answer", {"profile": PROFILE, "shelf": catalogue.shelf(), "units": units.shown_in("US")}),
    ("layout_page.answer", {"layout": a_layout(a_wye(a_line(end=fog("190", "75")), a_line(id="B", height="-33.3"))),
                            "shelf": SHELF, "units": UNITS, "profile": None, "parts": {}, "texts": [["length", "50@ours"]]}),
    ("heights.converted", {"layout": a_layout(a_wye(a_line(), height="30")), "units": UNITS}),
    ("layout_page.answer", {"layout": a_layout(a_line(height="up")), "shelf": SHELF, "units": UNITS, "profile": None, "parts": {}, "texts": []}),
    ("layout_page.answer", {"layout": AS_IT_STANDS, "shelf": SHELF, "units": STANDING_UNITS, "profile": {"pump_rated": "250"}, "texts": [],
                            "parts": {"workings": True, "fall": True, "flowing": True, "at_pump": True,
                                      "bounds": {"line": "A", "reach": {"pump": "", "flow": "", "end": "", "length": "200"}}}}),
    ("away.slept", {"wall_s": 600, "steady_s": 1}),
    ("pause.ticked", {"kind": "hold", "whole_s": 3, "hold": WAITING["hold"], "at_s": 100.6}),
    ("run.advance", {"sequence": SEQUENCE, "lengths": {"look": 20}, "run": {key: value for key, value in WAITING.items() if key != "sequence"},
                     "event": {"kind": "not_seen", "step": "wait", "at_s": 100.6}}),
    ("pump_size.size", {"rated": "1500@US", "units": units.shown_in("US")}),
    ("service.curve", {"plan": a_plan(), "summary": a_result(2026, "annual", 1600), "earlier": [], "units": units.fine("SI")}),
    ("service.standing", {"results": [{"at_ms": 1.7e12, "status": "pass"}], "on_ms": 1.75e12, "interval_days": 365}),
    ("entry.all_shown", {"units": units.fine("SI"), "entries": [["temperature", "50@US"], ["pressure", "10@bar"], ["speed", "x@US"]]}),
    ("service.answer", {"record": a_record(), "units": units.fine("bar")}),
    ("quick.answer", {"baseline": [{"engine_rpm": "1500", "discharge_psi": "150@US"}], "accuracy": {"discharge_psi": 2, "speed_rpm": 10},
                            "readings": [{"engine_rpm": "1650", "discharge_psi": "11.5@bar"}], "quick": {"tolerance_percent": 5, "step_psi": [150]},
                            "units": units.fine("bar")}),
    ("service.baseline", {"content": {"schema": 1, "rig_id": "r", "rig_name": "R", "baseline": {"at_ms": 1, "readings": [
        {"engine_rpm": "1000", "discharge_psi": "60@US"}]}}, "units": units.fine("US")}),
    ("service.judged", {"record": a_whole_record(), "standards": standards.every(), "former": former.every(), "units": units.fine("US")}),
    ("service.history", {"results": [a_dated(2020, "acceptance", 1600), a_dated(2022.3, "annual", 1650)], "speed_accuracy_rpm": 10,
                                 "units": units.fine("SI")}),
    ("shift.start", {"sequence": SEQUENCE, "rig": {"light": "after"}}),
    ("shift.start", {"sequence": {}, "rig": {}}),
    ("shift.advance", {"state": WAITING, "event": {"kind": "tick", "at_s": 100.6}}),
    ("shift.advance", {"state": STATE, "event": {"kind": "seen", "step": "look", "at_s": 1}}),
    ("gear_table.answer", {"entries": {**ENTRIES, "speed_shown": "15@US"}, "gears": [{"gear": "3", "ratio": "1.4"}], "units": units.shown_in("SI")}),
    ("warming.answer", {"entries": {"power": "60@US", "trapped": "10@US", "tank": "750@US", "rise": "15@US"}, "units": units.shown_in("bar")}),
    ("bench.begin", {"task": "to_road", "parameters": PARAMETERS, "lights": LIGHTS, "faults": ["no_air"], "units": units.shown_in("SI")}),
    ("bench.advance", {"run": practice.begin("to_road", PARAMETERS, LIGHTS, []), "event": {"kind": "tick", "passed_s": 0.4},
                       "units": units.shown_in("SI")}),
    ("handed.plant", {"task": "to_pump", "fault": "no_air", "salt": 7}),
    ("handed.sent_back", {"run": ENDED, "named": "unsure", "proof": "clunk", "salt": 7}),
    ("debrief.kind", {"code": handed.plant("to_road", None, 7)}),
    ("debrief.begin", {"code": handed.plant("to_road", None, 7), "parameters": PARAMETERS, "lights": LIGHTS, "units": units.shown_in("SI")}),
    ("debrief.debrief", {"code": handed.sent_back(ENDED, None, None, 7), "models": why.models(), "units": units.shown_in("bar")}),
    *(("water_page.answer", {"page": page, "entries": reckoners.opening(page, "metric"), "shelf": reckoners.shelf(page),
                             "units": units.shown_in("SI"), "texts": []}) for page in reckoners.PAGES),
    ("board.done_at", {"date": "2026-05-14", "on_ms": NOW_MS, "offset_min": 0}),
    ("board.until", {"dates": [{"id": "gauge", "date": "2027-05-14"}], "on_ms": NOW_MS, "offset_min": 0}),
    ("board.due", {"rows": [{"id": "gear_oil", "months": 12, "days": None, "hours": None, "miles": None, "by": []}], "records": [], "on_ms": NOW_MS, "offset_min": 0}),
    ("limits.judged", {"limit": test_limits.VACUUM, "text": "22@US", "own": None, "earlier": [], "units": test_limits.US}),
    ("limits.shown", {"limit": test_limits.VACUUM, "own": None, "units": test_limits.US}),
    ("records.fields", {}),
    ("records.taken", {"arriving": [defect("d1"), 3], "standing": [defect("d1")]}),
    ("checkoff.entered", {"before": None, "row": test_checkoff.row(), "last_ms": 0}),
    ("checkoff.merged", {"one": [test_checkoff.row()], "other": [3]}),
    ("checkoff.standing", {"records": [test_checkoff.signed()], "trainee": "Ann Bell"}),
    ("checkoff.times", {"runs": [], "titles": ["Back to road"]}),
    ("release.lacks", {"table": test_release.TABLE, "entered": test_release.WHOLE}),
    ("release.proofs", {"table": test_release.TABLE, "opened": ["pump"], "defects": []}),
    ("rounds.hurried", {"answers": [{"item": "oil", "took_s": 1}], "words": {"oil": 20}}),
    ("department.applied", {"rows": [test_department.BELTS, test_department.VACUUM], "due": test_department.DUE, "lists": test_department.LISTS,
                            "checks": [test_department.OWN, test_department.LIMIT, {"item": "no", "act": "change"}], "units": test_limits.US}),
    ("rounds.items", {"rows": test_rounds.ROWS, "name": "weekly", "profile": PROFILE, "settings": {}, "after": ["foam"]}),
    ("rounds.progress", {"records": [test_rounds.BEGUN], "id": "c1"}),
    ("rounds.settings", {"records": []}),
    ("standing.of_rig", {"records": [defect("d1")]}),
    ("standing.worst_first", {"rigs": [{"id": "b", "state": "in_service", "overdue": 0, "open": 0, "next_day": None}]}),
]


def behind(name):
    """The function behind a door."""
    return getattr(importlib.import_module(f"calc.{door.DOORS[name][0]}"), name.split(".")[1])


def loss_of(length_ft):
    """The arguments of the loss in a hose, its length as JSON text."""
    return f'{{"coefficient": 15.5, "flow_gpm": 150, "length_ft": {length_ft}}}'


LOSS = loss_of(200)


def through(run, name, arguments_json):
    """What the page gets for this call."""
    return json.loads(run("phone", "call", name=name, arguments_json=arguments_json))


def near(told):
    """Equal to nine figures in every number, and exactly in all else."""
    if isinstance(told, dict):
        return {key: near(value) for key, value in told.items()}
    if isinstance(told, (list, tuple)):
        return [near(value) for value in told]
    return pytest.approx(told, rel=1e-9) if isinstance(told, float) else told


@pytest.mark.parametrize(("name", "arguments"), CALLS)
def test_as_direct(run, name, arguments):
    """The door answers, or refuses, as the function behind it does on the desk."""
    try:
        direct = {"ok": behind(name)(**arguments)}
    except CalcError as error:
        direct = {"error": {**error.facts, "field": error.field, "code": error.code}}
    assert through(run, name, json.dumps(arguments)) == near(direct)


def test_every_door():
    """Every door is knocked on above, and its arguments are those of its function, in order; none is called as what is held."""
    assert set(door.DOORS) == {name for name, _ in CALLS}
    for name, (_, arguments) in door.DOORS.items():
        assert arguments == tuple(inspect.signature(behind(name)).parameters)
        assert "held" not in arguments


def hold(run, name, value):
    """Hold a value; the tests hold under the numbers below 32, as the page does."""
    assert json.loads(run("phone", "hold", name=str(name), value_json=json.dumps(value))) == {"ok": True}


def numbered(arguments):
    """Text of a call all of whose arguments are held, in order, from 0 on."""
    return json.dumps({"held": {argument: str(number) for number, argument in enumerate(arguments)}})


@pytest.mark.parametrize(("name", "arguments"), CALLS)
def test_held_as_given(run, name, arguments):
    """A function answers what is held as what is handed over, time after time: it changes nothing that is held."""
    for number, value in enumerate(arguments.values()):
        hold(run, number, value)
    handed = through(run, name, json.dumps(arguments))
    for _ in range(2):
        assert through(run, name, numbered(arguments)) == handed


@pytest.mark.parametrize(("name", "arguments"), CALLS)
def test_held_as_it_was(name, arguments):
    """Of what is held, not even a part that the answer does not show is changed by a call."""
    values = [json.loads(json.dumps(value)) for value in arguments.values()]
    for number, value in enumerate(values):
        door.hold(str(number), json.dumps(value))
    door.call(name, numbered(arguments))
    assert [door._held[str(number)] for number in range(len(values))] == values


def test_held_again(run):
    """What is held again under a name takes the place of what was held; the rest is handed over as before."""
    named = json.dumps({"coefficient": 15.5, "flow_gpm": 150, "held": {"length_ft": "0"}})
    hold(run, 0, 200)
    assert through(run, "hose.friction_loss_psi", named) == near({"ok": 69.75})  # by hand: 15.5 x 1.5^2 x 2
    hold(run, 0, 100)
    assert through(run, "hose.friction_loss_psi", named) == near({"ok": 34.875})  # by hand: 15.5 x 1.5^2


@pytest.mark.parametrize(("held", "field", "code"), [
    ('{"length_ft": "nothing by this name"}', "length_ft", "not_held"),
    ('{"length_ft": null}', "length_ft", "not_held"),
    ('{"length_ft": ["0"]}', "length_ft", "not_held"),
    ('{"fall_ft": "0"}', "fall_ft", "unknown_argument"),
    ('{"flow_gpm": "0"}', "flow_gpm", "twice"),
    ("{}", "length_ft", "missing"),
    ('["length_ft"]', "held", "not_an_object"),
    ('"0"', "held", "not_an_object"),
])
def test_not_held(run, held, field, code):
    """What is named and not held, or both named and handed over, is refused at its argument."""
    hold(run, 0, 200)
    error = through(run, "hose.friction_loss_psi", f'{{"coefficient": 15.5, "flow_gpm": 150, "held": {held}}}')["error"]
    assert (error["field"], error["code"]) == (field, code)


@pytest.mark.parametrize(("value_json", "code"), [("", "not_json"), ("{", "not_json"), (" " * 1_000_000 + "1", "too_large")])
def test_hold_refuses(run, value_json, code):
    """What cannot be read is not held, and what was held under its name stays."""
    hold(run, 0, 200)
    error = json.loads(run("phone", "hold", name="0", value_json=value_json))["error"]
    assert (error["field"], error["code"]) == ("value", code)
    assert through(run, "hose.friction_loss_psi", '{"coefficient": 15.5, "flow_gpm": 150, "held": {"length_ft": "0"}}') == near({"ok": 69.75})


def test_most_held(run, monkeypatch):
    """32 names are held; one more is refused, and those that are held can be replaced."""
    monkeypatch.setattr(door, "_held", {})  # other tests of this process hold some
    for number in range(32):
        hold(run, number, 1)
    assert json.loads(run("phone", "hold", name="32", value_json="1")) == {"error": {"field": "name", "code": "too_many", "most": 32}}
    hold(run, 0, 2)


@pytest.mark.parametrize(
    ("name", "arguments_json", "field", "code"),
    [
        ("hose.nothing", "{}", "name", "unknown"),
        ("", "{}", "name", "unknown"),
        ("phone.call", "{}", "name", "unknown"),
        ("hose.friction_loss_psi", "", "arguments", "not_json"),
        ("hose.friction_loss_psi", "{", "arguments", "not_json"),
        ("hose.friction_loss_psi", "length_ft=1", "arguments", "not_json"),
        ("hose.friction_loss_psi", LOSS + "2", "arguments", "not_json"),
        ("hose.friction_loss_psi", "[1]", "arguments", "not_an_object"),
        ("hose.friction_loss_psi", "1", "arguments", "not_an_object"),
        ("hose.friction_loss_psi", "null", "arguments", "not_an_object"),
        ("hose.friction_loss_psi", "{}", "coefficient", "missing"),
        ("hose.friction_loss_psi", LOSS[:-1] + ', "fall_ft": 1}', "fall_ft", "unknown_argument"),
        ("hose.friction_loss_psi", loss_of("1e999"), "length_ft", "too_large"),
        ("hose.friction_loss_psi", loss_of("null"), "length_ft", "not_a_number"),
        ("hose.friction_loss_psi", loss_of("true"), "length_ft", "not_a_number"),
        ("hose.friction_loss_psi", LOSS + " " * 1_000_000, "arguments", "too_large"),
    ],
)
def test_refusal(run, name, arguments_json, field, code):
    """What cannot be called is refused by field and code."""
    error = through(run, name, arguments_json)["error"]
    assert (error["field"], error["code"]) == (field, code)
