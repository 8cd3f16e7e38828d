"""One question after each answer: the same as the looks and the ranking it is made of."""
import pytest

from site_src.content import knowledge

BASE = knowledge.base()


@pytest.mark.parametrize("may_shift", [True, False])
@pytest.mark.parametrize("signs", [{"light_dark": "seen"}, {"moves": "seen"}, {"grinds": "seen", "light_dark": "not_seen"}])
def test_after(run, signs, may_shift):
    """The end is that of the knowledge with or without looks that shift; the ranking comes once there is no more to look at."""
    asked = BASE if may_shift else run("diagnosis.fault", "without_shifts", knowledge=BASE)
    end = run("diagnosis.fault", "next_check", knowledge=asked, signs=signs, role="operator", engine="idle", questions=0)
    answer = run("diagnosis.look", "after", knowledge=BASE, signs=signs, role="operator", engine="idle", questions=0, may_shift=may_shift)
    assert answer["end"] == end
    assert answer["ranked"] == (None if end["kind"] == "check" else run("diagnosis.fault", "rank", knowledge=BASE, signs=signs))


def test_danger_is_ranked(run):
    """A rig that moves ends it, whatever else may be looked at."""
    answer = run("diagnosis.look", "after", knowledge=BASE, signs={"moves": "seen"}, role="operator", engine="idle", questions=0, may_shift=True)
    assert answer["end"]["kind"] == "danger" and answer["ranked"]["alarms"] == ["moves"]
