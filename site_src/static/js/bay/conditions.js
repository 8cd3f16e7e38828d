// What takes a rig out of service: the rows of data/checks/conditions.toml, to choose from.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";

export const NONE = "none"; // chosen in place of a condition: it is none of them

export const conditionOf = (id, { conditions }) => conditions.find((row) => row.id === id) ?? null;

// What a condition adds to what was seen: what the rig may not do, where it is limited.
export const limitOf = (condition, rank) => (condition?.class === "restricted" && rank === "restricted" ? condition.note : "");

const conditionKey = ({ text, more, isChosen, choose }) => html`
  <li><button type="button" class="key key-wide bay-tick" aria-pressed=${isChosen ? "true" : "false"} @click=${choose}>
    <span>${text} ${more ? html`<small>${more}</small>` : nothing}</span><b aria-hidden="true">${isChosen ? "✓" : ""}</b></button></li>`;

// Conditions to choose from, the chosen one with its mark; with `chooseNone`, that it is none of them.
export const conditionKeys = ({ rows, chosen, words, choose, chooseNone = null }) => html`
  <ul class="ticks">${rows.map((row) => conditionKey({ text: row.what, more: row.class === "restricted" ? `${words.rank[row.class]}. ${row.note}` : words.rank[row.class],
    isChosen: row.id === chosen, choose: () => choose(row) }))}
    ${chooseNone ? conditionKey({ text: words.conditions.none_of, more: "", isChosen: chosen === NONE, choose: chooseNone }) : nothing}</ul>`;
