// One scale across the page: what stands now, and the limits that matter, by name.
import { html, nothing, svg } from "../../vendor/lit-html/lit-html.js";
import { percent, withRoom } from "./labels.js";


// now: a number, or null while there is none. least, end, step: of the scale, in the same unit. limits: [{ at, label, level }], level
// "stop" or "rated"; the first has its name below the line, others above. name: what the picture says. off: said where now lies past the end. width: rem there are.
export function scale({ now, least = 0, end, step, limits = [], level, name, off, width = 20 }) {
  const share = (figure) => Math.min(Math.max((figure - least) / (end - least), 0), 1);
  const ticks = Array.from({ length: Math.floor((end - least) / step + 1e-9) + 1 }, (_, count) => least + count * step);
  const [first, ...others] = limits.map((limit) => ({ text: limit.label, place: share(limit.at), kind: `scale-name scale-${limit.level}` }));
  const below = withRoom([...(first ? [first] : []), ...ticks.map((tick) => ({ text: tick, place: share(tick), kind: "scale-figure" }))], width);
  const names = [...below.map((each) => ({ ...each, where: "below" })), ...withRoom(others, width).map((each) => ({ ...each, where: "above" }))];
  const isOff = now !== null && (now > end || now < least);
  return html`
    <svg class="scale" role="img" aria-label=${isOff && off ? `${name}. ${off}` : name} ?data-two=${limits.length > 1}>
      <g class="scale-line">
        <line class="line-waits" stroke-width="2" x1="0%" x2="100%" y1="0" y2="0"/>
        ${limits.map((limit) => svg`<line class="scale-over scale-${limit.level}" x1=${percent(share(limit.at))} x2="100%" y1="0" y2="0"/>`)}
        ${now === null ? nothing : svg`<line class="scale-now" data-level=${level ?? nothing} x1="0%" x2=${percent(share(now))} y1="0" y2="0"/>`}
        ${now !== null && level === "caution" ? svg`<line class="scale-striped" x1="0%" x2=${percent(share(now))} y1="0" y2="0"/>` : nothing}
      ${ticks.map((tick) => svg`<line class="scale-tick" x1=${percent(share(tick))} x2=${percent(share(tick))} y1="0" y2="7"/>`)}
        ${limits.map((limit) => svg`<line class="scale-limit scale-${limit.level}" x1=${percent(share(limit.at))} x2=${percent(share(limit.at))} y1="-9" y2="9"/>`)}
        ${now === null ? nothing : svg`<line class="scale-mark" x1=${percent(share(now))} x2=${percent(share(now))} y1="-11" y2="11"/>`}
        ${isOff ? svg`<svg class="line-at" aria-hidden="true" x=${percent(share(now))}><path class="scale-off" d=${now > end ? "M-16 -11l14 11l-14 11z" : "M16 -11l-14 11l14 11z"}/></svg>` : nothing}
      </g>
      ${names.map(({ text, place, anchor, kind, where }) => svg`<text class=${kind} data-where=${where} x=${percent(place)} text-anchor=${anchor}>${text}</text>`)}
    </svg>`;
}
