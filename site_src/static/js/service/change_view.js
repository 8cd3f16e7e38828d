// Change of a rated point against acceptance: the figure, its picture, its trend and every test, of calc.service.history.
import { html, nothing, svg } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../shared/site.js";
import { day } from "../shared/times.js";

const LEFT = 44, RIGHT = 350, TOP = 10, BOTTOM = 150;
const x = (share) => LEFT + 12 + share * (RIGHT - LEFT - 24);
const y = (share) => BOTTOM - share * (BOTTOM - TOP);

const SHAPES = {
  pass: (mark) => svg`<circle class="change-met" cx=${x(mark.x)} cy=${y(mark.y)} r="5"/>`,
  fail: (mark) => svg`<path class="change-line" d="M${x(mark.x) - 5} ${y(mark.y) - 5}l10 10m0-10l-10 10"/>`,
  not_proven: (mark) => svg`<circle class="change-open" cx=${x(mark.x)} cy=${y(mark.y)} r="5"/>`,
};

export function pointView(point, { words, u, dates }) {
  const read = point.rows.filter((row) => row.change_text !== null);
  const newest = read.at(-1);
  const isCompared = newest && newest.test !== point.base;
  return html`
    <section class="change">
      <h3>${words.test_name[point.id]}</h3>
      ${isCompared ? html`
        <p class="change-now"><b>${newest.change_text} %</b> <span>± ${newest.band_text} % ${fill(words.years.since, { date: day(dates[point.base]) })}</span></p>
        <p class="change-side change-${newest.side}"><b>${words.side[newest.side]}</b></p>` : html`<p>${words.years.no_change}</p>`}
      ${point.picture ? picture(point, words) : nothing}
      <p>${point.trend
        ? `${fill(words.years.trend, { per_year: point.trend.text, band: point.trend.band_text })} ${point.trend.is_clear ? words.years.trend_clear : words.years.trend_unclear}`
        : words.years.no_trend}</p>
      <details class="section"><summary>${words.years.every}</summary><div class="scroll" tabindex="0" role="region" aria-label=${words.test_name[point.id]}><table class="readings">
        <thead><tr><th scope="col">${words.years.date}</th><th scope="col">${words.years.change}, %</th><th scope="col">${words.run.net}, ${u.u_pressure}</th><th scope="col">${words.field.engine_rpm}, ${u.u_speed}</th></tr></thead>
        <tbody>${[...point.rows].reverse().map((row) => html`<tr><th scope="row">${day(dates[row.test])}<small>${words.status[row.status] ?? nothing}</small></th>
          <td>${row.change_text ?? "—"}${row.band_text ? html`<small>± ${row.band_text}</small>` : nothing}</td>
          <td>${row.net_text ?? "—"}${row.net_band_text ? html`<small>± ${row.net_band_text}</small>` : nothing}</td><td>${row.engine_text ?? "—"}</td></tr>`)}</tbody>
      </table></div></details>
    </section>`;
}

const picture = ({ id, picture: seen }, words) => html`
  <svg class="change-picture" viewBox="0 0 360 180" role="img" aria-label=${fill(words.years.picture, { point: words.test_name[id] })}>
    ${seen.years.map(({ x: at, text }) => svg`<path class="change-grid" d="M${x(at)} ${TOP}V${BOTTOM}"/><text x=${x(at)} y=${BOTTOM + 18} text-anchor="middle">${text}</text>`)}
    <path class="change-axis" d="M${LEFT} ${y(seen.base)}H${RIGHT}M${LEFT} ${TOP}V${BOTTOM}"/>
    <text x=${LEFT - 6} y=${y(seen.base) + 5} text-anchor="end">0 %</text>
    <text x=${LEFT - 6} y=${TOP + 8} text-anchor="end">+${seen.top_text}</text>
    <text x=${LEFT - 6} y=${BOTTOM} text-anchor="end">−${seen.top_text}</text>
    ${seen.line ? svg`<path class="change-trend" d="M${x(0)} ${y(seen.line[0])}L${x(1)} ${y(seen.line[1])}"/>` : nothing}
    ${seen.marks.map((mark) => svg`<path class="change-axis" d="M${x(mark.x)} ${y(mark.low)}V${y(mark.high)}"/>${SHAPES[mark.status](mark)}`)}
  </svg>`;
