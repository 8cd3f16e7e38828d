"""The diagnosis, by touch and with no signal: from a card to a cause, one question at a time, and every way of standing still."""
import json
from urllib.parse import unquote

import pytest
from playwright.sync_api import expect

from tests.phone.card import open_card
from tests.phone.diagnosis import ASK, D, F, ORDERS, QUESTIONS, SIGN, age, answer, asked, begin, button, carried_out, choose, keys_of, log_of, open_at, open_fresh, place, tap, truly
from tests.phone.handset import kill
from tests.phone.words import SITE
from tests.unit.diagnosis.dialogue import CAUSES, answers_of

MOST_AT_A_PLACE = 6


def test_from_a_dark_light_to_its_cause(away):
    """"I don't see that" on a card leads into the diagnosis with what the card knows, and true answers to the cause.

    The card saw the air up and heard the clunk; with the engine secured, a technician finds the shift switch open.
    """
    first = open_fresh(away)
    first.get_by_role("radio", name=D["role"]["technician"]).tap()
    first.close()
    card = open_card(away, "scene")
    card.run_to("light_first")
    card.press("not_seen")
    card.page.get_by_role("link", name=SITE["shift"]["diagnose"]).tap()
    page = card.page
    expect(page.get_by_text(ASK["from_card"])).to_be_visible()
    says = answers_of(CAUSES["lamp_or_switch"])
    looks = 0
    secured = button(page, D["engine_state"]["secured"])
    while asked(page) or secured.is_visible():
        if not asked(page):
            tap(page, D["engine_state"]["secured"])
            continue
        look = asked(page)
        assert look not in ("air_below", "no_clunk", "engine_above_idle", "puff", "light")
        if look == "shift_felt":  # the card heard a clunk: that there was none is no answer any more
            expect(button(page, F["said"][look]["nothing"])).to_have_count(0)
        truly(page, look, says)
        looks += 1
        if looks == 1 and asked(page):  # killed between two looks, nothing is lost
            before = asked(page)
            kill(page)
            page = away.open("diagnose/")
            page.locator(".look").wait_for()
            assert asked(page) == before
            secured = button(page, D["engine_state"]["secured"])
    expect(page.get_by_role("heading", name=F["name"]["lamp_or_switch"])).to_be_visible()
    for words in (F["act"]["lamp_or_switch"], ASK["out"]):
        expect(page.get_by_text(words)).to_be_visible()
    [record] = [each for each in log_of(page) if each.get("cause") == "lamp_or_switch"]
    assert (record["kind"], record["outcome"], record["title"]) == ("diagnosis", "stands", F["name"]["lamp_or_switch"])
    assert record["entries"][0]["sign"] == "light_dark" and len(record["entries"]) == looks + 1
    [felt] = [each for each in record["entries"] if each["text"] == F["question"]["shift_felt"]]
    assert felt["answer"] == F["said"]["shift_felt"]["clunk"]
    page.get_by_role("link", name=D["diagnose"]["kept"]).tap()
    expect(page.get_by_text(f"{ASK['out']} {F['act']['lamp_or_switch']}")).to_be_visible()
    page.close()


def test_a_place_has_its_signs(away):
    """Each place of the drawn cab and panel leads to six signs at most, and back; a technician has the figures of a test besides."""
    page = open_fresh(away)
    page.get_by_role("radio", name=D["role"]["operator"]).tap()
    expect(place(page, "tests")).to_have_count(0)
    for name in [name for name in D["at"] if name != "tests"]:
        place(page, name).tap()
        expect(page.get_by_role("heading", name=D["at"][name])).to_be_visible()
        signs = page.locator(".key-told").all_inner_texts()
        assert signs == [F["sees"][sign] for sign, row in SIGN.items() if row.get("at") == name and row.get("role") != "technician"]
        assert 0 < len(signs) <= MOST_AT_A_PLACE
        button(page, ASK["places"]).tap()
    page.get_by_role("radio", name=D["role"]["technician"]).tap()
    expect(place(page, "tests")).to_be_visible()
    page.get_by_role("radio", name=D["role"]["operator"]).tap()
    page.close()


@pytest.mark.parametrize(("typed", "sign"), [("clunk pump", "no_clunk"), ("GRIND road", "grinds_road"), ("gravel", "gravel_noise")])
def test_said_in_words(away, typed, sign):
    """In words, every sign is listed by its sense; what is typed narrows them, whatever its case, and nothing that fits is hidden."""
    page = open_fresh(away)
    button(page, ASK["in_words"]).tap()
    expect(page.locator("h3")).to_have_text(list(D["sense"].values()))
    everything = page.locator(".key-told").count()
    page.get_by_role("searchbox").fill(typed)
    expect(button(page, F["sees"][sign])).to_be_visible()
    shown = page.locator(".key-told").all_inner_texts()
    assert 0 < len(shown) < everything and all(word.lower() in text.lower() for text in shown for word in typed.split())
    page.get_by_role("searchbox").fill("zzz")
    expect(page.get_by_text(ASK["no_match"])).to_be_visible()
    page.close()


LINES = """(keys) => keys.map((key) => { const text = document.createRange(); text.selectNodeContents(key);
  return new Set([...text.getClientRects()].map(({ bottom }) => Math.round(bottom))).size; })"""


def test_nothing_is_squeezed_on_a_narrow_phone(away):
    """The title leaves the place room, the red keys take two lines at most, and "Start again" stands whole beside what is done first."""
    page = open_fresh(away)
    choose(page, "light_dark")
    expect(button(page, ASK["carried_out"])).to_be_in_viewport(ratio=1)
    expect(button(page, ASK["again"])).to_be_in_viewport(ratio=1)
    carried_out(page, SIGN["light_dark"]["order"])
    assert asked(page) == "shift_felt"
    gap = page.locator(".bar").evaluate("""(bar) => { const title = document.createRange(); title.selectNodeContents(bar.querySelector("h1"));
      return bar.querySelector(".place").getBoundingClientRect().left - title.getBoundingClientRect().right; }""")
    assert gap >= 6
    assert max(page.locator("#acts .key-danger").evaluate_all(LINES)) <= 2
    page.close()


def test_a_question_is_asked_once(away):
    """What was heard is one question of nouns, none of them filled; its answer settles each of its signs, and stepping back takes all away."""
    page = open_fresh(away)
    begin(page, "light_dark")
    assert asked(page) == "shift_felt"
    keys = page.locator("#acts .key-noun")
    expect(keys).to_have_text(list(F["said"]["shift_felt"].values()))
    fills = keys.evaluate_all("(keys) => [...new Set(keys.map((key) => getComputedStyle(key).backgroundColor))]")
    assert len(fills) == 1 and fills != [page.locator(".key-danger").first.evaluate("(key) => getComputedStyle(key).backgroundColor")]
    summary = page.locator(".possible summary")
    counted = summary.inner_text()
    expect(page.locator(".possible li")).to_have_count(0)  # named only when asked for: a name above the answers leads a witness
    summary.tap()
    expect(page.locator(".possible li").first).to_be_visible()
    names = page.locator(".possible li").all_inner_texts()
    answer(page, "nothing")
    assert asked(page) not in ("clunk_felt", "no_clunk", "shift_felt")
    assert summary.inner_text() != counted
    button(page, ASK["back"]).tap()
    expect(page.locator(".look h2")).to_have_text(F["question"]["shift_felt"])
    expect(summary).to_have_text(counted, use_inner_text=True)
    assert page.locator(".possible li").all_inner_texts() == names
    page.close()


def test_grinding_in_a_look_is_its_order(away):
    """Whoever answers that it ground gets the order for that before anything else, and no look shifts after it."""
    page = open_fresh(away)
    begin(page, "light_dark")
    assert asked(page) == "shift_felt"
    answer(page, "grinding")
    carried_out(page, "grinding")
    while asked(page):
        assert not SIGN.get(asked(page), {}).get("shifts")
        answer(page, "unknown")
    link = page.get_by_role("link", name=SITE["rig_status_acts"]["write"], exact=True).get_attribute("href")
    defect = json.loads(unquote(link.split("#new=")[1]))  # where no cause is sure, what it began with, with what else was seen
    assert (defect["what"], defect["seen"]) == (F["sees"]["light_dark"], F["sees"]["grinds"])  # and nothing that was not seen
    page.close()


def test_no_answer_is_a_bare_yes(away):
    """Each look is a question; its two to four answers are nouns on keys of one face, and it can be left open."""
    page = open_fresh(away)
    begin(page, "needle_never_zero")
    looks = 0
    while look := asked(page):
        assert page.locator(".look h2").inner_text().endswith("?")
        assert set(page.locator("#acts .key-noun").all_inner_texts()) <= set(keys_of(look).values())
        expect(button(page, ASK["unsure"])).to_be_visible()
        answer(page, "unknown")
        looks += 1
    assert looks > 2 and QUESTIONS
    page.close()


def test_an_end_hands_over_what_was_seen(away):
    """Where nobody may be hurt the end is a hold, not red: each answer as it was given, what the rig may do, and words for the radio."""
    page = open_fresh(away)
    page.get_by_role("radio", name=D["role"]["operator"]).tap()
    begin(page, "tank_overflows")
    given = []
    while look := asked(page):
        given.append(F["question"].get(look) or F["asks"][look][0])
        answer(page, "unknown")
    plate = page.get_by_role("alert")
    expect(plate).to_contain_text(D["end"]["technician_title"])
    expect(plate.get_by_role("listitem")).to_have_count(len(given) + 1)
    for question in given:
        expect(plate.get_by_role("listitem").filter(has_text=question)).to_contain_text(ASK["unsure"])
    for words in ("may", "may_not", "radio"):
        expect(page.get_by_text(D["end"][words], exact=True)).to_be_visible()
    reds = page.locator("#page *").evaluate_all("""(parts) => {
        const probe = document.body.appendChild(Object.assign(document.createElement("i"), { className: "key-danger" }));
        const red = getComputedStyle(probe).backgroundColor;
        probe.remove();
        return parts.filter((part) => getComputedStyle(part).backgroundColor === red).length;
    }""")
    assert reds == 0
    page.close()


def test_every_other_page_says_that_it_runs(away):
    """A diagnosis under way is in the strip of every other page, one tap back to it; one that has ended is not."""
    page = open_fresh(away)
    begin(page, "light_flickers")
    page.locator(".look").wait_for()
    other = away.open("tables/")
    strip = other.locator("#strip a", has_text=ASK["title"])  # the phone may have a card open too
    expect(strip).to_be_visible()
    strip.tap()
    other.locator(".look").wait_for()
    other.close()
    button(page, ORDERS["moved"]["title"]).tap()
    page.get_by_role("alert").wait_for()
    page.close()
    other = away.open("tables/")
    other.wait_for_load_state("networkidle")
    expect(other.locator("#strip a").filter(has_text=ASK["title"])).to_have_count(0)
    other.close()


UNDER_THE_ACTS = """() => {
  const keys = document.querySelector("#acts").getBoundingClientRect();
  return [...document.querySelectorAll("#diagnose :is(.warning, .notice, .say, h2, .passed)")].filter((part) => {
    const { top, bottom } = part.getBoundingClientRect();
    return bottom > keys.top && top < keys.bottom;
  }).map((part) => part.textContent.trim());
}"""


def test_the_answers_cover_no_warning(away):
    """From look to look, as each comes and after a reload, the keys lie over no warning, and the way back is in sight."""
    cautioned = ways_back = 0
    for complaint in ("oil_milky", "power_fades"):
        page = open_fresh(away)
        page.get_by_role("radio", name=D["role"]["technician"]).tap()
        begin(page, complaint)
        for _ in range(4):
            if not asked(page):
                break
            page.reload()
            page.locator(".look").wait_for()
            assert page.evaluate(UNDER_THE_ACTS) == []
            cautioned += page.locator(".look .warning").count()
            if button(page, ASK["back"]).count():
                ways_back += 1
                expect(button(page, ASK["back"])).to_be_in_viewport(ratio=1)
            answer(page, "unknown")
        page.close()
    assert cautioned and ways_back


def test_what_could_not_be_told_is_looked_at_again(away):
    """At the technician's end the looks without an answer stand as keys, apart from what was not looked at; one of them asks again."""
    page = open_fresh(away)
    page.get_by_role("radio", name=D["role"]["operator"]).tap()
    begin(page, "tank_overflows")
    while asked(page):
        answer(page, "unknown")
    expect(page.get_by_role("heading", name=ASK["look_again"])).to_be_visible()
    again = page.locator(".key-told").first
    name = again.inner_text()
    tap(page, name)
    expect(page.locator(".look h2")).to_have_text(name)
    page.close()


@pytest.mark.parametrize(("minutes", "asks"), [(19, False), (21, True)])
def test_a_diagnosis_left_for_long_asks(away, minutes, asks):
    """After more than 20 minutes it says when it was last looked at and asks, a new start first; before, it goes on."""
    page = open_fresh(away)
    begin(page, "light_flickers")
    answer(page, "unknown")
    text = page.locator(".look h2").inner_text()
    age(page, minutes)
    page.reload()
    again = button(page, ASK["left_go_on"])
    if asks:
        expect(page.get_by_role("alert")).to_contain_text(ASK["left_title"].split("{")[0])
        expect(page.locator(".look")).to_have_count(0)
        again.tap()
    expect(page.locator(".look h2")).to_have_text(text)
    expect(again).to_have_count(0)
    page.close()


def test_radio_words_come_before_a_look_that_takes_pressure(away):
    """A look that lowers a line's pressure shows what to say, and takes no answer until the crews have answered."""
    page = open_at(away, ["gravel_noise", "supply_soft", "intake_near_zero", "grew_with_lines"])
    expect(page.locator(".look h2")).to_have_text(F["asks"]["flow_cut_cures"][0])
    expect(page.get_by_text(F["say"]["cutting"])).to_be_visible()
    expect(page.locator("#acts .key-noun")).to_have_count(0)
    button(page, ASK["said"]).tap()
    answer(page, "seen")
    expect(page.get_by_role("heading", name=F["name"]["asked_too_much"])).to_be_visible()
    page.close()
