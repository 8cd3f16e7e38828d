"""A person with a shift card in hand."""
from site_src.content import data

RIG = {"drive": "midship", "shift_control": "air", "transmission": "automatic"}


class Hand:
    """A person with the card in hand; the clock is theirs."""

    def __init__(self, run, card, rig=RIG):
        self.run = run
        self.at_s = 1000.0
        self.state = run("shift.card", "start", sequence=data.sequence(card), rig=rig)

    @property
    def offer(self):
        return self.state["offer"]

    def send(self, kind, **more):
        event = {"kind": kind, "at_s": self.at_s, **({"left_s": self.at_s} if kind == "resume" else {}), **more}
        self.state = self.run("shift.card", "advance", state=self.state, event=event)
        return self

    def tick(self, seconds, every=0.25):
        for _ in range(round(seconds / every)):
            self.at_s += every
            self.send("tick")
        return self

    def see(self, answer=None):
        """Give the wished-for answer to whatever is offered."""
        step = self.offer["step"]
        if self.offer["kind"] in ("hold", "limit"):
            self.send("hold", step=step).tick(5)
        more = {"answer": answer or self.fitting_answer()} if self.offer["kind"] == "ask" else {}
        self.at_s += 1
        return self.send("seen", step=step, **more)

    def fitting_answer(self, place=0):
        """The first answer to what is offered, or the one at a place, that keeps to this card; None where nothing is asked."""
        sequence = self.state["sequence"]
        asks = next(step for step in sequence["steps"] if step["id"] == self.offer["step"]).get("asks")
        fitting = [answer for answer in self.offer["answers"] if answer in sequence["fits"].get(asks, [answer])]
        return fitting[place] if fitting else None

    def see_until(self, step):
        while self.offer["step"] != step:
            self.see()
        return self
