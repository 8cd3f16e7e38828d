// The plate: the one number to act on, what it is made of, its scale with the limits, and what to be careful of.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { scale as scaleView } from "../line/scale.js";
import { figureView } from "../shared/figure.js";
import { isUnfolded, unfold } from "../shared/fold.js";
import { refusalOf } from "../shared/refusal.js";
import { fill, numberOf } from "../shared/site.js";
import { shape, warning } from "../shared/warning.js";
import { KINDS } from "./fields.js";
import { linesOf } from "./layout.js";
import { NOW, tabOf } from "./tabs.js";

const MOST_GATES = 2; // sentences that fit in sight with the number; more of them stand below it

const NO_SCALE = { end: 1, step: 2 }; // its room, until there is one

// Why there is no answer, or null where it only has not come yet.
export function staleOf({ refusal, layout, selected }, words, labelOf) {
  if (!refusal) return null;
  const named = { ...refusal, line: labelOf(refusal.line) };
  if (!(refusal.field in KINDS)) return refusalOf(words, named);
  const isElsewhere = refusal.line !== selected && linesOf(layout).some(({ id }) => id === refusal.line);
  return fill(words.pressure[isElsewhere ? "waiting_line" : "waiting"], { ...named, entry: words.entry[refusal.field] });
}

// `stale` is the sentence to show while there is no answer, null while the calculator starts.
export function plateView(page) {
  const { layout, answer, flowing, tab, stale, isExample, isLast, was, isRunning, words, u, refusal, act } = page;
  const isNow = tab === NOW;
  const shown = isNow ? flowing : answer;
  const gravity = !isNow && answer?.pressure_psi < 0;
  const cautions = shown?.cautions ?? [];
  const [worst] = cautions;
  const isAdvised = worst?.level !== "stop" && worst?.code !== "above_working_pressure"; // past a hose's limit it is no order
  const label = isNow ? words.now.gauge : words.pressure[isLast ? "last" : !isAdvised ? "would_need" : layout.now.shut?.length ? "set_all_open" : "set"];
  const throttled = answer && !isNow ? gates(page) : [];
  const isInSight = isAdvised && throttled.length <= MOST_GATES;
  return html`
    <section class="answer plate pressure-plate ${isExample ? "hatched" : ""}" data-level=${worst?.level ?? nothing}>
      ${isExample ? html`<p class="answer-example">${words.pressure.example}</p>` : nothing}
      <p class="plate-head"><span id="answer-label">${label}</span><span>${shown ? fill(words.pressure.in_all, { ...u, flow: shown.flow }) : nothing}</span></p>
      <div class="plate-row">
        ${figureView(shown && !gravity ? { text: shown.pressure, unit: u.u_pressure } : { stale: gravity ? words.pressure.below_zero : stale })}
        ${!shown || gravity ? nothing : isNow ? required(page) : sum(page)}
      </div>
      ${stale && tabOf(refusal, layout) && !isShown(refusal, page) ? html`<button type="button" class="key key-wide" @click=${() => act.toEntry(refusal)}>${words.pressure.to_entry}</button>` : nothing}
      ${scaled(page, shown, worst)}
      ${isNow && flowing?.asked ? html`<p class="plate-note">${fill(words.now.asked, { ...u, asked: flowing.asked })}</p>` : nothing}
      ${isNow || !was ? nothing : html`<p class="plate-note">${fill(words.pressure.was, { ...u, was })}</p>`}
      ${isNow || !layout.now.shut?.length || !answer ? nothing : html`<p class="plate-note">${words.now.for_all_open}</p>`}
      ${ruled(page)}
      ${ranged(page)}
      <div role="status">${careful(cautions, page)}</div>
      <div class="answer-gates" role="status">${isInSight ? throttled : nothing}</div>
    </section>
    <div class="answer-gates" role="status">${isInSight ? nothing : throttled}</div>
    ${!isRunning && !answer ? html`<p class="plate-note">${words.engine.loading}</p>` : nothing}`;
}

// Whether the refused entry is the one that is open.
const isShown = (refusal, { selected, tab, layout }) => (refusal.line ?? selected) === selected && tab === tabOf(refusal, layout);

function scaled({ scale, width, words, u, labelOf }, shown, worst) {
  const limits = shown && scale ? scale.limits.map((limit) => ({
    at: limit.at, level: limit.code === "hose" ? "stop" : "rated", label: fill(words.pressure[`limit_${limit.code}`], { ...u, ...limit, line: labelOf(limit.line) }),
  })) : [];
  const { end, step } = scale ?? NO_SCALE;
  return scaleView({
    now: shown && scale ? numberOf(shown.pressure) : null, end, step, limits, level: worst?.level, width: width - 2,
    name: [fill(words.pressure.scale, { ...u, end }), ...limits.map(({ label }) => label)].join(". "), off: words.pressure.scale_off,
  });
}

// What the number is made of along the way that sets it, and their sum where it reads otherwise than the number. A tap opens every figure with its working.
function sum({ answer: { sum: parts, pressure }, words, act }) {
  const amountOf = (part) => parts[part].join(" + ").replaceAll("+ -", "\u2212 ").replace(/^-/, "\u2212");
  return html`
    <button type="button" class="plate-sum" @click=${() => act.toPart("workings")}>${["friction", "nozzle", "inlet", "elevation", "appliance"].filter((part) => parts[part].length).map((part) => html`
      <span>${fill(words.pressure[`part_${part}`], { amount: amountOf(part) })}</span>`)}${parts.total === pressure ? nothing : html`<span>= ${parts.total}</span>`}</button>`;
}

// How the gauge stands to what the layout requires; a tap brings it there.
const required = ({ layout, answer, words, u, act }) => !layout.now.pressure
  ? html`<p class="plate-sum">${words.now.as_required}</p>`
  : html`<button type="button" class="plate-sum" @click=${() => act.now({ pressure: "" })}><span>${fill(words.now.as_asked, { ...u, ...answer })}</span></button>`;

// The department's own rule is named beside the answer, never in its place.
function ruled({ answer, tab, words, u, labelOf }) {
  const by = tab === NOW ? null : answer?.by_rule;
  if (!by) return nothing;
  return html`<p class="plate-note"><b>${fill(words.pressure[by.code ? "rule_refuses" : "by_rule"], { ...u, ...by, rule: words.rule[by.rule], line: labelOf(by.line) })}</b></p>`;
}

// What hose would need as it was measured of late, where such a figure is known: beside the answer, never in its place.
// A department's own comes first.
function ranged({ answer, tab, words, u }) {
  if (tab === NOW || !(answer?.department || answer?.modern)) return nothing;
  return html`<p class="plate-note">${answer.department ? fill(words.pressure.by_department, { ...u, pressure: answer.department }) : fill(words.pressure.modern_range, { ...u, ...answer.modern })}</p>`;
}

// One line for all there is to be careful of; the whole text opens on a tap.
function careful(cautions, { words, u, labelOf }) {
  if (!cautions.length) return nothing;
  const [worst, ...others] = cautions;
  const told = (found) => warning(found.level, words.caution[found.level], fill(words.caution[found.code], { ...u, ...found, line: labelOf(found.line) }));
  return html`
    <details class="plate-careful" data-level=${worst.level} ?open=${isUnfolded("careful")} @toggle=${({ target }) => unfold("careful", target.open)}>
      <summary>${shape(worst.level)}<span><b>${words.caution[worst.level]}</b> ${words.caution_short[worst.code]}${others.length ? ` · ${fill(words.pressure.and_more, { count: others.length })}` : ""}</span></summary>
      ${cautions.map(told)}
    </details>
    <div class="on-paper">${cautions.map(told)}</div>`;
}

// What each easier line's own gauge shall show: the pressure that line needs where it starts. One sentence for each joint.
function gates({ answer: { lines }, words, u, labelOf, nameOf, lineOf }) {
  const gated = lines.filter((line) => line.gate);
  return [...new Set(gated.map(({ feeder }) => feeder))].map((feeder) => {
    const here = gated.filter((line) => line.feeder === feeder);
    const facts = feeder ? { joint: nameOf(lineOf(feeder)) } : {};
    const sentence = `gate${here.length > 1 ? "s" : ""}${feeder ? "" : "_pump"}`;
    const rows = here.map((line) => fill(words.pressure.gate_row, { ...u, line: labelOf(line.id), inlet: line.gauge })).join(" \u00b7 ");
    return html`<p>${fill(words.pressure[sentence], { ...u, ...facts, rows, line: labelOf(here[0].id), inlet: here[0].gauge })}</p>`;
  });
}
