"""A nozzle brings the pressure it is usually run at; one that was typed stays."""
import json

import pytest
from playwright.sync_api import expect

from site_src.content import data, fleet
from tests.phone.handset import read_in
from tests.phone.layout import fresh_layout, open_layout
from tests.phone.test_rig import bring, press, taken
from tests.phone.words import SITE

R = data.words("rig")
ENGINE = fleet.load()["tollgate-engine-1"]
KIND, DEVICE = SITE["pressure"], SITE["device"]
BED = {"name": "Trash line", "hose": "attack-1.75", "length": "200@US", "crew": "2",
       "end": {"kind": "fog", "flow": "150@US", "tip": "0.9375@US", "pressure": "75@US"}}


def reads(layout, pressure):
    expect(layout.field("pressure")).to_have_value(pressure)


@pytest.mark.parametrize(("system", "hand", "master", "fog"), [
    # driver/operator study cards: 50, 80 and 100 psi; in kPa 350, 550 and 700, from memory; a bar is 100 kPa
    ("US", "50", "80", "100"), ("SI", "350", "550", "700"), ("bar", "3.5", "5.5", "7"), ("imperial", "50", "80", "100"),
])
def test_kinds_bring_their_usual_pressure(take, system, hand, master, fog):
    """Fog, smooth bore on a hand line, smooth bore on a device, and back."""
    layout = open_layout(take())
    read_in(layout.page, system)
    layout.ready("one")
    for kind, pressure in (("smooth", hand), ("fog", fog), ("automatic", fog), ("smooth", hand)):
        layout.choose("nozzle", KIND[kind])
        reads(layout, pressure)
    for device, pressure in (("master", master), ("none", hand), ("aerial", master)):
        layout.choose("device", DEVICE[device])
        reads(layout, pressure)
    layout.choose("nozzle", KIND["fog"])
    reads(layout, fog)


def test_a_typed_pressure_stays(layout):
    """Typed 85 stays through kinds, tips and devices; emptied, the next kind brings its own."""
    layout.type("pressure", "85")
    layout.choose("nozzle", KIND["smooth"])
    reads(layout, "85")
    layout.tip("7/8")
    reads(layout, "85")
    layout.choose("device", DEVICE["master"])
    reads(layout, "85")
    layout.type("pressure", "")
    layout.choose("nozzle", KIND["fog"])
    reads(layout, "100")


def test_a_nozzle_pressure_is_no_inlet_pressure(layout):
    """What a nozzle was typed to run at is not what an inlet shall see, nor the other way."""
    layout.type("pressure", "85")
    layout.choose("nozzle", KIND["inlet"])
    wanted = layout.page.get_by_role("textbox", name=KIND["inlet_pressure"])
    expect(wanted).to_have_value("20")  # common practice: 20 psi residual at the next pumper
    wanted.fill("150")
    layout.choose("nozzle", KIND["fog"])
    reads(layout, "100")


def test_the_rig_has_its_own(handset):
    """A rig whose 1 3/4 in preconnect runs its fog nozzle at 75 psi brings that back, and 50 for a smooth bore."""
    page = handset.open("rig/")
    bring(page, json.dumps({**ENGINE, "beds": [BED]}).encode())
    taken(page, ENGINE["name"])
    page.close()
    layout = open_layout(handset)
    reads(layout, "75")
    layout.choose("nozzle", KIND["smooth"])
    reads(layout, "50")
    layout.choose("nozzle", KIND["fog"])
    reads(layout, "75")
    layout.hose("attack-2.5")
    layout.choose("nozzle", KIND["smooth"])
    layout.choose("nozzle", KIND["fog"])
    reads(layout, "100")


def test_a_bed_of_a_rig(handset):
    """On the Rig page, too: 250 ft of 2 1/2 in with a 1 1/8 tip is pumped at 85 psi, not at 171."""
    page = handset.open("rig/")
    press(page, "rig", "make")
    page.locator("#field-beds-0-length").fill("250")
    page.locator("#field-beds-0-hose").select_option("attack-2.5")
    page.locator("#field-beds-0-end-kind").select_option("smooth")
    page.locator("#field-beds-0-end-tip").select_option("1.125@US")
    expect(page.locator("#field-beds-0-end-pressure")).to_have_value("50")
    # by hand: 29.7 x 1.125^2 x sqrt(50) = 265.79 gpm; 2 x 7.0645 x 2.5 + 50 = 85.32
    expect(page.locator(".bed-answer")).to_have_text("85 psi")
    page.locator("#field-beds-0-end-pressure").fill("60")
    page.locator("#field-beds-0-end-kind").select_option("fog")
    expect(page.locator("#field-beds-0-end-pressure")).to_have_value("60")


def test_a_loss_that_is_emptied_stays_empty_under_the_finger(handset):
    """Own 40 rubbed out digit by digit and typed anew is 40, and once the finger has left an empty field the usual loss stands there."""
    layout = fresh_layout(handset)
    layout.choose("device", DEVICE["master"])  # check() asks at once for a mark that the next draw makes
    loss = layout.page.get_by_role("textbox", name=SITE["pressure"]["loss"], exact=True)
    expect(loss).to_have_value("25")  # common practice: a master stream device
    loss.tap()
    layout.page.keyboard.type("40")
    for key in ("End", "Backspace", "Backspace"):
        layout.page.keyboard.press(key)
    expect(loss).to_have_value("")
    layout.page.keyboard.type("40")
    expect(loss).to_have_value("40")
    for _ in range(2):
        layout.page.keyboard.press("Backspace")
    loss.blur()
    expect(loss).to_have_value("25")
