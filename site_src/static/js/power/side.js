// A pump on a PTO or at the front of the engine, as large as the split shaft's: blue exactly as far as power reaches. No collar stands
// between engine and wheels. state: { engine, gear: "neutral|pump", collar: "road|pump", pump_turning, rolls, wheels_locked }.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { crossBar, junction } from "../line/signs.js";
import { text, turnSign, way } from "./pieces.js";
import { turning } from "./said.js";

const [TRUNK, BRANCH, JOIN] = [172, 66, 196];
const FROM = { pto: `M117 142V${BRANCH + 24}Q117 ${BRANCH} 141 ${BRANCH}H${JOIN - 24}`, front: `M38 142V${BRANCH + 24}Q38 ${BRANCH} 62 ${BRANCH}H${JOIN - 24}` };
const POINTS = { pump: `M${JOIN - 24} ${BRANCH}H${JOIN + 24}`, road: `M${JOIN - 24} ${BRANCH}C${JOIN - 8} ${BRANCH} ${JOIN + 2} ${BRANCH - 4} ${JOIN + 12} ${BRANCH - 18}` };

export function sideView(state, family, { power, drives }) {
  const isIn = state.collar === "pump";
  return html`
    <svg class="path-drawing path-side" viewBox="0 0 360 250" role="img" aria-label=${turning(state, power, family)}>
      ${way(`M66 ${TRUNK}H84`, "flows")}
      ${way(`M150 ${TRUNK}H300`, state.rolls ? "flows" : "waits")}
      ${way(FROM[family], family === "front" || isIn ? "flows" : "waits")}
      ${way(`M${JOIN + 24} ${BRANCH}H284`, isIn ? "flows" : "apart")}
      <rect class="path-part" data-turns x="10" y="142" width="56" height="60" rx="6"/>${turnSign(38, 170)}
      ${text(38, 220, power.engine)}
      <rect class="path-part path-gear" x="84" y="142" width="66" height="60" rx="6"/>
      ${text(117, 177, power[`gear_${state.gear}`], "path-strong")}${text(117, 220, power.transmission)}
      ${junction(JOIN, BRANCH, 24)}<path class="path-points" ?data-turns=${family === "front" || isIn} d=${POINTS[state.collar]}/>
      ${text(JOIN, BRANCH + 44, drives[`join_${family}`], "path-strong")}${text(JOIN, BRANCH + 61, drives[`put_${state.collar}`], "path-quiet")}
      <circle class="path-part" ?data-turns=${state.pump_turning} cx="314" cy=${BRANCH} r="30"/>
      ${state.pump_turning ? turnSign(314, BRANCH - 2) : text(314, BRANCH + 5, power.still, "path-small")}
      ${text(352, 22, power.pump, "path-strong", "end")}
      <circle class="path-part path-tire" ?data-turns=${state.rolls} cx="324" cy=${TRUNK} r="20"/>
      ${state.wheels_locked ? crossBar(296, TRUNK, 14) : nothing}
      ${text(352, 220, power.wheels, "", "end")}
      ${state.wheels_locked ? text(352, 237, power.held, "path-quiet", "end") : nothing}
    </svg>`;
}
