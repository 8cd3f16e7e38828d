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
  if (override) return warning("caution", words.run.before_word, overrideText(override, view));
  const parts = [...new Set(open.map(({ test }) => test))];
  return html`
    <section class="question hatched before-water"><p>${words.run.before}</p>
      <div class="acts">${parts.map((name) => html`<a class="key" href="#${record.id}/${name}">${words.test_name[name]}</a>`)}</div>
      <details><summary>${words.run.override}</summary>
        <p>${words.run.override_open}${colon} ${openText(open, view)}</p>
        ${["name", "reason"].map((part) => textView({ id: `override-${part}`, label: words.run[`override_${part}`], value: record.override?.[part], change: (text) => act.override(part, text) }))}
        <p>${words.run.override_kept}</p>
        <button type="button" class="key key-wide key-danger" ?disabled=${wants.length > 0} @click=${() => act.goOn()}>${words.run.override_key}</button>
      </details></section>`;
}

// Who went on, when, why and without which answers.
export const overrideText = ({ name, reason, wall, open }, view) =>
  fill(view.words.run.overridden, { name, reason, time: dayTime(wall), open: openText(open, view) });

const openText = (open, view) => open.map(({ test, check, value }) => check === "not_done"
  ? `${view.words.test_name[test]}${colon} ${view.words.code.not_done}`
  : `${missingWord(check, view)} (${view.words.condition[value] ?? view.words.run.unanswered})`).join("; ");
