// The log as files: a spreadsheet with one line an entry, and all of it as JSON.
import { cell } from "../shared/cell.js";
import { eventWords, outcomeWords, toldWords } from "./told.js";

const file = (parts, ending, type) => new File(parts, `log-${new Date().toISOString().slice(0, 10)}.${ending}`, { type });

export function csvOf(records, log) {
  const rows = records.flatMap((record) => {
    const run = [record.id, record.kind, record.title, record.rig?.name, record.who, record.began_at, record.ended_at, outcomeWords(record, log), record.notes];
    const entries = record.entries?.length ? record.entries : [{}];
    return entries.map((entry) => [...run, entry.at, eventWords(entry, log), toldWords(entry)]);
  });
  const columns = ["id", "kind", "title", "rig", "who", "began", "ended", "outcome", "notes", "at", "event", "told"].map((name) => log.column[name]);
  return file(["\ufeff", [columns, ...rows].map((row) => row.map(cell).join(",")).join("\r\n"), "\r\n"], "csv", "text/csv");
}

export const jsonOf = (records) => file([JSON.stringify(records, null, 1)], "json", "application/json");
