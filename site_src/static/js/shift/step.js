// One step of a card on the screen: what to do, what to see, why, and the answers under the thumbs.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { orderLine } from "../shared/order.js";
import { fill } from "../shared/site.js";
import { shape, warning } from "../shared/warning.js";
import { signOf } from "./known.js";

const LONG = 3; // more answers than this leave no room for the sign above them

export function stepView({ offer, steps, orders, rig, isSecond, words, send, path }) {
  const step = steps[offer.step];
  const missing = offer.missing.map((fact) => words.guard[fact] ?? words.guard.other).join(", ");
  return html`
    <section class="step">
      <div class="step-head">
        <span class="place">${words.place[step.place]}</span>
        <span class="step-count">${counted(offer, words)}${isSecond ? `, ${words.shift.step_second}` : nothing}</span>
      </div>
      <div class="step-body">
        <h2 class="step-act" aria-describedby="beside">${step.act}</h2>
        ${isTimed(offer) ? pause(offer, step, words) : nothing}
        <div id="beside">
          <p class="step-see"><b>${words.shift.see}</b>${signOf(step, rig)}</p>
          ${step.caution ? warning("caution", words.shift.caution, step.caution) : nothing}
          ${(step.warns ?? []).map((name) => orderLine(orders[name], words))}
          ${offer.again ? html`<p class="notice">${fill(words.shift.again, { missing })}</p>` : nothing}
        </div>
        <p class="step-why"><b>${words.shift.why}</b>${step.why}</p>
        ${path}
      </div>
      ${answers(offer, step, words, send)}
    </section>
    ${offer.can_go_back
      ? html`<button type="button" class="key" @click=${() => send({ kind: "back" })}>${words.shift.back}</button>`
      : nothing}`;
}

const counted = (offer, { shift }) => offer.again ? shift.step_again : fill(offer.of ? shift.step_of : shift.step_about, offer);

const isTimed = ({ kind }) => kind === "hold" || kind === "limit";

// A screen reader hears that a time begins and that it is over, and not each second of it.
function pause({ holding, hold_left_s }, step, words) {
  const left = Math.ceil(hold_left_s);
  return html`
    <div class=${holding ? "pause" : nothing}>
      <p role="status">${!holding ? nothing : left > 0 ? step.holding : html`<b>${step.over}</b>`}</p>
      ${holding && left > 0 ? html`<span class="pause-left" role="timer">${fill(words.shift.hold_left, { left })}</span>` : nothing}
    </div>`;
}

function answers(offer, step, words, send) {
  const seen = (answer) => send({ kind: "seen", step: offer.step, ...(answer && { answer }) });
  const notSeen = html`
    <button type="button" class="key" @click=${() => send({ kind: "not_seen", step: offer.step })}>${words.shift.not_seen}</button>`;
  const danger = html`
    ${offer.reports.map((hazard) => html`
      <button type="button" class="key key-danger key-report" @click=${() => send({ kind: "report", step: offer.step, hazard })}>${shape("hold")}${words.shift[hazard]}</button>`)}
    <button type="button" class="key key-danger" @click=${() => send({ kind: "danger" })}>${shape("stop")}${words.shift.danger}</button>`;
  if (offer.kind === "ask") {
    return html`
      <div class="answers answers-stacked ${offer.answers.length > LONG ? "answers-long" : ""}">
        ${offer.answers.map((answer) => html`
          <button type="button" class="key key-seen" @click=${() => seen(answer)}>${step.answer[answer]}</button>`)}
        ${notSeen}${danger}
      </div>`;
  }
  const isShut = offer.kind === "hold" && offer.hold_left_s > 0;
  return html`
    <div class="answers">
      ${notSeen}
      ${isTimed(offer) && !offer.holding
        ? html`<button type="button" class="key key-seen" @click=${() => send({ kind: "hold", step: offer.step })}>${step.hold}</button>`
        : html`<button type="button" class="key key-seen" ?disabled=${isShut} @click=${() => seen()}>${words.shift.seen}</button>`}
      ${danger}
    </div>`;
}
