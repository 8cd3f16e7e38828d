// A panel card set in type: calc.rig.panel_card's blocks, word for word. On a phone one column stands at a time, chosen in the dock; paper shows all.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { nozzle, pipe } from "../line/signs.js";
import { colon, fill } from "../shared/site.js";

const OPENING = 3; // the column that opens, the name counted: the ground
const LONGEST_FT = 400; // of the drawing; a longer line is drawn as long
const WIDE = 150;
const OVER = html`<b class="sheet-over">!</b>`; // beside a pressure over the hose's working limit
const STOPPED = html`<b class="sheet-stopped">STOP</b>`; // where the hose or its device would be past what it may

// A cap with its lugs, seen from the front: its color is the word beside it, so that paper and every eye can read it.
const CAP = html`<svg viewBox="0 0 24 24" aria-hidden="true"><circle cx="12" cy="12" r="8"/><path d="M12 1v4M12 19v4M1 12h4M19 12h4"/><circle cx="12" cy="12" r="3"/></svg>`;

const columns = (head, say, words) => html`
  <fieldset class="sheet-columns">
    <legend>${words.card.columns}</legend>
    ${head.slice(1).map((told, place) => html`
      <label class="chip"><input type="radio" name="columns" value=${place + 2} ?checked=${place + 2 === OPENING}><span>${say(told)}</span></label>`)}
  </fieldset>`;

// A bed as it lies: thick by its bore, long by the root of its length.
function drawn({ bore_in: bore, length_ft: length }) {
  const end = 20 + (WIDE - 40) * Math.sqrt(Math.min(length, LONGEST_FT) / LONGEST_FT);
  return html`<svg class="sheet-drawn" viewBox="0 0 ${WIDE} 24" aria-hidden="true">${pipe(`M0 12H${end}`, { bore })}${nozzle(end, 12)}</svg>`;
}

// Rows that share a name, or that share their first figure.
function grouped(rows, keyOf) {
  const groups = new Map();
  for (const row of rows) groups.set(keyOf(row), [...(groups.get(keyOf(row)) ?? []), row]);
  return [...groups];
}

const pair = (from, to) => `${from}\u2192${to}`;

// What stands beside the beds, one line each: the loss in supply hose, the flow of tips, what a height adds.
function lines({ code, rows, head }, say, words, u) {
  const groups = {
    supply: () => grouped(rows, (row) => row.name).map(([name, of]) => [
      `${name}${of[0].detail ? `, ${say(of[0].detail)}` : ""}`, of.map((row) => (row.cells.includes(null) ? words.card.none : pair(...row.cells)))]),
    tips: () => grouped(rows, (row) => row.cells[0]).map(([pressure, of]) => [`${pressure} ${u.u_pressure}`, of.map((row) => pair(row.name, row.cells[1]))]),
    heights: () => [["", rows.map((row) => pair(row.name, row.cells[0]))]],
  }[code]();
  const [from, to] = code === "supply" ? [head[1], head[2]] : code === "tips" ? [head[0], head[2]] : head;
  return html`<p class="sheet-line sheet-${code}"><b>${say({ code })}</b> (${pair(say(from), say(to))})${groups.map(([name, pairs]) => html`
    <span>${name ? html`<b>${name}</b>${colon} ` : nothing}${pairs.join(" \u00b7 ")}</span>`)}</p>`;
}

const matrix = (block, say, words) => html`
  <table class="sheet-set" ?data-few=${block.rows.length < 6} ?data-many=${block.rows.length > 8}>
    <caption>${say(block)}</caption>
    <thead><tr>${block.head.map((told) => html`<th scope="col">${say(told)}</th>`)}</tr></thead>
    <tbody>${block.rows.map((row) => html`
      <tr>
        <th scope="row">${row.name}${row.line ? drawn(row.line) : nothing}${row.cap ? html`<span class="sheet-cap">${CAP} ${fill(words.card.cap, { color: words.option[row.cap] })}</span>` : nothing}${row.detail ? html`<small>${say(row.detail)}</small>` : nothing}</th>
        ${row.cells.map((cell, place) => html`<td>${row.stopped.includes(place) ? STOPPED : cell ?? words.card.none}${row.over.includes(place) ? OVER : nothing}</td>`)}
      </tr>`)}
    </tbody>
  </table>`;

// `faults` are what is wrong with the profile, in sentences; `paper` is how it is printed.
export function sheetView({ card, rig, faults, paper, words, u }) {
  const say = (told) => (typeof told === "string" ? told : fill(words.card[told.code], { ...u, ...told }));
  const isMarked = (mark) => card.blocks.some((block) => block.rows.some((row) => row[mark].length));
  const beds = card.blocks.find(({ code }) => code === "set");
  return html`
    <article class="sheet">
      <h2>${rig.name}</h2>
      ${faults.length ? html`<section class="sheet-faults"><p><b>${words.card.faulty}</b></p><ul>${faults.map((sentence) => html`<li>${sentence}</li>`)}</ul></section>` : nothing}
      ${beds ? matrix(beds, say, words) : nothing}
      ${card.blocks.filter((block) => block !== beds).map((block) => lines(block, say, words, u))}
      <ul class="sheet-notes">
        ${isMarked("over") ? html`<li>${words.card.over_test}</li>` : nothing}
        ${isMarked("stopped") ? html`<li>${words.card.stopped}</li>` : nothing}
        ${card.notes.map((note) => html`<li>${say(note)}</li>`)}
      </ul>
      ${paper}
      ${beds ? columns(beds.head, say, words) : nothing}
    </article>`;
}
