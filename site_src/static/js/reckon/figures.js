// Every figure of a water or foam page, each opening on its working and its source.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { termed } from "../help/touched.js";
import { cited } from "../shared/cited.js";
import { fill } from "../shared/site.js";
import { hosesOf, ownHose } from "./fields.js";

export function figuresView({ data, answer, entries, shelf, u }) {
  const { words, formulas } = data;
  const told = (name) => cited(words.reckon.source, { ...formulas[name], basis: words.basis[formulas[name].basis] });
  const sources = (row) => [
    ...row.sources.map(told),
    ...(row.sources.includes("friction")
      ? hosesOf({ data, entries }).map((hose) => ownHose(hose, { data, shelf }) ?? cited(words.reckon.hose_source, { ...hose, basis: words.basis[hose.basis] }))
      : []),
  ];
  return html`
    <details class="section">
    <summary>${words.reckon.figures}</summary>
    <div class="figures">${answer.rows.map((row) => html`
      <details>
        <summary><span>${words.row[row.name]}</span><b>${words.text[row.name]?.[row.text] ?? row.text} ${row.kind ? u[`u_${row.kind}`] : nothing}</b></summary>
        <p class="working">${termed(fill(words.working[row.name], { ...u, ...row.terms }))}</p>
        ${sources(row).map((sentence) => html`<p>${sentence}</p>`)}
      </details>`)}
    </div>
    <p class="smallprint">${words.reckon.US_forms}</p>
    </details>`;
}
