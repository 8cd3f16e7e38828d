"""What takes a rig out of service, found as one types, and a defect whose class such a row proposes."""
from playwright.sync_api import expect

from site_src.content import checks, data
from tests.phone.card import beside
from tests.phone.rounds import MIDSHIP, T, at_item, begin, key, of_kind, title, touched_on

CONDITIONS = data.by_id(checks.conditions())
SOURCES = checks.sources()
W = T["conditions"]


def rule_of(condition):
    return T["defect"]["rule"].format(rank=T["rank"][condition["class"]], source=SOURCES[condition["source"][0]])


def test_found_and_reported(take):
    """From All pages without a rig: groups, then rows as one types, a slip forgiven; none like it leads to a report; a touch proposes class and rule."""
    handset = take()
    page = handset.open("all/")
    page.get_by_role("link", name=W["title"], exact=True).tap()
    rows = page.locator("#conditions .defect")
    expect(page.locator("summary")).to_have_count(5)
    expect(rows.first).to_be_hidden()
    page.get_by_label(W["search"]).fill("zebra")
    expect(page.get_by_role("status").filter(has_text=W["none"])).to_be_visible()
    expect(page.get_by_role("link", name=T["bay"]["write"], exact=True)).to_be_visible()
    page.get_by_label(W["search"]).fill("mikly gear oil")
    milky = CONDITIONS["pump_water_in_oil"]
    for text in (T["rank"]["restricted"], milky["what"], milky["note"], SOURCES["maker_a_pto"]):
        expect(rows.first).to_contain_text(text)
    beside(handset, **MIDSHIP)
    rows.first.locator("a").tap()
    expect(page.get_by_label(T["defect"]["what"])).to_have_value(milky["what"])
    expect(page.get_by_label(T["rank"]["restricted"], exact=True)).to_be_checked()
    expect(page.get_by_text(rule_of(milky))).to_be_visible()
    page.get_by_label(T["defect"]["seen"]).fill("like coffee")
    key(page, T["defect"]["write"]).tap()
    expect(title(page)).to_have_text(milky["what"])
    (defect,) = of_kind(page, "defect")
    assert (defect["class"], defect["scope"], defect["rule"]) == ("restricted", "pump", "maker_a_pto")
    assert defect["seen"] == f"like coffee; {milky['note']}"


def test_proposed_as_it_is_typed(take):
    """What is typed into a defect finds the row; the officer's other class stands, and a second touch takes the row back."""
    handset = take()
    beside(handset, **MIDSHIP)
    page = handset.open("checks/defect/")
    page.get_by_label(T["defect"]["what"]).fill("siren")
    expect(page.get_by_label(T["rank"]["out_of_service"], exact=True)).to_be_checked()  # as proposed
    expect(page.get_by_label(T["scope"]["apparatus"], exact=True)).to_be_checked()
    siren = page.locator(".bay-tick").filter(has_text=CONDITIONS["siren"]["what"])
    siren.tap()
    expect(page.get_by_label(T["rank"]["out_of_service"], exact=True)).to_be_checked()
    expect(page.get_by_label(T["scope"]["apparatus"], exact=True)).to_be_checked()
    expect(page.get_by_text(rule_of(CONDITIONS["siren"]))).to_be_visible()
    siren.tap()
    expect(siren).to_have_attribute("aria-pressed", "false")
    expect(page.get_by_text(rule_of(CONDITIONS["siren"]))).to_have_count(0)
    siren.tap()
    page.get_by_label(T["rank"]["report"], exact=True).tap()
    key(page, T["defect"]["write"]).tap()
    expect(title(page)).to_have_text(CONDITIONS["siren"]["what"])
    (defect,) = of_kind(page, "defect")
    assert (defect["class"], defect["rule"], defect["seen"]) == ("report", CONDITIONS["siren"]["source"][0], "")


def test_which_of_them_a_check_found(take):
    """Not good at an item offers what is seen there: the row's class in place of the item's, with whose rule it is."""
    handset = take()
    beside(handset, **MIDSHIP)
    page = handset.open("checks/round/#weekly")
    begin(page)
    item = data.words("checks")["gear_case_leak"]["title"]
    at_item(page, item)
    touched_on(page, T["round"]["not_good"])
    expect(page.get_by_label(T["rank"]["report"], exact=True)).to_be_checked()
    leak = CONDITIONS["pump_gear_leak"]
    page.locator(".bay-tick").filter(has_text=leak["what"]).tap()
    expect(page.get_by_label(T["rank"]["out_of_service"], exact=True)).to_be_checked()
    expect(page.get_by_text(rule_of(leak))).to_be_visible()
    touched_on(page, T["defect"]["write"])
    (defect,) = of_kind(page, "defect")
    assert (defect["class"], defect["rule"], defect["seen"]) == ("out_of_service", "nfpa_1911", leak["what"])


def test_nothing_is_chosen_before_it_is_proposed(take):
    """A defect's class and scope are nobody's until a row proposes them or a touch chooses; writing says what is missing. An item that may have
    one of several conditions has none, and may have none of them."""
    handset = take()
    beside(handset, **MIDSHIP)
    page = handset.open("checks/defect/")
    page.get_by_label(T["defect"]["what"]).fill("zebra stripes")
    expect(page.locator("input:checked")).to_have_count(0)
    key(page, T["defect"]["write"]).tap()
    expect(page.get_by_text(T["defect"]["lacks"].format(what=f"{T['defect']['rank']}, {T['defect']['scope']}"))).to_be_visible()
    assert of_kind(page, "defect") == []
    page.get_by_label(T["defect"]["what"]).fill("brakes pull left")
    expect(page.get_by_label(T["rank"]["out_of_service"], exact=True)).to_be_checked()
    pull = CONDITIONS["brake_pull"]
    expect(page.get_by_text(T["defect"]["proposes"].format(what=pull["what"], rank=T["rank"][pull["class"]], source=f"{SOURCES[pull['source'][0]]} ({pull['basis']})"))).to_be_visible()
    page.goto(handset.host.origin + "checks/round/#daily")
    begin(page)
    at_item(page, data.words("checks")["eng_oil"]["title"])
    touched_on(page, T["round"]["not_good"])
    expect(page.locator("input:checked")).to_have_count(1)  # what it applies to is the item's
    page.get_by_label(T["defect"]["seen"]).fill("a quart low, topped up")
    key(page, T["defect"]["write"]).tap()
    expect(page.get_by_text(T["defect"]["lacks"].format(what=T["defect"]["rank"]))).to_be_visible()
    page.locator(".bay-tick").filter(has_text=W["none_of"]).tap()
    expect(page.get_by_label(T["rank"]["report"], exact=True)).to_be_checked()
    touched_on(page, T["defect"]["write"])
    (defect,) = of_kind(page, "defect")
    assert (defect["class"], defect["rule"], defect["seen"]) == ("report", "", "a quart low, topped up")
