// A lamp: lit, dark, or only expected. Its word stands beside it, so that nothing hangs on the color.
import { html, svg } from "../../vendor/lit-html/lit-html.js";

const RAYS = svg`<path class="lamp-rays" d="M0 -15v-6M0 15v6M-15 0h-6M15 0h6M-10.600 -10.600l-4.200 -4.200M10.600 10.600l4.200 4.200M-10.600 10.600l-4.200 4.200M10.600 -10.600l4.200 -4.200"/>`;

export const lampSign = (state) => svg`
  <circle class="lamp-glass lamp-${state}" r="10"/>
  ${state === "lit" ? RAYS : null}
  ${state === "expected" ? svg`<text class="lamp-query" y="6">?</text>` : null}`;

// state: "lit", "dark" or "expected"; label: the lamp's name on the panel; word: what it is ("lit").
export const lamp = ({ state, label, word }) => html`
  <span class="lamp" data-state=${state}>
    <svg viewBox="-22 -22 44 44" aria-hidden="true">${lampSign(state)}</svg>
    <span><span>${label}</span> <b>${word}</b></span>
  </span>`;
