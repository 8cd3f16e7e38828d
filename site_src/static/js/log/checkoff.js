// The check-off records of this phone: kept together under one name, sent and taken in as a file. calc.bay.checkoff judges and merges.
import { safe } from "../rig/carry.js";
import { calc, Refusal } from "../shared/engine.js";
import { mark } from "../shared/mark.js";
import { same } from "../shared/notes.js";
import { send } from "../shared/send.js";
import { fill } from "../shared/site.js";
import { changeRecord, kept, keptRecords } from "../shared/store.js";
import { readable } from "../shared/unreadable.js";
import { isUnseen } from "./place.js";

const NAME = "checkoff";
const FORMAT = "check-off";
const LARGEST_FILE = 2_000_000;

const merged = (one, other) => calc.ask("checkoff.merged", { one, other });

// A name as it is compared: capitals and idle spaces do not count.
export const plain = (name) => name.trim().replace(/\s+/g, " ").toLowerCase();

// What was kept that is no list, or is spoiled in it, stays.
const listed = (now = []) => (Array.isArray(now) ? now : [now]);

export async function records() {
  const entries = [...listed(await kept(NAME)).entries()];
  const { records: sound } = await merged(readable(NAME, entries), []);
  const ids = new Set(sound.map(({ id }) => id));
  readable(NAME, entries, ({ id }) => ids.has(id)); // what calc left out is named too
  return sound;
}

// Put more to what is kept at that moment, whichever tab added to it last; resolves to how many came and how many were refused.
export async function add(more) {
  const { records: sound, refused } = await merged([], more);
  let count = 0;
  await changeRecord("drafts", NAME, (before) => {
    const now = listed(before);
    const fresh = sound.filter((record) => !now.some((there) => same(there, record)));
    count = fresh.length;
    return [...now, ...fresh];
  });
  return { count, refused };
}

// Take a trainee's sheet off this phone; resolves to its records, for `add` to put back.
export async function drop(trainee) {
  const isOwn = (record) => typeof record?.trainee === "string" && plain(record.trainee) === plain(trainee);
  let gone = [];
  await changeRecord("drafts", NAME, (before) => {
    const now = listed(before);
    gone = now.filter(isOwn);
    return now.filter((record) => !isOwn(record));
  });
  return gone;
}

// A row as it was entered, after the record of `last_ms`; resolves to the record that was added, or to { refused: code }.
export async function enter({ open: before, last_ms }, row) {
  const at_ms = Date.now();
  try {
    const record = await calc.ask("checkoff.entered", { before, row: { ...row, id: mark(), at_ms }, last_ms });
    await add([record]);
    return { record };
  } catch (refusal) {
    if (refusal instanceof DOMException) return { refused: "other" }; // the database takes nothing
    if (!(refusal instanceof Refusal)) throw refusal;
    return { refused: refusal.code };
  }
}

export const sendAll = (trainee, own) =>
  send(new File([JSON.stringify({ format: FORMAT, schema: 1, records: own }, null, 1)], `check-off-${safe(trainee)}.json`, { type: "application/json" }));

// Take a file in; resolves to a sentence of what came of it.
export async function bring(file, words) {
  let content = null;
  try {
    if (file.size <= LARGEST_FILE) content = JSON.parse(await file.text());
  } catch {
    // no JSON: no file of ours
  }
  if (content?.format !== FORMAT || content.schema !== 1 || !Array.isArray(content.records)) return fill(words.not_one, { file: file.name });
  const { count, refused } = await add(content.records);
  return fill(refused ? words.brought_some : words.brought, { file: file.name, count, refused });
}

// A finished service test is a run of that name.
const testRuns = (tests) => tests.filter(({ finished_ms }) => finished_ms).map(({ begun_ms, finished_ms }) => (
  { title: "service_test", began_ms: begun_ms, ended_ms: finished_ms, took_s: null, is_whole: true }));

// The times that runs of this phone give each task: { task: [{ took_s, began_ms }] }.
export async function timesOf({ tasks, whole }) {
  const [log, tests] = await Promise.all([keptRecords("log"), keptRecords("tests")]);
  const runs = log.filter(({ began_at, ended_at }) => began_at && ended_at).map((run) => ({
    title: run.title, began_ms: Date.parse(run.began_at), ended_ms: Date.parse(run.ended_at), took_s: run.took_s ?? null,
    is_whole: whole.includes(run.outcome) && !isUnseen(run),
  })).concat(testRuns(tests));
  const rows = await Promise.all(tasks.map(async ({ id, titles }) => [id, await calc.ask("checkoff.times", { runs, titles })]));
  return Object.fromEntries(rows);
}
