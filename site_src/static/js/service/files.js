// A test as files: JSON, whole, for other phones and the fleet's report; and CSV, a row for each reading, for a spreadsheet.
import { safe } from "../rig/carry.js";
import { table } from "../shared/cell.js";
import { decimal, fill } from "../shared/site.js";
import { overrideText } from "./before_view.js";
import { cautionsOf, offText } from "./status.js";
import { ABOUT, NAMEPLATE, SCHEMA, testOf } from "./record.js";
import { SITE } from "./site_fields.js";
import { absentIn } from "./without.js";

export const dated = (record) => new Date(record.finished_ms ?? record.begun_ms).toISOString().slice(0, 10);

const withPhotos = (record, photos) => ({ ...record, ...(photos.length && { photos: photos.map(({ test: _, ...photo }) => photo) }) });

export const jsonFile = (record, photos = []) =>
  new File([JSON.stringify(withPhotos(record, photos), null, 1)], `test-${safe(record.rig_name)}-${dated(record)}.json`, { type: "application/json" });

// Every test of a rig in one file, the newest first, and its baseline where it has one, to be brought in on another phone or reported on. `photos` are those of the
// tests, in their order: as many go along as a file may have bytes.
export function historyFile(records, baseline, photos, largest) {
  const whole = (taken) => JSON.stringify([...records.map((record) => withPhotos(record, taken.filter(({ test }) => test === record.id))), ...baseline], null, 1);
  let room = largest - new Blob([whole([])]).size;
  let count = 0;
  while (count < photos.length && (room -= JSON.stringify([photos[count]], null, 9).length) > 0) count += 1;
  return { file: new File([whole(photos.slice(0, count))], `tests-${safe(records[0].rig_name)}-${dated(records[0])}.json`, { type: "application/json" }), count };
}

// A rig's baseline as it travels.
export const baselineRow = ({ id, name }, baseline) => ({ schema: SCHEMA, rig_id: id, rig_name: name, baseline });

export const baselineFile = (row) =>
  new File([JSON.stringify(row, null, 1)], `baseline-${safe(row.rig_name)}-${new Date(row.baseline.at_ms).toISOString().slice(0, 10)}.json`, { type: "application/json" });

// Entries of a rig in the CSV, and their kinds.
const OF_RIG = [["pump_rated", "flow"], ["pump_ratio", "ratio"], ["governed", "speed"], ["tank", "volume"], ["tank_rate", "flow"], ["relief_set", "pressure"]];
const CHOSEN_OF_RIG = ["drive", "pump_stages", "shift_control", "override_place", "pressure_control", "other_control", "foam", "meters", "gauges", "auxiliary"];

// Rows of the CSV: what, where, when, figure, unit, verdict. `told(kind, text)` reads an entry in the page's units.
export function csvFile({ record, answer, words, u, shown, labelOf, kindOf }) {
  const rows = [[words.sheet.part, words.sheet.try, words.run.at, words.sheet.clock, words.sheet.reading, words.sheet.value, words.sheet.unit, words.sheet.result]];
  const time = (ms) => (ms ? new Date(ms).toISOString() : "");
  const add = (part, attempt, at, ms, name, text, kind, result) =>
    rows.push([part, attempt, at, time(ms), name, kind === "check" ? words.condition[text] ?? "" : shown(kind, text ?? ""), kind === "check" ? "" : u[`u_${kind}`], result]);
  const told = (part, name, text, result = "", ms = null) => { if (text) rows.push([part, "", "", time(ms), name, text, "", result]); };
  told(words.sheet.whole, words.test.standard, words.standard[record.standard.id], fill(words.sheet.edition, { id: record.standard.edition ?? words.sheet.edition_before }));
  told(words.sheet.whole, words.test.kind, words.kind[record.standard.kind]);
  told(words.sheet.whole, words.sheet.rig, record.rig_name);
  for (const ms of [record.begun_ms, record.finished_ms]) if (ms !== null) told(words.sheet.whole, words.sheet.clock, fill(words.test[ms === record.begun_ms ? "opened" : "closed"], { date: time(ms) }), "", ms);
  for (const name of ["source", "flow_by", "foam_by"]) if (name !== "foam_by" || record.conditions[name]) rows.push([words.test.site, "", "", "", words.condition[name], words.condition[record.conditions[name]] ?? "", "", ""]);
  for (const name of CHOSEN_OF_RIG) told(words.sheet.rig, words.field[name] ?? words.condition[name], record.rig[name]);
  for (const of of ["new", "last"]) for (const [run, { engine_rpm: rpm }] of Object.entries(record.rig[of] ?? {})) rows.push([words.sheet.rig, "", "", "", `${words.field.engine_rpm}, ${words.test_name[run] ?? run}, ${fill(words.test[`when_${of}`], { value: "" }).trim()}`, `${rpm}`, u.u_speed, ""]);
  for (const [name, text] of Object.entries(record.accuracy)) told(words.condition.accuracy, words.accuracy[name] ?? name, shown(kindOf(name), text));
  for (const tip of record.conditions.tips_in ?? []) add(words.test.site, "", "", null, words.condition.tips_in, tip, "diameter", "");
  for (const role of ["tester", "witness"]) told(words.sheet.whole, words.condition[role], record.people[role]);
  for (const name of NAMEPLATE) if (record.rig[name]) rows.push([words.sheet.rig, "", "", "", words.field[name], record.rig[name], "", ""]);
  for (const name of ABOUT) if (record.conditions[name]) rows.push([words.test.site, "", "", "", words.field[name], record.conditions[name], "", ""]);
  for (const [name, kind] of OF_RIG) if (record.rig[name]) add(words.sheet.rig, "", "", null, words.field[name], record.rig[name], kind, "");
  const planned = answer.plan.tests.flatMap(({ kind, fields }) => (kind === "conditions" ? fields.map(({ id }) => id) : []));
  for (const name of SITE) if (record.conditions[name] && !planned.includes(name)) add(words.test.site, "", "", null, labelOf(name), record.conditions[name], kindOf(name), "");
  for (const row of record.equipment) rows.push([words.condition.equipment, "", "", "", row.what, row.serial, "", [row.calibrated, row.due && `${words.condition.due}: ${row.due}`].filter(Boolean).join("; ")]);
  for (const override of record.overrides ?? []) rows.push([words.run.before_word, "", "", time(override.wall), override.name, overrideText(override, { words, answer }), "", ""]);
  for (const id of absentIn({ record, answer })) told(words.test_name[id], words.sheet.result, words.test.absent);
  for (const test of answer.plan.tests) {
    const part = words.test_name[test.id];
    const judged = answer.verdict.tests.find(({ id }) => id === test.id);
    const given = testOf(record, test.id);
    const values = test.kind === "conditions" ? { ...record.conditions, ...given.values } : given.values ?? {};
    if (test.kind !== "run") for (const field of test.fields) add(part, "", "", given.at?.[field.id] ?? null, labelOf(field.id), values[field.id], field.kind === "check" ? "check" : kindOf(field.id), "");
    if (test.kind !== "run") for (const one of judged.figures) if (one.kind !== "check" && one.value !== null && !test.fields.some(({ id }) => id === one.id)) rows.push([part, "", "", "", labelOf(one.id), one.exact_text, u[`u_${one.kind}`], words.figure_status[one.status]]);
    for (const caution of cautionsOf(judged, words)) told(part, words.sheet.result, caution);
    (given.attempts ?? []).forEach((attempt, count) => {
      for (const event of attempt.clock.events) rows.push([part, count + 1, event.at_s, time(event.wall), words.sheet.clocks, words.event[event.kind] ?? words.run.begin, "", event.reason ?? ""]);
      for (const set of attempt.taken_back ?? []) for (const field of test.fields) for (const text of [set.values[field.id]].flat()) if (text) add(part, count + 1, set.at_s, set.at_ms, labelOf(field.id), text, kindOf(field.id), words.run.taken_back);
    });
    (given.attempts ?? []).forEach((attempt, count) => attempt.sets.forEach((set, place) => {
      const read = judged.attempts[count].sets[place];
      const tip = set.tip ?? attempt.tip;
      const off = offText(read, words).trim();
      if (off) rows.push([part, count + 1, set.at_s, time(set.at_ms), words.sheet.clock, off, "", ""]);
      if (tip) rows.push([part, count + 1, set.at_s, time(set.at_ms), words.field.tips_in, `${tip.count} × ${shown("diameter", tip.tip_in)}`, "", u.u_diameter]);
      for (const field of test.fields) {
        [set.values[field.id]].flat().forEach((text, each) => add(part, count + 1, set.at_s, set.at_ms, labelOf(field.id), text, kindOf(field.id),
          [field.id, `${field.id}.${each}`].some((cell) => set.as_before?.includes(cell)) ? words.run.as_before : ""));
      }
      for (const one of read.figures) rows.push([part, count + 1, set.at_s, time(set.at_ms), labelOf(one.id), one.exact_text, u[`u_${one.kind}`], words.figure_status[read.is_by_mean && one.status === "fail" ? "by_mean" : one.status]]);
    }));
    rows.push([part, "", "", "", words.sheet.result, given.not_done ?? "", "", words.status[judged.status]]);
  }
  for (const event of record.events) rows.push([words.sheet.whole, "", "", time(event.wall), words.sheet.clocks, event.kind, "", event.s ?? ""]);
  for (const each of record.versions ?? []) told(words.sign_off.versions, each.by, each.what, each.why, each.wall);
  for (const each of record.signed ?? []) told(words.condition[each.role], each.name, each.digest, "", each.wall);
  rows.push([words.sheet.whole, "", "", "", record.people.tester, record.notes, "", record.finished_ms === null ? words.sheet.unfinished : words.status[answer.verdict.status]]);
  return new File([table(rows, decimal)], `test-${safe(record.rig_name)}-${dated(record)}.csv`, { type: "text/csv" });
}
