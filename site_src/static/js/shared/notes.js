// Notes of entries on their way to the database, written where no page need wait. A note is `{ value, base?, isPart?, isLarge? }` at a
// place `[store, id]` or, of one field of a record, `[store, id, field]`; `base` is what the field held before.
import { scoped } from "./site.js";

const MARK = scoped("note:");
const PREFIX = `${MARK}[`;

export const same = (one, other) => JSON.stringify(one) === JSON.stringify(other);

const nameOf = (place) => MARK + JSON.stringify(place);
const unstored = new Map(); // what storage did not take: this page has it for as long as it is open

function read(name) {
  try {
    return JSON.parse(localStorage.getItem(name)) ?? undefined;
  } catch {
    return undefined; // no storage, or nothing of ours
  }
}

// The note at a place; none where what stands there is no note.
export function noteAt(place) {
  const note = unstored.get(nameOf(place)) ?? read(nameOf(place));
  return typeof note === "object" && "value" in note ? note : undefined;
}

function drop(name) {
  unstored.delete(name);
  try {
    localStorage.removeItem(name);
  } catch {
    // no storage: there was no note
  }
}

// Note an entry; returns whether it could be. A large one, a photo, is noted by this page alone: storage has no room for many. An earlier note of the place would be worse than none, and goes.
export function noteDown(place, note) {
  const name = nameOf(place);
  try {
    if (note.isLarge) throw new RangeError("too large");
    localStorage.setItem(name, JSON.stringify(note));
    unstored.delete(name);
    return true;
  } catch {
    drop(name);
    unstored.set(name, note);
    return false;
  }
}

// Take back the note of a value that the database has; a later one of the same place stays, on the base that is there now.
export function strike(place, { value }) {
  const note = noteAt(place);
  if (note && same(note.value, value)) drop(nameOf(place));
  else if (note && place.length === 3) noteDown(place, { ...note, base: value });
}

// The place that a note is named after; none where it is no place of ours.
function placeOf(name) {
  try {
    const place = JSON.parse(name.slice(MARK.length));
    return [2, 3].includes(place.length) && place.every((part) => typeof part === "string") ? [place] : [];
  } catch {
    return [];
  }
}

// Every note that stands, whole records before their fields.
export function notes() {
  return [...new Set([...names(PREFIX), ...unstored.keys()])].flatMap(placeOf)
    .map((place) => ({ place, note: noteAt(place), isStored: !unstored.has(nameOf(place)) }))
    .filter(({ note }) => note)
    .sort((one, other) => one.place.length - other.place.length);
}

export const notesOf = (store, id) => notes().filter(({ place }) => place[0] === store && place[1] === id);

function names(prefix) {
  try {
    return Object.keys(localStorage).filter((name) => name.startsWith(prefix));
  } catch {
    return [];
  }
}

// Notes as older versions of the site left them, and what they are now.
const OLDER = {
  "note:": (name, value) => (name.startsWith("[") ? [] : [[["drafts", name], { value }]]),
  "test-note:": (id, value) => [[["tests", id], { value }]],
  "quick:": (id, value) => [[["drafts", `quick:${id}`], { value }]],
  "rig-entries": (_, entries) => (Array.isArray(entries) ? entries : []).flatMap((entry) => (entry?.id ? [[["rigs", entry.id, entry.key], { value: entry.value, base: entry.base }]] : [])),
};

for (const [prefix, placed] of Object.entries(OLDER)) {
  for (const name of names(prefix)) {
    const older = read(name);
    const found = older === undefined ? [] : placed(name.slice(prefix.length), older);
    if (found.length) drop(name);
    if (!found.every(([place, note]) => noteDown(place, note))) {
      try { localStorage.setItem(name, JSON.stringify(older)); } catch { /* its room went to the new ones */ }
    }
  }
}
