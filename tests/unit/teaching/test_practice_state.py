"""The practice rig at its start, what it shows, and where each act turns from right to wrong."""
import copy

import pytest

from calc.teaching import outcome, practice
from site_src.content import data
from tests.unit.teaching.test_practice import BACK, LIGHTS, PARAMETERS, PROOF, SOUND_SHIFT, through

NOTES = data.words("practice")["note"]
IN_PUMP = {"collar": "pump", "valve": "pump", "selector": "pump", "road_air": 0, "pump_air": 1}
IDLE_RPM = PARAMETERS["idle_rpm"]


def placed(run, task="to_pump", faults=(), parameters=PARAMETERS, **train):
    """A run with its power train as given, and what it then shows."""
    begun = run("teaching.practice", "begin", task=task, parameters=parameters, lights=LIGHTS, faults=list(faults))
    begun["train"].update(train)
    begun["shown"] = run("teaching.practice", "shown", run=begun)
    return begun


def after(run, now, kind, to):
    return run("teaching.practice", "advance", run=now, event={"kind": kind, "how" if kind == "end" else "to": to})


def codes(now):
    return [note["code"] for note in now["notes"]]


@pytest.mark.parametrize(
    ("task", "faults", "train"),
    [
        ("to_pump", [], {"engine_rpm": 700, "throttle": "idle", "gear": "neutral", "selector": "road", "valve": "road", "collar": "road",
                         "road_air": 1, "pump_air": 0, "shaft_rpm": 0, "pump_rpm": 0, "circulating": False}),
        ("to_pump", ["no_air"], {"road_air": 0, "pump_air": 0}),
        # by hand: 1400 rpm less 6 % is 1316, the pump 2.3 times that
        ("to_road", [], {"engine_rpm": 1400, "throttle": "raised", "gear": "drive", "selector": "pump", "valve": "pump", "collar": "pump",
                         "road_air": 0, "pump_air": 1, "shaft_rpm": pytest.approx(1316), "pump_rpm": pytest.approx(3026.8),
                         "circulating": True}),
        ("to_road", ["no_air"], {"road_air": 0, "pump_air": 0}),
    ],
)
def test_how_a_run_begins(run, task, faults, train):
    """A run begins at idle in road, or pumping; without air neither side holds any."""
    began = run("teaching.practice", "begin", task=task, parameters=PARAMETERS, lights=LIGHTS, faults=faults)
    assert {key: began["train"][key] for key in train} == train
    rest = {"brake_set": True, "pushed_s": 0, "grinding": False, "rise_f": 0, "moved": False}
    assert {key: value for key, value in began["train"].items() if key in rest} == rest
    assert (began["at_s"], began["notes"], began["ended"], began["verdict"], began["faults"]) == (0, [], None, None, faults)


def test_what_is_shown(run):
    """In road at idle nothing turns, strains or warms; pumping, all that a person could see says so."""
    still = {"speed_mph": 0, "pressure_psi": 0, "shaft_turning": False, "pump_turning": False, "strains": False, "is_hot": False,
             "is_warm": False, "raised": False}
    dark, lit = ({name: value for name in ("engaged", "ok")} for value in (False, True))
    at_rest = {**dark, "throttle": True}  # neutral with the brake set readies the throttle
    assert placed(run)["shown"] == {**still, "true": at_rest, "lights": at_rest, "stand": ["neutral", "parking_brake"], "sounds": ["clunk_road"]}
    pumping = {**lit, "throttle": True}
    # by hand: 1316 x 60 / (5.38 x 495) = 29.65 mph; 50 x (1316 / 700)^2 = 176.7 psi
    assert placed(run, "to_road")["shown"] == {
        **still, "true": pumping, "lights": pumping, "stand": ["switch_closed", "pump_gear", "parking_brake"], "raised": True,
        "shaft_turning": True, "pump_turning": True, "speed_mph": pytest.approx(29.65, abs=0.01), "pressure_psi": pytest.approx(176.7, abs=0.1),
        "sounds": ["clunk_pump", "loads", "pump", "raised", "water"],
    }


@pytest.mark.parametrize(
    ("train", "name", "is_so"),
    [
        # a shaft below one turn a minute stands
        ({"shaft_rpm": 1}, "shaft_turning", False), ({"shaft_rpm": 1.1}, "shaft_turning", True),
        ({"pump_rpm": 1}, "pump_turning", False), ({"pump_rpm": 1.1}, "pump_turning", True),
        # the engine is raised from more than 50 rpm above idle on
        ({"engine_rpm": IDLE_RPM + 50}, "raised", False), ({"engine_rpm": IDLE_RPM + 50.5}, "raised", True),
        ({"rise_f": 19.9}, "is_warm", False), ({"rise_f": 20}, "is_warm", True),
        ({"rise_f": 59.9}, "is_hot", False), ({"rise_f": 60}, "is_hot", True),
        # only drive with the collar in road strains at the brake
        ({"gear": "drive"}, "strains", True), ({"gear": "drive", **IN_PUMP}, "strains", False), (IN_PUMP, "strains", False),
        ({"pump_rpm": 1}, "pressure_psi", 0),
    ],
)
def test_where_a_sign_begins(run, train, name, is_so):
    """Each sign stands from its limit on, not before."""
    assert placed(run, **train)["shown"][name] == is_so


def test_no_water_shows_no_pressure(run):
    """A pump that turns without water shows nothing on its gauge."""
    assert placed(run, "to_road", faults=["no_water"])["shown"]["pressure_psi"] == 0


@pytest.mark.parametrize(
    ("train", "to", "noted"),
    [
        ({"selector": "road"}, "centre", ["sound_move"]),
        ({"shaft_rpm": 1}, "centre", ["sound_move"]), ({"shaft_rpm": 1.1}, "centre", ["turning"]),
        ({"engine_rpm": IDLE_RPM + 50}, "centre", ["sound_move"]), ({"engine_rpm": IDLE_RPM + 50.5}, "centre", ["above_idle"]),
        ({"gear": "drive"}, "centre", ["in_gear"]),
        # a fifth of the air left in the old side is all but silent
        ({"selector": "centre", "road_air": 0.2}, "pump", ["sound_move"]), ({"selector": "centre", "road_air": 0.21}, "pump", ["no_pause"]),
        ({"selector": "centre", "pump_air": 0.2}, "road", ["sound_move"]), ({"selector": "centre", "pump_air": 0.21}, "road", ["no_pause"]),
        ({"selector": "road"}, "road", []),
    ],
)
def test_where_a_move_of_the_selector_turns_wrong(run, train, to, noted):
    """The selector is moved in neutral, at idle, with the shaft at rest and the old side empty, or it is noted what was wrong."""
    now = after(run, placed(run, **train), "selector", to)
    assert (codes(now), now["train"]["selector"]) == (noted, to)


@pytest.mark.parametrize(
    ("train", "to", "noted", "gear"),
    [
        ({**IN_PUMP, "engine_rpm": IDLE_RPM + 50}, "drive", ["gear_taken"], "drive"),
        ({**IN_PUMP, "engine_rpm": IDLE_RPM + 50.5}, "drive", ["gear_refused"], "neutral"),
        ({**IN_PUMP, "gear": "drive", "engine_rpm": 1400}, "neutral", ["neutral"], "neutral"),
        ({"collar": "between"}, "drive", ["not_home"], "drive"), ({}, "drive", ["strain"], "drive"), ({}, "neutral", [], "neutral"),
    ],
)
def test_gear(run, train, to, noted, gear):
    """Drive is taken at idle only; out of it is always possible."""
    now = after(run, placed(run, **train), "gear", to)
    assert (codes(now), now["train"]["gear"]) == (noted, gear)


@pytest.mark.parametrize(
    ("train", "faults", "noted"),
    [
        ({"gear": "drive", "circulating": True, **IN_PUMP}, [], "throttle_answered"),
        ({"gear": "drive", **IN_PUMP}, [], "no_flow"),
        ({"gear": "drive", "circulating": True, **IN_PUMP}, ["no_water"], "dry"),
        # in neutral the throttle is ready and the pump engaged, but it is not OK to pump; a dead bulb leaves one proof out
        ({"circulating": True, **IN_PUMP}, [], "unproved"),
        ({"gear": "drive", "circulating": True, **IN_PUMP}, ["bulb_dead"], "unproved"),
        ({"gear": "drive", "circulating": True}, ["switch_closed"], "unproved"),
    ],
)
def test_raising_the_throttle(run, train, faults, noted):
    """The throttle is raised with every proof and water moving, or it is noted what was wrong."""
    raised = after(run, placed(run, faults=faults, **train), "throttle", "raised")
    assert (codes(raised), raised["train"]["throttle"]) == ([noted], "raised")
    assert after(run, raised, "throttle", "idle")["train"]["throttle"] == "idle"


@pytest.mark.parametrize("fault", ["throttle_dead", "switch_open"])
def test_a_dead_throttle(run, fault):
    """The first try of a throttle that does not answer is the warning, whatever was noted before; only the second is a harm."""
    now = after(run, placed(run, faults=[fault], gear="drive", **IN_PUMP), "circulate", True)
    once = after(run, now, "throttle", "raised")
    twice = after(run, once, "throttle", "raised")
    dark = ["lamp_dark"] if fault == "switch_open" else []  # the lamps are dark there: it stands in the debrief whether the throttle answers or not
    assert (codes(once), codes(twice)) == (["water_moved", "dead_throttle", *dark], ["water_moved", "dead_throttle", *dark, "second_try", *dark])
    assert twice["train"]["throttle"] == "idle"


AGAIN = [("throttle", "idle"), 1, ("gear", "neutral"), 5, ("selector", "centre"), 2, ("selector", "pump"), 2]


def test_a_dead_throttle_clears_once(run):
    """Idle, NEUTRAL, and the shift once more from its first step: then the gear is no act past a proof and one more try no harm; the next one is."""
    dead = through(run, "to_pump", *SOUND_SHIFT[:8], ("throttle", "raised"), 1, *AGAIN, ("gear", "drive"), 2, ("throttle", "raised"), 1, faults=["throttle_dead"])
    assert codes(dead).count("dead_throttle") == 2 and not {"second_try", "past_proof", "lamp_dark"} & set(codes(dead))
    stopped = practice.advance(dead, {"kind": "end", "how": "stopped"})
    assert stopped["verdict"]["outcome"] == "found"
    assert codes(after(run, dead, "throttle", "raised"))[-1] == "second_try"
    unproved = through(run, "to_pump", *SOUND_SHIFT[:8], ("throttle", "raised"), 1, ("gear", "neutral"), 1, ("gear", "drive"), 1, faults=["throttle_dead"])
    assert codes(unproved)[-1] == "past_proof"


def test_a_throttle_before_its_lamps_clears(run):
    """Raised in neutral with OK dark on a rig whose throttle is dead, it stands in the debrief, breaks nothing, and a sound rig answers later."""
    dark = through(run, "to_pump", *SOUND_SHIFT[:4], ("throttle", "raised"), ("end", "stopped"), faults=["throttle_dead"])["verdict"]
    assert (dark["outcome"], dark["harm"]) == ("late", ["lamp_dark"])


GOOD_PUMP = {**IN_PUMP, "gear": "drive", "engine_rpm": 1400, "throttle": "raised", "circulating": True, "pump_rpm": IDLE_RPM * 2.3}


@pytest.mark.parametrize(
    ("task", "train", "idle_psi", "outcome"),
    [
        ("to_pump", GOOD_PUMP, 50, "good"),
        *(("to_pump", {**GOOD_PUMP, **change}, 50, "unreached") for change in (
            {"collar": "between"}, {"gear": "neutral"}, {"engine_rpm": IDLE_RPM}, {"circulating": False}, {"pump_rpm": 0})),
        # at idle speed the pump shows what it is said to show at idle; from more than 10 psi on, that is pressure
        ("to_pump", GOOD_PUMP, 10.5, "good"), ("to_pump", GOOD_PUMP, 10, "unreached"),
        ("to_road", {"collar": "road", "gear": "neutral", "engine_rpm": IDLE_RPM}, 50, "good"),
        *(("to_road", {"collar": "road", "gear": "neutral", "engine_rpm": IDLE_RPM, **change}, 50, "unreached") for change in (
            {"collar": "between"}, {"collar": "pump"}, {"gear": "drive"}, {"engine_rpm": 1400})),
    ],
)
def test_what_is_reached(run, task, train, idle_psi, outcome):
    """A run that is ended as finished is good only where each part of the task is done."""
    now = placed(run, task, parameters={**PARAMETERS, "idle_psi": idle_psi}, **train)
    assert after(run, now, "end", "finished")["verdict"]["outcome"] == outcome


def test_the_way_back_to_the_road(run):
    """What went well is told each once, in its order, with the faults there were and the time of each note."""
    now = through(run, "to_road", *BACK, *PROOF, ("end", "finished"))
    assert now["verdict"] == {"outcome": "good", "right": ["sound_move", "home_road", "gear_taken"], "harm": [], "took_s": 15, "away_s": 0, "faults": []}
    assert [note["at_s"] for note in now["notes"] if note["code"] in ("neutral", "gear_taken")] == [3, 13, 14]
    assert through(run, "to_pump", ("end", "stopped"), faults=["no_air"])["verdict"]["faults"] == ["no_air"]


def test_a_run_is_left_as_it_was():
    """An event gives a new run, so that a step back is possible."""
    begun = practice.begin("to_pump", PARAMETERS, LIGHTS, [])
    before = copy.deepcopy(begun)
    practice.advance(begun, {"kind": "selector", "to": "centre"})
    practice.advance(begun, {"kind": "tick", "passed_s": 0.5})
    assert begun == before


def test_every_note_has_its_words(run):
    """What a run can note is said in words, and there is no word that nothing notes."""
    others = {"neutral", "gear_refused", "dead_throttle"}
    assert set(outcome.GOODS) | set(outcome.HARMS) | others == set(NOTES)
    assert set(codes(through(run, "to_pump", *SOUND_SHIFT))) <= set(NOTES)


@pytest.mark.parametrize(("dark", "psi", "is_past"), [
    (None, 50, False),  # both lamps lit and a pressure: pumping as it should
    ("ok", 50, True),  # one dark lamp means stop and report
    ("engaged", 50, True),
    (None, outcome.SHOWS_PSI, True),  # what a gauge does not show yet is no pressure
])
def test_what_is_wrong_before_the_way_back(dark, psi, is_past):
    """Back to road begins while pumping: a lamp that is dark then, or no pressure, is a proof that failed before the first act."""
    first = practice.begin("to_road", PARAMETERS, LIGHTS, [])
    lights = {"engaged": True, "ok": True, "throttle": True}
    first = {**first, "shown": {**first["shown"], "lights": {**lights, dark: False} if dark else lights, "pressure_psi": psi}}
    run = {**first, "shown": {**first["shown"], "lights": {**lights, "engaged": False}}}  # back in road, its lamp out
    assert outcome.is_past_proof(run, first) is is_past


@pytest.mark.parametrize(("times", "noted"), [(0, "dead_throttle"), (1, "dead_throttle"), (2, "second_try")])
def test_how_often_a_shift_is_begun_again(run, times, noted):
    """Once more from the first step, as the order dead_throttle says; a third try is a harm, however the shift was made."""
    now = placed(run, faults=["throttle_dead"], gear="drive", circulating=True, **IN_PUMP)
    now["notes"] = [{"at_s": 0, "code": code} for code in ("dead_throttle", "sound_move", "home_pump")] * times
    assert codes(after(run, now, "throttle", "raised"))[-1] == noted


def test_times_away_add_up(run):
    """By hand: half a second, then 90 s; a day is the most of one."""
    now = placed(run)
    for passed_s in (0.5, 90, 86400):
        now = run("teaching.practice", "advance", run=now, event={"kind": "away", "passed_s": passed_s})
    assert (now["at_s"], now["away_s"]) == (86490.5, 86490.5)
