// Keeps a test the moment it is typed: in a note that is written without a wait, and in the database. The one with the
// greater revision is the record. A page that ends between the two loses nothing; nor does a database that is full.
import { keepRecord, keptRecords } from "../shared/store.js";

const NOTE = "test-note:";
const listeners = new Set();
let latest = null;
let isWriting = false;

function put(record) {
  try {
    localStorage.setItem(NOTE + record.id, JSON.stringify(record));
    return true;
  } catch {
    return false;
  }
}

function noted() {
  try {
    return Object.keys(localStorage).filter((key) => key.startsWith(NOTE)).map((key) => JSON.parse(localStorage.getItem(key)));
  } catch {
    return [];
  }
}

function strike({ id, revision }) {
  try {
    const note = JSON.parse(localStorage.getItem(NOTE + id));
    if (note && note.revision <= revision) localStorage.removeItem(NOTE + id);
  } catch {
    // no storage: there was no note
  }
}

// Every test on this phone, each in its latest revision.
export async function everyTest() {
  const found = new Map((await keptRecords("tests")).map((record) => [record.id, record]));
  for (const note of noted()) {
    if ((found.get(note.id)?.revision ?? -1) < note.revision) found.set(note.id, note);
  }
  return [...found.values()].sort((one, other) => other.begun_ms - one.begun_ms);
}

// Called with "kept", "noted" (only in the note) or "unkept" after each try.
export const watchKeeping = (listener) => listeners.add(listener);

// Keep a record; resolves when the database has answered for its latest revision.
export async function keepTest(record) {
  const isNoted = put(record);
  latest = { record, isNoted };
  if (isWriting) return; // the writer below takes the latest when it is done
  isWriting = true;
  while (latest) {
    const { record: writing, isNoted: hasNote } = latest;
    latest = null;
    const isKept = await keepRecord("tests", writing);
    if (isKept) strike(writing);
    for (const listener of listeners) listener(isKept ? "kept" : hasNote ? "noted" : "unkept");
  }
  isWriting = false;
}

export function dropNote(id) {
  strike({ id, revision: Infinity });
}
