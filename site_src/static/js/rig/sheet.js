// A panel card set in type: calc.rig.panel_card's blocks, word for word.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../shared/site.js";

// The columns of the beds that a narrow screen shows beside the name; paper and wide screens show all. sheet.css hides by these.
const GROUPS = ["ground", "floors", "added"];

const columns = (words) => html`
  <fieldset class="chips sheet-columns">
    <legend>${words.card.columns}</legend>
    ${GROUPS.map((group) => html`
      <label class="chip"><input type="radio" name="columns" value=${group} ?checked=${group === GROUPS[0]}><span>${words.card[`columns_${group}`]}</span></label>`)}
  </fieldset>`;

// `faults` are what is wrong with the profile, in sentences.
export function sheetView({ card, rig, faults, words, u }) {
  const say = (told) => (typeof told === "string" ? told : fill(words.card[told.code], { ...u, ...told }));
  const isOver = card.blocks.some((block) => block.rows.some((row) => row.is_over_test));
  return html`
    <article class="sheet">
      <h2>${rig.name}</h2>
      ${faults.length ? html`<section class="sheet-faults"><p><b>${words.card.faulty}</b></p><ul>${faults.map((sentence) => html`<li>${sentence}</li>`)}</ul></section>` : nothing}
      ${columns(words)}
      ${card.blocks.map((block) => html`
        <div class="sheet-scroll" role="region" aria-label=${say(block)} tabindex="0"><table class="sheet-${block.code}">
          <caption>${say(block)}</caption>
          <thead><tr>${block.head.map((told) => html`<th scope="col">${say(told)}</th>`)}</tr></thead>
          <tbody>${block.rows.map((row) => html`
            <tr>
              <th scope="row">${row.name}${row.is_over_test ? " !" : nothing}${row.detail ? html`<small>${say(row.detail)}</small>` : nothing}</th>
              ${row.cells.map((cell) => html`<td>${cell ?? words.card.none}</td>`)}
            </tr>`)}
          </tbody>
        </table></div>`)}
      <ul class="sheet-notes">
        ${isOver ? html`<li>${words.card.over_test}</li>` : nothing}
        ${card.notes.map((note) => html`<li>${say(note)}</li>`)}
      </ul>
    </article>`;
}
