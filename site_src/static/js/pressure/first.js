// What shared/first_pressure.js paints before any module runs: the plate and the picture as they stand, with all they follow from.
import { chosen, drop, jot } from "../shared/choices.js";
import { keepDraft } from "../shared/draft.js";
import { dropAnswer } from "../shared/last_answer.js";
import { scoped } from "../shared/site.js";
import { snapshotOf } from "../shared/snapshot.js";

const DRAFT = "pressure";
const MOST = 30_000; // letters; a larger picture takes longer than it is worth
const WORKED = "worked:pressure"; // the draft that the database has, for what runs before it is read
let worked = null; // the draft as it is kept

// Keep the layout that is worked on, null for the opening one. What stood is of another: it is painted no more.
export function keepLayout(layout) {
  worked = layout;
  dropAnswer(DRAFT);
  note();
  return keepDraft(DRAFT, layout);
}

// What the page opened on, where that was not noted yet.
export function noteOpened(draft) {
  worked = draft;
  if (chosen(WORKED, null) === null) note();
}

// Another tab works on another layout than `here()`: `told` gets it, as `sound(make)` takes it. Each tab keeps its own.
export function onOther(here, sound, told) {
  addEventListener("storage", ({ key, newValue }) => {
    if (key !== scoped(WORKED) || !newValue) return;
    const other = sound(() => JSON.parse(newValue).draft ?? here());
    if (other && JSON.stringify(other) !== JSON.stringify(sound(here))) told(other);
  });
}

function note() {
  if (!jot(WORKED, JSON.stringify({ draft: worked }))) drop(WORKED); // an older one would be worse than none
}

// `place` as it stands at the answer to what is kept, or null where that is too large. `profiles` is when a rig on this phone was last changed.
export function firstOf({ place, profiles, system, version, pressure, label }) {
  const shown = snapshotOf(place.querySelector("[data-pane=line]"));
  const first = { of: [worked, chosen("rig", null) || null, profiles, system, version, document.documentElement.lang, innerWidth], pressure, label, shown };
  return JSON.stringify(first).length > MOST ? null : first;
}
