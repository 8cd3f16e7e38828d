"""What crosses between a page and the interpreter, and how often it draws, counted between page and thread, and where lit-html is loaded: the site knows nothing of it."""
from tests.phone.handset import until
from tests.phone.sources import run_from_sources

WATCHED = """
{
  const asked = (window.unanswered = new Map());
  window.crossings = [];
  window.Worker = class extends Worker {
    constructor(...given) {
      super(...given);
      this.addEventListener("message", ({ data: { id, text: answer } }) => {
        const { holds, door, text } = asked.get(id);
        asked.delete(id);
        for (const [name, value] of holds) window.crossings.push({ door: `hold ${name}`, bytes: value.length, text: value, answer: "" });
        if (door) window.crossings.push({ door, bytes: text.length + answer.length, text, answer });
      });
    }
    postMessage(question) {
      asked.set(question.id, question);
      super.postMessage(question);
    }
  };
}
"""
DRAWN = """
import { render as draw } from "./lit-html.js?as-it-is";
export * from "./lit-html.js?as-it-is";
window.draws ??= 0;
export const render = (...given) => {
  window.draws += given[1].id !== "strip"; // the strip keeps a clock of its own
  return draw(...given);
};
"""


def count(handset):
    """Count on every page that the phone opens after this; returns the phone."""
    run_from_sources(handset.context)
    handset.context.add_init_script(WATCHED)
    handset.context.route("**/lit-html.js", lambda route: route.fulfill(body=DRAWN, content_type="text/javascript"))
    return handset


def draws(page):
    """How often the page has been drawn."""
    return page.evaluate("() => window.draws")


def bytes_of(crossed):
    """What crossed, both ways together."""
    return sum(crossing["bytes"] for crossing in crossed)


def crossings(page, act):
    """What crosses while something is done: [{door, bytes both ways, text of the arguments, answer}], in order."""
    until(page, "!window.unanswered.size")
    page.evaluate("() => { window.crossings.length = 0 }")
    act()
    until(page, "!window.unanswered.size")
    return page.evaluate("() => window.crossings")
