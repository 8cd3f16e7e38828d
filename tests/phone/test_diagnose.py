"""The pages that find faults, by touch and with no signal: from a card to a cause, and every way of standing still."""
import json

import pytest
from playwright.sync_api import expect

from site_src.content import data, fleet
from tests.phone.card import open_card
from tests.phone.handset import Handset, Host, kill
from tests.phone.test_rig import ENGINE, bring, taken, with_engine
from tests.phone.words import SITE
from tests.unit.diagnosis.dialogue import CAUSES, answers_of

D = data.words("diagnose")
F = data.words("faults")
ASK = D["diagnose"]
ORDERS = data.orders()
ORDER = data.words("orders")["order"]
SIGN = {row["id"]: row for row in data.load("faults")["sign"]}
SIGN_OF = {told: sign for sign, told in F["sees"].items()}
QUICK = """for (const clock of [performance, Date]) {
  const now = clock.now.bind(clock), began = now();
  clock.now = () => began + (now() - began) * 100;
}"""


@pytest.fixture(scope="module")
def away(browser, built):
    """A phone that installed the site and has then lost every way to it."""
    handset = Handset(browser, Host(built), worker=True)
    handset.install().close()
    handset.lose_signal()
    yield handset
    handset.close()


def button(page, name):
    return page.get_by_role("button", name=name, exact=True)


def open_fresh(away):
    """The diagnosis at its first screen."""
    page = away.open("diagnose/")
    first = button(page, F["sees"]["light_flickers"])
    again = button(page, ASK["again"])
    so_far = page.get_by_text(ASK["so_far"])
    first.or_(again).or_(so_far).first.wait_for()
    if not first.is_visible():
        if not again.is_visible():
            so_far.tap()
        again.tap()
    first.wait_for()
    return page


def tap_until(page, touched, what):
    """Touch a button until the page has changed: a look settles before it takes an answer."""
    for _ in range(20):
        touched.tap()
        try:
            return expect(page.locator("#diagnose")).not_to_have_text(what, use_inner_text=True, timeout=250)
        except AssertionError:
            continue
    raise AssertionError("never answered")


def answer(page, said):
    """Give one answer to the look on the screen, by the key that says it."""
    seen, not_seen = F["answers"].get(asked(page), (ASK["yes"], ASK["no"]))
    keys = {"seen": seen, "not_seen": not_seen, "unknown": ASK["unsure"]}
    tap_until(page, button(page, keys[said]), page.locator("#diagnose").inner_text())


def asked(page):
    """The sign that the page asks about, or None at an end."""
    title = page.locator(".step-act")
    return SIGN_OF.get(title.inner_text()) if title.count() else None


def log_of(page):
    """Every record in the phone's log."""
    return page.evaluate("""() => new Promise((resolve) => {
        const opening = indexedDB.open("panelhand");
        opening.onsuccess = () => {
            const asked = opening.result.transaction("log").objectStore("log").getAll();
            asked.onsuccess = () => { opening.result.close(); resolve(asked.result); };
        };
    })""")


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
    truly = answers_of(CAUSES["lamp_or_switch"])
    looks = 0
    while asked(page) or button(page, D["engine_state"]["secured"]).is_visible():
        if not asked(page):
            tap_until(page, button(page, D["engine_state"]["secured"]), page.locator("#diagnose").inner_text())
            continue
        assert asked(page) not in ("air_below", "no_clunk", "engine_above_idle")
        answer(page, truly(asked(page)))
        looks += 1
        if looks == 1 and asked(page):  # killed between two looks, nothing is lost
            before = asked(page)
            kill(page)
            page = away.open("diagnose/")
            expect(page.locator(".step-act")).to_have_text(F["sees"][before])
    expect(page.get_by_role("heading", name=F["name"]["lamp_or_switch"])).to_be_visible()
    for told in (F["act"]["lamp_or_switch"], ASK["out"]):
        expect(page.get_by_text(told)).to_be_visible()
    [record] = [each for each in log_of(page) if each["kind"] == "diagnosis"]
    assert (record["outcome"], record["cause"], record["title"]) == ("stands", "lamp_or_switch", F["name"]["lamp_or_switch"])
    assert record["entries"][0]["sign"] == "light_dark" and len(record["entries"]) == looks + 1
    page.get_by_role("link", name=D["diagnose"]["kept"]).tap()
    expect(page.get_by_text(f"{ASK['out']} {F['act']['lamp_or_switch']}")).to_be_visible()
    page.close()


UNDER_THE_KEYS = """() => {
  const keys = document.querySelector(".answers").getBoundingClientRect();
  return [...document.querySelectorAll(".step .warning, .step .notice, .step .say, .step-act, .step .key:not(.answers .key)")].filter((part) => {
    const { top, bottom } = part.getBoundingClientRect();
    return bottom > keys.top && top < keys.bottom;
  }).map((part) => part.textContent.trim());
}"""


def test_the_answers_cover_no_warning(away):
    """From look to look, as each comes and after a reload, the keys lie over no warning, and where there is none the way back is in sight."""
    cautioned = ways_back = 0
    for complaint in ("light_dark", "engine_hot"):
        page = open_fresh(away)
        page.get_by_role("radio", name=D["role"]["technician"]).tap()
        begin(page, complaint)
        for _ in range(4):
            if not asked(page):
                break
            page.reload()
            page.locator(".answers").wait_for()
            assert page.evaluate(UNDER_THE_KEYS) == []
            cautioned += page.locator(".step .warning").count()
            if button(page, ASK["back"]).count() and not page.locator(".step :is(.warning, .say, .notice)").count():
                ways_back += 1
                expect(button(page, ASK["back"])).to_be_in_viewport(ratio=1)
            answer(page, "unknown")
        page.close()
    assert cautioned and ways_back


def test_what_could_not_be_told_is_looked_at_again(away):
    """At the technician's end the looks without an answer stand as keys, apart from what was not looked at; one of them asks again."""
    page = open_fresh(away)
    page.get_by_role("radio", name=D["role"]["operator"]).tap()
    page.get_by_text(D["moment"][SIGN["tank_overflows"]["entry"]], exact=True).tap()
    begin(page, "tank_overflows")
    while asked(page):
        answer(page, "unknown")
    expect(page.get_by_role("heading", name=ASK["look_again"])).to_be_visible()
    again = page.locator(".key-told").first
    name = again.inner_text()
    tap_until(page, again, page.locator("#diagnose").inner_text())
    assert F["sees"][asked(page)] == name
    page.close()


def begin(page, sign):
    """Open the diagnosis with a sign; where that is a hazard, its order comes first and is carried out."""
    tap_until(page, button(page, F["sees"][sign]), page.locator("#diagnose").inner_text())
    if "order" in SIGN[sign]:
        carried_out(page, SIGN[sign]["order"])


def carried_out(page, name):
    """The order stands whole on the screen, and no look is offered before it is carried out."""
    order = ORDERS[name]
    expect(page.get_by_role("alert").get_by_role("listitem")).to_have_text(order["do"])
    expect(page.get_by_role("alert")).to_contain_text(order["never"])
    expect(page.locator(".step-act")).to_have_count(0)
    tap_until(page, button(page, ASK["carried_out"]), page.locator("#diagnose").inner_text())


def test_what_is_not_there_is_answered_in_words(away):
    """A sign that is an absence has keys that say which is meant, and each is short enough for its key."""
    page = open_fresh(away)
    begin(page, "light_dark")
    for _ in range(8):
        if asked(page) in F["answers"]:
            break
        answer(page, "unknown")
    expect(button(page, F["answers"][asked(page)][0])).to_be_visible()
    expect(button(page, ASK["yes"])).to_have_count(0)
    button(page, ORDERS["moved"]["title"]).tap()  # an end, so that the next one begins anew
    button(page, ASK["again"]).tap()
    page.close()
    assert all(len(set(keys)) == 2 and max(map(len, keys)) <= 22 for keys in F["answers"].values())
    assert set(F["answers"]) <= set(F["sees"])


@pytest.mark.parametrize("name", ["moved", "steam"])
def test_danger_ends_it(away, name):
    """Danger is under the thumb at every look, before the first and while an order is carried out, and ends it with its own order."""
    for way in ("start", "order", "look"):
        page = open_fresh(away)
        if way == "order":
            button(page, F["sees"]["light_dark"]).tap()
            expect(button(page, ASK["carried_out"])).to_be_visible()
        elif way == "look":
            begin(page, "light_flickers")
            page.locator(".step-act").wait_for()
        button(page, ORDERS[name]["title"]).tap()
        [alert] = page.get_by_role("alert").all()
        expect(alert.get_by_role("listitem")).to_have_text(ORDERS[name]["do"])
        for words in (ORDER["danger"], ORDERS[name]["never"], ORDERS[name]["rig"], ORDERS[name]["radio"]):
            expect(alert).to_contain_text(words)
        for said in (ASK["yes"], ASK["no"], ASK["unsure"], ASK["carried_out"]):
            expect(button(page, said)).to_have_count(0)
        page.close()


def alert_of(page):
    return page.get_by_role("alert").first


def test_dead_throttle_is_a_way_in(away):
    """A dead throttle stands among what is seen at the panel and is a hold, not a danger; made safe, it opens with an idling engine."""
    page = open_fresh(away)
    page.get_by_text(D["moment"]["panel"], exact=True).tap()
    button(page, F["sees"]["throttle_dead"]).tap()
    alert = page.get_by_role("alert")
    expect(alert.get_by_role("listitem")).to_have_text(ORDERS["dead_throttle"]["do"])
    expect(alert).to_contain_text(ORDER["hold"])
    expect(alert).not_to_contain_text(ORDER["danger"])
    button(page, ASK["again"]).tap()
    page.get_by_text(D["moment"]["panel"], exact=True).tap()
    button(page, F["sees"]["throttle_made_safe"]).tap()
    expect(page.get_by_text(f"{ASK['engine']}: {D['engine_state']['idle']}")).to_be_visible()
    page.close()
    page = open_fresh(away)
    page.get_by_text(D["moment"]["panel"], exact=True).tap()
    button(page, F["sees"]["throttle_dead"]).tap()  # the whole shift once more was told: a second time it is out of service
    expect(alert_of(page).get_by_role("listitem")).to_have_text(ORDERS["dead_throttle"]["safe"])
    expect(alert_of(page)).to_contain_text(ORDERS["dead_throttle"]["rig_final"])
    page.close()


ROAD = ["no_clunk_road", "grinds_road", "lights_stay", "road_no_drive", "needle_never_zero"]


@pytest.mark.parametrize("sign", ROAD)
def test_road_side_is_answered_as_such(away, sign):
    """Each failed shift to road opens from "Back to road", has its order first, and ends with what the rig is: no word of PUMP."""
    page = open_fresh(away)
    page.get_by_text(D["moment"]["out"], exact=True).tap()
    back = page.locator("details").filter(has=page.get_by_text(D["moment"]["out"], exact=True))
    begun = back.get_by_role("button", name=F["sees"][sign], exact=True)
    tap_until(page, begun, page.locator("#diagnose").inner_text())
    carried_out(page, SIGN[sign]["order"])
    while asked(page):
        assert "PUMP" not in F["look"].get(asked(page), "")
        answer(page, "unknown")
    expect(page.locator("#diagnose")).to_contain_text(ORDERS[SIGN[sign]["order"]]["rig"])
    page.close()


def age(page, minutes):
    """Put the diagnosis that was left so many minutes back, as the phone keeps it."""
    page.evaluate("""(minutes) => new Promise((resolve) => {
        const opening = indexedDB.open("panelhand");
        opening.onsuccess = () => {
            const store = opening.result.transaction("drafts", "readwrite").objectStore("drafts");
            const asked = store.get("diagnosis");
            asked.onsuccess = () => {
                const text = JSON.stringify(asked.result).replace(/"\\d{4}-\\d\\d-[^"]*Z"/g, (at) => JSON.stringify(new Date(Date.parse(JSON.parse(at)) - minutes * 60000).toISOString()));
                store.put(JSON.parse(text), "diagnosis");
                store.transaction.oncomplete = () => { opening.result.close(); resolve(); };
            };
        };
    })""", minutes)


def test_a_finished_diagnosis_is_not_reopened(away):
    """Once it has ended, coming back shows the first screen; the log holds the end."""
    page = open_fresh(away)
    begin(page, "light_flickers")
    button(page, ORDERS["moved"]["title"]).tap()
    page.get_by_role("link", name=ASK["kept"]).wait_for()
    page.reload()
    expect(page.get_by_role("heading", name=ASK["what"])).to_be_visible()
    expect(page.get_by_role("alert")).to_have_count(0)
    page.close()


@pytest.mark.parametrize(("minutes", "asks"), [(19, False), (21, True)])
def test_a_diagnosis_left_for_long_asks(away, minutes, asks):
    """After more than 20 minutes it says when it was last looked at and asks, a new start first; before, it goes on."""
    page = open_fresh(away)
    begin(page, "light_flickers")
    answer(page, "unknown")
    sign = asked(page)
    age(page, minutes)
    page.reload()
    again = button(page, ASK["left_go_on"])
    if asks:
        expect(page.get_by_role("alert")).to_contain_text(ASK["left_title"].split("{")[0])
        expect(page.locator(".step-act")).not_to_have_text(F["sees"][sign])
        again.tap()
    expect(page.locator(".step-act")).to_have_text(F["sees"][sign])
    expect(again).to_have_count(0)
    page.close()


def test_radio_words_come_before_a_look_that_takes_pressure(away):
    """A look that lowers a line's pressure shows what to say, and takes no yes or no until the crews have answered."""
    page = away.context.new_page()
    known = {"signs": {"gravel_noise": "seen", "supply_soft": "seen", "grew_with_lines": "seen"}}
    page.goto(away.host.origin + "diagnose/#from=" + json.dumps(known))
    expect(page.locator(".step-act")).to_have_text(F["sees"]["flow_cut_cures"])
    expect(page.get_by_text(F["say"]["cutting"])).to_be_visible()
    expect(button(page, ASK["yes"])).to_have_count(0)
    button(page, ASK["said"]).tap()
    answer(page, "seen")
    expect(page.get_by_role("heading", name=F["name"]["asked_too_much"])).to_be_visible()
    page.close()


def test_what_is_handed_over_is_judged(away):
    """A link that holds no sign of ours, or nothing readable, leads to the first screen and says so."""
    for handed in ('{"signs": {"odd": "seen"}}', "%7B", "[1]", '{"facts": 3}'):
        page = away.context.new_page()
        page.goto(away.host.origin + "diagnose/#from=" + handed)
        expect(page.get_by_text(ASK["bad_link"])).to_be_visible()
        expect(button(page, F["sees"]["light_dark"])).to_be_visible()
        page.close()


def test_a_sign_that_the_rig_cannot_show_is_not_taken(take):
    """What a link says of a shift is not asked of a front-mounted pump: the page says that the profile rules it out."""
    handset = take()
    with_engine(handset, drive="front").close()
    page = handset.context.new_page()
    page.goto(handset.host.origin + 'diagnose/#from={"signs": {"grinds": "seen"}}')
    expect(page.get_by_text(ASK["not_of_rig"].format(**ENGINE))).to_be_visible()
    for sign in ("light_dark", "no_clunk", "pto_dark"):
        expect(button(page, F["sees"][sign])).to_have_count(0)
    expect(page.get_by_role("link", name=D["diagnose"]["collar"])).to_have_count(0)
    expect(button(page, F["sees"]["stalls"])).to_be_visible()


def test_one_contradiction_is_shouted(away):
    """Lights that say pump and a speedometer that says road: the page shouts, and the doubt stands beside it."""
    page = away.open("diagnose/collar/")
    for answer_name in (D["proof_answer"]["light"]["on"], D["proof_answer"]["clunk"]["one"]):
        page.get_by_role("radio", name=answer_name, exact=True).tap()
    expect(page.get_by_role("alert")).to_have_count(0)
    expect(page.get_by_text(D["collar"]["never"], exact=True)).to_be_visible()
    page.get_by_role("radio", name=D["proof_answer"]["speedometer"]["zero"], exact=True).tap()
    for words in (D["collar"]["shout"], ORDERS["pump_fails"]["short"]):
        expect(page.get_by_role("alert")).to_contain_text(words)
    expect(page.get_by_text(D["collar"]["never"], exact=True)).to_be_visible()
    page.reload()
    expect(page.get_by_role("alert")).to_contain_text(D["collar"]["shout"])
    page.get_by_role("link", name=D["collar"]["find"]).tap()
    carried_out(page, "pump_fails")
    page.get_by_text(ASK["so_far"]).tap()
    for sign in ("proof_disagrees", "speed_zero"):
        expect(page.locator(".record").get_by_text(F["sees"][sign])).to_be_visible()
    page.close()


@pytest.mark.parametrize(("proof", "seen", "name"), [("ground", "moves", "moved"), ("ground", "leans", "moved"), ("throttle", "dead", "dead_throttle")])
def test_an_alarm_at_the_collar_is_its_order(away, proof, seen, name):
    """A rig that moved and a dead throttle are two hazards, each with its own order."""
    page = away.open("diagnose/collar/")
    button(page, D["collar"]["clear"]).tap()
    page.get_by_role("radio", name=D["proof_answer"][proof][seen], exact=True).tap()
    expect(page.get_by_role("alert").get_by_role("listitem")).to_have_text(ORDERS[name]["do"])
    button(page, D["collar"]["clear"]).tap()
    page.close()


def test_what_a_dark_light_misses(away):
    """Engaged lit and OK dark leave gear and brake; OK lit with engaged dark is no state at all."""
    page = away.open("diagnose/lights/")
    group = {lamp: page.get_by_role("group", name=D["lamp"][lamp]) for lamp in ("engaged", "ok")}

    def put(lamp, state):
        group[lamp].get_by_role("radio", name=D["lamp_state"][state]).tap()

    put("engaged", "lit")
    put("ok", "dark")
    names = ", ".join(D["input"][name] for name in ("pump_gear", "brake"))
    expect(page.get_by_text(D["lights"]["dark_perhaps"].format(light=D["lamp"]["ok"], inputs=names))).to_be_visible()
    put("engaged", "dark")
    put("ok", "lit")
    expect(page.get_by_role("alert")).to_contain_text(D["lights"]["impossible"])
    page.close()


def test_loss_of_water_in_one_look(away):
    """The order for a line that lost its water stands first; three gauges say supply, and the diagnosis goes on without it again."""
    page = away.open("diagnose/water/")
    expect(page.locator(".order").get_by_role("listitem")).to_have_text(ORDERS["line_lost"]["do"])
    for gauge, seen in (("intake", "zero"), ("master", "low"), ("line", "with")):
        page.get_by_role("radio", name=D["gauge_answer"][gauge][seen], exact=True).tap()
    expect(page.get_by_role("heading", name=D["side"]["supply"]["name"])).to_be_visible()
    expect(page.get_by_text(D["side"]["supply"]["say"])).to_be_visible()
    page.get_by_role("link", name=D["water"]["go_on"]).tap()
    page.locator(".step-act").wait_for()
    page.get_by_text(ASK["so_far"]).tap()
    expect(page.get_by_text(F["sees"]["water_lost"])).to_be_visible()
    page.close()


def minute(page, start, end):
    """One timed minute of the leak hunt, with its two readings."""
    page.get_by_label(D["leak"]["from"]).fill(start)
    button(page, D["leak"]["start"]).tap()
    page.get_by_label(D["leak"]["to"]).fill(end)
    button(page, D["leak"]["enter"]).tap()


def test_leak_hunt_ends_unplugged(take):
    """What was plugged stays listed through a reload and a new start; the hunt ends only ticked off, reliefs first, and timed once more."""
    handset = take()
    handset.context.add_init_script(QUICK)
    page = handset.open("diagnose/leak/")
    page.get_by_role("radio", name=D["role"]["technician"]).tap()
    minute(page, "22", "12")
    minute(page, "22", "12")  # not the suction side: the technician's parts are left
    minute(page, "22", "21")
    rows = page.locator(".plugs li")
    open_rows = rows.filter(has_text=D["leak"]["tagged"])
    expect(open_rows.first).to_be_visible()
    count = open_rows.count()
    assert count >= 4
    button(page, D["leak"]["again"]).tap()
    page.reload()
    expect(open_rows).to_have_count(count)
    finish = button(page, D["leak"]["finish"])
    expect(finish).to_have_count(0)
    button(page, D["leak"]["stop"]).tap()
    expect(page.get_by_role("alert")).to_contain_text(ORDERS["plugged"]["never"])
    relief = page.get_by_role("button", name=D["plug"]["intake_relief"])
    caps = page.get_by_role("button", name=D["plug"]["discharge_caps"])
    expect(relief).to_be_enabled()
    expect(caps).to_be_disabled()
    for left in range(count, 0, -1):
        expect(finish).to_have_count(0)
        expect(page.get_by_label(D["leak"]["from"])).to_have_count(0)
        expect(open_rows).to_have_count(left)
        page.locator(".plugs button:enabled").first.tap()
    minute(page, "22", "21.5")
    finish.tap()
    expect(rows).to_have_count(0)
    expect(page.get_by_role("heading", name=D["leak"]["run_first"])).to_be_visible()


def test_leak_hunt_halves(take):
    """One timed minute a change: the half that mattered is kept, and a bad reading is refused at its field."""
    handset = take()
    handset.context.add_init_script(QUICK)
    page = handset.open("diagnose/leak/")
    page.get_by_label(D["leak"]["from"]).fill("60")
    button(page, D["leak"]["start"]).tap()
    inhg = SITE["unit"]["US"]["vacuum"]
    expect(page.get_by_text(D["leak"]["out_of_range"].format(most="30", u_vacuum=inhg))).to_be_visible()
    minute(page, "22", "23")
    expect(page.get_by_text(D["leak"]["rose"])).to_be_visible()
    page.get_by_label(D["leak"]["to"]).fill("12")
    button(page, D["leak"]["enter"]).tap()
    minute(page, "22", "21")  # a tenth of the first loss: what was shut off held the leak
    expect(page.get_by_text(D["leak"]["mattered"])).to_be_visible()
    expect(page.get_by_text(D["part"]["gland"])).to_have_count(0)


def test_recovery_card_holds_the_rig_and_no_guess(handset):
    """The card shows what the profile holds, and a blank to fill in for what it does not."""
    page = handset.open("rig/")
    rig = {**fleet.load()["tollgate-engine-1"], "override_place": "Left running board", "stop_controls": "Red knob, panel top"}
    bring(page, json.dumps(rig).encode())
    taken(page, rig["name"])
    page.close()
    page = handset.open("rig/recovery/")
    card = page.locator(".recovery")
    for told in (rig["name"], "Left running board", "Red knob, panel top", data.step_words()["gear"]["see"]):
        expect(card).to_contain_text(told)
    # not in the profile: usual speed, way, tool; and the two lines of the rig's own order when a gear is refused
    expect(card.get_by_text(D["recovery"]["blank"], exact=True)).to_have_count(5)
