// A rig's log as a file, and another phone's let in. calc.bay.records judges each record before it is kept; nothing here goes.
import { safe } from "../rig/carry.js";
import { calc } from "../shared/engine.js";
import { partOf } from "../shared/entries.js";
import { fill } from "../shared/site.js";
import { dropRecords, keepRecords } from "../shared/store.js";
import { letIn } from "./arrivals.js";
import { partsOf } from "./parts.js";

const FORMAT = "bay-log";
const LARGEST_FILE = 16_000_000; // more than any part of ours

// A log's head and its records' texts as another phone reads them.
export function contentOf(rig, texts) {
  const head = JSON.stringify({ format: FORMAT, schema: 1, rig_id: rig.id, rig_name: rig.name });
  return `${head.slice(0, -1)},"records":[${texts.join(",")}]}`;
}

// The files of a log, [{ file(), photos }]: the same bytes on every phone that has the same records.
export function filesOf({ rig, records }) {
  return partsOf(records).map(({ texts, photos }, place) => ({ photos, file: () => {
    return new File([contentOf(rig, texts)], `${safe(rig.name)}-log${place ? `-${place + 1}` : ""}.json`, { type: "application/json" });
  } }));
}

// Let a file in; resolves to sentences of what came of it.
export async function bring(file, { log, words }) {
  const refuse = (reason, facts = {}) => [fill(words.log[reason], { file: file.name, ...facts })];
  const part = await partOf(file, "bay");
  if (part === file && file.size > LARGEST_FILE) return refuse("too_large");
  let content;
  try {
    content = JSON.parse(await part.text());
  } catch {
    return refuse("not_json");
  }
  if (part !== file) content = { format: FORMAT, schema: 1, rig_id: log.rig.id, records: content.filter((record) => record?.rig_id === log.rig.id) };
  if (content?.format !== FORMAT || !Array.isArray(content.records)) return refuse("not_a_log");
  if (content.schema !== 1) return refuse("newer");
  if (content.rig_id !== log.rig.id) return refuse("other_rig", { rig: String(content.rig_name).slice(0, 60) });
  const { taken, same, refused } = await letIn(content.records, log, { ask: calc.ask, keep: (records) => keepRecords("bay", records) });
  return [
    fill(words.log.taken, { file: file.name, taken, same }),
    ...refused.slice(0, 5).map(({ at, field, code }) => fill(words.log.refused, { at: at + 1, field, reason: words.log_reason[code] ?? words.log_reason.other })),
    ...(refused.length > 5 ? [fill(words.log.more_refused, { count: refused.length - 5 })] : []),
  ];
}

// The records on which the word of some defects hangs: theirs, what names them, and what names that.
function recordsOf(ids, records) {
  const stay = new Set(ids);
  let before = -1;
  while (before !== stay.size) {
    before = stay.size;
    for (const { id, defect, defects = [], replaces } of records) if ([defect, ...defects, ...replaces].some((named) => stay.has(named))) stay.add(id);
  }
  return stay;
}

// Take a rig's log off this phone, but for its open defects. A record says how much went, when and by whom; null where it could not be done.
export async function emptied(log, by) {
  const stay = recordsOf((await log.standing()).defects.map(({ id }) => id), log.records);
  const gone = log.records.filter(({ id, kind }) => kind !== "erased" && !stay.has(id));
  if (!(await dropRecords("bay", gone.map(({ id }) => id)))) return null;
  log.records = log.records.filter((record) => !gone.includes(record));
  await log.add("erased", { count: gone.length, reason: "" }, { by });
  return gone.length;
}
