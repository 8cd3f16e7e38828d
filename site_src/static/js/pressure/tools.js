// The keys that build a layout: more hose, less hose, a step back, and layouts that are ready.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";

export function toolsView({ ready, canUndo, canAdd, canRemove, words, act }) {
  const key = (name, press) => html`<button type="button" class="key" @click=${press}>${words.pressure[name]}</button>`;
  return html`
    ${canUndo ? html`<div class="rows">${key("undo", act.undo)}</div>` : nothing}
    <details class="section">
      <summary>${words.pressure.build}</summary>
      <div class="tools">
        ${canAdd ? html`${key("add_wye", act.addWye)}${key("add_twin", act.addTwin)}${key("add_line", act.addLine)}` : nothing}
        ${canRemove ? key("remove", act.remove) : nothing}
      </div>
      <h2>${words.pressure.ready}</h2>
      <div class="tools">
        ${ready.map(({ id, layout }) => html`<button type="button" class="key" @click=${(event) => {
          event.target.closest("details").open = false;
          act.ready(layout);
        }}>${words.ready[id]}</button>`)}
      </div>
    </details>`;
}
