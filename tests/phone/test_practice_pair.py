"""Two phones and one fault, with no signal: one hides it, the other finds it, and both read the same page at the end."""
import re

import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests.phone.handset import Handset, Host
from tests.phone.test_why import LOG, Rig
from tests.phone.words import PRACTICE

WORDS = data.words("practice")
PAIR = WORDS["debrief"]


@pytest.fixture(scope="module")
def phones(browser, built):
    """Two phones that installed one site and then lost every way to it."""
    host = Host(built)
    pair = [Handset(browser, host, worker=True) for _ in range(2)]
    for handset in pair:
        handset.context.grant_permissions(["clipboard-read", "clipboard-write"])
        handset.install().close()
    for handset in pair:
        handset.lose_signal()
    yield pair
    for handset in pair:
        handset.close()


def link_of(page):
    """The link that the page's key copies; the square code is of the same."""
    expect(page.get_by_role("img", name=PAIR["code_name"])).to_be_visible()
    page.evaluate("navigator.share = undefined")
    page.get_by_role("button", name=PAIR["send"], exact=True).tap()
    expect(page.get_by_text(PAIR["copied"])).to_be_visible()
    return page.evaluate("navigator.clipboard.readText()")


def hide(handset, fault):
    """The page of the phone that hides a fault, or none, and its link."""
    rig = Rig(handset, "practice/")
    if fault:
        rig.page.get_by_role("combobox").select_option(fault)
    rig.choose(PAIR["who"], PAIR["who_other"])
    rig.page.get_by_role("button", name=PAIR["hide"], exact=True).tap()
    return rig.page, link_of(rig.page)


def read(page):
    return page.get_by_role("region", name=PAIR["result"]).inner_text()


def test_hidden_found_and_read_on_both(phones):
    """Nothing tells the fault before the end; then both phones show the same acts, times and stop, the time away with them."""
    planter, finder = phones
    hider, link = hide(planter, "collar_stuck")
    tells = re.compile("|".join(map(re.escape, (PRACTICE["fault_collar_stuck"], "collar_stuck"))))
    assert not tells.search(hider.get_by_role("main").inner_text()) and not tells.search(link)
    hider.get_by_role("button", name=PAIR["other"], exact=True).tap()
    expect(hider.get_by_role("radio", name=PRACTICE["fault_none"], exact=True)).to_be_checked()

    rig = Rig(finder, link[len(finder.host.origin):])
    expect(rig.page.get_by_role("heading", name=PAIR["taken"])).to_be_visible()
    assert not tells.search(rig.page.get_by_role("main").inner_text())
    rig.page.get_by_role("button", name=PAIR["find"], exact=True).tap()
    expect(rig.page.locator(".bench-seen")).to_be_visible()
    rig.wait(1)
    rig.select("centre")
    rig.page.clock.fast_forward(90_000)  # the phone slept: one late look, and a minute and a half on the clock
    rig.wait(2)
    rig.select("pump")
    rig.wait(2)
    rig.press("stop")
    rig.name("clunk")
    expect(rig.page.get_by_role("heading", name=PAIR["call"])).to_be_visible()
    assert WORDS["practice"]["told_collar_stuck"] not in rig.page.get_by_role("main").inner_text()
    rig.page.get_by_role("button", name=PRACTICE["fault_collar_stuck"], exact=True).tap()
    expect(rig.page.get_by_role("heading", name=PRACTICE["outcome_found"])).to_be_visible()
    said = rig.page.get_by_role("main").inner_text()
    for sentence in (PAIR["planted"].format(fault=PRACTICE["fault_collar_stuck"]), PAIR["named_right"].format(named=PRACTICE["fault_collar_stuck"]),
                     PAIR["away"].split("{")[0].strip(), WORDS["sign"]["no_clunk_pump"], PAIR["stop_here"]):
        assert sentence in said
    expect(rig.page.get_by_text(PRACTICE["kept"])).to_be_visible()
    assert rig.page.evaluate(LOG)[-1]["took_s"] >= 94  # by the test's clock: 1 + 90 + 2 + 2 s at least
    times = [float(time) for time in re.findall(r"(\d+\.\d) s", read(rig.page))]
    assert times[0] < 90 < times[1]

    shown = read(rig.page)
    rig.page.get_by_role("button", name=PAIR["back"], exact=True).tap()
    opened = planter.open(link_of(rig.page)[len(planter.host.origin):])
    expect(opened.get_by_role("heading", name=PRACTICE["outcome_found"])).to_be_visible()
    assert read(opened) == shown
    expect(opened.get_by_role("button", name=PAIR["back"])).to_have_count(0)
    for page in (hider, rig.page, opened):
        page.close()


def test_a_wrong_proof_makes_a_stop_luck_on_both(phones):
    """The fault is named right and the proof wrong: luck, with what contradicted, on the phone that found and on the one that hid."""
    planter, finder = phones
    hider, link = hide(planter, "collar_stuck")
    rig = Rig(finder, link[len(finder.host.origin):])
    rig.page.get_by_role("button", name=PAIR["find"], exact=True).tap()
    expect(rig.page.locator(".bench-seen")).to_be_visible()
    rig.select("centre")
    rig.wait(2)
    rig.select("pump")
    rig.wait(2)
    rig.press("stop")
    rig.name("gauge")
    rig.page.get_by_role("button", name=PRACTICE["fault_collar_stuck"], exact=True).tap()
    proof = WORDS["proof"]
    told = proof["wrong"].format(proof=proof["gauge"], proofs=f"{proof['clunk']}, {proof['engaged']}")
    rig.page.get_by_role("button", name=PAIR["back"], exact=True).tap()
    opened = planter.open(link_of(rig.page)[len(planter.host.origin):])
    rig.page.get_by_role("button", name=PAIR["back_read"], exact=True).tap()
    for page in (rig.page, opened):
        expect(page.get_by_role("heading", name=PRACTICE["outcome_luck"])).to_be_visible()
        expect(page.get_by_text(told)).to_be_visible()
    for page in (hider, rig.page, opened):
        page.close()


def test_a_surprise_may_be_nothing_and_a_stop_then_counts(phones):
    """By lot nothing is wrong: a stop is asked for its name and counts as wrong, with the sign that would have come next; to finish is right."""
    rig = Rig(phones[0], "practice/")
    rig.page.evaluate("Math.random = () => 0")
    rig.choose(PRACTICE["fault"], PRACTICE["fault_any"])
    rig.press("start")
    rig.select("centre")
    rig.wait(2)
    rig.press("stop")
    rig.name("unsure")
    rig.page.get_by_role("button", name=PAIR["sound"], exact=True).tap()
    expect(rig.page.get_by_role("heading", name=PRACTICE["outcome_unneeded"])).to_be_visible()
    said = rig.page.get_by_role("main").inner_text()
    for sentence in (PRACTICE["not_planted"], PAIR["named_right"].format(named=PAIR["sound"]), PAIR["needless"].split("{")[0].strip(),
                     WORDS["sign"]["lamp_engaged"], PAIR["stopped_here"]):
        assert sentence in said
    expect(rig.page.get_by_text(PRACTICE["kept"])).to_be_visible()
    assert rig.page.evaluate(LOG)[-1]["outcome"] == PRACTICE["outcome_unneeded"]
    expect(rig.page.get_by_role("button", name=PAIR["back"])).to_have_count(0)
    rig.page.close()


def test_an_edited_link_opens_nothing(phones):
    """A letter changed, a link cut short, or one of nonsense is refused in words, and practice stands as ever."""
    planter, finder = phones
    hider, link = hide(planter, "no_air")
    hider.close()
    address, code = link[len(finder.host.origin):].split("=")
    for edited in (code[:-1], code[:4] + ("A" if code[4] != "A" else "B") + code[5:], "%3Cb%3E", ""):
        page = finder.open(f"{address}={edited}")
        expect(page.get_by_role("alert")).to_have_text(PAIR["refused_broken"])
        expect(page.get_by_role("button", name=PRACTICE["start"], exact=True)).to_be_visible()
        page.close()


def operate(rig, reader, acts):
    """Each act on the phone that operates and, as it is called, on the one that reads its gauges out."""
    for act in acts:
        for phone in (rig, reader):
            act(phone)
        for phone in (rig, reader):
            phone.wait(3)


def follow(rig, link):
    """Open a link in the page that stands, as a camera does where the site is open."""
    rig.page.evaluate("link => { location.hash = new URL(link).hash; }", link)


def pair_run(planter, operator, fault, acts, engaged, proof):
    """One hides a fault and reads its gauges out, the other operates and sees none: the same page at the end, the secret in no text before it."""
    tells = re.compile("|".join(map(re.escape, (PRACTICE[f"fault_{fault}"], PRACTICE[f"told_{fault}"], fault))))
    tell = lambda: [phone for phone in (planter, operator) if tells.search(phone.page.get_by_role("main").inner_text())]
    planter.page.get_by_role("combobox").select_option(fault)
    planter.choose(PAIR["who"], PAIR["who_other"])
    planter.page.get_by_role("button", name=PAIR["hide"], exact=True).tap()
    link = link_of(planter.page)
    planter.page.get_by_role("button", name=PAIR["read_out"], exact=True).tap()
    expect(planter.page.locator(".bench-seen")).to_be_visible()

    follow(operator, link)
    operator.choose(PRACTICE["see"], PAIR["see_called"])
    assert not tell()
    operator.page.get_by_role("button", name=PAIR["find"], exact=True).tap()
    expect(operator.page.get_by_text(PAIR["see_called_told"])).to_be_visible()
    assert operator.page.locator(".bench-seen, svg.drawing").count() == 0 and not tell()
    expect(planter.page.get_by_role("button", name=PRACTICE["stop"], exact=True)).to_have_count(0)  # who reads out ends nothing
    operate(operator, planter, acts)
    expect(planter.page.locator(f'.bench-seen .lamp[data-state="{engaged}"]').filter(has_text=data.words("why")["power"]["lamp_engaged"])).to_be_visible()
    assert not tell()

    operator.press("stop")
    operator.name(proof)
    assert WORDS["practice"][f"told_{fault}"] not in operator.page.get_by_role("main").inner_text()
    operator.page.get_by_role("button", name=PRACTICE[f"fault_{fault}"], exact=True).tap()
    expect(operator.page.get_by_role("heading", name=PRACTICE["outcome_found"])).to_be_visible()
    shown = read(operator.page)
    operator.page.get_by_role("button", name=PAIR["back"], exact=True).tap()
    answer = link_of(operator.page)
    planter.page.get_by_role("button", name=PAIR["to_code"], exact=True).tap()
    expect(planter.page.get_by_role("img", name=PAIR["code_name"])).to_be_visible()
    follow(planter, answer)
    expect(planter.page.get_by_role("heading", name=PRACTICE["outcome_found"])).to_be_visible()
    assert read(planter.page) == shown
    for sentence in (PAIR["planted"].format(fault=PRACTICE[f"fault_{fault}"]), PAIR["named_right"].format(named=PRACTICE[f"fault_{fault}"])):
        expect(planter.page.get_by_text(sentence)).to_be_visible()
    for phone in (planter, operator):
        phone.page.get_by_role("button", name=PRACTICE["again"], exact=True).tap()


def test_one_reads_the_gauges_out_and_then_they_change_places(phones):
    """The phone that operates shows no lamp, gauge or sound: they are asked for; then it hides, and the other operates."""
    one, other = (Rig(phone, "practice/") for phone in phones)
    in_pump = [lambda rig: rig.select("centre"), lambda rig: rig.select("pump")]
    pair_run(one, other, "collar_stuck", in_pump, "dark", "clunk")
    raised = [*in_pump, lambda rig: rig.gear("drive"), lambda rig: rig.page.get_by_role("button", name=re.compile("^" + PRACTICE["throttle"])).tap()]  # dead: it stays at idle
    pair_run(other, one, "throttle_dead", raised, "lit", "throttle")
    for rig in (one, other):
        rig.page.close()


@pytest.mark.parametrize("signs", ["seen", "called"])
def test_a_shut_valve_is_told_by_looking_alone(phones, signs):
    """Tank-to-pump planted shut: on neither phone does a word of the opening screen differ from a sound rig's; its key, touched, says how it stands."""
    planter, finder = phones
    openings = {}
    for fault in (None, "tank_shut"):
        hider, link = hide(planter, fault)
        hider.get_by_role("button", name=PAIR["read_out"], exact=True).tap()
        expect(hider.locator(".bench-seen")).to_be_visible()
        rig = Rig(finder, link[len(finder.host.origin):])
        rig.choose(PRACTICE["see"], PAIR["see_called"] if signs == "called" else PRACTICE["see_seen"])
        rig.page.get_by_role("button", name=PAIR["find"], exact=True).tap()
        expect(rig.page.locator(".bench-called" if signs == "called" else ".bench-seen")).to_be_visible()
        openings[fault] = [page.get_by_role("main").inner_text() for page in (hider, rig.page)]
        key = rig.page.get_by_role("button", name=re.compile("^" + PRACTICE["tank"]))
        key.tap()
        expect(key).to_contain_text(PRACTICE["open" if fault is None else "shut"])
        hider.close()
        rig.page.close()
    assert openings[None] == openings["tank_shut"]
