// The layout drawn from the pump on, one line to a row; a row is also the way to its settings.
import { html, nothing, svg } from "../../vendor/lit-html/lit-html.js";
import { everyLine, isJoint } from "./layout.js";

const ROW = 64;
const MID = ROW / 2;
const FIRST = 14; // where the pump stands
const WIDEST = 24; // between an outlet and the end of its hose
const MOST = 150; // width left to the drawing, however deep the layout
const [BETWEEN, SPREAD] = [7, ROW - 16]; // hoses side by side, and all of them

// For each row, whether the outlet it hangs on and those before it go on to a later row.
function goesOn(rows, place, level) {
  for (const { depth } of rows.slice(place + 1)) {
    if (depth < level) return false;
    if (depth === level) return true;
  }
  return false;
}

// Lines only, so that they may be stretched to the height of a row; symbols are drawn apart.
function rails(rows, place, at, bore) {
  const { line, depth } = rows[place];
  const rail = (level, from, to) => svg`<path class="map-rail" vector-effect="non-scaling-stroke" d="M${at(level)} ${from}V${to}"/>`;
  const runs = Number(line.runs);
  const between = Math.min(BETWEEN, SPREAD / runs);
  return [
    ...Array.from({ length: depth }, (_, level) => (goesOn(rows, place, level) ? rail(level, 0, ROW) : null)),
    place ? rail(depth, 0, MID) : null,
    goesOn(rows, place, depth) ? rail(depth, MID, ROW) : null,
    isJoint(line) ? rail(depth + 1, MID, ROW) : null,
    ...Array.from({ length: runs }, (_, run) => svg`
      <path class="map-hose" vector-effect="non-scaling-stroke" stroke-width=${2 + 1.6 * bore}
        d="M${at(depth)} ${MID + (run - (runs - 1) / 2) * between}H${at(depth + 1)}"/>`),
  ].filter(Boolean);
}

const pump = (x) => svg`<rect class="map-box" x=${x - 11} y=${MID - 16} width="22" height="32" rx="3"/>`;
const joint = (x) => svg`<circle class="map-joint" cx=${x} cy=${MID} r="9"/>`;
const nozzle = (x) => svg`<path class="map-box" d="M${x - 4} ${MID - 9}l22 5v8l-22 5z"/>`;
const inlet = (x) => svg`<path class="map-box" d="M${x - 3} ${MID - 12}h6v24h-6z"/>`;

function symbols({ line, depth }, place, at) {
  const end = isJoint(line) ? joint : line.end.kind === "inlet" ? inlet : nozzle;
  return [place === 0 ? pump(at(0)) : null, end(at(depth + 1))];
}

// `told(line)` says what a line is made of.
export function mapView({ layout, answer, selected, shelf, words, u, nameOf, told, endOf, act }) {
  const rows = everyLine(layout);
  const deepest = Math.max(...rows.map(({ depth }) => depth));
  const step = Math.min(WIDEST, MOST / (deepest + 1));
  const at = (level) => FIRST + level * step;
  const width = at(deepest + 1) + 20;
  const read = Object.fromEntries((answer?.lines ?? []).map((line) => [line.id, line]));
  return html`
    <ol class="map" aria-label=${words.pressure.picture}>
      ${rows.map((row, place) => {
        const { line } = row;
        const figures = read[line.id];
        return html`
          <li class="map-row" @click=${() => act.select(line.id)}>
            <span class="map-drawn" aria-hidden="true">
              <svg class="map-rails" width=${width} viewBox="0 0 ${width} ${ROW}" preserveAspectRatio="none">${rails(rows, place, at, shelf.hoses[line.hose].bore_in)}</svg>
              <svg class="map-ends" width=${width} viewBox="0 0 ${width} ${ROW}">${symbols(row, place, at)}</svg>
            </span>
            <button type="button" class="map-key" aria-pressed=${line.id === selected}>
              <span class="map-told"><b>${nameOf(line)}</b><span>${told(line)}</span>${isJoint(line) ? nothing : html`<span class="on-paper">${endOf(line)}</span>`}</span>
              <span class="map-read">${figures
                ? html`<b>${figures.outlet} ${u.u_pressure}</b><span>${figures.flow} ${u.u_flow}</span>`
                : html`<b>–</b>`}</span>
            </button>
          </li>`;
      })}
    </ol>`;
}
