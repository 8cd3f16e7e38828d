// The power path as a drawing: what turns, where the air is, what is joined to what. A function of a plain state:
// { engine: "off|idle|raised", gear: "neutral|pump", collar: "road|between|pump", selector: "road|centre|pump",
//   air: { road, pump } each "full|leaving|empty", shaft_turning, pump_turning, wheels_locked, switch_closed,
//   lights: { engaged, ok, throttle } each true, false or null where only the rig can say,
//   speedometer: "zero|up" or null, and where it is so: rolls (as it should), grinding, strains, moved;
//   figures: { engine, speed, pressure, u_road_speed, u_pressure } as text where there are gauges to read }
import { html, nothing, svg } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../shared/site.js";

const COLLAR = { pump: 208, between: 228, road: 248 };
const LEVER = { road: 166, centre: 228, pump: 290 };
const SHAFT = 222;
const LAMPS = ["engaged", "ok", "throttle"];

export const drawingView = (state, words) => html`
  <svg class="path-drawing" viewBox="0 0 340 424" role="img" aria-label=${sayings(state, words).join(" ")}>
    ${LAMPS.map((name, place) => lamp(6 + 110 * place, state.lights[name], words.power[`lamp_${name}`], words))}
    ${wire(state)}${pump(state, words)}${speedometer(state, words)}
    <g transform="translate(0 -12)">
    ${machine(6, 64, words.power.engine, words.power[`engine_${state.engine}`], state.engine !== "off", state.figures && fill(words.power.engine_speed, state.figures))}
    ${shaft(70, 78, state.engine !== "off")}
    ${machine(78, 82, words.power.transmission, words.power[`gear_${state.gear}`], state.shaft_turning)}
    ${gearbox(state, words)}${wheels(state, words)}
    ${cylinder(state, words)}${selector(state, words)}
    </g>
  </svg>`;

// The drawing with its sentences, for a page that only shows it.
export const pictureView = (state, words) => html`
  <figure class="path">
    ${drawingView(state, words)}
    <figcaption><ul class="path-said">${sayings(state, words).map((line) => html`<li>${line}</li>`)}</ul></figcaption>
  </figure>`;

// The same in sentences, for whoever does not see the drawing, and to learn to read it.
export function sayings(state, words) {
  const told = words.power;
  const turning = [
    state.engine !== "off" && told.engine, state.shaft_turning && told.shaft, state.pump_turning && told.pump, rolling(state) && told.wheels,
  ].filter(Boolean);
  return [
    fill(told.turns, { what: turning.length ? turning.join(", ") : told.nothing }),
    told[`joined_${state.collar}`],
    told[`air_${airCode(state.air)}`],
    state.grinding ? told.grinds : null,
    state.moved ? told.runs_away : state.strains ? told.strains : null,
  ].filter(Boolean);
}

const rolling = (state) => state.moved || state.rolls;

function airCode(air) {
  const side = ["pump", "road"].find((name) => air[name] === "full");
  if (side) return air[side === "pump" ? "road" : "pump"] === "leaving" ? `${side}_leaving` : side;
  return air.pump === "leaving" || air.road === "leaving" ? "leaving" : "none";
}

const label = (x, y, text, kind = "") => svg`<text class="path-label ${kind}" x=${x} y=${y}>${text}</text>`;

// A round arrow: this part turns, whatever is said by motion.
const turnSign = (x, y) => svg`
  <g class="path-turn" transform="translate(${x} ${y})"><path d="M-7 2A7.500 7.500 0 1 1 0 8"/><path d="M-3.500 4.500 0.500 8l-3.500 4"/></g>`;

function lamp(x, lit, name, words) {
  const state = lit === null ? "unknown" : lit ? "on" : "off";
  const [first, ...rest] = name.split(" ");
  return svg`
    <g class="path-lamp path-lamp-${state}">
      <rect x=${x} y="4" width="106" height="46" rx="6"/>
      ${label(x + 6, 23, rest.length > 1 ? `${first} ${rest[0]}` : first, "path-start")}
      ${label(x + 6, 41, rest.at(-1), "path-start")}
      <circle cx=${x + 88} cy="17" r="6"/>
      <text class="path-state path-end" x=${x + 102} y="43">${words.power[`lamp_is_${state}`]}</text>
    </g>`;
}

// From the switch at the collar to the lamp: what the light knows.
const wire = (state) => svg`<path class="path-wire ${state.switch_closed ? "path-wire-live" : ""}" d="M236 154V62H59V50"/>`;

const pump = (state, words) => svg`
  <rect class="path-part ${state.pump_turning ? "path-turning" : ""}" x="181" y="134" width="10" height="22"/>
  <circle class="path-part ${state.pump_turning ? "path-turning" : ""}" cx="186" cy="104" r="32"/>
  ${label(186, 98, words.power.pump)}
  ${state.pump_turning ? turnSign(186, 112) : label(186, 115, words.power.still, "path-small")}
  ${state.figures ? label(104, 110, `${state.figures.pressure} ${state.figures.u_pressure}`, "path-state") : nothing}`;

function speedometer(state, words) {
  const needle = { zero: "M288 92 272 104", up: "M288 92 299 76" }[state.speedometer];
  return svg`
    <path class="path-dial" d="M270 108A25 25 0 1 1 306 108"/>
    ${needle ? svg`<path class="path-needle" d=${needle}/>` : label(288, 98, "?", "path-state")}
    ${state.figures ? label(288, 126, `${state.figures.speed} ${state.figures.u_road_speed}`, "path-state") : nothing}
    ${label(290, 142, words.power.speedometer, "path-small")}`;
}

const machine = (x, width, name, state, turns, figure) => svg`
  <rect class="path-part ${turns ? "path-turning" : ""}" x=${x} y="192" width=${width} height="60" rx="4"/>
  ${label(x + width / 2 - 2, 184, name, "path-small")}
  ${label(x + width / 2, turns ? 216 : 227, state, "path-state")}
  ${turns ? turnSign(x + width / 2, 234) : nothing}
  ${figure ? label(x + width / 2, 268, figure, "path-small") : nothing}`;

const shaft = (from, to, turns) => svg`
  <path class="path-shaft" d="M${from} ${SHAFT}H${to}"/>
  <path class="path-stripe ${turns ? "path-moving" : ""}" d="M${from} ${SHAFT}H${to}"/>`;

// A gear seen from its edge: a block with lines for its teeth.
const gear = (x, top, height, turns) => svg`
  <rect class="path-part ${turns ? "path-turning" : ""}" x=${x} y=${top} width="22" height=${height}/>
  <path class="path-teeth ${turns ? "path-moving" : ""}" d="M${x + 11} ${top}V${top + height}"/>`;

function gearbox(state, words) {
  const centre = COLLAR[state.collar];
  return svg`
    <rect class="path-case" x="166" y="160" width="118" height="108" rx="6"/>
    ${gear(175, 166, 20, state.pump_turning)}
    ${gear(175, 186, 72, state.pump_turning)}
    ${gear(257, 194, 56, rolling(state))}
    ${shaft(160, 255, state.shaft_turning)}
    <rect class="path-switch ${state.switch_closed ? "path-switch-closed" : ""}" x="199" y="166" width="62" height="20" rx="3"/>
    ${label(230, 180, words.power.switch, "path-small path-on-switch")}
    <path class="path-plunger" d="M208 186V${state.collar === "pump" ? 204 : 198}"/>
    <path class="path-fork" d="M${centre} 238V300"/>
    <rect class="path-collar" x=${centre - 13} y="204" width="26" height="36" rx="2"/>
    ${state.grinding ? svg`<path class="path-clash" d="M${centre} 187l7 16 17-7-7 17 16 7-16 7 7 17-17-7-7 16-7-16-17 7 7-17-16-7 16-7-7-17 17 7z"/>${label(228, 262, words.power.grind, "path-small")}` : nothing}
    <path class="path-leader" d="M154 281H${centre}"/>
    ${label(150, 286, words.power.collar, "path-small path-end")}`;
}

const wheels = (state, words) => svg`
  ${shaft(279, 300, rolling(state))}
  <circle class="path-part path-tyre" cx="314" cy=${SHAFT} r="22"/>
  ${rolling(state) ? turnSign(314, SHAFT - 3) : state.wheels_locked ? svg`<path class="path-lock" d="M306 221h16v12h-16zM309 221v-5a5 5 0 0 1 10 0v5"/>` : nothing}
  ${label(337, 262, words.power.wheels, "path-small path-end")}
  ${label(337, 282, state.moved ? words.power.move : state.wheels_locked ? words.power.held : "", "path-small path-end")}`;

const AIR_LINE = { full: "path-air-full", leaving: "path-air-leaving", empty: "" };

function cylinder(state, words) {
  const piston = COLLAR[state.collar];
  return svg`
    <rect class="path-part" x="166" y="290" width="124" height="30"/>
    ${chamber(166, piston - 166, state.air.road, words)}
    ${chamber(piston, 290 - piston, state.air.pump, words)}
    <rect class="path-collar" x=${piston - 5} y="290" width="10" height="30"/>
    ${label(150, 309, words.power.cylinder, "path-small path-end")}`;
}

const chamber = (x, width, air, words) => (air === "empty" ? nothing : svg`
  <rect class="path-chamber path-chamber-${air}" x=${x} y="291" width=${width} height="28"/>
  ${label(x + width / 2, 310, words.power.air, "path-small")}`);

function selector(state, words) {
  return svg`
    ${[["road", 180], ["pump", 276]].map(([side, x]) => svg`
      <path class="path-air ${AIR_LINE[state.air[side]]}" d="M${x} 320V352"/>
      ${state.air[side] === "leaving" ? exhaust(side, words) : nothing}`)}
    <rect class="path-part" x="140" y="352" width="176" height="46" rx="6"/>
    <path class="path-lever" d="M228 392 ${LEVER[state.selector]} 362"/><circle class="path-knob" cx=${LEVER[state.selector]} cy="363" r="8"/>
    ${["road", "centre", "pump"].map((place) => label(LEVER[place], 416, words.power[`at_${place}`], place === state.selector ? "path-here" : "path-small"))}
    <rect class="path-part" x="6" y="366" width="90" height="38" rx="19"/>
    ${label(51, 390, words.power.tanks, "path-small")}
    <path class="path-air path-air-full" d="M96 385H140"/>
    ${label(228, 432, words.power.selector, "path-small")}`;
}

// Air that leaves by the exhaust of its side: three strokes that spread.
function exhaust(side, words) {
  const x = side === "road" ? 136 : 320;
  const way = side === "road" ? -1 : 1;
  return svg`<path class="path-puff" d="M${x} 356l${way * 12}-8M${x} 362l${way * 16} 0M${x} 368l${way * 12} 8"/>
    ${side === "road" ? label(134, 342, words.power.exhaust, "path-small path-end") : label(337, 342, words.power.exhaust, "path-small path-end")}`;
}
