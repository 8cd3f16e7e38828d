"""One hazard, one order: the orders are whole, in every language."""
import html
import re

import pytest

from site_src.content import data
from tests.site.hazards import answered
from tests.site.test_languages import TOPICS, sentences

ROWS = data.load("orders")["order"]
GRADES = {"danger", "hold", "note"}
# What the trade settled: each hazard, how grave it is, and how often the shift may be tried after it (common practice).
SETTLED = {
    "moved": ("danger", 0), "steam": ("danger", None), "line_lost": ("danger", None), "dead_throttle": ("hold", 1), "grinding": ("hold", 1),
    "pump_fails": ("hold", 1), "road_fails": ("hold", 1), "fed_shaft": ("hold", None), "override": ("hold", None), "plugged": ("hold", None),
    "hot_no_steam": ("hold", None), "lower_line": ("note", None), "trapped": ("note", None),
}


def test_each_hazard_once():
    """Every hazard has one row, with the grade and the tries that were settled for it."""
    assert [row["id"] for row in ROWS] == list(SETTLED)
    assert {row["id"]: (row["grade"], row.get("again")) for row in ROWS} == SETTLED


@pytest.mark.parametrize("language", data.languages())
def test_orders_are_whole(language):
    """An order says when it holds, what to do in which order, what never, and in one line what it is; no other has its words."""
    words = data.load(f"words/{language}/orders")
    assert set(words) - {"order"} == set(SETTLED)
    assert set(words["order"]) >= GRADES
    for name in SETTLED:
        assert set(words[name]) >= {"title", "when", "do", "never", "short"}, name
        assert len(words[name]["do"]) + ("retry" in words[name]) >= 3, name
        assert ("rig" in words[name]) or name == "lower_line", name


def test_a_line_is_lowered_by_its_order_and_nobody_is_under_the_rig():
    """Steps that bring a line down name the order for it; the bay card too turns the retarder off (common practice)."""
    for name in ("stage_low", "relief_set"):
        assert "lower_line" in data.steps()[name]["warns"], name
    assert "retarder" in [step["id"] for step in data.card_steps("bay")]
    words = data.load("words/en/steps/override")["over_people"]
    assert "but the one" not in words["see"] and words["see"].startswith("Nobody under the rig"), "the override's own order"
    assert "straight to the cab" not in data.load("words/en/steps/road")["tank_leave"]["act"], "bleeders come after it"


# A sentence that offers another try (common practice: after the second failure there is none).
OFFERS = r"once more|first step|one try|yet\b|une fois encore|Refaire|première étape|un essai|pas encore"


@pytest.mark.parametrize("language", data.languages())
def test_out_of_service_offers_no_other_try(language):
    """What may be tried once more says so while a try is left, and nothing of it afterwards, for any drive."""
    token = data.LANGUAGE.set(language)
    try:
        orders = data.orders()
    finally:
        data.LANGUAGE.reset(token)
    for name in (row["id"] for row in ROWS if row.get("again")):
        for drive in (None, *NO_SELECTOR):
            order = data.order_for(orders[name], drive)
            first, final = " ".join([*order["do"], order["rig"]]), " ".join([*order["safe"], order["rig_final"], order["radio_final"]])
            assert re.search(OFFERS, first) and re.search(r"One try left|un essai", order["radio"]), (name, drive)
            assert not re.search(OFFERS, final, re.IGNORECASE), (name, drive, final)
            assert re.search("[Oo]ut of service|[Hh]ors service", order["rig_final"]), name
    assert not re.search(r"water|eau\b", orders["grinding"]["radio"]), "it may grind on its way to road"


NO_SELECTOR = {"pto": r"\bPTO\b|prise de force", "rear_pto": r"\bPTO\b|prise de force", "front": r"front pump|pompe avant"}


@pytest.mark.parametrize("drive", NO_SELECTOR)
@pytest.mark.parametrize("language", data.languages())
def test_a_drive_without_a_selector_is_told_of_none(language, drive):
    """What may stop a card of a PTO or a front pump names that drive's control, and no selector, in every language."""
    token = data.LANGUAGE.set(language)
    try:
        orders = data.orders()
    finally:
        data.LANGUAGE.reset(token)
    for name in ("grinding", "pump_fails", "road_fails"):
        order = data.order_for(orders[name], drive)
        for told in (" ".join([order["when"], *order["do"], order["never"]]), order["short"]):
            assert re.search(NO_SELECTOR[drive], told), told
            assert not re.search("CENT(ER|RE)|[Ss]elector|[Ss]électeur|shift control|POMPE|ROAD|ROUTE", told), told
        assert data.order_for(orders[name], None)["do"] != order["do"]


# Where a page says what a sign is, and not what to do about it.
TELLS = {"see", "why", "title", "ask", "sees", "name"}
# A sentence that a pattern catches and that answers no hazard, with the reason.
SAFE = {
    ("help/shift", "zero_speed.answer"): "says why the needle is waited for",
    ("help/diagnose", "tell_whom.answer"): "says when; its question names lower_line",
    ("steps/road", "chocks_in.not_seen"): "a jammed chock, of a rig that stands",
    ("steps/other_drives", "roll_unchock.not_seen"): "a jammed chock, of a rig that stands",
    ("steps/road", "open_path.act"): "the act of its step: a way for the water first",
    ("steps/override", "over_last.act"): "the act of its step; the card of the override itself",
    ("service/fields", "check.road_released"): "a state of the lamps to set up",
}


def told():
    """Every sentence of every page that could tell what to do, by its place."""
    for topic in TOPICS:
        if topic in ("orders", "evidence", "find"):  # what is typed to find a page is no sentence
            continue
        for place, text in sentences(data.load(f"words/en/{topic}")):
            if isinstance(text, str) and not TELLS & set(map(str, place)):
                yield topic, ".".join(map(str, place)), text


def test_no_hazard_is_answered_in_a_pages_own_words():
    """On no page, card, look, question or print does a sentence answer a hazard that has an order."""
    own = {(topic, place): (answered(text), text) for topic, place, text in told() if answered(text)}
    assert {place: found for place, found in own.items() if place not in SAFE} == {}
    assert set(SAFE) <= set(own)


@pytest.mark.parametrize(("text", "name"), [
    # what the pages said before there were orders, by the trade review (A1, A2, A3, 5.4, 5.5) and ORDERS.md
    ("Throttle to idle. Clear people away from the rig. It moved: foot on the brake, NEUTRAL, parking brake, chocks.", "moved"),
    ("Movement, strain or a dead throttle: idle, clear people, prove the shift. Never a second try.", "moved"),
    ("Movement, strain or a dead throttle: idle, clear people, prove the shift. Never a second try.", "dead_throttle"),
    ("If it creeps, chock it.", "moved"),
    ("If it steams, open nothing: stand clear of caps and suction couplings, engine to idle.", "steam"),
    ("It moves, strains, steams, or the throttle is dead: idle, clear people, then look.", "steam"),
    ("If it steams: out of pump, engine off, everyone clear.", "steam"),
    ("Grinding: selector straight back to where it came from, neutral, wait for silence.", "grinding"),
    ("Grinding: switch back to the centre or to PUMP, stay in neutral, wait for silence.", "grinding"),
    ("Wait longer at idle. If it never reaches zero, stay in neutral and call a technician.", "fed_shaft"),
    ("Do not push the selector through a needle that still moves.", "fed_shaft"),
    ("Stay in neutral and repeat the shift to road once. Still on: do not drive, technician.", "road_fails"),
    ("The shift to road fails: select PUMP, then ROAD.", "road_fails"),
    ("Do not select a gear, and do not use the manual override with the engine running.", "override"),
    ("Do not loosen a cap to let the pressure out.", "trapped"),
    ("Do not bring the pressure down on silence.", "lower_line"),
    ("Refused again: neutral, wait for zero, whole shift once more.", "pump_fails"),
    ("Do not try a third time.", "again"),
])
def test_an_old_answer_is_found(text, name):
    """Each contradiction that the pages held is caught where it is put back."""
    assert name in answered(text)


def test_every_order_is_named_by_a_page():
    """No order lies unused, and no page names one that there is none of."""
    faults, water, collar = data.load("faults"), data.load("diagnose/water_loss"), data.load("diagnose/collar")
    named = {row["order"] for row in faults["sign"] + faults["cause"] if "order" in row}
    named |= {row["radio"] for row in faults["sign"] + faults["cause"] if "radio" in row} - set(data.words("faults")["say"])
    named |= {water["lost"]["order"], water["plugs"]["order"]} | {name for side in water["side"] for name in side["warns"]}
    named |= {answer["order"] for proof in collar["proof"] for answer in proof["answers"] if "order" in answer}
    named |= {step["order"] for step in data.steps().values() if "order" in step}
    named |= {name for step in data.steps().values() for name in step.get("warns", [])}
    for path in sorted((data.FOLDER / "help").glob("*.toml")):
        named |= {name for row in data.load(f"help/{path.stem}")["question"] for name in row.get("orders", [])}
    assert named == set(SETTLED)


@pytest.mark.parametrize("folder", ["", "fr/"])
def test_cautions_say_each_grade_once(built, folder):
    """Of what is folded there only the hazard is named; its grade stands once, over its hazards."""
    text = (built / folder / "cautions/index.html").read_text(encoding="utf-8")
    words = data.load(f"words/{'fr' if folder else 'en'}/orders")
    tops = [re.sub("<[^>]*>", "", top).strip() for top in re.findall(r"<h2[^>]*>(.*?)</h2>", text, re.DOTALL)]
    assert [top for top in tops if top in [words["order"][grade] for grade in GRADES]] == [words["order"][grade] for grade in ("danger", "hold", "note")]
    folded = [html.unescape(re.sub("<[^>]*>", "", fold)).strip() for fold in re.findall(r"<summary>(.*?)</summary>", text, re.DOTALL)]
    assert folded[:len(SETTLED)] == [words[name]["title"] for grade in ("danger", "hold", "note") for name in SETTLED if SETTLED[name][0] == grade]
