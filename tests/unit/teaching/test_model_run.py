"""How a run should go: in the order of the cards, and stopped where a planted fault first shows to somebody at the rig."""
import math

import pytest

from calc.base.errors import CalcError
from calc.teaching import model_run, practice
from site_src.content import data
from tests.unit.teaching.test_practice import LIGHTS, PARAMETERS


def model(run, task, *faults):
    return run("teaching.model_run", "model_run", task=task, parameters=PARAMETERS, lights=LIGHTS, faults=list(faults))


# Where each fault shows first, by what a person sees, hears or feels; from the interlocks and proofs of the cards (common practice)
STOPS = [
    ("to_pump", "no_air", ("selector", "centre"), "exhaust"),
    ("to_pump", "selector_stuck", ("selector", "centre"), "exhaust"),
    ("to_pump", "collar_stuck", ("selector", "pump"), "clunk_pump"),
    ("to_pump", "switch_closed", (None, None), "starts_dark"),
    ("to_pump", "switch_open", ("selector", "pump"), "lamp_engaged"),
    ("to_pump", "bulb_dead", ("selector", "pump"), "lamp_engaged"),
    ("to_pump", "no_water", ("gear", "drive"), "pressure"),
    ("to_pump", "throttle_dead", ("throttle", "raised"), "speeds_up"),
    ("to_road", "no_air", ("selector", "centre"), "exhaust"),
    ("to_road", "selector_stuck", ("selector", "centre"), "exhaust"),
    ("to_road", "collar_stuck", ("selector", "road"), "clunk_road"),
    ("to_road", "switch_closed", ("selector", "road"), "lamp_out"),
    ("to_road", "switch_open", (None, None), "starts_lit"),
    ("to_road", "bulb_dead", (None, None), "starts_lit"),
    ("to_road", "no_water", (None, None), "starts_pumping"),
    ("to_road", "throttle_dead", (None, None), "starts_raised"),
]


@pytest.mark.parametrize(("task", "fault", "act", "sign"), STOPS)
def test_stopped_where_the_fault_shows(run, task, fault, act, sign):
    """The last step is the one whose sign does not come; every sign before it came."""
    answer = model(run, task, fault)
    last = answer["steps"][-1]
    assert answer["how"] == "stopped"
    assert ((last["kind"], last["to"]), last["sign"], last["shows"]) == (act, sign, False)
    assert all(step["shows"] for step in answer["steps"][:-1])


# What contradicts at the stop, as interlocks and proofs of the cards have it (common practice): a silent control, no clunk, a lamp that does not agree
PROOFS = [
    ("to_pump", "no_air", ["air", "clunk", "engaged"]), ("to_pump", "selector_stuck", ["air", "clunk", "engaged"]), ("to_pump", "collar_stuck", ["clunk", "engaged"]),
    ("to_pump", "switch_closed", ["engaged"]), ("to_pump", "switch_open", ["engaged"]), ("to_pump", "bulb_dead", ["engaged"]),
    ("to_pump", "no_water", ["gauge"]), ("to_pump", "throttle_dead", ["throttle"]),
    ("to_road", "collar_stuck", ["clunk", "engaged"]), ("to_road", "switch_closed", ["engaged"]), ("to_road", "switch_open", ["engaged", "ok", "throttle"]),  # the throttle interlock hangs on the same switch: the engine falls to idle
    ("to_road", "bulb_dead", ["engaged"]), ("to_road", "no_water", ["gauge"]), ("to_road", "throttle_dead", ["throttle"]),
    ("to_pump", "tank_shut", ["gauge"]), ("to_road", "tank_shut", ["gauge"]),
]


@pytest.mark.parametrize(("task", "fault", "proofs"), PROOFS)
def test_the_proofs_that_contradict(run, task, fault, proofs):
    """Each fault has its proofs that fail, up to the gear that is not taken after one; each of them can be named, in words."""
    assert set(proofs) <= set(model_run.PROOFS) == set(data.words("practice")["proof"]) - {"ask", "unsure", "right", "wrong", "none"}
    assert run("teaching.model_run", "proofs", task=task, parameters=PARAMETERS, lights=LIGHTS, fault=fault) == proofs


@pytest.mark.parametrize(
    ("task", "acts"),
    [  # the order of the into-pump and to-road cards
        ("to_pump", [None, "centre", "pump", "drive", True, "raised"]),
        ("to_road", [None, "idle", "neutral", "centre", "road", "drive", "neutral"]),
    ],
)
def test_a_sound_rig_is_finished(run, task, acts):
    """With nothing planted every sign comes, in the order of the cards, and nothing is harmed."""
    answer = model(run, task)
    assert (answer["how"], [step["to"] for step in answer["steps"]]) == ("finished", acts)
    now = practice.begin(task, PARAMETERS, LIGHTS, [])
    for step in [*answer["steps"][1:], {"kind": "end", "to": None, "at_s": answer["at_s"]}]:
        while now["at_s"] < step["at_s"] - 0.05:
            now = practice.advance(now, {"kind": "tick", "passed_s": 0.1})
        now = practice.advance(now, {"kind": step["kind"], "to": step["to"], "how": "finished"})
    assert (now["verdict"]["outcome"], now["verdict"]["harm"]) == ("good", [])


@pytest.mark.parametrize(
    ("task", "place", "acts"),
    [("to_pump", 3, [None, "centre", "pump", "drive", ("tank", True), True, "raised"]), ("to_road", 0, [None, ("tank", True), "idle", "neutral", "centre", "road", "drive", "neutral"])],
)
def test_a_shut_tank_valve_is_opened_and_the_run_goes_on(run, task, place, acts):
    """No pressure with tank-to-pump shut: it is opened, the gauge comes up, and the rest follows. Source: the order line_lost, tank-to-pump open first."""
    answer = model(run, task, "tank_shut")
    assert answer["how"] == "finished"
    assert [(step["kind"], step["to"]) if step["kind"] == "tank" else step["to"] for step in answer["steps"]] == acts
    assert [step["shows"] for step in answer["steps"]].index(False) == place
    assert (answer["steps"][place + 1]["sign"], answer["steps"][place + 1]["shows"]) == ("pressure", True)


def test_the_shaft_is_waited_for(run):
    """Back to road, the selector moves no sooner than the shaft takes to stand: 3.99 s from idle by the closed form of test_practice."""
    steps = {step["to"]: step["at_s"] for step in model(run, "to_road")["steps"][:4]}
    assert steps["centre"] - steps["neutral"] >= 3.99


def test_the_engine_is_waited_for(run):
    """Back to road, the gear goes no sooner than the engine is near idle, within a tick: the 700 rpm above it are 50 after tau ln 14 (closed form)."""
    steps = {step["to"]: step["at_s"] for step in model(run, "to_road")["steps"][:3]}
    assert steps["neutral"] - steps["idle"] == pytest.approx(PARAMETERS["engine_s"] * math.log(14), abs=0.15)


@pytest.mark.parametrize(("task", "fault", "at_s"), [("to_pump", "no_air", 11), ("to_pump", "switch_closed", 0.1)])
def test_how_long_a_sign_is_waited_for(run, task, fault, at_s):
    """3 s the lamp is watched to stay dark, and 8 s, twice what the shaft takes to stand, no exhaust comes; a lamp that is lit is seen at once."""
    assert model(run, task, fault)["at_s"] == pytest.approx(at_s, abs=0.15)  # a tick


@pytest.mark.parametrize(("task", "pairs"), [("to_pump", [("no_air", "selector_stuck"), ("switch_open", "bulb_dead")]), ("to_road", [("no_air", "selector_stuck"), ("switch_open", "bulb_dead")])])
def test_faults_that_look_alike(run, task, pairs):
    """A silent exhaust does not say whether air or valve failed, nor a dark lamp whether switch or bulb; the rest stand alone."""
    for fault in practice.powertrain.FAULT_CODES:
        partners = [code for pair in pairs if fault in pair for code in pair if code != fault]
        assert run("teaching.model_run", "alike", task=task, parameters=PARAMETERS, lights=LIGHTS, fault=fault) == partners


def test_unknown_fault(run):
    """A fault that is none of the rig's is refused."""
    with pytest.raises(CalcError) as refusal:
        run("teaching.model_run", "alike", task="to_pump", parameters=PARAMETERS, lights=LIGHTS, fault="ghost")
    assert (refusal.value.field, refusal.value.code, refusal.value.facts) == ("faults", "unknown", {"fault": "ghost"})


def test_every_sign_has_words():
    """Each sign has its two sentences: what to see, and what it means that it did not come."""
    signs = {sign for steps in model_run.STEPS.values() for _, awaited in steps for sign in awaited}
    assert {name for sign in signs for name in (sign, f"no_{sign}")} == set(data.words("practice")["sign"])
