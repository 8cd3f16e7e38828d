"""A run's clock: when it begins, pauses, is stopped or over, and what is said of a reading that it passed."""
from playwright.sync_api import expect

from tests.phone.proof import T, run_of  # noqa: F401  the fixture
from tests.phone.test_service_run import HOLDS, RUNNING

RUN = T["run"]


def test_a_phone_asleep_before_a_run_has_begun(run_of):
    """The minutes between a touch on Begin and its answer are none of the run: it begins when it is there, and nothing is asked."""
    one = run_of(1, is_started=False)
    begin = one.page.get_by_role("button", name=RUN["begin"], exact=True)
    expect(begin).to_be_enabled()
    one.page.evaluate(HOLDS)
    one.type("discharge_psi", "152")
    begin.evaluate("(key) => { key.click(); key.click(); }")
    one.clock.is_set(180)  # the page's own clock stood still meanwhile: it slept
    one.page.evaluate("answers()")
    expect(begin).to_have_count(0)
    one.counts("0:00")
    one.clock.passes(5)
    one.counts("0:05")
    record = one.record()
    assert record["events"] == []
    assert len(record["tests"]["capacity"]["attempts"]) == 1


def test_a_missed_reading_is_said_once(run_of):
    """It is said where the keys are, goes with a touch, and stays a cross on the line and in its name."""
    one = run_of(1)
    one.clock.passes(460)
    one.says(RUN["missed_word"])
    one.press(RUN["go_on"])
    one.clock.passes(5)
    expect(one.page.get_by_text(RUN["missed_word"])).to_have_count(0)
    expect(one.page.get_by_role("img", name=RUN["line_missed"].format(at="5:00"))).to_be_visible()
    one.page.get_by_role("button", name=RUN["take"], exact=True).or_(one.page.get_by_role("button", name=RUN["take_at"].format(at="10:00"))).tap()


def test_a_paused_run_is_stopped_for_a_reason_that_was_given(run_of):
    """Paused it goes on or is stopped, and stopping asks why as in a running one; only then is it run again, and that starts a clock."""
    one = run_of(1)
    one.clock.passes(61)
    one.press(RUN["pause"])
    one.press(RUN["reasons_pause"][0])
    expect(one.page.get_by_role("button", name=RUN["resume"], exact=True)).to_be_visible()
    expect(one.page.get_by_role("button", name=RUN["begin_again"], exact=True)).to_have_count(0)
    one.press(RUN["stop"])
    one.press(RUN["never_mind"])
    one.says(RUN["paused"])
    one.press(RUN["stop"])
    one.press(RUN["reasons_stop"][1])
    one.says(RUN["stopped"])
    one.press(RUN["once_more"])
    one.type("pitot_psi", "70")
    one.press(RUN["begin"])
    one.carry()
    one.counts("0:00")
    first, second = one.record()["tests"]["capacity"]["attempts"]
    assert (first["stopped"], second["stopped"]) == (RUN["reasons_stop"][1], None)


def test_a_run_held_to_its_end_is_run_again_from_its_start(run_of):
    """After twenty minutes "Run it again" leads to the key that starts the clock, not to one that goes on with the old one."""
    one = run_of(1)
    for at_s in (300, 600, 900, 1200):
        one.clock.passes(300)
        one.still()
        one.press(RUN["take_at"].format(at=f"{at_s // 60}:00"))
    one.press(RUN["once_more"])
    expect(one.page.get_by_role("button", name=RUN["begin"], exact=True)).to_be_visible()
    expect(one.page.get_by_role("button", name=RUN["resume"], exact=True)).to_have_count(0)
    expect(one.page.get_by_role("button", name=RUN["stop"], exact=True)).to_have_count(0)


def test_a_test_taken_off_runs_no_more(run_of):
    """Once its test is taken off the phone no page says that it runs."""
    one = run_of(1)
    one.clock.passes(10)
    one.counts("0:10")
    assert one.page.evaluate(RUNNING)
    one.page.close()
    page = one.handset.open("test/")
    page.get_by_role("button", name=T["test"]["remove"], exact=True).tap()
    yes = page.get_by_role("button", name=T["test"]["remove_yes"])
    yes.tap()
    expect(yes).to_have_count(0)  # it is answered only once the record is gone
    expect(page.get_by_role("button", name=T["test"]["remove"], exact=True)).to_have_count(0)
    assert page.evaluate(RUNNING) is None
