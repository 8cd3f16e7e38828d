// How far the chosen line goes for a flow, what it passes at a length, and what slamming its nozzle shut does.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fold } from "../shared/fold.js";
import { fill } from "../shared/site.js";
import { warning } from "../shared/warning.js";
import { entryStepper } from "./fields.js";
import { hasThreePanes } from "./room.js";

export const NOTHING_TYPED = { pump: "", end: "", flow: "", length: "" };

// An entry that is left empty shows what is reckoned with in its place: what the line has.
export function boundsView({ isRunning, bounds, line, reach, selected, data, system, u, refusal, shown, labelOf, act, work }) {
  const { words } = data;
  const told = (name) => fill(words.bounds[name], { ...u, ...bounds, line: labelOf(selected) });
  const entry = (name, typed = reach[name]) => entryStepper({
    of: "reach", name: `reach_${name}`, label: words.bounds[name], entry: typed, blank: bounds?.[name] ?? "", data, system, u, refusal, shown,
    change: (text) => act.reach(name, text),
  });
  return fold({ name: "bounds", begins: hasThreePanes, summary: words.bounds.title, kind: "section", redraw: work }, () => html`
      <p>${labelOf(selected)}</p>
      ${isRunning && !bounds && !refusal ? html`<p class="verdict">${words.bounds.shared}</p>` : nothing}
      ${entry("pump")}
      ${bounds && bounds.limit !== null ? html`<p>${told("limit")}</p>` : nothing}
      ${entry("end")}
      ${entry("flow")}
      <p class="verdict" role="status">${!bounds ? nothing : told(bounds.longest === null ? "nothing_left" : "longest")}</p>
      ${entry("length", reach.length || line.length)}
      <p class="verdict" role="status">${!bounds ? nothing : bounds.passes === null ? nothing : told("passes")}</p>
      ${!bounds ? nothing : html`
        ${bounds.cautions.map((found) => warning(found.level, words.caution[found.level], fill(words.caution[found.code], { ...u, ...found, line: labelOf(found.line) })))}
        ${bounds.surge ? warning("caution", words.bounds.surge_title, fill(words.bounds.surge, { ...u, ...bounds.surge, line: labelOf(selected) })) : nothing}`}`);
}
