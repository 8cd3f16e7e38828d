"""What a rig is known to be rules signs and causes out of the diagnosis, and never more than it should."""
import itertools

import pytest

from calc.diagnosis import fault
from tests.unit.diagnosis.dialogue import BASE, SIGNS

SMALL = {"signs": [
    {"id": "dark", "role": "operator", "engine": ["idle"], "effort": 1, "danger": 0},
    {"id": "bent", "role": "technician", "engine": ["off"], "effort": 3, "danger": 0},
    {"id": "puff", "role": "operator", "engine": ["idle"], "effort": 1, "danger": 0, "applies": {"shift_control": ["air"]}},
    {"id": "moves", "role": "operator", "engine": ["idle"], "effort": 1, "danger": 0, "alarm": True},
], "causes": [
    {"id": "leak", "likelihood": "common", "shows": ["dark"], "may": ["puff"]},
    {"id": "fork", "likelihood": "rare", "shows": ["dark", "bent"], "applies": {"drive": ["midship"]}},
], "excludes": [], "facts": {}}


def shown_by(rig):
    """The signs that the base offers of a rig."""
    return {sign["id"] for sign in fault.for_rig(BASE, rig)["signs"]}


def test_rig_rules_signs_out(run):
    """A sign goes with the last cause that could show it, and with a rig that has no such part; danger never goes."""
    def left(rig):
        return [sign["id"] for sign in run("diagnosis.fault", "for_rig", knowledge=SMALL, rig=rig)["signs"]]

    assert left({}) == ["dark", "bent", "puff", "moves"]
    assert left({"drive": "pto"}) == ["dark", "puff", "moves"]
    assert left({"drive": "midship", "shift_control": "manual"}) == ["dark", "bent", "moves"]
    assert shown_by({}) == set(SIGNS)


@pytest.mark.parametrize(
    ("rig", "gone"),
    [
        ({"drive": "front"}, {"light_dark", "no_clunk", "grinds", "range_refused", "speed_zero", "road_no_drive", "pto_dark", "exhaust_wet"}),
        ({"drive": "pto"}, {"light_dark", "no_clunk", "range_refused", "speed_zero", "road_no_drive", "exhaust_wet"}),
        ({"drive": "midship", "shift_control": "manual"}, {"no_puff", "exhaust_wet", "hiss_stays", "exhaust_faint", "motor_quiet", "pto_dark"}),
        ({"drive": "midship", "transmission": "manual"}, {"range_refused", "display_neutral", "other_range", "ratio_falls"}),
    ],
)
def test_no_sign_of_a_part_the_rig_has_not(rig, gone):
    """A front mount has no shift, a hand lever has no air, a clutch pedal has no lock-up: none of it is offered."""
    assert not gone & shown_by(rig)


def test_no_cause_waits_for_a_sign_its_rig_cannot_show():
    """Whatever is known of a rig, each cause left to it keeps all of its signs: else it could never stand."""
    questions = {"drive": ["midship", "pto", "front", "rear_shaft", "rear_pto", None], "shift_control": ["air", "electric", "manual", None],
                 "transmission": ["automatic", "manual", None], "pump_stages": ["1", "2", None]}
    for answers in itertools.product(*questions.values()):
        rig = dict(zip(questions, answers, strict=True))
        for cause in fault.for_rig(BASE, rig)["causes"]:
            assert set(cause["shows"]) <= shown_by(rig), (rig, cause["id"])


def test_card_enters_with_no_sign_that_its_rig_has_not(run):
    """A card's pause at the centre says that air puffed; of a lever that says nothing."""
    lever = fault.for_rig(BASE, {"drive": "midship", "shift_control": "manual"})
    told = run("diagnosis.fault", "entered", knowledge=lever, facts=["centre_paused", "engine_idle"], missing=["pump_light"])
    assert told == {"engine_above_idle": "not_seen", "light_dark": "seen"}
