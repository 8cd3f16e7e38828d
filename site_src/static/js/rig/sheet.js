// A panel card set in type: calc.panel_card's blocks, word for word.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../site.js";

export function sheetView({ card, rig, words, u }) {
  const say = (told) => (typeof told === "string" ? told : fill(words.card[told.code], { ...u, ...told }));
  const isOver = card.blocks.some((block) => block.rows.some((row) => row.is_over_test));
  return html`
    <article class="sheet">
      <h2>${rig.name}</h2>
      ${card.blocks.map((block) => html`
        <div class="sheet-scroll" role="region" aria-label=${say(block)} tabindex="0"><table class="sheet-${block.code}">
          <caption>${say(block)}</caption>
          <thead><tr>${block.head.map((told) => html`<th scope="col">${say(told)}</th>`)}</tr></thead>
          <tbody>${block.rows.map((row) => html`
            <tr>
              <th scope="row">${row.name}${row.is_over_test ? " !" : nothing}${row.told ? html`<small>${say(row.told)}</small>` : nothing}</th>
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
