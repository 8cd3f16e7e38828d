// The pieces that the large pictures of the power path are made of: words, ways, and the sign of what turns.
import { svg } from "../../vendor/lit-html/lit-html.js";

export const text = (x, y, words, kind = "", anchor = "middle") => svg`<text class=${kind} x=${x} y=${y} text-anchor=${anchor}>${words}</text>`;
export const way = (path, state) => svg`<path class="path-way line-${state}" d=${path}/>`;
// A round arrow: this part turns, whatever is said by motion.
export const turnSign = (x, y) => svg`<g class="path-turn" transform="translate(${x} ${y})"><path d="M-9 3A10 10 0 1 1 0 10"/><path d="M-4 6l4 4.500-4.500 4.500"/></g>`;
