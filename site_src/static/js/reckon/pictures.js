// Small pictures that carry numbers: the hydrant's curve, the lift, the tank, the relay. Drawn from calc's shares and texts.
import { html, svg } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../shared/site.js";

const strong = (x, y, told, anchor = "start") => svg`<text class="picture-psi" x=${x} y=${y} text-anchor=${anchor}>${told}</text>`;
const name = (x, y, told, anchor = "start") => svg`<text class="picture-name" x=${x} y=${y} text-anchor=${anchor}>${told}</text>`;

function hydrant({ picture, words, u }) {
  const at = ({ x, y }) => ({ x: 14 + 332 * x, y: 196 - 166 * y });
  const path = picture.curve.map(([x, y]) => at({ x, y })).map(({ x, y }, place) => `${place ? "L" : "M"}${x.toFixed(1)} ${y.toFixed(1)}`).join("");
  const [test, floor] = [at(picture.test), at(picture.floor)];
  const now = `${picture.test.flow} ${u.u_flow} · ${picture.test.pressure} ${u.u_pressure}`;
  return svg`
    <path class="picture-axis" d="M14 14V196H352"/>
    <path class="picture-low" d="M14 ${floor.y}H352"/>
    <path class="picture-line" d=${path}/>
    ${strong(22, 24, `${picture.static} ${u.u_pressure}`)}${name(100, 24, words.picture.static)}
    <circle class="picture-joint" cx=${test.x} cy=${test.y} r="7"/>
    ${test.x < 180 ? name(test.x + 14, test.y - 8, now) : name(354, Math.min(test.y, floor.y) - 14, now, "end")}
    <circle class="picture-box" cx=${floor.x} cy=${floor.y} r="9"/>
    ${strong(floor.x - 14, Math.min(floor.y + 28, 190), `${picture.floor.flow} ${u.u_flow}`, "end")}
    ${name(18, floor.y - 6, `${picture.floor.pressure} ${u.u_pressure}`)}`;
}

function tank({ picture, words, u }) {
  const rows = [{ left: 1, text: words.picture.full }, ...picture.marks.map((mark) => ({
    left: mark.left, text: `${mark.volume} ${u.u_volume}`, after: fill(words.picture.after, mark) }))];
  return svg`
    <rect class="picture-axis" x="14" y="14" width="120" height="184"/>
    <path class="picture-box" d="M14 14h120v${184 * (1 - picture.stays.share)}h-120z" opacity="0.25"/>
    ${picture.stays.share > 0 ? name(350, 197, fill(words.picture.stays, { ...u, stays: picture.stays.text }), "end") : ""}
    ${rows.map(({ left, text, after }) => {
      const y = 14 + 184 * (1 - left);
      return svg`<path class="picture-line" d="M14 ${y}H150"/>${name(158, y + (left === 1 ? 14 : 6), text)}${after ? svg`<text class="picture-after" x="350" y=${y + 7} text-anchor="end">${after}</text>` : ""}`;
    })}`;
}

// From left to right: the lift, its measure, hose, pump, and what air can do here; the loss below. So no label meets another.
function draft({ picture, words, u }) {
  const y = (share) => 198 - 178 * share;
  const pump = y(picture.lift.share);
  return svg`
    <path class="picture-axis" d="M96 198q11 -8 22 0t22 0 22 0 22 0"/>
    ${name(8, 231, words.picture.water)}
    ${picture.marks.map((mark) => svg`
      <path class="picture-low" d="M196 ${y(mark.share)}H352"/>
      ${name(352, y(mark.share) - 5, `${fill(words.picture[mark.name], mark)} ${u.u_lift}`, "end")}`)}
    <path class="picture-hose" stroke-width="12" d="M122 210V${pump}H140"/>
    <rect class="picture-box" x="140" y=${pump - 16} width="44" height="32" rx="4"/>
    <path class="picture-line" d="M98 198V${pump}M90 ${pump}h16M90 198h16"/>
    ${strong(84, Math.min((198 + pump) / 2 + 8, 198), `${picture.lift.text} ${u.u_lift}`, "end")}
    ${picture.loss.share > picture.lift.share ? svg`<path class="picture-loss" d="M98 ${pump}V${Math.max(y(picture.loss.share), 4)}"/>` : ""}
    ${name(352, 231, fill(words.picture.loss, { ...u, loss: picture.loss.text }), "end")}`;
}

function relay({ picture, words, u }) {
  const many = picture.pumpers > 4;
  const count = many ? 4 : picture.pumpers;
  const [left, right] = [36, 322];
  const slope = Math.max(-24, Math.min(24, picture.climb * 200));
  const at = (place) => ({ x: left + ((right - left) * place) / (count - 1), y: 74 - slope * (place / (count - 1) - 0.5) });
  const places = Array.from({ length: count }, (_, place) => place);
  return svg`
    ${places.slice(1).map((place) => {
      const [from, to] = [at(place - 1), at(place)];
      const broken = many && place === count - 2;
      return svg`<path class="picture-hose" stroke-width="8" stroke-dasharray=${broken ? "4 14" : "none"} d="M${from.x} ${from.y}L${to.x} ${to.y}"/>`;
    })}
    ${places.map((place) => {
      const { x, y } = at(place);
      const last = place === count - 1;
      return svg`<rect class="picture-box" x=${x - 22} y=${y - 15} width="44" height="30" rx="4"/>
        ${strong(last ? 354 : place ? x : 8, y - 26, last ? picture.floor : picture.pressure, last ? "end" : place ? "middle" : "start")}`;
    })}
    ${name(8, at(0).y - 46, words.picture.discharge)}${name(354, at(count - 1).y - 46, words.picture.intake, "end")}
    ${name(8, at(0).y + 38, words.picture.water)}${name(354, at(count - 1).y + 38, words.picture.fire, "end")}
    ${name((at(0).x + at(1).x) / 2, (at(0).y + at(1).y) / 2 + 44, `${picture.leg} ${u.u_length}`, "middle")}`;
}

const DRAWN = { hydrant: [hydrant, 212], tank: [tank, 212], draft: [draft, 236], relay: [relay, 144] };

export function pictureView({ data, answer, u }) {
  const [drawn, height] = DRAWN[data.page];
  const { words } = data;
  return html`
    <svg class="picture" viewBox="0 0 360 ${height}" role="img" aria-label=${words.picture[data.page]}>
      ${drawn({ picture: answer.picture, words, u })}
    </svg>`;
}
