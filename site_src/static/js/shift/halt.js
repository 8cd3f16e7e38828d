// The card when it stands still: stopped at a sign that did not come, at a danger, or finished.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { shape } from "../warning.js";
import { enterLink, fromCard } from "../diagnose/enter.js";

const TITLES = { danger: "danger_title", not_seen: "stop_title", time_up: "time_up_title" };

export function haltView({ stopped, steps, words, send, state }) {
  const danger = stopped.reason === "danger";
  const step = steps[stopped.step];
  return html`
    <section class="halt" role="alert">
      ${shape("stop")}
      <h2>${words.shift[TITLES[stopped.reason]]}</h2>
      <h3>${words.shift.stop_do}</h3>
      <p>${danger ? words.shift.danger_do : step.not_seen}</p>
      <h3>${words.shift.stop_never}</h3>
      <p>${danger ? words.shift.danger_never : step.never}</p>
      ${danger ? html`<h3>${words.shift.stop_do}</h3><p>${words.shift.danger_radio}</p>` : nothing}
    </section>
    <div class="rows">
      ${danger
        ? nothing
        : html`<button type="button" class="key key-wide" @click=${() => send({ kind: "look_again" })}>${words.shift.look_again}</button>
            <a class="key key-wide" href=${enterLink(fromCard(state))}>${words.shift.diagnose}</a>
            <button type="button" class="key key-wide key-danger" @click=${() => send({ kind: "danger" })}>${words.shift.danger}</button>`}
      <button type="button" class="key key-wide" @click=${() => send({ kind: "start_over" })}>${words.shift.start_over}</button>
    </div>`;
}

export const doneView = ({ words, told, send, finished }) => html`
  <section>
    <h2 class="step-act">${words.shift.done}</h2>
    <p>${finished}</p>
    <p>${told}</p>
    <div class="rows">
      <button type="button" class="key key-wide key-danger" @click=${() => send({ kind: "danger" })}>${shape("stop")}${words.shift.danger}</button>
    </div>
  </section>`;
