// How a verdict is shown: a word, a shape and a colour that say the same.
import { html, nothing, svg } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../shared/site.js";
import { minutes } from "../shared/times.js";

const SHAPES = {
  pass: svg`<circle cx="14" cy="14" r="13"/><path class="mark-line" d="m7.5 14.5 4.5 4.5 8.5-9.5"/>`,
  fail: svg`<path d="M8.5 1h11L27 8.5v11L19.5 27h-11L1 19.5v-11z"/><path class="mark-line" d="m9 9 10 10M19 9 9 19"/>`,
  not_proven: svg`<rect class="mark-open" x="2" y="2" width="24" height="24" rx="3"/><path class="mark-dash" d="M8 14h12"/>`,
};

export const mark = (status) => html`<svg class="mark mark-${status}" viewBox="0 0 28 28" aria-hidden="true">${SHAPES[status]}</svg>`;

// A verdict in words, with its shape.
export const verdictView = (status, words, more = nothing) =>
  html`<span class="verdict">${mark(status)}<b>${words.status[status]}</b>${more}</span>`;

// A reading that was taken well before or after the time it counts for.
export const offText = ({ due_s: due, off_s: off }, words) => (off == null ? "" : ` ${fill(words.run[off < 0 ? "early" : "late"], { at: minutes(due) })}`);

// Why a part is left out: the tester's reason, or that no pump is primed from a source under pressure.
export const reasonOf = ({ not_done: reason }, words) => (reason ? fill(words.test.not_done_kept, { reason }) : words.test.no_priming);

// What a finished test that did not fail lacks to be a pass, part by part.
export const unproven = ({ words, answer: { verdict } }) => (verdict.status !== "not_proven" ? nothing
  : fill(words.sheet.not_proven_told, { parts: verdict.tests.filter(({ status }) => status === "not_proven").map(({ id }) => words.test_name[id]).join(", ") }));

// The limits of a figure, such as "≥ 150".
export const limitText = (figure) =>
  [figure.least_text !== null && `≥ ${figure.least_text}`, figure.most_text !== null && `≤ ${figure.most_text}`].filter(Boolean).join(", ");

// The mark of a figure: no tick beside one that is too close to tell.
export const figureMark = ({ status, is_close }) => mark(is_close && status === "pass" ? "not_proven" : status);

// What a run calls attention to without failing, a sentence each.
export const cautionsOf = ({ cautions }, words) => cautions.map(({ code, value_text: value, limit_text: limit }) => fill(words.caution[code], { value, limit }));

// One judged figure: its value against its limit, and how far it may be off.
export function figureView(figure, label, unit, words) {
  if (figure.kind === "check") return nothing;
  return html`
    <div class="judged judged-${figure.status}">
      ${figureMark(figure)}
      <b class="judged-value">${label ? html`<span class="judged-name">${label}</span> ` : nothing}${figure.value_text ?? "—"} <small>${unit}</small></b>
      <span class="judged-limit">${limitText(figure)}${figure.value !== null && figure.band_text ? html` · ±${figure.band_text}` : nothing}</span>
      ${figure.is_close ? html`<span class="judged-close">${words.code.close}</span>` : nothing}
    </div>`;
}
