"""Whatever is typed, linked or kept: a message in its place, the rest untouched, and nothing run."""
import json
import urllib.parse

import pytest
from playwright.sync_api import expect

from tests.phone.layout import FIELDS, Layout, fresh_layout, open_layout
from tests.phone.words import SITE, said

MARKUP = "<img src=x onerror=h()>"  # short enough to pass as an entry
# a text, what calc's entry rules say of it, and the fields it is tried in
CASES = [(text, code, field) for text, code, fields in [
    ("", "empty", FIELDS),
    ("abc", "not_a_number", FIELDS),
    ("99999999999", "too_large", FIELDS),
    ("-5", "negative", ["length"]),
    ("-5", "not_positive", ["flow", "pressure"]),
    ("0", "not_positive", ["flow", "pressure"]),
    ("  ", "empty", ["length"]),
    ("--", "not_a_number", ["height"]),
    ("1e9", "not_a_number", ["length"]),
    ("1,00.5", "not_a_number", ["flow"]),
    ("NaN", "not_a_number", ["pressure"]),
    (MARKUP, "not_a_number", ["height"]),
    ("9" * 20000, "too_large", ["length"]),
] for field in fields]
WATCH = "window.struck = false; window.h = window.alert = () => { window.struck = true; };"


@pytest.fixture(scope="module", autouse=True)
def watched(shared):
    """Note any script that gets in."""
    shared.context.add_init_script(WATCH)


def assert_unharmed(page):
    """Nothing that came in was run or became part of the page."""
    assert page.evaluate("window.struck") is False
    assert page.evaluate("({}).polluted") is None
    assert page.locator("main img, main iframe, main script").count() == 0


@pytest.mark.parametrize(("text", "code", "name"), CASES, ids=[f"{text[:12]}-{field}" for text, _, field in CASES])
def test_entry_is_refused_in_its_place(layout, text, code, name):
    """A bad entry is told at its field, the others stand, no number is shown, and a good entry mends it."""
    before = layout.entries()
    layout.type(name, text)
    expect(layout.refusal(name)).to_have_text(SITE["refusal"][code])
    expect(layout.field(name)).to_have_attribute("aria-invalid", "true")
    expect(layout.answer).to_have_text(said("pressure", "waiting", entry=SITE["entry"][name]))
    after = layout.entries()
    assert text.startswith(after[name])  # as typed, or as much as anyone could mean
    assert after == {**before, name: after[name]}
    assert_unharmed(layout.page)
    layout.type(name, before[name])
    layout.shows(170)
    expect(layout.field(name)).to_have_attribute("aria-invalid", "false")


def test_entry_of_a_line_out_of_sight(layout):
    """A bad entry of one line is named while another is worked on, and what is typed there goes there."""
    layout.build("add_wye")
    layout.line("A")
    layout.type("flow", "")
    expect(layout.answer).to_have_text(said("pressure", "waiting", entry=SITE["entry"]["flow"]))
    layout.line("B")
    expect(layout.answer).to_have_text(said("pressure", "waiting_line", entry=SITE["entry"]["flow"], line=said("pressure", "line", id="A")))
    expect(layout.field("flow")).to_have_value("150")
    layout.type("length", "150")
    layout.line("A")
    expect(layout.field("length")).to_have_value("200")
    layout.press("to_entry")  # a key beside it leads to the entry
    expect(layout.page.locator("#A-flow")).to_be_focused()
    expect(layout.refusal("flow")).to_have_text(SITE["refusal"]["empty"])
    layout.type("flow", "150")
    layout.shows(188)  # by hand: 69.75 + 100 + 2 x 3^2; line B with 150 ft needs less


def test_lay_beyond_any_hose(layout):
    """Good entries that ask for more than any hose is built for are told by their line."""
    layout.type("length", "20000")
    # by hand: 15.5 x 2.25 x 200 + 100 = 7075 psi
    line = said("pressure", "line", id="A")
    expect(layout.answer).to_have_text(said("refusal", "beyond_any_hose", line=line))


@pytest.mark.parametrize("text", ["", "abc", "9" * 30])
def test_bad_entry_costs_nothing_but_itself(take, text):
    """After a bad entry the page opens again with every other entry as it was."""
    handset = take()
    layout = fresh_layout(handset)
    layout.step("length", "more")
    layout.type("flow", text)
    expect(layout.answer).to_have_text(said("pressure", "waiting", entry=SITE["entry"]["flow"]))
    layout.page.close()
    again = Layout(handset.open("pressure/"))
    expect(again.page.locator("#A-flow")).to_be_visible()  # the entry that is refused is the one that is open
    assert (again.field("length").input_value(), again.field("pressure").input_value()) == ("250", "100")


LINE = {"id": "A", "hose": "attack-1.75", "length": "300", "height": "0",
        "end": {"kind": "fog", "flow": "150", "tip": "1", "pressure": "100"}}
GOOD = {"crew": "2", "lines": [LINE]}


def coded(layout):
    return urllib.parse.quote(layout if isinstance(layout, str) else json.dumps(layout))


HOSTILE = {
    "nothing": "",
    "half an escape": "%",
    "broken escape": "%E0%A4%A",
    "not json": "%7B%22crew",
    "null": "null",
    "number": "7",
    "list": "[]",
    "empty object": "%7B%7D",
    "no lines": coded({**GOOD, "lines": []}),
    "lines is a word": coded({**GOOD, "lines": "constructor"}),
    "unknown hose": coded({**GOOD, "lines": [{**LINE, "hose": "__proto__"}]}),
    "unknown crew": coded({**GOOD, "crew": "constructor"}),
    "markup as hose": coded({**GOOD, "lines": [{**LINE, "hose": MARKUP}]}),
    "markup as name": coded({**GOOD, "lines": [{**LINE, "id": MARKUP}]}),
    "number for text": coded({**GOOD, "lines": [{**LINE, "length": 300}]}),
    "prototype only": coded('{"__proto__": {"crew": "2", "polluted": 1}}'),
    "deep nesting": "[" * 3900,
    "deep wyes": coded('{"crew":"2","lines":[{"end":' * 60),
    "wye of three": coded({**GOOD, "lines": [{**LINE, "id": "S", "end": {"lines": [LINE, LINE, LINE]}}]}),
    "a megabyte": "%5B" + "1%2C" * 250000,
    "no such units": coded({**GOOD, "lines": [{**LINE, "length": "300@nowhere"}]}),
    "prototype for units": coded({**GOOD, "lines": [{**LINE, "length": "300@__proto__"}]}),
    "long entry": coded({**GOOD, "lines": [{**LINE, "length": "3" * 3000}]}),
}


@pytest.mark.parametrize("fragment", HOSTILE.values(), ids=HOSTILE)
def test_mangled_link(layout, fragment):
    """A link that holds no readable layout says so, and the layout on the page stands."""
    layout.type("length", "250")
    layout.page.evaluate("(fragment) => { location.hash = fragment; }", f"#layout={fragment}")
    expect(layout.page.get_by_text(SITE["pressure"]["damaged_link"])).to_be_visible()
    layout.shows(187)  # by hand: 15.5 x 2.25 x 2.5 + 100 = 187.19
    assert_unharmed(layout.page)


@pytest.mark.parametrize("fragment", ["%", "[]", coded({**GOOD, "crew": MARKUP}), "1" * 1000000])
def test_mangled_link_opened_cold(shared, fragment):
    """A phone that opens such a link shows its own last layout and the notice."""
    layout = open_layout(shared, f"#layout={fragment}")
    expect(layout.page.get_by_text(SITE["pressure"]["damaged_link"])).to_be_visible()
    expect(layout.answer).to_contain_text(SITE["unit"]["US"]["pressure"])
    assert_unharmed(layout.page)
    layout.page.close()


def test_markup_in_a_link_is_only_text(layout):
    """Markup that passes as an entry stands in its field as typed, is refused there, and is never built into the page."""
    hostile = {**GOOD, "lines": [{**LINE, "length": MARKUP}]}
    layout.page.evaluate("(fragment) => { location.hash = fragment; }", f"#layout={coded(hostile)}")
    expect(layout.field("length")).to_have_value(MARKUP)
    expect(layout.refusal("length")).to_have_text(SITE["refusal"]["not_a_number"])
    assert_unharmed(layout.page)


def test_prototype_in_a_link_changes_nothing(layout):
    """A good layout that carries a prototype with it is taken as a layout, and the prototype is left behind."""
    hostile = json.dumps(GOOD)[:-1] + ', "__proto__": {"polluted": 1}, "constructor": {"prototype": {"polluted": 1}}}'
    layout.page.evaluate("(fragment) => { location.hash = fragment; }", f"#layout={coded(hostile)}")
    layout.shows(205)  # by hand: 15.5 x 2.25 x 3 + 100 = 204.63
    assert_unharmed(layout.page)


KEEP = """([name, value]) => new Promise((done) => {
  const opening = indexedDB.open("panelhand");
  opening.onsuccess = () => {
    const change = opening.result.transaction("drafts", "readwrite");
    change.objectStore("drafts").put(value, name);
    change.oncomplete = () => { opening.result.close(); done(); };
  };
})"""


@pytest.mark.parametrize("kept", [7, {}, {"lines": [{"end": {}}]}], ids=json.dumps)
@pytest.mark.parametrize(("name", "address", "shown"), [
    ("pressure", "pressure/", SITE["pressure"]["set"]), ("shift:road", "shift/road/", SITE["shift"]["danger"]),
], ids=["layout", "card"])
def test_damaged_draft(shared, layout, kept, name, address, shown):
    """What was kept and cannot be read is left aside: the page opens as new."""
    shared.keeps_anything = True
    layout.page.evaluate(KEEP, [name, kept])
    page = shared.open(address)
    expect(page.get_by_text(shown).first).to_be_visible()
    page.close()
