"""What is over is opened again from the log: a check that was ended, a release, a closed defect, to read and to print."""
import re

from playwright.sync_api import expect

from site_src.content import data
from tests.phone.card import beside
from tests.phone.rounds import MIDSHIP, T, TEXT
from tests.phone.store import do, put
from tests.phone.test_bay_paper import back, sheets
from tests.unit.bay.logs import DAY_MS, decision, defect, record, release

LOG = data.words("log", "en")["title"]
DAY, ITEM = 20_000 * DAY_MS, "prime_hold"
DROPPED = {"item": "bell_rope", "what": "Bell and rope"}  # an item of the department's own, which it has since left out of its list
OF_RIG = {"rig_id": "rig-1", "rig_name": "Pump of the day"}
CHECK = [
    record("round", "r1", DAY, list="vacuum", items=[ITEM, "prime_oil", DROPPED["item"], "lost_item"]),
    defect("d1", at_ms=DAY + 1, item=ITEM, seen="fell 15 inHg"),
    record("answer", "a1", DAY + 2, round="r1", item=ITEM, answer="not_good", entry="7@US", amount=7),
    record("answer", "a2", DAY + 3, by="Roy", round="r1", item="prime_oil", answer="good", entry=None, amount=None, limit="8 in or more, limit of the list"),
    defect("d0", "note", at_ms=DAY + 1, seen="rope worn", limit="3 ft or more", **DROPPED),
    record("answer", "a3", DAY + 3, round="r1", item=DROPPED["item"], answer="not_good", entry="2@US", amount=2),
    record("answer", "a4", DAY + 3, round="r1", item="lost_item", answer="good", entry=None, amount=None),
    record("ended", "e1", DAY + 4, round="r1", took_s=300, hurried=0),
]
REPAIR = [
    decision("o1", "d1", "restricted", ["d1"], at_ms=DAY + 5, limits="No drafting", by="Captain Hale"),
    record("repair", "p1", DAY + 6, by="Moss", defects=["d1"], done="Primer seal replaced", parts="", hours="2"),
    release("l1", ["d1"], ["o1"], at_ms=DAY + 7),
]
LATER = [defect("d2", at_ms=DAY + 9, item=ITEM, seen="fell again"), record("round", "r2", DAY + 8, list="vacuum", items=[ITEM, "prime_oil"])]


def row(page, kind, words=T):
    return page.locator(".bay-log a").filter(has_text=re.compile("^" + re.escape(words["kind"][kind])))


def test_from_the_log_to_what_is_over(take):
    """Each is as it was then, whatever was written since; each prints on its sheets with nothing else on them."""
    handset = take()
    beside(handset, **MIDSHIP)
    put(handset, "keepRecords", "bay", [{**made, **OF_RIG} for made in CHECK + REPAIR + LATER])
    page = handset.open("checks/log/")
    listed = page.locator(".bay-log li").count()
    expect(page.get_by_text(T["log"]["unlisted"].format(listed=listed, answers=len(CHECK + REPAIR + LATER) - listed))).to_be_visible()
    page.get_by_role("link", name=LOG, exact=True).tap()
    page.get_by_role("link", name=T["log"]["title"]).tap()  # and back from there
    row(page, "ended").tap()
    sheet = page.locator("#bay .bay-paper")
    expect(sheet.locator("tr").filter(has_text=TEXT[ITEM]["title"])).to_contain_text("fell 15 inHg")
    expect(sheet.locator("tr").filter(has_text=TEXT["prime_oil"]["title"])).to_contain_text("✓")
    expect(sheet.locator(".paper-last")).to_contain_text("Hart, Roy")
    expect(sheet).not_to_contain_text("fell again")
    expect(page.get_by_text(T["record"]["not_ended"])).to_have_count(0)
    expect(sheet.get_by_text(T["record"]["gone"])).to_be_visible()
    dropped = sheet.locator("tr").filter(has_text=DROPPED["what"])
    for says in ("3 ft or more", "2;", "rope worn"):
        expect(dropped).to_contain_text(says)
    expect(sheet.locator("tr").filter(has_text="lost_item")).to_contain_text("✓")
    expect(sheet.locator("tr").filter(has_text=TEXT[ITEM]["title"])).to_contain_text(T["record"]["today"])
    held = sheet.locator("tr").filter(has_text=TEXT["prime_oil"]["title"])
    expect(held).to_contain_text("8 in or more, limit of the list")  # what held then, whatever the list says now
    expect(held).not_to_contain_text(T["record"]["today"])
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    assert sheets(page, "Letter") == sheets(page, "A4") == 1
    back(page)

    page.goto(handset.host.origin + "checks/record/#r2")
    expect(page.get_by_text(T["record"]["not_ended"])).to_be_visible()

    page.goto(handset.host.origin + "checks/log/")
    row(page, "release").tap()
    for says in ("Primer seal replaced", "Moss", T["opened"]["gear_case"], "fell 15 inHg"):
        expect(sheet).to_contain_text(says)
    expect(sheet).not_to_contain_text("fell again")
    assert sheets(page, "Letter") == 1
    back(page)

    page.goto(handset.host.origin + "checks/log/")
    row(page, "decision").tap()
    expect(page.locator(".bay-standing")).to_have_text(T["defect"]["was"].format(rank=T["rank"]["restricted"]))
    expect(page.get_by_text("No drafting")).to_be_visible()
    sheets(page, "Letter")
    expect(page.locator("#paper .paper-signed")).to_contain_text("Captain Hale")
    expect(page.locator("#paper")).to_contain_text(f"{T['kind']['release']}: Hart")
    back(page)
    page.get_by_role("link", name=T["release"]["title"], exact=True).tap()
    expect(sheet).to_contain_text("Primer seal replaced")
    page.goto(handset.host.origin + "checks/record/#gone")
    expect(page.get_by_text(T["record"]["none"])).to_be_visible()
    page.close()


def test_a_defect_in_the_language_of_the_page(take):
    """An item's defect is called by the item's name in the language that is read; the record goes on as it was written."""
    handset = take(locale="fr-CA")
    beside(handset, **MIDSHIP)
    put(handset, "keepRecords", "bay", [{**made, **OF_RIG} for made in [defect("d1", at_ms=DAY, item=ITEM, what=TEXT[ITEM]["title"], seen="fell 15 inHg")]])
    page = handset.open("fr/checks/log/")
    french = data.words("checks", "fr")[ITEM]["title"]
    expect(row(page, "defect", data.words("bay", "fr"))).to_contain_text(french)
    row(page, "defect", data.words("bay", "fr")).tap()
    expect(page.locator("#bay .bay-act")).to_have_text(french)
    expect(page.locator("#rig-status")).to_contain_text(french)
    assert [made["what"] for made in do(page, "keptRecords", "bay")] == [TEXT[ITEM]["title"]]
    page.close()
