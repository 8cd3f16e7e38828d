// The power path on one line of 74 px, under every step: what turns now, and with dashes what is expected once the sign has come.
// power/of_step.js has the two states. Thick and colored: it turns. Thin: it stands. Dotted: it is not joined.
import { html, nothing, svg } from "../../vendor/lit-html/lit-html.js";
import { crossBar, junction } from "../line/signs.js";
import { colon } from "../shared/site.js";
import { turning } from "./said.js";

const TRUNK = 50;
const PUMP = 26;
// where each drive takes its power: the way to the junction, to the pump from there, and to the wheels past it
const WAYS = {
  split: { join: [176, TRUNK], feed: `M118 ${TRUNK}H176`, pump: `M176 ${TRUNK}C196 ${TRUNK} 198 ${PUMP} 220 ${PUMP}H262`, wheels: `M176 ${TRUNK}H262`, from: "shaft_turning" },
  pto: { join: [166, PUMP], feed: `M91 36V${PUMP + 6}Q91 ${PUMP} 97 ${PUMP}H166`, pump: `M166 ${PUMP}H262`, wheels: `M118 ${TRUNK}H262`, from: "runs" },
  front: { join: [166, PUMP], feed: `M34 36V${PUMP + 6}Q34 ${PUMP} 40 ${PUMP}H166`, pump: `M166 ${PUMP}H262`, wheels: `M118 ${TRUNK}H262`, from: "runs" },
};

// What each part of the line is in a state: "flows", "waits" or "apart".
function parts(state, family) {
  const runs = state.engine !== "off";
  const split = family === "split";
  return {
    engine: runs, gear: state.gear, collar: state.collar,
    feed: (split ? state.shaft_turning : runs) ? "flows" : "waits",
    pump: state.collar !== "pump" ? "apart" : state.pump_turning ? "flows" : "waits",
    wheels: split && state.collar !== "road" ? "apart" : state.rolls ? "flows" : "waits",
    pumping: state.pump_turning, rolls: Boolean(state.rolls), locked: state.wheels_locked, speed: state.engine,
  };
}

const way = (path, before, after) => svg`
  <path class="power-way line-${before}" d=${path}/>
  ${before === after ? nothing : svg`<path class="power-way power-then power-then-${after}" d=${path}/>`}`;

const text = (x, y, words, anchor = "middle") => svg`<text x=${x} y=${y} text-anchor=${anchor}>${words}</text>`;
const turned = (before, after) => (before === after ? before : `${before} → ${after}`);

// isSeen: whether any of what stands before was seen in this run. isOld: it is asked for once more.
export function powerLine({ before, after, family, isSeen, isOld, words: { power } }) {
  const ways = WAYS[family];
  const [was, is] = [parts(before, family), parts(after, family)];
  const isSame = JSON.stringify(was) === JSON.stringify(is);
  const name = (kind, part) => power[`line_${kind}_${part}`];
  const block = (one, other) => `power-block ${one ? "power-turns" : ""} ${one === other ? "" : "power-then"}`;
  const [x, y] = ways.join;
  const at = (place) => name(family === "split" ? "at" : "put", place);
  const where = isOld ? power.as_was : isSeen ? power.as_seen : power.as_begun;
  const label = [`${where}${colon} ${turning(before, power, family)}`, isSame ? power.no_change : `${power.expected}${colon} ${turning(after, power, family)}`].join(" ");
  return html`
    <svg class="power-line" viewBox="0 0 360 74" role="img" aria-label=${label}>
      ${text(12, 12, `${where}. ${isSame ? power.no_change : power.dashed}`, "start")}
      ${way(ways.wheels, was.wheels, is.wheels)}${way(ways.feed, was.feed, is.feed)}${way(ways.pump, was.pump, is.pump)}
      ${way(`M56 ${TRUNK}H64`, was.engine ? "flows" : "waits", is.engine ? "flows" : "waits")}
      <rect class=${block(was.engine, is.engine)} x="12" y="36" width="44" height="22" rx="4"/>
      ${text(34, 72, turned(name("engine", was.speed), name("engine", is.speed)).replace(/^(.+) → /, "→ "))}
      <rect class="power-block ${was.gear === is.gear ? "" : "power-then"}" x="64" y="36" width="54" height="22" rx="4"/>
      ${text(91, 52, name("gear", is.gear))}
      ${junction(x, y, 8)}
      ${text(186, 72, `${name("join", family)}${colon} ${turned(at(was.collar), at(is.collar))}`)}
      <rect class=${block(was.pumping, is.pumping)} x="262" y="14" width="34" height="24" rx="12"/>
      ${text(302, 31, power.line_pump, "start")}
      <circle class="power-wheel ${block(was.rolls, is.rolls)}" cx="279" cy=${TRUNK} r="10"/>
      ${was.locked || is.locked ? svg`<g class=${was.locked === is.locked ? "" : "power-bar-then"}>${crossBar(258, TRUNK, 9)}</g>` : nothing}
      ${text(298, 56, is.locked ? power.line_held : power.line_wheels, "start")}
    </svg>`;
}
