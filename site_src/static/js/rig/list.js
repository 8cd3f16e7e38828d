// The rigs on this phone: stand beside one, make, copy; and, far from that, delete.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { colon, fill } from "../shared/site.js";

export const standingView = (chosen, words) => html`<p class="standing"><span>${words.rig.here}</span> <b>${chosen.name}</b></p>`;

export function listView({ rigs, chosen, words, act }) {
  const others = rigs.filter((rig) => rig.id !== chosen?.id);
  return html`
    ${rigs.length === 0 ? html`<p>${words.rig.none}</p>` : chosen ? html`<h2>${words.rig.others}</h2>` : html`<p>${words.rig.not_chosen}</p>`}
    <div class="rows">
      ${others.map((rig) => html`<button type="button" class="key key-wide" @click=${() => act.choose(rig)}>${words.rig.choose}${colon} ${rig.name}</button>`)}
      <button type="button" class="key key-wide ${rigs.length ? "" : "key-act"}" @click=${act.make}>${words.rig.make}</button>
      ${chosen ? html`<button type="button" class="key key-wide" @click=${() => act.copy(chosen)}>${words.rig.copy}</button>` : nothing}
    </div>`;
}

export const removeView = ({ chosen, asked, words, act }) => html`
  <div class="pairs rig-remove">${asked === chosen.id
    ? html`<button type="button" class="key key-danger" @click=${() => act.remove(chosen)}>${fill(words.rig.remove_sure, chosen)}</button>
        <button type="button" class="key" @click=${() => act.ask(null)}>${words.rig.remove_keep}</button>`
    : html`<button type="button" class="key key-trouble" @click=${() => act.ask(chosen.id)}>${words.rig.remove}</button>`}
  </div>`;
