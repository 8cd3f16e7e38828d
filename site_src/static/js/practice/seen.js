// What a person at the made-up rig sees and hears, and no more: three lamps, four gauges, and sounds in words.
import { html } from "../../vendor/lit-html/lit-html.js";
import { lamp } from "../line/lamp.js";

const LAMPS = ["engaged", "ok", "throttle"];
const KEPT = 4; // sounds stay in sight until as many newer ones came

// The sounds of a run, the last first, from one state of it to the next.
export class Ears {
  heard = [];
  #was = null;

  hear(run, words) {
    const { sounds } = run.shown;
    const fresh = sounds.filter((sound) => this.#was && !this.#was.includes(sound)); // what was there from the first is no news
    this.#was = sounds;
    if (fresh.length) this.heard = [...fresh.map((sound) => words.sound[sound]), ...this.heard].slice(0, KEPT);
    return this.heard;
  }
}

export function seenView({ run, gauges, words, u, ears }) {
  const { practice, power } = words;
  const gauge = (label, figure, unit) => html`<div class="bench-gauge"><span>${label}</span><b>${figure} <small>${unit}</small></b></div>`;
  return html`
    <div class="bench-seen">
      ${LAMPS.map((name) => lamp({ state: run.shown.lights[name] ? "lit" : "dark", label: power[`lamp_${name}`], word: power[`lamp_is_${run.shown.lights[name] ? "on" : "off"}`] }))}
      ${gauge(practice.gauge_engine, gauges.engine, practice.rpm)}
      ${gauge(practice.gauge_speed, gauges.speed, u.u_road_speed)}
      ${gauge(practice.gauge_pressure, gauges.pressure, u.u_pressure)}
      <div class="bench-heard plate"><b>${practice.heard}</b><ol aria-live="polite">${ears.hear(run, words).map((sound) => html`<li>${sound}</li>`)}</ol></div>
    </div>`;
}
