// The card when it stands still: stopped at a hazard, at a sign that did not come, after a shift that failed twice, or finished.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fill, home } from "../shared/site.js";
import { orderView } from "../shared/order.js";
import { shape } from "../shared/warning.js";
import { enterLink, fromCard } from "../diagnose/enter.js";
import { orderOf, saidOf } from "./stop.js";
import { cardsFor } from "./unlike.js";

const AGAIN = { not_seen: "look_again", time_up: "look_again", other_card: "ask_again" };

export function haltView({ sequence, state, steps, words, send, orders, data, release, ask }) {
  const { shift } = words;
  const { stopped } = state;
  const order = orderOf(stopped, orders, words);
  const key = (kind, label = kind) => html`<button type="button" class="key key-wide" @click=${() => send({ kind })}>${shift[label]}</button>`;
  const isDanger = stopped.reason === "danger";
  const { offer } = state;
  const isOther = stopped.reason === "other_card";
  return html`
    ${order
      ? orderView({ order, words, isStop: true, here: !offer.is_out && stopped.order === steps[stopped.step]?.order ? steps[stopped.step].not_seen : null })
      : stopView({ said: saidOf(stopped, steps, words), words })}
    <div class="rows">
      ${offer.can_look_again ? key("look_again", AGAIN[stopped.reason]) : nothing}
      ${isDanger || isOther ? nothing : html`<a class="key key-wide" href=${enterLink(fromCard(sequence, state))}>${shift.diagnose}</a>`}
      ${isDanger ? nothing : html`
        <button type="button" class="key key-wide key-danger" @click=${() => send({ kind: "danger" })}>${shape("stop")}${shift.danger}</button>`}
      ${offer.can_start_over ? key("start_over", offer.can_say_long ? "start_over_short" : "start_over") : nothing}
      ${offer.can_say_long ? key("not_short") : nothing}
      ${offer.is_out && !release ? html`<button type="button" class="key key-wide" @click=${() => ask(true)}>${shift.released}</button>` : nothing}
      ${offer.is_out && release ? html`
        <p class="notice" role="alert">${shift.release_means}</p>
        <button type="button" class="key key-wide" @click=${() => ask(false)}>${shift.release_not}</button>
        ${key("released", "release_sure")}` : nothing}
    </div>
    ${isOther ? html`<h2>${shift.other_cards}</h2>${cardsFor(data, answeredBy(sequence, state))}` : nothing}`;
}

// A card that was left for long: a new run is the first thing offered.
export const leftView = ({ words: { shift }, send, left }) => html`
  <section class="halt" role="alert">
    ${shape("hold")}
    <h2>${shift.left_title}</h2>
    <p>${fill(shift.left_do, { time: left })}</p>
  </section>
  <div class="rows">
    <button type="button" class="key key-wide key-act" @click=${() => send({ kind: "begin_again" })}>${shift.left_again}</button>
    <button type="button" class="key key-wide" @click=${() => send({ kind: "go_on" })}>${shift.left_on}</button>
    <button type="button" class="key key-wide key-danger" @click=${() => send({ kind: "danger" })}>${shape("stop")}${shift.danger}</button>
  </div>`;

// A sign that did not come, answered in its step's own words.
const stopView = ({ said, words }) => html`
  <section class="halt" role="alert">
    <p class="order-grade">${shape("hold")}<b>${words.order.hold}</b></p>
    <h2>${said.title}</h2>
    <h3>${words.shift.stop_do}</h3>
    <p>${said.act}</p>
    <h3>${words.shift.stop_never}</h3>
    <p>${said.never}</p>
  </section>`;

// What is known of the rig, with the answer that was given last.
function answeredBy(sequence, { rig, stopped }) {
  const { asks } = sequence.steps.find(({ id }) => id === stopped.step);
  return { ...Object.fromEntries(Object.entries(rig).filter(([, answer]) => answer !== "unknown")), [asks]: stopped.answer };
}

export const doneView = ({ words, told, send, finished, next }) => html`
  <section class="done">
    <h2 class="step-act">${words.shift.done}</h2>
    <p>${finished}</p>
    <p>${told}</p>
    <div class="rows">
      <button type="button" class="key key-wide key-danger" @click=${() => send({ kind: "danger" })}>${shape("stop")}${words.shift.danger}</button>
    </div>
    <nav class="done-next" aria-label=${words.shift.next}>
      <b>${words.shift.next}</b>
      ${next.map(({ address, title }) => html`<a class="key" href=${new URL(address, home).href}>${title}</a>`)}
    </nav>
  </section>`;
