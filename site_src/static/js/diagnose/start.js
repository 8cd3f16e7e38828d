// The first screen of a diagnosis: who looks, and what is seen or missed.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { roleChips } from "./role.js";
import { fold } from "../shared/fold.js";
import { fill } from "../shared/site.js";
import { redKeys } from "./order.js";

const MOMENTS = ["in", "panel", "water", "out", "yard"];

export function startView({ of, data, rig, role, offered, setRole, begin, danger, redraw }) {
  const { words, signs } = data;
  const isFor = (sign, moment) => signs[sign.id].moments.includes(moment) && (role === "technician" || sign.role === "operator");
  const moments = MOMENTS.map((moment) => ({ moment, opens: offered.filter((sign) => isFor(sign, moment)) }));
  return html`
    <div class="rows">${redKeys({ data, danger, isWide: true })}</div>
    <h2>${words.diagnose.what}</h2>
    ${moments.filter(({ opens }) => opens.length).map(({ moment, opens }, place) =>
      fold({ name: `${of} ${moment}`, kind: "section", summary: words.moment[moment], begins: place === 0, redraw }, () => html`
        <div class="rows">${opens.map(({ id }) => html`
          <button type="button" class="key key-wide key-told" @click=${() => begin(id)}>${words.sees[id]}</button>`)}</div>`))}
    ${roleChips({ legend: words.diagnose.role, words, role, change: setRole })}
    <p>${rig ? fill(words.diagnose.rig, rig) : words.diagnose.any_rig}</p>
    <p class="smallprint">${words.diagnose.first}</p>`;
}

export const soFar = ({ state, words, isOpen, again = null, redraw }) =>
  fold({ name: `so_far ${isOpen}`, summary: words.diagnose.so_far, begins: isOpen, redraw }, () => html`
    <ol>
      ${state.complaints.map((sign) => html`<li><b>${words.diagnose.complaint}</b><span>${words.sees[sign]}</span></li>`)}
      ${state.asked.map(({ sign, said }) => html`<li><b>${words.diagnose[{ seen: "yes", not_seen: "no", unknown: "unsure" }[said]]}</b><span>${words.sees[sign]}</span></li>`)}
    </ol>
    ${again ? html`<button type="button" class="key" @click=${again}>${words.diagnose.again}</button>` : nothing}`);

// The words for the radio, before anything that changes a line's pressure.
export const sayFirst = ({ words, radio }) => (radio
  ? html`<div class="say"><b>${words.diagnose.say_first}</b><p>${words.say[radio]}</p><span>${words.diagnose.say_wait}</span></div>`
  : nothing);
