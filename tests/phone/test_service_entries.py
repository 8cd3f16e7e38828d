"""What is entered in a service test: what it may start on, what is missing, what cannot be, and where a failure leads."""
import re
import urllib.parse

from playwright.sync_api import expect

from site_src.content import data
from tests import service_records as records
from tests.phone import history
from tests.phone.proof import START_MS, T, begun, keep_rig, run_of, store  # noqa: F401  the fixture
from tests.phone.store import do
from tests.phone.words import SITE, said


def test_a_run_starts_on_its_flow(run_of):
    """Outside the band the clock does not start and says why; what a pump cannot reach is recorded as a failure, with its reading."""
    one = run_of(1, is_started=False)
    start = one.page.get_by_role("button", name=T["run"]["begin"], exact=True)
    expect(start).to_be_enabled()
    one.type("pitot_psi", "50")  # 2 1/4 in: 1,065 gpm of 1,250
    expect(start).to_be_disabled()
    one.says(T["run"]["waits_flow"].format(least="1187.5", most="1312.5", u_flow="gpm"))
    one.counts("0:00")
    one.press(T["run"]["short"])
    one.says(T["status"]["fail"])
    (attempt,) = one.record()["tests"]["capacity"]["attempts"]
    assert (attempt["clock_s"], attempt["stopped"], len(attempt["sets"])) == (0, T["run"]["reasons_stop"][0], 1)
    one.type("pitot_psi", "70")
    one.press(T["run"]["once_more"])
    one.press(T["run"]["begin"])
    one.carry()  # the gauge and the counter, read for the attempt before it
    one.clock.passes(60)
    one.part("leaks")
    strip = one.page.get_by_role("link", name=T["test_name"]["capacity"])
    expect(strip).to_contain_text("1:00")
    strip.tap()
    one.counts("1:00")


def test_what_is_missing_leads_to_its_field(handset):
    """Before there is a plan it is said what to put in; so is what a gauge figure waits for, and what the rig's profile lacks."""
    page = history.held(handset)
    keep_rig(page, {**history.PROFILE, "governed": ""})
    record = begun(records.a_record(rig=history.PROFILE["id"]), START_MS)
    do(page, "keepRecord", "tests", {**record, "conditions": {}, "tests": {}, "rig": {key: value for key, value in record["rig"].items() if key != "governed"}})
    page.goto(f"{handset.host.origin}test/run/#{record['id']}")
    page.get_by_role("link", name=T["ask"]["source"]).tap()
    expect(page.get_by_role("radio", name=T["condition"]["draft"])).to_be_focused()
    page.get_by_role("radio", name=T["condition"]["draft"]).tap()
    page.locator("#back").tap()
    page.get_by_role("link", name=T["test_name"]["capacity"]).tap()
    page.locator(".wants").first.get_by_role("link", name=T["field"]["lift_ft"]).tap()
    expect(page.locator("#lift_ft")).to_be_focused()
    page.locator("#lift_ft").fill("99")
    page.locator("#back").tap()
    page.get_by_role("link", name=T["test"]["possible"].format(least=0, most=34, unit="ft")).tap()
    expect(page.locator("#lift_ft")).to_have_value("99")
    page.evaluate("(part) => { location.hash = part; }", f"{record['id']}/governor")
    for place, psi in enumerate((150, 90, 250)):  # NFPA 1910's three states, from memory: the same reading is taken at each, and each says what it lacks
        state = page.locator("details.state summary").nth(place)
        expect(state).to_contain_text(T["at"]["point"].format(at=psi, u_pressure="psi"))
        expect(state).to_contain_text(T["test"]["number"].format(count=0, of=4))
    page.evaluate("(part) => { location.hash = part; }", f"{record['id']}/governed")
    expect(page.get_by_role("link", name=T["missing"]["governed_rpm"])).to_have_attribute("href", f"{handset.host.origin}rig/#field-governed")
    page.get_by_role("link", name=T["missing"]["governed_rpm"]).tap()
    expect(page.locator("#field-governed")).to_be_focused()  # its section unfolded
    page.go_back()
    keep_rig(page, history.PROFILE)  # which knows the speed
    page.reload()
    page.locator(".outcome").wait_for()
    expect(page.get_by_role("link", name=T["missing"]["governed_rpm"])).to_have_count(0)


def test_a_failure_leads_to_its_cause(handset):
    """Beside each failing verdict stands the way into the diagnosis, with the signs it knows; where it knows none, to its start."""
    page = history.held(handset, [records.a_failed_record(rig=history.PROFILE["id"])])
    test = f"test/run/#{records.a_failed_record(rig=history.PROFILE['id'])['id']}"
    found = {}
    for part in ("", "/capacity", "/vacuum", "/fifty"):
        page.goto("about:blank")
        page.goto(handset.host.origin + test + part)
        page.locator(".verdict").first.wait_for()
        links = page.get_by_role("link", name=T["sign"]["go_on"])
        found[part] = [urllib.parse.unquote(link.get_attribute("href")).partition("diagnose/")[2] for link in links.all()]
    assert [len(links) for links in found.values()] == [1, 1, 1, 0]
    assert "vacuum_falls" in found["/vacuum"][0] and "pressure_short" in found["/capacity"][0]
    assert all(sign in found[""][0] for sign in ("vacuum_falls", "pressure_short"))
    page.goto(f"{handset.host.origin}{test}")
    page.get_by_role("link", name=T["sign"]["go_on"]).tap()
    expect(page.locator("#diagnose .notice").filter(has_text=data.words("diagnose")["diagnose"]["bad_link"])).to_have_count(0)
    expect(page.locator("#acts .key").first).to_be_visible()


def test_what_no_gauge_can_show_is_refused(run_of):
    """At its field, with what there can be: too high at once, too low when it is typed out. The entry stands, and is not kept."""
    one = run_of(1)
    for typed in ("99999", "-50"):
        one.type("pitot_psi", typed)
        one.page.locator("input[name=pitot_psi]").blur()
        one.says(T["test"]["possible"].format(least=0, most=200, unit="psi"))
        expect(one.page.locator("input[name=pitot_psi]")).to_have_value(typed)
        expect(one.page.get_by_role("button", name=T["run"]["take"], exact=True)).to_be_disabled()
    one.part("site")
    one.type("water_f", "6")
    refusal = one.page.get_by_text(T["test"]["possible"].format(least=32, most=212, unit="°F"))
    expect(refusal).to_have_count(0)
    one.page.locator("input[name=water_f]").blur()
    expect(refusal).to_be_visible()


def test_no_tick_beside_what_is_too_close_to_tell(run_of):
    """151.6 psi of 150 with gauges that may err 3 is close and no more; further past its point it meets it. By hand: 160 is 166.6 net."""
    one = run_of(1, is_started=False)
    figure = one.page.locator(".live-figure").first
    expect(figure).to_contain_text(T["stance"]["close"])
    expect(figure).to_have_attribute("data-level", "hold")
    one.type("discharge_psi", "160")
    expect(figure).to_contain_text(T["stance"]["meets"])
    expect(figure).to_have_attribute("data-level", "go")


def test_a_tip_keeps_its_own_unit(run_of):
    """A tip of 2 1/4 in is that in every system: no page calls it 2 1/4 mm."""
    one = run_of(1, is_started=False)
    one.page.evaluate("localStorage.setItem('units', 'SI')")
    one.reborn()
    expect(one.page.locator(".cell-figure").first).to_contain_text("kPa")
    expect(one.page.locator(".run-point")).to_contain_text("1 × 2¼\u00a0in")


def test_a_held_key_steps_on(run_of):
    """A key that is held goes on from what stands there; a tap goes to the next whole step."""
    one = run_of(1)
    field = one.page.locator("input[name=discharge_psi]")
    field.fill("145.5")
    key = one.page.get_by_role("button", name=said("pressure", "more", what=T["field"]["discharge_psi"]))
    key.tap()
    expect(field).to_have_value("146")
    key.dispatch_event("pointerdown")
    for _ in range(20):  # of two seconds, or more where the interpreter is slow
        one.clock.passes(0.5)
        one.page.wait_for_timeout(50)  # the interpreter's clock is the real one
        if float(field.input_value()) >= 149:
            break
    key.dispatch_event("pointerup")
    assert float(field.input_value()) >= 149


def test_a_stop_asks_why_in_sight_and_keeps_it(run_of):
    """The reasons come into view with the focus; the one that was told stands beside the verdict, and all parts open at their top."""
    one = run_of(1)
    one.press(T["run"]["stop"])
    heading = one.page.get_by_role("group", name=T["run"]["stop"]).get_by_role("heading")
    expect(heading).to_be_focused()
    expect(heading).to_be_in_viewport(ratio=1)
    one.press(T["run"]["reasons_stop"][0])
    one.says(T["run"]["stopped_for"].format(reason=T["run"]["reasons_stop"][0]) + " " + T["run"]["short_told"])
    one.page.locator("#back").tap()
    expect(one.page.get_by_role("heading", level=1)).to_be_focused()
    assert one.page.evaluate("scrollY") == 0


def test_every_test_has_its_sheet(handset):
    """The sheet stands of a test that passed, of one that is not done and of one just begun with its site, with nothing thrown."""
    begun_one = begun(records.a_record(rig=history.PROFILE["id"]), START_MS)
    kept = [records.a_record(1), records.an_unfinished_record(), {**begun_one, "id": "just-begun", "tests": {}}]
    history.held(handset, kept)
    for record in kept:
        page = handset.open(f"test/sheet/#{record['id']}")
        expect(page.get_by_role("button", name=T["sheet"]["print"])).to_be_visible()
        expect(page.get_by_role("heading", name=record["rig_name"])).to_be_visible()
        page.close()


def test_no_page_shows_a_name_to_be_filled(handset):
    """With parts left out and readings never taken, each page of a test says its points with their units."""
    record = records.an_unfinished_record()
    record["tests"]["governed"] = {"not_done": T["test"]["reasons_not_done"][0]}
    record["tests"]["gauges"] = {"values": {"master.at_150.panel_psi": "150@US"}}
    record["finished_ms"] = record["begun_ms"] + 7_200_000
    history.held(handset, [record])
    for address in ("sheet", "run", "years"):
        page = handset.open(f"test/{address}/#{record['rig_id'] if address == 'years' else record['id']}")
        expect(page.locator("main")).not_to_have_attribute("aria-busy", "true")
        expect(page.locator("h1, h2").first).to_be_visible()
        if address == "sheet":
            expect(page.locator("ul.left")).to_contain_text(f"at 150 {SITE['unit']['US']['pressure']}")
            counts = [int(count) for count in re.findall(r"\d+", page.locator(".overall p").first.inner_text().split(".")[0])]
            left = len([part for part in record["tests"].values() if part.get("not_done")])
            assert counts[-1] == left and sum(counts) == page.locator(".result").count()  # each part in one of them
            expect(page.locator("dl.facts div").filter(has_text=T["field"]["weather"])).to_contain_text(T["sheet"]["not_noted"])  # nobody reads it off a gauge
        assert not re.findall(r"\{\w+\}", page.locator("main").text_content())
        page.close()


def test_no_run_starts_before_the_checks_before_water(run_of):
    """Each part that wants a yes is named and led to, and the clock waits for them all, however whole the reading."""
    one = run_of(1, is_started=False, ready=())
    warning = one.page.locator(".before-water")
    start = one.page.get_by_role("button", name=T["run"]["begin"], exact=True)
    for part, check in (("checks_dry", None), ("interlock", None), ("shift", None)):
        expect(start).to_be_disabled()
        one.says(T["run"]["waits_before"])
        warning.get_by_role("link", name=T["test_name"][part]).tap()
        expect(one.page.locator("h1")).to_have_text(T["test_name"][part])
        for group in one.page.locator("fieldset.chips").filter(has=one.page.get_by_role("radio", name=T["condition"]["no"])).all():
            group.locator("label.chip").filter(has_text=T["condition"]["yes"]).tap()
        one.part("capacity")
    expect(warning).to_have_count(0)
    one.press(T["run"]["begin"])
    one.clock.passes(60)
    one.counts("1:00")


def test_a_named_person_may_go_on_and_it_stays_on_the_sheet(run_of):
    """A name and a reason are wanted; a reload loses neither; the sheet says who, why and without what."""
    one = run_of(1, is_started=False, ready=("checks_dry", "interlock"))
    one.page.get_by_text(T["run"]["override"], exact=True).tap()
    expect(one.page.get_by_role("button", name=T["run"]["override_key"])).to_be_disabled()
    one.page.get_by_label(T["run"]["override_name"]).fill("A. Tester")
    one.reborn()
    one.page.get_by_text(T["run"]["override"], exact=True).tap()
    expect(one.page.get_by_label(T["run"]["override_name"])).to_have_value("A. Tester")
    one.page.get_by_label(T["run"]["override_reason"]).fill("light out, shift seen at the shaft")
    expect(one.page.get_by_role("button", name=T["run"]["begin"], exact=True)).to_be_disabled()
    one.page.get_by_role("button", name=T["run"]["override_key"]).tap()
    one.says("light out, shift seen at the shaft")
    still_open = one.page.locator(".still-open")
    expect(still_open.get_by_text(T["check"]["shift_proved"])).to_be_hidden()  # the readings stay on the screen
    still_open.locator("summary").tap()
    expect(still_open.get_by_text(T["check"]["shift_proved"])).to_be_visible()
    one.press(T["run"]["begin"])
    one.clock.passes(60)
    one.counts("1:00")
    test_id = one.id
    sheet = one.handset.open(f"test/sheet/#{test_id}")
    row = sheet.get_by_role("listitem").filter(has_text="light out, shift seen at the shaft")
    expect(row).to_contain_text("A. Tester")
    expect(row).to_contain_text(T["check"]["shift_proved"])


def test_what_is_not_answered_is_not_passed_over(handset):
    """Next names what has no answer, Answer leads to it, and only a touch of its own goes on without; a part that is answered goes straight on."""
    record = store(handset, begun(records.a_record(), START_MS, ready=("checks_dry",)))
    page = handset.open(f"test/run/#{record['id']}/interlock")
    next_key = page.get_by_role("button", name=T["test"]["next"].format(title=T["test_name"]["shift"]))
    checks = page.locator("fieldset.check")
    checks.nth(0).locator("label.chip").last.tap()
    next_key.tap()
    question = page.get_by_role("alert")
    expect(question).to_contain_text(T["test"]["unanswered"])
    expect(question).to_contain_text(checks.nth(1).locator("legend").inner_text())
    expect(question).not_to_contain_text(checks.nth(0).locator("legend").inner_text())
    page.get_by_role("button", name=T["test"]["answer_it"]).tap()
    expect(question).to_have_count(0)
    expect(checks.nth(1).locator("input").first).to_be_focused()
    next_key.tap()
    page.get_by_role("link", name=T["test"]["leave_open"]).tap()
    expect(page.locator("h1")).to_have_text(T["test_name"]["shift"])
    page.evaluate("(part) => { location.hash = part; }", f"{record['id']}/checks_dry")
    page.get_by_role("link", name=T["test"]["next"].format(title=T["test_name"]["interlock"])).tap()
    expect(page.locator("h1")).to_have_text(T["test_name"]["interlock"])


def test_the_site_is_asked_once(run_of):
    """What was entered under Site stands in Conditions with its limit and leads back there; the water at the end is asked there alone."""
    one = run_of(1, is_started=False)
    one.part("conditions")
    lift = one.page.get_by_role("link", name=T["field"]["lift_ft"])
    expect(lift).to_contain_text("10")
    expect(lift).to_contain_text(T["figure_status"]["pass"])
    assert [field.get_attribute("name") for field in one.page.locator(".bare input").all()] == ["water_end_f"]
    lift.tap()
    expect(one.page.locator("#lift_ft")).to_be_focused()
    expect(one.page.get_by_role("img", name=T["condition"]["picture"])).to_contain_text("10 ft")
    one.type("lift_ft", "8")
    expect(one.page.get_by_role("img", name=T["condition"]["picture"])).to_contain_text("8 ft")


def test_one_pressure_of_a_part_is_open_at_a_time(handset):
    """Line gauges of three lines: one pressure at a time stands above the keys, the dock leads from a read one to the next, and a folded one says how far it is."""
    record = store(handset, begun({**records.a_record(), "rig": {**records.RIG, "gauges": "3"}}, START_MS))
    page = handset.open(f"test/run/#{record['id']}/line_gauges")
    states = page.locator("details.state")
    expect(states).to_have_count(3)
    is_open = [states.nth(place).and_(page.locator("[open]")) for place in range(3)]
    expect(is_open[0]).to_be_visible()
    fields = states.nth(0).locator("input")
    expect(fields).to_have_count(4)
    assert fields.last.bounding_box()["y"] + fields.last.bounding_box()["height"] < page.locator(".dock").bounding_box()["y"]
    for place, text in enumerate(("150", "152", "149", "170")):  # by hand: 20 psi off, of which 10 are allowed
        fields.nth(place).fill(text)
    page.get_by_role("button", name=T["test"]["next"].format(title=T["at"]["point"].format(at="200", u_pressure="psi"))).tap()
    expect(is_open[1]).to_be_visible()
    expect(is_open[0]).to_have_count(0)
    expect(states.nth(0).locator("summary")).to_contain_text(T["figure_status"]["fail"])
    expect(states.nth(2).locator("summary")).to_contain_text(T["test"]["number"].format(count=0, of=4))
    states.nth(2).locator("summary").tap()
    expect(is_open[2]).to_be_visible()
    expect(is_open[1]).to_have_count(0)
