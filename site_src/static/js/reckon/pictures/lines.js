// From the source by its hose to the pump as one line, with the pressure where it stands: hydrant, relay, two pumpers, eductor.
import { svg } from "../../../vendor/lit-html/lit-html.js";
import { inlet, junction, nozzle, pipe } from "../../line/signs.js";
import { fill } from "../../shared/site.js";
import { PUMP, WIDE, figure, hydrant as hydrantSign, name, pump } from "./parts.js";

const CURVE = { left: 8, right: 336, top: 20, foot: 96 };

// The hydrant's curve; below it what stands at hydrant and pump while the flow that is wanted runs.
export function hydrant({ picture, words, u, bore, hose }) {
  const at = ({ x, y }) => ({ x: CURVE.left + (CURVE.right - CURVE.left) * x, y: CURVE.foot - (CURVE.foot - CURVE.top) * y });
  const path = picture.curve.map(([x, y]) => at({ x, y })).map(({ x, y }, place) => `${place ? "L" : "M"}${x.toFixed(1)} ${y.toFixed(1)}`).join("");
  const [test, floor] = [at(picture.test), at(picture.floor)];
  const { line } = picture;
  const y = 142;
  const now = `${picture.test.flow} ${u.u_flow} · ${picture.test.pressure} ${u.u_pressure}`;
  return svg`
    <path class="picture-axis" d="M${CURVE.left} ${CURVE.top}V${CURVE.foot}H${CURVE.right}"/>
    <path class="picture-low" d="M${CURVE.left} ${floor.y}H${CURVE.right}"/>
    <path class="picture-line" d=${path}/>
    ${name(CURVE.left, 14, `${picture.static} ${u.u_pressure} ${words.picture.static}`, "start")}
    <circle class="picture-joint" cx=${test.x} cy=${test.y} r="6"/>
    ${name(WIDE - 8, 14, now, "end")}
    <circle class="picture-box" cx=${floor.x} cy=${floor.y} r="7"/>
    ${figure(floor.x - 12, Math.min(floor.y + 20, CURVE.foot - 8), `${picture.floor.flow} ${u.u_flow}`, "end")}
    ${pipe(`M22 ${y}H${WIDE - 8 - PUMP}`, { bore })}
    ${hydrantSign(22, y)}
    ${pump(WIDE - 8 - PUMP, y)}
    ${figure(44, y - 15, line.hydrant, "start")}
    ${figure(WIDE - 16 - PUMP, y - 15, line.intake, "end")}
    ${name((44 + WIDE - 16 - PUMP) / 2, y - 15, `${line.flow} ${u.u_flow}`)}
    ${name((44 + WIDE - 16 - PUMP) / 2, y + 28, `${hose} · ${line.length} ${u.u_length}`)}`;
}

const MANY = 4; // pumpers that are drawn; of more the last stretch is broken

export function relay({ picture, words, u, bore, hose }) {
  const many = picture.pumpers > MANY;
  const count = many ? MANY : picture.pumpers;
  const [left, right] = [34, WIDE - 34];
  const slope = Math.max(-24, Math.min(24, picture.climb * 200));
  const at = (place) => ({ x: left + ((right - left) * place) / (count - 1), y: 74 - slope * (place / (count - 1) - 0.5) });
  const places = Array.from({ length: count }, (_, place) => place);
  const [first, next, last] = [at(0), at(1), at(count - 1)];
  return svg`
    ${places.slice(1).map((place) => {
      const [from, to] = [at(place - 1), at(place)];
      return pipe(`M${from.x} ${from.y}L${to.x} ${to.y}`, { bore, state: many && place === count - 2 ? "apart" : "flows" });
    })}
    ${places.map((place) => {
      const { x, y } = at(place);
      const isLast = place === count - 1;
      return svg`${pump(x - PUMP / 2, y)}${figure(isLast ? WIDE - 8 : place ? x : 8, y - 23, isLast ? picture.floor : picture.pressure, isLast ? "end" : place ? "middle" : "start")}`;
    })}
    ${name(8, first.y - 42, `${words.picture.discharge}, ${u.u_pressure}`, "start")}${name(WIDE - 8, last.y - 42, words.picture.intake, "end")}
    ${name(8, first.y + 34, words.picture.water, "start")}${name(WIDE - 8, last.y + 34, words.picture.fire, "end")}
    ${name(count === 2 ? (first.x + next.x) / 2 : Math.max((first.x + next.x) / 2, 100), (first.y + next.y) / 2 + (count === 2 ? 34 : 54), `${hose} · ${picture.leg} ${u.u_length}`)}`;
}

// Tandem: the first pumps into the second. Dual: the first takes its share and what is left goes on.
export function joint({ picture, words, u, bore, hose }) {
  const y = 58;
  const [one, two] = [70, 220];
  return svg`
    ${pipe(`M8 ${y}H${WIDE - 24}`, { bore })}
    ${picture.way === "dual" ? hydrantSign(22, y) : null}
    ${pump(one, y)}${pump(two, y)}${inlet(WIDE - 24, y)}
    ${figure(one - 6, y - 23, picture.supply, "end")}
    ${figure(one + PUMP + 6, y - 23, picture.from, "start")}
    ${figure(two - 6, y - 23, picture.intake, "end")}
    ${figure(two + PUMP + 6, y - 23, picture.wanted, "start")}
    ${name(8, 14, `${words.picture.intake}, ${u.u_pressure}`, "start")}
    ${name(WIDE - 8, 14, words.picture.discharge, "end")}
    ${name((one + two + PUMP) / 2, y + 36, `${picture.flow} ${u.u_flow}`)}
    ${name((one + two + PUMP) / 2, y + 56, `${hose} · ${picture.length} ${u.u_length}`)}`;
}

// The pump feeds a connection in a wall; behind it a riser climbs to the outlet, or sprinklers are fed.
export function connection({ picture, words, u, bore, hose }) {
  const [y, wall, riser, top] = [116, 246, 288, 40];
  const pumpAt = 30;
  return svg`
    <path class="picture-axis" d="M${wall + 3} ${top - 26}V${y + 26}H${WIDE - 4}"/>
    ${pipe(`M8 ${y}H${wall}`, { bore })}
    ${pipe(picture.outlet === null ? `M${wall} ${y}H${WIDE - 4}` : `M${wall} ${y}H${riser}V${top}H${riser + 18}`, {})}
    ${picture.outlet === null ? null : nozzle(riser + 18, top)}
    ${pump(pumpAt, y)}${inlet(wall, y)}
    ${figure(pumpAt + PUMP + 6, y - 23, picture.pump, "start")}
    ${figure(wall - 8, y - 23, picture.connection, "end")}
    ${picture.outlet === null ? null : svg`${figure(wall - 8, top + 6, picture.outlet, "end")}${name(wall - 8, top - 16, words.picture.upstairs, "end")}
      ${name(riser + 12, (y + top) / 2, `${picture.height} ${u.u_rise}`, "start")}`}
    ${name(8, 14, u.u_pressure, "start")}
    ${name(wall - 8, y - 46, words.picture.fdc, "end")}
    ${name(pumpAt + PUMP + 6, y + 28, `${picture.flow} ${u.u_flow}`, "start")}
    ${name(8, y + 50, `${picture.hoses > 1 ? `${picture.hoses} × ` : ""}${hose} · ${picture.length} ${u.u_length}`, "start")}`;
}

const DRAWN = 6; // laterals that are told apart

// The trunk from the pump up or down its slope, a lateral at each wye, and where the next pump stands at most.
export function hoselay({ picture, words, u, bore, hose }) {
  const [left, right] = [8 + PUMP, WIDE - 56];
  const y = (share) => 82 - picture.slope * 24 * (share - 0.5);
  const x = (share) => left + (right - left) * share;
  const count = Math.min(picture.laterals, DRAWN);
  const wyes = Array.from({ length: count }, (_, place) => 1 - place * Math.min(0.2, 0.6 / count));
  return svg`
    ${pipe(`M${left} ${y(0)}L${right} ${y(1)}`, { bore })}
    ${wyes.map((share) => svg`${pipe(`M${x(share)} ${y(share)}v22h14`, { wide: 5 })}${nozzle(x(share) + 14, y(share) + 22)}${junction(x(share), y(share), 8)}`)}
    ${pump(8, y(0))}
    ${picture.next === null ? null : svg`<path class="picture-low" d="M${x(picture.next)} ${y(picture.next) - 18}v36"/>${name(Math.min(x(picture.next), 200), 150, words.picture.next_pump)}`}
    ${figure(8, y(0) - 23, picture.pump, "start")}
    ${figure(WIDE - 8, y(1) - 20, picture.wye, "end")}
    ${figure(WIDE - 8, y(1) + 48, picture.nozzle, "end")}
    ${name(8, 14, u.u_pressure, "start")}
    ${name(WIDE - 8, 14, words.picture.last_wye, "end")}
    ${name(8, 132, `${picture.flow} ${u.u_flow}${picture.slope === 0 ? "" : ` · ${picture.slope > 0 ? "↑" : "↓"} ${picture.rise.replace(/^\D/, "")} ${u.u_rise}`}`, "start")}
    ${name(8, picture.next === null ? 154 : 162, `${hose} · ${picture.length} ${u.u_length}`, "start")}`;
}

// The eductor takes from its pail while what is behind it does not push back too hard.
export function foam({ picture, words, u, bore, hose }) {
  const y = 58;
  const x = 150;
  const state = picture.is_drawing ? "flows" : "waits";
  return svg`
    ${pipe(`M8 ${y}H${x}`, { bore })}
    ${pipe(`M${x} ${y}H${WIDE - 30}`, { bore })}
    ${pipe(`M${x} ${y}V112`, { state, wide: 5 })}
    ${pump(8, y)}${junction(x, y, 12)}${nozzle(WIDE - 32, y)}
    <path class="picture-axis" d="M${x - 26} 92v38h52v-38"/>
    ${picture.is_drawing ? null : svg`<path class="line-bar" d="M${x - 12} 84h24"/>`}
    ${figure(8, y - 20, picture.pump, "start")}
    ${figure(x - 18, y - 20, picture.inlet, "end")}
    ${figure(x + 18, y - 20, picture.back, "start")}
    ${figure(WIDE - 8, y - 20, picture.nozzle, "end")}
    ${name(8, 14, u.u_pressure, "start")}
    ${name(x - 18, 14, words.picture.inlet, "end")}
    ${picture.to_length === null ? null : name(8, y + 34, `${picture.to_length} ${u.u_length}`, "start")}
    ${name(x + 18, 14, fill(words.picture.back, picture), "start")}
    ${name(WIDE - 8, y + 34, `${picture.eductors > 1 ? `${picture.eductors} × ` : ""}${hose} · ${picture.length} ${u.u_length}`, "end")}
    ${name(x + 36, 126, `${picture.concentrate} ${u.u_volume} · ${picture.percent} %`, "start")}`;
}
