// What takes a rig out of service, and where sources differ: searched as one types; a touch of a row reports it as a defect.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { isSaid, ranked } from "../bay/likely.js";
import { ruleOf } from "../bay/rule.js";
import { defectLink } from "../shared/defect_link.js";
import { colon, fill, home, pageData } from "../shared/site.js";
import { keepTyped } from "../shared/typed.js";

const input = /** @type {HTMLInputElement} */ (document.getElementById("typed"));
const count = document.getElementById("count");
const place = document.getElementById("conditions");
const data = await pageData(new URL("checks/", home));
const { words, conditions, differing, sources, silent } = data;

const all = [...conditions, ...differing];

const conditionRow = (row) => html`
  <li class="defect" data-class=${row.class}><a href=${defectLink({ origin: "report", what: row.what, rank: row.class, scope: row.scope, rule: row.id })}>
    <b>${words.rank[row.class]}</b> <span>${row.what}</span>${row.note ? html`<small class="bay-note">${row.note}</small>` : nothing}<small>${ruleOf(row, { data, words })}</small></a></li>`;

const differRow = (row) => html`
  <li class="bay-differ"><b>${row.about}</b><p>${row.says}</p><p>${words.conditions.take}${colon} <b>${row.take}</b> ${row.why}</p>
    <small>${row.source.map((key) => sources[key]).join("; ")} (${words.basis[row.basis]})</small></li>`;

const group = (title, rows, rowOf) => html`
  <details class="bay-group"><summary>${title} (${rows.length})</summary><ul class="defects">${rows.map(rowOf)}</ul></details>`;

function show() {
  const text = isSaid(input.value, silent) ? input.value.trim() : "";
  const like = ranked(all, text, silent).map(({ row }) => row);
  const [rows, differ] = [conditions, differing].map((part) => like.filter((row) => part.includes(row)));
  const total = rows.length + differ.length;
  count.textContent = !text ? "" : total > 1 ? fill(words.conditions.count, { count: total }) : words.conditions[total ? "one" : "none"];
  render(text ? html`
    ${total ? nothing : html`<p><a class="key" href=${defectLink({ origin: "report", what: text, rank: "", scope: "" })}>${words.bay.write}</a></p>`}
    <ul class="defects">${rows.map(conditionRow)}</ul>
    ${differ.length ? html`<h2>${words.conditions.differ}</h2><ul class="defects">${differ.map(differRow)}</ul>` : nothing}` : html`
    ${[...new Set(conditions.map(({ scope }) => scope))].map((scope) => group(words.scope[scope], conditions.filter((row) => row.scope === scope), conditionRow))}
    ${group(words.conditions.differ, differing, differRow)}`, place);
}

keepTyped(input);
input.addEventListener("input", show);
document.getElementById("search").addEventListener("submit", (event) => {
  event.preventDefault();
  place.querySelector("a")?.focus();
});
show(); // of what was typed before
