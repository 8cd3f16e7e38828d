"""From where something was seen to a defect in one touch, with what was seen in it."""
import json
import re
from urllib.parse import unquote

from playwright.sync_api import expect

from site_src.content import data
from tests.phone.card import RIG, beside, hasten, open_card
from tests.phone.rounds import T, key, title
from tests.phone.words import SITE

SHIFT = SITE["shift"]
WRITE = SITE["rig_status_acts"]["write"]


def written_from(page, what, seen, origin):
    """One touch leads to the defect with what was seen; it is written as it stands."""
    page.get_by_role("link", name=WRITE, exact=True).tap()
    expect(page.get_by_label(T["defect"]["what"])).to_have_value(what)
    expect(page.get_by_label(T["defect"]["seen"])).to_have_value(seen)
    page.get_by_label(T["bay"]["name"]).fill("Hart")
    key(page, T["defect"]["write"]).tap()
    expect(title(page)).to_have_text(what)
    expect(page.get_by_text(T["origin"][origin])).to_be_visible()


def test_from_a_stop_on_a_card(take):
    """A sign that did not come, and it moved: the order or the step it came at, the card, and what was not seen."""
    handset = hasten(take())
    beside(handset, **RIG)
    card = open_card(handset, "freeze")
    step = data.step_words()[card.step()]
    card.press("not_seen")
    href = card.page.get_by_role("link", name=WRITE, exact=True).get_attribute("href")
    assert SHIFT["defect_unseen"].format(card=SITE["card"]["freeze"]["title"], see=step["see"])[:600] in json.loads(unquote(href.split("#new=")[1]))["seen"]
    card.page.close()
    card = open_card(handset, "scene")
    card.press("danger")
    expect(card.title).to_have_text(data.words("orders")["moved"]["title"])
    card.page.get_by_role("link", name=SHIFT["tag_open"], exact=True).tap()
    expect(title(card.page)).to_have_text(SHIFT["tag_what"])
    expect(card.page.locator("main b", has_text=SHIFT["tag_seen"].format(card=SITE["card"]["scene"]["title"]))).to_be_visible()
    expect(card.page.get_by_text(T["origin"]["halt"])).to_be_visible()
    card.page.close()
    without = take()
    card = open_card(hasten(without), "scene")
    step = data.step_words()[card.step()]
    card.press("danger")
    href = card.page.get_by_role("link", name=WRITE, exact=True).get_attribute("href")
    assert SHIFT["defect_stopped"].format(card=SITE["card"]["scene"]["title"], act=step["act"]) in json.loads(unquote(href.split("#new=")[1]))["seen"]
    card.page.close()


def test_a_link_that_cannot_be_read(take):
    """A damaged or too long link says so, and the defect is written by hand; the longest a page makes is whole."""
    handset = take()
    beside(handset, **RIG)
    page = handset.open("checks/defect/#new=%7B%22what")
    expect(page.get_by_role("alert").get_by_text(T["defect"]["lost"])).to_be_visible()
    page.close()
    page = handset.open("checks/defect/#new=" + "x" * 12_000)
    expect(page.get_by_role("alert").get_by_text(T["defect"]["lost"])).to_be_visible()
    page.close()
    long = "%C3%A9" * 600  # 3,600 signs of an address
    page = handset.open(f"checks/defect/#new=%7B%22what%22%3A%22Oil%22%2C%22seen%22%3A%22{long}%22%7D")
    expect(page.get_by_label(T["defect"]["seen"])).to_have_value(re.compile("^é{600}$"))
    expect(page.get_by_text(T["defect"]["lost"])).to_have_count(0)
    page.close()


def test_from_the_override(take):
    """At the end of the override the rig is out of service, and one touch writes it."""
    handset = hasten(take())
    beside(handset, **RIG)
    card = open_card(handset, "override")
    card.run_out()
    written_from(card.page, SITE["card"]["override"]["title"], SHIFT["done_tag"], "override")
    expect(card.page.locator("#rig-status")).to_have_attribute("data-state", "out_of_service")
    card.page.close()
