"""The bay by touch: items of a check, defects written by hand, and what the phone keeps of them."""
import re

from playwright.sync_api import expect

from site_src.content import checks, data
from tests.phone.store import do

T = data.words("bay", "en")
TEXT = data.words("checks", "en")
PUMP_OUT = data.words("site", "en")["rig_status"]["pump_out"]
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


GOOD = re.compile("^(" + "|".join(T["round"][name] for name in ("good", "untimed", "only_unread")) + ")$")  # whatever is said with it


def at_item(page, wanted):
    """Put off what stands until this item is there, or open it from the list of what was put off."""
    while title(page).inner_text() != wanted:
        if key(page, T["round"]["later"]).count():
            touched_on(page, T["round"]["later"])
        else:
            touched_on(page, wanted)


def good(page):
    """Good, and whether it is said plainly; with a figure of the tray on the good side of the limit for a reading, where the item has one, and the figures it asks for."""
    kind = KINDS.get(title(page).inner_text())
    if kind:
        tray = page.locator(".tray .key")
        expect(tray.nth(1)).to_be_visible()
        tray.nth({"max": 0, "min": -1}.get(kind, 2)).tap()
        expect(key(page, GOOD)).to_be_enabled()
    for figure in page.locator(".bay-figures input").all():
        figure.fill("40")
    is_plain = key(page, T["round"]["good"]).count() == 1
    touched_on(page, GOOD)
    return is_plain


def defect(page, seen):
    touched_on(page, T["round"]["not_good"])
    page.get_by_label(T["defect"]["seen"]).fill(seen)
    if not page.locator("input[name=rank]:checked").count():  # it may be one of several conditions: none is proposed
        page.get_by_role("radio", name=T["rank"]["report"], exact=True).tap()
    touched_on(page, T["defect"]["write"])


def begin(page):
    page.get_by_label(T["bay"]["name"]).fill("Hart")
    touched_on(page, T["round"]["begin"])


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
