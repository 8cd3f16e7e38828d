"""The bay by touch: a weekly check with two defects, killed and gone on with; the status on other pages; release; the log to a second phone."""
import json

from playwright.sync_api import expect

from site_src.content import checks, data
from tests.phone.card import beside
from tests.phone.handset import kill
from tests.phone.store import do

T = data.words("bay", "en")
TEXT = data.words("checks", "en")
PUMP_OUT = data.words("site", "en")["rig_status"]["pump_out"]
OUT = data.words("shift", "en")["out_first"]
MIDSHIP = {"drive": "midship", "pump_stages": "1", "pressure_control": "governor", "shift_control": "air", "transmission": "automatic"}


def key(page, name):
    return page.get_by_role("button", name=name, exact=True)


def title(page):
    return page.locator(".bay-act")


def touched_on(page, name):
    """Touch a key until the next item is there: a touch within a moment of a new item counts for none."""
    before = title(page).inner_text()
    for _ in range(10):
        key(page, name).tap()
        try:
            expect(title(page)).not_to_have_text(before, timeout=700)
            return
        except AssertionError:
            continue
    raise AssertionError(f"{before}: {name} leads nowhere")


KINDS = {TEXT[row["id"]]["title"]: row["limit"]["kind"] for row in checks.rows() if row["limit"]}


def good(page):
    """Good; with a figure of the tray on the good side of the limit for a reading, where the item has one."""
    kind = KINDS.get(title(page).inner_text())
    if kind:
        tray = page.locator(".tray .key")
        expect(tray.nth(1)).to_be_visible()
        tray.nth({"max": 0, "min": -1}.get(kind, 2)).tap()
        expect(key(page, T["round"]["good"])).to_be_enabled()
    touched_on(page, T["round"]["good"])


def defect(page, seen):
    touched_on(page, T["round"]["not_good"])
    page.get_by_label(T["defect"]["seen"]).fill(seen)
    touched_on(page, T["defect"]["write"])


def begin(page):
    page.get_by_label(T["bay"]["name"]).fill("Hart")
    touched_on(page, T["round"]["begin"])


def test_a_weekly_check_and_what_comes_of_it(take, tmp_path):
    """Item by item by touch; killed in the middle, it goes on where it was; two defects take the pump out of service on every page."""
    handset = take()
    profile = beside(handset, **MIDSHIP)
    page = handset.open("checks/round/#weekly")
    begin(page)
    bad = {TEXT["shift_lockup"]["title"]: "range lost", TEXT["eng_belts"]["title"]: "frayed"}
    done = 0
    while title(page).inner_text() != T["round"]["all"]:
        now = title(page).inner_text()
        if now in bad:
            defect(page, bad[now])
        else:
            good(page)
        done += 1
        if done == 9:
            expect(title(page)).not_to_have_text(now)
            here = title(page).inner_text()
            kill(page)
            page = handset.open("checks/round/#weekly")
            expect(title(page)).to_have_text(here)
    assert done > 25
    key(page, T["round"]["end"]).tap()
    expect(page.get_by_text(T["round"]["summary"].format(good=done - 2, bad=2, here=0))).to_be_visible()
    expect(page.get_by_role("alert")).to_be_visible()  # nobody reads so fast
    for address in ("", "pressure/", "shift/road/"):
        other = handset.open(address)
        expect(other.locator("#rig-status")).to_contain_text(PUMP_OUT)
        expect(other.locator("#rig-status")).to_contain_text("range lost")
        other.close()
    card = handset.open("shift/bay/")
    expect(card.get_by_role("alert")).to_contain_text(PUMP_OUT)
    expect(card.locator(".step")).to_have_count(0)
    expect(card.get_by_label(OUT["name"])).to_have_value("")
    assert card.get_by_label(OUT["name"]).bounding_box()["height"] >= 44
    expect(key(card, OUT["waits"])).to_be_disabled()
    card.get_by_label(OUT["name"]).fill("Moss")
    key(card, OUT["go_on"]).dblclick()
    expect(key(card, OUT["sure"])).to_be_visible()
    expect(card.locator(".step")).to_have_count(0)
    card.wait_for_timeout(450)
    key(card, OUT["sure"]).tap()
    expect(card.locator(".step")).to_be_visible()
    card.goto(handset.host.origin + "shift/bay/read/")
    expect(card.get_by_text(OUT["read"])).to_be_visible()
    expect(card.locator("li[data-step]")).to_have_count(0)
    card.goto(handset.host.origin + "shift/road/read/")
    expect(card.locator("li[data-step]").last).to_be_visible()
    card.close()
    page.goto(handset.host.origin + "checks/")
    expect(page.locator(".defect")).to_have_count(2)

    release_pump(page, handset)
    page.goto(handset.host.origin + "checks/log/")
    with page.expect_download() as leaving:
        key(page, T["log"]["file"]).tap()
    leaving.value.save_as(tmp_path / "log.json")
    content = (tmp_path / "log.json").read_text(encoding="utf-8")
    records = do(page, "keptRecords", "bay")

    second = take()
    beside(second, **MIDSHIP)
    other = second.open("checks/log/")
    spoiled = json.loads(content)
    spoiled["records"] = [{**spoiled["records"][0], "id": "x", "kind": "spell"}, *spoiled["records"][:10]]
    for name, text in (("part.json", json.dumps(spoiled)), ("log.json", content), ("again.json", content)):
        other.locator("input[type=file]").set_input_files({"name": name, "mimeType": "application/json", "buffer": text.encode()})
        expect(other.get_by_role("status").filter(has_text=name)).to_be_visible()
        if name == "part.json":
            expect(other.get_by_text(T["log"]["refused"].format(at=1, field="kind", reason=T["log_reason"]["unknown"]))).to_be_visible()
    expect(other.get_by_text(T["log"]["taken"].format(file="again.json", taken=0, same=len(records)))).to_be_visible()
    assert sorted(do(other, "keptRecords", "bay"), key=lambda record: record["id"]) == sorted(records, key=lambda record: record["id"])
    with other.expect_download() as leaving:
        key(other, T["log"]["file"]).tap()
    leaving.value.save_as(tmp_path / "second.json")
    assert (tmp_path / "second.json").read_bytes() == (tmp_path / "log.json").read_bytes()
    assert profile["id"] == records[0]["rig_id"]


def release_pump(page, handset):
    """An officer decides, a technician repairs, another puts it back; the pump is in service, the belts are open."""
    page.locator(".defect a").first.tap()
    key(page, T["defect"]["decide"]).tap()
    page.get_by_label(T["defect"]["officer"]).fill("Lane")
    key(page, T["defect"]["decide"]).tap()
    expect(page.get_by_text("Lane").first).to_be_visible()
    page.get_by_role("link", name=T["defect"]["release"]).tap()
    key(page, T["opened"]["shift"]).tap()
    for proof in ["shift_lockup", *next(row for row in checks.proofs() if row["opened"] == "shift")["proofs"]]:
        key(page, TEXT[proof]["title"]).tap()
    page.get_by_label(T["release"]["done"]).fill("selector valve replaced")
    page.get_by_label(T["release"]["repaired_by"]).fill("Moss")
    page.get_by_label(T["release"]["by"]).fill("moss")
    expect(key(page, T["release"]["release"])).to_be_disabled()  # a second person's name
    page.get_by_label(T["release"]["by"]).fill("Hart")
    key(page, T["release"]["release"]).tap()
    expect(page.get_by_text(T["release"]["names"].format(repaired_by="Moss", by="Hart"))).to_be_visible()
    expect(page.get_by_text(T["release"]["then"][0])).to_be_visible()  # the belts do not limit the rig
    start = handset.open("")
    expect(start.locator("#rig-status")).to_be_hidden()
    start.close()


def written(page, handset, what, rank="out_of_service", scope="pump"):
    """A defect written by hand; its page is open."""
    page.goto(handset.host.origin + "checks/defect/")
    page.get_by_label(T["defect"]["what"]).fill(what)
    page.get_by_label(T["rank"][rank], exact=True).tap()
    page.get_by_label(T["scope"][scope], exact=True).tap()
    page.get_by_label(T["bay"]["name"]).fill("Hart")
    key(page, T["defect"]["write"]).tap()
    expect(title(page)).to_have_text(what)


def of_kind(page, kind):
    return [record for record in do(page, "keptRecords", "bay") if record["kind"] == kind]


def test_nothing_ends_a_defect_by_a_slip(take):
    """Withdrawn by name, with a reason, in two touches apart; not at all once an officer decided; emptying the phone leaves it open."""
    handset = take()
    beside(handset, **MIDSHIP)
    page = handset.open("checks/")
    written(page, handset, "Wrong rig")
    key(page, T["defect"]["withdraw"]).tap()
    expect(key(page, T["defect"]["withdraw_do"])).to_be_disabled()
    page.get_by_label(T["defect"]["withdraw_why"]).fill("other engine")
    page.get_by_label(T["bay"]["name"]).fill("Hart")
    key(page, T["defect"]["withdraw_do"]).dblclick()
    expect(key(page, T["defect"]["withdraw_sure"])).to_be_visible()
    assert not of_kind(page, "withdrawn")
    page.wait_for_timeout(450)
    key(page, T["defect"]["withdraw_sure"]).tap()
    expect(page.locator(".bay-sentence")).to_have_text(T["bay"]["in_service"])
    assert [(record["by"], record["reason"]) for record in of_kind(page, "withdrawn")] == [("Hart", "other engine")]

    written(page, handset, "Gear oil low")
    key(page, T["defect"]["decide"]).tap()
    page.get_by_label(T["defect"]["officer"]).fill("Lane")
    key(page, T["defect"]["decide"]).tap()
    expect(page.get_by_text(T["defect"]["release_only"])).to_be_visible()
    expect(key(page, T["defect"]["withdraw"])).to_have_count(0)

    page.goto(handset.host.origin + "checks/log/")
    expect(page.get_by_text(f"{T['kind']['withdrawn']}: Wrong rig, other engine")).to_be_visible()
    expect(page.get_by_text(T["log"]["open_stay"].format(count=1))).to_be_visible()
    expect(key(page, T["log"]["empty"])).to_be_disabled()
    page.get_by_label(T["bay"]["name"]).fill("Moss")
    key(page, T["log"]["empty"]).dblclick()
    expect(key(page, T["log"]["sure"])).to_be_visible()
    assert not of_kind(page, "erased")
    page.wait_for_timeout(450)
    key(page, T["log"]["sure"]).tap()
    expect(page.get_by_text(T["log"]["emptied"].format(count=2))).to_be_visible()
    assert [record["by"] for record in of_kind(page, "erased")] == ["Moss"]
    assert sorted(record["kind"] for record in do(page, "keptRecords", "bay")) == ["decision", "defect", "erased"]
    expect(page.locator("#rig-status")).to_contain_text(PUMP_OUT)


def test_the_sentence_of_each_page(take):
    """Two defects: every page says the worst and how many more; a card into pump says what stops the pump."""
    handset = take()
    beside(handset, **MIDSHIP)
    page = handset.open("checks/")
    written(page, handset, "Gear oil low")
    written(page, handset, "Brake leak", scope="apparatus")
    words = data.words("site", "en")["rig_status"]
    more = words["more"].format(count=1)
    page.goto(handset.host.origin)
    expect(page.locator("#rig-status")).to_contain_text(words["out_of_service"] + " Brake leak")
    expect(page.locator("#rig-status")).to_contain_text(more)
    page.goto(handset.host.origin + "shift/scene/")
    for line in (page.locator("#rig-status"), page.get_by_role("alert")):
        expect(line).to_contain_text(PUMP_OUT + " Gear oil low")
        expect(line).to_contain_text(more)
    page.goto(handset.host.origin + "checks/release/")
    key(page, f"{T['rank']['pump_out']}: Gear oil low").tap()
    key(page, T["opened"]["other"]).tap()
    key(page, T["proof"]["second_look"]).tap()
    page.get_by_label(T["release"]["done"]).fill("filled")
    page.get_by_label(T["release"]["repaired_by"]).fill("Moss")
    page.get_by_label(T["release"]["by"]).fill("Hart")
    key(page, T["release"]["release"]).tap()
    expect(title(page)).to_have_text(T["release"]["still"])
    expect(page.locator(".defect")).to_contain_text("Brake leak")
    expect(page.get_by_text(T["release"]["then"][0])).to_have_count(0)


def test_what_was_done_before(take):
    """Done asks for the day before it writes: a day to come is refused, last May's is taken; a calendar without a date says so."""
    handset = take()
    beside(handset, **MIDSHIP)
    due, name = T["due"], T["due_name"]["road_test"]
    page = handset.open("checks/due/")
    key(page, due["calendar"]).tap()
    expect(page.get_by_text(due["no_dates"])).to_be_visible()
    page.get_by_role("button", name=name).tap()
    key(page, due["done"]).tap()
    assert do(page, "keptRecords", "bay") == []
    page.get_by_label(due["done_on"]).fill("2999-05-14")
    key(page, due["write_done"]).tap()
    expect(page.get_by_text(due["date_future"])).to_be_visible()
    page.get_by_label(due["done_on"]).fill("2026-05-14")
    key(page, due["write_done"]).tap()
    expect(page.get_by_role("button", name=name)).not_to_contain_text(due["never"])
    (record,) = do(page, "keptRecords", "bay")
    assert (record["kind"], record["due"]) == ("done", "road_test") and record["at_ms"] < 1779000000000  # May 17, 2026
    page.close()


def test_a_half_written_defect_comes_back(take):
    """Written by hand or from an item of a check, it is there after the page was killed; once written it is gone. An item without its clock says so."""
    handset = take()
    beside(handset, **MIDSHIP)
    page = handset.open("checks/defect/")
    page.get_by_label(T["defect"]["what"]).fill("Brake lin")
    page.get_by_label(T["rank"]["out_of_service"], exact=True).tap()
    kill(page)
    page = handset.open("checks/defect/")
    expect(page.get_by_label(T["defect"]["what"])).to_have_value("Brake lin")
    expect(page.get_by_label(T["rank"]["out_of_service"], exact=True)).to_be_checked()
    key(page, T["defect"]["write"]).tap()
    expect(title(page)).to_have_text("Brake lin")
    page.goto(handset.host.origin + "checks/defect/")
    expect(page.get_by_label(T["defect"]["what"])).to_have_value("")

    page.goto(handset.host.origin + "checks/round/#vacuum")
    page.reload()
    begin(page)
    while title(page).inner_text() != TEXT["prime_hold"]["title"]:
        good(page)
    page.get_by_label(T["round"]["reading"], exact=True).fill("-2")
    expect(page.get_by_text(data.words("site", "en")["refusal"]["negative"])).to_be_visible()
    expect(key(page, T["round"]["good"])).to_be_disabled()
    page.get_by_label(T["round"]["reading"], exact=True).fill("12")
    expect(page.get_by_text(T["side"]["high"])).to_be_visible()
    touched_on(page, T["round"]["not_good"])
    page.get_by_label(T["defect"]["seen"]).fill("needle fal")
    kill(page)
    page = handset.open("checks/round/#vacuum")
    expect(page.get_by_label(T["defect"]["seen"])).to_have_value("needle fal")
    expect(page.locator(".bay-where")).to_contain_text("12")
    touched_on(page, T["defect"]["write"])
    [answer] = [record for record in of_kind(page, "answer") if record["item"] == "prime_hold"]
    assert (answer["answer"], answer["clock"]) == ("not_good", "not_run")
    assert T["clock"]["not_run"] in of_kind(page, "defect")[-1]["seen"] or T["clock"]["not_run"] in of_kind(page, "defect")[0]["seen"]
