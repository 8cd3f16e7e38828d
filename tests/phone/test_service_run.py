"""A run at the panel as it is seen: no verdict before its end, figures one touch away, a loss said once, its clock on every page."""
import json
import re

import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests import service_records as records
from tests.phone.proof import START_MS, T, begun, run_of, store  # noqa: F401  the fixture
from tests.phone.words import SITE

RUN = T["run"]
RUNNING = "JSON.parse(localStorage.getItem('running') ?? '{}').test ?? null"


# A phone whose answers are held back until its page calls `answers()`.
HOLDS = """() => {
  const { postMessage } = Worker.prototype;
  const held = [];
  Worker.prototype.postMessage = function (...told) { held.push([this, told]); };
  window.answers = () => {
    Worker.prototype.postMessage = postMessage;
    for (const [worker, told] of held) postMessage.apply(worker, told);
  };
}"""


def figure(one, text):
    return one.page.get_by_role("group", name=RUN["tray"].split("{")[0]).get_by_role("button", name=text)


def test_no_verdict_before_the_end(run_of):
    """A figure that is short is short while the run goes on, in the list too; failed it is once the run is over."""
    one = run_of(1)
    one.type("discharge_psi", "130")  # by hand: 13 below the gauge it is set to, of which the instruments may err 3.5
    live = one.page.locator(".live-figure").first
    expect(live).to_contain_text(T["stance"]["short"])
    one.still()
    one.press(RUN["take"])
    failed = one.page.locator("#test").get_by_text(T["status"]["fail"], exact=True)
    expect(failed).to_have_count(0)
    one.page.evaluate("(part) => { location.hash = part; }", one.id)
    row = one.page.get_by_role("navigation").get_by_role("link", name=T["test_name"]["capacity"])
    expect(row).to_contain_text(T["stage"]["now"])
    expect(failed).to_have_count(0)
    one.part("capacity")
    one.press(RUN["stop"])
    one.press(RUN["reasons_stop"][0])
    expect(failed.first).to_be_visible()
    one.page.evaluate("(part) => { location.hash = part; }", one.id)
    expect(row).to_contain_text(T["stage"]["failed"])


def test_a_gauge_that_stands_is_read_by_one_touch(run_of):
    """The next figure on the gauge, the same figure on the others, one after another at one place, and the key that names the reading: nothing is as before."""
    one = run_of(1)
    one.clock.passes(301)
    cells = one.page.locator(".cell")
    expect(cells.filter(has_text=RUN["as_before"])).to_have_count(3)
    one.page.locator("input[name=pitot_psi]").tap()
    figure(one, "72").tap()
    expect(one.page.locator("input[name=pitot_psi]")).to_have_value("72")
    expect(cells.filter(has_text=RUN["as_before"])).to_have_count(2)
    one.page.locator("input[name=discharge_psi]").tap()
    same = one.page.locator(".tray-same")
    same.evaluate("(key) => { key.click(); key.click(); }")  # a finger that bounces reads one gauge, not two
    expect(cells.filter(has_text=RUN["as_before"])).to_have_count(1)
    expect(one.page.locator(".cell[data-here]")).to_contain_text(T["cell"]["engine_rpm"])
    one.clock.passes(1)
    same.tap()
    expect(cells.filter(has_text=RUN["as_before"])).to_have_count(0)
    expect(same).to_have_count(0)
    one.press(RUN["take_at"].format(at="5:00"))
    one.says(RUN["take_back"].format(at="5:02"))
    expect(one.page.get_by_text(RUN["kept_before"].split(":")[0] + ":")).to_have_count(0)
    (_, kept) = one.record()["tests"]["capacity"]["attempts"][0]["sets"]
    assert kept["values"] == {"pitot_psi": ["72@US"], "discharge_psi": "145@US", "engine_rpm": "1600@US"}
    assert "as_before" not in kept


def test_a_touch_before_the_answer_to_what_was_typed_counts_once(run_of):
    """A reading that is kept on a slow phone just after it was typed stands at the time of its touch, and two quick touches keep it once."""
    one = run_of(1)
    one.counts("0:00")
    one.clock.passes(60)
    one.counts("1:00")
    one.page.evaluate(HOLDS)
    for name, text in (("pitot_psi", "71"), ("engine_rpm", "1600"), ("discharge_psi", "152")):
        one.type(name, text)
    one.page.get_by_role("button", name=RUN["take"], exact=True).evaluate("(key) => { key.click(); key.click(); }")
    one.clock.passes(4)
    one.page.evaluate("answers()")
    one.says(RUN["take_back"].format(at="1:00"))
    one.counts("1:04")
    first, second = one.record()["tests"]["capacity"]["attempts"][0]["sets"]
    assert (first["at_s"], second["at_s"], second["values"]["discharge_psi"]) == (0, 60, "152@US")


def test_a_second_touch_brings_the_keys(run_of):
    """The first touch of a cell chooses it and brings no keys up over its figures; a second does."""
    one = run_of(1)
    field = one.page.locator("input[name=engine_rpm]")
    field.tap()
    expect(field).to_have_attribute("inputmode", "none")
    expect(figure(one, "1590")).to_be_visible()
    field.tap()
    expect(field).to_have_attribute("inputmode", "decimal")
    expect(field).to_be_focused()
    field.blur()
    expect(field).to_have_attribute("inputmode", "none")
    one.page.locator(".tray-same").tap()  # it is read now: its key is that of the keys
    one.page.locator("input[name=engine_rpm]").tap()
    one.page.get_by_role("button", name=RUN["type"].split("{")[0]).tap()
    expect(field).to_have_attribute("inputmode", "decimal")


@pytest.mark.parametrize("run_of", ["en", "fr"], indirect=True)
def test_why_the_gauge_is_held_above_the_point_stands_where_the_figure_stands(run_of):
    """By hand 150 net at this rig's lift is less on the gauge: a touch on the figure to hold says what is on top of that."""
    one = run_of(1, is_started=False)
    one.page.locator(".clock-side .term").tap()
    term = data.load(f"words/{'fr' if '/fr/' in one.page.url else 'en'}/terms")["term"]["hold_discharge"]
    expect(one.page.get_by_role("dialog")).to_contain_text(term["says"])


@pytest.mark.parametrize("part", ["governor", "intake_relief", "interlock"])
def test_a_narrow_phone_breaks_no_word_of_a_title(take, part):
    """320 px wide, in French: the longest names of parts stand in the bar on two or three lines, each word whole."""
    handset = take(locale="fr-CA", viewport={"width": 320, "height": 640})
    record = store(handset, records.an_unfinished_record())
    title = handset.open(f"fr/test/run/#{record['id']}/{part}").locator("h1")
    expect(title).to_have_text(data.words("service", "fr")["test_name"][part])
    assert title.evaluate("(title) => { title.style.overflowWrap = 'normal'; title.style.hyphens = 'manual'; return title.scrollWidth - title.clientWidth; }") <= 0
    assert title.bounding_box()["height"] <= 75  # three lines


def test_every_page_shows_the_clock(run_of):
    """The strip says the run, its time and that a reading is due; right after a pause, a kill and a resume; gone at its end."""
    one = run_of(1)
    one.clock.passes(61)
    other = one.handset.open("water/")
    strip = other.get_by_role("navigation", name=SITE["strip"]["title"])
    expect(strip.get_by_role("link").first).to_contain_text(T["test_name"]["capacity"])
    expect(strip).to_contain_text("1:01")
    told = one.page.evaluate(RUNNING)
    assert told["due_at"] - told["began_at"] == 300_000 and told["began_at"] == pytest.approx(START_MS, abs=1500)
    one.press(RUN["pause"])
    one.press(RUN["reasons_pause"][0])
    expect(strip).to_be_hidden()
    one.clock.passes(600)
    one.type("pitot_psi", "71")
    one.press(RUN["resume"])
    one.clock.passes(9)
    expect(strip).to_contain_text("1:10")
    one.reborn(meanwhile_s=20)
    one.counts("1:30")
    expect(strip).to_contain_text("1:30")
    one.clock.passes(211)
    expect(strip).to_contain_text(SITE["strip"]["read"])
    strip.get_by_role("link").first.tap()
    other.close()
    one.press(RUN["stop"])
    one.press(RUN["reasons_stop"][1])
    expect(one.page.get_by_role("button", name=RUN["once_more"])).to_be_visible()
    assert one.page.evaluate(RUNNING) is None


def test_to_do_not_shown_and_left_out_are_three(take):
    """In the list each part says where it stands, and the key at the foot goes on with the next."""
    handset = take()
    record = begun(json.loads(json.dumps(records.a_record(rig="rig-1"))), START_MS)
    record["tests"]["governed"] = {"not_done": T["test"]["reasons_not_done"][0]}
    store(handset, record)
    page = handset.open(f"test/run/#{record['id']}")
    stations = page.get_by_role("navigation", name=T["test"]["title"])
    for part, state in (("checks_dry", T["stage"]["passed"]), ("vacuum", T["stage"]["todo"]), ("capacity", T["stage"]["begun"]),
                        ("governed", T["test"]["not_done_kept"].format(reason=T["test"]["reasons_not_done"][0]))):
        expect(stations.get_by_role("link", name=T["test_name"][part]).last).to_contain_text(state)
    expect(page.locator(".overall")).to_have_text(re.compile(f"· {re.escape(T['test']['left_of'].format(count=1))}$"))
    page.get_by_role("link", name=T["test"]["next"].format(title=T["test_name"]["gauges_zero"])).tap()
    expect(page.locator("h1")).to_have_text(T["test_name"]["gauges_zero"])


@pytest.mark.parametrize("address", ["test/run/", "test/sheet/", "test/quick/"])
def test_a_page_without_its_test_leads_on(handset, address):
    """It says what is not there, and one key leads to where it can be had; nothing counts on."""
    page = handset.open(address)
    on = page.locator("main").get_by_role("link").last
    expect(on).to_be_visible()
    expect(page.get_by_text(SITE["engine"]["loading"])).to_have_count(0)
    on.tap()
    page.wait_for_url(lambda url: address not in url)


def test_a_sheet_is_no_wider_than_the_phone(handset):
    """Its runs are rows that open at a touch, its parts rows of one thumb; nothing scrolls sideways, open or not."""
    record = store(handset, records.a_failed_record())
    page = handset.open(f"test/sheet/#{record['id']}")
    runs = page.get_by_role("button", name=T["sheet"]["readings"])
    expect(runs).to_have_count(5)
    gauge = page.get_by_role("cell", name="145").first
    expect(gauge).to_be_hidden()
    for key in runs.all():
        key.tap()
    expect(gauge).to_be_visible()
    for row in page.locator("button.result-head").all():
        assert row.bounding_box()["height"] >= 56
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_every_page_of_paper_has_its_rig(handset):
    """On paper the rig and the date stand at the head of each page, every reading is there, and signatures stand with the results."""
    record = store(handset, records.a_failed_record())
    page = handset.open(f"test/sheet/#{record['id']}")
    page.locator(".paper").wait_for()
    page.emulate_media(media="print")
    head = page.locator(".sheet-head")
    expect(head).to_contain_text(record["rig_name"])
    expect(head).to_contain_text("2026")
    assert head.evaluate("(part) => getComputedStyle(part).display") == "table-header-group"  # stands again on every page
    last = page.locator(".sheet-last")
    assert last.evaluate("(part) => getComputedStyle(part).breakInside") == "avoid"
    expect(last).to_contain_text(T["sheet"]["signature"])
    expect(last).to_contain_text(T["test_name"]["vacuum"])
    expect(page.get_by_role("cell", name="145").first).to_be_visible()
    expect(page.locator(".dock")).to_be_hidden()


def test_readings_that_contradict_each_other_are_questioned(run_of):
    """Less speed and more pressure at the same flow: asked as they are typed, and the reading can be kept all the same."""
    one = run_of(1)
    doubt = one.page.locator(".doubt")
    expect(doubt).to_have_count(0)
    one.type("engine_rpm", "1500")
    one.type("discharge_psi", "155")
    one.still()
    expect(doubt).to_have_text(T["doubt"]["speed_down_pressure_up"])
    expect(doubt).to_be_in_viewport(ratio=1)
    one.press(RUN["take"])
    expect(doubt).to_have_count(0)  # it is the last one now
    assert len(one.record()["tests"]["capacity"]["attempts"][0]["sets"]) == 2
