// The log as files: a spreadsheet with one line an entry, and all of it as JSON.
import { table } from "../shared/cell.js";
import { decimal } from "../shared/site.js";
import { isTraining, isUnseen, placeWords } from "./place.js";
import { eventWords, outcomeWords, toldWords } from "./told.js";

const file = (parts, part, ending, type) => new File(parts, `${part}-${new Date().toISOString().slice(0, 10)}.${ending}`, { type });

// part: which part of the log it is, as the file's name says it.
export function csvOf(records, log, part) {
  const yes = (is) => (is ? log.run_place.yes : "");
  const rows = records.flatMap((record) => {
    const run = [record.id, record.kind, record.title, record.rig?.name, record.who, record.began_at, record.ended_at, placeWords(record, log.run_place), yes(isTraining(record)), outcomeWords(record, log),
      yes(isUnseen(record)), record.notes];
    const entries = record.entries?.length ? record.entries : [{}];
    return entries.map((entry) => [...run, entry.at, eventWords(entry, log), toldWords(entry)]);
  });
  const columns = ["id", "kind", "title", "rig", "who", "began", "ended", "place", "training", "outcome", "unseen", "notes", "at", "event", "told"].map((name) => log.column[name]);
  return file([table([columns, ...rows], decimal)], part, "csv", "text/csv");
}

export const jsonOf = (records, part) => file([JSON.stringify(records, null, 1)], part, "json", "application/json");
