// What flows now: every nozzle at the pressure the gauge shows, and what shutting one does to the others.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { chips } from "../shared/controls.js";
import { fold } from "../shared/fold.js";
import { fill } from "../shared/site.js";
import { warning } from "../shared/warning.js";
import { entryStepper } from "./settings.js";

export function nowView({ layout, answer, flowing, data, system, u, refusal, shown, labelOf, act, work }) {
  const { words } = data;
  const gated = answer.lines.some((line) => line.gate);
  return fold({ name: "flowing", summary: words.now.title, kind: "section", redraw: work }, () => html`
      ${entryStepper({
        of: "now", name: "gauge", label: words.now.gauge, entry: layout.now.pressure, blank: answer.pressure,
        data, system, u, refusal, shown, change: (text) => act.now({ pressure: act.tag(text) }),
      })}
      ${layout.now.pressure ? html`<div class="rows"><button type="button" class="key key-wide" @click=${() => act.now({ pressure: "" })}>${words.now.as_asked}</button></div>` : nothing}
      ${gated ? chips({
        name: "gates", legend: words.now.gates, value: layout.now.gates, change: (gates) => act.now({ gates }),
        choices: ["set", "open"].map((id) => ({ id, label: words.now[`gates_${id}`] })),
      }) : nothing}
      ${flowing ? html`${nozzles(flowing, words, u, labelOf, act)}
        ${flowing.cautions.filter((found) => !isTold(found, answer)).map((found) => warning(found.level, words.caution[found.level], fill(words.caution[found.code], { ...u, ...found, line: labelOf(found.line) })))}` : nothing}
      <p class="smallprint">${words.now.held}</p>`);
}

// Whether the answer above has said so already.
const isTold = (found, answer) =>
  answer.cautions.some((each) => each.code === found.code && each.line === found.line && each.amount === found.amount);

function nozzles({ lines, flow, asked }, words, u, labelOf, act) {
  const figure = (name, flow, pressure) => html`<span class="now-figure"><small>${words.now[name]}</small><b>${flow} ${u.u_flow}</b><span>${pressure} ${u.u_pressure}</span></span>`;
  return html`
    <ul class="now">
      ${lines.map((line) => html`
        <li>
          <b>${labelOf(line.id)}</b>
          ${line.is_shut ? html`<span class="now-figure"><small>${words.now.now}</small><b>${words.now.is_shut}</b></span>` : figure("now", line.flow, line.outlet)}
          ${"open_flow" in line ? figure("all_open", line.open_flow, line.open_outlet) : figure("rated", line.rated_flow, line.rated_outlet)}
          <button type="button" class="key" aria-label=${fill(line.is_shut ? words.now.open_it : words.now.shut_it, { line: labelOf(line.id) })}
            @click=${() => act.shut(line.id, !line.is_shut)}>${line.is_shut ? words.now.open : words.now.shut}</button>
        </li>`)}
    </ul>
    <p role="status">${fill(words.now.total, { ...u, flow })}${asked === null ? nothing : html` <b>${fill(words.now.asked, { ...u, asked })}</b>`}</p>`;
}
