// The sheet of a test, set to be printed, filed and signed: everything that was read, and what was not.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../site.js";
import { day, dayTime, minutes } from "./clock.js";
import { curveView } from "./curve_view.js";
import { kindOf, labelOf } from "./entries.js";
import { testOf } from "./record.js";
import { signsView } from "./plan_view.js";
import { verdictView } from "./status.js";

const SITE = ["air_f", "water_f", "water_end_f", "barometer_inhg", "altitude_ft", "lift_ft", "depth_ft", "strainer_ft", "suction_size_in", "suction_length_ft", "suction_lines"];

export function sheetView(view) {
  const { record, words, answer, u, curve } = view;
  const { verdict, plan } = answer;
  return html`
    <article class="paper">
      <h2>${words.sheet.title}: ${record.rig_name}</h2>
      <p>${words.standard[record.standard.id]} · ${words.kind[record.standard.kind]} · ${fill(words.test.opened, { date: `${day(record.begun_ms)}, ${dayTime(record.begun_ms)}` })} ·
        ${record.finished_ms === null ? words.sheet.open : fill(words.test.closed, { date: `${day(record.finished_ms)}, ${dayTime(record.finished_ms)}` })}</p>
      <div class="overall">${verdictView(verdict.status, words)}
        <p>${fill(words.sheet.counts, verdict.counts)} ${verdict.status === "not_proven" ? words.sheet.not_proven_told : nothing}</p></div>
      <p>${words.sheet.whose}</p>
      <dl class="facts">${facts(view)}</dl>
      ${record.equipment.length ? html`<h3>${words.condition.equipment}</h3><div class="scroll" tabindex="0" role="region" aria-label=${words.condition.equipment}><table>
        <thead><tr>${["what", "serial", "calibrated"].map((name) => html`<th scope="col">${words.condition[name]}</th>`)}</tr></thead>
        <tbody>${record.equipment.map((row) => html`<tr><td>${row.what || "—"}</td><td>${row.serial || "—"}</td><td>${row.calibrated || words.sheet.unknown}</td></tr>`)}</tbody></table></div>`
        : html`<p><b>${words.sheet.no_equipment}</b></p>`}
      <h3>${words.sheet.results}</h3>
      <div class="scroll" tabindex="0" role="region" aria-label=${words.sheet.results}><table>
        <thead><tr><th scope="col">${words.sheet.part}</th><th scope="col">${words.sheet.result}</th><th scope="col">${words.test.decided}</th></tr></thead>
        <tbody>${verdict.tests.map((test) => html`<tr><th scope="row">${words.test_name[test.id]}</th><td>${verdictView(test.status, words)}</td><td>${deciding(view, test)}</td></tr>`)}</tbody>
      </table></div>
      ${left(view)}
      ${curve ? html`<div class="curve-block"><h3>${words.sheet.curve}</h3>${curveView({ curve, words, u })}</div>` : nothing}
      <h3>${words.sheet.readings}</h3>
      ${plan.tests.map((test) => readings(view, test, verdict.tests.find(({ id }) => id === test.id)))}
      ${signsView(view)}
      ${events(view)}
      ${record.notes ? html`<h3>${words.condition.notes}</h3><p>${record.notes}</p>` : nothing}
      <div class="signs-off">${["tester", "witness"].map((name) => html`<div><b>${words.condition[name]}:</b> ${record.people[name] || "—"}<p>${words.sheet.signature}</p></div>`)}</div>
    </article>`;
}

function facts({ record, words, u, shown }) {
  const typed = { ...record.conditions, ...testOf(record, "conditions").values };
  const amount = (name) => `${shown(kindOf(name), typed[name])} ${u[`u_${kindOf(name)}`]}`;
  const told = [
    [words.field.pump_rated, record.rig.pump_rated ? `${shown("flow", record.rig.pump_rated)} ${u.u_flow}` : null],
    [words.condition.source, typed.source && words.condition[typed.source]],
    [words.condition.flow_by, typed.flow_by && words.condition[typed.flow_by]],
    ...SITE.map((name) => [words.field[name], typed[name] ? amount(name) : null]),
  ];
  return told.map(([name, value]) => html`<div><dt>${name}</dt><dd>${value ?? words.sheet.not_read}</dd></div>`);
}

const limitText = (figure) => [figure.least_text !== null && `≥ ${figure.least_text}`, figure.most_text !== null && `≤ ${figure.most_text}`].filter(Boolean).join(", ");

function deciding({ words, u, ...view }, test) {
  const figure = test.decided;
  if (test.not_done) return fill(words.test.not_done_kept, { reason: test.not_done });
  if (!figure || test.status === "not_proven") return words.code[test.code];
  if (figure.kind === "check") return `${words.check[figure.id]}: ${words.condition[figure.value]}`;
  return html`${labelOf(figure.id, { words, ...view })} ${figure.value_text}${figure.band_text ? ` ±${figure.band_text}` : ""} ${u[`u_${figure.kind}`]} (${limitText(figure)})${figure.is_close ? html`<br>${words.code.close}` : nothing}
    ${test.cautions.map((caution) => html`<br>${fill(words.caution[caution.code], { value: caution.value_text, limit: caution.limit_text })}`)}`;
}

// What was not done, or not proven, by name: never left for the reader to notice.
function left({ words, answer, missingWord }) {
  const tests = answer.verdict.tests.filter((test) => test.status === "not_proven");
  return tests.length === 0 ? nothing : html`
    <h3>${words.sheet.left}</h3>
    <ul>${tests.map((test) => html`<li><b>${words.test_name[test.id]}:</b> ${test.not_done ? fill(words.test.not_done_kept, { reason: test.not_done })
      : [...new Set(test.missing.map(missingWord))].slice(0, 8).join(", ") || words.code[test.code]}</li>`)}</ul>`;
}

function readings(view, test, judged) {
  return test.kind === "run" ? runTable(view, test, judged) : figureTable(view, test, judged);
}

function figureTable(view, test, judged) {
  const { words, record, shown, u } = view;
  const values = testOf(record, test.id).values ?? {};
  if (test.kind === "conditions" || Object.values(values).every((value) => !value)) return nothing;
  const clock_s = testOf(record, test.id).clock_s;
  return html`<div class="scroll" tabindex="0" role="region" aria-label=${words.test_name[test.id]}><table>
    <caption>${words.test_name[test.id]} ${verdictView(judged.status, words)}${test.hold_s !== null && clock_s !== undefined ? ` · ${minutes(clock_s)} ${fill(words.run.of, { hold: minutes(test.hold_s) })}` : nothing}</caption>
    <tbody>${test.fields.map((field) => html`<tr><th scope="row">${labelOf(field.id, view)}</th><td class="num">${
      field.kind === "check" ? words.condition[values[field.id]] ?? words.sheet.not_read : values[field.id] ? `${shown(kindOf(field.id), values[field.id])} ${u[`u_${kindOf(field.id)}`]}` : words.sheet.not_read}</td></tr>`)}
    ${judged.figures.filter((figure) => figure.kind !== "check" && figure.value !== null).map((figure) => html`<tr><th scope="row">${words.sheet.judged}: ${labelOf(figure.id, view)}</th>
      <td class="num">${figure.value_text}${figure.band_text ? ` ±${figure.band_text}` : ""} ${u[`u_${figure.kind}`]} (${limitText(figure)}): ${words.figure_status[figure.status]}</td></tr>`)}</tbody></table></div>`;
}

function runTable(view, test, judged) {
  const { words, record, shown, u } = view;
  const attempts = testOf(record, test.id).attempts ?? [];
  const columns = test.fields.filter((field) => field.needed || attempts.some((attempt) => attempt.sets.some((set) => set.values[field.id])));
  const cell = (field, value) => (Array.isArray(value) ? value.map((each) => shown("pitot", each) || "—").join(" / ") : shown(kindOf(field), value ?? "") || "—");
  return attempts.map((attempt, count) => html`<div class="scroll" tabindex="0" role="region" aria-label=${words.test_name[test.id]}><table>
    <caption>${words.test_name[test.id]}, ${fill(words.run.point, { ...u, flow: test.flow_text, net: test.net_text })}. ${fill(words.run.attempt, { count: count + 1 })} ${verdictView(judged.attempts[count].status, words)}
      · ${minutes(attempt.clock_s)}${test.hold_s === null ? nothing : ` ${fill(words.run.of, { hold: minutes(test.hold_s) })}`}</caption>
    <thead><tr><th scope="col">${words.sheet.clock}</th><th scope="col">${words.run.at}</th>${columns.map((field) => html`<th scope="col">${labelOf(field.id, view)}, ${u[`u_${kindOf(field.id)}`]}</th>`)}
      <th scope="col">${words.run.flow}, ${u.u_flow}</th><th scope="col">${words.run.net}, ${u.u_pressure}</th><th scope="col">${words.sheet.result}</th></tr></thead>
    <tbody>${attempt.sets.map((set, place) => {
      const [flow, net] = judged.attempts[count].sets[place].figures;
      return html`<tr><td>${dayTime(set.at_ms)}</td><td class="num">${minutes(set.at_s)}</td>${columns.map((field) => html`<td class="num">${cell(field.id, set.values[field.id])}</td>`)}
        <td class="num">${flow.value_text ?? "—"}${flow.band_text ? ` ±${flow.band_text}` : ""}</td><td class="num">${net.value_text ?? "—"}${net.band_text ? ` ±${net.band_text}` : ""}</td>
        <td>${words.figure_status[judged.attempts[count].sets[place].status]}</td></tr>`;
    })}</tbody></table></div>
    <ul>${(attempt.clock.events ?? []).filter((event) => event.kind !== "start").map((event) => html`<li>${minutes(event.at_s)} (${dayTime(event.wall)}): ${words.event[event.kind]}${event.reason ? `: ${event.reason}` : nothing}</li>`)}
      ${(attempt.taken_back ?? []).map((set) => html`<li>${minutes(set.at_s)} (${dayTime(set.at_ms)}): ${words.run.taken_back}: ${columns.map((field) => `${labelOf(field.id, view)} ${cell(field.id, set.values[field.id])}`).join(", ")}</li>`)}</ul>`);
}

const events = ({ record, words }) => record.events.length === 0 ? nothing : html`
  <h3>${words.sheet.clocks}</h3>
  <ul>${record.events.map((event) => html`<li>${day(event.wall)}, ${dayTime(event.wall)}: ${fill(words.steady[event.kind === "away" && event.counted_s === 0 ? "unseen" : event.kind], { s: `${event.s < 0 ? "−" : ""}${minutes(Math.abs(event.s))}` })}</li>`)}</ul>`;
