"""What crosses between a page and the interpreter, counted where MicroPython is loaded: nothing in the site knows of it."""
WRAPPED = """
import { loadMicroPython as load } from "./micropython.mjs?as-it-is";
window.crossings ??= [];
const counted = (function_, kind) => (name, text) => {
  const answer = function_(name, text);
  window.crossings.push({ door: kind + name, bytes: text.length + answer.length, text });
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


def count(handset):
    """Count on every page that the phone opens after this."""
    handset.context.route("**/micropython.mjs", lambda route: route.fulfill(body=WRAPPED, content_type="text/javascript"))


def crossings(page, act):
    """What crosses while something is done: [{door, bytes both ways, text of the arguments}], in order."""
    page.evaluate("() => { window.crossings ??= []; window.crossings.length = 0 }")
    act()
    return page.evaluate("() => window.crossings")
