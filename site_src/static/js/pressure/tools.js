// The keys that build a lay: more hose, less hose, a step back, and lays that are ready.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";

export function toolsView({ canUndo, canAdd, canRemove, words, act }) {
  const key = (name, press) => html`<button type="button" class="key" @click=${press}>${words.pressure[name]}</button>`;
  return html`
    <div class="tools" role="group" aria-label=${words.pressure.build}>
      ${canUndo ? key("undo", act.undo) : nothing}
      ${canAdd ? html`${key("add_wye", act.addWye)}${key("add_twin", act.addTwin)}${key("add_line", act.addLine)}` : nothing}
      ${canRemove ? key("remove", act.remove) : nothing}
    </div>`;
}

export const readyView = ({ ready, words, act }) => html`
  <details class="section">
    <summary>${words.pressure.ready}</summary>
    <div class="tools">
      ${Object.keys(ready).map((id) => html`<button type="button" class="key" @click=${() => act.ready(id)}>${words.ready[id]}</button>`)}
    </div>
  </details>`;
