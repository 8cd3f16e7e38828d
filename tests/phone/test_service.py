"""A service test at the pump: killed, offline, with clocks that are set and a store that is full. No reading and no minute is lost."""
import copy
import json
import random

import pytest
from playwright.sync_api import expect

from calc.service import page as service_page
from site_src.content import data, units
from tests import service_records as records
from tests.phone import history
from tests.phone.handset import Handset, Host
from tests.phone.proof import FULL, NAME, REFUSE, RIG, Clock, Proof, T, keep_rig, kept_test, run_of  # noqa: F401  the fixture

PLAN = service_page.answer(copy.deepcopy(records.a_record()), units.fine("US"))["plan"]
RUNS = [test for test in PLAN["tests"] if test["kind"] == "run"]
YEARS = data.words("service")["years"]
SEED, KILLS, MOMENTS = 1911, 5, 110
HOUR_S = 3600


@pytest.fixture
def pit(browser, built):
    """A phone at the pit: the site is installed, there is no signal, and its clocks are in hand."""
    handset = Handset(browser, Host(built), worker=True)
    start = handset.install()
    keep_rig(start, RIG)
    start.close()
    handset.lose_signal()
    handset.clock = Clock(handset.context)
    yield handset
    handset.close()


def prepare(proof):
    """Site, checks and all else that needs no stream, by touch."""
    proof.part("site")
    for name, label in (("source", T["condition"]["draft"]), ("suction_size_in", "6 in"), ("suction_lines", "1"), ("meters", "0"), ("gauges", "0"), ("auxiliary", "No")):
        proof.choose(name, label)
    for name in ("lift_ft", "depth_ft", "strainer_ft", "suction_length_ft", "air_f", "water_f", "barometer_inhg", "altitude_ft"):
        proof.type(name, records.SITE[name])
    for tip in ("1¾", "2", "2¼"):
        proof.moment(proof)
        proof.page.get_by_role("group", name=T["condition"]["tips_in"]).get_by_role("checkbox", name=tip, exact=True).tap()
    for test in PLAN["tests"]:
        if test["id"] not in ("vacuum", "vacuum_valves", "conditions") and test["kind"] != "run":
            proof.part(test["id"])
            proof.answer(test)
    proof.part("conditions")
    proof.type("water_end_f", "65")


def hold_vacuum(proof, clock):
    """Five minutes, with the phone's clock an hour ahead in the middle of them."""
    proof.part("vacuum")
    proof.type("vacuum_reached_inhg", "21")
    expect(proof.page.get_by_role("button", name=T["run"]["begin"], exact=True)).to_be_disabled()
    proof.says(T["run"]["waits_limit"])
    proof.type("vacuum_reached_inhg", "24")
    proof.says(T["run"]["at_end"])
    expect(proof.page.locator("input#vacuum_after_inhg")).to_have_count(0)  # read at two minutes it would not be what was left after five
    proof.press(T["run"]["begin"])
    clock.passes(120)
    expect(proof.page.locator("input#vacuum_after_inhg")).to_have_count(0)
    clock.is_set(HOUR_S)
    clock.passes(60)
    proof.counts("3:00")
    clock.passes(120)
    proof.says(T["run"]["over"])
    proof.press(T["run"]["begin_again"])  # a stray touch: what was held is not lost by it
    proof.press(T["test"]["remove_no"])
    proof.counts("5:00")
    proof.type("vacuum_after_inhg", "20")
    proof.says(T["code"]["met"])
    proof.part("vacuum_valves")  # the same once more, for the intake valves
    proof.type("vacuum_reached_inhg", "24")
    proof.press(T["run"]["begin"])
    proof.rests()
    clock.passes(300)
    proof.says(T["run"]["over"])
    proof.type("vacuum_after_inhg", "20")
    proof.says(T["code"]["met"])


def keep(at_s):
    """The key that keeps the reading due then."""
    return T["run"]["take_at"].format(at=f"{at_s // 60}:{at_s % 60:02}")


def read(proof, test, pitot_psi=None, keys=()):
    """One set of readings, kept by whichever of the keys there is; with none of them only typed."""
    option = test["tips"][0]
    proof.type("discharge_psi", f"{test['gauge_psi'] + 2:.0f}")
    for place in range(option["count"]):
        proof.type("pitot_psi", str(pitot_psi or round(option["pitot_psi"] + 2)), place)
    proof.type("engine_rpm", "1600")
    if keys:
        proof.moment(proof)
        one, other = (proof.page.get_by_role("button", name=key, exact=True) for key in keys)
        one.or_(other).tap()


def stray_and_pause(proof, clock, test):
    """A first attempt at the capacity: it starts on its flow, a pause keeps its reason, a stray stops the clock and says why."""
    proof.part(test["id"])
    proof.type("discharge_psi", "145")
    expect(proof.page.get_by_role("button", name=T["run"]["begin"], exact=True)).to_be_disabled()
    proof.says(T["run"]["waits"])
    read(proof, test, keys=[T["run"]["begin"]] * 2)
    clock.passes(200)
    proof.press(T["run"]["pause"])
    proof.press(T["run"]["reasons_pause"][2])
    clock.passes(500)
    proof.counts("3:20")
    expect(proof.page.get_by_role("button", name=T["run"]["resume"], exact=True)).to_be_disabled()
    read(proof, test, keys=())  # the flow, after the pause
    proof.press(T["run"]["resume"])
    clock.passes(100)
    read(proof, test, pitot_psi=90, keys=())
    proof.says(T["run"]["straying"])
    proof.press(T["run"]["take_stray"])
    proof.says(T["run"]["strayed"])
    proof.counts("5:00")


def run(proof, clock, test, meanwhile):
    """A run to its end, read when it is due; `meanwhile(at_s)` is done before each reading."""
    proof.part(test["id"])
    again = proof.page.get_by_role("button", name=T["run"]["once_more"], exact=True)
    proof.page.locator(".dock").wait_for()
    if again.count():  # an attempt before it is over
        again.tap()
    at_s = 0
    for due_s in test["due_s"]:
        proof.rests()
        passed = meanwhile(due_s)
        clock.passes(due_s - at_s - passed) if due_s - at_s > passed else None
        at_s = due_s
        read(proof, test, keys=[keep(due_s) if due_s else T["run"]["begin"]] * 2)
    proof.says(T["code"]["met"])


def test_a_whole_test_by_touch(pit):
    """Killed five times, the clock set by an hour on and back, the store full for a while: a pass with every minute and reading."""
    clock = pit.clock
    doomed = set(random.Random(SEED).sample(range(1, MOMENTS), KILLS))
    count = [0, 0]

    def moment(proof):
        count[0] += 1
        if count[0] in doomed:
            count[1] += 1
            proof.reborn()

    page = pit.open("test/")
    page.get_by_role("button", name=f"{T['test']['begin']}: {NAME}").tap()
    page.get_by_text(T["test"]["site"], exact=True).wait_for()
    proof = Proof(pit, clock, page, moment)
    prepare(proof)
    hold_vacuum(proof, clock)
    stray_and_pause(proof, clock, RUNS[0])

    def meanwhile(due_s):
        if due_s == 300:  # twenty seconds dead, and they count
            proof.reborn(meanwhile_s=20)
            return 20
        if due_s == 600:  # the phone is set right again
            clock.is_set(-HOUR_S)
        if due_s == 900:
            proof.page.evaluate(FULL)
            proof.type("discharge_psi", "146")
            proof.is_kept("noted")
            proof.reborn()  # what is in the note alone is there again
            expect(proof.page.locator("input[name=discharge_psi]")).to_have_value("146")
        return 0

    for test in RUNS:
        run(proof, clock, test, meanwhile if test is RUNS[0] else lambda due_s: 0)
    assert count[0] > MOMENTS and count[1] == KILLS
    record = proof.record()
    attempts = {test["id"]: record["tests"][test["id"]]["attempts"] for test in RUNS}
    assert [attempt["clock_s"] for attempt in attempts["capacity"]] == pytest.approx([300, 1200], abs=0.5)
    for test in RUNS:
        assert attempts[test["id"]][-1]["clock_s"] == pytest.approx(test["hold_s"], abs=0.5)
        assert [each["at_s"] for each in attempts[test["id"]][-1]["sets"]] == pytest.approx(test["due_s"], abs=0.5)
    assert [(event["kind"], event.get("reason", "")) for event in attempts["capacity"][0]["clock"]["events"]] == [
        ("start", ""), ("pause", T["run"]["reasons_pause"][2]), ("resume", ""), ("strayed", "")]
    assert sorted(event["s"] for event in record["events"] if event["kind"] == "moved") == pytest.approx([-HOUR_S, HOUR_S], abs=1)
    proof.page.get_by_role("link", name=T["test"]["back"]).tap()
    proof.press(T["test"]["finish"])
    proof.press(T["test"]["finish_yes"])
    expect(proof.page.locator(".overall")).to_have_text(T["status"]["pass"])
    expect(proof.page.locator(".overall")).to_be_in_viewport()


def test_two_rigs_at_once(run_of):
    """Two clocks run side by side: a kill, a set clock and a tester's word on one of them leave the other's minutes alone."""
    one, other = run_of(1), run_of(2)
    clock = one.clock
    clock.passes(60)
    one.reborn(meanwhile_s=30)
    one.counts("1:30")
    clock.is_set(HOUR_S)
    clock.passes(10)
    for proof in (one, other):
        proof.counts("1:40")
        proof.says(T["steady"]["moved"].format(s="1:00:00"))
    kept = len(one.record()["tests"]["capacity"]["attempts"][0]["sets"])
    for proof in (one, other):
        address = proof.page.url.removeprefix(proof.handset.host.origin)
        proof.page.close()
        proof.address = address
    clock.passes(400)  # nobody saw the phone for more than five minutes
    for proof in (one, other):
        proof.page = proof.handset.open(proof.address)
        proof.says(T["steady"]["asked"].format(s="6:40"))
        proof.counts("1:40")
    one.press(T["steady"]["count"].format(s="6:40"))
    other.press(T["steady"]["leave"])
    one.counts("8:20")
    other.counts("1:40")
    assert kept == len(one.record()["tests"]["capacity"]["attempts"][0]["sets"]) == 1
    again = one.handset.open(f"test/run/#{one.id}/capacity")
    expect(again.get_by_text(T["test"]["elsewhere"])).to_be_visible()


def test_a_store_that_refuses_is_told(run_of):
    """Where nothing can be kept the page says so at once, and the readings stay on it."""
    one = run_of(1)
    one.page.evaluate(FULL)
    one.page.evaluate(REFUSE)
    one.type("discharge_psi", "151")
    one.is_kept("unkept")
    expect(one.page.locator("input[name=discharge_psi]")).to_have_value("151")


def test_a_missed_reading_is_named(run_of):
    """A reading that was due and is past cannot be made up for: it is named, stopping the run keeps that as its reason, and it is run again from its first reading."""
    one = run_of(1)
    one.clock.passes(460)
    one.says(T["run"]["missed_word"])
    one.press(T["run"]["stop"])
    one.says(T["run"]["stopped"])
    assert one.record()["tests"]["capacity"]["attempts"][0]["stopped"] == T["run"]["missed_word"]
    one.press(T["run"]["once_more"])
    again = one.page.get_by_role("button", name=T["run"]["begin"], exact=True)
    expect(again).to_be_disabled()
    one.type("pitot_psi", "70")
    again.tap()
    one.carry()  # gauge and counter were read for the attempt before it
    one.counts("0:00")
    first = one.record()["tests"]["capacity"]["attempts"][-1]["sets"][0]
    assert first["as_before"] == ["discharge_psi", "engine_rpm"]


def test_a_file_comes_back(run_of, tmp_path):
    """An unfinished test comes in on another phone with its clock paused, and further on when it comes again; never back."""
    one = run_of(1)
    one.clock.passes(60)
    one.still()
    one.press(T["run"]["take"])
    record = {**one.record(), "id": "from-afar"}
    page = one.handset.open("test/")

    def bring(changed, told):
        file = tmp_path / "test.json"
        file.write_text(json.dumps(changed), encoding="utf-8")
        page.locator("input[type=file]").set_input_files(str(file))
        expect(page.get_by_role("status").filter(has_text=told)).to_be_visible()
        return kept_test(page, "from-afar")

    assert "steady" not in bring(record, YEARS["taken_one"])
    assert bring(record, YEARS["here"].format(count=1))["notes"] == ""
    assert bring({**record, "revision": 99, "notes": "Packing weeps"}, YEARS["taken_one"])["notes"] == "Packing weeps"
    assert bring(record, YEARS["here"].format(count=1))["revision"] == 99
    assert bring({"schema": 1, "id": "from-afar"}, data.words("service")["file"]["not_a_test"])["revision"] == 99
    page.goto(f"{one.handset.host.origin}test/run/#from-afar/capacity")
    page.get_by_text(T["run"]["paused"], exact=True).wait_for()
    expect(page.get_by_role("timer").locator("b")).to_have_text("1:00")


def test_a_finished_test_stays(handset):
    """No file, however far on it says it is, takes the place of a test that is finished here."""
    page = history.held(handset, [records.a_record()])
    page.reload()
    file = {"name": "later.json", "mimeType": "application/json", "buffer": json.dumps({**records.a_failed_record(), "revision": 10**9}).encode()}
    page.locator("input[type=file]").set_input_files(file)
    expect(page.get_by_role("status").filter(has_text=YEARS["here"].format(count=1))).to_be_visible()
    assert kept_test(page, records.a_record()["id"])["result"]["status"] == "pass"
