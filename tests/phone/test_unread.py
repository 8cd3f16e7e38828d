"""What a check could not time, read or do is said as such: on its key, on its last page, in its record and on its sheet."""
from playwright.sync_api import expect

from tests.phone.card import beside
from tests.phone.rounds import MIDSHIP, T, TEXT, begin, good, key, of_kind, title, touched_on

ROUND = T["round"]
LEAK, VOLTS, HOURS = (TEXT[item]["title"] for item in ("air_leak_released", "cab_volts_rest", "hours_read"))


def check(take, name):
    handset = take()
    beside(handset, **MIDSHIP)
    page = handset.open(f"checks/round/#{name}")
    begin(page)
    return handset, page


def to(page, item):
    """Answer each item until this one is there."""
    while title(page).inner_text() != item:
        good(page)


def put_off_to(page, item):
    while title(page).inner_text() != item:
        touched_on(page, ROUND["later"])


def answers(page):
    return {record["item"]: record for record in of_kind(page, "answer")}


def test_good_says_when_it_was_not_timed_or_read(take):
    """Each figure may be said not to be read; such a good, and one whose clock was not run, are named at the end and not counted as good."""
    _, page = check(take, "cab_air")
    to(page, LEAK)
    expect(key(page, ROUND["untimed"])).to_be_disabled()
    page.locator("#reading").fill("1")
    touched_on(page, ROUND["untimed"])
    expect(page.get_by_role("button", name=ROUND["unread"])).to_be_visible()
    unread = title(page).inner_text()
    key(page, ROUND["unread"]).tap()
    expect(page.get_by_text(ROUND["not_read"], exact=True)).to_be_visible()
    page.locator("#reading").fill("1")
    expect(key(page, ROUND["only_unread"])).to_have_count(0)  # it was read after all
    page.locator("#reading").fill("")
    key(page, ROUND["unread"]).tap()
    touched_on(page, ROUND["only_unread"])
    while title(page).inner_text() != ROUND["all"]:
        good(page)
    kept = answers(page)
    untimed = [item for item, record in kept.items() if record.get("clock") == "not_run" and record.get("reading") != "not_read"]
    read = len(kept) - len(untimed) - 1
    expect(page.get_by_text(ROUND["summary"].format(good=read, bad=0, here=0))).to_be_visible()
    expect(page.locator("p").filter(has_text=ROUND["not_read"])).to_contain_text(unread)
    expect(page.locator("p").filter(has_text=T["clock"]["not_run"])).to_contain_text(LEAK)
    key(page, ROUND["end"]).tap()
    expect(page.locator("p").filter(has_text=ROUND["not_read"])).to_contain_text(unread)
    page.close()


def test_a_check_ends_without_what_could_not_be_done(take):
    """What is put off stands in a list once nothing else is open; a touch opens it, and the check ends without it, which its sheet says."""
    handset, page = check(take, "cab_air")
    put_off = [title(page).inner_text()]
    touched_on(page, ROUND["later"])
    put_off.append(title(page).inner_text())
    touched_on(page, ROUND["later"])
    while title(page).inner_text() not in put_off:
        good(page)
    touched_on(page, ROUND["later"])
    expect(page.get_by_text(ROUND["open"])).to_be_visible()
    key(page, put_off[1]).tap()
    expect(title(page)).to_have_text(put_off[1])
    good(page)
    expect(title(page)).to_have_text(put_off[0])
    touched_on(page, ROUND["later"])
    key(page, ROUND["end_open"]).tap()
    expect(page.locator("p").filter(has_text=ROUND["undone"])).to_have_text(f"{ROUND['undone']}: {put_off[0]}")
    [ended] = of_kind(page, "ended")
    page.goto(f"{handset.host.origin}checks/record/#{ended['round']}")
    expect(page.locator("#bay tr").filter(has_text=put_off[0])).to_contain_text(ROUND["undone"])
    expect(page.locator("#bay tr").filter(has_text=put_off[1])).not_to_contain_text(ROUND["undone"])
    expect(page.locator("#bay")).not_to_contain_text(ROUND["held_paper"])  # the rig may be driven
    page.close()


def test_a_figure_that_is_to_be_read_is_written(take):
    """Hours are good with a figure alone, none below the last; they stand in the record, on the sheet and, once the check ends, on Due."""
    handset, page = check(take, "weekly")
    put_off_to(page, HOURS)
    expect(key(page, ROUND["good"])).to_be_disabled()
    page.get_by_label(T["meter"]["engine_h"]).fill("23o1")
    expect(page.locator(".refusal")).to_contain_text(T["meter"]["engine_h"])
    expect(key(page, ROUND["good"])).to_be_disabled()
    page.get_by_label(T["meter"]["engine_h"]).fill("2301")
    page.get_by_label(T["meter"]["miles"]).fill("18250")
    page.reload()
    expect(page.get_by_label(T["meter"]["engine_h"])).to_have_value("2301")
    touched_on(page, ROUND["good"])
    assert answers(page)["hours_read"]["figures"] == ["engine_h 2301@US", "miles 18250@US"]
    assert of_kind(page, "meters") == []
    touched_on(page, ROUND["back"])
    expect(page.get_by_label(T["meter"]["miles"])).to_have_value("18250")
    page.get_by_label(T["meter"]["miles"]).fill("18251")
    touched_on(page, ROUND["good"])
    while page.get_by_text(ROUND["open"]).count() == 0:
        touched_on(page, ROUND["later"])
    key(page, ROUND["end_open"]).tap()
    expect(page.locator("p").filter(has_text=ROUND["undone"])).to_be_visible()
    [read] = of_kind(page, "meters")
    assert (read["engine_h"], read["pump_h"], read["miles"]) == (2301, None, 18251)
    page.goto(f"{handset.host.origin}checks/record/#{of_kind(page, 'ended')[0]['round']}")
    sheet = page.locator("#bay tr").filter(has_text=HOURS)
    expect(sheet).to_contain_text(f"{T['meter']['engine_h']} 2301; {T['meter']['pump_h']} –; {T['meter']['miles']} 18251")
    page.goto(handset.host.origin + "checks/due/")
    expect(page.get_by_label(T["due"]["meter"].format(name=T["meter"]["miles"], last="18251"))).to_be_visible()
    page.goto(handset.host.origin + "checks/round/#weekly")
    put_off_to(page, HOURS)
    page.get_by_label(T["due"]["meter"].format(name=T["meter"]["miles"], last="18251")).fill("1825")
    expect(page.get_by_text(T["due"]["meter_refused"].format(name=T["meter"]["miles"], least=18251))).to_be_visible()
    expect(key(page, ROUND["good"])).to_be_disabled()
    page.close()


def test_a_defect_asks_for_its_figure(take):
    """Not good without a reading asks for it beside the defect; left empty the defect says it was not read, and no tick stands at it."""
    handset, page = check(take, "daily")
    put_off_to(page, VOLTS)
    touched_on(page, ROUND["not_good"])
    page.get_by_label(f"{ROUND['reading']} (V)").fill("11.2")
    page.get_by_label(T["defect"]["seen"]).fill("slow to crank")
    if not page.locator("input[name=rank]:checked").count():
        page.get_by_role("radio", name=T["rank"]["report"], exact=True).tap()
    touched_on(page, T["defect"]["write"])
    [defect] = of_kind(page, "defect")
    assert "slow to crank" in defect["seen"] and "11.2 V" in defect["seen"]
    assert (answers(page)["cab_volts_rest"]["amount"], answers(page)["cab_volts_rest"].get("reading")) == (11.2, None)
    put_off_to(page, TEXT["eng_fuel"]["title"])
    touched_on(page, ROUND["not_good"])
    if not page.locator("input[name=rank]:checked").count():
        page.get_by_role("radio", name=T["rank"]["report"], exact=True).tap()
    touched_on(page, T["defect"]["write"])
    assert any(ROUND["not_read"] in record["seen"] for record in of_kind(page, "defect"))
    assert answers(page)["eng_fuel"]["reading"] == "not_read"
    page.goto(f"{handset.host.origin}checks/record/#{of_kind(page, 'round')[0]['id']}")
    bad = page.locator("#bay tr").filter(has_text=VOLTS).last
    expect(bad).to_contain_text("11.2 V")
    expect(bad).not_to_contain_text("✓")
    page.close()


def test_a_reading_keeps_the_unit_it_was_typed_in(take):
    """A past check read in another system of units has each reading as it was written, with its own unit."""
    handset, page = check(take, "cab_air")
    to(page, LEAK)
    page.locator("#reading").fill("1")
    touched_on(page, ROUND["untimed"])
    page.evaluate("localStorage.setItem('units', 'SI')")
    page.goto(f"{handset.host.origin}checks/record/#{of_kind(page, 'round')[0]['id']}")
    expect(page.locator("#bay tr").filter(has_text=LEAK).locator(".paper-remark")).to_contain_text("1 psi")
    page.close()
