// The card when it stands still: stopped at a sign that did not come, at a danger, after a shift that failed twice, or finished.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { shape } from "../warning.js";
import { enterLink, fromCard } from "../diagnose/enter.js";
import { saidOf } from "./stop.js";

const LOOKS_AGAIN = ["not_seen", "time_up"];

export function haltView({ stopped, steps, words, send, state }) {
  const { shift } = words;
  const said = saidOf(stopped, steps, words);
  const key = (kind) => html`<button type="button" class="key key-wide" @click=${() => send({ kind })}>${shift[kind]}</button>`;
  return html`
    <section class="halt" role="alert">
      ${shape("stop")}
      <h2>${said.title}</h2>
      <h3>${shift.stop_do}</h3>
      <p>${said.act}</p>
      <h3>${shift.stop_never}</h3>
      <p>${said.never}</p>
      ${stopped.reason === "danger" ? html`<h3>${shift.stop_do}</h3><p>${shift.danger_radio}</p>` : nothing}
    </section>
    <div class="rows">
      ${LOOKS_AGAIN.includes(stopped.reason) ? key("look_again") : nothing}
      ${stopped.reason === "danger"
        ? nothing
        : html`<a class="key key-wide" href=${enterLink(fromCard(state))}>${shift.diagnose}</a>
            <button type="button" class="key key-wide key-danger" @click=${() => send({ kind: "danger" })}>${shift.danger}</button>`}
      ${state.offer.can_start_over ? key("start_over") : nothing}
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
