"""The ways to screens that only a touch brings, and to a page as it opens: each takes a phone and gives its open page."""
import json

from calc.teaching import handed, practice
from site_src.content import data
from site_src.routes import why
from tests import service_records
from tests.phone.card import beside, hasten, open_card
from tests.phone.diagnosis import tap, tap_until
from tests.phone.history import held, years
from tests.phone.layout import open_layout
from tests.phone.proof import store
from tests.phone.sheet import open_sheet
from tests.phone.words import PRACTICE, SITE
from tests.phone.store import do
from tests.site import pages
from tests.unit.bay.logs import defect, record

PAIR = data.words("practice")["debrief"]
TOLD = data.words("water")


def wye(handset, tab="nozzle"):
    """Two lines, one smooth, one gated, and a caution, every part of the page open."""
    layout = open_layout(handset)
    layout.build("add_wye")
    layout.line("B")
    layout.type("length", "600")
    layout.choose("nozzle", SITE["pressure"]["smooth"])
    layout.working("friction")
    layout.careful()
    for section in ("at_pump", "bounds", "fall"):
        layout.open(SITE[section]["title"])
    layout.open(SITE["pressure"]["ready"])
    layout.tab(tab)
    return layout.page


def flowing(handset):
    """Two lines of which one is shut, the picture turned over."""
    layout = open_layout(handset)
    layout.build("add_wye")
    layout.line("B")
    layout.type("length", "100")
    layout.turn()
    layout.page.locator("button.lay-end[data-line=A]").tap()
    return layout.page


def refused(handset):
    """An entry with its refusal, and no answer."""
    layout = open_layout(handset)
    layout.type("length", "abc")
    layout.refusal("length").wait_for()
    return layout.page


def card_at(name, step, *keys):
    """A card at a step, with buttons of the card pressed there."""
    def opened(handset):
        card = open_card(hasten(handset), name)
        card.run_to(step)
        for key in keys:
            card.begin_pause() if key == "pause" else card.press(key)
        return card.page

    return opened


def practising(see):
    """A practice run just begun, seen through its walls or as a person at it does."""
    def opened(handset):
        page = handset.open("practice/")
        page.get_by_role("radio", name=PRACTICE[f"see_{see}"], exact=True).tap()
        page.get_by_role("button", name=PRACTICE["start"], exact=True).tap()
        page.locator(".bench").wait_for()
        return page

    return opened


def hidden_fault(handset):
    """The code of a fault that this phone hid for another."""
    page = handset.open("practice/")
    page.get_by_role("radio", name=PAIR["who_other"], exact=True).tap()
    page.get_by_role("button", name=PAIR["hide"], exact=True).tap()
    page.get_by_role("img", name=PAIR["code_name"]).wait_for()
    return page


def found_fault(handset):
    """What was done beside what should have been, as a phone reads it from the other's code."""
    run = practice.begin("to_pump", why.parameters(), why.lights(), ["no_air"])
    for event in ({"kind": "gear", "to": "drive"}, {"kind": "tick", "passed_s": 0.5}, {"kind": "end", "how": "stopped"}):
        run = practice.advance(run, event)
    page = handset.open(f"practice/#went={handed.sent_back(run, 'no_water', 'gauge', 7)}")
    page.get_by_role("region", name=PAIR["result"]).wait_for()
    return page


def diagnosis(*signs):
    """A diagnosis that another page begins with these signs."""
    def opened(handset):
        known = json.dumps({"signs": dict.fromkeys(signs, "seen")})
        page = handset.open(f"diagnose/#from={known}")
        first = page.get_by_role("button", name=data.words("diagnose")["diagnose"]["carried_out"])
        page.locator(".look, .hand-over, .verdict, .order").first.wait_for()
        while first.count():
            tap_until(page, first, page.locator("#page").inner_text())
        page.locator(".look, .hand-over, .verdict").first.wait_for()
        return page

    return opened


def at_a_place(handset):
    """The signs of one place of the drawn cab."""
    page = handset.open("diagnose/")
    page.locator(".place-key").first.tap()
    page.locator(".key-told").first.wait_for()
    return page


def in_words(handset):
    """Every sign in words."""
    page = handset.open("diagnose/")
    page.get_by_role("button", name=data.words("diagnose")["diagnose"]["in_words"], exact=True).tap()
    page.locator(".key-told").first.wait_for()
    return page


def card_for_another_rig(handset):
    """A card that is not for the rig this phone stands beside."""
    beside(handset, drive="pto")
    page = handset.open("shift/override/")
    page.get_by_role("button", name=SITE["shift"]["unlike_other"]).wait_for()
    return page


def log_with_a_run(handset):
    """The log with a run that was stopped."""
    card = open_card(hasten(handset), "freeze")
    card.press("danger")
    page = handset.open("log/")
    page.get_by_role("heading", level=2).wait_for()
    return page


def in_the_bay(handset, address, *keys):
    """A rig with a pump out of service, at a page of the bay, after touches of keys by their words."""
    beside(handset, drive="midship")
    page = handset.open("404.html")
    page.evaluate("""() => localStorage.setItem("bay-name", "Hart")""")
    for made in (defect("d1"), record("round", "r1", list="vacuum", items=["prime_hold"]), record("answer", "a1", round="r1", item="prime_hold", answer="good", entry="22@US", amount=22)):
        do(page, "keepRecord", "bay", {**made, "rig_id": "rig-1", "rig_name": "Pump of the day"})
    page.goto(handset.host.origin + "checks/" + address)
    for key in keys:
        section, name = key.split(".")
        tap(page, data.words("bay")[section][name])
    page.locator("#bay :is(.key, .row, .defect)").first.wait_for()
    return page


def conditions_searched(handset):
    """What takes a rig out of service, with rows found."""
    page = handset.open("checks/conditions/")
    page.locator("#typed").fill("gear oil")
    page.locator("#conditions .defect").nth(1).wait_for()
    return page


def over_the_years(handset):
    """A rig with some years of tests, a table open, one test just taken off."""
    page = held(handset, years())
    page.goto(handset.host.origin + "test/years/")
    page.locator(".change summary").first.tap()
    page.get_by_role("article").get_by_role("button").last.tap()
    page.locator(".notice-low").wait_for()
    return page


def raising(handset):
    """The check after a repair at its readings, one of them refused."""
    page = held(handset)
    page.goto(handset.host.origin + "test/quick/")
    for _ in range(3):
        page.locator(".quick-answers .key-act").tap()
    page.locator("#engine-0").fill("fast")
    page.locator("#engine-0-refused").wait_for()
    return page


def water_answered(handset):
    """The list of the water pages with the one number that its person has entered all figures of."""
    sheet = open_sheet(handset, "water/tank/")
    sheet.type("tank", "800")
    sheet.type("flow", "100")
    sheet.page.close()
    page = handset.open("water/")
    page.locator(".page-figure:not([data-none])").wait_for()
    return page


def chosen(address, field, option):
    """A water page with a chip of a choice touched, and all that comes with it."""
    def opened(handset):
        sheet = open_sheet(handset, address)
        sheet.choose(field, TOLD["option"][field][option])
        sheet.page.locator("output:not([data-stale])").first.wait_for()
        return sheet.page

    return opened


def answered(handset):
    """A help page with every answer open."""
    page = handset.open("help/why/")
    for summary in page.locator("summary").all():
        summary.tap()
    return page


def searched(handset):
    """Help with answers to what was typed."""
    page = handset.open("help/")
    page.get_by_role("searchbox").fill("speedometer")
    page.locator("#found a").first.wait_for()
    return page


def checking_off(handset):
    """The check-off sheet of a trainee with a task open."""
    page = handset.open("log/checkoff/")
    page.get_by_label(data.words("checkoff")["checkoff"]["trainee"], exact=True).fill("Ann Bell")
    page.locator(".check-row > summary").first.tap()
    page.locator("#into_pump-date").wait_for()
    return page


def replied(page, place):
    """Answer the question that stands at a place of the page, rightly or not, and see what it says of it."""
    page.locator(f"{place} :is(#drill-answer, .rows .key)").first.wait_for()
    entry = page.locator("#drill-answer")
    if entry.count():
        entry.fill("9999")
        entry.press("Enter")
    else:
        page.locator(f"{place} .rows .key").first.tap()
    page.locator("#drill-verdict").wait_for()


def drilled(handset):
    """A question of the drill with its working."""
    page = handset.open("practice/numbers/")
    replied(page, "#numbers")
    return page


def called(handset):
    """A call of the shift at the gauge that is to be set."""
    page = handset.open("practice/call/")
    replied(page, "#call")
    page.locator(".dock .key-act").tap()
    page.locator(".slide").wait_for()
    return page


def debriefed(handset):
    """A call of the shift at its end."""
    page = called(handset)
    for _ in range(4):
        replied(page, "#call")
        page.locator(".dock .key-act").tap()
    page.locator("#call-debrief").wait_for()
    return page


def service(address, make=None):
    """A page of a service test that is kept on the phone; with `make` of that record instead of a failed one."""
    def opened(handset):
        record = store(handset, (make or service_records.a_failed_record)())
        page = handset.open(address.format(id=record["id"]))
        page.locator("h2, .outcome, .part-told, .chips, .clock").first.wait_for()
        return page

    return opened


def plain(address):
    """A page as it opens, computed where it computes."""
    def opened(handset):
        if address == "pressure/":
            return open_layout(handset).page
        if address.startswith(("water/", "foam/")) and address != "water/":
            return open_sheet(handset, address).page
        if address in {f"shift/{name}/" for name in pages.cards()}:
            return open_card(handset, address.split("/")[1]).page
        return handset.open(address)

    return opened
