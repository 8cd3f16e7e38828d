"""A shift card as an operator touches it."""
from playwright.sync_api import expect

from tests.phone.words import CARDS, KINDS, SITE, STEPS, answer_of


class Card:
    """An open shift card: the step it shows, its answers, its stops."""

    def __init__(self, page, name):
        self.page = page
        self.steps = CARDS[name]["steps"]
        self.title = page.get_by_role("heading", level=2)
        self.stop = page.get_by_role("alert")
        self._step_of = {STEPS[step]["act"]: step for step in self.steps}

    def button(self, key):
        """A button by its key among the words of shift."""
        return self.page.get_by_role("button", name=SITE["shift"][key], exact=True)

    def shows(self, step):
        expect(self.title).to_have_text(STEPS[step]["act"])

    def step(self):
        """The step on the screen."""
        return self._step_of[self.title.inner_text()]

    def pause_key(self):
        """The button that begins the pause of the step on the screen."""
        return self.page.get_by_role("button", name=STEPS[self.step()]["hold"], exact=True)

    def pause(self):
        """Begin the pause and wait until it is over."""
        self.pause_key().tap()
        expect(self.button("seen")).to_be_enabled()

    def see(self, answer=None):
        """Confirm the step on the screen: through its pause, or with an answer where it asks."""
        step = self.step()
        if KINDS[step] == "hold":
            self.pause()
        answer = answer or answer_of(step)
        key = self.page.get_by_role("button", name=STEPS[step]["answer"][answer], exact=True) if answer else self.button("seen")
        self._touch_until_gone(key, STEPS[step]["act"])

    def _touch_until_gone(self, key, act):
        """Touch, and touch again where the card waits a moment before it takes an answer to a new step."""
        for _ in range(20):
            key.tap()
            try:
                return expect(self.title).not_to_have_text(act, timeout=250)
            except AssertionError:
                continue
        raise AssertionError(f"not taken: {act}")

    def run_to(self, step):
        """Confirm steps, guards that are asked again included, until this one is shown."""
        for _ in range(2 * len(self.steps)):
            if self.step() == step:
                return
            self.see()
        raise AssertionError(f"never shown: {step}")


def open_card(handset, name, first=None):
    """A card, once it shows a step: its first, or the one said."""
    card = Card(handset.open(f"shift/{name}/"), name)
    card.shows(first or card.steps[0])
    return card
