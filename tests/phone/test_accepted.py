"""Whatever profile is accepted, every page opens with it, and on whatever stands in the notes of a browser: nothing throws, and each page says something."""
import json
import os

import pytest
from playwright.sync_api import expect

from tests.phone.claim import chance
from tests.phone.test_rig import bring, taken
from tests.phone.test_rig_faults import chosen
from tests.phone.words import SITE
from tests.site import pages
from tests.unit.rig.accepted import accepted

WALKS = 2  # take the kinds of pages between them, and of pages that are alike
ALIKE = 2  # at random
JUNK = ("", "null", "7", "[]", "{}", "x", '{"schema": 1}', '[{"id": null}]', '{"__proto__": {"a": 1}}', json.dumps("x" * 5000), "[" * 400 + "]" * 400, "<b>x</b>", "constructor", "__proto__")
# what pages note under a name, and a name of each kind of note that hangs on an id
NOTES = ("units", "language", "rig", "look", "running", "profiles", "bay:any-rig", "answer:pressure", "answer:start", "worked:pressure", "carried", "bay-name", "role", "paper", "trainee",
         "proved", "log-codes", "unreadable", "rig-entries", 'note:["drafts","pressure"]', 'note:["rigs","x","name"]', 'note:["bay","x"]', "note:[", 'note:["nowhere","x"]', "note:[1,2,3]", "note:[[]]")


def of_walk(walk, luck):
    """The addresses of a walk."""
    return [address for alike in pages.kinds()[walk::WALKS] for address in luck.sample(alike, min(ALIKE, len(alike)))]


def opens(handset, address, what):
    """A page comes to rest with something on it, and has no fault of its own to tell."""
    page = handset.open(address)
    said = f"SEED={os.environ['SEED']}, {address}, {what}"
    expect(page.locator("body"), said).not_to_be_empty()
    expect(page.locator("[aria-busy=true]"), said).to_have_count(0)
    expect(page.get_by_text(SITE["down"]["fault"]).filter(visible=True), said).to_have_count(0)
    page.close()


@pytest.mark.parametrize("walk", range(WALKS))
def test_every_page_opens_with_an_accepted_rig(take, walk):
    """Let in as a file, by touch, and then the rig of the pages of the site."""
    handset, luck = take(), chance("accepted", walk)
    profile = accepted(luck)
    page = handset.open("rig/")
    bring(page, json.dumps(profile).encode())
    taken(page, profile["name"])
    page.close()
    chosen(handset, profile)
    for address in of_walk(walk, luck):
        opens(handset, address, profile)


@pytest.mark.parametrize("walk", range(WALKS))
def test_every_page_opens_on_spoiled_notes(take, walk):
    """What it cannot read is as if it were not there."""
    handset, luck = take(), chance("notes", walk)
    handset.keeps_anything = True
    for address in of_walk(walk, luck):
        notes = {name: luck.choice(JUNK) for name in luck.sample(NOTES, 8)}
        spoiled = handset.open("404.html")
        spoiled.evaluate("(notes) => { localStorage.clear(); for (const name in notes) localStorage.setItem(name, notes[name]); }", notes)
        spoiled.close()
        opens(handset, address, notes)
