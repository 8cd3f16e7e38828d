// A defect report, a release and what is due, as forms on paper: what is known, and lines for what is not.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { limitsRig, whatOf } from "../shared/rig_status.js";
import { colon } from "../shared/site.js";
import { day, dayAndTime } from "../shared/times.js";
import { fieldRow, numberOf, sheetView, signed, wide } from "./paper.js";
import { closedText, endText } from "./past.js";
import { classOf } from "./sentences.js";

const METERS = ["miles", "engine_h", "pump_h"];
const DUE_COLUMNS = 5;

// `open`: the defect as it stands; `end`: how it ended, as bay/past.js has it. Either may be null.
export function defectSheet({ words, rig, log, data }, defect, open, end) {
  const before = defect.item ? log.of("defect").filter(({ id, item, at_ms: at }) => item === defect.item && id !== defect.id && at < defect.at_ms) : [];
  const photos = log.of("photo").filter((record) => record.defect === defect.id);
  const last = open ?? end?.stood;
  const officer = last?.decided_by ? `${last.decided_by}, ${dayAndTime(last.decided_ms)}` : "";
  return sheetView({
    rig, title: `${words.defect.title} ${numberOf(defect)}`, when: defect.at_ms,
    body: html`<tbody>${[
      html`<h2>${defect.what}</h2><p class="paper-class">${open ? classOf(open, words) : closedText(end, words)}</p>`,
      fieldRow(words.defect.seen, defect.seen),
      fieldRow(words.defect.where, [defect.place, defect.state].filter(Boolean).join(", ")),
      fieldRow(words.defect.limit, defect.limit),
      fieldRow(words.defect.rule_of, data.sources[defect.rule] ?? words.department[defect.rule]),
      fieldRow(words.defect.may_not, last?.limits),
      fieldRow(words.defect.origin, words.origin[defect.origin]),
      ...(end ? [fieldRow(words.kind[end.record.kind], endText(end))] : []),
      fieldRow(words.paper.before, before.map((other) => `${numberOf(other)}, ${day(other.at_ms)}`).join("; ") || (defect.item ? "0" : "")),
      ...["again", "crew", "told"].map((name) => fieldRow(words.paper[name], "")),
      ...(photos.length ? [html`<div class="paper-photos">${photos.map(({ id }) => html`<canvas data-photo=${id}></canvas>`)}</div>`] : []),
    ].map((row) => wide(row))}</tbody>`,
    last: wide(signed([[words.paper.written, defect.by], [words.tag.officer, officer]], words)),
  });
}

// `entered`: what the release page has, and when where it is written; `proofNames`: of the proofs that passed; `standing`: the rig as it is after it.
export function releaseSheet({ words, rig, log, defects }, entered, { proofNames, standing }) {
  const isNothing = entered.opened.includes("nothing"); // calc.bay.release
  const stays = standing.defects.filter((defect) => limitsRig(defect) && !entered.defects.includes(defect.id));
  return sheetView({
    rig, title: words.release.title, when: entered.at_ms,
    body: html`<tbody>${[
      html`<b>${words.release.which}${colon}</b><ul>${defects.map((defect) => html`<li>${numberOf(defect)}${colon} ${whatOf(defect)}</li>`)}</ul>`,
      fieldRow(words.release.opened, entered.opened.map((id) => words.opened[id]).join(", ")),
      fieldRow(isNothing ? words.release.reason : words.release.done, entered.done),
      ...(isNothing ? [] : ["parts", "hours"].map((name) => fieldRow(words.release[name], entered[name]))),
      html`<b>${words.release.proofs}${colon}</b><ul class="paper-ticks">${proofNames.map(({ name, isOn }) => html`<li><i>${isOn ? "✓" : ""}</i>${name}</li>`)}</ul>`,
      stays.length ? html`<b>${words.release.stays}</b><ul>${stays.map((defect) => html`<li>${numberOf(defect)}${colon} ${whatOf(defect)}</li>`)}</ul>` : nothing,
      metersRow(words, lastMeters(log)),
    ].map((row) => wide(row))}</tbody>`,
    last: html`${wide(html`<ul class="paper-ticks">${words.release.then.map((line) => html`<li><i></i>${line}</li>`)}</ul>`)}
      ${wide(signed([[isNothing ? words.release.looked_by : words.release.repaired_by, entered.repaired_by], [words.release.by, entered.by]], words))}`,
  });
}

// The last reading of each meter in a log.
function lastMeters(log) {
  const read = log.of("meters").sort((one, other) => one.at_ms - other.at_ms);
  return Object.fromEntries(METERS.map((name) => [name, read.filter((record) => record[name] !== null).at(-1)?.[name] ?? null]));
}

const metersRow = (words, last) => html`<div class="paper-meters">${METERS.map((name) => fieldRow(words.meter[name], last[name] === null ? "" : String(last[name])))}</div>`;

// `rows` of the due board, `nameOf` their names, `when` what stands beside each.
export function dueSheet({ words, rig }, { rows, meters, nameOf, when, isFailed }) {
  const groups = ["overdue", "soon", "never", "later"].map((standing) => [standing, rows.filter((row) => row.standing === standing)]).filter(([, group]) => group.length);
  return sheetView({
    rig, title: words.due.title, columns: DUE_COLUMNS,
    heads: html`<tr class="paper-columns"><th></th><th>${words.due.title}</th><th>${words.paper.last}</th><th>${words.due.done_on}</th><th>${words.paper.by}</th></tr>`,
    body: groups.map(([standing, group]) => html`<tbody><tr class="paper-station"><th colspan=${DUE_COLUMNS} scope="colgroup">${words.due[`group_${standing}`]} (${group.length})</th></tr>${group.map((row) => html`
      <tr><th scope="row">${nameOf(row.id)}</th><td>${row.done_ms === null || isFailed(row) ? nothing : when(row)}</td><td>${isFailed(row) ? when(row) : row.done_ms === null ? words.due.never : day(row.done_ms)}</td><td class="paper-remark"></td><td></td></tr>`)}</tbody>`),
    last: wide(metersRow(words, meters), DUE_COLUMNS),
  });
}
