"""A language chosen without a signal: it is not taken, its chip goes back, and the count stays that of the language in use."""
import re

from playwright.sync_api import expect

from site_src.content import data

START = data.words("start", "en")["start"]


def test_a_language_that_needs_a_signal_once(away):
    """French with no signal: said, English stays, and it is whole as before."""
    page = away.open("all/")
    ready = re.compile(re.escape(START["ready"].split("{want}")[0]))
    expect(page.locator("#readiness")).to_have_text(ready, timeout=30000)
    page.locator("#language input[value=fr]").tap()
    expect(page.locator("#stays")).to_have_text(START["stays_signal"])
    expect(page.locator("#language input[value=auto]")).to_be_checked()
    expect(page.locator("#readiness")).to_have_text(ready)
    page.reload()
    expect(page.locator("#readiness")).to_have_text(ready, timeout=30000)
    expect(page.locator("html")).to_have_attribute("lang", "en")
    page.close()
