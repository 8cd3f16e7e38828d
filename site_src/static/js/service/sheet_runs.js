// The sheet's pumping runs: every reading with its time, in one table, and what happened to the clock of each attempt.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { colon, fill } from "../shared/site.js";
import { dayTime, minutes } from "../shared/times.js";
import { kindOf, labelOf } from "./entries.js";
import { testOf } from "./record.js";
import { unfold } from "./sheet_results.js";
import { nameOf } from "./stage.js";
import { offText, verdictView } from "./status.js";
import { tipName } from "./tips.js";

export function runsView(view, states) {
  const { words, answer, record, u } = view;
  const runs = answer.plan.tests.filter((test) => test.kind === "run" && testOf(record, test.id).attempts?.length);
  if (!runs.length) return nothing;
  const sets = runs.flatMap(({ id }) => testOf(record, id).attempts.flatMap((attempt) => [...attempt.sets, ...(attempt.taken_back ?? [])]));
  const fields = runs[0].fields.filter((field) => field.needed || sets.some(({ values }) => values[field.id]));
  return html`
    <table class="runs">
      <caption>${words.sheet.runs}</caption>
      <thead><tr><th scope="col">${words.sheet.clock}</th><th scope="col">${words.run.at}</th>${fields.map((field) => html`<th scope="col">${labelOf(field.id, view)}, ${u[`u_${kindOf(field.id)}`]}</th>`)}
        <th scope="col">${words.run.flow}, ${u.u_flow}</th><th scope="col">${words.run.net}, ${u.u_pressure}</th><th scope="col">${words.sheet.result}</th></tr></thead>
      ${runs.map((test) => {
        const judged = answer.verdict.tests.find(({ id }) => id === test.id);
        return testOf(record, test.id).attempts.map((attempt, count) => attemptRows(view, { test, attempt, count, judged: judged.attempts[count], fields, isOpen: states[test.id] === "now" && count === judged.attempts.length - 1 }));
      })}</table>`;
}

function attemptRows(view, { test, attempt, count, judged, fields, isOpen }) {
  const { words, u, record } = view;
  const events = happened(view, attempt, fields);
  return html`
    <tbody>
      <tr class="run-head"><th scope="rowgroup" colspan=${fields.length + 5}><button type="button" class="no-print run-open" aria-expanded="false" @click=${unfold}>${words.sheet.readings}</button><b>${words.test_name[test.id]}</b>, ${fill(words.run.point, { ...u, flow: test.flow_text, net: test.net_text })}.
        ${fill(words.run.attempt, { count: count + 1 })}${colon} ${isOpen ? words.stage[nameOf(record, test, "now")] : verdictView(judged.status, words)}${!isOpen && judged.status === "not_proven" ? ` (${words.code[judged.code]})` : nothing} ·
        ${minutes(attempt.clock_s)}${test.hold_s === null ? nothing : ` ${fill(words.run.of, { hold: minutes(test.hold_s) })}`}${tipText(view, attempt)}</th></tr>
      ${attempt.sets.map((set, place) => {
        const [flow, net] = judged.sets[place].figures;
        return html`<tr><td data-label=${words.sheet.clock}>${dayTime(set.at_ms)}</td><td class="num" data-label=${words.run.at}>${minutes(set.at_s)}${offText(judged.sets[place], words)}</td>${fields.map((field) => html`<td class="num" data-label="${words.cell[field.id] ?? words.field[field.id]}, ${u[`u_${kindOf(field.id)}`]}">${cell(view, field.id, set.values[field.id], set.as_before)}${field.id === "pitot_psi" ? ownTip(view, attempt, set) : ""}</td>`)}
          <td class="num" data-label="${words.run.flow}, ${u.u_flow}">${banded(flow)}</td><td class="num" data-label="${words.run.net_short}, ${u.u_pressure}">${banded(net)}</td><td data-label=${words.sheet.result}>${words.figure_status[judged.sets[place].is_by_mean ? "by_mean" : judged.sets[place].status]}</td></tr>`;
      })}
      ${events.length ? html`<tr><td colspan=${fields.length + 5}>${events.join("; ")}.</td></tr>` : nothing}
    </tbody>`;
}

const banded = (figure) => (figure.value_text === null ? "—" : `${figure.value_text}${figure.band_text ? ` ±${figure.band_text}` : ""}`);

// A figure with "=" stands as before: carried from the reading above it.
const cell = ({ shown }, field, value, carried = []) =>
  [value ?? ""].flat().map((each, place) => `${carried.includes(field) || carried.includes(`${field}.${place}`) ? "= " : ""}${shown(kindOf(field), each) || "—"}`).join(" / ");

// How many of the readings the runs need were kept as before, of all; nothing where each was read.
export function carriedView({ words, record, answer }) {
  const sets = answer.plan.tests.filter(({ kind }) => kind === "run").flatMap(({ id, fields }) => (testOf(record, id).attempts ?? [])
    .flatMap((attempt) => attempt.sets.map((set) => ({ set, read: fields.filter(({ needed }) => needed).flatMap((field) => set.values[field.id] ?? []) }))));
  const count = sets.reduce((sum, { set }) => sum + (set.as_before?.length ?? 0), 0);
  return count ? html`<p>${fill(words.sheet.carried, { count, of: sets.reduce((sum, { read }) => sum + read.length, 0) })}</p>` : nothing;
}

const tipText = (view, { tip }) => (tip ? ` · ${tip.count} × ${tipName(tip.tip_in, view)}` : "");

// The tips of a reading that was taken through others than its attempt began with.
const ownTip = (view, { tip }, set) => (!set.tip || set.tip.tip_in === tip?.tip_in && set.tip.count === tip.count ? "" : ` (${set.tip.count} × ${tipName(set.tip.tip_in, view)})`);

// Pauses, stops, and readings taken back, with their time and reason.
function happened(view, attempt, fields) {
  const { words } = view;
  const told = [
    ...attempt.clock.events.filter(({ kind }) => kind !== "start").map((event) => [event.wall,
      `${dayTime(event.wall)}, ${words.run.at.toLowerCase()} ${minutes(event.at_s)}${colon} ${words.event[event.kind]}${event.reason ? `, ${event.reason}` : ""}`]),
    ...(attempt.taken_back ?? []).map((set) => [set.at_ms,
      `${dayTime(set.at_ms)}${colon} ${words.run.taken_back}${colon} ${fields.map((field) => `${labelOf(field.id, view)} ${cell(view, field.id, set.values[field.id])}`).join(", ")}`]),
  ];
  return told.sort(([one], [other]) => one - other).map(([, text]) => text);
}
