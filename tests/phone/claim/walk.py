"""A walk over the Pressure page: touches and typing at random, from a seed, as a person might who tries everything."""
import pathlib

from playwright.sync_api import expect

from tests.phone.claim import desk
from tests.phone.handset import read_in
from tests.phone.words import SITE

READ = pathlib.Path(__file__).with_name("read.js").read_text(encoding="utf-8")
WORDS = SITE["pressure"]
MOST_LINES = 6
PLAUSIBLE = {
    "length": (0, 25, 50, 75, 100, 150, 200, 250, 400, 600, 1000), "height": (0, 5, 10, 12, 30, 50, 108, 150, -10, -40),
    "loss": (0, 5, 10, 15, 25, 40), "flow": (20, 60, 95, 125, 150, 185, 250, 325, 500, 750, 1000), "least": (30, 60, 100), "loss_at": (300, 500, 1000), "device_most": (500, 1000),
    "greatest": (100, 150, 250), "nozzle_pressure": (40, 50, 75, 80, 100, 120), "inlet_pressure": (20, 50, 100, 150),
}
METRIC = {"length": 0.3, "height": 0.3, "loss": 7, "flow": 4, "least": 4, "loss_at": 4, "device_most": 4, "greatest": 4, "nozzle_pressure": 7, "inlet_pressure": 7}
SLIPS = ("", "12o", "1e3", "--5", "1..5", "ten")
NUMBERS = {WORDS[name]: name for name in PLAUSIBLE}
ADDED = ("add_wye", "add_twin", "add_line")


# Scroll as a hand does: the left end of a line into the middle of what plate, tray and dock leave of the screen.
CLEAR = """(key) => {
  const box = (part) => document.querySelector(part).getBoundingClientRect();
  const bottom = Math.min(innerHeight, ...[".tray", ".dock"].map((part) => box(part).top).filter((top) => top > 0));
  scrollBy({ top: key.getBoundingClientRect().top + 30 - (box(".pressure-plate").bottom + bottom) / 2, behavior: "instant" });
}"""


class Walk:
    """One walk on an open Pressure page; `steps` tells what was done, for the one who must find out why a claim failed."""

    def __init__(self, page, chance):
        self.page, self.chance, self.steps = page, chance, []

    def read(self):
        return self.page.evaluate(READ)

    def step(self, shown):
        """One thing a person may do with what is shown."""
        act = self.chance.choices(
            (self.type, self.choose, self.line, self.build, self.second, self.ready, self.nudge, self.undo, self.units, self.again, self.look),
            (8, 8, 4, 5, 3, 1, 3, 1, 1, 1, 1),
        )[0]
        act(shown)

    def settings(self):
        return self.page.locator("[data-settings]")

    def note(self, *what):
        self.steps.append(" ".join(str(part) for part in what))

    def open(self, *wanted):
        """Open a part of the line at random, of those that hold what is wanted."""
        tabs = self.settings().locator(".tab").all()
        for tab in self.chance.sample(tabs, len(tabs)):
            tab.tap()
            if self.settings().locator(", ".join(wanted)).count():
                return

    def look(self, shown):
        """Turn the picture over, shut or open a line there, and turn it back: what is asked stays what it was."""
        self.note("look at what flows")
        turn = self.page.locator(".dock .key-act")
        turn.tap()
        self.page.locator("button.lay-end").first.tap()
        turn.tap()

    def type(self, shown):
        """Touch a number and type another over it; what was typed is what must stand there."""
        self.open("input[inputmode=decimal]")
        fields = self.settings().locator("input[inputmode=decimal]")
        place = self.chance.randrange(fields.count())
        field = fields.nth(place)
        label = self.page.locator(f"label[for='{field.get_attribute('id')}']").text_content().strip()
        name = NUMBERS[label]
        typed = self.chance.choice(SLIPS) if self.chance.random() < 0.06 else self._amount(name, desk.system_of(shown))
        self.note("type", typed or "nothing", "into", label)
        field.tap()
        if typed:
            self.page.keyboard.type(typed)
        else:
            self.page.keyboard.press("Backspace")
        stands = field.input_value()
        assert stands == typed, f"{stands!r} stands where {typed!r} was typed into {label}"

    def _amount(self, name, system):
        amount = self.chance.choice(PLAUSIBLE[name])
        if system == "bar" and METRIC[name] == 7:
            return f"{amount * 0.07:.1f}"
        return str(round(amount * METRIC[name])) if system in ("SI", "bar") else str(amount)

    def choose(self, shown):
        """Another hose, nozzle, tip, number of hoses side by side, or device."""
        self.open("fieldset.chips")
        groups = self.settings().locator("fieldset.chips").all()
        group = self.chance.choice(groups)
        legend = group.locator("legend").text_content().strip()
        chips, options = group.locator("label.chip"), group.locator("select option:not([value=''])")
        place = self.chance.randrange(chips.count() + options.count())
        before = shown["lines"][shown["selected"]]
        if place < chips.count():
            label = chips.nth(place).text_content().strip()
            self.note("choose", label, "of", legend)
            chips.nth(place).tap()
        else:
            label = options.nth(place - chips.count()).text_content().strip()
            self.note("choose", label, "of", legend)
            group.locator("select").select_option(label=label)
        if legend == WORDS["nozzle"]:
            self._pressure_follows(before, label, desk.system_of(shown))

    def _pressure_follows(self, before, kind, system):
        """A fog nozzle's pressure does not stay when a smooth bore takes its place: 50 psi by hand, 80 from a device."""
        if system != "US" or before["groups"].get(WORDS["nozzle"]) != WORDS["fog"] or kind != WORDS["smooth"]:
            return
        is_typed = any(step.startswith("type") and step.endswith(f"into {WORDS['nozzle_pressure']}") for step in self.steps)
        if is_typed or before["fields"][WORDS["nozzle_pressure"]]["text"] != "100":
            return  # what somebody typed stays
        device = before["groups"].get(WORDS["device"])
        usual = "50" if device == SITE["device"]["none"] else "80"
        field = self.settings().get_by_role("textbox", name=WORDS["nozzle_pressure"], exact=True)
        expect(field, "the usual pressure of a smooth bore").to_have_value(usual)

    def second(self, shown):
        """A second hose into a monitor's end, as a layout that is ready has it; where there is one, its length, its size, or away with it."""
        seconds = [place for place, line in enumerate(shown["lines"]) if desk.INTO.match(line["title"])]
        if seconds:
            self._touch(shown, self.chance.choice(seconds))
            act = self.chance.choice((self.type, self.choose, self._remove))
            act(self.read())
        else:
            self._unfold()
            self._tool(SITE["ready"]["master"])
            self.settings().locator(".tab").last.tap()
            self._tool(WORDS["add_second"])

    def _remove(self, shown):
        self.settings().locator(".tab").last.tap()
        self._tool(WORDS["remove"])

    def line(self, shown):
        self._touch(shown, self.chance.randrange(len(shown["lines"])))

    def _touch(self, shown, place):
        self.note("touch", shown["lines"][place]["name"])
        key = self.page.locator("button.lay-line").nth(place)
        for _ in range(2):  # the plate may begin to stay in sight by the first
            key.evaluate(CLEAR)
        key.tap(position={"x": 8, "y": 30})

    def build(self, shown):
        """One more hose, or one less."""
        key = self.chance.choice(ADDED) if len(shown["lines"]) < MOST_LINES else "remove"
        if key == "add_twin":
            self.settings().locator(".tab").last.tap()
        if key == "remove":
            self._remove(shown)
        else:
            self._tool(WORDS[key])

    def ready(self, shown):
        self._unfold()
        self._tool(SITE["ready"][self.chance.choice(list(SITE["ready"]))])

    def _unfold(self):
        folded = self.page.locator("details:not([open]) > summary", has_text=WORDS["ready"])
        if folded.count():
            folded.tap()

    def _tool(self, name):
        self.note("press", name)
        key = self.page.get_by_role("button", name=name, exact=True)
        if key.count() and key.first.is_enabled():  # not every layout is ready in every system, and there may be no room
            key.first.tap()

    def nudge(self, shown):
        """One touch of a key beside a number, or of a floor."""
        self.open(".stepper button.key", "[role=group] button.key")
        keys = self.settings().locator(".stepper button.key, [role=group] button.key")
        key = keys.nth(self.chance.randrange(keys.count()))
        self.note("press", key.get_attribute("aria-label") or key.text_content().strip())
        key.tap()

    def undo(self, shown):
        key = self.page.get_by_role("button", name=WORDS["undo"], exact=True)
        if key.is_enabled():
            self.note("undo")
            key.tap()

    def units(self, shown):
        name = self.chance.choice(list(desk.SYSTEMS))
        self.note("units", name)
        read_in(self.page, name)
        self.page.locator("button.lay-line").first.wait_for()
        self.page.wait_for_load_state("networkidle")

    def again(self, shown):
        """The page opened again: what was entered is still there, and so is its answer."""
        self.note("reload")
        self.page.reload()
        self.page.locator("button.lay-line").first.wait_for()
        self.page.wait_for_load_state("networkidle")
