// The check-off records of this phone: kept together under one name, sent and taken in as a file. calc.bay.checkoff judges and merges.
import { safe, send } from "../rig/carry.js";
import { calc, Refusal } from "../shared/engine.js";
import { mark } from "../shared/mark.js";
import { fill } from "../shared/site.js";
import { keep, kept, keptRecords } from "../shared/store.js";
import { isUnseen } from "./place.js";

const NAME = "checkoff";
const FORMAT = "check-off";
const LARGEST_FILE = 2_000_000;

export const records = async () => (await kept(NAME)) ?? [];

// Put more to what is kept now, which another tab may have added to; resolves to { records, refused }.
async function add(more) {
  const answer = await calc.ask("checkoff.merged", { one: await records(), other: more });
  await keep(NAME, answer.records);
  return answer;
}

// A row as it was entered; resolves to the record that was added, or to { refused: code }.
export async function enter(before, row) {
  const at_ms = Date.now();
  try {
    const record = await calc.ask("checkoff.entered", { before, row: { ...row, id: mark(), at_ms } });
    await add([record]);
    return { record };
  } catch (refusal) {
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
  const before = (await records()).length;
  const { records: after, refused } = await add(content.records);
  return fill(refused ? words.brought_some : words.brought, { file: file.name, count: after.length - before, refused });
}

// The times that runs of this phone give each task: { task: [{ took_s, began_ms }] }.
export async function timesOf({ tasks, whole }) {
  const runs = (await keptRecords("log")).filter(({ began_at, ended_at }) => began_at && ended_at).map((run) => ({
    title: run.title, began_ms: Date.parse(run.began_at), ended_ms: Date.parse(run.ended_at), took_s: run.took_s ?? null,
    is_whole: whole.includes(run.outcome) && !isUnseen(run),
  }));
  const rows = await Promise.all(tasks.map(async ({ id, titles }) => [id, await calc.ask("checkoff.times", { runs, titles })]));
  return Object.fromEntries(rows);
}
