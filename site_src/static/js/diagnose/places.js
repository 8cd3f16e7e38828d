// A cab and a panel, drawn: where a person sees what is wrong, or misses it. Generic and ours; where things are on a rig its own panel says.
import { html, svg } from "../../vendor/lit-html/lit-html.js";
import { lampSign } from "../line/lamp.js";

const needle = (degrees) => svg`<circle class="place-face" cx="24" cy="20" r="17"/><path d="M24 24V8" transform="rotate(${degrees} 24 20)"/><circle class="place-full" cx="24" cy="20" r="2.5"/>`;
const SIGNS = {
  lamp: svg`<g transform="translate(24 20) scale(.85)">${lampSign("lit")}</g>`,
  display: svg`<rect class="place-face" x="3" y="6" width="42" height="28" rx="4"/><path d="M9 27V14l8 13V14M31 27V14l8 13V14"/>`,
  speedometer: svg`<path class="place-face" d="M5 32a19 19 0 1 1 38 0z"/><path d="M24 31L11 23"/><path class="place-thin" d="M24 13v5M9 21l4 2M39 21l-4 2"/>`,
  selector: svg`<rect class="place-face" x="15" y="2" width="18" height="36" rx="9"/><circle class="place-full" cx="24" cy="29" r="6"/><path class="place-thin" d="M24 8v10"/>`,
  exhaust: svg`<path d="M2 14h16v12H2M20 17c5-4 7 4 12 0s7 4 12 0M20 26c5-4 7 4 12 0s7 4 12 0"/>`,
  engine: svg`<path class="place-face" d="M8 14h6V8h14v6h8l6 6v12H8z"/><path d="M2 18v10M2 23h6M42 22h4v8h-4"/>`,
  intake: needle(-110),
  master: needle(40),
  line: svg`${needle(-20)}`,
  throttle: svg`<circle class="place-face" cx="24" cy="20" r="16"/><path d="M24 12v16M16 20h16"/><path class="place-thin" d="M43 11a20 20 0 0 1 0 18"/>`,
  pump: svg`<path class="place-face" d="M24 4a16 16 0 1 0 16 16V6h6V4z"/><path class="place-thin" d="M24 12v16M16 20h16M18 14l12 12M30 14L18 26"/>`,
  ground: svg`<path class="place-face" d="M3 8h26v20H3zM29 14h9l7 8v6H29z"/><circle class="place-full" cx="12" cy="30" r="5"/><circle class="place-full" cx="36" cy="30" r="5"/><path d="M1 37h46"/>`,
  tests: svg`<path class="place-face" d="M10 3h28v34H10z"/><path class="place-thin" d="M15 12h18M15 20h18M15 28h10"/>`,
};
const PLACES = {
  cab: ["lamp", "display", "speedometer", "selector", "exhaust", "engine"],
  panel: ["intake", "master", "line", "throttle", "pump", "ground", "tests"],
};

// here: of all places those that have a sign; where: the words of cab and panel.
export const placesView = ({ here, words, choose }) => Object.entries(PLACES).map(([side, places]) => html`
  <section class="places places-${side}" aria-label=${words.where[side]}>
    <p aria-hidden="true">${words.where[side]}</p>
    <div>${places.filter((place) => here.includes(place)).map((place) => html`
      <button type="button" class="key place-key" @click=${() => choose(place)}>
        <svg viewBox="0 0 48 40" aria-hidden="true">${SIGNS[place]}</svg><span>${words.at[place]}</span>
      </button>`)}</div>
  </section>`);
