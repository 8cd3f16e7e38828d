"""A watch over every moment of a page: whatever text stands in a place from the first paint on, at a slowed processor."""
import re

SLOWED = 6
# Every change of the places' text, with what stands beside it at that moment; text that cannot be seen does not count.
WATCH = """
{
  const seen = (window.moments = []);
  const text = (selector) => [...document.querySelectorAll(selector)].filter((each) => each.checkVisibility()).map((each) => each.innerText).join(" | ");
  const note = () => {
    const moment = Object.fromEntries(Object.entries(PLACES).map(([name, selector]) => [name, text(selector)]));
    const fields = [...document.querySelectorAll("main input[inputmode]")].filter((each) => each.checkVisibility());
    moment.fields = Object.fromEntries(fields.map((each) => [each.id, each.value]));
    for (const row of document.querySelectorAll(".entry-row")) moment.fields[row.dataset.entry] = row.querySelector("b").innerText;
    if (JSON.stringify(seen.at(-1)) !== JSON.stringify(moment)) seen.push(moment);
  };
  new MutationObserver(note).observe(document, { childList: true, subtree: true, characterData: true, attributes: true });
  const everyFrame = () => { note(); requestAnimationFrame(everyFrame); };
  requestAnimationFrame(everyFrame);
}
"""
PLACES = {"answer": ".answer-figure", "more": ".answer-sum, .plate-sum", "lines": "[data-pane=line] .lay", "tiles": ".page-figure", "all": "[data-drawn]"}
NUMBER = re.compile(r"\d")


def watched(handset, address, until, slowed=SLOWED):
    """Open a page slowed down; gives the page, and its moments once `until(page)` is done and another second has passed."""
    page = handset.context.new_page()
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": slowed})
    page.add_init_script(WATCH.replace("PLACES", repr(PLACES)))
    page.goto(handset.host.origin + address, wait_until="commit")
    until(page)
    page.wait_for_timeout(700)  # nothing to wait for: whatever still comes must not be another number
    return page, page.evaluate("window.moments")


def numbers(moments, place="answer"):
    """The different texts with a number in them that stood in a place, in their order."""
    found = []
    for moment in moments:
        if NUMBER.search(moment[place]) and moment[place] not in found:
            found.append(moment[place])
    return found
