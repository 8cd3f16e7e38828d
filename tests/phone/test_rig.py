"""A rig on the phone: made, kept, carried to another phone, and never overwritten unseen."""
import json

import pytest
from playwright.sync_api import expect

from site_src.content import data, fleet
from tests.phone.handset import kill, read_in
from tests.phone.sources import source

R = data.words("rig")
DEMO = fleet.load()
ENGINE = DEMO["tollgate-engine-1"]


def press(page, section, word, **facts):
    page.get_by_role("button", name=R[section][word].format(**facts), exact=True).tap()


def kept_rigs(page):
    """Every profile in the phone's database."""
    return page.evaluate("""() => new Promise((resolve, reject) => {
        const opening = indexedDB.open("panelhand");
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
            const asked = opening.result.transaction("rigs").objectStore("rigs").getAll();
            asked.onsuccess = () => { opening.result.close(); resolve(asked.result); };
        };
    })""")


def bring(page, content, name="rig.json"):
    """Hand a file to the page, as from a mail."""
    page.locator("input[type=file]").set_input_files({"name": name, "mimeType": "application/json", "buffer": content})


def taken(page, name):
    page.get_by_role("button", name=R["carry"]["take"].format(name=name), exact=True).tap()
    expect(page.get_by_text(R["carry"]["taken"].format(name=name))).to_be_visible()


def with_engine(handset, **changes):
    """The Rig page of a phone that took the first demonstration rig, with some of its fields changed."""
    page = handset.open("rig/")
    bring(page, json.dumps({**ENGINE, **changes}).encode())
    taken(page, ENGINE["name"])
    return page


def test_three_fields_make_a_rig_that_answers(handset):
    """A name and one bed are enough: its pressure stands at the bed, and is one tap away on the Pressure page."""
    page = handset.open("rig/")
    press(page, "rig", "make")
    page.get_by_label(R["field"]["name"]).fill("Pump of the day")
    page.locator("#field-beds-0-length").fill("100")
    # by hand: 15.5 x 1.5^2 x 1 + 100 = 134.875
    expect(page.locator(".bed-answer")).to_have_text("135 psi")
    page.close()
    page = handset.open("pressure/")
    page.get_by_role("button", name=R["rig"]["new_bed"].format(count=1), exact=True).tap()
    expect(page.locator(".answer-figure")).to_contain_text("135")
    expect(page.get_by_role("group", name="Preconnects of this rig").get_by_text("Pump of the day", exact=True)).to_be_visible()
    expect(page.get_by_role("link", name="Pump of the day")).to_be_visible()


def test_a_new_rig_asks_for_four_things(handset):
    """The first screen of a new rig asks for name, drive, rated capacity and one bed, and for nothing else until it is opened."""
    page = handset.open("rig/")
    press(page, "rig", "make")
    page.locator("#field-beds-0-length").wait_for()
    fields = page.locator("main :is(input, select)[id]").evaluate_all("fields => fields.map(({ id }) => id)")
    assert fields[:3] == ["field-name", "field-drive", "field-pump_rated"]
    assert all(field.startswith("field-beds-0-") for field in fields[3:])
    assert page.locator("#field-drive").bounding_box()["y"] < 740 and page.locator(".rig-bed summary").bounding_box()["y"] < 740


def test_one_bed_is_open_at_a_time(handset):
    """Beds are rows with their pressure; a tap opens one and folds the other. Delete is at the end, far from Copy, and asks once more."""
    page = with_engine(handset)
    rows = page.locator(".rig-bed")
    expect(rows.locator(".bed-answer")).to_have_text(["101 psi", "128 psi", "164 psi", "85 psi", "105 psi"])  # 100.65, 127.6, 164.1, 85.3 and 105: see the panel card
    rows.nth(0).locator("summary").tap()
    expect(page.locator("#field-beds-0-length")).to_be_visible()
    rows.nth(2).locator("summary").tap()
    expect(page.locator("#field-beds-2-length")).to_be_visible()
    expect(page.locator("#field-beds-0-length")).to_have_count(0)
    copy, remove = (page.get_by_role("button", name=R["rig"][name], exact=True).bounding_box() for name in ("copy", "remove"))
    assert remove["y"] - copy["y"] > 300


def test_a_bed_past_its_hose_is_marked_as_on_the_card(handset):
    """An annual test at 180 makes the working limit 162: Crosslay 2 asks 164.1 and is marked, with the sentence once it is open; no other is."""
    page = with_engine(handset, hoses=[{**ENGINE["hoses"][0], "test_pressure": "180@US"}, *ENGINE["hoses"][1:]])
    rows = page.locator(".rig-bed")
    expect(rows.locator(".bed-answer")).to_have_text(["101 psi", "128 psi", "164! psi", "85 psi", "105 psi"])
    rows.nth(2).locator("summary").tap()
    expect(rows.nth(2).get_by_text(R["card"]["over_test"])).to_be_visible()


def test_a_kill_loses_nothing_that_was_typed(handset):
    """The page ended at any moment of editing keeps every field already entered."""
    page = handset.open("rig/")
    press(page, "rig", "make")
    page.get_by_label(R["field"]["name"]).fill("Half typed")
    for place, text in (("beds-0-name", "Nose"), ("beds-0-length", "175"), ("beds-0-end-flow", "125")):
        page.locator(f"#field-{place}").fill(text)
        kill(page)
        page = handset.open("rig/")
        expect(page.locator(f"#field-{place}")).to_have_value(text)
    expect(page.locator("#field-beds-0-name")).to_have_value("Nose")
    expect(page.get_by_text(R["rig"]["here"])).to_be_visible()


def test_from_phone_to_phone_by_code_the_profile_is_the_same(take):
    """Profile, code's link, second phone: identical; and the code draws what the link says."""
    first = with_engine(take())
    press(first, "carry", "code")
    expect(first.get_by_role("img", name=R["carry"]["code_name"].format(name=ENGINE["name"]))).to_be_visible()
    link = first.evaluate("""async ([carry, site, profile]) => {
        const { linkOf } = await import(carry);
        const { root } = await import(site);
        return linkOf(profile, root);
    }""", [source(first, "rig/carry.js"), source(first, "shared/site.js"), kept_rigs(first)[0]])
    second = take().context.new_page()
    second.goto(link)
    taken(second, ENGINE["name"])
    assert kept_rigs(second) == kept_rigs(first) == [ENGINE]


def test_a_file_leaves_and_comes_back(take):
    """The file that leaves brings the same rig to another phone."""
    first = with_engine(take())
    with first.expect_download() as download:
        press(first, "carry", "file")
    content = download.value.path().read_bytes()
    assert json.loads(content) == ENGINE
    second = take().open("rig/")
    bring(second, content)
    taken(second, ENGINE["name"])
    assert kept_rigs(second) == [ENGINE]


def test_a_link_that_was_cut_short_says_so(handset):
    """A text message ends a long link early: the page says that it was cut off and to ask again, in no file format's name; nothing is touched."""
    page = with_engine(handset)
    before = kept_rigs(page)
    link = page.evaluate("async ([carry, profile]) => (await import(carry)).linkOf(profile, location.origin)", [source(page, "rig/carry.js"), before[0]])
    letters = link.split("#")[1]
    for cut in (letters[: len(letters) // 2], letters[:-3], letters[:6]):
        page.evaluate("(cut) => { location.hash = cut; }", cut)
        expect(page.locator("p.notice", has_text="cut off")).to_contain_text("Ask for it again.")
        expect(page.get_by_text("JSON")).to_have_count(0)
    assert kept_rigs(page) == before


@pytest.mark.parametrize(
    ("content", "told"),
    [
        (b"{", R["carry"]["refused_json"]),
        (b"\xff\xfe", R["carry"]["refused_json"]),
        (b"[]", R["carry"]["refused_damaged"]),
        (b"null", R["carry"]["refused_damaged"]),
        (b"[" * 50000, R["carry"]["refused_json"]),
        (json.dumps({**ENGINE, "schema": 2}).encode(), R["carry"]["refused_version"].format(version=2, known=1)),
        (json.dumps({**ENGINE, "tank": "<img src=x onerror=alert(1)>"}).encode(), R["field"]["tank"]),
        (json.dumps({**ENGINE, "colour": "red"}).encode(), R["carry"]["unknown_field"]),
        (b'{"schema": 1, "id": "x", "name": "y", "units": "US", "__proto__": {"drive": "pto"}}', "__proto__"),
        (json.dumps({**ENGINE, "name": "x" * 600000}).encode(), R["carry"]["refused_large"]),
    ],
    ids=["cut", "not text", "nothing", "null", "deep", "later version", "script", "unknown field", "prototype", "large"],
)
def test_a_bad_file_is_refused_and_nothing_is_touched(handset, content, told):
    """A damaged, hostile or later file is refused with the place of the fault; what was kept is as it was."""
    page = with_engine(handset)
    before = kept_rigs(page)
    bring(page, content)
    expect(page.locator("p.notice", has_text=told).first).to_be_visible()
    assert kept_rigs(page) == before
    assert page.evaluate("({}).drive") is None


def test_the_same_rig_again_asks_before_it_replaces(handset):
    """A rig that is here already is replaced or copied only when the person says which."""
    page = with_engine(handset)
    bring(page, json.dumps({**ENGINE, "tank": "500@US"}).encode())
    press(page, "carry", "take_copy")
    expect(page.get_by_text(R["carry"]["taken"].format(name=ENGINE["name"]))).to_be_visible()
    assert sorted(profile["tank"] for profile in kept_rigs(page)) == ["500@US", "750@US"]


def test_two_tabs_do_not_overwrite_each_other(handset):
    """Another tab's change shows here, and an entry based on an older value is not written over it."""
    one = with_engine(handset)
    one.evaluate("location.hash = 'field-name'")
    two = handset.open("rig/#field-name")
    expect(two.locator("#field-name")).to_have_value(ENGINE["name"])
    one.locator("#field-name").fill("Renamed in the first")
    expect(two.locator("#field-name")).to_have_value("Renamed in the first")
    # the first tab's news held back, as by a sleeping tab: its base is then older than what is kept
    two.evaluate("""() => new Promise((resolve) => {
        const opening = indexedDB.open("panelhand");
        opening.onsuccess = () => {
            const store = opening.result.transaction("rigs", "readwrite").objectStore("rigs");
            store.getAll().onsuccess = (event) => {
                store.put({ ...event.target.result[0], name: "Written unseen" }, event.target.result[0].id);
            };
            store.transaction.oncomplete = () => { opening.result.close(); resolve(); };
        };
    })""")
    one.locator("#field-name").fill("Typed on the old value")
    expect(one.get_by_text(R["rig"]["conflict"])).to_be_visible()
    expect(one.locator("#field-name")).to_have_value("Written unseen")
    assert kept_rigs(one)[0]["name"] == "Written unseen"


def test_taken_out_is_put_back(handset):
    """A bed taken out by a slip of the glove comes back with one tap."""
    page = with_engine(handset)
    page.locator(".rig-bed summary", has_text="Crosslay 1").tap()
    press(page, "rig", "remove_bed", name="Crosslay 1")
    expect(page.get_by_text("Crosslay 1", exact=True)).to_have_count(0)
    press(page, "rig", "put_back")
    expect(page.locator(".rig-bed summary", has_text="Crosslay 1")).to_be_visible()
    assert kept_rigs(page)[0]["beds"] == ENGINE["beds"]


def test_the_panel_card_shows_the_rig(handset):
    """The card on the phone holds the bed's figure: 11.4 x 1.5^2 x 2.5 + 100 = 164.1, to the nearest 5."""
    with_engine(handset).close()
    page = handset.open("rig/card/")
    row = page.get_by_role("row", name="Crosslay 2")
    expect(row.get_by_role("cell")).to_have_text(["165"])  # one column at a time
    page.get_by_role("radio", name=R["card"]["added"].format(length="100", u_length="ft"), exact=True).check(force=True)
    expect(row.get_by_role("cell")).to_have_text(["190"])  # 100 ft more: 189.8


def test_a_shift_card_for_another_drive_is_not_offered(handset):
    """A rig with another drive is told that a card is not for it, and no step of it is offered."""
    page = handset.open("rig/")
    other = DEMO["tollgate-engine-1"]  # midship: not for pump and roll
    bring(page, json.dumps(other).encode())
    taken(page, other["name"])
    page.close()
    page = handset.open("shift/moving/")
    expect(page.get_by_role("alert")).to_contain_text(other["name"])
    seen = data.words("shift")["shift"]["seen"]
    expect(page.get_by_role("button", name=seen, exact=True)).to_have_count(0)


@pytest.mark.parametrize(("system", "figure", "unit"), [("SI", "1170", "kPa"), ("bar", "11.7", "bar"), ("imperial", "170", "psi")])
def test_units_change_what_is_shown_and_not_what_was_entered(handset, system, figure, unit):
    """169.75 psi is 1170 kPa and 11.7 bar; and back in US units every entry stands as it was typed."""
    page = handset.open("pressure/")
    page.locator("button.lay-line").wait_for()
    page.get_by_label("Length", exact=True).fill("201")
    page.get_by_label("Length", exact=True).fill("200")
    read_in(page, system)
    expect(page.locator(".answer-figure")).to_have_text(f"{figure} {unit}")
    read_in(page, "US")
    expect(page.locator(".answer-figure")).to_have_text("170 psi")
    expect(page.get_by_label("Length", exact=True)).to_have_value("200")


@pytest.mark.parametrize(("system", "tips"), [
    ("US", {"attack-1.75": "0.9375@US", "attack-2.5": "1.125@US"}),  # 15/16 and 1 1/8, common practice
    ("SI", {"metric-45": "24@SI", "metric-65": "28@SI"}),  # the nearest metric tips to 23.8 and 28.6 mm
])
def test_a_smooth_bore_begins_with_the_tip_of_its_hose(handset, system, tips):
    """Whichever is chosen first, hose or nozzle, the tip is the usual one; a tip that was picked stays."""
    page = handset.open("rig/")
    read_in(page, system)
    press(page, "rig", "make")
    hose, kind, tip = (page.locator(f"#field-beds-0-{name}") for name in ("hose", "end-kind", "end-tip"))
    small, large = tips
    hose.select_option(large)
    kind.select_option("smooth")
    expect(tip).to_have_value(tips[large])
    for size in (small, large):
        hose.select_option(size)
        expect(tip).to_have_value(tips[size])
    tip.select_option({"US": "1.25@US", "SI": "32@SI"}[system])
    hose.select_option(small)
    kind.select_option("fog")
    kind.select_option("smooth")
    expect(tip).to_have_value({"US": "1.25@US", "SI": "32@SI"}[system])
