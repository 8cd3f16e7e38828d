// The storey below the power path: what moves the collar. Air pushes a piston, a motor turns a screw, or a lever pulls a rod; above each its
// fork, below it the control in the cab.
import { nothing, svg } from "../../vendor/lit-html/lit-html.js";
import { text } from "./pieces.js";

const FORK = "M200 252V306H"; // from the collar down
const PISTON = { road: 250, between: 200, pump: 150 }; // air on a side pushes the piston away from it
const LEVER = { road: 150, centre: 200, pump: 250 };

// Air is dotted: close where it fills a side, far apart where it leaves.
function air({ air: sides, collar }, power) {
  const piston = PISTON[collar];
  const chamber = (from, to, amount) => (amount === "empty" ? nothing : svg`<path class="path-air" data-air=${amount} d=${[325, 332, 339].map((y) => `M${from + 4} ${y}H${to - 7}`).join("")}/>`);
  return svg`
    <path class="path-rod path-fork" d=${`${FORK}${piston}V318`}/>
    ${text(10, 336, power.cylinder, "path-quiet", "start")}
    <rect class="path-part" x="130" y="318" width="140" height="28"/>
    ${chamber(131, piston, sides.road)}${chamber(piston, 269, sides.pump)}
    <rect class="path-piston" x=${piston - 5} y="318" width="10" height="28"/>
    ${[{ side: "road", x: 142 }, { side: "pump", x: 258 }].map(({ side, x }) => svg`
      <path class="path-pipe" data-air=${sides[side]} d=${`M${x} 346V372`}/>
      ${sides[side] === "leaving" ? text(x + (side === "road" ? -10 : 10), 366, power.exhaust, "path-quiet", side === "road" ? "end" : "start") : nothing}`)}`;
}

// A nut runs on the screw and takes the fork along; only a wire comes from the cab.
function electric({ collar }, power) {
  const nut = PISTON[collar];
  return svg`
    <path class="path-rod path-fork" d=${`${FORK}${nut}V324`}/>
    ${text(10, 338, power.screw, "path-quiet", "start")}
    <path class="path-rod" d=${`M130 332${Array.from({ length: 14 }, (_, turn) => `L${135 + 10 * turn} ${turn % 2 ? 337 : 327}`).join("")}`}/>
    <rect class="path-piston" x=${nut - 8} y="322" width="16" height="20"/>
    <rect class="path-part" x="272" y="318" width="34" height="28" rx="4"/>${text(289, 338, power.motor, "path-strong")}
    <path class="path-wire" d="M289 346V360H200V372"/>`;
}

// The same rod from the lever to the collar: what one does, the other does.
const lever = ({ selector }, power) => svg`
  <path class="path-rod path-fork" d=${`${FORK}${LEVER[selector]}V377`}/>
  ${text(10, 338, power.rod, "path-quiet", "start")}`;

const MOVED_BY = { air, electric, lever };

export const storey = (state, { power }) => svg`
  <path class="path-rule" d="M0 302H360"/>
  ${MOVED_BY[state.shift ?? "air"](state, power)}
  ${text(10, 398, power.selector_short, "path-quiet", "start")}
  <rect class="path-part" x="118" y="372" width="164" height="40" rx="20"/>
  ${["road", "centre", "pump"].map((at) => (at === state.selector ? nothing : text(LEVER[at], 397, power[`at_${at}`], "path-small")))}
  <circle class="path-knob" cx=${LEVER[state.selector]} cy="392" r="15"/>
  ${text(292, 398, power[`at_${state.selector}`], "path-strong", "start")}`;
