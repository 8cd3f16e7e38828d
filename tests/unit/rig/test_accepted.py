"""Whatever profile is accepted, every page that hangs on a rig has its answer: nothing throws, in any unit, and no bed is lost on the way."""
import random

import pytest

from calc.base.errors import CalcError
from calc.rig import profile as rig_profile
from site_src.content import catalogue, units
from tests.unit.rig.accepted import SHELF, SYSTEMS, accepted

PROFILES = 60


@pytest.mark.parametrize("seed", range(3))
def test_every_answer_of_a_rig(run, seed):
    luck = random.Random(seed)
    for _ in range(PROFILES):
        profile, shown = accepted(luck), units.shown_in(luck.choice(SYSTEMS))
        hand = run("rig.profile", "at_hand", profile=profile, shelf=SHELF, units=shown)
        assert not hand["faulty_beds"] and "faults" not in hand["rig"], profile
        beds = run("rig.beds_page", "answer", profile=profile, shelf=SHELF, units=shown)
        assert len(beds["rows"]) == len(profile["beds"]) and not beds["is_faulty"], profile
        card = run("rig.panel_card", "card", profile=profile, shelf=catalogue.shelf(), units=shown, section="50@US", tips=[])
        assert not card["faults"], profile
        for bed in profile["beds"]:
            answered(run, bed, hand["shelf"], shown)


def answered(run, bed, shelf, shown):
    """The Pressure page of a bed: a number, or a refusal by a name that the page has words for."""
    try:
        answer = run("layout.answer", "answer", layout=rig_profile.layout_of(bed), shelf=shelf, units=shown)
    except CalcError as refusal:
        assert refusal.field == "layout" or refusal.facts.get("line"), (refusal.field, refusal.code, bed)
    else:
        assert 0 <= answer["pressure_psi"] <= 2000, bed
