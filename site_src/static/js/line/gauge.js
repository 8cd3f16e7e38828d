// A needle in a dial, as on a panel: what it shows, or no needle where nothing is read.
import { html, nothing, svg } from "../../vendor/lit-html/lit-html.js";

const SWEEP = 270;
const turn = (share) => Math.min(Math.max(share, 0), 1) * SWEEP - SWEEP / 2;

// value: where the needle stands, or null. least, end, step: of the face; step is labelled. sway: how far the needle swings to each side,
// where it does not stand still. unit: below the hub. name: what the picture says. size: "small" has no figures but its first and last.
// figures: those that are written, where the face is a sign of a needle and no instrument of its own.
export function gauge({ value = null, least = 0, end, step, unit = "", name, sway = 0, size, figures = null }) {
  const share = (figure) => (figure - least) / (end - least);
  const labelled = Array.from({ length: Math.round((end - least) / step) + 1 }, (_, count) => least + count * step);
  const isOff = value !== null && (value > end || value < least);
  const needle = (figure, kind) => svg`<path class=${kind} d="M100 122V32" transform="rotate(${turn(share(figure))} 100 100)"/>`;
  return html`
    <svg class="dial" data-size=${size ?? nothing} viewBox="0 0 200 200" role="img" aria-label=${name}>
      <circle class="dial-face" cx="100" cy="100" r="94"/>
      ${labelled.map((figure) => svg`<path class="dial-mark" d="M100 24V12" transform="rotate(${turn(share(figure))} 100 100)"/>`)}
      ${labelled.slice(1).map((figure) => svg`<path class="dial-half" d="M100 19V12" transform="rotate(${turn(share(figure - step / 2))} 100 100)"/>`)}
      ${labelled.filter((figure) => figures ? figures.includes(figure) : size !== "small" || figure === least || figure === end).map((figure) => figureAt(figure, turn(share(figure))))}
      <text class="dial-unit" x="100" y="176">${unit}</text>
      ${sway && value !== null ? [-sway, sway].map((by) => needle(value + by, "dial-sway")) : nothing}
      ${value === null ? nothing : needle(value, "dial-needle")}
      <circle class="dial-hub" cx="100" cy="100" r="10"/>
      ${isOff ? svg`<path class="dial-off" d="M100 4l-11 18h22z" transform="rotate(${turn(share(value))} 100 100)"/>` : nothing}
    </svg>`;
}

function figureAt(figure, degrees) {
  const angle = ((degrees - 90) * Math.PI) / 180;
  return svg`<text class="dial-figure" x=${100 + 58 * Math.cos(angle)} y=${108 + 58 * Math.sin(angle)}>${figure}</text>`;
}
