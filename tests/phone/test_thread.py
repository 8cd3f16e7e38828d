"""The interpreter's thread where it ends, or where none comes to run: the page says so, shows no number meanwhile, and goes on."""
import re

import pytest
from playwright.sync_api import expect

from tests.phone.layout import open_layout
from tests.phone.test_down import is_down
from tests.phone.words import SITE

# Threads that end at a question with 251 in it, without a word; the next one waits to be let go. Patience is short.
ENDING = """
{
  const every = window.setInterval;
  window.setInterval = (act, ms) => every(act, ms === 1000 ? 30 : ms);
  window.deaths = 0;
  window.mayDie = 1;
  const waiting = [];
  window.letGo = () => waiting.splice(0).forEach((send) => send());
  window.Worker = class extends Worker {
    isHeld = window.deaths > 0;
    postMessage(question) {
      if (this.isHeld) return waiting.push(() => { this.isHeld = false; this.postMessage(question); });
      if (window.deaths >= window.mayDie || !question.text?.includes("251")) return super.postMessage(question);
      window.deaths += 1;
      if (window.deaths === 1) this.terminate(); // the second hangs
    }
  };
}
"""
NONE = {
    "no threads": "delete window.Worker;",
    "none that is a module": "window.Worker = class { constructor() { setTimeout(() => this.onerror?.()); } postMessage() {} terminate() {} };",
    "refused": "window.Worker = class { constructor() { throw new TypeError('refused'); } };",
}


@pytest.fixture
def ending(handset):
    """The Pressure page on such a phone."""
    handset.context.add_init_script(ENDING)
    layout = open_layout(handset)
    layout.shows(170)  # by hand: 15.5 x 1.5^2 x 2 + 100 = 169.75
    return layout


def test_it_ends_at_a_question(ending):
    """No number stands and the page says why, until another thread has the answer to the very question; then all is as before."""
    page = ending.page
    ending.type("length", "251")
    expect(page.locator("#stopped")).to_have_text(SITE["site"]["stopped"])
    expect(page.locator("#stopped")).to_be_visible()
    expect(page.locator("output")).not_to_contain_text(re.compile(r"\d"))
    expect(page.locator("[data-drawn]")).to_be_hidden()
    page.evaluate("letGo()")
    ending.shows(188)  # by hand: 15.5 x 2.25 x 2.51 + 100 = 187.54
    expect(page.locator("#stopped")).to_be_hidden()
    expect(page.locator("[data-drawn]")).to_be_visible()
    ending.type("length", "300")
    ending.shows(205)  # by hand: 15.5 x 2.25 x 3 + 100 = 204.625


def test_it_ends_at_the_same_question_again(handset, ending):
    """A question that ends two threads is a fault of ours, and said as one; opened again, the page is there."""
    page = ending.page
    page.evaluate("mayDie = 2")
    ending.type("length", "251")
    expect(page.locator("#stopped")).to_be_visible()
    page.evaluate("letGo()")
    is_down(page, "fault")
    assert len(handset.troubles) == 1
    handset.troubles.clear()
    page.reload()
    expect(page.locator("#stopped")).to_be_visible()  # it ends one more
    page.evaluate("letGo()")
    ending.shows(188)


@pytest.mark.parametrize("none", NONE)
def test_no_thread(handset, none):
    """A browser without such threads works it out on the page, and says nothing of it."""
    handset.context.add_init_script(NONE[none])
    layout = open_layout(handset)
    layout.type("length", "300")
    layout.shows(205)
    expect(layout.page.locator("#stopped")).to_be_hidden()
