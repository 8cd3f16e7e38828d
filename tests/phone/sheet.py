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

    def field(self, name):
        return self.page.get_by_role("textbox", name=self.label(name), exact=True)

    def type(self, name, text):
        self.field(name).fill(text)

    def step(self, name, key):
        """One touch of the key beside a number: "more" or "less"."""
        told = SITE["pressure"][key].format(what=self.label(name))
        self.page.get_by_role("button", name=told, exact=True).tap()

    def choose(self, field, label):
        """Touch one chip of a choice."""
        group = self.page.get_by_role("group", name=re.compile("^" + re.escape(self.label(field))))
        group.get_by_role("radio", name=label, exact=True).tap()

    def system(self, name):
        self.page.get_by_role("group", name=SITE["units"]["title"]).get_by_role("radio", name=SITE["units"][name], exact=True).tap()

    def shows(self, text, unit):
        """The figure of the answer, with its unit."""
        expect(self.answer).to_have_text(re.compile(rf"^\s*{re.escape(text)}\s+{re.escape(unit)}\s*$"))

    def warns(self, code, **facts):
        """The sentence of a caution."""
        return self.page.get_by_text(TOLD["caution"][code].format(**US, **facts))

    def figure(self, name):
        """Open a figure, and give it with the working below it."""
        figure = self.page.locator("details").filter(has_text=TOLD["row"][name]).first
        figure.locator("summary").tap()
        return figure

    def refusal(self, name):
        """The message at a field."""
        return self.page.locator(f"#{self.field(name).get_attribute('id')}-refused")


def open_sheet(handset, address, fragment=""):
    """A page by its address, once it computes."""
    sheet = Sheet(handset.open(f"{address}{fragment}"), address.strip("/").split("/")[-1])
    sheet.page.locator("#why details").first.wait_for()
    return sheet
