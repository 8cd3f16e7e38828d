// The rigs on this phone: stand beside one, make, copy, delete.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { colon, fill } from "../shared/site.js";

export function listView({ rigs, chosen, asked, words, act }) {
  return html`
    ${rigs.length === 0 ? html`<p>${words.rig.none}</p>` : nothing}
    ${chosen ? html`<p class="standing"><span>${words.rig.here}</span> <b>${chosen.name}</b></p>` : rigs.length ? html`<p>${words.rig.not_chosen}</p>` : nothing}
    <div class="rows">
      ${rigs.filter((rig) => rig.id !== chosen?.id).map((rig) => html`
        <button type="button" class="key key-wide" @click=${() => act.choose(rig)}>${words.rig.choose}${colon} ${rig.name}</button>`)}
      <button type="button" class="key key-wide" @click=${act.make}>${words.rig.make}</button>
    </div>
    ${chosen
      ? html`
        <div class="pairs">
          <button type="button" class="key" @click=${() => act.copy(chosen)}>${words.rig.copy}</button>
          ${asked === chosen.id
            ? html`<button type="button" class="key key-danger" @click=${() => act.remove(chosen)}>${fill(words.rig.remove_sure, chosen)}</button>
                <button type="button" class="key" @click=${() => act.ask(null)}>${words.rig.remove_keep}</button>`
            : html`<button type="button" class="key" @click=${() => act.ask(chosen.id)}>${words.rig.remove}</button>`}
        </div>`
      : nothing}`;
}
