// A test that comes back from its file. Nothing in it is trusted: it is kept only where it can be judged.
import { clockOf, halted, runningIn, SCHEMA } from "./record.js";

const LARGEST_FILE = 5_000_000;
const isPlain = (value) => value !== null && typeof value === "object" && !Array.isArray(value);

// What a file holds as text; throws a RangeError where it is larger than a test can be.
export async function textOf(file) {
  if (file.size > LARGEST_FILE) throw new RangeError("too large");
  return file.text();
}

// The record in a text. `judge` throws where it can make nothing of it. A clock that ran on the other phone comes in paused.
export function takenIn(text, judge, { words, wall }) {
  const record = JSON.parse(text);
  const isWhole = isPlain(record) && record.schema === SCHEMA && Number.isInteger(record.revision)
    && ["id", "rig_id", "rig_name", "notes"].every((name) => typeof record[name] === "string")
    && ["rig", "standard", "conditions", "accuracy", "people", "tests"].every((name) => isPlain(record[name]))
    && ["equipment", "events"].every((name) => Array.isArray(record[name]))
    && Number.isFinite(record.begun_ms) && (record.finished_ms === null ? record.result === null : Number.isFinite(record.finished_ms) && isPlain(record.result))
    && Object.hasOwn(words.standard, record.standard.id) && Object.hasOwn(words.kind, record.standard.kind);
  if (!isWhole) throw new TypeError("no record of a test");
  judge(record);
  return runningIn(record).reduce((each, name) =>
    halted(each, name, { kind: "pause", reason: words.test.other_phone, now: clockOf(each, name).since, wall }), record);
}
