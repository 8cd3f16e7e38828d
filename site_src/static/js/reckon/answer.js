// The answer of a water or foam page: the number on its plate, the sentence below it, and in one line what it calls to mind.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { termed } from "../help/touched.js";
import { figureView } from "../shared/figure.js";
import { fill } from "../shared/site.js";
import { shape, warning } from "../shared/warning.js";
import { labelOf } from "./fields.js";
import { examplesIn, isExample } from "./origin.js";

// A field's name as it is said in a row of names: without what narrows it.
function shortOf(field, data) {
  const label = labelOf(field, data).split(/[,(]/)[0].trim();
  return /^\p{Lu}\p{Ll}/u.test(label) ? label[0].toLowerCase() + label.slice(1) : label;
}

// What is not the user's own yet, or nothing where all of it is.
function exampleView({ data, origins }) {
  const { reckon } = data.words;
  const examples = examplesIn(origins);
  if (!examples.length) return nothing;
  const isAll = !origins.entered.length && !origins.rig.length;
  return html`<p class="example-mark"><b>${reckon.example}</b> ${isAll
    ? reckon.example_all : fill(reckon.example_left, { fields: examples.map((field) => shortOf(field, data)).join(", ") })}</p>`;
}

// Stops in full, since what they ask comes before all else; the rest in one line. The person's own before those that follow from examples only, which say so.
function careful({ data, answer, origins, u }) {
  const { words } = data;
  const rows = answer.cautions.map((row) => ({ ...row, isExample: isExample(row.code, data, origins), sentence: fill(words.note[row.code], { ...u, ...row }) }));
  const sorted = [...rows.filter((row) => !row.isExample), ...rows.filter((row) => row.isExample)];
  const mark = (row) => (row.isExample ? html`<i class="example-warnings">${words.reckon.example}</i> ` : nothing);
  const whole = (row) => warning(row.level, html`${mark(row)}${words.caution[row.level]}`, termed(row.sentence));
  const [first, ...others] = sorted.filter(({ level }) => level === "caution");
  return html`
    ${sorted.filter(({ level }) => level === "stop").map(whole)}
    ${first ? html`
      <details class="careful">
        <summary>${shape("caution")}<span>${mark(first)}<b>${words.caution.caution}</b> ${first.sentence.match(/^.*?\.(?=\s|$)/)?.[0] ?? first.sentence}${others.length ? html` <b>+${others.length}</b>` : nothing}</span></summary>
        ${[first, ...others].map(whole)}
      </details>` : nothing}`;
}

// The sentence below the figure; a fact that is a code, as the class of a hydrant, in its words.
export const sumOf = ({ sum, facts }, words, u) => fill(words.told[sum], {
  ...u, ...Object.fromEntries(Object.entries(facts).map(([name, text]) => [name, words.text[name]?.[text] ?? text])),
});

// What hose as it was measured would make of number and sentence, where they are others by it: beside them, never in their place.
function measuredView({ data: { words }, answer, u }) {
  const { figure, measured } = answer;
  if (!measured) return nothing;
  const [least, most] = measured.answers;
  const tells = measured.answers.every((other) => other.figure.text && figure.text) && measured.answers.some((other) => other.figure.text !== figure.text);
  if (measured.whose === "modern") return tells ? html`<p class="answer-sum">${fill(words.pressure.modern_range, { ...u, least: least.figure.text, most: most.figure.text })}</p>` : nothing;
  const number = tells ? [`${least.figure.text} ${u[`u_${figure.kind}`]}`] : [];
  const sentence = sumOf(least, words, u);
  const says = sentence === sumOf(answer, words, u) ? [] : [sentence];
  return number.length + says.length ? html`<p class="answer-sum">${fill(words.reckon.by_department, { answer: [...number, ...says].join(". ") })}</p>` : nothing;
}

export function answerView({ data, answer, origins, stale, u }) {
  const { words } = data;
  const { label_none, ...said } = words.page[data.page];
  const label = said[`label_${answer?.sum}`] ?? said.label; // of a page with several questions, each has its own
  const sum = answer && sumOf(answer, words, u);
  const hasFigure = answer && answer.figure.text !== null;
  const isExamples = examplesIn(origins).length > 0;
  return html`
    <section class="answer plate water-plate ${isExamples ? "hatched" : ""}" data-example=${isExamples ? "" : nothing}>
      ${exampleView({ data, origins })}
      ${answer ? html`<p class="answer-label" id="answer-label">${fill(hasFigure ? label : label_none, { ...u, ...answer.facts })}</p>` : nothing}
      ${figureView(hasFigure ? { text: answer.figure.text, unit: u[`u_${answer.figure.kind}`] } : { stale: sum ?? stale })}
      ${hasFigure ? html`<p class="answer-sum">${sum}</p>` : nothing}
      ${answer ? measuredView({ data, answer, u }) : nothing}
      <div role="status">${answer ? careful({ data, answer, origins, u }) : nothing}</div>
    </section>`;
}
