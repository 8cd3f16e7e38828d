// Before water: the answers that are not yes before the engine is raised, the way to them, and who went on without them.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { colon, fill } from "../shared/site.js";
import { dayTime } from "../shared/times.js";
import { warning } from "../shared/warning.js";
import { textView } from "./entries.js";
import { missingWord } from "./missing.js";

export function beforeView(view) {
  const { answer, record, words, act } = view;
  const { open, override, wants } = answer.before;
  if (!open.length) return nothing;
  if (override) return html`
    ${warning("caution", words.run.before_word, whoWent(override, view))}
    ${openView(override.open, view)}`;
  const parts = [...new Set(open.map(({ test }) => test))];
  return html`
    <section class="question hatched before-water"><p>${words.run.before}</p>
      <div class="acts">${parts.map((name) => html`<a class="key" href="#${record.id}/${name}">${words.test_name[name]}</a>`)}</div>
      <details><summary>${words.run.override}</summary>
        ${openView(open, view)}
        ${["name", "reason"].map((part) => textView({ id: `override-${part}`, label: words.run[`override_${part}`], value: record.override?.[part], change: (text) => act.override(part, text) }))}
        <p>${words.run.override_kept}</p>
        <button type="button" class="key key-wide key-danger" ?disabled=${wants.length > 0} @click=${() => act.goOn()}>${words.run.override_key}</button>
      </details></section>`;
}

// How many answers are open, and which at a touch: a long list would push the readings off the screen.
const openView = (open, view) => html`
  <details class="still-open"><summary>${view.words.run.override_open}${colon} ${open.length}</summary>
    <ul class="listed">${open.map((row) => html`<li>${openText([row], view)}</li>`)}</ul></details>`;

// Who went on, when, why and without which answers.
export const overrideText = (override, view) => `${whoWent(override, view)} ${view.words.run.override_open}${colon} ${openText(override.open, view)}.`;

const whoWent = ({ name, reason, wall }, { words }) => fill(words.run.overridden, { name, reason, time: dayTime(wall) });

const openText = (open, view) => open.map(({ test, check, value }) => check === "not_done"
  ? `${view.words.test_name[test]}${colon} ${view.words.code.not_done}`
  : `${missingWord(check, view)} (${view.words.condition[value] ?? view.words.run.unanswered})`).join("; ");
