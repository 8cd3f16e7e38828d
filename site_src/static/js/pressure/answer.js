// The answer: the number for the panel, where the needle should stand, and what to be careful of.
import { html, nothing, svg } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../site.js";
import { warning } from "../warning.js";

const FACE_PSI = 400; // a gauge face as found on many panels
const SWEEP = 270;

const angle = (psi) => (Math.min(Math.max(psi, 0), FACE_PSI) / FACE_PSI) * SWEEP - SWEEP / 2;

function mark(psi) {
  const long = psi % 100 === 0;
  const turn = ((angle(psi) - 90) * Math.PI) / 180;
  return svg`
    <path class=${long ? "gauge-mark-long" : "gauge-mark"} d="M100 ${long ? 24 : 20}V14" transform="rotate(${angle(psi)} 100 100)"/>
    ${long ? svg`<text class="gauge-text" x=${100 + 56 * Math.cos(turn)} y=${108 + 56 * Math.sin(turn)}>${psi}</text>` : nothing}`;
}

const marks = Array.from({ length: FACE_PSI / 50 + 1 }, (_, count) => mark(count * 50));

function gauge(answer, words) {
  const told = fill(words.pressure.gauge, { pressure: answer.pressure, psi: words.unit.pressure });
  const off = answer.pressure_psi < 0 || answer.pressure_psi > FACE_PSI;
  return html`
    <svg class="gauge" viewBox="0 0 200 200" role="img" aria-label=${off ? `${told}. ${words.pressure.gauge_off}` : told}>
      <circle class="gauge-face" cx="100" cy="100" r="94"/>${marks}
      <path class="gauge-needle" d="M100 120V26" transform="rotate(${angle(answer.pressure_psi)} 100 100)"/>
      <circle class="gauge-hub" cx="100" cy="100" r="9"/>
    </svg>`;
}

// What the number is made of; parts that are nothing are left out.
function sum(answer, words) {
  const [first] = answer.lines;
  const parts = [
    ["friction", first.friction],
    [first.end === "wye" ? "joint" : "nozzle", first.outlet],
    ["elevation", first.elevation],
    ["appliance", first.appliance],
  ];
  return parts
    .filter(([, amount]) => Number(amount) !== 0)
    .map(([part, amount]) => fill(words.pressure[`part_${part}`], { amount }))
    .join(" + ")
    .replaceAll("+ -", "\u2212 ");
}

const facts = ({ lines: [first] }, words) =>
  fill(first.end === "wye" ? words.pressure.facts_joint : words.pressure.facts_nozzle, first);

// The whole answer block. `stale` is the sentence to show while there is no answer.
export function answerView({ answer, stale, words, labelOf }) {
  const gravity = answer && answer.pressure_psi < 0;
  return html`
    <section class="answer">
      <div>
        <p class="answer-label">${words.pressure.set}</p>
        ${answer && !gravity
          ? html`<output class="answer-figure"><b>${answer.pressure}</b> <span>${words.unit.pressure}</span></output>`
          : html`<output class="answer-figure" data-stale>${gravity ? words.pressure.below_zero : stale}</output>`}
      </div>
      ${answer ? html`${gauge(answer, words)}<p class="answer-sum">${sum(answer, words)}<br>${facts(answer, words)}</p>` : nothing}
    </section>
    ${answer ? cautions(answer, words, labelOf) : nothing}`;
}

function cautions(answer, words, labelOf) {
  const gated = answer.lines.filter((line) => line.gate && line.feeder);
  return html`
    ${answer.cautions.map((found) =>
      warning(found.level, words.caution[found.level], fill(words.caution[found.code], { ...found, line: labelOf(found.line) })))}
    ${gated.map((line) => html`<p class="notice">${fill(words.pressure.gate, {
      line: labelOf(line.id), gate: line.gate, psi: words.unit.pressure })}</p>`)}`;
}
