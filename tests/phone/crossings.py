"""What crosses between a page and the interpreter, and how often it draws, counted where libraries are loaded: the site knows nothing of it."""
from tests.phone.sources import run_from_sources

WRAPPED = """
import { loadMicroPython as load } from "./micropython.mjs?as-it-is";
window.crossings ??= [];
const counted = (function_, kind) => (name, text) => {
  const answer = function_(name, text);
  window.crossings.push({ door: kind + name, bytes: text.length + answer.length, text, answer });
  return answer;
};
export async function loadMicroPython(options) {
  const python = await load(options);
  return { FS: python.FS, pyimport(name) {
    const phone = python.pyimport(name);
    return { call: counted(phone.call, ""), hold: counted(phone.hold, "hold ") };
  } };
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
    for file, script in (("micropython.mjs", WRAPPED), ("lit-html.js", DRAWN)):
        handset.context.route(f"**/{file}", _answer(script))
    return handset


def _answer(script):
    return lambda route: route.fulfill(body=script, content_type="text/javascript")


def draws(page):
    """How often the page has been drawn."""
    return page.evaluate("() => window.draws")


def bytes_of(crossed):
    """What crossed, both ways together."""
    return sum(crossing["bytes"] for crossing in crossed)


def crossings(page, act):
    """What crosses while something is done: [{door, bytes both ways, text of the arguments, answer}], in order."""
    page.evaluate("() => { window.crossings ??= []; window.crossings.length = 0 }")
    act()
    return page.evaluate("() => window.crossings")
