// One step of a card on the screen: what to do, what to see, why, and the answers under the thumbs.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../site.js";
import { shape, warning } from "../warning.js";
import { signOf } from "./known.js";

const LONG = 3; // more answers than this leave no room for the sign above them

export function stepView({ offer, steps, rig, isSecond, words, send, path }) {
  const step = steps[offer.step];
  const missing = offer.missing.map((fact) => words.guard[fact] ?? words.guard.other).join(", ");
  return html`
    <section class="step" aria-live="polite">
      <div class="step-head">
        <span class="place">${words.place[step.place]}</span>
        <span class="step-count">${counted(offer, words)}${isSecond ? `, ${words.shift.step_second}` : nothing}</span>
      </div>
      <div class="step-body">
        <h2 class="step-act">${step.act}</h2>
        ${offer.holding ? pause(offer, step, words) : nothing}
        <p class="step-see"><b>${words.shift.see}</b>${signOf(step, rig)}</p>
        ${step.caution ? warning("caution", words.shift.caution, step.caution) : nothing}
        ${offer.again ? html`<p class="notice">${fill(words.shift.again, { missing })}</p>` : nothing}
        <p class="step-why"><b>${words.shift.why}</b>${step.why}</p>
        ${path}
        ${offer.can_go_back
          ? html`<button type="button" class="key" @click=${() => send({ kind: "back" })}>${words.shift.back}</button>`
          : nothing}
      </div>
      ${answers(offer, step, words, send)}
    </section>`;
}

const counted = (offer, { shift }) => offer.again ? shift.step_again : fill(offer.of ? shift.step_of : shift.step, offer);

function pause(offer, step, words) {
  const left = Math.ceil(offer.hold_left_s);
  return html`
    <div class="pause" role="timer">
      ${left > 0
        ? html`<span>${step.holding}</span><span class="pause-left">${fill(words.shift.hold_left, { left })}</span>`
        : html`<b>${step.over}</b>`}
    </div>`;
}

function answers(offer, step, words, send) {
  const seen = (answer) => send({ kind: "seen", step: offer.step, ...(answer && { answer }) });
  const notSeen = html`
    <button type="button" class="key" @click=${() => send({ kind: "not_seen", step: offer.step })}>${words.shift.not_seen}</button>`;
  const danger = html`
    <button type="button" class="key key-danger" @click=${() => send({ kind: "danger" })}>${shape("stop")}${words.shift.danger}</button>`;
  if (offer.kind === "ask") {
    return html`
      <div class="answers answers-stacked ${offer.answers.length > LONG ? "answers-long" : ""}">
        ${offer.answers.map((answer) => html`
          <button type="button" class="key key-seen" @click=${() => seen(answer)}>${step.answer[answer]}</button>`)}
        ${notSeen}${danger}
      </div>`;
  }
  const isTimed = offer.kind === "hold" || offer.kind === "limit";
  const isShut = offer.kind === "hold" && offer.hold_left_s > 0;
  return html`
    <div class="answers">
      ${notSeen}
      ${isTimed && !offer.holding
        ? html`<button type="button" class="key key-seen" @click=${() => send({ kind: "hold", step: offer.step })}>${step.hold}</button>`
        : html`<button type="button" class="key key-seen" ?disabled=${isShut} @click=${() => seen()}>${words.shift.seen}</button>`}
      ${danger}
    </div>`;
}
