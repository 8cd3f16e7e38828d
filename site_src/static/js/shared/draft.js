// What is worked on in a page. It belongs to its tab: a reload goes on with it, whatever other tabs do meanwhile. A new tab
// goes on with what was worked on last, in whichever tab that was.
import { keep, kept } from "./store.js";

const inTab = (name) => `draft:${name}`;

// This tab's own, or the last; undefined where there is none.
export async function draftOf(name) {
  try {
    const own = sessionStorage.getItem(inTab(name));
    if (own !== null) return JSON.parse(own) ?? undefined;
  } catch {
    // no storage for tabs: the last one it is
  }
  return (await kept(name)) ?? undefined;
}

// Keep what is worked on, for this tab and as the last; null where the page is back at its opening figures.
export function keepDraft(name, value) {
  try {
    sessionStorage.setItem(inTab(name), JSON.stringify(value));
  } catch {
    dropFromTab(name); // an older one would be worse than none
  }
  return keep(name, value);
}

function dropFromTab(name) {
  try {
    sessionStorage.removeItem(inTab(name));
  } catch {
    // there is none
  }
}
