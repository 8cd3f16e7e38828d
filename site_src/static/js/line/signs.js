// The signs every picture of the line is made of. Thick: it flows, turns, is done. Thin: it waits. Dotted: it is not joined.
//
// How the pieces are used (css/line.css goes with them, named in a template's `styles`):
//   signs.js    pipe(path, {state, bore}), station(x, y, state), junction(x, y), crossBar(x, y), nozzle, inlet: parts of an <svg>
//   route.js    stations on a line: steps of a card, minutes of a run, parts of a test, looks of a fault
//   scale.js    one horizontal scale with its now-mark and its limits by name
//   gauge.js    a needle in a dial
//   lamp.js     a lamp with its word
//   display.js  what a display shows: N | N, asked and reached
//   layout.js   hose as it lies, to scale, from the pump to its nozzles
// A picture with a viewBox is sized in rem by css/line.css, so that its letters grow with the reader's; one without takes the
// width it is given, with places in percent. Lengths, bores and limits come as numbers from calc or the data.
import { svg } from "../../vendor/lit-html/lit-html.js";

// px of a drawn hose by its bore in inches: these, and straight between them.
const THICK = [[0.5, 3], [1.75, 8], [2.5, 12], [3, 14], [5, 22], [8, 34]];
const NO_BORE = 12; // a pipe of the rig, whose bore nobody says

export function thickness(bore) {
  if (!(bore > 0)) return NO_BORE;
  const place = THICK.findIndex(([inches]) => inches >= bore);
  if (place === -1) return THICK.at(-1)[1];
  if (place === 0) return THICK[0][1];
  const [[from, thin], [to, thick]] = THICK.slice(place - 1, place + 1);
  return thin + ((thick - thin) * (bore - from)) / (to - from);
}

// A stretch of line along a path. state: "flows", "waits" or "apart"; `bore` in inches, or `wide` in px for what is no hose.
export const pipe = (path, { state = "flows", bore = null, wide = thickness(bore), isChosen = false } = {}) => svg`
  ${isChosen ? svg`<path class="line-chosen" stroke-width=${wide + 14} d=${path}/><path class="line-bared" stroke-width=${wide + 6} d=${path}/>` : null}
  <path class="line-pipe line-${state}" stroke-width=${state === "flows" ? wide : 3} d=${path}/>`;

// state: "proven", "here", "overdue" (here, and late), "todo", "end", "shut" (tried and not so), "skipped", "dot" (to do, among many). Places may be "40%".
export function station(x, y, state) {
  if (state === "end") return svg`<svg class="line-at" aria-hidden="true" x=${x} y=${y}><rect class="line-todo" x="-7" y="-8" width="14" height="16" rx="2"/></svg>`;
  const radius = { proven: 7, here: 11, overdue: 11, shut: 8, dot: 3 }[state] ?? 6;
  return svg`
    <circle class="line-${state}" cx=${x} cy=${y} r=${radius}/>
    ${state === "shut" ? svg`<svg class="line-at" aria-hidden="true" x=${x} y=${y}><path class="line-cross" d="M-5 -5L5 5M5 -5L-5 5"/></svg>` : null}`;
}

// A wye or a collar: the points are set by the paths that meet in it.
export const junction = (x, y, radius = 9) => svg`<circle class="line-junction" cx=${x} cy=${y} r=${radius}/>`;

// Across a line that is shut.
export const crossBar = (x, y, wide = 12) => svg`<path class="line-bar" d="M${x} ${y - wide}V${y + wide}"/>`;

export const nozzle = (x, y) => svg`<path class="line-block" d="M${x} ${y - 8}l16 4v8l-16 4z"/>`;
export const inlet = (x, y) => svg`<path class="line-block" d="M${x} ${y - 12}h6v24h-6z"/>`;
