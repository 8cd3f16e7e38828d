// The parts that every picture of a water or foam page is made of: texts, the pump, and where the water comes from.
import { svg } from "../../../vendor/lit-html/lit-html.js";

export const WIDE = 344; // of every picture, in its own numbers: a phone's width less its edges

// What is read there; and what it is.
export const figure = (x, y, text, anchor = "middle") => svg`<text class="picture-psi" x=${x} y=${y} text-anchor=${anchor}>${text}</text>`;
export const name = (x, y, text, anchor = "middle") => svg`<text class="picture-name" x=${x} y=${y} text-anchor=${anchor}>${text}</text>`;

export const PUMP = 48;

// A pump whose line runs at height y, from its left edge.
export const pump = (x, y, sign) => svg`
  <rect class="picture-box" x=${x} y=${y - 16} width=${PUMP} height="32" rx="4"/>
  <path class="picture-sign" transform="translate(${x + PUMP / 2} ${y})" d="M-9 0a9 9 0 1 0 18 0a9 9 0 1 0 -18 0M0 -9l8 9l-8 9"/>
  ${sign ? name(x + PUMP / 2, y + 36, sign) : null}`;

// A hydrant that stands on the line at height y.
export const hydrant = (x, y) => svg`<path class="picture-box" d="M${x - 9} ${y + 20}v-30a9 9 0 0 1 18 0v30h5v5h-28v-5zM${x - 15} ${y - 5}h5v10h-5zM${x + 10} ${y - 5}h5v10h-5z"/>`;
