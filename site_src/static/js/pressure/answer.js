// The answer: the number for the panel, where the needle should stand, and what to be careful of.
import { html, nothing, svg } from "../../vendor/lit-html/lit-html.js";
import { fill, numberOf } from "../shared/site.js";
import { figureView } from "../shared/figure.js";
import { shape, warning } from "../shared/warning.js";

// A gauge face as found on many panels: its end, a labelled mark, a short mark.
const FACES = { US: [400, 100, 50], imperial: [400, 100, 50], SI: [2800, 700, 350], bar: [28, 7, 3.5] };
const SWEEP = 270;
const MOST_GATES = 2; // sentences that fit in sight with the number; more of them stand below it

const angle = (share) => Math.min(Math.max(share, 0), 1) * SWEEP - SWEEP / 2;

function mark(figure, [end, labelled]) {
  const long = figure % labelled === 0;
  const turn = ((angle(figure / end) - 90) * Math.PI) / 180;
  return svg`
    <path class=${long ? "gauge-mark-long" : "gauge-mark"} d="M100 ${long ? 24 : 20}V14" transform="rotate(${angle(figure / end)} 100 100)"/>
    ${long ? svg`<text class="gauge-text" x=${100 + 56 * Math.cos(turn)} y=${108 + 56 * Math.sin(turn)}>${figure}</text>` : nothing}`;
}

function gauge(answer, words, u, system) {
  const face = FACES[system];
  const [end, , short] = face;
  const share = numberOf(answer.pressure) / end;
  const marks = Array.from({ length: end / short + 1 }, (_, count) => mark(count * short, face));
  const told = fill(words.pressure.gauge, { ...u, pressure: answer.pressure });
  const off = share < 0 || share > 1;
  return html`
    <svg class="gauge" viewBox="0 0 200 200" role="img" aria-label=${off ? `${told}. ${words.pressure.gauge_off}` : told}>
      <circle class="gauge-face" cx="100" cy="100" r="94"/>
      <path class="gauge-needle" d="M100 120V26" transform="rotate(${angle(share)} 100 100)"/>${marks}
      <circle class="gauge-hub" cx="100" cy="100" r="9"/>
    </svg>`;
}

// The line at the pump that needs most: the one that is not gated.
function hardest({ lines }) {
  const atPump = lines.filter((line) => !line.feeder);
  return atPump.find((line) => !line.gate) ?? atPump[0];
}

// What the number is made of; parts that are nothing are left out.
function sum(line, words) {
  const parts = [
    ["friction", line.friction],
    [{ joint: "joint", open: "inlet" }[line.end] ?? "nozzle", line.outlet],
    ["elevation", line.elevation],
    ["appliance", line.appliance],
  ];
  return parts
    .filter(([, amount]) => numberOf(amount) !== 0)
    .map(([part, amount]) => fill(words.pressure[`part_${part}`], { amount }))
    .join(" + ")
    .replaceAll("+ -", "\u2212 ");
}

// One line is told whole; of several, which one sets the pressure, and what they flow together.
function facts({ lines, flow }, line, words, u, labelOf) {
  const several = lines.filter(({ feeder }) => !feeder).length > 1;
  const told = several ? "facts_several" : line.reaction === null ? "facts_joint" : "facts_nozzle";
  return fill(words.pressure[told], { ...u, ...line, flow, line: labelOf(line.id) });
}

// The department's own rule is named beside the answer, never in its place.
function ruled(by, words, u, labelOf) {
  if (!by) return nothing;
  const facts = { ...u, ...by, rule: words.rule[by.rule], line: labelOf(by.line) };
  return html`<b>${fill(words.pressure[by.code ? "rule_refuses" : "by_rule"], facts)}</b><br>`;
}

// The whole answer block. `stale` is the sentence to show while there is no answer, null while the calculator starts.
export function answerView({ layout, answer, stale, isExample, isRunning, words, u, system, labelOf, nameOf, lineOf }) {
  const gravity = answer && answer.pressure_psi < 0;
  const line = answer && hardest(answer);
  const worst = answer?.cautions[0];
  const isAdvised = worst?.level !== "stop" && worst?.code !== "above_working_pressure"; // past a hose's limit it is no order
  const label = !isAdvised ? "would_need" : layout.now.shut?.length ? "set_all_open" : "set";
  const throttled = answer ? gates(answer, words, u, { labelOf, nameOf, lineOf }) : [];
  const isInSight = isAdvised && throttled.length <= MOST_GATES;
  return html`
    <section class="answer" data-level=${worst?.level ?? nothing}>
      ${worst ? html`<p class="answer-flag">${shape(worst.level)}<span><b>${words.caution[worst.level]}</b> ${words.caution_short[worst.code]}</span></p>` : nothing}
      ${isExample ? html`<p class="answer-example">${words.pressure.example}</p>` : nothing}
      <div>
        <p class="answer-label" id="answer-label">${words.pressure[label]}</p>
        ${figureView(answer && !gravity ? { text: answer.pressure, unit: u.u_pressure } : { stale: gravity ? words.pressure.below_zero : stale })}
      </div>
      ${answer && isAdvised ? gauge(answer, words, u, system) : nothing}
      <div class="answer-gates" role="status">${isInSight ? throttled : nothing}</div>
    </section>
    <div class="answer-gates" role="status">${isInSight ? nothing : throttled}</div>
    ${!isRunning && !answer ? html`<p class="answer-more">${words.engine.loading}</p>` : nothing}
    ${answer ? html`<p class="answer-more">${layout.now.shut?.length ? html`<b>${words.now.for_all_open}</b><br>` : nothing}${sum(line, words)}<br>${ruled(answer.by_rule, words, u, labelOf)}${facts(answer, line, words, u, labelOf)}</p>` : nothing}
    <div role="status">${answer ? cautions(answer, words, u, labelOf) : nothing}</div>`;
}

// What each easier line's own gauge shall show: the pressure that line needs where it starts. One sentence for each joint.
function gates({ lines }, words, u, { labelOf, nameOf, lineOf }) {
  const gated = lines.filter((line) => line.gate);
  return [...new Set(gated.map(({ feeder }) => feeder))].map((feeder) => {
    const here = gated.filter((line) => line.feeder === feeder);
    const facts = feeder ? { joint: nameOf(lineOf(feeder)) } : {};
    const sentence = `gate${here.length > 1 ? "s" : ""}${feeder ? "" : "_pump"}`;
    const rows = here.map((line) => fill(words.pressure.gate_row, { ...u, line: labelOf(line.id), inlet: line.inlet })).join(" \u00b7 ");
    return html`<p>${fill(words.pressure[sentence], { ...u, ...facts, rows, line: labelOf(here[0].id), inlet: here[0].inlet })}</p>`;
  });
}

const cautions = (answer, words, u, labelOf) => answer.cautions.map((found) =>
  warning(found.level, words.caution[found.level], fill(words.caution[found.code], { ...u, ...found, line: labelOf(found.line) })));
