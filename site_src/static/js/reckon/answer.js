// The answer of a water or foam page: the number, the sentence below it, and what it calls to mind.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../site.js";
import { warning } from "../warning.js";

export function answerView({ data, answer, stale, u }) {
  const { words } = data;
  const label = words.page[data.page].label;
  return html`
    <section class="answer">
      ${answer
        ? html`<div><p class="answer-label">${fill(label, { ...u, ...answer.facts })}</p>
            ${answer.figure.text === null
              ? html`<output class="answer-figure" data-stale>${fill(words.told[answer.sum], { ...u, ...answer.facts })}</output>`
              : html`<output class="answer-figure" ?data-long=${answer.figure.text.length > 3}><b>${answer.figure.text}</b> <span>${u[`u_${answer.figure.kind}`]}</span></output>
                <p class="answer-sum">${fill(words.told[answer.sum], { ...u, ...answer.facts })}</p>`}</div>`
        : html`<output class="answer-figure" data-stale>${stale}</output>`}
    </section>
    ${answer
      ? ["stop", "caution"].map((level) => answer.cautions.filter((found) => found.level === level).map((found) =>
          warning(level, words.caution[level], fill(words.note[found.code], { ...u, ...found }))))
      : nothing}`;
}
