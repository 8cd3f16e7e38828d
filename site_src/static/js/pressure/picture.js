// The lay drawn from pump to nozzles, with the pressure at each joint.
import { html, svg } from "../../vendor/lit-html/lit-html.js";

const RIGHT = 352;

function hose(from, to, bore_in) {
  const bend = (from.x + to.x) / 2;
  const path = `M${from.x} ${from.y}C${bend} ${from.y} ${bend} ${to.y} ${to.x} ${to.y}`;
  return svg`<path class="picture-hose" stroke-width=${3 + 2 * bore_in} d=${path}/>`;
}

const psi = (x, y, told, anchor = "start") => svg`<text class="picture-psi" x=${x} y=${y} text-anchor=${anchor}>${told}</text>`;

const name = (x, y, told, anchor = "start") => svg`<text class="picture-name" x=${x} y=${y} text-anchor=${anchor}>${told}</text>`;

// A nozzle with its pressure and flow, clear of the hose that comes from above or below.
const nozzle = ({ x, y }, line, u, below = false) => svg`
  <path class="picture-box" d="M${x} ${y - 9}l28 4v10l-28 4z"/>
  ${psi(RIGHT, below ? y + 34 : y - 16, `${line.outlet} ${u.u_pressure}`, "end")}
  ${name(RIGHT, below ? y + 54 : y + 28, `${line.flow} ${u.u_flow}`, "end")}`;

export function pictureView({ answer, lines, shelf, labels, words, u, shown }) {
  const read = Object.fromEntries(answer.lines.map((line) => [line.id, line]));
  const bore = (typed) => shelf.hoses[typed.hose].bore_in;
  const told = (typed) => `${labels[typed.hose]} · ${shown("length", typed.length)} ${u.u_length}`;
  const [first, ...branches] = lines;
  const mid = branches.length ? 110 : 66;
  const pump = { x: 58, y: mid };
  const drawn = branches.length ? wye() : svg`
    ${hose(pump, { x: 318, y: mid }, bore(first))}
    ${nozzle({ x: 316, y: mid }, read[first.id], u)}
    ${name(180, mid + 28, told(first), "middle")}`;

  function wye() {
    const joint = { x: 172, y: mid };
    return svg`
      ${hose(pump, joint, bore(first))}
      ${name(68, mid + 28, told(first))}
      ${branches.map((typed, place) => {
        const end = { x: 316, y: place ? mid + 62 : mid - 62 };
        return svg`
          ${hose(joint, end, bore(typed))}
          ${nozzle(end, read[typed.id], u, place === 1)}
          ${name(150, end.y + (place ? 28 : -16), `${typed.id} · ${told(typed)}`, "middle")}`;
      })}
      <circle class="picture-joint" cx=${joint.x} cy=${joint.y} r="10"/>
      ${psi(joint.x + 2, joint.y - 20, `${read[first.id].outlet} ${u.u_pressure}`, "end")}`;
  }

  return html`
    <svg class="picture" viewBox="0 0 360 ${branches.length ? 236 : 116}" role="img" aria-label=${words.pressure.picture}>
      <rect class="picture-box" x="8" y=${mid - 22} width="52" height="44" rx="4"/>
      ${psi(8, mid - 44, `${answer.pressure} ${u.u_pressure}`)}
      ${name(8, mid + 42, words.pressure.pump)}
      ${drawn}
    </svg>`;
}
