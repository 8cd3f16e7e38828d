// The steps of the check after a repair: the one to do now, and all of them as a line.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { termed } from "../help/touched.js";
import { colon, fill, home } from "../shared/site.js";
import { dayTime } from "../shared/times.js";
import { route, routeList } from "../line/route.js";
import { tagged } from "../shared/units.js";
import { kindOf } from "./entries.js";
import { isOpenAt, STEPS } from "./quick_record.js";

// The line of the check: where it stands, and what is to do now; the signs to see on the plate.
export function hereView(view, step) {
  const { words, isLooked } = view;
  const text = words.quick_step[step];
  const name = fill(words.quick.place, { number: STEPS.indexOf(step) + 1, most: STEPS.length });
  return html`
    <div class="quick-line">${route({ stations: STEPS.map((each) => ({ state: stateOf(view.record, each) })), name, label: name })}</div>
    <section class="quick-open"><h2>${text.title}</h2>
      <p class="quick-act">${termed(text.act)}</p>
      ${cardLink(view, step)}
      <fieldset class="bare" ?disabled=${!isLooked}>${step === "raise" ? raising(view) : nothing}</fieldset>
      <div class="plate quick-see"><b>${words.quick.you_see}</b><p>${termed(text.see)}</p></div>
    </section>`;
}

export const answersView = ({ words, act, isLooked }, step) => html`
  <div class="dock quick-answers"><button type="button" class="key key-danger" ?disabled=${!isLooked} @click=${() => act.halt(step)}>${words.quick.not_seen}</button>
    <button type="button" class="key key-act" ?disabled=${!isLooked} @click=${() => act.see(step)}>${words.quick.seen}</button></div>`;

// All steps down the page: what was seen and when, and what is still to come.
export const stepsView = (view) => routeList(STEPS.map((step) => ({ state: stateOf(view.record, step), content: rowView(view, step) })));

const stateOf = (record, step) => (record.open.seen[step] !== undefined ? "proven" : isOpenAt(record, step) ? "here" : "todo");

function rowView(view, step) {
  const { words, record, act } = view;
  const { title } = words.quick_step[step];
  const seen = record.open.seen[step];
  if (seen === undefined) return html`<p class="quick-row"><b>${title}</b></p>`;
  return html`<div class="quick-row"><p><b>${title}</b> ${fill(words.quick.done_at, { time: dayTime(seen) })}</p>
    <button type="button" class="key" aria-label=${`${words.quick.undo}${colon} ${title}`} @click=${() => act.unsee(step)}>${words.quick.undo}</button>
    ${step === "raise" ? raised(view) : nothing}</div>`;
}

const cardLink = ({ words, data }, step) => {
  const card = data.quick.cards[step];
  return card ? html`<p><a class="key key-wide" href=${new URL(`shift/${card}/`, home).href}>${fill(words.quick.to_card, words.card[card])}</a></p>` : nothing;
};

function raising(view) {
  const { words, record, data, u, answer, shown } = view;
  return record.open.readings.map((reading, place) => html`
    <fieldset class="quick-reading"><legend>${fill(words.quick.raise_to, { at: shown("pressure", `${data.quick.step_psi[place]}@US`), ...u })}</legend>
      <div class="cells">
        ${cellView(view, { id: `engine-${place}`, place, field: "engine_rpm", label: words.quick.speed, text: reading.engine_rpm })}
        ${cellView(view, { id: `pressure-${place}`, place, field: "discharge_psi", label: words.quick.pressure, text: reading.discharge_psi })}
      </div>
      ${answer.steps[place].doubt ? html`<p class="doubt" role="status"><b>${words.doubt[answer.steps[place].doubt]}</b></p>` : nothing}
      ${compared(answer.steps[place], view)}
    </fieldset>`);
}

function cellView({ u, act, shown, system, refusal }, { id, place, field, label, text }) {
  const kind = kindOf(field);
  const refused = refusal([`${place}.${field}`], id);
  return html`
    <div class="cell" ?data-refused=${refused !== null}><label for=${id}>${label}</label>
      <span class="cell-figure"><input id=${id} name=${field} inputmode="decimal" autocomplete="off" .value=${shown(kind, text)} placeholder="–"
        aria-invalid=${refused ? "true" : "false"} aria-describedby=${refused ? `${id}-unit ${id}-refused` : `${id}-unit`}
        @input=${({ target }) => act.reading(place, field, target.value.trim() ? tagged(target.value, system) : "")}>
        <span class="cell-side"><span id="${id}-unit" aria-hidden="true">${u[`u_${kind}`]}</span></span></span>
      ${refused ? html`<p class="refusal" id="${id}-refused" role="alert">${refused}</p>` : nothing}
    </div>`;
}

function compared(step, { words, u }) {
  if (step.expected_text === null) return step.engine_rpm === null ? nothing : html`<p>${words.quick.no_expected}</p>`;
  return html`<p>${fill(words.quick.expected, { expected: step.expected_text, ...u })}${step.band_text ? ` ± ${step.band_text}` : nothing}</p>
    ${step.status === "not_proven" ? nothing : html`<p class="quick-status quick-${step.status}"><b>${words.quick_status[step.status]}</b>
      ${step.percent === null ? nothing : html`${step.percent_text === "0" ? "" : step.percent < 0 ? "−" : "+"}${step.percent_text} %`}</p>
      ${step.is_close ? html`<p>${words.code.close}</p>` : nothing}`}`;
}

const raised = ({ words, record, u, shown, answer }) => html`<ul class="listed">${record.open.readings.map((reading, place) => !reading.engine_rpm && !reading.discharge_psi ? nothing : html`
  <li>${rowText({ reading, words, u, shown })} · ${words.quick_status[answer.steps[place].status]}</li>`)}</ul>`;

export const rowText = ({ reading, words, u, shown }) =>
  fill(words.quick.row, { speed: shown("speed", reading.engine_rpm) || "—", pressure: shown("pressure", reading.discharge_psi) || "—", ...u });
