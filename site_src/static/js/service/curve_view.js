// calc.service.curve's picture: what is asked, today's points with their bands, earlier points.
import { html, svg } from "../../vendor/lit-html/lit-html.js";

const LEFT = 48, RIGHT = 470, TOP = 14, BOTTOM = 250;
const x = (share) => LEFT + share * (RIGHT - LEFT);
const y = (share) => BOTTOM - share * (BOTTOM - TOP);

const SHAPES = {
  pass: (point) => svg`<circle class="curve-today" cx=${x(point.flow)} cy=${y(point.net)} r="4.500"/>`,
  fail: (point) => svg`<path class="curve-today" d="M${x(point.flow) - 5} ${y(point.net) - 5}l10 10m0-10l-10 10"/>`,
  not_proven: (point) => svg`<circle class="curve-point" cx=${x(point.flow)} cy=${y(point.net)} r="4.500"/>`,
};

export function curveView({ curve, words, u }) {
  const asked = [...curve.asked].sort((one, other) => one.flow - other.flow || other.net - one.net);
  return html`
    <svg class="curve-picture" viewBox="0 0 480 290" role="img" aria-label=${words.sheet.curve}>
      ${curve.flow_marks.map(({ at, text }) => svg`<path class="curve-grid" d="M${x(at)} ${TOP}V${BOTTOM}"/><text x=${x(at)} y=${BOTTOM + 16} text-anchor="middle">${text}</text>`)}
      ${curve.net_marks.map(({ at, text }) => svg`<path class="curve-grid" d="M${LEFT} ${y(at)}H${RIGHT}"/><text x=${LEFT - 6} y=${y(at) + 4} text-anchor="end">${text}</text>`)}
      <path class="curve-axis" d="M${LEFT} ${TOP}V${BOTTOM}H${RIGHT}"/>
      <text x=${RIGHT} y=${BOTTOM + 32} text-anchor="end">${words.run.flow}, ${u.u_flow}</text>
      <text x="4" y=${TOP - 2}>${words.run.net}, ${u.u_pressure}</text>
      <path class="curve-asked" d=${asked.map((point, count) => `${count ? "L" : "M"}${x(point.flow)} ${y(point.net)}`).join("")}/>
      ${asked.map((point) => svg`<rect class="curve-point" x=${x(point.flow) - 5} y=${y(point.net) - 5} width="10" height="10"/>`)}
      ${curve.earlier.map((point) => svg`<path class="curve-earlier" d="M${x(point.flow)} ${y(point.net) - 6}l6 10h-12z"/>`)}
      ${curve.today.map((point) => svg`
        <path class="curve-axis" d="M${x(point.flow)} ${y(point.net - point.net_band)}V${y(point.net + point.net_band)}M${x(point.flow - point.flow_band)} ${y(point.net)}H${x(point.flow + point.flow_band)}"/>
        ${SHAPES[point.status](point)}`)}
    </svg>
    <p>${words.sheet.curve_told}${curve.earlier.length ? ` ${words.sheet.curve_earlier} ${[...new Set(curve.earlier.map((point) => point.name))].join(", ")}.` : ""}</p>`;
}
