// The pump under this layout: where its water comes from, its rating with the working point, the speed to expect.
import { html, nothing, svg } from "../../vendor/lit-html/lit-html.js";
import { chips } from "../shared/controls.js";
import { fold } from "../shared/fold.js";
import { fill } from "../shared/site.js";
import { shape, warning } from "../shared/warning.js";
import { entryStepper } from "./fields.js";
import { hasThreePanes } from "./room.js";

export const WATERS = ["tank", "fed", "draft"];
const LEFT = 46;
const RIGHT = 346;
const TOP = 16;
const FOOT = 176;
const ENTRIES = { tank: [], fed: [["intake", "intake"]], draft: [["lift", "lift"], ["loss", "suction"]] };

export function pumpView({ layout, at_pump: atPump, rig, data, system, u, refusal, shown, act, work }) {
  const { words } = data;
  return fold({ name: "at_pump", begins: hasThreePanes, summary: words.at_pump.title, kind: "section", redraw: work }, () => html`
      ${chips({
        name: "water", legend: words.at_pump.source, value: layout.source.kind, change: (kind) => act.source({ kind }),
        choices: WATERS.map((id) => ({ id, label: words.at_pump[id] })),
      })}
      ${ENTRIES[layout.source.kind].map(([entry, name]) => entryStepper({
        of: "source", name, label: words.at_pump[name], entry: layout.source[entry], data, system, u, refusal, shown,
        change: (text) => act.source({ [entry]: act.tag(text) }),
      }))}
      ${atPump ? worked(atPump, rig, words, u) : nothing}`);
}

function worked({ net, power, supply, rating, engine, picture }, rig, words, u) {
  const told = (name, facts) => html`<p>${fill(words.at_pump[name], { ...u, ...facts })}</p>`;
  return html`
    <div role="status">${supply ? warning(supply.level, words.caution[supply.level], fill(words.at_pump[supply.code], { ...u, ...supply })) : nothing}</div>
    <p>${fill(words.at_pump.net, { ...u, net, power })}</p>
    ${rating === null ? told(rig ? "no_rating" : "no_rig") : html`
      ${chart(picture, words, u)}
      <p class="verdict">${rating.within ? nothing : shape("caution")}${fill(words.at_pump[rating.within ? "within" : `beyond_${rating.limit}`], { ...u, ...rating })}</p>
      ${rating.extrapolated ? told("extrapolated") : nothing}
      ${engine === null ? told("no_speeds") : told(engine.code ? "no_estimate" : engine.basis, engine)}`}`;
}

// The rating as a line, the day's point on it; axes are flow and net pressure.
function chart({ rating, point }, words, u) {
  const all = [...rating, point];
  const most = [0, 1].map((axis) => 1.15 * Math.max(...all.map((each) => each[axis])));
  const x = (flow) => LEFT + ((RIGHT - LEFT) * flow) / most[0];
  const y = (pressure) => FOOT - ((FOOT - TOP) * pressure) / most[1];
  const place = ([flow, pressure]) => `${x(flow)} ${y(pressure)}`;
  return html`
    <svg class="fall" viewBox="0 0 360 206" role="img" aria-label=${words.at_pump.chart}>
      <path class="fall-area" d="M${LEFT} ${FOOT}L${rating.map(place).join("L")}L${x(rating.at(-1)[0])} ${FOOT}Z"/>
      <path class="fall-line" d="M${rating.map(place).join("L")}L${x(rating.at(-1)[0])} ${FOOT}"/>
      <path class="fall-foot" d="M${LEFT} ${TOP}V${FOOT}H${RIGHT}"/>
      ${rating.slice(1).map((each) => svg`
        <text class="fall-name" x=${x(each[0])} y=${FOOT + 18} text-anchor="middle">${Math.round(each[0])}</text>
        <text class="fall-name" x=${LEFT - 4} y=${y(each[1]) + 5} text-anchor="end">${round(each[1])}</text>`)}
      <path class="fall-mark" d="M${LEFT} ${y(point[1])}H${x(point[0])}V${FOOT}"/>
      <path class="chart-point" d="M${x(point[0])} ${y(point[1]) - 11}l11 11l-11 11l-11 -11z"/>
      <text class="fall-name" x=${RIGHT} y=${FOOT - 6} text-anchor="end">${u.u_flow}</text>
      <text class="fall-name" x=${LEFT + 6} y=${TOP + 6}>${u.u_pressure}</text>
    </svg>`;
}

const round = (number) => String(number < 100 ? Math.round(number * 10) / 10 : Math.round(number)); // the margin holds four digits
