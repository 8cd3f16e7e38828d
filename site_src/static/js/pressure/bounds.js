// How far the chosen line goes for a flow, what it passes at a length, and what slamming its nozzle shut does.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../shared/site.js";
import { warning } from "../shared/warning.js";
import { tagged } from "../shared/units.js";
import { entryStepper } from "./settings.js";

const FIELDS = ["pump", "end", "flow", "length"];

export const NOTHING_TYPED = { pump: "", end: "", flow: "", length: "" };

// What is reckoned with: as typed here, or else as the line has it.
export const reached = (reach, line, read, system) => ({
  pump: reach.pump,
  end: reach.end || tagged(read.outlet, system),
  flow: reach.flow || tagged(read.flow, system),
  length: reach.length || line.length,
});

export function boundsView({ answer, bounds, line, reach, unfolded, selected, data, system, u, refusal, shown, labelOf, act }) {
  const { words } = data;
  const own = reached(reach, line, answer.lines.find(({ id }) => id === selected), system);
  const told = (name) => fill(words.bounds[name], { ...u, ...bounds, line: labelOf(selected) });
  const entry = (name) => entryStepper({
    of: "reach", name: `reach_${name}`, label: words.bounds[name], entry: own[name], blank: bounds?.pump ?? "", data, system, u, refusal, shown,
    change: (text) => act.reach(name, text),
  });
  return html`
    <details class="section" ?open=${unfolded.has("bounds") || FIELDS.some((name) => refusal?.field === `reach_${name}`)} @toggle=${(event) => act.unfold("bounds", event.target.open)}>
      <summary>${words.bounds.title}</summary>
      <p>${labelOf(selected)}</p>
      ${entry("pump")}
      ${bounds && bounds.limit !== null ? html`<p class="worked">${told("limit")}</p>` : nothing}
      ${entry("end")}
      ${entry("flow")}
      <p class="verdict worked" role="status">${!bounds ? nothing : told(bounds.longest === null ? "nothing_left" : "longest")}</p>
      ${entry("length")}
      <p class="verdict worked" role="status">${!bounds ? nothing : bounds.passes === null ? nothing : told("passes")}</p>
      ${!bounds ? nothing : html`<div class="worked">
        ${bounds.cautions.map((found) => warning(found.level, words.caution[found.level], fill(words.caution[found.code], { ...u, ...found, line: labelOf(found.line) })))}
        ${bounds.surge ? warning("caution", words.bounds.surge_title, fill(words.bounds.surge, { ...u, ...bounds.surge, line: labelOf(selected) })) : nothing}</div>`}
    </details>`;
}
