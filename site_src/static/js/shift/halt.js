// The card when it stands still: stopped at a hazard, at a sign that did not come, after a shift that failed twice, or finished.
// Where the rig moved, the log of a rig ends the stop, by its proofs and two names; which rig it was is said first where nobody had.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { choose } from "../shared/choices.js";
import { defectLink, scopeOf } from "../shared/defect_link.js";
import { fill, home } from "../shared/site.js";
import { orderView } from "../shared/order.js";
import { shape } from "../shared/warning.js";
import { enterLink, fromCard } from "../diagnose/enter.js";
import { orderOf, saidOf } from "./stop.js";
import { cardsFor } from "./unlike.js";

const AGAIN = { not_seen: "look_again", time_up: "look_again", other_card: "ask_again" };
const SECOND = { release: "released", mistouch: "mistouch" }; // the event that a second touch is

// tag: what the log of the rig has of the stop, see ./tagged.js; rig: that of the run; chosen, own(): the
// rig that is chosen now, and what gives it the stop; asking: which second touch is asked for, "release" or "mistouch", if any; ask(which) asks for it.
export function haltView({ sequence, state, steps, words, send, orders, data, tag, rig, chosen, own, asking, ask }) {
  const { shift } = words;
  const { stopped } = state;
  const order = orderOf(stopped, orders, words);
  const key = (kind, label = kind, look = "") => html`<button type="button" class="key ${look}" @click=${() => send({ kind })}>${shift[label]}</button>`;
  const isDanger = stopped.reason === "danger";
  const { offer } = state;
  const isOther = stopped.reason === "other_card";
  const isLook = offer.can_look_again;
  return html`
    <section class="step step-halt">
      <div class="step-body">
        ${order
          ? orderView({ order, words, isStop: true, here: !offer.is_out && stopped.order === steps[stopped.step]?.order ? steps[stopped.step].not_seen : null })
          : stopView({ said: saidOf(stopped, steps, words), words })}
        ${isOther ? html`<h2>${shift.other_cards}</h2>${cardsFor(data, answeredBy(sequence, state))}` : nothing}
        ${asking ? html`<p class="notice" role="alert">${shift[`${asking}_means`]}</p>` : nothing}
      </div>
      <div class="dock answers-halt">
        ${isLook ? key("look_again", AGAIN[stopped.reason], "key-act") : nothing}
        ${isDanger || isOther ? nothing : html`<a class="key" href=${enterLink(fromCard(sequence, state))}>${shift.diagnose}</a>`}
        ${offer.can_start_over ? key("start_over", offer.can_say_long ? "start_over_short" : "start_over", isLook ? "" : "key-act") : nothing}
        ${offer.can_say_long ? key("not_short") : nothing}
        ${tag?.isOpen && !asking ? html`<a class="key" href=${new URL(`checks/defect/#${tag.id}`, home).href} @click=${() => choose("rig", rig.id)}>${shift.tag_open}</a>` : nothing}
        ${isOther || asking || tag ? nothing : html`<a class="key" href=${defectLink(defectOf({ sequence, orders, state, steps, data, words }))}>${words.rig_status_acts.write}</a>`}
        ${offer.can_take_back && (tag?.canTakeBack ?? true) && !asking ? html`<button type="button" class="key" @click=${() => ask("mistouch")}>${shift.mistouch}</button>` : nothing}
        ${isDanger && !tag && !asking && (!rig || rig.id !== chosen?.id) ? chosen ? html`<button type="button" class="key" @click=${own}>${fill(shift.own, chosen)}</button>`
          : html`<a class="key" href=${new URL("rig/", home).href}>${shift.own_rig}</a>` : nothing}
        ${offer.is_out && (isDanger ? tag?.isOpen === false : true) && !asking ? html`<button type="button" class="key" @click=${() => ask("release")}>${shift.released}</button>` : nothing}
        ${asking ? html`
          <button type="button" class="key" @click=${() => ask(null)}>${shift[`${asking}_not`]}</button>
          ${key(SECOND[asking], `${asking}_sure`)}` : nothing}
        ${isDanger ? nothing : dangerKey(words, send)}
      </div>
    </section>`;
}

const SAYS = { danger: "defect_stopped", failed_twice: "defect_twice" };

// What a stop leaves behind as a defect: its order, or the step it came at; and what was not seen on which card.
function defectOf({ sequence, orders, state: { stopped }, steps, data, words: { shift } }) {
  const step = steps[stopped.step];
  const card = data.titles[sequence.id];
  return {
    origin: sequence.id === "override" ? "override" : "card", what: orders[stopped.order]?.title ?? step?.act ?? card,
    seen: step ? fill(shift[SAYS[stopped.reason] ?? "defect_unseen"], { card, act: step.act, see: step.see }) : card,
    scope: scopeOf(stopped.order),
  };
}

const dangerKey = ({ shift }, send) => html`
  <button type="button" class="key key-danger" @click=${() => send({ kind: "danger" })}>${shape("stop")}${shift.danger}</button>`;

// A card that was left for long: a new run is the first thing offered.
export const leftView = ({ words, send, left }) => html`
  <section class="step step-halt">
    <div class="step-body">
      <div class="halt hatched" role="alert">
        <h2>${words.shift.left_title}</h2>
        <p>${fill(words.shift.left_do, { time: left })}</p>
      </div>
    </div>
    <div class="dock answers-halt">
      <button type="button" class="key key-act" @click=${() => send({ kind: "begin_again" })}>${words.shift.left_again}</button>
      <button type="button" class="key" @click=${() => send({ kind: "go_on" })}>${words.shift.left_on}</button>
      ${dangerKey(words, send)}
    </div>
  </section>`;

// A sign that did not come, answered in its step's own words: one act a line.
function stopView({ said, words }) {
  const acts = said.act.replace(/([.?!]) /g, "$1\n").split("\n");
  return html`
    <div class="halt hatched" role="alert">
      <p class="order-grade">${shape("hold")}<b>${words.order.hold}</b></p>
      <h2>${said.title}</h2>
      ${acts.length > 1 ? html`<ol>${acts.map((act) => html`<li>${act}</li>`)}</ol>` : html`<p>${said.act}</p>`}
      <p class="order-never">${said.never}</p>
    </div>`;
}

// What is known of the rig, with the answer that was given last.
function answeredBy(sequence, { rig, stopped }) {
  const { asks } = sequence.steps.find(({ id }) => id === stopped.step);
  return { ...Object.fromEntries(Object.entries(rig).filter(([, answer]) => answer !== "unknown")), [asks]: stopped.answer };
}

// After the override a rig is out of service: the defect that says so is one tap away. again: the acts of steps that were
// answered too quickly, folded. place: where the run was, see ../log/place.js.
export const doneView = ({ words, told, again, place, send, finished, next, sequence, data }) => html`
  <section class="step step-done">
    <div class="step-body">
      <h2 class="step-act">${words.shift.done}</h2>
      <p>${finished}</p>
      <p class="done-told">${told}</p>
      ${again.length ? html`<details><summary>${words.shift.hurried_steps}</summary><ul>${again.map((act) => html`<li>${act}</li>`)}</ul></details>` : nothing}
      ${place}
    </div>
    <div class="dock answers-halt">
      ${dangerKey(words, send)}
      ${sequence.id === "override" ? html`<a class="key" href=${defectLink({ origin: "override", what: data.titles.override, seen: words.shift.done_tag, scope: "apparatus" })}>${words.rig_status_acts.write}</a>` : nothing}
      <nav class="done-next" aria-label=${words.shift.next}>
        ${next.map(({ address, title }) => html`<a class="key" href=${new URL(address, home).href}>${title}</a>`)}
      </nav>
    </div>
  </section>`;
