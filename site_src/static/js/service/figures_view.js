// A test of figures and checks: each asked for, judged as it is typed.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { clockView } from "./clock.js";
import { amountView, checkView, kindOf, labelOf, last } from "./entries.js";
import { clockOf, countedS, testOf } from "./record.js";
import { labelWithin, statesOf, statesView } from "./states.js";
import { figureMark, figureView, limitText } from "./status.js";

export function figuresView(view, test, judged) {
  const { words, record, act, besideOf } = view;
  const values = test.kind === "conditions" ? { ...record.conditions, ...testOf(record, test.id).values } : testOf(record, test.id).values ?? {};
  const change = (field) => (text) => test.kind === "conditions" && field !== "water_end_f" ? act.condition(field, text) : act.value(test.id, field, text);
  const figureOf = (field) => judged.figures.filter((figure) => figure.kind !== "check" && figure.value !== null && (figure.id === field || ofPair(test, figure.id, field)));
  const isAsked = askedHere(view, test, values);
  const isInStates = statesOf(view, test).length > 0;
  const label = (name) => (isInStates ? labelWithin(name, view) : labelOf(name, view));
  const clock = clockOf(record, test.id);
  const isLater = ({ id }) => test.hold_s !== null && !test.start.includes(id) && !values[id] && countedS(clock, view.now) < test.hold_s;
  const fieldView = (field) => isLater(field) ? html`<p class="site-row" id=${field.id.replaceAll(".", "-")}><span>${label(field.id)} <small>${words.run.at_end}</small></span></p>` : field.kind === "check"
    ? checkView(view, { id: field.id, label: label(field.id), value: values[field.id] ?? null, change: change(field.id) })
    : !isAsked(field.id) ? siteRow(view, field.id, values[field.id], judged) : html`${amountView(view, {
        id: field.id.replaceAll(".", "-"), name: field.id, label: label(field.id), text: values[field.id] ?? "",
        start: startOf(judged, field), kind: kindOf(field.id), aim: aimOf(judged, field),
        at: [`tests.${test.id}.${field.id}`, `conditions.${field.id}`],
        change: change(field.id), beside: besideOf(view, test.id, field.id) })}
      ${figureOf(field.id).map((figure) => figureView(figure, figure.id === field.id ? null : isInStates ? words.field[last(figure.id)] : labelOf(figure.id, view), view.u[`u_${figure.kind}`], words))}`;
  return html`
    ${test.hold_s === null ? nothing : clockView({ clock, hold_s: test.hold_s, now: view.now, words })}
    ${isInStates ? statesView(view, test, judged, fieldView) : test.fields.map(fieldView)}`;
}

// What was entered under Site is not asked again here: which fields are is settled as the part is opened, and stays so while it is typed.
function askedHere({ page }, test, values) {
  if (test.kind !== "conditions") return () => true;
  page.unasked ??= test.fields.filter(({ id }) => id !== "water_end_f" && values[id]).map(({ id }) => id);
  return (id) => !page.unasked.includes(id);
}

// An amount of the site with its limit: a tap leads to where it is entered.
function siteRow(view, name, text, judged) {
  const { words, record, shown, u } = view;
  const figure = judged.figures.find(({ id }) => id === name);
  const kind = kindOf(name);
  return html`<a class="site-row" href="#${record.id}/site/${name}"><span>${labelOf(name, view)} ${figure && limitText(figure) ? html`<small>${limitText(figure)} · ${words.figure_status[figure.status]}</small>` : nothing}</span>
    <b>${shown(kind, text)}</b> <small>${u[`u_${kind}`]}</small>${figure ? figureMark(figure) : nothing}</a>`;
}

// A figure worked from two readings is shown under the second of them.
const ofPair = (test, figure, field) => test.limits.some((limit) => limit.id === figure && limit.of.length === 2 && limit.of[1] === field);

// The limit a reading is held to, beside its name.
function aimOf(judged, field) {
  const figure = judged.figures.find(({ id }) => id === field.id);
  return figure && limitText(figure) ? html`<b>${limitText(figure)}</b>` : null;
}

function startOf(judged, field) {
  const figure = judged.figures.find(({ id }) => id === field.id);
  const limit = figure?.least ?? figure?.most;
  return limit == null ? "" : `${Math.round(limit)}@US`;
}

// The keys of a part that is held, for its dock: what the clock waits for, and the key that starts or pauses it. `isHeld`: its time is over.
export function holding(view, test) {
  const { words, record, now, act, answer, page } = view;
  const waits = answer.waits[test.id];
  const clock = clockOf(record, test.id);
  const isRunning = clock?.since != null;
  const isHeld = clock !== null && countedS(clock, now) >= test.hold_s;
  const told = waits.length && !isRunning ? html`<p class="doing-told">${waits[0].code === "blank" ? words.run.waits : words.run.waits_limit} <a href="#${record.id}/${test.id}/${waits[0].id}">${labelOf(waits[0].id, view)}</a></p>` : nothing;
  const begin = (more) => html`<button type="button" class="key ${more}" ?disabled=${waits.length > 0} @click=${() => act.begin(test.id)}>${clock ? words.run.begin_again : words.run.begin}</button>`;
  const keys = isRunning ? html`<button type="button" class="key" @click=${() => act.halt("pause", "", test.id)}>${words.run.pause}</button>`
    : page.asking === "again" ? html`${begin("key-danger")}<button type="button" class="key key-act" @click=${() => act.ask(null)}>${words.test.remove_no}</button>`
      : isHeld ? html`<button type="button" class="key" @click=${() => act.ask("again")}>${words.run.begin_again}</button>`
        : begin("key-act");
  return { isHeld, isAsking: page.asking === "again", told: page.asking === "again" ? html`<p class="doing-told">${words.run.again_ask}</p>` : told, keys };
}
