// Pressure from the pump to one nozzle, over the length of the hose, with the height of the ground below it.
import { html, nothing, svg } from "../../vendor/lit-html/lit-html.js";
import { fold } from "../shared/fold.js";
import { numberOf } from "../shared/site.js";

const LEFT = 8;
const RIGHT = 352;
const TOP = 30;
const FOOT = 150; // where the pressure is nothing
const GROUND = [168, 212]; // highest and lowest ground

// The lines on the way from the pump to `id`.
function way(lines, id) {
  const found = [];
  for (let line = lines.find((each) => each.id === id); line; line = lines.find((each) => each.id === line.feeder)) found.unshift(line);
  return found;
}

export const fallView = (page) => fold({ name: "fall", summary: page.words.fall.title, kind: "section", redraw: page.work },
  () => (page.answer?.lines.every(({ fall }) => fall) ? drawn(page) : nothing));

function drawn({ answer, selected, words, u, labelOf }) {
  const on = way(answer.lines, selected);
  const end = on.at(-1).fall.lengths[1] || 1;
  const pump = numberOf(answer.pressure);
  const most = Math.max(pump, ...on.flatMap(({ fall }) => fall.pressures), 1);
  const x = (length) => LEFT + ((RIGHT - LEFT) * length) / end;
  const y = (pressure) => FOOT - ((FOOT - TOP) * Math.max(pressure, 0)) / most;
  const heights = on.flatMap(({ fall }) => fall.heights);
  const [low, high] = [Math.min(0, ...heights), Math.max(0, ...heights)];
  const ground = (height) => GROUND[1] - ((GROUND[1] - GROUND[0]) * (height - low)) / (high - low || 1);
  const steps = on.flatMap(({ fall }) => [
    [fall.lengths[0], fall.pressures[0]], [fall.lengths[1], fall.pressures[1]], [fall.lengths[1], fall.pressures[2]],
  ]);
  const path = [[0, pump], ...steps].map(([length, pressure]) => `${x(length)} ${y(pressure)}`).join("L");
  const rises = high > low;
  const slope = on.flatMap(({ fall }) => [0, 1].map((side) => `${x(fall.lengths[side])} ${ground(fall.heights[side])}`)).join("L");
  return html`
      <p>${labelOf(selected)}</p>
      <svg class="fall" viewBox="0 0 360 ${rises ? 240 : 176}" role="img" aria-label=${words.fall.title}>
        <path class="fall-area" d="M${x(0)} ${FOOT}L${path}L${x(end)} ${FOOT}Z"/>
        <path class="fall-line" d="M${path}"/>
        <path class="fall-foot" d="M${LEFT} ${FOOT}H${RIGHT}"/>
        ${on.slice(0, -1).map(({ fall, outlet }) => svg`
          <path class="fall-mark" d="M${x(fall.lengths[1])} ${FOOT}V${y(fall.pressures[2])}"/>
          <text class="fall-text" x=${x(fall.lengths[1])} y=${y(fall.pressures[1]) - 8} text-anchor="middle">${outlet}</text>`)}
        <text class="fall-text" x=${LEFT} y=${Math.max(y(pump) - 8, 20)}>${answer.pressure} ${u.u_pressure}</text>
        <text class="fall-text" x=${RIGHT} y=${y(on.at(-1).fall.pressures[2]) - 8} text-anchor="end">${on.at(-1).outlet} ${u.u_pressure}</text>
        <text class="fall-name" x=${RIGHT} y=${FOOT + 18} text-anchor="end">${round(end)} ${u.u_length}</text>
        ${rises ? svg`
          <path class="fall-ground" d="M${x(0)} 236L${slope}L${x(end)} 236Z"/>
          <text class="fall-name" x=${LEFT} y=${FOOT + 18}>${words.fall.ground} ${round(heights.at(-1))} ${u.u_length}</text>` : nothing}
      </svg>`;
}

const round = (number) => String(Math.round(number * 10) / 10);
