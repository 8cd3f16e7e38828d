// The power path as a large picture: the collar as a set of points, blue exactly as far as power reaches, the switch on a thin wire
// to its lamp, and below a rule, quieter, what moves the collar (power/storey.js). A function of a plain state:
// { engine: "off|idle|raised", gear: "neutral|pump", collar: "road|between|pump", selector: "road|centre|pump",
//   air: { road, pump } each "full|leaving|empty", shaft_turning, pump_turning, wheels_locked, switch_closed,
//   lights: { engaged, ok, throttle } each true, false or null where only the rig can say,
//   and where it is so: shift ("air" left out, "electric", "lever"), rolls (as it should), grinding, strains, moved; figures: { engine, speed, pressure, u_road_speed, u_pressure } as text }
import { html, nothing, svg } from "../../vendor/lit-html/lit-html.js";
import { lampSign } from "../line/lamp.js";
import { crossBar, junction } from "../line/signs.js";
import { fill } from "../shared/site.js";
import { text, turnSign, way } from "./pieces.js";
import { rolling, sayings } from "./said.js";
import { storey } from "./storey.js";

const TRUNK = 226;
const COLLAR = 200; // as in storey.js
const POINTS = { pump: `M${COLLAR - 24} ${TRUNK}C${COLLAR} ${TRUNK} ${COLLAR + 6} ${TRUNK - 6} ${COLLAR + 16} ${TRUNK - 20}`, between: `M${COLLAR - 24} ${TRUNK}H${COLLAR - 6}`, road: `M${COLLAR - 24} ${TRUNK}H${COLLAR + 24}` };
const LAMPS = ["engaged", "ok", "throttle"];

export const drawingView = (state, words) => html`
  <svg class="path-drawing" viewBox="0 0 360 424" role="img" aria-label=${sayings(state, words).join(" ")}>
    ${LAMPS.map((name, place) => lamp(4 + 118 * place, state.lights[name], words.power[`lamp_${name}`], words))}
    <path class="path-wire" ?data-live=${state.switch_closed} d="M61 60V72H${COLLAR}V112"/>
    ${text(COLLAR - 10, 90, words.power.one_switch, "path-quiet", "end")}
    ${storey(state, words)}${train(state, words)}
  </svg>`;

function lamp(x, lit, name, words) {
  const state = lit === null ? "expected" : lit ? "lit" : "dark";
  const word = { expected: "unknown", lit: "on", dark: "off" }[state];
  const [first, ...rest] = name.split(" ");
  return svg`
    <g class="path-lamp" data-state=${state} transform="translate(${x} 2)">
      <rect width="114" height="58" rx="8"/>
      <g transform="translate(18 29) scale(0.86)">${lampSign(state)}</g>
      ${text(37, 18, first, "", "start")}
      ${text(37, 34, rest.join(" "), "", "start")}
      ${text(37, 50, words.power[`lamp_is_${word}`], "path-strong", "start")}
    </g>`;
}

function train(state, words) {
  const { power } = words;
  const { figures, collar } = state;
  const runs = state.engine !== "off";
  const rolls = rolling(state);
  const shaft = state.shaft_turning ? "flows" : "waits";
  return svg`
    ${way(`M66 ${TRUNK}H84`, runs ? "flows" : "waits")}${way(`M150 ${TRUNK}H${COLLAR - 24}`, shaft)}
    ${way(`M${COLLAR + 14} ${TRUNK - 16}C228 ${TRUNK - 44} 232 142 258 142H284`, collar !== "pump" ? "apart" : state.pump_turning ? "flows" : "waits")}
    ${way(`M${COLLAR + 24} ${TRUNK}H300`, collar !== "road" ? "apart" : rolls ? "flows" : "waits")}
    <rect class="path-part" ?data-turns=${runs} x="10" y="196" width="56" height="60" rx="6"/>
    ${runs ? turnSign(38, 224) : nothing}${text(38, 274, power.engine)}
    ${text(38, 291, figures ? fill(power.engine_speed, figures) : power[`engine_${state.engine}`], "path-quiet")}
    <rect class="path-part path-gear" x="84" y="196" width="66" height="60" rx="6"/>
    ${text(117, 231, power[`gear_${state.gear}`], "path-strong")}${text(117, 274, power.transmission)}
    ${junction(COLLAR, TRUNK, 24)}<path class="path-points" ?data-turns=${state.shaft_turning} d=${POINTS[collar]}/>
    <path class="path-rod" d=${`M${COLLAR} 128V${TRUNK - 26}`}/>
    <rect class="path-switch" ?data-closed=${state.switch_closed} x=${COLLAR - 11} y="112" width="22" height="16" rx="2"/>
    ${text(COLLAR + 2, 274, power.collar, "path-strong path-over")}${text(COLLAR + 2, 291, power[`set_${collar}`], "path-quiet path-over")}
    <circle class="path-part" ?data-turns=${state.pump_turning} cx="314" cy="142" r="30"/>
    ${state.pump_turning ? turnSign(314, 140) : text(314, 147, power.still, "path-small")}
    ${text(352, 103, power.pump, "path-strong", "end")}
    ${figures ? text(280, 120, `${figures.pressure} ${figures.u_pressure}`, "path-strong", "end") : nothing}
    <circle class="path-part path-tire" ?data-turns=${rolls} cx="324" cy=${TRUNK} r="20"/>
    ${state.wheels_locked && !state.moved ? crossBar(296, TRUNK, 14) : nothing}
    ${text(352, 274, power.wheels, "", "end")}
    ${text(352, 291, state.moved ? power.move : figures ? `${figures.speed} ${figures.u_road_speed}` : state.wheels_locked ? power.held : "", state.moved ? "path-strong" : "path-quiet", "end")}
    ${state.grinding ? svg`<path class="path-clash" d=${`M${COLLAR + 30} ${TRUNK - 30}l7 14 15-5-5 15 14 7-14 7 5 15-15-5-7 14-7-14-15 5 5-15-14-7 14-7-5-15 15 5z`}/>${text(254, 190, power.grind, "path-strong", "start")}` : nothing}`;
}
