// A test of figures and checks: each asked for, judged as it is typed.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../shared/site.js";
import { clockView, minutes } from "./clock.js";
import { amountView, checkView, kindOf, labelOf } from "./entries.js";
import { clockOf, countedS, testOf } from "./record.js";
import { figureView } from "./status.js";

export function figuresView(view, test, judged) {
  const { words, record, act, besideOf } = view;
  const values = test.kind === "conditions" ? { ...record.conditions, ...testOf(record, test.id).values } : testOf(record, test.id).values ?? {};
  const change = (field) => (text) => test.kind === "conditions" && field !== "water_end_f" ? act.condition(field, text) : act.value(test.id, field, text);
  const figureOf = (field) => judged.figures.filter((figure) => figure.kind !== "check" && (figure.id === field || ofPair(test, figure.id, field)));
  return html`
    ${test.hold_s === null ? nothing : holding(view, test)}
    ${test.fields.map((field) => field.kind === "check"
      ? checkView(view, { id: field.id, label: labelOf(field.id, view), value: values[field.id] ?? null, change: change(field.id) })
      : html`${amountView(view, {
          id: field.id.replaceAll(".", "-"), name: field.id, label: labelOf(field.id, view), text: values[field.id] ?? "",
          start: startOf(judged, field), kind: kindOf(field.id),
          at: [`tests.${test.id}.${field.id}`, `conditions.${field.id}`],
          change: change(field.id), beside: besideOf(view, test.id, field.id) })}
        ${figureOf(field.id).map((figure) => figureView(figure, labelOf(figure.id, view), view.u[`u_${figure.kind}`], words))}`)}`;
}

// A figure worked from two readings is shown under the second of them.
const ofPair = (test, figure, field) => test.limits.some((limit) => limit.id === figure && limit.of.length === 2 && limit.of[1] === field);

function startOf(judged, field) {
  const figure = judged.figures.find(({ id }) => id === field.id);
  const limit = figure?.least ?? figure?.most;
  return limit == null ? "" : `${Math.round(limit)}@US`;
}

function holding(view, test) {
  const { words, record, now, act, answer, page } = view;
  const waits = answer.waits[test.id];
  const clock = clockOf(record, test.id);
  const isRunning = clock?.since != null;
  return html`
    <p>${fill(words.run.hold, { hold: minutes(test.hold_s) })}</p>
    ${clockView({ clock, hold_s: test.hold_s, now, words })}
    ${record.finished_ms !== null ? nothing : html`<div class="rows">
      ${isRunning
        ? html`<button type="button" class="key key-wide" @click=${() => act.halt("pause", "", test.id)}>${words.run.pause}</button>`
        : clock && countedS(clock, now) >= test.hold_s && page.asking !== "again"
          ? html`<button type="button" class="key key-wide" @click=${() => act.ask("again")}>${words.run.begin_again}</button>` : html`
          ${page.asking === "again" ? html`<p class="notice">${words.run.again_ask}</p>
            <button type="button" class="key key-wide key-act" @click=${() => act.ask(null)}>${words.test.remove_no}</button>` : nothing}
          <button type="button" class="key key-wide ${page.asking === "again" ? "key-danger" : "key-act"}" ?disabled=${waits.length > 0} @click=${() => act.begin(test.id)}>${clock ? words.run.begin_again : words.run.begin}</button>`}
      ${waits.length && !isRunning ? html`<p>${waits[0].code === "blank" ? words.run.waits : words.run.waits_limit} <a href="#${record.id}/${test.id}/${waits[0].id}">${labelOf(waits[0].id, view)}</a></p>` : nothing}
    </div>`}`;
}
