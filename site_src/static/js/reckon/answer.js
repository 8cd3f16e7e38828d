// The answer of a water or foam page: the number, the sentence below it, and what it calls to mind.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { figureView } from "../figure.js";
import { fill } from "../site.js";
import { warning } from "../warning.js";

export function answerView({ data, answer, origins, rig, stale, u }) {
  const { words } = data;
  const label = words.page[data.page].label;
  const sum = answer && fill(words.told[answer.sum], { ...u, ...answer.facts });
  const hasFigure = answer && answer.figure.text !== null;
  return html`
    <section class="answer" data-example=${origins.entered.length ? nothing : ""}>
      ${origins.entered.length ? nothing : html`<p class="example-mark"><b>${words.reckon.example}</b> ${origins.rig.length
        ? fill(words.reckon.example_part, { name: rig.name }) : words.reckon.example_all}</p>`}
      <div>
        ${answer ? html`<p class="answer-label" id="answer-label">${fill(label, { ...u, ...answer.facts })}</p>` : nothing}
        ${figureView(hasFigure ? { text: answer.figure.text, unit: u[`u_${answer.figure.kind}`] } : { stale: sum ?? stale })}
        ${hasFigure ? html`<p class="answer-sum">${sum}</p>` : nothing}
      </div>
    </section>
    <div role="status">${answer
      ? ["stop", "caution"].map((level) => answer.cautions.filter((found) => found.level === level).map((found) =>
          warning(level, words.caution[level], fill(words.note[found.code], { ...u, ...found }))))
      : nothing}</div>`;
}
