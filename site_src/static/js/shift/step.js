// One step of a card on the screen: what to do, what to see, why, what turns, and the answers under the thumbs.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { termed } from "../help/touched.js";
import { orderLine } from "../shared/order.js";
import { colon, fill } from "../shared/site.js";
import { shape } from "../shared/warning.js";
import { bedsView } from "./beds.js";
import { signOf } from "./known.js";
import { signView } from "./sign.js";
import { stationsView } from "./stations.js";

const LONG = 3; // more answers than this stand in two columns

export function stepView({ state, sequence, steps, orders, isSecond, words, send, power, beds }) {
  const { offer, rig } = state;
  const step = steps[offer.step];
  const missing = offer.missing.map((fact) => words.guard[fact] ?? words.guard.other).join(", ");
  return html`
    <section class="step">
      ${stationsView({ sequence, state, steps, words, send, isSecond })}
      <div class="step-body">
        <h2 class="step-act" aria-describedby="beside">${termed(step.act)}</h2>
        <div id="beside">
          <div class="plate step-see">
            <div><b>${words.shift.see}</b><p>${termed(signOf(step, rig))}</p></div>
            ${isTimed(offer) && offer.holding ? pause(offer, words) : step.shows?.kind === "beds" ? bedsView(beds, words) : step.shows ? html`<div class="step-sign">${signView(step.shows, words)}</div>` : nothing}
            ${isTimed(offer) ? html`<p class="step-wait" role="status">${waiting(offer, step)}</p>` : nothing}
          </div>
          ${step.caution ? html`<p class="step-caution hatched"><b>${words.shift.caution}${colon}</b> ${termed(step.caution)}</p>` : nothing}
          ${(step.warns ?? []).map((name) => orderLine(orders[name], words))}
          ${offer.again ? html`<p class="notice step-again">${fill(words.shift.again, { missing })}</p>` : nothing}
        </div>
        <p class="step-why">${termed(step.why)}</p>
        ${power}
      </div>
      ${answers(offer, step, words, send)}
    </section>`;
}

export const whyBelow = (step, words) => html`<p class="why-below"><b>${words.shift.why}${colon}</b> ${termed(step.why)}</p>`;

const isTimed = ({ kind }) => kind === "hold" || kind === "limit";

// A screen reader hears that a time begins and that it is over, and not each second of it.
const waiting = ({ holding, hold_left_s }, step) => (!holding ? nothing : hold_left_s > 0 ? step.holding : html`<b>${step.over}</b>`);

function pause({ hold_left_s }, words) {
  const left = Math.ceil(hold_left_s);
  return left > 0 ? html`<span class="pause-left" role="timer">${fill(words.shift.hold_left, { left })}</span>` : nothing;
}

// What is said where no sign came: of a choice that nobody can tell, of two signs that it is neither.
const notSeenOf = ({ kind, answers: [, second] }, { is_choice }) => (kind !== "ask" ? "not_seen" : is_choice ? "unsure" : second ? "neither" : "not_seen");

function answers(offer, step, words, send) {
  const seen = (answer) => send({ kind: "seen", step: offer.step, ...(answer && { answer }) });
  const notSeen = html`
    <button type="button" class="key" @click=${() => send({ kind: "not_seen", step: offer.step })}>${words.shift[notSeenOf(offer, step)]}</button>`;
  const danger = html`
    ${offer.reports.map((hazard) => html`
      <button type="button" class="key key-trouble" @click=${() => send({ kind: "report", step: offer.step, hazard })}>${words.shift[hazard]}</button>`)}
    <button type="button" class="key key-danger" @click=${() => send({ kind: "danger" })}>${shape("stop")}${words.shift.danger}</button>`;
  if (offer.kind === "ask") {
    return html`
      <div class="dock answers-asked ${offer.answers.length > LONG ? "answers-many" : ""}">
        ${offer.answers.map((answer) => html`
          <button type="button" class="key key-answer" @click=${() => seen(answer)}>${step.answer[answer]}</button>`)}
        ${notSeen}${danger}
      </div>`;
  }
  const isShut = offer.kind === "hold" && offer.hold_left_s > 0;
  return html`
    <div class="dock answers-two">
      ${notSeen}
      ${isTimed(offer) && !offer.holding
        ? html`<button type="button" class="key key-act" @click=${() => send({ kind: "hold", step: offer.step })}>${step.hold}</button>`
        : html`<button type="button" class="key key-act" ?disabled=${isShut} @click=${() => seen()}>${words.shift.seen}</button>`}
      ${danger}
    </div>`;
}
