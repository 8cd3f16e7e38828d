// The answer of a water or foam page: the number, the sentence below it, and what it calls to mind.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { figureView } from "../shared/figure.js";
import { fill } from "../shared/site.js";
import { warning } from "../shared/warning.js";
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

// Stops first; what follows from examples only is below, under their mark.
function warningsView({ data, answer, origins, u }) {
  const { words } = data;
  const levels = ["stop", "caution"].flatMap((level) => answer.cautions.filter((each) => each.level === level));
  const warnings = (ofExample) => levels.filter(({ code }) => isExample(code, data, origins) === ofExample)
    .map((each) => warning(each.level, words.caution[each.level], fill(words.note[each.code], { ...u, ...each })));
  const ofExample = warnings(true);
  return html`${warnings(false)}${ofExample.length ? html`<div class="example-warnings" data-example>
    <p class="example-mark"><b>${words.reckon.example}</b> ${words.reckon.example_warns}</p>${ofExample}</div>` : nothing}`;
}

export function answerView({ data, answer, origins, stale, u }) {
  const { words } = data;
  const { label, label_none } = words.page[data.page];
  const sum = answer && fill(words.told[answer.sum], { ...u, ...answer.facts });
  const hasFigure = answer && answer.figure.text !== null;
  return html`
    <section class="answer" data-example=${examplesIn(origins).length ? "" : nothing}>
      ${exampleView({ data, origins })}
      <div>
        ${answer ? html`<p class="answer-label" id="answer-label">${fill(hasFigure ? label : label_none, { ...u, ...answer.facts })}</p>` : nothing}
        ${figureView(hasFigure ? { text: answer.figure.text, unit: u[`u_${answer.figure.kind}`] } : { stale: sum ?? stale })}
        ${hasFigure ? html`<p class="answer-sum">${sum}</p>` : nothing}
      </div>
    </section>
    <div role="status">${answer ? warningsView({ data, answer, origins, u }) : nothing}</div>`;
}
