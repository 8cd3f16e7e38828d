"""A water or foam page as an operator handles it."""
import re

from playwright.sync_api import expect

from site_src.content import data
from tests.phone.words import SITE

TOLD = data.words("water")
US = {f"u_{kind}": word for kind, word in SITE["unit"]["US"].items()}


class Sheet:
    """An open page: its entries by name, choices, answer, cautions and figures."""

    def __init__(self, page, name):
        self.page, self.name = page, name
        self.answer = page.locator("output")

    def label(self, field):
        return TOLD["field"].get(f"{self.name}_{field}") or TOLD["field"][field]

    def row(self, name):
        """The row of an entry: its name and its value."""
        return self.page.locator(f".entry-row[data-entry={name}]")

    def open(self, name):
        """Open the tray of an entry, where it is not open yet, and the fold that it lies in."""
        fold = self.page.locator(".entry-fold:not([open])", has=self.row(name))
        if fold.count():
            fold.locator("summary").tap()
        if self.row(name).get_attribute("aria-expanded") == "false":
            self.row(name).tap()

    def field(self, name):
        self.open(name)
        return self.page.get_by_role("textbox", name=self.label(name), exact=True)

    def type(self, name, text):
        self.field(name).fill(text)

    def step(self, name, key):
        """One touch of the key beside a number: "more" or "less"."""
        self.open(name)
        told = SITE["pressure"][key].format(what=self.label(name))
        self.page.get_by_role("button", name=told, exact=True).tap()

    def choose(self, field, label):
        """Touch one chip of a choice."""
        self.open(field)
        group = self.page.get_by_role("group", name=re.compile("^" + re.escape(self.label(field))))
        group.get_by_role("radio", name=label, exact=True).tap()

    def system(self, name):
        """The page again, in the units chosen on All pages."""
        self.page.evaluate("name => localStorage.setItem('units', name)", name)
        self.page.reload()
        self.ready()

    def ready(self):
        """Once it computes."""
        self.page.locator("#why details").first.wait_for()

    def shows(self, text, unit):
        """The figure of the answer, with its unit."""
        expect(self.answer).to_have_text(re.compile(rf"^\s*{re.escape(text)}\s+{re.escape(unit)}\s*$"))

    def warns(self, code, **facts):
        """The sentence of a caution that there is, once the line below the number is opened."""
        sentence = self.page.locator(".water-plate .warning").get_by_text(TOLD["caution"][code].format(**US, **facts))
        sentence.wait_for(state="attached")
        self.page.evaluate("() => document.querySelectorAll('.careful').forEach((careful) => { careful.open = true; })")
        return sentence

    def warns_not(self, code, **facts):
        """Nothing warns so, folded or not."""
        expect(self.page.locator(".water-plate .warning").get_by_text(TOLD["caution"][code].format(**US, **facts))).to_have_count(0)

    def figure(self, name):
        """Open a figure, and give it with the working below it."""
        workings = self.page.locator("#why > details")
        if workings.get_attribute("open") is None:
            workings.locator("> summary").tap()
        figure = workings.locator("details").filter(has_text=TOLD["row"][name]).first
        figure.locator("summary").tap()
        return figure

    def refusal(self, name):
        """The message at a field."""
        return self.page.locator(f"#{name}-refused")


def first_entry(page):
    """The first number field of a page, whose tray is opened where it has one; a choice is passed over."""
    box = page.locator("main input[inputmode]")
    page.locator(".entry-row, main input[inputmode]").first.wait_for()
    for row in page.locator(".entry-row").all():
        if row.get_attribute("aria-expanded") == "false":
            row.tap()
        page.locator("[data-open] .entry-tray").wait_for()
        if box.count():
            break
    return box.first


def open_sheet(handset, address, fragment=""):
    """A page by its address, once it computes."""
    sheet = Sheet(handset.open(f"{address}{fragment}"), address.strip("/").split("/")[-1])
    sheet.ready()
    return sheet
