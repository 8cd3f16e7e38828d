"""A card's run without its sequence, and its pause: the same as the whole card at every step."""
import pytest

from calc.base.errors import CalcError
from site_src.content import data
from tests.unit.shift.hand import Hand

LENGTHS = {"idle": 5, "brake": 20}  # words


class Light(Hand):
    """A person whose card travels without its sequence, and whose pauses tick by themselves; each event is held to the whole card."""

    def send(self, kind, **more):
        before = {key: value for key, value in self.state.items() if key != "sequence"}
        event = {"kind": kind, "at_s": self.at_s, **({"left_s": self.at_s} if kind == "resume" else {}), **more}
        after = self.run("shift.run", "advance", sequence=self.state["sequence"], lengths=LENGTHS, run=before, event=event)
        super().send(kind, **more)
        self.quick = after.pop("quick", None)
        self.unseen = after.pop("unseen")
        assert after == {key: value for key, value in self.state.items() if key != "sequence"}
        return self

    def tick(self, seconds, every=0.25):
        for _ in range(round(seconds / every)):
            offer, hold = self.offer, self.state["hold"]
            self.at_s += every
            after = self.run("shift.pause", "ticked", kind=offer["kind"], whole_s=offer["whole_s"], hold=hold, at_s=self.at_s)
            super().send("tick")
            assert (after["hold"], after["hold_left_s"]) == (self.state["hold"], self.offer["hold_left_s"])
        return self


@pytest.mark.parametrize("card", ["scene", "road"])
def test_the_same_run(run, card):
    """From the first step to done, pauses included, a run is the card's state less its sequence."""
    hand = Light(run, card)
    while hand.state["status"] == "running":
        hand.see()
    assert hand.state["status"] == "done"


def test_quick_once_done(run):
    """Once it is done, a run names the steps that were answered faster than they can be read, at ten words a second."""
    hand = Light(run, "scene")
    while hand.state["status"] == "running":
        hand.see()  # each answered 1 s after it came: time for 10 words
    assert hand.quick == ["brake"]


@pytest.mark.parametrize(("kind", "whole_s", "held_s", "passed_s", "after_s", "left_s"), [
    ("hold", 3, 1, 0.25, 1.25, 1.75),  # by hand
    ("hold", 3, 1, 60, 1.5, 1.5),  # a clock that leaps counts for half a second
    ("hold", 3, 2.75, 0.5, 3.25, 0),
    ("hold", 3, 1, -60, 1, 2),  # and one that went back for none
    ("limit", 45, 1, 60, 61, 0),  # a limit counts all that passed
])
def test_ticked(run, kind, whole_s, held_s, passed_s, after_s, left_s):
    """A beat counts up to half a second of a hold, and all of it of a limit."""
    after = run("shift.pause", "ticked", kind=kind, whole_s=whole_s, hold={"last_s": 1000, "held_s": held_s}, at_s=1000 + passed_s)
    assert after == {"hold": {"last_s": 1000 + passed_s, "held_s": after_s}, "hold_left_s": left_s}


@pytest.mark.parametrize("at_s", [None, "1", 1e12])
def test_no_time(run, at_s):
    """What is no time of a clock is refused."""
    with pytest.raises(CalcError) as refusal:
        run("shift.pause", "ticked", kind="hold", whole_s=3, hold={"last_s": 0, "held_s": 0}, at_s=at_s)
    assert (refusal.value.field, refusal.value.code) == ("at_s", "not_a_time")


def test_damaged_run(run):
    """A run that is none is refused as a state is."""
    with pytest.raises(CalcError) as refusal:
        run("shift.run", "advance", sequence=data.sequence("scene"), lengths={}, run=None, event={"kind": "danger", "at_s": 1})
    assert (refusal.value.field, refusal.value.code) == ("state", "damaged")
