// Where the water comes from: the tank by its quarters, the lift from open water, tenders that go round.
import { svg } from "../../../vendor/lit-html/lit-html.js";
import { pipe } from "../../line/signs.js";
import { fill } from "../../shared/site.js";
import { PUMP, WIDE, figure, name, pump } from "./parts.js";

const TANK = { left: 8, right: 108, top: 8, foot: 128 };

export function tank({ picture, words, u }) {
  if (!picture.marks) return stream({ picture, u });
  const rows = [{ left: 1, text: words.picture.full }, ...picture.marks.map((mark) => ({
    left: mark.left, text: `${mark.volume} ${u.u_volume}`, after: fill(words.picture.after, { after: mark.after.text, unit: u[`u_${mark.after.kind}`] }) }))];
  const high = TANK.foot - TANK.top;
  const y = 150;
  return svg`
    <path class="picture-water" d="M${TANK.left} ${TANK.top}H${TANK.right}v${high * (1 - picture.stays.share)}H${TANK.left}z"/>
    <rect class="picture-axis" x=${TANK.left} y=${TANK.top} width=${TANK.right - TANK.left} height=${high}/>
    ${picture.stays.share > 0 ? name(WIDE - 8, TANK.foot - 1, fill(words.picture.stays, { ...u, stays: picture.stays.text }), "end") : null}
    ${rows.map(({ left, text, after }) => {
      const mark = TANK.top + high * (1 - left);
      return svg`<path class="picture-tick" d="M${TANK.right - 16} ${mark}h26"/>${name(TANK.right + 16, mark + (left === 1 ? 10 : 6), text, "start")}${after ? svg`<text class="picture-after" x=${WIDE - 8} y=${mark + 6} text-anchor="end">${after}</text>` : null}`;
    })}
    ${pipe(`M58 ${TANK.foot}V${y}H${WIDE - 8 - PUMP}`, { wide: 10 })}
    ${pump(WIDE - 8 - PUMP, y)}
    ${name(WIDE - 16 - PUMP, y + 22, `${picture.flow} ${u.u_flow}`, "end")}`;
}

// The bed of a stream with its width and depth, and the pump that draws from it.
function stream({ picture, u }) {
  const [y, bank, far] = [60, 96, 232];
  return svg`
    <path class="picture-water" d="M${bank} ${y}H${far}l-20 62H${bank + 20}z"/>
    <path class="picture-axis" d="M8 ${y}H${bank}l20 62H${far - 20}l20 -62H${WIDE - 4}"/>
    ${figure(far, y - 10, `${picture.width} ${u.u_lift}`, "start")}
    ${name(far, 118, `${picture.depth} ${u.u_lift}`, "start")}
    ${pipe(`M${bank + 40} ${y + 36}V${y - 22}H${32 + PUMP}`, { wide: 10, state: picture.is_short ? "waits" : "flows" })}
    ${pump(24, y - 22)}
    ${name(8, 148, `${picture.flow} ${u.u_flow}`, "start")}`;
}

const [FOOT, LIFT] = [160, 140]; // where the water stands, and how far up the picture goes

// From left to right: the lift, its measure, hose, pump, and what air can do here; the loss below. So no label meets another.
export function draft({ picture, words, u }) {
  const y = (share) => FOOT - LIFT * share;
  const top = y(picture.lift.share);
  return svg`
    <path class="picture-water-line" d="M84 ${FOOT}q11 -8 22 0t22 0 22 0 22 0"/>
    ${name(8, FOOT + 30, words.picture.water, "start")}
    ${picture.marks.map((mark) => svg`
      <path class="picture-low" d="M190 ${y(mark.share)}H${WIDE - 4}"/>
      ${name(WIDE - 4, y(mark.share) - 6, `${fill(words.picture[mark.name], mark)} ${u.u_lift}`, "end")}`)}
    ${pipe(`M112 ${FOOT + 12}V${top}H134`, { wide: 14 })}
    ${pump(132, top)}
    <path class="picture-tick" d="M88 ${FOOT}V${top}M80 ${top}h16M80 ${FOOT}h16"/>
    ${figure(76, Math.min((FOOT + top) / 2 + 8, FOOT), `${picture.lift.text} ${u.u_lift}`, "end")}
    ${picture.loss.share > picture.lift.share ? svg`<path class="picture-loss" d="M88 ${top}V${Math.max(y(picture.loss.share), 4)}"/>` : null}
    ${name(WIDE - 4, FOOT + 30, fill(words.picture.loss, { ...u, loss: picture.loss.text }), "end")}`;
}

const RING = { left: 66, right: 278, top: 34, foot: 110 };
const DRAWN = 9; // tenders that are told apart on the road

// Tenders on their way round: full above, empty below, each site with its minutes and with those that wait.
export function shuttle({ picture, words, u }) {
  const { left, right, top, foot } = RING;
  const [middle, round] = [(top + foot) / 2, (foot - top) / 2];
  const road = `M${left} ${middle}a${round} ${round} 0 0 1 ${round} ${-round}H${right - round}a${round} ${round} 0 0 1 0 ${2 * round}H${left + round}a${round} ${round} 0 0 1 ${-round} ${-round}`;
  const on = Array.from({ length: Math.min(picture.tankers, DRAWN) }, (_, count) => (count + 0.5) / Math.min(picture.tankers, DRAWN));
  const straight = right - left - 2 * round;
  const at = (share) => (share < 0.5
    ? { x: left + round + straight * share * 2, y: top }
    : { x: right - round - straight * (share - 0.5) * 2, y: foot });
  const site = (x, text, minutes, isHeld, anchor) => svg`
    <circle class=${isHeld ? "line-overdue" : "line-junction"} cx=${x} cy=${middle} r="14"/>
    ${name(anchor === "start" ? 8 : WIDE - 8, 16, text, anchor)}
    ${figure(x + (anchor === "start" ? 22 : -22), middle + 7, minutes, anchor)}`;
  return svg`
    ${pipe(road, { wide: 8 })}
    ${on.map(at).map(({ x, y }) => svg`<rect class="picture-tender" x=${x - 11} y=${y - 8} width="22" height="16" rx="3"/>`)}
    ${site(left, words.picture.fill_site, picture.fill, picture.held_by === "fill", "start")}
    ${site(right, words.picture.dump_site, picture.dump, picture.held_by === "dump", "end")}
    ${name(WIDE / 2, 134, fill(words.picture.road, { ...u, road: picture.road }))}`;
}

// What the rule asks above what the supply holds, as two bars of one scale.
export function fireflow({ picture, words, u }) {
  const bar = ({ share, text }, said, top, look) => svg`
    <rect class=${look} x="8" y=${top} width=${Math.max((WIDE - 16) * share, 2)} height="24"/>
    ${name(8, top - 8, said, "start")}
    ${figure(WIDE - 8, top - 7, `${text} ${u.u_flow}`, "end")}`;
  return svg`
    ${bar(picture.asked, words.picture.asked, 28, "picture-axis")}
    ${bar(picture.supply, words.picture.holds, 86, "picture-water")}`;
}
