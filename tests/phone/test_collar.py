"""Where the collar is by its proofs, and what a dark light misses: by touch, with no signal."""
import pytest
from playwright.sync_api import expect

from tests.phone.diagnosis import ASK, D, F, ORDERS, button, carried_out


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
    page.get_by_text(ASK["so_far"], exact=True).tap()
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
