"""The Pressure page as an operator handles it."""
import re

from playwright.sync_api import expect

from site_src.content import data
from tests.phone.words import SITE, said

HOSES = data.by_id(data.named("hoses"))
TIPS = data.by_id(data.load("nozzles")["tip"])
TABS = {"length": "length", "height": "height", "flow": "nozzle", "pressure": "nozzle", "hose": "hose", "nozzle": "nozzle", "tip": "nozzle",
        "runs": "more", "device": "more", "crew": "more", "loss": "more", "floor_up": "height", "floor_down": "height", "add_twin": "more", "add_second": "more", "remove": "more", "unjoin": "more"}
FIELDS = {"length": "length", "height": "height", "flow": "flow", "pressure": "nozzle_pressure"}


HAND_MS = 60  # no hand touches twice in less, and the drawing has its answer by then or dashes stand


class Layout:
    """An open Pressure page: its fields, choices, answer and workings."""

    def __init__(self, page):
        self.page = page
        self.answer = page.locator("output")

    def tab(self, name):
        """Open one part of the line that is selected, where it has it, once the tray is drawn."""
        self.page.locator(".tab, [data-tab=now]").first.wait_for()
        key = self.page.locator(".tab", has=self.page.locator("b", has_text=re.compile(f"^{re.escape(SITE['tab'][name])}$")))
        if key.count() and key.get_attribute("aria-pressed") == "false":
            key.tap()

    def field(self, name):
        """The entry of one number: length, height, flow or pressure."""
        self.tab(TABS[name])
        return self.page.get_by_role("textbox", name=SITE["pressure"][FIELDS[name]], exact=True)

    def type(self, name, text):
        self.field(name).fill(text)

    def entries(self):
        """What stands in every field that is shown."""
        return {name: field.input_value() for name in FIELDS if (field := self.field(name)).count()}

    def step(self, name, key):
        """One touch of the key beside a number: "more" or "less"."""
        self.tab(TABS[name])
        what = SITE["pressure"][FIELDS[name]]
        self.page.get_by_role("button", name=said("pressure", key, what=what), exact=True).tap()

    def press(self, key):
        if key in TABS:
            self.tab(TABS[key])
        self.page.get_by_role("button", name=SITE["pressure"][key], exact=True).tap()

    def _group(self, legend):
        self.tab(TABS[legend])
        return self.page.get_by_role("group", name=re.compile("^" + re.escape(SITE["pressure"][legend]) + "(,|$)"))

    def choose(self, legend, label):
        """Touch one chip of a group."""
        self._group(legend).get_by_role("radio", name=label, exact=True).tap()

    def choose_row(self, legend, row):
        """Choose a hose or a tip, by its chip or from the list behind the chips."""
        if row.get("common"):
            self.choose(legend, row.get("chip", row["label"]))
        else:
            self._group(legend).get_by_role("combobox").select_option(label=row["label"])

    def hose(self, name):
        self.choose_row("hose", HOSES[name])

    def tip(self, name):
        self.choose_row("tip", TIPS[name])

    def line(self, name):
        """Show the entries of one line of the layout: touch it in the drawing, once that stands still."""
        self.page.wait_for_timeout(HAND_MS)
        expect(self.page.locator("output.answer-figure b[aria-hidden]")).to_have_count(0)
        self.page.locator(f"button.lay-line[data-line='{name}']").tap(position={"x": 8, "y": 30})

    def turn(self, over=True):
        """Turn the picture over to what flows now, or back."""
        key = self.page.locator(".dock .key-act")
        if (key.get_attribute("aria-pressed") == "true") != over:
            key.tap()
        return self.page.locator("#pressure")

    def open(self, summary):
        """Open a part of the page that is folded, by its heading; what flows now is the picture turned over."""
        if summary == SITE["now"]["title"]:
            return self.turn()
        part = self.page.locator("details.section", has=self.page.locator("summary", has_text=summary)).last
        if part.get_attribute("open") is None:
            part.locator("summary").first.tap()
        return part

    def build(self, key):
        """Touch a key that builds the layout."""
        self.turn(over=False)
        self.press(key)

    def ready(self, name):
        """Layout one of the layouts that are ready."""
        self.turn(over=False)
        self.open(SITE["pressure"]["ready"])
        self.page.get_by_role("button", name=SITE["ready"][name], exact=True).tap()

    def careful(self):
        """Open what there is to be careful of, said in one line under the number."""
        line = self.page.locator(".plate-careful")
        line.wait_for()
        if line.get_attribute("open") is None:
            line.locator("summary").tap()

    def refusal(self, name):
        """The message at a field."""
        return self.page.locator(f"#{self.field(name).get_attribute('id')}-refused")

    def shows(self, psi):
        """The pump pressure that stands in the answer."""
        expect(self.answer).to_have_text(re.compile(rf"^\s*{psi}\s+{SITE['unit']['US']['pressure']}\s*$"))

    def link(self):
        """The fragment of the link that is handed on."""
        self.press("share")
        expect(self.page).to_have_url(re.compile("#layout="))
        return "#" + self.page.url.partition("#")[2]

    def working(self, figure):
        """Open a figure and give the text below it."""
        section = self.open(SITE["pressure"]["figures"])
        figures = section.locator("details").filter(has_text=said("pressure", f"field_{figure}"))
        figures.first.locator("summary").tap()
        return figures.first


def open_layout(handset, fragment=""):
    """The Pressure page, once it computes."""
    layout = Layout(handset.open(f"pressure/{fragment}"))
    layout.field("length").wait_for()
    return layout


def fresh_layout(handset):
    """The Pressure page with its opening answer computed."""
    layout = open_layout(handset)
    layout.shows(170)
    return layout
