"""One question after each answer: the same as the looks and the ranking it is made of."""
import random

import pytest

from calc.diagnosis import fault, look
from site_src.content import knowledge
from tests.unit.diagnosis.dialogue import ENTRIES, SIGNS, settled

BASE = knowledge.base()


@pytest.mark.parametrize("may_shift", [True, False])
@pytest.mark.parametrize("signs", [{"light_dark": "seen"}, {"moves": "seen"}, {"grinds": "seen", "light_dark": "not_seen"}])
def test_after(run, signs, may_shift):
    """The end is that of the knowledge with or without looks that shift; the ranking comes once there is no more to look at."""
    asked = BASE if may_shift else run("diagnosis.fault", "without_shifts", knowledge=BASE)
    end = run("diagnosis.fault", "next_check", knowledge=asked, signs=signs, role="operator", engine="idle", questions=0)
    answer = run("diagnosis.look", "after", knowledge=BASE, signs=signs, began=[], again=[], role="operator", engine="idle", questions=0, may_shift=may_shift)
    assert answer["end"] == end
    assert answer["ranked"] == (None if end["kind"] == "check" else run("diagnosis.fault", "rank", knowledge=asked, signs=signs))


def test_danger_is_ranked(run):
    """A rig that moves ends it, whatever else may be looked at."""
    answer = run("diagnosis.look", "after", knowledge=BASE, signs={"moves": "seen"}, began=[], again=[], role="operator", engine="idle", questions=0, may_shift=True)
    assert answer["end"]["kind"] == "danger" and answer["ranked"]["alarms"] == ["moves"]


@pytest.mark.parametrize("drive", ["midship", "pto", "front"])
def test_the_rest_is_a_technicians_only_where_it_is(drive):
    """Handed to a technician, whatever was answered before: no look that an operator may still make is left unmade in silence."""
    dice, handed = random.Random(2611), 0
    rig = fault.for_rig(BASE, {"drive": drive})
    for entry in [entry for entry in ENTRIES if any(sign["id"] == entry for sign in rig["signs"])] * 6:
        signs, engine, asked = {entry: "seen"}, "idle", 0
        for _ in range(14):
            answer = look.after(rig, signs, [entry], list(signs), "operator", engine, asked, dice.random() < 0.8)
            end = answer["end"]
            if end["kind"] == "engine" and end["engine"][0] != engine:
                engine = end["engine"][0]
            elif end["kind"] == "check":
                said = dice.choice(["not_seen", "unknown", "unknown"])
                if end["question"]:  # what is said of all its signs at once: an answer without signs, or none
                    signs = {**settled(end, None if said == "unknown" else ""), **signs}
                else:
                    signs[end["sign"]] = said
                asked += 1
            else:
                break
        if end["kind"] != "technician":
            continue
        handed += 1
        for cause in answer["ranked"]["causes"]:
            if cause["id"] in end["left"]:
                open_to_all = [sign for sign in cause["unasked"] if SIGNS[sign]["role"] == "operator"]
                assert all(SIGNS[sign]["engine"] == ["pumping"] for sign in open_to_all), (entry, cause["id"])  # nobody pumps to find out
                assert all(signs[sign] == "unknown" for sign in cause["unsure"])
    assert handed > 3
