// Every figure of a water or foam page, each opening on its working and its source.
import { html } from "../../vendor/lit-html/lit-html.js";
import { termed } from "../help/touched.js";
import { cited } from "../shared/cited.js";
import { fill } from "../shared/site.js";
import { hosesOf, ownHose } from "./fields.js";

export function figuresView({ data, answer, entries, shelf, u }) {
  const { words, formulas } = data;
  const { measured } = answer;
  const textOf = (row, text) => words.text[row.name]?.[text] ?? text;
  const unitOf = (row) => (row.kind ? u[`u_${row.kind}`] : "");
  const told = (name) => cited(words.reckon.source, { ...formulas[name], basis: words.basis[formulas[name].basis] });
  const sources = (row) => [
    ...row.sources.map(told),
    ...(row.sources.includes("friction")
      ? hosesOf({ data, entries }).flatMap((hose) => [ownHose(hose, { data, shelf }) ?? cited(words.reckon.hose_source, { ...hose, basis: words.basis[hose.basis] }), ...measuredOf(hose)])
      : []),
    ...beside(row),
  ];
  // What was measured of a hose besides the figure that it goes by here.
  const measuredOf = ({ id, modern_source }) => !measured || !(id in measured.hoses) ? []
    : measured.whose === "modern" ? [cited(words.pressure.modern_measured, { source: modern_source })]
      : [fill(words.pressure.department_measured, measured.hoses[id])];
  // The same figure by the hose that was measured, where it reads otherwise.
  function beside(row) {
    const texts = measured?.answers.map(({ rows }) => rows[row.name] ?? row.text) ?? [];
    if (texts.every((text) => text === row.text)) return [];
    const [least, most] = texts.map((text) => textOf(row, text));
    return [fill(words.reckon[`row_${measured.whose}`], { least, most, unit: unitOf(row) })];
  }
  return html`
    <details class="section">
    <summary>${words.reckon.figures}</summary>
    <div class="figures">${answer.rows.map((row) => html`
      <details>
        <summary><span>${words.row[row.name]}</span><b>${textOf(row, row.text)} ${unitOf(row)}</b></summary>
        <p class="working">${termed(fill(words.working[row.name], { ...u, ...row.terms }))}</p>
        ${sources(row).map((sentence) => html`<p>${sentence}</p>`)}
      </details>`)}
    </div>
    <p class="smallprint">${words.reckon.US_forms}</p>
    </details>`;
}
