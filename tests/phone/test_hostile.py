"""Links, files and stored texts made to hurt: told in their place, run by nobody, and nothing kept is touched."""
import json
import urllib.parse

import pytest
from playwright.sync_api import expect

from calc.rig.fields import FIELDS
from site_src.content import data
from tests import service_records
from tests.phone.card import RIG
from tests.phone.folds import UNFOLDED
from tests.phone.sheet import TOLD, open_sheet
from tests.phone.sources import source
from tests.phone.store import do
from tests.phone.test_bad_input import WATCH, assert_unharmed
from tests.phone.test_rig import ENGINE, R, bring, kept_rigs, with_engine
from tests.phone.words import SITE

D = data.words("diagnose")["diagnose"]
T = data.words("service")["test"]
MARKUP = "<img src=x onerror=h()>"
SCRIPT = "\"'><script>h()</script>"


def coded(value):
    return urllib.parse.quote(value if isinstance(value, str) else json.dumps(value))


def deep(levels):
    return "[" * levels + "]" * levels


PROTOTYPE = '{"__proto__": {"polluted": 1}, "constructor": {"prototype": {"polluted": 1}}}'
TANK = {"tank": "750@US", "usable": "80", "flow": "150@US", "refill": "0@US"}
ANYWHERE = {
    "nothing": "",
    "half an escape": "%",
    "not json": "%7B%22",
    "null": "null",
    "list": "[]",
    "number": "7",
    "prototype": coded(PROTOTYPE),
    "deep": coded(deep(900)),
    "deeper than any stack": coded(deep(5000)),
    "longer than any": coded({"signs": "x" * 300_000}),
    "markup": coded({"tank": MARKUP, "signs": {MARKUP: "seen"}}),
    "no such units": coded({**TANK, "flow": "150@nowhere"}),
    "prototype for units": coded({**TANK, "flow": "150@constructor"}),
}


@pytest.fixture(scope="module", autouse=True)
def watched(shared):
    """Note any script that gets in."""
    shared.context.add_init_script(WATCH)


def follow(page, fragment):
    """Follow a link to the page that is open."""
    page.evaluate("(fragment) => { location.hash = ''; location.hash = fragment; }", fragment)


@pytest.fixture(scope="module")
def sheet(shared):
    return open_sheet(shared, "water/tank/")


@pytest.mark.parametrize("fragment", ANYWHERE.values(), ids=ANYWHERE)
def test_link_to_a_water_page(sheet, fragment):
    """A link that cannot be read says so; the entries stand."""
    sheet.page.evaluate("history.replaceState({}, '')")
    follow(sheet.page, f"with={fragment}")
    expect(sheet.page.get_by_text(TOLD["reckon"]["damaged_link"])).to_be_visible()
    sheet.shows("4.0", "min")
    assert_unharmed(sheet.page)


@pytest.fixture(scope="module")
def rig(shared):
    return with_engine(shared)


SMALL = {"schema": 1, "id": "x", "name": "y", "units": "US"}
RIG_LINKS = {
    **{name: f"p{fragment}" for name, fragment in ANYWHERE.items() if name != "nothing"},
    "no packing": "q",
    "broken packing": "zAAAA",
    "not base64": "p***",
}


@pytest.mark.parametrize("fragment", RIG_LINKS.values(), ids=RIG_LINKS)
def test_link_that_carries_a_rig(rig, fragment):
    """A link that carries no sound rig is refused in words; the rig that is here stands."""
    follow(rig, f"take={fragment}")
    expect(rig.locator("main p.notice").first).to_be_visible()
    assert kept_rigs(rig) == [ENGINE]
    assert_unharmed(rig)


def test_packed_bomb(rig):
    """A short link that unpacks to megabytes is given up on the way."""
    packed = rig.evaluate("""async () => {
      const zip = new Blob(["[".repeat(8_000_000)]).stream().pipeThrough(new CompressionStream("deflate-raw"));
      const bytes = new Uint8Array(await new Response(zip).arrayBuffer());
      return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join("")).replaceAll("+", "-").replaceAll("/", "_");
    }""")
    assert len(packed) < 20_000
    follow(rig, f"take=z{packed}")
    expect(rig.locator("main p.notice").first).to_be_visible()
    assert kept_rigs(rig) == [ENGINE]


FILES = {
    "deep in a field": json.dumps({**SMALL, "beds": "X"}).replace('"X"', deep(900)),
    "deep past the stack": json.dumps({**SMALL, "beds": "X"}).replace('"X"', deep(100_000)),
    "prototype for a hose": json.dumps({**SMALL, "hoses": [{"hose": "__proto__", "coefficient": "10@US"}]}),
    "constructor for units": json.dumps({**SMALL, "units": "constructor"}),
    "constructor in an entry": json.dumps({**SMALL, "tank": "500@constructor"}),
    "prototype as a key": json.dumps(SMALL)[:-1] + ', "__proto__": {"polluted": 1}}',
    "markup as a key": json.dumps({**SMALL, MARKUP: "x"}),
    "a hundred thousand rows": json.dumps({**SMALL, "beds": [{}] * 100_000}),
    "thousands of rigs": json.dumps([{**SMALL, "id": str(count)} for count in range(7000)]),
    "one bad among good": json.dumps([SMALL, {**SMALL, "id": "z", "tank": "-5@US"}]),
}


@pytest.mark.parametrize("content", FILES.values(), ids=FILES)
def test_file_of_a_rig(rig, content):
    """A file made to hurt is refused in words, soon, with nothing of it kept."""
    bring(rig, json.dumps(ENGINE).encode())  # offered, so that the notice of the file before is gone
    expect(rig.get_by_role("button", name=R["carry"]["take_replace"], exact=True)).to_be_visible()
    bring(rig, content.encode())
    refused = R["carry"]["refused"].split("{")[0]
    expect(rig.locator("p.notice", has_text=refused).first).to_be_visible(timeout=4000)
    assert kept_rigs(rig) == [ENGINE]
    assert_unharmed(rig)


FROM = {
    **{name: fragment for name, fragment in ANYWHERE.items() if name != "nothing"},
    "facts no list": coded({"facts": 7, "missing": {}}),
    "signs a word": coded({"signs": "seen"}),
    "unknown sign": coded({"signs": {"__proto__x": "seen"}}),
    "unknown answer": coded({"signs": {"light_dark": {"seen": True}}}),
    "prototype for signs": coded('{"signs": {"__proto__": "seen", "constructor": "seen"}}'),
    "deep signs": coded('{"signs": {"light_dark": ' + deep(2000) + "}}"),
}


@pytest.mark.parametrize("fragment", FROM.values(), ids=FROM)
def test_link_into_a_diagnosis(shared, fragment):
    """A hand-over that cannot be read is told, and the diagnosis begins from nothing."""
    page = shared.open(f"diagnose/#from={fragment}")
    expect(page.get_by_text(D["bad_link"])).to_be_visible()
    expect(page.get_by_text(D["where"], exact=True)).to_be_visible()
    assert_unharmed(page)
    page.close()


@pytest.mark.parametrize("fragment", ["", "%", "__proto__", "constructor/capacity", MARKUP, "x" * 100_000, "a/" * 5000], ids=range(7))
@pytest.mark.parametrize("address", ["test/run/", "test/sheet/"])
def test_link_to_a_test(shared, address, fragment):
    """A link to a test that is not on this phone says so."""
    page = shared.open(f"{address}#{fragment}")
    expect(page.get_by_text(T["missing_record"])).to_be_visible()
    assert_unharmed(page)
    page.close()


def poisoned_test(rig_id, **changes):
    """A service test with markup in every text that is typed freely."""
    record = {**service_records.a_failed_record(rig=rig_id, **changes), "rig_name": SCRIPT, "notes": SCRIPT, "equipment": [dict.fromkeys(("what", "serial", "calibrated"), SCRIPT)]}
    record["people"] = {"tester": MARKUP, "witness": SCRIPT}
    record["tests"]["overload"] = {"not_done": SCRIPT}
    for event in record["tests"]["capacity"]["attempts"][0]["clock"]["events"]:
        event["reason"] = MARKUP
    return record


def poisoned_run(kind):
    """A run of the log with markup in every text."""
    at = "2026-11-25T10:00:00.000Z"
    entries = [{"at": at, "event": SCRIPT, "step": MARKUP, "told": SCRIPT, "answer": MARKUP}, {"at": at, "said": MARKUP, "text": SCRIPT}]
    return {"id": kind, "kind": kind, "title": MARKUP, "rig": {"id": "r", "name": SCRIPT}, "who": MARKUP, "notes": SCRIPT, "outcome": MARKUP,
            "began_at": at, "ended_at": at, "entries": entries}


# pages that show what is kept, and what stands on each once they have shown it
SHOWN = {
    "log/": ".run", "rig/": ".standing", "rig/card/": "main table", "rig/recovery/": ".recovery", "pressure/": "#pressure button.lay-line",
    "water/draft/": "#why details", "shift/": "#for-rig", "shift/bay/": "#card .key", "diagnose/": "#diagnose .key", "test/": "#test .row",
    "test/run/#{1}": ".dock .key", "test/run/#{1}/site": "#test .key", "test/run/#{1}/capacity": "#test .clock", "test/sheet/#{0}": ".paper",
}


def test_markup_in_every_stored_text(take):
    """Markup in any text that is kept shows as it was typed, on every page that shows it, and is never built into one."""
    handset = take()
    handset.context.add_init_script(WATCH)
    rig = {**ENGINE, **RIG, **{field[0]: MARKUP for field in FIELDS if field[1] == "text"}, "beds": [{**bed, "name": MARKUP} for bed in ENGINE["beds"]]}
    tests = [poisoned_test(rig["id"], number=1), {**poisoned_test(rig["id"], number=2), "finished_ms": None}]
    page = handset.open("404.html")
    page.evaluate("async ([store, rig]) => { await (await import(store)).keepRecord('rigs', rig); localStorage.setItem('rig', rig.id); }",
                  [source(page, "shared/store.js"), rig])
    for record in tests:
        do(page, "keepRecord", "tests", record)
    for kind in ("card", "diagnosis", "practice"):
        do(page, "keepRecord", "log", poisoned_run(kind))
    page.close()
    shown = 0
    for address, last in SHOWN.items():
        page = handset.open(address.format(*[record["id"] for record in tests]))
        page.locator(last).first.wait_for()
        page.evaluate(UNFOLDED)
        assert_unharmed(page)
        shown += page.locator("main").inner_text().count("h()")
        page.close()
    assert shown > 20


CSP = """async () => {
  const broken = [];
  addEventListener("securitypolicyviolation", (event) => broken.push(event.effectiveDirective));
  const tried = {
    inline: () => { const script = document.createElement("script"); script.append("window.h()"); document.body.append(script); },
    markup: () => { document.createElement("div").innerHTML = "<b>x</b>"; },
    style: () => { document.body.setAttribute("style", "color: red"); },
    handler: () => { const made = document.createElement("b"); made.setAttribute("onclick", "h()"); made.click(); },
    eval: () => { (0, eval)("window.h()"); },
    made: () => { new Function("window.h()")(); },
    foreign: () => fetch("https://example.org/"),
    picture: () => { new Image().src = "https://example.org/x.png"; },
    frame: () => { const frame = document.createElement("iframe"); frame.src = "https://example.org/"; document.body.append(frame); },
    script: () => import("https://example.org/x.js"),
    base: () => { const base = document.createElement("base"); base.href = "https://example.org/"; document.head.append(base); },
    sent: () => navigator.sendBeacon("https://example.org/", "x"),
    form: () => { const form = document.createElement("form"); form.action = "https://example.org/"; document.body.append(form); form.submit(); },
    policy: () => trustedTypes.createPolicy("mine", { createHTML: (text) => text }),
    worker: () => new Worker(new URL("../static/js/shared/first.js", document.baseURI).href),
  };
  const refused = [];
  for (const [name, act] of Object.entries(tried)) {
    const before = broken.length;
    let thrown = false;
    try { await act(); } catch { thrown = true; }
    await new Promise((done) => setTimeout(done, 100));
    if (thrown || broken.length > before) refused.push(name);
  }
  return [refused, Object.keys(tried), window.struck];
}"""


def test_policy_refuses(take):
    """The page's own policy refuses inline script and style, text as code, text as markup, and every other origin."""
    handset = take()
    handset.context.add_init_script(WATCH)
    handset.expected += ["Content Security Policy", "Trusted", "require", "violat"]
    page = handset.open("pressure/")
    refused, tried, struck = page.evaluate(CSP)
    assert refused == tried
    assert not struck
    handset.requests[:] = [url for url in handset.requests if "example.org" not in url]  # asked for, and refused before it left


TEST = service_records.a_record()
TEST_FILES = {
    "cut": "{",
    "a list": "[]",
    "prototype": PROTOTYPE,
    "constructor for standard": json.dumps({**TEST, "standard": {**TEST["standard"], "id": "constructor"}}),
    "deep": json.dumps({**TEST, "tests": {"capacity": "X"}}).replace('"X"', deep(2000)),
    "megabytes": json.dumps({**TEST, "notes": "x" * 6_000_000}),
}


@pytest.mark.parametrize("content", TEST_FILES.values(), ids=TEST_FILES)
def test_file_of_a_service_test(shared, content):
    """A file that is no sound test is refused in words, and no test is kept of it."""
    page = shared.open("test/")
    page.locator("#test input[type=file]").wait_for(state="attached")
    bring(page, content.encode(), "test.json")
    expect(page.locator("#test [role=status] .notice").first).to_be_visible()
    assert do(page, "keptRecords", "tests") == []
    assert_unharmed(page)
    page.close()
