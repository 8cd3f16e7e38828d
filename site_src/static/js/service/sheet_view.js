// The sheet of a test, set to be printed, filed and signed: everything that was read, and what was not.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { colon, fill } from "../shared/site.js";
import { day, dayTime, minutes } from "../shared/times.js";
import { overrideText } from "./before_view.js";
import { curveView } from "./curve_view.js";
import { kindOf } from "./entries.js";
import { errorsText } from "./errors.js";
import { signsView } from "./plan_view.js";
import { ABOUT, NAMEPLATE, testOf } from "./record.js";
import { resultsView } from "./sheet_results.js";
import { carriedView, runsView } from "./sheet_runs.js";
import { linesView } from "./sign_view.js";
import { SITE } from "./site_fields.js";
import { photosView } from "./test_photos.js";
import { countsOf, isLeftOut, stateOf } from "./stage.js";
import { reasonOf, unproven, verdictView } from "./status.js";
import { absentIn, absentText } from "./without.js";

export function sheetView(view) {
  const { record, words, answer, u, curve } = view;
  const when = record.finished_ms ?? record.begun_ms;
  const states = Object.fromEntries(answer.plan.tests.map((test) => [test.id, stateOf(record, test, answer.verdict.tests.find(({ id }) => id === test.id))]));
  const { verdict } = answer;
  const site = html`<section class="site"><h3>${words.test.site}</h3><dl class="facts">${facts(view)}</dl>${instruments(view)}</section>`;
  // where nothing is out of the way, the site stands beside the chart
  const isClean = verdict.status === "pass" && !record.overrides?.length && !record.events.length && !record.notes && !verdict.signs.length;
  // a table for its head, which stands again on every page of paper
  return html`
    <table class="paper" role="presentation"><thead class="sheet-head"><tr><td><b>${record.rig_name}</b> <span>${words.sheet.title}, ${day(when)}</span></td></tr></thead>
    <tbody><tr><td>
      <h2>${record.rig_name}</h2>
      <p class="sheet-kind">${words.standard[record.standard.id]} · ${words.kind[record.standard.kind]} · ${fill(words.sheet.edition, { id: record.standard.edition ?? words.sheet.edition_before })} · ${fill(words.test.opened, { date: `${day(record.begun_ms)}, ${dayTime(record.begun_ms)}` })} ·
        <b>${record.finished_ms === null ? words.sheet.open : fill(words.test.closed, { date: `${day(record.finished_ms)}, ${dayTime(record.finished_ms)}` })}</b></p>
      ${standing(view, Object.values(states))}
      ${view.decision}
      ${runsView(view, states)}
      ${carriedView(view)}
      ${curve ? html`<section class="curve-block"><h3>${words.sheet.curve}</h3>${curveView({ curve, words, u })}</section>` : nothing}
      <section class="exceptions">
        ${isClean ? site : nothing}
        ${left(view, states)}
        ${absentIn(view).length ? html`<p>${absentText(view)}</p>` : nothing}
        ${record.rig.foam === "cafs" ? html`<p>${words.sheet.cafs}</p>` : nothing}
        ${signsView(view)}
        ${overrides(view)}
        ${events(view)}
        ${record.notes ? html`<h3>${words.condition.notes}</h3><p>${record.notes}</p>` : nothing}
        ${photosView(view)}
      </section>
      <div class="sheet-last">
      ${resultsView(view, states)}
      ${isClean ? nothing : site}
      <div class="sheet-end">
        <p class="whose">${errorsText(view)} ${words.sheet.whose}</p>
        ${linesView(view)}
      </div></div>
    </td></tr></tbody></table>`;
}

// The verdict of a finished test; of one that is not, how far it is.
function standing(view, states) {
  const { record, words, answer: { verdict } } = view;
  const counts = countsOf(states);
  if (record.finished_ms !== null) {
    const close = verdict.tests.filter((test) => test.is_close).map(({ id }) => words.test_name[id]);
    return html`<div class="overall">${verdictView(verdict.status, words)}
      <p>${fill(words.sheet.counts, counts)} ${unproven(view)}</p>
      ${verdict.status === "pass" && close.length ? html`<p>${close.join(", ")}${colon} ${words.code.close}</p>` : nothing}</div>`;
  }
  return html`<div class="overall"><b>${words.sheet.unfinished}</b>
    <p>${fill(words.sheet.so_far, counts)}</p></div>`;
}

function facts({ record, words, u, shown }) {
  const typed = { ...record.conditions, ...testOf(record, "conditions").values };
  const amount = (name) => `${shown(kindOf(name), typed[name])} ${u[`u_${kindOf(name)}`]}`;
  const told = [
    ...NAMEPLATE.map((name) => [words.field[name], record.rig[name] || words.sheet.not_noted]),
    ...ABOUT.map((name) => [words.field[name], record.conditions[name] || words.sheet.not_noted]),
    [words.field.pump_rated, record.rig.pump_rated ? `${shown("flow", record.rig.pump_rated)} ${u.u_flow}` : null],
    [words.condition.source, typed.source && words.condition[typed.source]],
    [words.condition.flow_by, typed.flow_by && words.condition[typed.flow_by]],
    ...SITE.map((name) => [words.field[name], typed[name] ? amount(name) : null]),
  ];
  return told.map(([name, value]) => html`<div><dt>${name}</dt><dd>${value ?? words.sheet.not_read}</dd></div>`);
}

const instruments = ({ record, words, standings }) => record.equipment.length === 0 ? html`<p><b>${words.sheet.no_equipment}</b></p>` : html`
  <p><b>${words.condition.equipment}${colon}</b> ${record.equipment.map((row, place) => html`${place ? "; " : nothing}${fill(words.sheet.instrument, {
    what: row.what || "—", serial: row.serial || "—", calibrated: row.calibrated || words.sheet.unknown, due: row.due || words.sheet.unknown })}${standings[place]?.standing === "overdue" ? html`, <b>${words.sheet.out_of_date}</b>` : nothing}`)}.</p>`;

// What is left out with its reason, what is not shown with what it wants, and what is still to do: three facts, each by name.
function left({ words, answer, missingWord }, states) {
  const tests = answer.verdict.tests.filter((test) => ["left", "open", "begun"].includes(states[test.id]));
  const todo = answer.verdict.tests.filter((test) => states[test.id] === "todo");
  return html`
    ${tests.length === 0 ? nothing : html`<h3>${words.sheet.left}</h3>
      <ul class="left">${tests.map((test) => html`<li><b>${words.test_name[test.id]}${colon}</b> ${isLeftOut(test) ? reasonOf(test, words)
        : [...new Set(test.missing.map(missingWord))].join(", ") || words.code[test.code]}</li>`)}</ul>`}
    ${todo.length === 0 ? nothing : html`<p><b>${words.sheet.todo}${colon}</b> ${todo.map(({ id }) => words.test_name[id]).join(", ")}.</p>`}`;
}

// Who had a run go on before every answer before water was yes.
const overrides = (view) => !view.record.overrides?.length ? nothing : html`
  <h3>${view.words.run.before_word}</h3>
  <ul>${view.record.overrides.map((override) => html`<li>${day(override.wall)}, ${overrideText(override, view)}</li>`)}</ul>`;

const events = ({ record, words }) => record.events.length === 0 ? nothing : html`
  <h3>${words.sheet.clocks}</h3>
  <ul>${record.events.map((event) => html`<li>${day(event.wall)}, ${dayTime(event.wall)}${colon} ${fill(words.steady[event.kind === "away" && event.counted_s === 0 ? "unseen" : event.kind], { s: `${event.s < 0 ? "−" : ""}${minutes(Math.abs(event.s))}` })}</li>`)}</ul>`;
