"""A defect by touch: nothing ends it by a slip, each page says the one that matters there, and a half-written one comes back."""
import pytest
from playwright.sync_api import expect

from site_src.content import checks, data
from tests.phone.card import beside
from tests.phone.handset import kill
from tests.phone.rounds import MIDSHIP, PUMP_OUT, T, TEXT, begin, good, key, of_kind, title, touched_on, written
from tests.phone.store import do, put
from tests.unit.bay.logs import defect as a_defect


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
    key(page, T["opened"]["nothing"]).tap()  # takes the other back; somebody's report may be looked at again
    expect(key(page, T["opened"]["other"])).to_have_attribute("aria-pressed", "false")
    expect(page.locator(".bay-rule")).to_contain_text(T["lacks"]["reason"])
    key(page, T["proof"]["seen_good"]).tap()
    page.get_by_label(T["release"]["reason"]).fill("the sight glass was fogged")
    page.get_by_label(T["release"]["looked_by"]).fill("Moss")
    page.get_by_label(T["release"]["by"]).fill("Hart")
    key(page, T["release"]["release"]).tap()
    expect(title(page)).to_have_text(T["release"]["still"])
    expect(page.locator(".defect")).to_contain_text("Brake leak")
    expect(page.get_by_text(T["release"]["then"][0])).to_have_count(0)


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
    expect(page.get_by_text(T["round"]["waits"])).to_be_visible()
    page.get_by_label(T["round"]["reading"], exact=True).fill("-2")
    refusals = data.words("site", "en")["refusal"]
    expect(page.get_by_text(refusals["negative"])).to_be_visible()
    page.get_by_label(T["round"]["reading"], exact=True).fill("1.250")
    expect(page.get_by_text(refusals["thousands_or_decimals"].format(thousands="1250", decimals="1.25"))).to_be_visible()
    expect(key(page, T["round"]["untimed"])).to_be_disabled()
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


def test_all_rigs_of_the_phone(take):
    """Each with its status, its open defects and what is due, the worst first; a touch works for that rig."""
    handset = take()
    beside(handset, **MIDSHIP, id="rig-2", name="Spare engine")
    put(handset, "keepRecord", "bay", {**a_defect("d1"), "rig_id": "rig-2", "rig_name": "Spare engine"})
    beside(handset, **MIDSHIP)
    done = {"id": "n1", "rig_id": "rig-1", "rig_name": "Pump of the day", "at_ms": 1706000000000, "by": "Hart", "kind": "done", "replaces": [], "due": "nozzles"}
    put(handset, "keepRecord", "bay", done)  # January 2024; nozzles come round in 12 months
    page = handset.open("checks/")
    page.get_by_role("link", name=T["board"]["title"]).tap()
    rows = page.locator(".defect")
    expect(rows).to_have_count(2)
    expect(rows.first).to_contain_text("Spare engine")
    expect(rows.first).to_contain_text(PUMP_OUT)
    expect(rows.first).to_contain_text(T["board"]["open"].format(count=1))
    expect(rows.first).to_contain_text(T["board"]["no_date"])
    expect(rows.last).to_contain_text(T["board"]["overdue"].format(count=1, name=T["due_name"]["nozzles"]))
    rows.first.locator("a").tap()
    expect(page.locator(".bay-status")).to_contain_text("Spare engine")
    expect(page.locator(".bay-status")).to_contain_text(PUMP_OUT)
    page.close()


@pytest.mark.parametrize(("then", "repairs"), [("cable replaced", 1), ("cable replaced and set", 2)])
def test_one_repair_is_written_once(take, then, repairs):
    """"Repaired" writes the repair; "Back in service" writes it again only where more was entered since."""
    handset = take()
    beside(handset, **MIDSHIP)
    page = handset.open("checks/")
    written(page, handset, "Cable slips")
    page.get_by_role("link", name=T["defect"]["release"]).tap()
    least = min((row for row in checks.proofs() if row["opened"]), key=lambda row: len(row["proofs"]))
    key(page, T["opened"][least["opened"]]).tap()
    page.get_by_label(T["release"]["done"]).fill("cable replaced")
    page.get_by_label(T["release"]["repaired_by"]).fill("Moss")
    key(page, T["release"]["only_repaired"]).tap()
    page.get_by_label(T["release"]["done"]).fill(then)
    for proof in least["proofs"]:
        key(page, T["proof"].get(proof) or TEXT[proof]["title"]).tap()
    page.get_by_label(T["release"]["by"]).fill("Hart")
    key(page, T["release"]["release"]).tap()
    expect(page.get_by_text(T["release"]["names"].format(repaired_by="Moss", by="Hart"))).to_be_visible()
    assert len(of_kind(page, "release")) == 1
    assert [record["by"] for record in of_kind(page, "repair")] == ["Moss"] * repairs
