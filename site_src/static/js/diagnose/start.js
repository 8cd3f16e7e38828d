// The first screens of a diagnosis: where something is seen or missed, or in words; then what.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { folded } from "../help/search.js";
import { roleChips } from "./role.js";
import { fill } from "../shared/site.js";
import { redKeys } from "./order.js";
import { placesView } from "./places.js";

const SENSES = ["light", "sound", "needle", "pressure", "water"];
export const FIRST = { at: null, isWords: false, typed: "" };

// What may open a diagnosis: signs of this rig that this person can see.
const openers = ({ data, offered, role }) => offered.filter(({ id, role: whose }) => data.signs[id].at && (role === "technician" || whose === "operator")).map(({ id }) => id);

// Those whose words have all that is typed.
const matching = (ids, typed, sees) => ids.filter((id) => folded(typed).split(/\s+/).every((word) => folded(sees[id]).includes(word)));

export function startView({ view, show, redraw, data, rig, role, offered, setRole, begin }) {
  const { words, signs } = data;
  const ids = openers({ data, offered, role });
  const keys = (some) => some.map((id) => html`<button type="button" class="key key-wide key-told" @click=${() => begin(id)}>${words.sees[id]}</button>`);
  if (view.at) return html`<h2 class="ask">${words.at[view.at]}</h2><div class="rows">${keys(ids.filter((id) => signs[id].at === view.at))}</div>`;
  if (view.isWords) {
    const found = matching(ids, view.typed, words.sees);
    return html`
      <h2 class="ask">${words.diagnose.what}</h2>
      <label class="find">${words.diagnose.find}
        <input type="search" class="named" autocomplete="off" .value=${view.typed} @input=${({ target }) => { view.typed = target.value; redraw(); }}></label>
      <p role="status" class=${found.length ? "reader" : ""}>${found.length ? fill(words.diagnose.matches, { count: found.length }) : words.diagnose.no_match}</p>
      ${SENSES.map((sense) => [sense, found.filter((id) => signs[id].sense === sense)]).filter(([, some]) => some.length).map(([sense, some]) => html`
        <h3>${words.sense[sense]}</h3><div class="rows">${keys(some)}</div>`)}`;
  }
  return html`
    <h2 class="ask">${words.diagnose.where}</h2>
    ${placesView({ here: ids.map((id) => signs[id].at), words, choose: (at) => show({ ...FIRST, at }) })}
    <button type="button" class="key key-wide" @click=${() => show({ ...FIRST, isWords: true })}>${words.diagnose.in_words}</button>
    ${roleChips({ legend: words.diagnose.role, words, role, change: setRole })}
    <p>${rig ? fill(words.diagnose.rig, rig) : words.diagnose.any_rig}</p>`;
}

export const startActs = ({ view, show, data, danger }) => html`
  ${view.at || view.isWords ? html`<button type="button" class="key key-row" @click=${() => show(FIRST)}>${data.words.diagnose.places}</button>` : nothing}
  ${redKeys({ data, danger })}`;
