"""A page whose parts did not all arrive, or whose scripts fail, says so and shows no number as if it lived."""
import re

import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests import service_records
from tests.phone import ways
from tests.phone.handset import read_in
from tests.phone.history import PROFILE, SEED
from tests.phone.test_start import bed, with_rig
from tests.phone.words import SITE

DOWN = SITE["down"]
PRESSURE = data.words("pressure")
# pages that show answers or steps, with the part of it that only scripts fill
PAGES = [
    "pressure/", "water/", "water/tank/", "water/hydrant/", "foam/", "why/heat/", "why/speeds/", "why/", "practice/", "rig/",
    "shift/bay/", "diagnose/", "diagnose/water/", "diagnose/collar/", "diagnose/lights/", "diagnose/leak/", "test/quick/",
]
WHOLE = ["pressure/", "water/tank/", "shift/bay/"]
CALC = ["calc.bin", "engine_start.js", "engine_worker.js", "micropython.wasm"]
PARTS = {"pressure/": ["pressure.js", "common.js"], "water/tank/": ["reckon.js", "shared/water.js", "further.js", "common.js"], "shift/bay/": ["shift.js", "further.js", "common.js"]}
THROWN = {
    "error": "() => setTimeout(() => { throw new TypeError('a bug of ours'); })",
    "rejection": "() => { Promise.reject(new TypeError('a bug of ours')); }",
    "text that is read": "() => setTimeout(() => { JSON.parse('a bug of ours'); })",
}
LATE = """() => new Promise((done) => {
  const { worker } = engine.begin();
  worker.onmessage = ({ data }) => done(data.text);
  worker.postMessage({ id: 1, holds: [], door: "away.slept", text: '{"wall_s": 1, "steady_s": 1}' });
})"""
BLOCKED = "delete WebAssembly.instantiate; delete WebAssembly.instantiateStreaming; delete WebAssembly.Module;"


def is_down(page, reason):
    """The notice says why; nothing that scripts fill is on the screen, and no other number of an answer."""
    expect(page.locator("#down")).to_be_visible()
    expect(page.locator("#down")).to_contain_text(DOWN[reason])
    expect(page.locator("[data-drawn]:visible")).to_have_count(0)
    expect(page.locator("output:visible, .answer:visible")).to_have_count(0)
    page.get_by_role("button", name=DOWN["again"], exact=True).scroll_into_view_if_needed()


def without(handset, part, answer):
    """Every request for one file fails: it is not there, or there is no way to it."""
    handset.expected += ["404", "Failed to load", "ERR_"]
    handset.context.route(f"**/{part}", answer)


def cut(route):
    route.abort()


def absent(route):
    route.fulfill(status=404, content_type="text/html", body="<p>not here</p>")


def expect_faults(handset):
    """The faults of this test are meant; whatever else goes wrong still fails it."""
    yield handset
    handset.troubles[:] = [trouble for trouble in handset.troubles if not re.search("did not arrive|a bug of ours|module|wasm|WebAssembly|ArrayBuffer", trouble)]


@pytest.fixture
def failing(handset):
    yield from expect_faults(handset)


@pytest.mark.parametrize("answer", [cut, absent])
@pytest.mark.parametrize(("address", "part"), [(page, part) for page in WHOLE for part in [*CALC, "page.json", "shared.json", *PARTS[page]]])
def test_a_part_that_did_not_arrive(failing, address, part, answer):
    """Each kind of file in turn: scripts, data, interpreter and calc."""
    without(failing, part, answer)
    is_down(failing.open(address), "missing")


def test_shared_data_of_another_version(failing):
    """Data that pages share is taken only where it is what the page was built with."""
    failing.context.route("**/shared.json", lambda route: route.fulfill(body="{}", content_type="application/json"))
    is_down(failing.open("water/tank/"), "missing")


@pytest.mark.parametrize("address", PAGES)
def test_no_calculator(failing, address):
    """Every page that works something out says when calc did not arrive."""
    without(failing, "calc.bin", absent)
    is_down(failing.open(address), "missing")


@pytest.mark.parametrize("address", ["water/tank/", "shift/bay/"])
def test_without_the_rest_of_calc(failing, address):
    """A page that asks for what is not in the first piece says that it did not arrive."""
    without(failing, "calc-rest.bin", cut)
    is_down(failing.open(address), "missing")


def test_the_first_pages_take_the_first_piece_of_calc_alone(failing):
    """Beds, a pressure, what flows now and other units come without the rest; it comes to such a page at the first question that needs it."""
    asked = []
    failing.context.route("**/calc-rest.bin", lambda route: (asked.append(route.request.url), route.continue_()))
    page = with_rig(failing)
    expect(bed(page, "Crosslay 2").locator(".bed-figure")).to_have_text("164")  # by hand in test_start.py
    page.goto(f"{failing.host.origin}pressure/")
    page.get_by_role("button", name=PRESSURE["now"]["title"]).first.tap()
    expect(page.get_by_text(PRESSURE["now"]["gauge"]).first).to_be_visible()
    read_in(page, "SI")
    expect(page.locator("output").first).to_contain_text("kPa")
    assert asked == []
    assert page.evaluate(LATE) == '{"ok": false}' and len(asked) == 1  # the same time passed on both clocks: it did not sleep


def test_start_page_without_its_script(failing):
    """The start page says so, keeps its ways on, and counts nothing."""
    without(failing, "start.js", cut)
    page = failing.open()
    is_down(page, "missing")
    expect(page.locator(".sign").first).to_be_visible()


def test_without_the_guard(failing):
    """The page answers without the script that watches it."""
    without(failing, "first.js", cut)
    page = failing.open("pressure/")
    # by hand: 15.5 x 1.5^2 x 2 + 100 = 169.75
    expect(page.locator("output")).to_have_text(re.compile("^ *170 +psi *$"))
    page.get_by_text(SITE["engine"]["loading"]).wait_for(state="detached")


@pytest.mark.parametrize("address", ["pressure/", "water/tank/"])
def test_browser_that_cannot_run_it(failing, address):
    """A browser that refuses the interpreter is told apart from a file that is missing."""
    failing.expected += ["Aborted", "wasm"]
    failing.context.route("**/engine_worker.js", lambda route: route.fulfill(body=BLOCKED + route.fetch().text(), content_type="text/javascript"))
    is_down(failing.open(address), "old")


LATER = "if (window.x) { x ?? = 1; }"  # what no browser can read yet


@pytest.mark.parametrize(("address", "part"), [("pressure/", "pressure.js"), ("shift/bay/", "common.js"), ("", "start.js")])
def test_browser_that_cannot_read_a_script(failing, address, part):
    """A script in a grammar that came after the browser is told apart from a bug."""
    failing.context.route(f"**/{part}", lambda route: route.fulfill(body=LATER, content_type="text/javascript"))
    is_down(failing.open(address), "old")
    failing.troubles[:] = [trouble for trouble in failing.troubles if "Unexpected token" not in trouble]


@pytest.mark.parametrize("part", ["page.json", "shared.json"])
def test_data_that_is_another_page(failing, part):
    """What a network that wants a sign-in sends in place of data is a part that did not arrive."""
    failing.context.route(f"**/{part}", lambda route: route.fulfill(body="<html>Sign in</html>", content_type="text/html"))
    is_down(failing.open("pressure/"), "missing")


def run_of_test(handset):
    return ways.service("test/run/#{id}/capacity", service_records.an_unfinished_record)(handset)


@pytest.mark.parametrize(("address", "thrown"), [
    *((address, "error") for address in (*PAGES, "", "checks/", "checks/due/", run_of_test)), ("water/tank/", "rejection"), ("water/tank/", "text that is read"),
])
def test_uncaught_fault(failing, address, thrown):
    """Whatever throws on a page that shows answers takes its numbers down; in whatever way, it is one guard that hears it."""
    page = failing.open(address) if isinstance(address, str) else address(failing)
    page.locator("[data-drawn] :is(button, output, input, a, .notice), [data-figure]").first.wait_for()
    expect(page.locator("#down")).to_be_hidden()
    page.evaluate(THROWN[thrown])
    is_down(page, "fault")


@pytest.fixture
def unreadable(failing):
    """A phone beside a rig whose profile no version of the site wrote."""
    failing.keeps_anything = True
    page = failing.open("test/")
    page.get_by_role("heading", level=2).first.wait_for()
    page.evaluate(SEED, {"tests": [], "rig": {**PROFILE, "hoses": 5, "tank": {"not": "text"}}})
    failing.troubles.clear()
    yield failing
    failing.troubles.clear()


def test_profile_that_no_page_can_read(unreadable):
    """A rig's profile that makes a page throw leaves no number of the page before it."""
    is_down(unreadable.open("water/tank/"), "fault")


def test_a_list_of_pages_beside_a_profile_that_none_can_read(unreadable):
    """The list of the water pages, which has a number only of what is sound, names the faults and shows none."""
    page = unreadable.open("water/")
    expect(page.locator(".faults li")).to_have_count(2)  # the tank and the hose
    expect(page.locator(".page-figure:not([data-none])")).to_have_count(0)
    assert unreadable.troubles == []
