// What takes a rig out of service: the rows of data/checks/conditions.toml, found by what is typed, and as a defect proposes them.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { likeness, wordsOf } from "../help/search.js";

const index = new WeakMap();

// The words of a row: `says` are its texts. Made once.
function wordsIn(row, says) {
  if (!index.has(row)) index.set(row, [...new Set(wordsOf(says.join(" ")))]);
  return index.get(row);
}

const like = (typed, word) => (typed.length < 3 ? Number(word.startsWith(typed)) : likeness(typed, word));

// The rows in which every typed word is, or one like it, best first; says(row): the texts that are looked in.
export function matching(rows, text, says) {
  const typed = wordsOf(text);
  const weighed = rows.map((row) => ({ row, weights: typed.map((word) => Math.max(0, ...wordsIn(row, says(row)).map((other) => like(word, other)))) }))
    .filter(({ weights }) => weights.every((weight) => weight > 0));
  const sum = ({ weights }) => weights.reduce((total, weight) => total + weight, 0);
  return weighed.sort((one, other) => sum(other) - sum(one)).map(({ row }) => row);
}

export const conditionOf = (id, { conditions }) => conditions.find((row) => row.id === id) ?? null;

// What a condition adds to what was seen: what the rig may not do, where it is limited.
export const limitOf = (condition, rank) => (condition?.class === "restricted" && rank === "restricted" ? condition.note : "");

// Conditions to choose from, the chosen one with its mark.
export const conditionKeys = ({ rows, chosen, words, choose }) => html`
  <ul class="ticks">${rows.map((row) => html`<li><button type="button" class="key key-wide bay-tick" aria-pressed=${row.id === chosen ? "true" : "false"} @click=${() => choose(row)}>
    <span>${row.what} <small>${words.rank[row.class]}${row.class === "restricted" ? html`. ${row.note}` : nothing}</small></span><b aria-hidden="true">${row.id === chosen ? "✓" : ""}</b></button></li>`)}</ul>`;
