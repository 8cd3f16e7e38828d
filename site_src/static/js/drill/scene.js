// What a step of a call is drawn on: lamps, gauges, the column of a tank gauge; and the slider that sets a gauge.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { gauge } from "../line/gauge.js";
import { lamp, lampSign } from "../line/lamp.js";
import { colon, decimal } from "../shared/site.js";

const LAMPS = ["engaged", "ok", "throttle"];
const number = (typed) => (/^\d+([.,]\d+)?$/.test(typed.trim()) ? Number(typed.trim().replace(",", ".")) : null);

const lampsView = (lamps, words) => html`<div class="call-lamps">
  ${LAMPS.map((name) => lamp({ state: lamps[name] ? "lit" : "dark", label: words.option.lamp[name], word: words.lit[lamps[name] ? "on" : "off"] }))}</div>`;

const tankView = ({ value }, words) => html`
  <figure class="call-dial">
    <ul class="call-tank" aria-hidden="true">${[4, 3, 2, 1].map((quarter) => html`
      <li><svg viewBox="-22 -22 44 44">${lampSign(value >= quarter ? "lit" : "dark")}</svg>${words.dial.quarters[quarter]}</li>`)}</ul>
    <figcaption>${words.dial.tank}${colon} <b>${words.dial.quarters[value]}</b></figcaption>
  </figure>`;

function dialView(dial, { typed, isSmall, words, u }) {
  if (dial.gauge === "tank") return tankView(dial, words);
  const isSet = dial.value === null;
  const [value, text] = isSet ? [number(typed), typed.trim() || "–"] : [dial.value, dial.text];
  const unit = u[`u_${dial.quantity}`];
  const name = words.gauge[dial.gauge];
  return html`
    <figure class="call-dial">
      ${gauge({ ...dial, value, unit: u.u_pressure, size: isSmall ? "small" : nothing, name: `${name}${colon} ${text} ${unit}` })}
      <figcaption>${name}<br><b>${dial.sway ? `${text} ±` : text}</b> ${unit}</figcaption>
    </figure>`;
}

export const sceneView = ({ dials, lamps }, { typed, words, u }) => html`
  <div class="call-scene">${lamps ? lampsView(lamps, words) : nothing}${dials.map((dial) => dialView(dial, { typed, isSmall: lamps || dials.length > 1, words, u }))}</div>`;

// The slider of the gauge that is to be set, or nothing where none is.
export function slideView({ dials }, { typed, words, put }) {
  const dial = dials.find(({ moves_by }) => moves_by !== null);
  return dial ? html`
    <input class="slide" type="range" aria-label=${words.call.slide} min="0" max=${dial.end} step=${dial.moves_by} .value=${String(number(typed) ?? 0)}
      @input=${(event) => put(event.target.value.replace(".", decimal))}>` : null;
}
