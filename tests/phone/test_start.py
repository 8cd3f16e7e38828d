"""From the icon to a rig's pressures with no tap; what is dangerous, one tap away from there."""
import re

from playwright.sync_api import expect

from site_src.content import data, fleet
from tests.phone.card import beside
from tests.phone.handset import until
from tests.phone.words import SITE

RIG = fleet.load()["tollgate-engine-1"]
# by hand: 11.4 x 1.5^2 x 1 + 75 = 100.65; 11.4 x 1.5^2 x 2.5 + 100 = 164.1
BEDS = {"Front bumper": "101", "Crosslay 2": "164"}
START = data.words("start")["start"]


def bed(page, name):
    return page.locator(".bed", has_text=name)


def with_rig(handset, **changes):
    beside(handset, **{**RIG, **changes})
    return handset.open()


def test_beds_stand_with_no_tap(handset):
    """The start page opens on the rig's own beds, each with the number to set, under the rig's name."""
    page = with_rig(handset)
    for name, psi in BEDS.items():
        expect(bed(page, name).locator(".bed-figure")).to_have_text(psi)
    expect(page.get_by_role("heading", level=1)).to_have_text(RIG["name"])
    assert page.evaluate("document.documentElement.scrollHeight") <= 800


def test_last_answers_stand_before_the_calculator(handset):
    """What was worked out for exactly this rig is painted while the calculator is still on its way; for another, nothing is."""
    page = with_rig(handset)
    expect(bed(page, "Crosslay 2").locator(".bed-figure")).to_have_text("164")
    until(page, "performance.getEntriesByName('live-answer').length > 0")
    page.close()
    handset.context.route("**/calc.bin", lambda route: None)  # it never comes
    page = handset.open()
    expect(bed(page, "Crosslay 2").locator(".bed-figure")).to_have_text("164")
    assert page.evaluate("performance.getEntriesByName('rig-answers').length") == 1
    beside(handset, **{**RIG, "beds": [{**RIG["beds"][0], "length": "200@US"}]})
    page = handset.open()
    expect(page.get_by_role("heading", level=1)).to_have_text(RIG["name"])
    expect(page.locator("a.bed")).to_have_count(0)
    expect(page.locator("#beds")).not_to_contain_text("101")
    handset.context.unroute_all()


def test_a_changed_bed_is_one_step_back(handset):
    """A bed changed on Pressure gives way to the next bed that is tapped; the page says so, and brings it back."""
    page = with_rig(handset)
    bed(page, "Front bumper").tap()
    expect(page.locator(".answer-figure b")).to_have_text("101")
    expect(page.get_by_text(SITE["pressure"]["is_led"])).to_have_count(0)  # nothing was made yet
    page.get_by_role("button", name="200 ft", exact=True).tap()
    expect(page.locator(".answer-figure b")).to_have_text("126")  # by hand: 11.4 x 1.5^2 x 2 + 75 = 126.3
    page.goto(handset.host.origin)
    bed(page, "Crosslay 2").tap()
    expect(page.locator(".answer-figure b")).to_have_text("164")
    expect(page.get_by_text(SITE["pressure"]["is_led"])).to_be_visible()
    page.get_by_role("button", name=SITE["pressure"]["undo"], exact=True).first.tap()
    expect(page.locator(".answer-figure b")).to_have_text("126")


def test_a_line_is_told_by_its_bed(handset):
    """Of several lines each that is a bed of the rig is named so, whatever it is called, and a copy of it is not: on the tray, and where it is to be throttled."""
    page = with_rig(handset, beds=[{**RIG["beds"][0], "name": "Rear @ left"}, *RIG["beds"][1:]])
    bed(page, "Rear @ left").tap()
    page.get_by_role("button", name=SITE["pressure"]["add_line"], exact=True).tap()
    heading = page.locator(".tray h2")
    expect(heading).to_have_text("Line B")
    page.locator(".tab").first.tap()
    page.get_by_role("button", name="Crosslay 2", exact=True).tap()
    expect(heading).to_have_text("Line B, Crosslay 2")
    expect(page.locator(".answer-gates").first).to_contain_text("Line A, Rear @ left")
    page.reload()
    expect(heading).to_have_text("Line A, Rear @ left")


def test_a_changed_bed_is_said_on_the_start_page(handset):
    """Its row keeps the profile's number with the profile's length, says that it was changed, and leads to the layout as it was left: painted
    early as well. Undone, it says nothing."""
    page = with_rig(handset)
    until(page, "performance.getEntriesByName('live-answer').length > 0")
    bed(page, "Front bumper").tap()
    page.get_by_role("button", name="200 ft", exact=True).tap()
    expect(page.locator(".answer-figure b")).to_have_text("126")  # by hand: 11.4 x 1.5^2 x 2 + 75 = 126.3
    page.go_back()
    expect(bed(page, "Front bumper")).to_contain_text(START["changed"])  # also where the browser brings the page back as it was left
    page = handset.open()
    row = bed(page, "Front bumper")
    expect(row).to_contain_text(START["changed"])
    expect(row).to_contain_text("100 ft")
    expect(row.locator(".bed-figure")).to_have_text("101")
    expect(bed(page, "Crosslay 2")).not_to_contain_text(START["changed"])
    handset.context.route("**/start.js", lambda route: None)  # it never comes
    page = begun(handset)
    expect(bed(page, "Front bumper")).to_contain_text(START["changed"])
    bed(page, "Front bumper").tap()
    expect(page.locator(".answer-figure b")).to_have_text("126")
    page.reload()
    expect(page.locator(".answer-figure b")).to_have_text("126")
    handset.context.unroute_all()
    page.get_by_role("button", name=SITE["pressure"]["undo"], exact=True).first.tap()
    expect(page.locator(".answer-figure b")).to_have_text("101")
    page = handset.open()
    expect(bed(page, "Front bumper").locator(".bed-figure")).to_have_text("101")
    expect(bed(page, "Front bumper")).not_to_contain_text(START["changed"])


def worked_out(handset):
    """A phone that has worked out its rig's beds, and has no script of the start page any more."""
    page = with_rig(handset)
    until(page, "performance.getEntriesByName('live-answer').length > 0")
    page.wait_for_timeout(100)  # the answer is kept a moment after it stands
    page.close()
    handset.context.route("**/start.js", lambda route: None)  # it never comes
    return handset


def begun(handset):
    """The start page, that goes on loading."""
    page = handset.context.new_page()
    page.goto(handset.host.origin, wait_until="commit")
    page.locator("#beds").wait_for()
    return page


def test_last_answers_are_painted_before_any_module(handset):
    """With all they follow from; not once the rig was changed, nor in other units or for another version."""
    page = begun(worked_out(handset))
    expect(bed(page, "Crosslay 2").locator(".bed-figure")).to_have_text("164")
    expect(bed(page, "Crosslay 2")).to_contain_text("250 ft")
    assert page.evaluate("performance.getEntriesByName('rig-answers').length") == 1
    page.evaluate("localStorage.setItem('units', 'SI')")
    page = begun(handset)
    expect(page.locator(".signs")).to_be_visible()
    expect(page.locator("a.bed")).to_have_count(0)
    page.evaluate("localStorage.removeItem('units')")
    page = handset.open("rig/#field-beds-0-length")
    page.locator("#field-beds-0-length").fill("75")
    page = begun(handset)
    expect(page.locator(".signs")).to_be_visible()
    expect(page.locator("a.bed")).to_have_count(0)
    handset.context.unroute_all()


def test_another_live_answer_is_not_swapped_in_silently(handset):
    """Where what stood first is not what is worked out now, both are said."""
    page = begun(worked_out(handset))
    page.evaluate("""() => {
      const last = JSON.parse(localStorage.getItem("answer:start"));
      last.rows.find(({ name }) => name === "Crosslay 2").pressure = "154";
      for (const store of [localStorage, sessionStorage]) store.setItem("answer:start", JSON.stringify(last));
    }""")
    page.close()
    handset.context.unroute_all()
    page = handset.open()
    expect(bed(page, "Crosslay 2").locator(".bed-figure")).to_have_text("164")
    expect(bed(page, "Crosslay 2")).to_contain_text(START["was"].format(was="154"))
    expect(bed(page, "Front bumper")).not_to_contain_text(START["was"].format(was="101"))


def test_a_bed_opens_on_pressure(handset):
    """A tap on a bed opens it on Pressure at the same number, whatever was worked on there, and no other number before it."""
    page = with_rig(handset)
    bed(page, "Crosslay 2").tap()
    expect(page.locator(".answer-figure b, .plate b").first).to_have_text("164")
    page.go_back()
    bed(page, "Front bumper").tap()
    page.wait_for_url("**/pressure/**")
    expect(page.locator(".answer-figure b, .plate b").first).to_have_text("101")
    page.reload()
    expect(page.locator(".answer-figure b, .plate b").first).to_have_text("101")


def test_a_bed_with_a_fault_has_no_number(handset):
    """It leads to the rig, where its fault is named; the others keep their numbers."""
    beside(handset, **{**RIG, "beds": [{**RIG["beds"][0], "length": "1,5,0@US"}, *RIG["beds"][1:]]})
    page = handset.open()
    expect(bed(page, "Front bumper")).to_contain_text(START["faulty_bed"])
    expect(bed(page, "Crosslay 2").locator(".bed-figure")).to_have_text("164")
    bed(page, "Front bumper").tap()
    page.wait_for_url("**/rig/**")


GUN = {"name": "Deck gun", "device": "master", "device_most": "800@US", "end": {"kind": "fog", "flow": "1000@US", "pressure": "100@US"}}


def test_a_stopped_bed_has_words_and_no_number(handset):
    """What Pressure stops has no number on the start page, the Rig page and the card, by the live answer and as painted before it; a tap opens it on Pressure."""
    card = data.words("rig")["card"]
    beside(handset, **{**RIG, "beds": [GUN]})
    for _ in range(2):
        page = handset.open()
        expect(bed(page, "Deck gun").locator(".bed-none")).to_have_text(START["device_over"])
        expect(page.locator(".bed-figure")).to_have_count(0)
        until(page, "performance.getEntriesByName('live-answer').length > 0")
    bed(page, "Deck gun").tap()
    expect(page.locator(".plate-careful")).to_contain_text(data.words("pressure")["caution_short"]["device_over"])
    page = handset.open("rig/")
    expect(page.locator(".bed-answer")).to_have_text(card["device_over"])
    page = handset.open("rig/card/")
    row = page.locator(".sheet-set tbody tr")
    expect(row).to_contain_text(card["device_over"])
    expect(row.locator("td").filter(has_text=card["none"])).to_have_count(7)


def test_without_a_rig_examples_are_called_so(handset):
    """Four usual layouts under the word EXAMPLE: 1 3/4 in, 200 ft, 150 gpm at 100 psi is 69.75 + 100 (C 15.5); they need no calculator."""
    handset.context.route("**/calc.bin", lambda route: None)
    page = handset.open()
    expect(page.locator("#beds")).to_contain_text(START["example"])
    expect(page.locator(".bed-figure").first).to_have_text("170")
    handset.context.unroute_all()


def test_night_is_one_tap_from_every_page(handset):
    """The bar's moon turns this page and the next to night, and back."""
    ground = "getComputedStyle(document.body).backgroundColor"
    page = handset.open("tables/")
    key = page.get_by_role("button", name=SITE["site"]["night"], exact=True)
    day = page.evaluate(ground)
    key.tap()
    expect(key).to_have_attribute("aria-pressed", "true")
    night = page.evaluate(ground)
    assert night != day
    page = handset.open("help/")
    assert page.evaluate(ground) == night
    page.get_by_role("button", name=SITE["site"]["night"], exact=True).tap()
    assert page.evaluate(ground) == day


def test_danger_is_one_tap_away(handset):
    """The order for a rig that moves, its first act in sight at once; and the way for a line that lost its water."""
    page = handset.open()
    page.get_by_role("link", name=data.words("start")["danger"]["door"]).tap()
    first = page.get_by_text(data.orders()["moved"]["do"][0]).first
    expect(first).to_be_in_viewport(ratio=1)
    page.get_by_role("link", name=SITE["site"]["up"]).tap()
    page.get_by_role("link", name=START["line_lost"]).tap()
    expect(page).to_have_url(re.compile("diagnose/water/"))


def test_units_are_chosen_for_every_page(handset):
    """All pages leads to the units at its head: in kPa the examples are 170 psi x 6.894757 = 1170 kPa, and Pressure reads so too."""
    page = handset.open("all/")
    page.get_by_role("link", name=START["language"], exact=True).tap()  # one touch from the head of the page
    expect(page.locator("#language")).to_be_in_viewport()
    page.evaluate("scrollTo(0, 0)")
    page.get_by_role("link", name=SITE["units"]["title"], exact=True).tap()
    expect(page.locator("#units")).to_be_in_viewport(ratio=1)
    page.get_by_role("radio", name=SITE["units"]["SI"]).check(force=True)
    page = handset.open("pressure/")
    expect(page.locator("#pressure")).to_contain_text("kPa")


def test_five_beds_stand_on_one_screen(handset):
    """At 360 by 740, with a warning beside the way to the checks and a bed that was changed: all six signs stand above the doors, and nothing scrolls."""
    assert len(RIG["beds"]) == 5
    page = with_rig(handset)
    page.locator(".bed").first.tap()
    page.get_by_label("Length", exact=True).fill("300")
    expect(page.locator(".answer-figure")).not_to_have_attribute("data-stale", "")
    page.goto(handset.host.origin)
    expect(page.locator(".bed-changed")).to_be_visible()
    expect(page.locator("#readiness .on-hold")).to_be_visible()
    assert page.evaluate("document.documentElement.scrollHeight") <= 740
    assert page.evaluate("document.querySelector('.signs').getBoundingClientRect().bottom < document.querySelector('.dock').getBoundingClientRect().top")
