"""A service test as a claim: whatever is typed, tapped, waited for and reloaded, flow, net pressure and verdict follow from what stands there."""
import os

import pytest
from playwright.sync_api import Error

from site_src.content import units
from tests import service_records as records
from tests.phone.claim import chance, tested, walks
from tests.phone.proof import START_MS, Clock, Proof, T, begun, store

WALKS, STEPS, TRIES, SHEET_EACH = 10, 25, 15, 6
SYSTEMS = ("US", "US", *units.baked())
SLIPS = ("", "12x", "1.2.3", "-5", "99999999")
SITE = {"lift_ft": ("0", "3", "8", "10", "14"), "suction_length_ft": ("20", "25", "30", "60")}
WAITS_S = (5, 60, 120, 295, 300, 300, 300, 320)


@pytest.mark.parametrize("walk", walks(WALKS))
def test_verdict_follows_from_readings(take, walk):
    """After each of 25 acts the figures of the run follow from its cells, and every few acts every row and verdict of the sheet from the sheet."""
    luck = chance("service", walk)
    test = Walk(take(), luck, luck.choice(SYSTEMS))
    try:
        test.read_sheet()
        for number in range(1, STEPS + 1):
            test.steps.append(test.step())
            if not test.is_moved:
                test.follows()
            if number % SHEET_EACH == 0 or test.is_moved:
                test.read_sheet()
        test.read_sheet()
    except (AssertionError, Error) as why:
        raise AssertionError(f"{why}\nSEED={os.environ['SEED']}, service {walk}, {test.system}: " + "; ".join(test.steps)) from why


class Walk:
    """One test on a phone whose clocks stand still until they are moved."""

    def __init__(self, handset, luck, system):
        self.handset, self.luck, self.system, self.steps, self.name = handset, luck, system, [], "capacity"
        handset.clock = Clock(handset.context)
        self.kinds = units.fine(system)["systems"][system]
        record = begun(records.a_record(pump_rated=luck.choice(("1250@US", "1500@US"))), START_MS)
        record["tests"]["conditions"]["values"] = {"water_end_f": "65@US"}  # the rest is typed under Site
        store(handset, record)
        handset.open("404.html").evaluate("(system) => localStorage.setItem('units', system)", system)
        self.proof = Proof(handset, handset.clock, handset.open(f"test/run/#{record['id']}/capacity"))
        self.page = self.proof.page

    def part(self, name):
        self.proof.part(name)
        self.proof.rests()

    def follows(self):
        """What stands there follows from what stands beside it, once the answer to the last act is in."""
        self.proof.rests()
        for tries_left in range(TRIES, -1, -1):
            shown = self.page.evaluate(tested.READ_RUN)
            try:
                return tested.check_run(shown, self.name, self.site, self.system) if shown["cells"] else None
            except (AssertionError, ValueError):
                if not tries_left:
                    raise
            self.page.wait_for_timeout(200)

    def read_sheet(self):
        """The sheet in a page of its own, which is closed again."""
        sheet = self.handset.open(f"test/sheet/#{self.proof.id}")
        sheet.locator(".site .facts").wait_for()
        shown = sheet.evaluate(tested.READ_SHEET)
        sheet.close()
        self.site, self.is_moved = tested.site_of(shown, self.system), False
        tested.check_sheet(shown, self.site, self.system)

    def step(self):
        """Do what a tester might. Returns what was done."""
        kinds = {self.read_a_set: 3, self.type: 3, self.touch_dock: 4, self.wait: 3, self.choose_tip: 1, self.reload: 1, self.turn: 1, self.change_site: 1}
        return self.luck.choices(list(kinds), kinds.values())[0]()

    def shown(self, kind, amount):
        scale = self.kinds[kind]
        return f"{amount * scale['factor']:.{scale['places']}f}"

    def near(self, name):
        """A reading near what the run wants, sometimes short."""
        least_gpm, least_psi = tested.point(self.site, self.name)
        if name == "discharge_psi":
            return self.shown("pressure", least_psi - 6 + self.luck.choice((-30, -1, 0.5, 2, 2, 5, 5, 20)))
        if name == "engine_rpm":
            return str(self.luck.choice((1600, 1600, 1750, 2100)))
        tip = [tip for chip, tip in tested.CHIPS.items() if f" {chip}\u00a0in" in self.page.locator(".run-point").inner_text()]
        each_gpm = least_gpm / max(self.page.locator('input[name="pitot_psi"]').count(), 1)
        return self.shown("pitot", (each_gpm / 29.7 / tip[-1] ** 2) ** 2 * self.luck.choice((0.7, 0.98, 1.01, 1.03, 1.03, 1.04, 1.2)) if tip else 50)

    def cells(self):
        return self.page.locator(".cells input")

    def read_a_set(self):
        for place in range(self.cells().count()):
            self.cells().nth(place).fill(self.near(self.cells().nth(place).get_attribute("name")))
        return "read a set"

    def type(self):
        if not self.cells().count():
            return self.wait()
        cell = self.cells().nth(self.luck.randrange(self.cells().count()))
        text = self.luck.choice(SLIPS) if self.luck.random() < 0.2 else self.near(cell.get_attribute("name"))
        cell.fill(text)
        return f"type {text!r} into {cell.get_attribute('id')}"

    def touch(self, selector):
        """One at random of what is there to be touched; where there is none, time passes."""
        keys = self.page.locator(selector)
        if not keys.count():
            return self.wait()
        key = keys.nth(self.luck.randrange(keys.count()))
        said = key.inner_text().strip()
        key.tap()
        return f"touch {said!r}"

    def touch_dock(self):
        return self.touch(".dock button.key:visible:enabled")

    def wait(self):
        seconds = self.luck.choice(WAITS_S)
        self.handset.clock.passes(seconds)
        return f"wait {seconds} s"

    def choose_tip(self):
        return self.touch(".run-tips label.chip:visible")

    def reload(self):
        self.page.reload()
        self.page.locator(".dock").wait_for()
        return "reload"

    def turn(self):
        self.name = self.luck.choice(list(tested.SHARES))
        self.part(self.name)
        return f"to {self.name}"

    def change_site(self):
        field = self.luck.choice(list(SITE))
        text = self.shown("length", float(self.luck.choice(SITE[field])))
        self.part("site")
        self.proof.type(field, text)
        self.proof.rests()
        self.part(self.name)
        self.is_moved = True
        return f"{field} {text}"
