"""The strip on every page of what runs elsewhere."""
import json
import re
import time

import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests.phone.keyboard import MEASURE
from tests.phone.words import SITE

STRIP = SITE["strip"]


@pytest.mark.parametrize(("due_s", "said"), [(600, STRIP["back"]), (-1, STRIP["read"])])
def test_what_runs_is_seen_from_other_pages(handset, due_s, said):
    """What a page says is running stands on every other page, and leads back to it; not on its own. Due, it says so."""
    page = handset.open("tables/")
    now = int(time.time() * 1000)
    what = {"test": {"title": "Capacity run", "address": "test/run/#t.capacity", "began_at": now - 61000, "due_at": now + due_s * 1000}}
    page.evaluate("(text) => localStorage.setItem('running', text)", json.dumps(what))
    for address in ("", "water/"):
        page = handset.open(address)
        line = page.get_by_role("navigation", name=STRIP["title"]).get_by_role("link").first
        expect(line).to_contain_text("Capacity run 1:0")
        expect(line).to_contain_text(said)
    line.tap()
    page.wait_for_url("**/test/run/**")
    expect(page.locator("#strip")).to_be_hidden()
    expect(handset.open("test/run/index.html").locator("#strip")).to_be_hidden()  # as links of the site have it


@pytest.mark.parametrize(("kind", "address", "said", "french"), [
    ("check", "checks/round/#five_minute", ["checks/", "words", "list", "five_minute"], data.words("bay", "fr")["list"]["five_minute"]),
    ("card", "shift/road/", ["shift/road/", "titles", "road"], data.words("shift", "fr")["card"]["road"]["title"]),
    ("fault", "diagnose/", ["diagnose/", "words", "diagnose", "title"], data.words("diagnose", "fr")["diagnose"]["title"]),
    ("test", "test/run/#t.capacity", ["test/", "words", "test_name", "capacity"], data.words("service", "fr")["test_name"]["capacity"]),
])
def test_what_runs_is_said_in_the_language_of_the_page(take, kind, address, said, french):
    """What was begun in English is called by its French name on a French page."""
    handset = take(locale="fr-CA")
    page = handset.open("fr/tables/")
    what = {kind: {"title": "Begun", "said": said, "lang": "en", "address": address, "began_at": int(time.time() * 1000) - 61000}}
    page.evaluate("(text) => localStorage.setItem('running', text)", json.dumps(what))
    expect(handset.open("fr/water/").locator("#strip a").first).to_contain_text(french)


@pytest.mark.parametrize("language", ["en", "fr"])
def test_large_letters_lie_under_no_door(take, language):
    """On a phone 320 wide with letters twice as large, lines and the red door stand one under the other, and no word is cut; with usual ones side by side."""
    folder, words = ("", SITE) if language == "en" else ("fr/", data.shared_words("fr"))
    page = take(viewport={"width": 320, "height": 568}, locale=f"{language}-CA").open(folder + "tables/")
    began_ms = int(time.time() * 1000) - 61000
    what = {"test": {"title": data.words("service", language)["test_name"]["capacity"], "lang": language, "address": "test/run/#t.capacity", "began_at": began_ms, "due_at": began_ms},
            "card": {"title": data.words("shift", language)["card"]["road"]["title"], "lang": language, "address": "shift/road/", "began_at": began_ms}}
    page.evaluate("(text) => localStorage.setItem('running', text)", json.dumps(what))
    page.reload()
    lines = page.get_by_role("navigation", name=words["strip"]["title"]).locator(".strip-lines")
    door = page.locator("#strip .door")
    expect(lines).to_be_visible()
    assert door.bounding_box()["y"] < lines.bounding_box()["y"] + lines.bounding_box()["height"]
    page.evaluate("document.documentElement.style.fontSize = '200%'")
    assert door.bounding_box()["y"] >= lines.bounding_box()["y"] + lines.bounding_box()["height"]
    page.evaluate(MEASURE)
    assert page.evaluate("measure.overhang(320).concat(measure.cut())") == []


def test_what_was_left_for_a_day_runs_no_more(handset):
    """A card that was begun more than a day ago is in no strip; it is still where it was left."""
    page = handset.open("tables/")
    day_s = 24 * 3600
    what = {"card": {"title": "Into pump", "address": "shift/bay/", "began_at": int((time.time() - day_s - 60) * 1000)},
            "fault": {"title": "Find the fault", "address": "diagnose/", "began_at": int((time.time() - day_s + 600) * 1000)}}
    page.evaluate("(text) => localStorage.setItem('running', text)", json.dumps(what))
    page = handset.open("water/")
    expect(page.get_by_role("navigation", name=STRIP["title"]).get_by_role("link").first).to_have_text(re.compile("Find the fault"))
