// How far this lay can be pushed, and what slamming a nozzle shut does.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../site.js";
import { warning } from "../warning.js";
import { entryStepper } from "./settings.js";

export function boundsView({ bounds, limit, selected, data, system, u, refusal, shown, labelOf, act }) {
  const { words } = data;
  return html`
    <details class="section" ?open=${refusal?.field === "limit"} @toggle=${(event) => act.unfold("bounds", event.target.open)}>
      <summary>${words.bounds.title}</summary>
      ${entryStepper({
        of: "bounds", name: "limit", label: words.bounds.limit, entry: limit, blank: bounds?.limit ?? "", data, system, u, refusal, shown,
        change: act.limit,
      })}
      ${!bounds ? nothing : html`
        ${bounds.flow === null ? html`<p>${words.bounds.unknown}</p>` : html`
          <p class="verdict">${fill(words.bounds.greatest, { ...u, ...bounds })}</p>
          <p>${fill(words.bounds.how, { ...u, ...bounds, line: labelOf(bounds.line) })}</p>`}
        ${bounds.surge ? warning("caution", words.bounds.surge_title, fill(words.bounds.surge, { ...u, ...bounds.surge, line: labelOf(selected) })) : nothing}`}
    </details>`;
}
