// The lay drawn from pump to nozzles, with the pressure at each joint.
import { html, nothing, svg } from "../../vendor/lit-html/lit-html.js";

const MID = 105;

function hose(from, to, bore) {
  const bend = (from.x + to.x) / 2;
  return svg`<path class="picture-hose" stroke-width=${3 + 2 * bore} d="M${from.x} ${from.y}C${bend} ${from.y} ${bend} ${to.y} ${to.x} ${to.y}"/>`;
}

const psi = (at, text, anchor = "start") =>
  svg`<text class="picture-psi" x=${at.x} y=${at.y} text-anchor=${anchor}>${text}</text>`;

const name = (at, text, anchor = "start") =>
  svg`<text class="picture-name" x=${at.x} y=${at.y} text-anchor=${anchor}>${text}</text>`;

function nozzle(at, line, typed, words, below) {
  const down = below ? 34 : -16;
  return svg`
    <path class="picture-box" d="M${at.x} ${at.y - 9}l26 4v10l-26 4z"/>
    ${psi({ x: 352, y: at.y + down }, `${line.outlet} ${words.unit.pressure}`, "end")}
    ${name({ x: 352, y: at.y + down + (below ? 20 : -22) }, `${line.flow} ${words.unit.flow}`, "end")}`;
}

const hoseName = (typed, words, labels) => `${labels[typed.hose]} · ${typed.length} ${words.unit.length}`;

export function pictureView({ answer, lines, shelf, labels, words }) {
  const read = Object.fromEntries(answer.lines.map((line) => [line.id, line]));
  const bore = (typed) => shelf.hoses[typed.hose].bore_in;
  const pump = { x: 58, y: MID };
  const [first, ...branches] = lines;
  const joint = { x: 178, y: MID };
  const ends = branches.length ? [{ x: 312, y: 60 }, { x: 312, y: 150 }] : [{ x: 312, y: MID }];
  return html`
    <svg class="picture" viewBox="0 0 360 210" role="img" aria-label=${words.pressure.picture}>
      <rect class="picture-box" x="8" y=${MID - 24} width="52" height="48" rx="4"/>
      ${name({ x: 8, y: MID + 44 }, words.pressure.pump)}
      ${psi({ x: 8, y: MID - 34 }, `${answer.pressure} ${words.unit.pressure}`)}
      ${branches.length
        ? svg`
          ${hose(pump, joint, bore(first))}
          ${branches.map((typed, place) => hose(joint, ends[place], bore(typed)))}
          <circle class="picture-joint" cx=${joint.x} cy=${joint.y} r="10"/>
          ${psi({ x: joint.x - 4, y: joint.y - 22 }, read[first.id].outlet, "middle")}
          ${name({ x: 66, y: MID + 24 }, hoseName(first, words, labels))}
          ${branches.map((typed, place) => svg`
            ${nozzle(ends[place], read[typed.id], typed, words, place === 1)}
            ${name({ x: 186, y: place ? 202 : 20 }, `${typed.id} · ${hoseName(typed, words, labels)}`, "middle")}`)}`
        : svg`
          ${hose(pump, ends[0], bore(first))}
          ${nozzle(ends[0], read[first.id], first, words, false)}
          ${name({ x: 180, y: MID + 34 }, hoseName(first, words, labels), "middle")}`}
      ${nothing}
    </svg>`;
}
