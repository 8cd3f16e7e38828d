// The keys that build a layout: more hose, less hose, a step back, and layouts that are ready.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { fold } from "../shared/fold.js";

export function toolsView({ ready, lines, canUndo, hasRoom, words, act, redraw }) {
  const key = (name, press) => html`<button type="button" class="key" @click=${press}>${words.pressure[name]}</button>`;
  return html`
    ${canUndo ? html`<div class="rows">${key("undo", act.undo)}</div>` : nothing}
    ${fold({ name: "build", summary: words.pressure.build, kind: "section", redraw }, () => html`
      <div class="tools">
        ${hasRoom("wye") ? key("add_wye", act.addWye) : nothing}
        ${hasRoom("twin") ? key("add_twin", act.addTwin) : nothing}
        ${hasRoom("line") ? key("add_line", act.addLine) : nothing}
        ${lines.length > 1 ? key("remove", act.remove) : nothing}
      </div>
      <h2>${words.pressure.ready}</h2>
      <div class="tools">
        ${ready.map(({ id, layout }) => html`<button type="button" class="key" @click=${(event) => {
          event.target.closest("details").open = false;
          act.ready(layout);
        }}>${words.ready[id]}</button>`)}
      </div>`)}`;
}
