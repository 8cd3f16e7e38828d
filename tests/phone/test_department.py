"""A department's own list on the phone: its item, what it leaves out, its limit, and its rows that cannot be used."""
from playwright.sync_api import expect

from site_src.content import data, fleet
from tests.phone.card import beside
from tests.phone.rounds import MIDSHIP, T, TEXT, begin, good, key, title, touched_on
from tests.phone.store import do

RIG = data.words("rig", "en")
OWN = {"item": "saw_bar", "act": "add", "name": "Saw bar and chain", "look": "Pull it round by hand.", "good": "Tight and sharp", "lists": ["vacuum"], "place": "papers", "state": "off"}
OUT = {"item": "valve_t2p_seat", "act": "leave_out", "reason": "On the shop's sheet"}
LIMIT = {"item": "prime_hold", "act": "change", "unit": "vacuum", "most": "5@US", "reason": "Order 7"}
BAD = {"item": "prime_pull", "act": "change", "unit": "pressure", "least": "5@US"}


def walked_to(page, name):
    """Answer good until an item is there."""
    for _ in range(20):
        if title(page).inner_text() == name:
            return
        good(page)
    raise AssertionError(name)


def test_a_departments_own_list(take):
    """Its item comes with its own words and rule, its limit is named as its own, what it leaves out is said with the reason; a row that cannot be used is said above."""
    handset = take()
    out = OUT["item"]
    beside(handset, **MIDSHIP, checks=[OWN, OUT, LIMIT, BAD])
    page = handset.open("checks/round/#vacuum")
    fault = page.locator(".faults")
    expect(fault).to_contain_text(RIG["field"]["checks"])
    expect(fault).to_contain_text(RIG["carry"]["other_unit"].format(unit="vacuum"))
    page.locator(".bay-out summary").tap()
    expect(page.locator(".bay-out")).to_contain_text(TEXT[out]["title"])
    expect(page.locator(".bay-out")).to_contain_text(OUT["reason"])
    begin(page)
    expect(title(page)).to_have_text(OWN["name"])
    expect(page.get_by_text(OWN["good"])).to_be_visible()
    expect(page.locator(".bay-rule")).to_have_text(T["department"]["department"])
    touched_on(page, T["round"]["not_good"])
    touched_on(page, T["defect"]["write"])
    walked_to(page, TEXT["prime_hold"]["title"])
    expect(page.locator(".bay-limit small")).to_have_text(f"{T['department']['limit_department']} (Order 7)")
    page.get_by_label(T["round"]["reading"], exact=True).fill("6")
    expect(key(page, T["round"]["untimed"])).to_be_disabled()
    page.get_by_label(T["round"]["reading"], exact=True).fill("5")
    expect(key(page, T["round"]["untimed"])).to_be_enabled()
    key(page, T["round"]["own"]).tap()
    page.locator("#own").fill("4")
    page.get_by_label(T["round"]["whose"]).fill("plate")
    key(page, T["round"]["set"]).tap()
    expect(page.locator(".bay-limit small")).to_have_text(T["round"]["own_limit"].format(whose="plate"))
    (written,) = [record for record in do(page, "keptRecords", "bay") if record["kind"] == "defect"]
    assert (written["item"], written["what"], written["rule"]) == ("saw_bar", OWN["name"], "department")
    fault.get_by_role("link").first.tap()
    expect(page.locator("#field-checks-3")).to_be_focused()
    expect(page.locator("#field-checks-3")).to_contain_text(TEXT["prime_pull"]["title"])
    page.locator("#field-checks-3").get_by_role("button").tap()
    expect(page.locator(".faults")).to_have_count(0)
    page.close()


def test_a_rig_of_the_fleet_brings_its_list(take):
    """A demonstration rig taken by its link has its department's item; a link with a list of another form is refused with its place."""
    handset = take()
    profile = fleet.load()["tollgate-engine-1"]
    page = handset.open("rig/" + fleet.packed(profile))
    page.get_by_role("button", name=RIG["carry"]["take"].format(name=profile["name"])).tap()
    expect(page.get_by_text(RIG["carry"]["taken"].format(name=profile["name"]))).to_be_visible()
    page.goto(handset.host.origin + "checks/due/")
    expect(page.get_by_role("button", name="Engine belts and guards")).to_be_visible()
    page.goto(handset.host.origin + "rig/" + fleet.packed({**profile, "name": "B", "id": "b", "checks": [{**OWN, "lists": "weekly"}]}))
    expect(page.get_by_text(RIG["carry"]["not_codes"])).to_be_visible()
    page.close()


def test_care_after_use(take):
    """What there was builds the list: nothing adds nothing; foam adds its care, frost its own; each can be taken back before the first item."""
    handset = take()
    beside(handset, **MIDSHIP)
    page = handset.open("checks/round/#after_use")
    expect(title(page)).to_be_visible()
    plain = title(page).inner_text()
    key(page, T["after"]["foam"]).tap()
    expect(key(page, T["after"]["foam"])).to_have_attribute("aria-pressed", "true")
    expect(title(page)).not_to_have_text(plain)
    key(page, T["after"]["foam"]).tap()
    expect(title(page)).to_have_text(plain)
    key(page, T["after"]["frost"]).tap()
    expect(title(page)).not_to_have_text(plain)
    begin(page)
    walked_to(page, TEXT["care_frost_drain"]["title"])
    (begun,) = [record for record in do(page, "keptRecords", "bay") if record["kind"] == "round"]
    assert "care_frost_reel" in begun["items"] and not [item for item in begun["items"] if item.startswith(("care_foam", "care_water"))]
    page.close()
