"""The recovery card: each drive its own order, and no order where the profile does not settle one."""
import json
import re

import pytest
from playwright.sync_api import expect

from site_src.content import data, fleet
from tests.phone.card import beside
from tests.phone.test_rig import bring, taken
from tests.phone.words import STEPS

D = data.words("diagnose")["recovery"]
ORDERS = data.orders()
SPLIT = {"drive": "midship", "shift_control": "air", "transmission": "automatic"}


def opened(handset, **answers):
    beside(handset, **answers)
    card = handset.open("rig/recovery/").locator(".recovery")
    expect(card).to_be_visible()
    return card


@pytest.mark.parametrize(("rig", "acts", "others"), [
    (SPLIT, {"centre", "pump", "gear"}, {"pump_electric", "pump_lever", "pto_on", "gear_manual"}),
    ({**SPLIT, "shift_control": "electric"}, {"volts", "pump_electric", "gear"}, {"centre", "pump", "pump_lever"}),
    ({**SPLIT, "shift_control": "manual", "transmission": "manual"}, {"zero_manual", "pump_lever", "gear_manual"}, {"centre", "zero", "gear"}),
    ({**SPLIT, "drive": "rear_shaft"}, {"centre", "pump", "gear"}, {"pump_lever", "pto_on"}),
    ({"drive": "pto", "transmission": "automatic"}, {"pto_on", "pto_ok"}, {"pump", "speedometer", "pto_on_manual", "front_in"}),
    ({"drive": "pto", "transmission": "manual"}, {"pto_on_manual"}, {"pto_on", "gear_manual"}),
    ({"drive": "front", "transmission": "automatic"}, {"front_in", "front_place"}, {"pto_on", "ok_light", "throttle_ready"}),
], ids=lambda part: "-".join(part.values()) if isinstance(part, dict) else "")
def test_each_drive_has_its_own_order(handset, rig, acts, others):
    """The acts are those of the rig's drive, shift and transmission, called common practice, and no others."""
    card = opened(handset, **rig)
    listed = card.locator(".first li b").all_inner_texts()
    assert {STEPS[act]["act"] for act in acts} <= set(listed)
    assert not {STEPS[act]["act"] for act in others} & set(listed)
    expect(card.locator(".first")).to_contain_text(D["order_for"].partition("{what}")[2])
    has_collar = rig["drive"] in ("midship", "rear_shaft")
    expect(card.get_by_text(ORDERS["grinding"]["short"])).to_have_count(int(has_collar))
    orders = {name: data.order_for(order, rig["drive"]) for name, order in ORDERS.items()}
    expect(card.get_by_text(orders["pump_fails"]["do"][1], exact=True)).to_be_visible()
    expect(card.get_by_text(orders["road_fails"]["short"])).to_be_visible()
    assert ("CENTER" in card.inner_text()) == has_collar
    expect(card.get_by_text(ORDERS["override"]["title"], exact=True)).to_have_count(int(has_collar and rig["shift_control"] != "manual"))


@pytest.mark.parametrize("rig", [{}, {"drive": "rear", "shift_control": "air", "transmission": "automatic"}, {"drive": "midship", "transmission": "automatic"}],
                         ids=["nothing", "rear of an old profile", "no shift control"])
def test_no_order_is_guessed(handset, rig):
    """A profile that leaves the order open gets lines for what the makers' manuals say, and no act of ours."""
    card = opened(handset, **rig)
    expect(card.get_by_text(D["order_other"])).to_be_visible()
    assert set(card.locator(".first li").all_inner_texts()) == {D["blank"]}


@pytest.mark.parametrize("rig", [SPLIT, {**SPLIT, "shift_control": "electric"}], ids=["air", "electric"])
@pytest.mark.parametrize("language", ["", "fr/"])
def test_the_longest_orders_fit_one_sheet(take, language, rig):
    """On letter paper the card is one sheet for the cab, in the longer language too."""
    handset = take(locale="fr-CA" if language else "en-US")
    beside(handset, **rig)
    page = handset.open(f"{language}rig/recovery/")
    expect(page.locator(".recovery")).to_be_visible()
    assert len(re.findall(rb"/Type\s*/Page\b", page.pdf(prefer_css_page_size=True))) == 1


def test_card_holds_the_rig_and_no_guess(handset):
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
    expect(card.get_by_text(D["blank"], exact=True)).to_have_count(5)
