"""A rig with a fault, on the phone: named on every page that uses its figures, no number where it is needed, the right one elsewhere."""
import copy
import json

import pytest
from playwright.sync_api import expect

from site_src.content import data, fleet
from tests.phone.sources import source
from tests.phone.test_rig import bring, kept_rigs, press, taken

R, SITE = data.words("rig"), data.shared_words()
ENGINE = fleet.load()["tollgate-engine-1"]
LINE = {"name": "Crosslay", "hose": "attack-1.75", "length": "200@US", "crew": "2", "end": {"kind": "fog", "flow": "150@US", "pressure": "100@US"}}
BLITZ = {**LINE, "name": "Blitz", "hose": "attack-2.5"}
OWN = {"hose": "attack-1.75", "coefficient": "10@US", "origin": "measured"}
# by hand: 10 x 1.5^2 x 2 + 100 = 145, where the handbook's C 15.5 would ask for 170; 2 x 1.5^2 x 2 + 100 = 109
SOUND = {"schema": 1, "id": "own", "name": "Own figures", "units": "US", "hoses": [OWN], "beds": [LINE, BLITZ]}
FAULTS = {
    "idle": ({"idle": "70000"}, "Fix Idle, rpm: 70000 stands there, 300 to 1500 is allowed."),
    "capacity": ({"pump_rated": "1x250@US"}, "Fix Rated capacity: 1x250 stands there. Digits only, such as 150 or 12.5."),
    "bed": ({"beds": [LINE, {**BLITZ, "length": "0@US"}]}, "Fix Hose beds, row 2, Blitz, Length: 0 stands there, 1 to 5000 ft is allowed."),
    "coefficient": ({"hoses": [OWN, {"hose": "attack-2.5", "coefficient": "", "origin": "measured"}]}, "Fix Own hose figures, row 2, Coefficient: This is missing."),
}


def chosen(handset, profile):
    """A phone that has this rig, whatever is wrong with it, and works for it."""
    page = handset.open("404.html")
    page.evaluate("""async ([store, profile]) => {
        const door = await import(store);
        await door.keepRecord("rigs", profile);
        localStorage.setItem("rig", profile.id);
        localStorage.setItem("units", profile.units);
    }""", [source(page, "shared/store.js"), profile])
    page.close()


@pytest.mark.parametrize("fault", FAULTS)
def test_one_fault_changes_no_figure_and_is_named_everywhere(handset, fault):
    """With one fault anywhere the rig's own C 10 still answers 145, and each page says which field to fix, with a link to it."""
    changes, sentence = FAULTS[fault]
    chosen(handset, {**SOUND, **changes})
    page = handset.open("pressure/")
    expect(page.locator(".answer-figure")).to_have_text("145 psi")
    for address in ("pressure/", "water/", "water/relay/", "water/tank/", "rig/"):
        page.close()
        page = handset.open(address)
        expect(page.get_by_role("link", name=sentence, exact=True)).to_be_visible()
    page.close()
    page = handset.open("rig/card/")
    expect(page.locator(".sheet").get_by_text(sentence)).to_be_visible()
    expect(page.get_by_role("row", name="Crosslay").get_by_role("cell").first).to_have_text("145")


def test_a_sound_rig_has_no_fault(handset):
    """Where nothing is wrong, nothing is said; the rig is named."""
    chosen(handset, SOUND)
    for address in ("pressure/", "water/", "water/relay/"):
        page = handset.open(address)
        expect(page.get_by_role("link", name=SITE["pressure"]["for_rig"].format(name="Own figures"))).to_be_visible()
        expect(page.locator(".faults")).to_have_count(0)
        page.close()


def test_a_line_that_needs_the_fault_shows_no_number(handset):
    """Hose with a faulty figure of the rig's own has no number on Pressure and on the card; it is never the handbook's."""
    chosen(handset, {**SOUND, "hoses": [OWN, {"hose": "attack-2.5", "coefficient": "2..5@US", "origin": "measured"}]})
    page = handset.open("pressure/")
    page.get_by_role("button", name="Blitz").tap()
    expect(page.locator(".answer")).to_contain_text(SITE["refusal"]["faulty_profile"])
    expect(page.locator(".answer")).not_to_contain_text("109")
    page.get_by_role("button", name="Crosslay").tap()
    expect(page.locator(".answer-figure")).to_have_text("145 psi")
    page.close()
    page = handset.open("rig/card/")
    expect(page.get_by_role("row", name="Blitz").get_by_role("cell").first).to_have_text(R["card"]["none"])


def test_the_page_does_not_open_on_a_faulty_bed(handset):
    """A rig whose first bed is of 0 ft opens on its next one and says so, now and when it is opened again: 109 psi by hand, see above."""
    chosen(handset, {**SOUND, "beds": [{**LINE, "length": "0@US"}, BLITZ]})
    for _ in range(2):
        page = handset.open("pressure/")
        expect(page.locator(".answer-figure")).to_have_text("109 psi")
        expect(page.get_by_text("Crosslay has a fault. The page opened on Blitz.")).to_be_visible()
        expect(page.get_by_role("button", name="Crosslay")).to_have_count(0)
        page.close()


def test_a_bed_with_a_fault_keeps_its_key(handset):
    """A bed whose length is typed "2OO" stands where it stood among the beds, marked, and leads to that length; the page opens on the first."""
    chosen(handset, {**SOUND, "beds": [LINE, {**BLITZ, "length": "2OO@US"}, {**LINE, "name": "Rear"}]})
    page = handset.open("pressure/")
    keys = page.get_by_role("group", name=SITE["pressure"]["beds"]).locator(".key")
    expect(keys).to_have_text(["Crosslay", "Blitz: fix", "Rear"])
    expect(page.locator(".answer-figure")).to_have_text("145 psi")
    expect(page.get_by_text("The page opened on", exact=False)).to_have_count(0)
    page.get_by_role("link", name="Blitz: fix", exact=True).tap()
    expect(page.locator("#field-beds-1-length")).to_be_focused()


def test_the_rest_of_a_faulty_profile_is_used(handset):
    """Beside a fault no page claims that all other figures are the rig's own: the handbook's are in use for hose without one."""
    chosen(handset, {**SOUND, "idle": "70000"})
    for address in ("pressure/", "water/", "water/relay/"):
        page = handset.open(address)
        expect(page.locator(".faults")).to_contain_text("What needs it shows no number. The rest of the profile is used.")
        page.close()


def test_the_link_of_a_fault_leads_to_its_field(handset):
    """From Pressure one tap brings the person to the field, and putting it right takes the fault from the page."""
    chosen(handset, {**SOUND, "idle": "70000"})
    page = handset.open("pressure/")
    page.get_by_role("link", name=FAULTS["idle"][1]).tap()
    field = page.locator("#field-idle")
    expect(field).to_be_focused()
    expect(page.locator("#field-idle-refused")).to_have_text("300 to 1500.")
    field.fill("700")
    expect(page.locator(".faults")).to_have_count(0)


# what one check took and another refused, and what no page could read: entries of a nozzle kind that is not used, odd texts
HOSTILE = {
    "long unused tip": {"beds": [{**LINE, "end": {**LINE["end"], "tip": "x" * 45}}]},
    "unknown system": {"beds": [{**LINE, "end": {**LINE["end"], "tip": "5@nowhere"}}]},
    "unused number": {"beds": [{**LINE, "end": {**LINE["end"], "tip": "not a tip"}}]},
    "blanks": {"beds": [{**LINE, "length": " " * 20 + "200@US"}]},
    "long length": {"beds": [{**LINE, "length": "200" + " " * 40 + "@US"}]},
    "another system": {"beds": [{**LINE, "length": "61@SI", "end": {**LINE["end"], "pressure": "7@bar"}}]},
    "past any hose": {"beds": [{**LINE, "length": "5000@US", "end": {**LINE["end"], "flow": "2000@US"}}]},
    "no crew": {"beds": [{key: value for key, value in LINE.items() if key != "crew"}]},
    "gun": {"beds": [{"name": "Gun", "device": "master", "end": {"kind": "smooth", "tip": "1.5@US", "pressure": "80@US"}, "tips": ["1.75@US"]}]},
}


@pytest.mark.parametrize("case", HOSTILE)
def test_whatever_is_taken_opens_every_page(handset, case):
    """A rig is refused in words, or every page opens with it, with and without a layout left before: nothing throws, every page has its controls."""
    page = handset.open("rig/")
    bring(page, json.dumps({**SOUND, **HOSTILE[case]}).encode())
    is_taken = case not in ("long unused tip", "unknown system", "long length")
    if is_taken:
        taken(page, SOUND["name"])
    else:
        expect(page.locator("p.notice", has_text=R["carry"]["refused"].format(reason=""))).to_be_visible()
        assert kept_rigs(page) == []
        chosen(handset, {**SOUND, **HOSTILE[case]})  # as a rig typed, or taken by an older version, may be
    page.close()
    for visit in ("without a layout", "with one"):
        page = handset.open("pressure/")
        expect(page.locator("button.lay-line").first).to_be_visible()
        page.locator(".tab", has_text=SITE["tab"]["height"]).tap()
        page.locator("#A-height").fill("10" if visit == "with one" else "0")
        page.close()
    for address, part in (("rig/card/", ".sheet"), ("water/", ".rig-named"), ("water/relay/", "#hose, .entries"), ("rig/", ".standing")):
        page = handset.open(address)
        expect(page.locator(part).first).to_be_visible()
        page.close()


def test_a_figure_follows_its_size(handset):
    """A handbook figure follows the size; one that was typed stays, is named so, and is questioned."""
    page = handset.open("rig/")
    bring(page, json.dumps({**SOUND, "hoses": []}).encode())
    taken(page, SOUND["name"])
    page.get_by_text(R["rig"]["section_hoses"], exact=True).tap()
    press(page, "rig", "add_hose")
    expect(page.get_by_text("C 24, handbook.")).to_be_visible()  # 1 1/2 in, the hydraulics handout
    page.locator("#field-hoses-0-hose").select_option("supply-4")
    expect(page.get_by_text("C 0.2, handbook.")).to_be_visible()
    page.locator("#field-hoses-0-coefficient").fill("0.3")
    expect(page.get_by_text("C 0.3, department's own figure. 50 % above the handbook's 0.2. Large difference: check it.")).to_be_visible()
    page.locator("#field-hoses-0-hose").select_option("supply-5")
    expect(page.get_by_text(R["rig"]["size_changed"].format(coefficient="0.3", before="4 in", hose="5 in"))).to_be_visible()
    expect(page.locator("#field-hoses-0-coefficient")).to_have_value("0.3")
    press(page, "rig", "size_handbook")
    expect(page.get_by_text("C 0.08, handbook.")).to_be_visible()
    assert kept_rigs(page)[0]["hoses"] == [{"hose": "supply-5", "coefficient": "", "origin": "handbook", "test_pressure": ""}]


def test_the_same_hose_twice_is_named(handset):
    """Two rows of one hose are named where they stand, and neither answers."""
    chosen(handset, {**SOUND, "hoses": [OWN, {**OWN, "coefficient": "12@US"}]})
    page = handset.open("rig/")
    expect(page.get_by_role("link", name="Fix Own hose figures, row 2, Hose: Listed twice. Keep one row of it.")).to_be_visible()
    page.close()
    page = handset.open("pressure/")
    expect(page.locator(".answer")).to_contain_text(SITE["refusal"]["faulty_profile"])


def test_a_gun_and_supply_hose_are_made_and_answer(handset):
    """A deck gun of 80 psi and the handbook's 25 asks for 105, with the builder's 40 for 120; on Pressure it is one tap, and so is the supply hose."""
    page = handset.open("rig/")
    press(page, "rig", "make")
    press(page, "rig", "add_gun")
    expect(page.locator(".bed-answer").nth(1)).to_have_text("105 psi")
    page.locator("#field-beds-1-loss").fill("40")
    expect(page.locator(".bed-answer").nth(1)).to_have_text("120 psi")
    page.get_by_text(R["rig"]["section_supply"], exact=True).tap()
    press(page, "rig", "add_supply")
    page.locator("#field-supply-0-hose").select_option("supply-5")
    page.locator("#field-supply-0-length").fill("1000")
    page.locator("#field-supply-0-limit").fill("170")
    page.close()
    page = handset.open("pressure/")
    expect(page.locator(".answer-figure")).to_have_text("170 psi")  # a rig opens on its first bed; by hand: 15.5 x 1.5^2 x 2 + 100 = 169.75
    page.get_by_role("button", name="Supply 5 in").tap()
    # by hand: 0.08 x 10^2 x 10 + 20 = 100
    expect(page.locator(".answer-figure")).to_have_text("100 psi")
    page.get_by_role("button", name=R["rig"]["new_gun"]).tap()
    expect(page.locator(".answer-figure")).to_have_text("120 psi")
    page.close()
    page = handset.open("water/relay/")
    page.locator(".entry-fold summary").tap()
    page.locator(".entry-row[data-entry=most]").tap()
    expect(page.locator("#most")).to_have_value("170")
    expect(page.get_by_text("New rig carries 1000 ft of this hose, working limit 170 psi.")).to_be_visible()


@pytest.mark.parametrize("width", [320, 360])
@pytest.mark.parametrize("system", ["US", "SI"])
def test_nothing_of_a_card_is_cut_on_a_phone(handset, width, system):
    """One column at a time fits the screen, on the phone's own card and on the fleet's; no figure is cut and nothing scrolls sideways."""
    profile = copy.deepcopy(ENGINE)
    profile.update(units=system, panel_step="")
    profile["beds"][0]["name"] = "Apartment highrise preconnect"
    chosen(handset, profile)
    for address in ("rig/card/", "rigs/tollgate-engine-1/", "rigs/saltmarsh-pump-2/"):
        page = handset.open(address)
        page.set_viewport_size({"width": width, "height": 640})
        shown = set()
        for column in range(2, 9):
            page.locator(f".sheet-columns [value='{column}']").check(force=True)
            assert page.evaluate("""() => [...document.querySelectorAll(".sheet-set, .sheet td, .sheet th, html")].filter((part) =>
                part.clientWidth && part.scrollWidth > part.clientWidth + 1).map((part) => part.outerHTML.slice(0, 80))""") == []
            heads = page.locator(".sheet-set thead th:visible").all_inner_texts()
            assert len(heads) == 2  # the line, and what is chosen
            shown.update(heads)
        assert len(shown) == 8  # every column can be seen
        page.close()
