// One step of the check after a repair: done, open, or waiting for the one before.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { colon, fill, home } from "../shared/site.js";
import { dayTime } from "../shared/times.js";
import { amountView } from "./entries.js";
import { isOpenAt, STEPS } from "./quick_record.js";

export function stepView(view, step) {
  const { words, record, act, isLooked } = view;
  const told = words.quick_step[step];
  const number = STEPS.indexOf(step) + 1;
  const seen = record.open.seen[step];
  if (seen !== undefined) {
    return html`<section class="quick-step quick-done"><div><h2>${number}. ${told.title}</h2>
      <p>✓ ${fill(words.quick.done_at, { time: dayTime(seen) })}</p>
      ${step === "raise" ? raised(view) : nothing}</div>
      <button type="button" class="key" aria-label=${`${words.quick.undo}${colon} ${told.title}`} @click=${() => act.unsee(step)}>${words.quick.undo}</button></section>`;
  }
  if (!isOpenAt(record, step)) return html`<section class="quick-step quick-waits"><h2>${number}. ${told.title}</h2><p>${words.quick.waits}</p></section>`;
  return html`
    <section class="quick-step quick-open"><h2>${number}. ${told.title}</h2>
      <p class="quick-act">${told.act}</p>
      ${cardLink(view, step)}
      <fieldset class="bare" ?disabled=${!isLooked}>
        ${step === "raise" ? raising(view) : nothing}
        <p class="quick-see">${told.see}</p>
        <div class="quick-answers"><button type="button" class="key key-act" @click=${() => act.see(step)}>${words.quick.seen}</button>
          <button type="button" class="key key-danger" @click=${() => act.halt(step)}>${words.quick.not_seen}</button></div>
      </fieldset>
    </section>`;
}

const cardLink = ({ words, data }, step) => {
  const card = data.quick.cards[step];
  return card ? html`<p><a class="key key-wide" href=${new URL(`shift/${card}/`, home).href}>${fill(words.quick.to_card, words.card[card])}</a></p>` : nothing;
};

function raising(view) {
  const { words, record, data, u, act, answer, shown } = view;
  return record.open.readings.map((reading, place) => {
    const at = `${data.quick.step_psi[place]}@US`;
    const told = answer.steps[place];
    return html`
      <fieldset class="bed"><legend>${fill(words.quick.raise_to, { at: shown("pressure", at), ...u })}</legend>
        ${amountView(view, { id: `engine-${place}`, name: "engine_rpm", label: words.quick.speed, text: reading.engine_rpm, start: record.baseline?.readings[place]?.engine_rpm ?? "1000",
          at: [`${place}.engine_rpm`], change: (text) => act.reading(place, "engine_rpm", text) })}
        ${amountView(view, { id: `pressure-${place}`, name: "discharge_psi", label: words.quick.pressure, text: reading.discharge_psi, start: at,
          at: [`${place}.discharge_psi`], change: (text) => act.reading(place, "discharge_psi", text) })}
        ${compared(told, view)}
      </fieldset>`;
  });
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
