// The last answer of a page, kept with exactly what it was worked out from, so that it can stand on the screen before the
// calculator runs. Where anything of that is another now, there is no last answer.
import { scoped } from "./site.js";

const LARGEST = 200_000;
const stores = [() => sessionStorage, () => localStorage]; // of this tab, or else of the last that answered
const place = (page) => scoped(`answer:${page}`);

// What an answer follows from, as one text: all that is entered, the rig and its shelf, the units, the version of the site.
export const basisOf = (...parts) => JSON.stringify(parts);

// What was kept for this basis, or null.
export function lastAnswer(page, basis) {
  for (const store of stores) {
    try {
      const last = JSON.parse(store().getItem(place(page)));
      if (last?.basis === basis) return last;
    } catch {
      // no storage, or not ours: dashes until the calculator runs
    }
  }
  return null;
}

export function keepAnswer(page, basis, answered) {
  const text = JSON.stringify({ ...answered, basis });
  for (const store of stores) {
    try {
      if (text.length > LARGEST) store().removeItem(place(page));
      else store().setItem(place(page), text);
    } catch {
      // no room: dashes next time
    }
  }
}

// What stood for entries that are no longer those of the page.
export function dropAnswer(page) {
  for (const store of stores) {
    try {
      store().removeItem(place(page));
    } catch {
      // there is none
    }
  }
}
