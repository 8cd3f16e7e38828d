// The one door to what is kept. An entry is noted at once, since a page may go before the database has written it, and then
// written; its note goes only once the database has it. A note that stands is read in place of what the database has, and
// written by whichever page reads it next. Whatever the database refuses is said above the page.
import { openDB } from "../../vendor/idb/idb.js";
import { jot } from "./choices.js";
import { dropAnswer } from "./last_answer.js";
import { noteAt, noteDown, notes, notesOf, same, strike } from "./notes.js";
import { oneReading } from "./one_reading.js";
import { DATABASE, inherited } from "./older.js";
import { isDraft, readable, readDraft, setAside } from "./unreadable.js";
import { tellSaved } from "./unsaved.js";

const STORES = ["drafts", "rigs", "log", "tests", "bay", "photos"];
const PROBE = "probe";
const ASIDE = "aside:"; // a draft that could not be read when another took its place
let hasRefused = false; // the database, something that is noted
let opening = null;

// The database; opened anew where the browser refused it before, or cleared it under a page that is open.
function database() {
  opening ??= open().catch((fault) => {
    opening = null;
    throw fault;
  });
  return opening;
}

async function open() {
  const rows = await inherited();
  return openDB(DATABASE, 5, { ...listeners, upgrade(opened, _from, _to, transaction) {
    for (const store of STORES) {
      if (!opened.objectStoreNames.contains(store)) opened.createObjectStore(store);
    }
    for (const [store, key, value] of rows) if (STORES.includes(store)) transaction.objectStore(store).put(value, key);
  } });
}

const listeners = {
  blocking(version, older, event) {
    opening = null;
    event.target.close(); // a newer version of the site waits for the database: let it go
  },
  terminated() {
    opening = null;
  },
};

// Change one record in a single transaction: `change` gets it as it is kept now (undefined where there is none) and returns
// it as it is to be, or undefined to leave it. Resolves to what is kept then; rejects where nothing can be.
export async function changeRecord(store, id, change) {
  const transaction = (await database()).transaction(store, "readwrite");
  const before = await transaction.store.get(id);
  const isSpoiled = store === "drafts" && !isDraft(id, before);
  const record = change(isSpoiled ? undefined : before);
  if (record === undefined) return before;
  if (isSpoiled) transaction.store.put(before, ASIDE + id);
  await Promise.all([transaction.store.put(record, id), transaction.done]);
  return record;
}

const isOlder = (value, stored) => stored?.revision >= value?.revision;

// Whether two values say the same, in whatever spelling.
const alike = (one, other) => same(oneReading(one), oneReading(other));

// A record with a note put to it, or undefined where the note no longer fits: a later revision is there, or another value
// than the one its field was typed over.
function withNote(stored, [, , field], { value, base, isPart }) {
  if (field === undefined) return isOlder(value, stored) ? undefined : isPart ? { ...stored, ...value } : value;
  return stored && (alike(stored[field], base) || alike(stored[field], value)) ? { ...stored, [field]: value } : undefined;
}

// Write what is noted. Resolves to "kept"; "noted" where the database refused it and the note stands; "unkept" where there
// is none either; "conflict" where `change` would not write over what it found.
async function write(place, note, isNoted, change) {
  let state = "kept";
  try {
    await changeRecord(place[0], place[1], (stored) => {
      const record = change(stored);
      if (record === undefined) state = "conflict";
      return record;
    });
    strike(place, note);
  } catch {
    state = isNoted ? "noted" : "unkept";
    hasRefused = true;
  }
  tellSaved(place.join(" "), state);
  if (state === "kept") hasRoomAgain();
  return state;
}

// What was worked out for a rig is not painted before anything is read (shared/first_*.js) once a profile is another.
function dropPainted() {
  jot("profiles", String(Date.now()));
  for (const page of ["start", "pressure"]) dropAnswer(page);
}

function enter(place, note, change) {
  if (place[0] === "rigs") dropPainted();
  return write(place, note, noteDown(place, note), change);
}

// Keep a value, plain data, under a name; each of these resolves as `write` does.
export function keep(name, typed) {
  const value = oneReading(typed);
  return enter(["drafts", name], { value }, () => value);
}

// Keep a record, which carries its `id`.
export function keepRecord(store, typed) {
  const record = oneReading(typed);
  return enter([store, record.id], { value: record, ...("picture" in record && { isLarge: true }) }, () => record);
}

// Keep many records at once, in one transaction; where the database refuses them each is noted and said as above.
export async function keepRecords(store, records) {
  try {
    const transaction = (await database()).transaction(store, "readwrite");
    await Promise.all([...records.map((record) => transaction.store.put(record, record.id)), transaction.done]);
  } catch {
    for (const record of records) await keepRecord(store, record);
  }
}

// Keep some fields of a record, and leave any others it has.
export function keepPart(store, typed) {
  const part = oneReading(typed);
  return enter([store, part.id], { value: part, isPart: true }, (stored) => ({ ...stored, ...part }));
}

// Keep one field of a record as it was `seen`: only where the kept field is still the one that was seen.
export function keepField(store, seen, field, typed) {
  const value = oneReading(typed);
  const place = [store, seen.id, field];
  const { base } = noteAt(place) ?? { base: seen[field] };
  const isSeen = (there) => alike(there, seen[field]) || alike(there, base);
  return enter(place, { value, base }, (stored) => (stored && !isSeen(stored[field]) ? undefined : { ...(stored ?? seen), [field]: value }));
}

function hasRoomAgain() {
  tellSaved("room", "kept");
  if (!hasRefused) return;
  hasRefused = false;
  notes().forEach(writeAgain);
}

// Write a note that stands, unless its entry has been typed over or written meanwhile.
function writeAgain({ place, note, isStored }) {
  return write(place, note, isStored, (stored) => (same(noteAt(place), note) ? withNote(stored, place, note) : undefined));
}

function withNotes(stored, standing) {
  standing.forEach(writeAgain);
  return standing.reduce((record, { place, note }) => {
    const noted = withNote(record, place, note);
    return noted === undefined ? record : noted;
  }, stored);
}

// The value kept under a name, or undefined.
export async function kept(name) {
  let stored;
  try {
    stored = await (await database()).get("drafts", name);
  } catch {
    // refused: what is noted is all there is
  }
  return readDraft(name, withNotes(stored, notesOf("drafts", name)));
}

// Name every draft whose place was taken by another, since it could not be read.
export async function tellAside() {
  try {
    const opened = await database();
    for (const key of await opened.getAllKeys("drafts")) if (String(key).startsWith(ASIDE)) setAside(`drafts/${key}`, await opened.get("drafts", key));
  } catch {
    // refused: there is nothing to be had
  }
}

// Every record of a store ("rigs", "log": finished cards and diagnoses, "tests": service tests, "photos": of those, "bay": what was checked, written and released), in the order of their ids,
// but for those that cannot be read. `concerns`: whether the page has to do with one, whatever it is; `fits`: whether it can be read besides.
/** @param {string} store @param {{ concerns?: (record: any) => boolean, fits?: (record: any) => boolean }} [asked] */
export async function keptRecords(store, { concerns = () => true, fits = () => true } = {}) {
  const records = new Map();
  try {
    const opened = await database();
    const [keys, values] = await Promise.all([opened.getAllKeys(store), opened.getAll(store)]);
    keys.forEach((key, place) => records.set(key, values[place]));
  } catch {
    // refused: what is noted is all there is
  }
  for (const id of new Set(notes().filter(({ place }) => place[0] === store).map(({ place }) => place[1]))) {
    const record = withNotes(records.get(id), notesOf(store, id));
    if (record) records.set(id, record);
  }
  return readable(store, [...records].filter(([, record]) => concerns(record)), (record, key) => record.id === key && fits(record));
}

// Take a record away for good, with its notes; resolves to whether that could be done.
export async function dropRecord(store, id) {
  try {
    await (await database()).delete(store, id);
  } catch {
    return false;
  }
  for (const { place, note } of notesOf(store, id)) strike(place, note);
  return true;
}

// The same of many at once.
export async function dropRecords(store, ids) {
  try {
    const transaction = (await database()).transaction(store, "readwrite");
    await Promise.all([...ids.map((id) => transaction.store.delete(id)), transaction.done]);
  } catch {
    return false;
  }
  const gone = new Set(ids);
  for (const { place, note } of notes()) if (place[0] === store && gone.has(place[1])) strike(place, note);
  return true;
}

// Whether the database takes anything now: it may be full, or refused.
export async function hasRoom() {
  try {
    const opened = await database();
    await opened.put("drafts", "room", PROBE);
    await opened.delete("drafts", PROBE);
    return true;
  } catch {
    return false;
  }
}

// Say above the page where it takes nothing; resolves to whether it does.
export async function tellRoom() {
  const isThere = await hasRoom();
  tellSaved("room", isThere ? "kept" : "unkept");
  return isThere;
}

// Ask the browser not to clear what is kept: "kept", "unpromised", or "unkept" where nothing can be.
export async function askToPersist() {
  if (!(await hasRoom())) return "unkept";
  return (await navigator.storage?.persist?.()) ? "kept" : "unpromised";
}
