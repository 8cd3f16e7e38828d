"""A shift card as an operator touches it."""
import contextlib
import re

from playwright.sync_api import TimeoutError as Late
from playwright.sync_api import expect

from calc.shift import laws
from site_src.content import data
from tests.phone.sources import source
from tests.phone.words import KINDS, SITE, STEPS, answer_of

NOT_SEEN = re.compile("^(" + "|".join(re.escape(SITE["shift"][key]) for key in ("not_seen", "neither", "unsure")) + ")$")
SETTLE_MS = 450  # a card takes no answer to a new step for 400

# Ten times as fast, but never by leaps: a page whose machine stalled for a moment has not slept. The next page goes on from there.
QUICK = """const every = setInterval;
window.setInterval = (act, ms, ...more) => every(act, ms / 10, ...more);
for (const clock of [performance, Date]) {
  const now = clock.now.bind(clock);
  let last = now(), shown = last;
  try { if (clock === Date) shown += Number(localStorage.ahead ?? 0); } catch { /* a page without storage */ }
  clock.now = () => {
    const at = now();
    shown += Math.min((at - last) * 10, 2000);
    last = at;
    try { if (clock === Date) localStorage.ahead = shown - at; } catch { /* likewise */ }
    return shown;
  };
}"""


# the rig of a person who gives the first answer to each question about it
RIG = {"drive": "midship", "shift_control": "air", "transmission": "automatic", "pressure_control": "governor"}


QUESTIONS = {step["id"] for step in data.steps().values() if "asks" in step}


def steps_of(name, rig=RIG):
    """Names of the steps of a card for a rig, its questions left out."""
    sequence = data.sequence(name)
    known = {"pressure_control": "governor", **rig}
    [steps, *_] = laws.variants(sequence, {**{question: "unknown" for question in sequence["rig"]}, **known})
    return [step["id"] for step in steps if "asks" not in step]


class Card:
    """An open shift card: the step it shows, its answers, its stops."""

    def __init__(self, page, name, rig=RIG):
        self.page = page
        self.name = name
        self.rig = rig
        self.steps = steps_of(name, rig)
        self.title = page.get_by_role("heading", level=2)
        self.stop = page.get_by_role("alert")
        self._step_of = {STEPS[step["id"]]["act"]: step["id"] for step in data.card_steps(name)}

    def button(self, key):
        """A button by its key among the words of shift; that no sign came is said in the way of the step."""
        return self._named(NOT_SEEN if key == "not_seen" else SITE["shift"][key])

    def _named(self, name):
        return self.page.get_by_role("button", name=name, exact=True)

    def shows(self, step):
        expect(self.title).to_have_text(STEPS[step]["act"])

    def step(self):
        """The step on the screen."""
        return self._step_of[self.title.inner_text()]

    def press(self, key):
        """Touch a button by its key until the card has answered."""
        self._touch(self.button(key))

    def _touch(self, button):
        """Touch a button until the card has answered: once a new step has settled, and again only long after, lest the touch meet the next step."""
        main = self.page.get_by_role("main")
        was = main.inner_text()
        for _ in range(4):
            self.settle()
            with contextlib.suppress(Late):  # the answer took the button away
                button.tap(timeout=2000)
            try:
                return expect(main).not_to_have_text(was, use_inner_text=True, timeout=3000)
            except AssertionError:
                continue
        raise AssertionError(f"never answered: {button}")

    def settle(self):
        """Let the step on the screen stand until it takes an answer."""
        self._pass(SETTLE_MS)

    def _pass(self, ms, clock="performance"):
        """Let a clock of the page's own pass a time."""
        began_ms = self.page.evaluate(f"{clock}.now()")
        while self.page.evaluate(f"{clock}.now()") < began_ms + ms:
            pass

    def read(self):
        """Let the time pass that the step on the screen takes to read."""
        self._pass(6000, "Date")  # no step has more than 60 words

    def begin_pause(self):
        """Begin the pause of the step on the screen."""
        self._touch(self._named(STEPS[self.step()]["hold"]))

    def see(self, answer=None):
        """Confirm the step on the screen: through its pause, or with an answer where it asks."""
        step = self.step()
        is_timed = KINDS[step] in ("hold", "limit")
        if is_timed:
            self.begin_pause()
            expect(self.button("seen")).to_be_enabled()
        answer = answer or self.rig.get(data.steps()[step].get("asks")) or answer_of(step)
        self._touch(self._named(STEPS[step]["answer"][answer]) if answer else self.button("seen"))
        with contextlib.suppress(AssertionError):  # a running time, or a turned screen, changes the page before the answer does
            expect(self.title).not_to_have_text(STEPS[step]["act"], timeout=3000)
        if step not in QUESTIONS and self._step_of.get(self.title.inner_text()) in QUESTIONS:
            self.see()

    def tell_rig(self):
        """Answer what the card asks about the rig."""
        expect(self.title).not_to_have_text("")
        while "asks" in data.steps()[self.step()]:
            self.see()

    def run_out(self):
        """Confirm every step to the end; the steps that were shown, in order."""
        shown = []
        while (title := self.title.inner_text()) != SITE["shift"]["done"]:
            shown.append(self._step_of[title])
            self.see()
        return shown

    def run_to(self, step):
        """Confirm steps, guards that are asked again included, until this one is shown."""
        for _ in range(3 * len(self.steps)):
            if self.step() == step:
                return
            self.see()
        raise AssertionError(f"never shown: {step}")


def hasten(handset):
    """Let every clock of a phone run ten times as fast, for tests that are not about time."""
    handset.context.add_init_script(QUICK)
    return handset


PUT = """async ([store, profile]) => {
  await (await import(store)).keepRecord("rigs", profile);
  localStorage.setItem("rig", profile.id);
}"""


def beside(handset, **answers):
    """Let a phone stand beside a rig whose profile says this."""
    page = handset.open("404.html")
    profile = {"schema": 1, "id": "rig-1", "name": "Pump of the day", "units": "US", **answers}
    page.evaluate(PUT, [source(page, "shared/store.js"), profile])
    page.close()
    return profile


def open_card(handset, name, first=None, rig=RIG):
    """A card, once it shows a step: its first after the questions about the rig, or the one said."""
    card = Card(handset.open(f"shift/{name}/"), name, rig)
    if first is None:
        card.tell_rig()
    card.shows(first or card.steps[0])
    return card
